"""What an hour of each role costs on this job."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Wage
from calc.trade.inputs.pour import Crew
from calc.trade.levels import ROLE

LABOURER, FINISHER, DRIVER = (exact(number) for number in (1, 2, 3))
"""The rows of the roles."""


class Rate(Section, title="Rates by role", each=ROLE, sheet="Costs"):
    """From the table of wages that holds for the job; 0 where the house book does not say."""

    private = line("Private rate", "$/h", if_given(Wage.private, 0), source="Wages")
    prevailing = line("Prevailing rate", "$/h", if_given(Wage.prevailing, 0), source="Wages")
    chosen = line(
        "Rate of the table", "$/h", when(Crew.wages.is_("prevailing"), prevailing, private), source="wage table"
    )
    hourly = line(
        "Rate taken",
        "$/h",
        when(both(chosen <= 0, equals(row_number(ROLE), DRIVER)), at(chosen, LABOURER), chosen),
        source="a driver without a rate of his own costs what a labourer does",
    )


class CrewRate(Section, title="Rates of the crew", sheet="Costs"):
    """The people of the pour together."""

    labourer = line("Labourer", "$/h", at(Rate.hourly, LABOURER), source="rates by role")
    finisher = line("Finisher", "$/h", at(Rate.hourly, FINISHER), source="rates by role")
    driver = line("Driver", "$/h", at(Rate.hourly, DRIVER), source="rates by role")
    people = line("People on the pour", "person", Crew.placing + Crew.finishing, source="placing and finishing")
    mix = line(
        "Crew mix, one person",
        "$/h",
        (labourer * Crew.placing.count + finisher * Crew.finishing.count) / people.count,
        source="placing crew as labourers, finishers as such",
    )
