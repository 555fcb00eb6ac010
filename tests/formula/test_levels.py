"""Numbers go up, down and across between levels to the right rows, and never to the rows of another job."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.declare import JOB, FormulaError, argmin, least, named_rows, slot_rows, typed_rows
from calc.formula.across import running
from calc.formula.compute import Batch
from calc.formula.tree import Named
from small_jobs import AWKWARD, NO_EDGES, ONE_OF_EACH, Job, Value, evaluate, jobs, of_job
from small_trade import (
    AREA,
    DRIVE,
    EDGE,
    HAUL,
    MIX,
    PLAN,
    VEHICLE,
    Cheapest,
    Drive,
    Driven,
    Edge,
    Haul,
    PlanCost,
    Rail,
    Railed,
    Slab,
    Truck,
    Vehicle,
    VehicleCost,
    Way,
    Whole,
    Won,
)

CHUNK = (NO_EDGES, AWKWARD, ONE_OF_EACH, NO_EDGES)
FRAME = evaluate(CHUNK)
BARE, FULL, ONE, LAST = range(len(CHUNK))
"""The jobs of the chunk by their place in it."""


@pytest.mark.parametrize(
    ("named", "job", "expected"),
    [
        (Slab.run, FULL, [16.5, 0, 15.5]),
        (Slab.run, ONE, [9]),
        (Slab.run, BARE, [0, 0]),
        (Railed.run, FULL, [4, 0, 7.5]),
        (Rail.railed.all_rows, FULL, [11.5]),
        (Rail.railed.all_rows, LAST, [0]),
        (Driven.effort, FULL, [16.5 * 101.255, 0, 15.5 * 101.255]),
        (Cheapest.efforts, FULL, [32 * 101.255]),
        (Cheapest.efforts, LAST, [0]),
        (PlanCost.loads, FULL, [4 + 7 + 10, 1 + 3 + 4]),
        (PlanCost.loads, BARE, [0]),
        (VehicleCost.cost, FULL, [165.02 + 41.26, 7 * 30 + 3 * 30, 10 * 30 + 4 * 30]),
    ],
)
def test_a_total_takes_the_rows_of_its_own_row_and_is_0_without_any(
    named: Named, job: int, expected: list[float]
) -> None:
    assert of_job(FRAME, named, job) == pytest.approx(expected)


@pytest.mark.parametrize(
    ("named", "job", "expected"),
    [
        (Rail.band, FULL, [37.5, 50, 16, 40]),
        (Rail.of_area, FULL, [3, 1, 1, 3]),
        (Rail.area_called, FULL, ["of <5", "of 1", "of 1", "of <5"]),
        (Rail.of_run, FULL, [15.5, 16.5, 16.5, 15.5]),
        (Rail.share, BARE, []),
        (Slab.share, BARE, [0.5, 0.5]),
        (Slab.says, FULL, ["no. 1 is 1", "no. 2 is 001", "no. 3 is <5"]),
        (Drive.band, ONE, [27]),
        (Drive.slab_share, ONE, [1]),
        (Rail.earlier, FULL, [0, 0, 12.5, 0]),
        (Rail.opening, FULL, [7.5, 12.5, 12.5, 7.5]),
        (Haul.so_far, FULL, [4, 11, 21, 1, 4, 8]),
        (Rail.found, FULL, [40, 50, 50, 40]),
        (Rail.alike, FULL, [15.5, 16.5, 16.5, 15.5]),
        (Rail.twin, FULL, [1, 2, 2, 1]),
    ],
)
def test_a_row_gets_what_belongs_to_the_row_that_it_lies_in(named: Named, job: int, expected: list[Value]) -> None:
    assert of_job(FRAME, named, job) == pytest.approx(expected)


@pytest.mark.parametrize(
    ("named", "job", "expected"),
    [
        (Whole.mix_cost, FULL, 149.25),
        (Whole.mix_cost, ONE, 171.1),
        (Whole.mix_cost, BARE, 120),
        (Whole.smallest, FULL, 2),
        (Whole.thickness, FULL, 4),
        (Whole.thickness, LAST, 5),
        (Whole.shortest, FULL, 4),
        (Whole.longest, FULL, 12.5),
        (Whole.shortest, LAST, 0),
        (Whole.longest, LAST, 0),
        (Cheapest.cost, FULL, 41.26),
        (Cheapest.row, FULL, 4),
        (Cheapest.cost, LAST, 0),
        (Cheapest.row, LAST, 0),
        (Won.name, FULL, "by hand"),
        (Won.cost, ONE, 4.12),
        (Won.by_trucks, FULL, "by pump"),
        (Won.by_trucks, ONE, "by cart"),
        (Won.sentence, ONE, "way 3, by pump"),
    ],
)
def test_the_job_gets_the_row_it_asks_for_and_0_where_there_is_none(named: Named, job: int, expected: Value) -> None:
    assert of_job(FRAME, named, job) == [expected]


def test_of_rows_that_are_all_least_the_first_wins_in_every_job() -> None:
    costs = of_job(FRAME, Way.cost, FULL)
    assert costs == [costs[0]] * 3
    assert of_job(FRAME, Won.row, FULL) == [1]
    for job in (BARE, LAST):
        assert of_job(FRAME, Slab.area, job) == [200, 200]
        assert of_job(FRAME, Whole.smallest, job) == [1]


def test_a_forced_row_changes_what_is_used_and_the_total_and_no_other_row() -> None:
    computed, used = of_job(FRAME, Slab.volume.computed, FULL), of_job(FRAME, Slab.volume, FULL)
    assert used == [computed[0], 1.25, computed[2]]
    assert of_job(FRAME, Slab.volume.all_rows, FULL) == pytest.approx([sum(used)])
    assert of_job(FRAME, Slab.volume, BARE) == of_job(FRAME, Slab.volume.computed, BARE)


def test_a_pair_has_a_row_for_each_of_one_with_each_of_the_other() -> None:
    rows = FRAME.rows_of(HAUL)
    mine = rows.job == FULL
    assert rows.words[mine].tolist() == ["A*, big", "A*, BIG", "A*, ?", "1E3, big", "1E3, BIG", "1E3, ?"]
    assert rows.number[mine].tolist() == [1, 2, 3, 4, 5, 6]
    assert of_job(FRAME, Haul.loads, FULL) == [4, 7, 10, 1, 3, 4]
    assert [len(of_job(FRAME, Drive.effort, job)) for job in (BARE, FULL, ONE)] == [0, 4 * 3, 1]


def test_three_levels_together_find_the_pair_and_the_single_row_above_them() -> None:
    trip = slot_rows("trip")
    frame = evaluate([AWKWARD, ONE_OF_EACH])
    frame.add_rows(trip, [0, 0, 1, 1], (), [""] * 4)
    assert frame.above(HAUL * trip, PLAN).tolist() == [0] * 6 + [1] * 6 + [2] * 2
    assert frame.above(HAUL * trip, VEHICLE).tolist() == [0, 0, 1, 1, 2, 2] * 2 + [3] * 2
    assert frame.above(HAUL * trip, HAUL).tolist() == [0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 5, 5, 6, 6]


def test_each_plan_finds_its_own_cheapest_vehicle_and_none_of_another_plan() -> None:
    costs = of_job(FRAME, Haul.cost, FULL)
    assert of_job(FRAME, PlanCost.cost, FULL) == [min(costs[:3]), min(costs[3:])]
    assert of_job(FRAME, PlanCost.dearest, FULL) == [max(costs[:3]), max(costs[3:])]
    places = [costs[:3].index(min(costs[:3])) + 1, costs[3:].index(min(costs[3:])) + 1]
    assert of_job(FRAME, PlanCost.place, FULL) == places
    loads = of_job(FRAME, Haul.loads, FULL)
    assert of_job(FRAME, PlanCost.best_loads, FULL) == [loads[places[0] - 1], loads[3 + places[1] - 1]]


@pytest.mark.parametrize(
    ("costs", "places"),
    [
        ([41.26, 50, 60, 30 * (1 + 4e-16), 30, 90], [1, 1]),
        ([50, 41.26, 60, 90, 3e9 * (1 + 4e-16), 3e9], [2, 1]),
        ([60, 3, 50, 3e9, 90, 90 * (1 + 1e-12)], [2, 2]),
        ([3, 3 * (1 - 1e-12), 50, 1e6, 1e6 - 1e-3, 2e6], [2, 2]),
        ([0, 0, 5, 7, 0, 0], [1, 2]),
    ],
    ids=["dust in the second group", "dust beside a large number", "dust is of its own group", "less is less", "zeros"],
)
def test_what_differs_by_dust_is_a_tie_in_its_group_and_the_first_row_wins(
    costs: list[float], places: list[int]
) -> None:
    frame = evaluate([AWKWARD])
    assert len(costs) == len(frame.columns[Haul.cost])
    frame.columns[Haul.cost] = np.array(costs, dtype=float)
    assert frame.value(argmin(Haul.cost, PLAN), PLAN).tolist() == places


def test_a_least_over_rows_that_do_not_stand_together_is_refused() -> None:
    with pytest.raises(FormulaError, match="are not contiguous"):
        least(Haul.cost, VEHICLE)
    with pytest.raises(FormulaError, match="are not contiguous"):
        argmin(Edge.run, AREA)


def test_every_job_has_the_slots_it_needs_and_the_rest_count_nothing() -> None:
    assert [of_job(FRAME, Truck.rides, job) for job in (FULL, ONE)] == [[1, 1, 1, 0], [1, 0]]
    for job in range(len(CHUNK)):
        assert of_job(FRAME, Truck.rides.all_rows, job) == of_job(FRAME, Whole.trucks, job)


def test_a_level_knows_what_stands_above_it() -> None:
    assert JOB <= AREA <= EDGE <= DRIVE
    assert PLAN <= HAUL
    assert not AREA <= HAUL
    assert AREA * EDGE == EDGE
    assert [str(level) for level in (JOB, EDGE, HAUL, DRIVE)] == ["job", "edge", "plan and vehicle", "edge and vehicle"]
    assert typed_rows("area", across=True) == AREA


def test_few_named_rows_stand_side_by_side_and_many_one_below_the_other() -> None:
    assert named_rows("way", "a", "b").across
    assert not MIX.across
    assert not HAUL.across


def test_rows_that_nobody_gave_are_named() -> None:
    with pytest.raises(KeyError, match="the edge rows were not given"):
        Batch(1).rows_of(EDGE)


def test_a_job_without_rows_picks_0_and_none_of_those_of_another() -> None:
    assert FRAME.columns[Cheapest.loads].tolist() == [0, 1, 1, 0]
    assert evaluate([NO_EDGES]).columns[Cheapest.loads].tolist() == [0]


def test_a_running_total_minds_its_own_group_when_rows_stand_in_any_order() -> None:
    so_far = FRAME.value(running(Edge.run, AREA), EDGE)
    assert so_far.tolist() == [7.5, 12.5, 16.5, 15.5, 9]


def said(frame: Batch, named: Named, job: int = 0) -> list[str]:
    """Values to compare: one that was not given is not equal to itself."""
    return [repr(value) for value in of_job(frame, named, job)]


@settings(max_examples=25)
@given(st.lists(jobs(), min_size=2, max_size=4))
def test_a_job_gets_the_same_numbers_in_a_chunk_as_alone(every: list[Job]) -> None:
    chunk = evaluate(every)
    for place, job in enumerate(every):
        alone = evaluate([job])
        for member in alone.columns:
            assert said(chunk, member, place) == said(alone, member)


@settings(max_examples=30)
@given(jobs())
def test_a_total_is_what_a_loop_over_the_typed_rows_gives(job: Job) -> None:
    frame = evaluate([job])
    runs = [0.0] * len(job.rows[AREA])
    for each in job.rows[EDGE]:
        runs[each.within] += each.values[Edge.run]
    rates = sum(each.values[Vehicle.rate] for each in job.rows[VEHICLE])
    assert of_job(frame, Slab.run) == runs
    assert of_job(frame, Driven.effort) == pytest.approx([run * rates for run in runs])
    assert of_job(frame, Cheapest.efforts) == pytest.approx([sum(runs) * rates])
