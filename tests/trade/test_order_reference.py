"""The ladder of orders of some hundred pours comes out as a plain calculation has it, rung by rung, and as draws do."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cache, cached_property
from math import isclose
from random import Random

import numpy as np
import pytest

import reference_order as plain
import reference_pour as pour
from books import intake_from, line
from calc.intake.read_run import has_error
from calc.model.evaluate import evaluate
from calc.model.results import JobValues, each_job
from calc.trade.levels import ORDER_SIZE
from random_orders import company_tables, drawn_job, random_company, week_tables

HOUSES, JOBS_OF_A_HOUSE, SEED = 12, 26, 4173
DRAWS, SIMULATED = 200_000, 12
"""Pours that are drawn for each order that is tried, and jobs that are simulated."""
TRUCK, PUMP = 0, 1
known = cache(line)
"""A declaration by its id."""


@dataclass(frozen=True)
class Drawn:
    """A pour that was drawn, and what the program makes of it."""

    company: pour.CompanyBook
    job: pour.Job
    values: JobValues = field(repr=False)

    def number(self, name: str, row: int = 0) -> float:
        """What the program gives for a line."""
        return float(self.values.of(known(name), row))

    def rungs(self, name: str, pouring: int) -> list[float]:
        """What the program gives for a line of the ladder, bottom to top; the rows beyond its top repeat it."""
        count, needed = self.values.count(ORDER_SIZE) // 2, int(self.number("Shortage.sizes", pouring))
        every = [self.number(name, pouring * count + rung) for rung in range(count)]
        assert {*every[needed:]} == {every[needed - 1]}
        return every[:needed]

    @cached_property
    def ladders(self) -> tuple[list[plain.OrderCandidate], list[plain.OrderCandidate]]:
        """The plain ladders, from the truck and through a pump."""
        return plain.ladder(self.company, self.job, pump=False), plain.ladder(self.company, self.job, pump=True)

    @cached_property
    def order(self) -> Fraction:
        """The plain order."""
        return plain.ordered(self.company, self.job)

    @cached_property
    def misses(self) -> tuple[plain.Miss, plain.Miss]:
        """What orders stand against, from the truck and through a pump."""
        return plain.miss(self.company, self.job, pump=False), plain.miss(self.company, self.job, pump=True)


@pytest.fixture(scope="module")
def drawn(tmp_path_factory: pytest.TempPathFactory) -> list[Drawn]:
    """All pours, each under the company book that it was drawn with, evaluated in one go."""
    chance = Random(SEED)
    given: list[tuple[pour.CompanyBook, pour.Job]] = []
    inputs = []
    for _ in range(HOUSES):
        company = random_company(chance)
        jobs = [(f"job {number}", drawn_job(chance)) for number in range(JOBS_OF_A_HOUSE)]
        intake = intake_from(tmp_path_factory.mktemp("house"), week_tables(jobs), company_tables(company))
        assert not [each for each in intake.jobs if has_error(each, intake.findings)], intake.findings
        inputs += intake.jobs
        given += [(company, job) for _, job in jobs]
    values = each_job(evaluate(inputs), inputs)
    return [Drawn(company, job, each) for (company, job), each in zip(given, values, strict=True)]


def same(got: float, want: Fraction | float) -> bool:
    """Whether a number is wrong in its last digits only."""
    return isclose(got, want, rel_tol=1e-9, abs_tol=1e-9)


def all_same(got: Sequence[float], want: Sequence[Fraction | float]) -> bool:
    """The same, number by number."""
    return all(same(*pair) for pair in zip(got, want, strict=True))


def test_the_spread_of_a_volume_is_that_of_the_mean_and_not_of_single_depths(drawn: list[Drawn]) -> None:
    for each in drawn:
        for row, area in enumerate(each.job.areas):
            assert same(each.number("DepthUncertainty.mean_std_dev", row), pour.mean_spread(each.company, area))
        assert same(each.number("VolumeUncertainty.std_dev"), each.misses[TRUCK].spread)


@pytest.mark.parametrize("pouring", [TRUCK, PUMP], ids=["from the truck", "through a pump"])
def test_no_cost_of_a_miss_is_forgotten(pouring: int, drawn: list[Drawn]) -> None:
    for each in drawn:
        miss = each.misses[pouring]
        assert same(each.number("Shortage.required", pouring), miss.need)
        assert same(each.number("Shortage.shortage_cost", pouring), miss.lump)
        assert same(each.number("Shortage.surplus_cost", pouring), miss.yard)
        assert same(each.number("DischargePrice.yard", pouring), miss.price)


def test_the_mix_is_never_weaker_than_asked_nor_stronger_than_need_be(drawn: list[Drawn]) -> None:
    for each in drawn:
        strength = pour.mix(each.company, each.job)
        assert each.number("ChosenMix.known") == (strength is not None)
        assert each.number("ChosenMix.psi") == (strength or each.job.psi)


@pytest.mark.parametrize("pouring", [TRUCK, PUMP], ids=["from the truck", "through a pump"])
def test_every_rung_costs_what_it_costs_on_paper(pouring: int, drawn: list[Drawn]) -> None:
    for each in drawn:
        ladder = each.ladders[pouring]
        assert all_same(each.rungs("OrderCandidate.order", pouring), [rung.order for rung in ladder])
        assert each.rungs("OrderCandidate.trucks", pouring) == [len(rung.loads) for rung in ladder]
        assert all_same(each.rungs("OrderCandidate.plant_charges", pouring), [rung.charge for rung in ladder])
        assert all_same(each.rungs("OrderCandidate.risk", pouring), [rung.chance for rung in ladder])
        assert all_same(each.rungs("OrderCandidate.shortfall", pouring), [rung.short for rung in ladder])
        assert all_same(each.rungs("OrderCandidate.surplus", pouring), [rung.left for rung in ladder])
        assert all_same(each.rungs("OrderCandidate.expected_cost", pouring), [rung.expected for rung in ladder]), (
            each.job
        )


@pytest.mark.parametrize("pouring", [TRUCK, PUMP], ids=["from the truck", "through a pump"])
def test_the_cheapest_rung_is_taken_and_of_equals_the_least_order(pouring: int, drawn: list[Drawn]) -> None:
    for each in drawn:
        best = plain.best(each.ladders[pouring])
        assert each.number("BestOrder.order", pouring) == best.order
        assert same(each.number("BestOrder.expected_cost", pouring), best.expected)


@pytest.mark.parametrize("pouring", [TRUCK, PUMP], ids=["from the truck", "through a pump"])
def test_the_percent_rule_beside_the_ladder_says_what_it_says_on_paper(pouring: int, drawn: list[Drawn]) -> None:
    for each in drawn:
        company, miss = each.company, each.misses[pouring]
        percent = plain.by_percent(company, each.job, pump=pouring == PUMP)
        assert each.number("OtherOrderRules.by_percent", pouring) == percent
        assert same(each.number("OtherOrderRules.percent_risk", pouring), plain.chance_of(percent, miss))


def test_the_plant_is_phoned_the_order_of_the_rule(drawn: list[Drawn]) -> None:
    for each in drawn:
        order, miss = each.order, each.misses[TRUCK]
        assert each.number("Order.quantity") == order
        assert same(each.number("Order.risk"), plain.chance_of(order, miss))
        assert same(each.number("Order.surplus"), plain.left_of(order, miss))
        loads = pour.split(each.company.plant, order)
        assert [each.number("TruckLoad.yards", truck) for truck in range(len(loads))] == list(loads)


def test_a_balance_call_is_worth_what_it_is_on_paper(drawn: list[Drawn]) -> None:
    for each in drawn:
        call = plain.balance_call(each.company.plant, each.order, each.misses[TRUCK])
        assert each.number("Balance.last_load") == call.last
        assert same(each.number("Balance.risk"), call.chance)
        assert same(each.number("Balance.surplus"), call.left)
        assert same(each.number("Balance.saving"), call.saves)


def test_bags_are_counted_once_and_not_for_a_pour_that_is_too_large(drawn: list[Drawn]) -> None:
    for each in drawn:
        count, can = plain.bags(each.company, each.job)
        assert each.number("Bags.bags") == count
        assert each.number("Bags.possible") == can


def test_the_expected_cost_is_what_two_hundred_thousand_pours_cost_on_the_average(drawn: list[Drawn]) -> None:
    chances = np.random.default_rng(SEED)
    spreading = [each for each in drawn if each.number("ChosenMix.known") and each.misses[TRUCK].spread > 0.1]
    assert len(spreading) >= SIMULATED
    for each in spreading[:SIMULATED]:
        need = needs(each, chances)
        miss, orders = each.misses[TRUCK], each.rungs("OrderCandidate.order", TRUCK)
        charges, costs = (
            each.rungs("OrderCandidate.plant_charges", TRUCK),
            each.rungs("OrderCandidate.expected_cost", TRUCK),
        )
        for order, charge, cost in list(zip(orders, charges, costs, strict=True))[:16]:
            left = np.maximum(order - need, 0.0).mean()
            drawn_cost = charge + float(each.company.left_over) * left + float(miss.lump) * (need > order).mean()
            assert drawn_cost == pytest.approx(cost, rel=0.01), (each.job, order)


def needs(each: Drawn, chances: np.random.Generator) -> np.ndarray[tuple[int], np.dtype[np.float64]]:
    """What pours take that are off by chance in each way by itself: depths, string line, tape, yield of the plant."""
    errors = [chances.normal(0.0, part, DRAWS) for part in pour.spread_parts(each.company, each.job)]
    return np.asarray(float(each.misses[TRUCK].need) + np.sum(errors, axis=0))


LIMITS_MET = (
    *("no spread", "need of whole steps", "first rung is the least order", "more than sixteen rungs"),
    *("best load is a limit", "best rungs of equal cost", "trucks with unlike fees", "a full truck"),
    *("three trucks", "no price", "next strength up", "pump orders more"),
    *("below the percent rule", "above the percent rule", "quick formula says the need", "bags can do it"),
    *("four depths", "depths all alike", "a balance call that saves"),
)
"""What must be met by some of the drawn pours, or a comparison that is off by one has nothing to show itself in."""


def ladder_limits(each: Drawn) -> Iterator[str]:
    """The limits of the ladder that a pour meets exactly."""
    plant, miss, ladder = each.company.plant, each.misses[TRUCK], each.ladders[TRUCK]
    best = plain.best(ladder)
    limits = {limit for limit, _ in plant.tiers}
    yield from ["no spread"] * (miss.spread == 0)
    yield from ["need of whole steps"] * ((miss.need / plant.step).denominator == 1)
    yield from ["first rung is the least order"] * (ladder[0].order == plain.at_least(plant))
    yield from ["more than sixteen rungs"] * (len(ladder) > 16)
    yield from ["best load is a limit"] * bool(limits & set(best.loads))
    yield from ["best rungs of equal cost"] * (sum(rung.expected == best.expected for rung in ladder) > 1)
    yield from ["trucks with unlike fees"] * any(len({pour.fee(plant, x) for x in rung.loads}) > 1 for rung in ladder)
    yield from ["a full truck"] * (best.loads[0] == plant.capacity)
    yield from ["three trucks"] * (len(best.loads) > 2)
    yield from ["pump orders more"] * (plain.best(each.ladders[PUMP]).order > best.order)


def job_limits(each: Drawn) -> Iterator[str]:
    """The limits of the other rules that a pour meets exactly."""
    strength, miss = pour.mix(each.company, each.job), each.misses[TRUCK]
    percent, order = plain.by_percent(each.company, each.job, pump=False), plain.best(each.ladders[TRUCK]).order
    depths = [area.depths for area in each.job.areas]
    yield from ["no price"] * (strength is None)
    yield from ["next strength up"] * (strength is not None and strength > each.job.psi)
    yield from ["below the percent rule"] * (order < percent)
    yield from ["above the percent rule"] * (order > percent)
    yield from ["quick formula says the need"] * (miss.spread > 0 and plain.quick(miss)[0] == 0)
    yield from ["bags can do it"] * plain.bags(each.company, each.job)[1]
    yield from ["four depths"] * any(len(each) == 4 for each in depths)
    yield from ["depths all alike"] * any(len(each) > 3 and len(set(each)) == 1 for each in depths)
    yield from ["a balance call that saves"] * (plain.balance_call(each.company.plant, each.order, miss).saves > 0)


def test_the_drawn_pours_meet_every_limit_exactly(drawn: list[Drawn]) -> None:
    met: Counter[str] = Counter()
    for each in drawn:
        met.update([*ladder_limits(each), *job_limits(each)])
    assert len(drawn) >= 300
    assert {limit: met[limit] for limit in LIMITS_MET if met[limit] < 3} == {}
