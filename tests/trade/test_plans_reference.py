"""The haul that is chosen for some hundred jobs is the one that a plain calculation of every plan chooses."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cache, cached_property
from math import isclose
from random import Random

import pytest

import reference_clock as clock
import reference_plans as plain
from books import intake_from, line
from calc.intake.read_run import has_error
from calc.model.evaluate import evaluate
from calc.model.results import JobValues, each_job
from random_plans import ROADS, company_tables, drawn_task, random_company, week_tables

HOUSES, JOBS_OF_A_HOUSE, SEED = 12, 26, 2961
known = cache(line)
"""A declaration by its id."""
HAULED = (*plain.STREAMS, "mixed")
"""The piles of a plan, in the order of the rows."""


@dataclass(frozen=True)
class Drawn:
    """A job that was drawn, and what the program makes of it."""

    company: plain.CompanyBook
    task: plain.Task
    values: JobValues = field(repr=False)

    @cached_property
    def chosen(self) -> plain.Chosen:
        """What the plain calculation chooses."""
        return plain.chosen(self.task, self.company)

    @property
    def taken(self) -> plain.PlanCost:
        """The haul that it takes."""
        return self.chosen.taken

    def got(self, name: str, row: int = 0) -> float | str:
        """What the program gives for a line."""
        return self.values.of(known(name), row)

    def number(self, name: str, row: int = 0) -> float:
        """The same, for a line that is a number."""
        return float(self.got(name, row))

    def rides(self) -> Iterator[tuple[int, plain.TruckSplit]]:
        """The piles of the haul that is taken, each with its row."""
        for ride in self.taken.rides:
            yield HAULED.index(ride.kind), ride


@pytest.fixture(scope="module")
def drawn(tmp_path_factory: pytest.TempPathFactory) -> list[Drawn]:
    """All jobs, each under the company book that it was drawn with."""
    chance = Random(SEED)
    given: list[tuple[plain.CompanyBook, plain.Task]] = []
    inputs = []
    for number in range(HOUSES):
        company = random_company(chance, ROADS[number % len(ROADS)])
        tasks = [(f"job {place}", drawn_task(chance, company)) for place in range(JOBS_OF_A_HOUSE)]
        intake = intake_from(tmp_path_factory.mktemp("house"), week_tables(tasks), company_tables(company))
        assert not [each for each in intake.jobs if has_error(each, intake.findings)], intake.findings
        inputs += intake.jobs
        given += [(company, task) for _, task in tasks]
    values = each_job(evaluate(inputs), inputs)
    return [Drawn(company, task, each) for (company, task), each in zip(given, values, strict=True)]


def same(got: float, want: Fraction | int) -> bool:
    """Whether a number is wrong in its last digits only."""
    return isclose(got, want, rel_tol=1e-9, abs_tol=1e-9)


def test_no_plan_on_any_vehicle_costs_otherwise_than_the_rules_have_it(drawn: list[Drawn]) -> None:
    for each in drawn:
        for row, offer in enumerate(each.chosen.every):
            assert each.number("PlanCost.feasible", row) == offer.known, (each.task, offer)
            assert each.number("PlanCost.is_compared", row) == (offer in each.chosen.rivals), (each.task, offer)
            assert each.number("PlanHours.loads", row) == offer.loads, (each.task, offer)
            if offer.known:
                assert same(each.number("PlanCost.cost", row), offer.cost), (each.task, offer)
                assert same(each.number("PlanHours.trips", row), offer.hours), (each.task, offer)


def test_the_haul_that_is_taken_is_the_cheapest_or_what_a_person_chose(drawn: list[Drawn]) -> None:
    for each in drawn:
        told = each.got("Choice.plan_name"), each.got("Choice.vehicle_name")
        assert told == (each.taken.plan, each.taken.vehicle.name), (each.task, each.company)
        assert (each.number("PlanCost.eligible_all") > 0) == each.chosen.compared
        assert same(each.number("Choice.compared_cost"), each.taken.cost if each.chosen.compared else 0)
        assert each.number("Choice.loads") == each.taken.loads


def test_the_runner_up_and_the_difference_are_those_of_the_next_cheapest(drawn: list[Drawn]) -> None:
    for each in drawn:
        rival = each.chosen.runner_up
        told = each.got("RunnerUp.plan_name"), each.got("RunnerUp.vehicle_name")
        assert told == ((rival.plan, rival.vehicle.name) if rival else ("none", "none")), (each.task, each.company)
        assert same(each.number("RunnerUp.difference"), rival.cost - each.taken.cost if rival else 0)
        assert each.number("RunnerUp.near_tie") == each.chosen.wash, (each.task, each.company)


def test_every_pile_of_the_haul_goes_to_its_cheapest_gate(drawn: list[Drawn]) -> None:
    for each in drawn:
        loads = [0] * len(HAULED)
        for row, ride in each.rides():
            loads[row] = ride.loads
            assert same(each.number("Hauled.loose", row), ride.pile.loose)
            assert same(each.number("Hauled.tons", row), ride.pile.tons)
            assert each.got("Hauled.site_name", row) == (ride.site.name if ride.site else "none"), each.task
            assert same(each.number("Hauled.dump_fee", row), ride.tipping)
            assert same(each.number("Hauled.surcharge", row), ride.dirty)
        assert [each.number("Hauled.loads", row) for row in range(len(HAULED))] == loads


def test_the_clock_of_the_haul_is_that_of_its_gates(drawn: list[Drawn]) -> None:
    for each in drawn:
        last = clock.last_loads(each.chosen)
        for row, ride in each.rides():
            if ride.site is not None:
                assert same(each.number("Hauled.round_trip", row), ride.site.trip)
            day, hour = last.get(ride.kind, (0, Fraction(0)))
            assert each.number("Hauled.arrival_day", row) == day, (each.task, ride)
            assert same(each.number("Hauled.last_arrival", row), hour), (each.task, ride)
            late = clock.too_late(ride, hour if day else None)
            assert same(each.number("Hauled.late_by", row), late), (each.task, ride)
        hours = each.taken.hours if each.chosen.compared else Fraction(0)
        assert same(each.number("Choice.hours"), hours)
        assert same(each.number("Choice.own_hours"), 0 if each.taken.vehicle.hired else hours)
        assert each.number("Choice.last_day") == clock.last_day(each.chosen)


LIMITS_MET = (
    *("nothing can be compared", "nothing to haul", "an empty pile", "a plan by hand", "a vehicle by hand"),
    *("a plan by hand is dearer", "a plan by hand cannot be done", "tie of plans", "tie decided by loads"),
    *("a wash", "just $25 apart", "no runner-up", "a hire topped up", "a minimum decides", "a surcharge"),
    *("two sites of a kind", "sites that cost the same", "a site turns wet soil away", "a site turns roots away"),
    *("a site without figures", "a vehicle without figures", "the gate is closed", "weight decides"),
    *("more than a day of loads", "a hire waits"),
)
"""What must be met by some of the drawn jobs, or a comparison that is off has nothing to show itself in."""


def limits_of_the_choice(each: Drawn) -> Iterator[str]:
    """What of the choice a job meets."""
    chosen, task = each.chosen, each.task
    yield from ["nothing can be compared"] * (not chosen.compared)
    yield from ["nothing to haul"] * (not chosen.taken.rides)
    yield from ["an empty pile"] * any(not pile.tons for pile in task.piles.values())
    yield from ["a plan by hand"] * bool(task.plan and chosen.compared)
    yield from ["a vehicle by hand"] * bool(task.by and chosen.compared)
    yield from ["a plan by hand cannot be done"] * bool(task.plan and not chosen.compared)
    rival = chosen.runner_up
    if rival is None:
        yield from ["no runner-up"] * chosen.compared
        return
    apart = rival.cost - chosen.taken.cost
    yield from ["a plan by hand is dearer"] * (apart < 0)
    yield from ["tie of plans"] * (apart == 0)
    yield from ["tie decided by loads"] * (apart == 0 and rival.loads > chosen.taken.loads)
    yield from ["a wash"] * chosen.wash
    yield from ["just $25 apart"] * (abs(apart) == plain.WASH_MONEY and chosen.wash)


def limits_of_the_gates(each: Drawn) -> Iterator[str]:
    """What of sites and vehicles a job meets."""
    taken, task, company = each.taken, each.task, each.company
    yield from ["a hire topped up"] * (each.chosen.compared and taken.topped > 0)
    yield from ["more than a day of loads"] * (clock.last_day(each.chosen) > 1)
    yield from ["a hire waits"] * (each.chosen.compared and taken.hire > 0 and taken.topped == 0)
    yield from ["a vehicle without figures"] * any(vehicle.hourly is None for vehicle in company.vehicles)
    for ride in taken.rides:
        streams = dict(plain.heaps(taken.plan, task))[ride.kind]
        kind = [site for site in company.sites if site.kind == ride.kind]
        open_to_it = [site for site in kind if plain.takes(site, ride.kind, streams, task)]
        yield from ["weight decides"] * (ride.by_weight > ride.by_room)
        yield from ["a surcharge"] * (ride.dirty > 0)
        yield from ["two sites of a kind"] * (len(open_to_it) > 1)
        yield from ["a site without figures"] * any(not site.known for site in kind)
        shut = [site for site in kind if site.known and site not in open_to_it]
        yield from ["a site turns wet soil away"] * any(not site.wet for site in shut)
        yield from ["a site turns roots away"] * any(not site.roots for site in shut)
        yield from ["sites that cost the same"] * any(site.name == "twin site" for site in open_to_it)
        arrives = clock.last_loads(each.chosen).get(ride.kind, (0, None))[1]
        yield from ["the gate is closed"] * (clock.too_late(ride, arrives) > 0)
        least = ride.site is not None and ride.tipping == ride.loads * ride.site.least
        yield from ["a minimum decides"] * (least and ride.tipping > 0)


def test_the_drawn_jobs_meet_every_limit(drawn: list[Drawn]) -> None:
    met: Counter[str] = Counter()
    for each in drawn:
        met.update({*limits_of_the_choice(each), *limits_of_the_gates(each)})
    assert len(drawn) >= 300
    assert {limit: met[limit] for limit in LIMITS_MET if met[limit] < 5} == {}
