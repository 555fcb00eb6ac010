"""Hourly rates by role on this job."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Wage
from calc.trade.inputs.pour import Crew
from calc.trade.inputs.work import OnSite
from calc.trade.levels import ROLE

LABORER, FINISHER, DRIVER = (exact(number) for number in (1, 2, 3))
CREW_MIX = row_called(ROLE, "crew mix")
"""Row numbers of the roles."""


class Rate(Section, title="Wage rates by role", each=ROLE, sheet="Costs"):
    """Private or prevailing wages, as the job requires; 0 if the company book has none."""

    private = line("Private wage rate", "$/h", if_given(Wage.private, 0), source="Wages")
    prevailing = line("Prevailing wage rate", "$/h", if_given(Wage.prevailing, 0), source="Wages")
    by_table = line(
        "Wage rate by table",
        "$/h",
        when(Crew.wages.is_("prevailing"), prevailing, private),
        source="wage table of the job",
    )
    hourly = line(
        "Wage rate used",
        "$/h",
        when(both(by_table <= 0, equals(row_number(ROLE), DRIVER)), at(by_table, LABORER), by_table),
        source="a driver without a rate costs what a laborer does; a crew mix without one is worked out by people",
    )


class CrewRate(Section, title="Crew rates", sheet="Costs"):
    """Rates of the roles, and of the crew on the pour as a whole."""

    laborer = line("Laborer rate", "$/h", at(Rate.hourly, LABORER), source="wage rates by role")
    finisher = line("Finisher rate", "$/h", at(Rate.hourly, FINISHER), source="wage rates by role")
    driver = line("Driver rate", "$/h", at(Rate.hourly, DRIVER), source="wage rates by role")
    people = line(
        "Pour crew",
        "person",
        smallest(OnSite.crew, Crew.placing + Crew.finishing),
        source="placing crew plus finishers, never more than the crew",
    )
    finishers = line(
        "Finishers in the crew mix",
        "person",
        smallest(Crew.finishing, people),
        source="finishers as typed, never more than the pour crew",
    )
    derived = line(
        "Composite crew rate, by people",
        "$/h",
        (laborer * (people - finishers).count + finisher * finishers.count) / people.count,
        source="finishers at their rate and the others at the laborer rate, over the pour crew",
    )
    composite = line(
        "Composite crew rate, per person",
        "$/h",
        when(at(Rate.hourly, CREW_MIX) > 0, at(Rate.hourly, CREW_MIX), derived),
        source="rate of the crew mix where Wages has one, else by the people on the pour",
    )
