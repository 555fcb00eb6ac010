"""Hourly rates by role on this job."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Wage
from calc.trade.inputs.pour import Crew
from calc.trade.levels import ROLE

LABORER, FINISHER, DRIVER = (exact(number) for number in (1, 2, 3))
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
        source="a driver without a rate costs what a laborer does",
    )


class CrewRate(Section, title="Crew rates", sheet="Costs"):
    """Rates of the placing crew plus finishing crew crew."""

    laborer = line("Laborer rate", "$/h", at(Rate.hourly, LABORER), source="wage rates by role")
    finisher = line("Finisher rate", "$/h", at(Rate.hourly, FINISHER), source="wage rates by role")
    driver = line("Driver rate", "$/h", at(Rate.hourly, DRIVER), source="wage rates by role")
    people = line("Pour crew", "person", Crew.placing + Crew.finishing, source="placing crew plus finishing crew")
    composite = line(
        "Composite crew rate, per person",
        "$/h",
        (laborer * Crew.placing.count + finisher * Crew.finishing.count) / people.count,
        source="placing crew at the laborer rate and finishers at theirs, over the pour crew",
    )
