"""What a job lacks of the company book: each price, wage, vehicle or site by the row and the cell to fill in."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import isnan

from calc.declared import Input, Price
from calc.declared.cost import Cost
from calc.errors import Finding, FindingKind, Place
from calc.formula.levels import Level
from calc.intake.schema import PRICES, SITE
from calc.intake.spelling import one_of
from calc.model.results import JobValues
from calc.trade.hauling.piles import Pile
from calc.trade.hauling.vehicles import SiteSpec, VehicleSpec
from calc.trade.inputs.job import Disposal, Vehicle, Wage
from calc.trade.inputs.pour import Crew, Mixture
from calc.trade.levels import DISPOSAL as SITE_LEVEL
from calc.trade.levels import ROLE, STREAM, STRENGTH, TOOL, VEHICLE
from calc.trade.money.cost_rows import CONCRETE, DISPOSAL, FEES, LABOR, ROWS, WITHOUT_VEHICLE
from calc.trade.money.costs import CostTable
from calc.trade.ordering.plant import Mix
from calc.trade.prices.rental import Rental
from calc.trade.prices.wage_rates import CrewRate

WAGES, VEHICLES, SITES = "Wages", "Vehicles", "Disposal sites"


@dataclass(frozen=True)
class Lacking:
    """Something to fill in: its sheet, its name there, and its cell where it has a row."""

    sheet: str
    name: str
    cell: str = ""

    def __str__(self) -> str:
        return f"{self.name} ({self.cell})" if self.cell else self.name


_TO_TYPE = {
    PRICES: "Type each in its row of Prices, with the size of a pack where it comes in packs.",
    WAGES: "Type the wage; what people and drivers cost depends on it.",
    VEHICLES: "List a vehicle with its payload and its rates, or the hired truck that takes the spoil.",
    SITES: "List a disposal site that takes it, with what it charges and how far it is.",
    SITE: "Type the permit as a fact of the job; 0 if none is needed.",
}
"""What to type on each sheet that lacks something."""
_NO_ROW = "What has no cell beside it has no row yet: add one with that item."


def missing_prices(job: JobValues) -> list[Finding]:
    """A note for each sheet of the company book that lacks what costs of the job need, with what to type there."""
    lacking: dict[str, list[Lacking]] = {}
    costs: dict[str, set[str]] = {}
    for index, row in enumerate(ROWS):
        if float(job.of(CostTable.unpriced, index)):
            for each in _lacking(job, row):
                lacking.setdefault(each.sheet, []).append(each)
                costs.setdefault(each.sheet, set()).add(row.label)
    return [_finding(job, sheet, list(dict.fromkeys(each)), len(costs[sheet])) for sheet, each in lacking.items()]


def _finding(job: JobValues, sheet: str, lacking: list[Lacking], costs: int) -> Finding:
    count = "1 cost has no price" if costs == 1 else f"{costs} costs have no price"
    book = job.job.place.book if sheet == SITE else job.job.company.name or job.job.place.book
    first = next((each.cell for each in lacking if each.cell), "")
    text = f"{count}: {'; '.join(map(str, lacking))}."
    add = f" {_NO_ROW}" if sheet == PRICES and not all(each.cell for each in lacking) else ""
    remedy = f"The price of the job is not complete. {_TO_TYPE[sheet]}{add}"
    return Finding(FindingKind.MISSING_PRICE, Place(book, sheet, first), text, remedy, job.job.id)


def _lacking(job: JobValues, row: Cost) -> Iterator[Lacking]:
    """What keeps a cost without a price."""
    if row.price is not None:
        yield _price(job, row.price)
    elif row.group == CONCRETE:
        yield _mix(job)
    elif row.group == LABOR:
        yield from _wages(job)
    elif row.group == FEES:
        yield Lacking(SITE, row.label)
    elif row.label == WITHOUT_VEHICLE:
        yield Lacking(VEHICLES, "no vehicle takes the spoil")
    elif row.group == DISPOSAL or not row.label.startswith(_RENTAL):
        yield from _hauling(job)
    else:
        yield _price(job, Rental.day_price.prices[TOOL.axis.words.index(row.label.removeprefix(_RENTAL))])


_RENTAL = "Rental: "


def _price(job: JobValues, price: Price) -> Lacking:
    details = job.job.company.price_rows.get(price)
    return Lacking(PRICES, price.label, details.cell if details else "")


def _mix(job: JobValues) -> Lacking:
    """The price of the mix that is strong enough."""
    strength = float(job.of(Mixture.strength))
    for index, price in enumerate(Mix.cost.prices):
        if float(job.of(Mix.psi, index)) >= strength:
            return _price(job, price)
    strongest = STRENGTH.axis.words[-1]
    return Lacking(PRICES, f"a mix of {strength:g} psi; the strongest of the list is {strongest}")


def _wages(job: JobValues) -> Iterator[Lacking]:
    """The wages of the job's table that are blank, of those that every crew needs."""
    given = Wage.prevailing if str(job.of(Crew.wages)) == "prevailing" else Wage.private
    for index, rate in enumerate((CrewRate.laborer, CrewRate.finisher)):
        if float(job.of(rate)) <= 0:
            yield Lacking(WAGES, f"{ROLE.axis.words[index]}, {given.label.lower()}", _cell(job, index, given))


def _cell(job: JobValues, role: int, given: Input) -> str:
    rows = job.job.rows.get(ROLE, [])
    header = f"{given.label.lower()} {given.unit_shown}"
    return rows[role].refs.get(header, "") if role < len(rows) else ""


def _hauling(job: JobValues) -> Iterator[Lacking]:
    """Why no vehicle and no site can be compared: wages, what is blank of the vehicles, else the sites."""
    vehicles = range(job.count(VEHICLE))
    wages = list(_wages(job))
    usable = [each for each in vehicles if float(job.of(VehicleSpec.known, each))]
    if wages and (not usable or any(each.name.startswith("laborer") for each in wages)):
        yield from wages
        return
    if usable:
        yield from _sites(job)
        return
    for each in vehicles:
        yield from _blank(job, VEHICLE, each, VEHICLES, (Vehicle.struck_capacity, Vehicle.payload, Vehicle.hourly))
    if not vehicles:
        yield Lacking(VEHICLES, "no vehicle")


def _sites(job: JobValues) -> Iterator[Lacking]:
    """What is blank of the sites; where nothing is, no site takes what there is."""
    unknown = [each for each in range(job.count(SITE_LEVEL)) if not float(job.of(SiteSpec.known, each))]
    for each in unknown:
        yield from _blank(job, SITE_LEVEL, each, SITES, (Disposal.minutes, Disposal.miles))
        charges = (Disposal.per_ton, Disposal.per_yard, Disposal.per_load)
        if all(isnan(float(job.of(given, each))) for given in charges):
            yield from _blank(job, SITE_LEVEL, each, SITES, charges[:1])
    if not unknown:
        yield Lacking(SITES, f"no site takes {_kinds(job)}")


def _blank(job: JobValues, level: Level, index: int, sheet: str, givens: tuple[Input, ...]) -> Iterator[Lacking]:
    """The blank cells of a named row of the company book."""
    row = job.job.rows[level][index]
    for given in givens:
        if isnan(float(job.of(given, index))):
            cell = row.refs.get(f"{given.label.lower()} {given.unit_shown}", "")
            yield Lacking(sheet, f"{row.word}, {given.label.lower()}", cell)


def _kinds(job: JobValues) -> str:
    """The piles that are hauled, in words."""
    count = job.count(STREAM)  # a job without plants lacks the first
    words = STREAM.axis.words[len(STREAM.axis.words) - count :]
    hauled = [word for index, word in enumerate(words) if float(job.of(Pile.not_empty, index))]
    return one_of(hauled)
