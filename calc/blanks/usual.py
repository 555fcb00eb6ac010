"""What usual jobs need of the input books, and what companies set most: that comes first, or alone."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from calc.declared import Factor, Input, Price
from calc.intake.schema import (
    AREAS,
    FACTOR_LIST,
    JOBS,
    MAIN_FACTORS,
    OVERRIDES,
    PLANTS,
    PRICE_LIST,
    SITE,
    TABLES,
    Heading,
    Table,
)
from calc.trade.inputs.areas import Area, Edge
from calc.trade.inputs.job import Job
from calc.trade.inputs.placing import WheelbarrowRoute
from calc.trade.inputs.work import Digging
from calc.trade.money.price import BidPrice, PriceParts
from calc.trade.prices.price_age import PriceAge
from calc.trade.work.visit_rules import VisitRules

USUAL_SHEETS = (JOBS, AREAS, SITE, "Cross-sections", "Footings", PLANTS, OVERRIDES)
"""The sheets of a jobs book that usual jobs fill."""

_USUAL_COLUMNS: Mapping[str, tuple[Input, ...]] = {
    JOBS: (
        Job.client, Job.address, Job.bid_date, Job.pour_date, Job.soil, Job.fiber, Digging.by,
        WheelbarrowRoute.distance, Job.notes,
    ),
    AREAS: (
        Area.shape, Area.length, Area.width, Area.other_width, Area.thickness, Area.other_thickness, Area.base,
        Edge.length, Edge.quantity, Edge.spacing, Area.notes,
    ),
}  # fmt: skip
"""The columns that usual jobs fill: both sheets fit the width of a screen. Other sheets have all of theirs."""

EDGES_OF_THE_EXAMPLE: Mapping[str, str] = {
    "formed ft": "25", "wall ft": "0", "doweled edge ft": "3", "doweled edges": "2", "dowel spacing in": "24",
}  # fmt: skip
"""What the example area has in the columns of its edges, where the book has no sheet for edges."""

_MAIN = (
    BidPrice.tax_rate, BidPrice.overhead_rate, BidPrice.margin_rate, BidPrice.contingency_rate, BidPrice.minimum_price,
    BidPrice.rounding, PriceParts.deposit_rate, PriceParts.pour_rate, PriceAge.validity, VisitRules.day,
    VisitRules.fixed_hours, VisitRules.minimum_paid, VisitRules.overtime,
)  # fmt: skip
"""The factors that most companies set."""

_FIRST_PRICES = (
    "Ready-mix, 3000 psi", "Ready-mix, 3500 psi", "Ready-mix, 4000 psi", "Concrete delivery",
    "Short-load fee, tier 1", "Short-load fee, tier 2", "Short-load fee, tier 3", "Truck standby (wait time)",
    "Environmental fee", "Fuel surcharge", "Concrete washout", "Concrete bag", "Clean-up after bagged concrete",
    "Form lumber, 2x4", "Form lumber, 2x6", "Form stake", "Form release agent", "Dowel bar", "Drill bit",
    "Isolation-joint filler", "Micro fiber", "Base rock", "Base rock delivery", "Curing compound, small pail",
    "Curing compound, 5-gal pail", "Bonding agent, small pail", "Mobilization, crew visit",
    "Mobilization, one-person visit", "Barricades, per day", "Caution tape and signs",
)  # fmt: skip
"""The prices that usual jobs ask for, in the order of the work."""


def usual(table: Table) -> Table:
    """A table with the columns that usual jobs fill."""
    wanted = _USUAL_COLUMNS.get(table.name)
    if wanted is None:
        return table
    return replace(table, headings=tuple(each for each in table.headings if _is_usual(each, wanted)))


def _is_usual(heading: Heading, wanted: tuple[Input, ...]) -> bool:
    """Whether a column is a key or one of those wanted."""
    return heading.given is None or any(heading.given is each for each in wanted)


def prices_in_order() -> list[Price]:
    """Every price: first those that usual jobs ask for."""
    by_name = {price.label: price for price in PRICE_LIST}
    first = [by_name[name] for name in _FIRST_PRICES]
    return [*first, *(price for price in PRICE_LIST if price.label not in _FIRST_PRICES)]


def factors_of(name: str) -> list[Factor]:
    """The factors of a sheet of factors."""
    main = {factor.id for factor in _MAIN}
    listed = _MAIN if name == MAIN_FACTORS else FACTOR_LIST
    return [factor for factor in listed if (factor.id in main) is (name == MAIN_FACTORS)]


def usual_tables() -> list[Table]:
    """The sheets of the blank jobs book, each with the columns that usual jobs fill."""
    return [usual(TABLES[name]) for name in USUAL_SHEETS]
