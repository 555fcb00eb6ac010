"""How some hundred pours are placed, and what that takes and costs, comes out as a plain calculation has it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cache
from math import isclose
from random import Random

import pytest

import reference_placing as plain
from books import intake_from, line
from calc.intake.read_run import has_error
from calc.model.evaluate import evaluate
from calc.model.results import JobValues, each_job
from calc.trade.levels import METHOD
from random_pours import company_tables, drawn_job, random_company, week_tables

HOUSES, JOBS_OF_A_HOUSE, SEED = 16, 25, 5827
known = cache(line)
"""A declaration by its id."""


@dataclass(frozen=True)
class Drawn:
    """A pour that was drawn, how it is placed by the plain calculation, and what the program makes of it."""

    company: plain.CompanyBook
    job: plain.Job
    values: JobValues = field(repr=False)
    ways: list[plain.Way] = field(repr=False)
    costs: dict[str, Fraction] = field(repr=False)
    way: plain.Way
    next_way: plain.Way

    def number(self, name: str, row: int = 0) -> float:
        """What the program gives for a line."""
        return float(self.values.of(known(name), row))


@pytest.fixture(scope="module")
def drawn(tmp_path_factory: pytest.TempPathFactory) -> list[Drawn]:
    """All jobs, each under the company book that it was drawn with, evaluated in one go."""
    chance = Random(SEED)
    given: list[tuple[plain.CompanyBook, plain.Job]] = []
    inputs = []
    for _ in range(HOUSES):
        company = random_company(chance)
        jobs = [(f"job {number}", drawn_job(chance)) for number in range(JOBS_OF_A_HOUSE)]
        intake = intake_from(tmp_path_factory.mktemp("house"), week_tables(jobs), company_tables(company))
        assert not [each for each in intake.jobs if has_error(each, intake.findings)], intake.findings
        inputs += intake.jobs
        given += [(company, job) for _, job in jobs]
    made = []
    for (company, job), values in zip(given, each_job(evaluate(inputs), inputs), strict=True):
        ways = plain.ways(job, company)
        # what a way costs is held to the cent against the engine; here it decides
        paid = [Fraction(str(values.of(known("MethodCost.cost"), row))) for row in range(len(ways))]
        costs = {way.name: cost for way, cost in zip(ways, paid, strict=True)}
        made.append(Drawn(company, job, values, ways, costs, *plain.taken(job, ways, costs, company.tie)))
    return made


def same(got: float, want: Fraction | float) -> bool:
    """Whether a number is wrong in its last digits only."""
    return isclose(got, want, rel_tol=1e-9, abs_tol=1e-9)


def test_every_way_of_placing_has_its_own_order_and_time(drawn: list[Drawn]) -> None:
    for each in drawn:
        for row, way in enumerate(each.ways):
            assert same(each.number("Method.order", row), way.order), (each.job, way)
            assert same(each.number("Method.rate", row), way.pace), (each.job, way)
            assert same(each.number("Method.hours", row), way.hours), (each.job, way)


def test_no_truck_waits_longer_or_is_charged_otherwise_than_by_its_own_load(drawn: list[Drawn]) -> None:
    for each in drawn:
        for row, way in enumerate(each.ways):
            assert each.number("TruckSplit.trucks", row) == way.trucks
            assert same(each.number("TruckSplit.longest_unloading", row), way.longest), (each.job, way)
            assert same(each.number("TruckSplit.standby", row), way.waiting), (each.job, way)
            assert same(each.number("MethodCost.standby", row), way.waiting_fee), (each.job, way)


def test_no_way_is_charged_a_cent_more_or_less_by_the_plant_the_pump_and_the_rental_yard(drawn: list[Drawn]) -> None:
    for each in drawn:
        for row, way in enumerate(each.ways):
            assert same(each.number("MethodCost.concrete", row), way.concrete), (each.company, way)
            assert same(each.number("MethodCost.pump", row), way.pump), (each.company, way)
            assert same(each.number("MethodCost.machines", row), way.machines), (each.company, way)
            assert same(each.number("MethodCost.cleaning", row), way.cleaning), (each.company, way)


def test_a_way_that_is_not_to_be_had_not_priced_or_too_slow_does_not_fit(drawn: list[Drawn]) -> None:
    for each in drawn:
        fits = [each.number("MethodFit.fits", row) for row in range(len(each.ways))]
        assert fits == [way.fits for way in each.ways], each.job


def test_the_cheapest_way_that_fits_is_taken_and_the_next_one_is_named(drawn: list[Drawn]) -> None:
    for each in drawn:
        assert each.values.of(known("Placing.name")) == each.way.name, each.job
        assert METHOD.axis.words[int(each.number("RunnerUpMethod.row")) - 1] == each.next_way.name, each.job
        more = each.costs[each.next_way.name] - each.costs[each.way.name] if each.next_way.fits else Fraction(0)
        assert same(each.number("RunnerUpMethod.costs_more"), more), each.job


def test_what_is_phoned_to_the_plant_is_the_order_of_the_way_that_is_taken(drawn: list[Drawn]) -> None:
    for each in drawn:
        bags = each.way.name == "bags"
        assert same(each.number("Order.quantity"), 0 if bags else each.way.order), each.job
        assert each.number("Order.trucks") == each.way.trucks
        assert each.number("Order.bags") == (plain.bags_needed(each.job, each.company) if bags else 0)
        need = each.job.in_place * Fraction(103, 100) + plain.prime(each.way.name == "pump")
        assert same(each.number("Order.required"), need), each.job
        assert same(each.number("Order.overage"), each.way.order - need), each.job


def test_the_pour_takes_and_costs_what_its_way_was_compared_with(drawn: list[Drawn]) -> None:
    for each in drawn:
        way, bags = each.way, each.way.name == "bags"
        nothing = bags and not way.order  # no bag has a yield
        assert same(each.number("Pour.hours"), 0 if nothing else way.hours), each.job
        assert same(each.number("PourCost.longest_unloading"), way.longest), each.job
        assert same(each.number("PourCost.standby"), way.waiting_fee), each.job
        assert same(each.number("PourCost.pump"), way.pump), each.job
        from_plant = sum(each.number(f"PourCost.{part}") for part in ("concrete", "fees", "delivery"))
        asked = 0 if bags else plain.charge(each.company, way.order, way.name == "pump")
        assert same(from_plant, asked), each.job


def test_a_stop_stands_where_no_truck_is_emptied_in_time(drawn: list[Drawn]) -> None:
    for each in drawn:
        late = not each.way.can or each.way.late
        assert each.number("PourCautions.unloading_time_fires") == late, (each.job, each.way)


def test_fast_drying_is_warned_of_and_stopped_at_its_limits(drawn: list[Drawn]) -> None:
    for each in drawn:
        dries = plain.drying(each.job)
        assert same(each.number("Evaporation.rate"), dries), each.job
        assert each.number("PourCautions.evaporation_fires") == (0.1 < dries <= 0.2)
        assert each.number("PourCautions.evaporation_unplanned_fires") == (dries > 0.2)


LIMITS_MET = (
    *(
        "chute",
        "wheelbarrow",
        "pump",
        "bags",
        "named by hand",
        "no way fits",
        "nothing can be done",
        "price decides not",
    ),
    *(
        "just in time",
        "waits for nothing",
        "equal cost",
        "equal cost and hours",
        "dearer, but faster",
        "just small enough for bags",
    ),
    *("equal cost and hours", "dearer, but faster", "several trucks", "uneven trucks", "just hot", "just not steep"),
)
"""What must be met by some of the drawn pours, or a comparison that is off by one has nothing to show itself in."""


def limits(each: Drawn) -> Iterator[str]:
    """The limits that a pour meets exactly."""
    job, way, left = each.job, each.way, plain.minutes_left(each.job)
    yield way.name
    yield from ["named by hand"] * (job.named == way.name)
    yield from ["no way fits"] * (not way.fits and way.late)
    yield from ["nothing can be done"] * (not way.can)
    yield from ["price decides not"] * (way.can and way.lacking > 0)
    yield from ["just in time"] * (way.trucks > 0 and way.longest == left)
    barrow = each.ways[1]
    free = plain.FREE_A_YARD * max(plain.loads(barrow.order))
    yield from ["waits for nothing"] * (barrow.longest == free > plain.FREE)
    more = [(other, each.costs[other.name] - each.costs[way.name]) for other in each.ways if other is not way]
    tied = [other for other, dollars in more if other.fits and way.fits and abs(dollars) <= each.company.tie]
    yield from ["equal cost"] * bool(tied)
    yield from ["equal cost and hours"] * any(other.hours == way.hours for other in tied)
    yield from ["dearer, but faster"] * any(dollars < 0 and other in tied for other, dollars in more)
    yield from ["just small enough for bags"] * (job.in_place == plain.LARGEST_BAG_POUR)
    yield from ["several trucks"] * (way.trucks > 1)
    yield from ["uneven trucks"] * (way.trucks > 1 and len(set(plain.loads(way.order))) > 1)
    yield from ["just hot"] * (job.air == 85)
    yield from ["just not steep"] * (job.slope == 5)


def test_the_drawn_pours_meet_every_limit_exactly(drawn: list[Drawn]) -> None:
    met: Counter[str] = Counter()
    for each in drawn:
        met.update(limits(each))
    assert len(drawn) >= 300
    assert {limit: met[limit] for limit in LIMITS_MET if met[limit] < 5} == {}
