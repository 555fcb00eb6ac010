"""What two small pours on one truck are asked for: each fact of a job where it belongs, and each limit of the pair."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations
from math import nan
from pathlib import Path
from random import Random

import pytest

from books import COMPANY, Rows, only_job
from calc.batch.week import row_of, week_of
from calc.layout.week import SHARED_LOADS, week_sheets
from calc.model.results import SharedTruck, SmallPour, jobs_that_share
from calc.model.truck_sharing import MOST_IN_THREES, refused_loads, shared_trucks, small_pour
from calc.trade.papers.mix import MIX

PLANT: dict[str, Rows] = COMPANY | {
    "Prices": [
        ["item", "price", "unit", "size"],
        ["Ready-mix, 3500 psi", 172, "yd3", None],
        ["Winter heat", 6.5, "yd3", None],
        ["Concrete delivery", 24, "truck", None],
        ["Short-load fee, tier 1", 160, "truck", 2],
        ["Short-load fee, tier 2", 110, "truck", 4],
        ["Short-load fee, tier 3", 60, "truck", 6],
        ["Truck standby (wait time)", 2.25, "min", None],
    ],
    "Factors": [
        ["factor", "value"],
        ["Minimum order", 1.5],
        ["Truck capacity", 8],
        ["Unloading allowance per truck", 20],
        ["Unloading allowance per yard", 4],
        ["Travel time between jobs, shared truck", 17],
    ],
}

WEEK: dict[str, Rows] = {
    "Jobs": [["job", "bid date", "pour date", "fiber"], ["26-07", "2026-04-13", "2026-04-27", "micro"]],
    "Areas": [["length ft", "width ft", "thickness in"], [40, 10, 4]],
    "Site conditions": [
        ["fact", "value"],
        ["Winter heat", "yes"],
        ["Drive time from plant", 22],
        ["First truck at", 8.5],
        ["Placing method", "chute"],
        ["Placing reason", "the truck stands beside the forms"],
    ],
    "Overrides": [["line", "value", "reason", "who"], ["Concrete to order", 5, "as agreed", "QZ"]],
}


def mix(**other: str) -> tuple[str, ...]:
    """A mix that takes nothing, but for the properties that are named as in their sections."""
    names = [each.named.name for each in MIX]
    assert set(other) <= set(names)
    return tuple(other.get(name, "no") for name in names)


def test_every_fact_of_a_pour_is_what_the_job_says_by_hand(tmp_path: Path) -> None:
    found = small_pour(only_job(tmp_path, WEEK, PLANT))
    yard = 172 + 6.5
    assert found == SmallPour(
        job="26-07",
        day=46139.0,  # 2026-04-27, counted from 1900 as a spreadsheet does
        yards=5.0,
        charge=pytest.approx(5 * yard + 60 + 24),  # between the second and the third limit
        waiting=pytest.approx(5 * 2.25),  # a chute takes 12 yards an hour: 25 minutes, of which 20 are free
        psi=3500.0,
        yard=pytest.approx(yard),
        mix=mix(
            strength="3500.000000",
            slump="4.000000",
            aggregate="0.750000",
            winter_heat="yes",
            fiber="micro",
            per_yard="1.500000",
        ),
        fees=((0.0, 160.0), (2.0, 110.0), (4.0, 60.0), (6.0, 0.0)),
        least=1.5,
        by_load=24.0,
        capacity=8.0,
        unloading=pytest.approx(25.0),
        time_left=90.0 - 22.0,
        free=(20.0, 4.0),
        minute=2.25,
        between=17.0,
        arrives=8.5,
    )


ONE = SmallPour(
    job="A", day=46139.0, yards=1.0, charge=900.0, waiting=0.0, psi=3500.0, yard=171.0,
    mix=mix(), fees=((0.0, 150.0), (2.0, 100.0), (6.0, 0.0), (8.0, 0.0)), least=1.0, by_load=28.0,
    capacity=9.0, unloading=10.0, time_left=60.0, free=(30.0, 6.0), minute=2.0, between=15.0,
)  # fmt: skip
OTHER = replace(ONE, job="B", yards=1.5)
STRONG = replace(OTHER, psi=4000.0, yard=180.0)
TWO_WAYS = pytest.mark.parametrize("turned", [False, True], ids=["as they stand", "turned round"])


def shared(*pours: SmallPour, turned: bool = False) -> bool:
    """Whether the pair is offered, in whichever order the jobs stand."""
    return bool(shared_trucks(pours[::-1] if turned else pours))


@TWO_WAYS
def test_the_pour_with_fewer_minutes_left_decides_and_just_in_time_is_in_time(turned: bool) -> None:
    """Ten minutes to unload each and fifteen on the way are 35."""
    assert shared(replace(ONE, time_left=35.0), OTHER, turned=turned)
    assert not shared(replace(ONE, time_left=34.9), OTHER, turned=turned)


@TWO_WAYS
def test_the_minutes_of_both_stops_and_of_the_longer_way_count(turned: bool) -> None:
    assert shared(replace(ONE, unloading=35.0), OTHER, turned=turned)
    assert not shared(replace(ONE, unloading=35.1), OTHER, turned=turned)
    assert shared(replace(ONE, between=40.0), OTHER, turned=turned)
    assert not shared(replace(ONE, between=40.1), OTHER, turned=turned)


@TWO_WAYS
def test_the_smaller_of_two_trucks_has_to_hold_both(turned: bool) -> None:
    assert shared(replace(ONE, capacity=2.5), OTHER, turned=turned)
    assert not shared(replace(ONE, capacity=2.4), OTHER, turned=turned)


IN_THE_DRUM = [each for each in MIX if not each.more_serves]
"""What a mix is made of, but for its strength: the stronger mix serves both."""


@pytest.mark.parametrize("place", range(len(IN_THE_DRUM)), ids=[each.named.id for each in IN_THE_DRUM])
@TWO_WAYS
def test_whatever_goes_into_the_mix_two_mixes_never_share_a_drum(place: int, turned: bool) -> None:
    """One with an accelerator, say, may follow a plain one, but not one with something else."""
    this, another = IN_THE_DRUM[place], IN_THE_DRUM[(place + 1) % len(IN_THE_DRUM)]
    with_it = replace(ONE, mix=mix(**{this.named.name: "yes"}))
    with_another = replace(OTHER, mix=mix(**{another.named.name: "yes"}))
    assert not shared(with_it, with_another, turned=turned)
    assert shared(with_it, replace(with_it, job="B"), turned=turned)
    after_the_plain_one = shared_trucks([with_it, OTHER][:: -1 if turned else 1])
    assert [tuple(each.job for each in pair.stops) for pair in after_the_plain_one] == [("B", "A")] * this.added_later


def test_what_can_be_added_at_the_second_stop_is_what_is_put_in_on_site() -> None:
    """Air and hot water come from the plant, as do the slump and the stone; common practice, no source."""
    later = {each.named.name for each in MIX if each.added_later}
    assert later == {"accelerator", "retarder", "fiber", "per_yard"}


@TWO_WAYS
def test_one_delivery_is_paid_that_of_the_stronger_mix(turned: bool) -> None:
    two = [replace(ONE, by_load=20.0), replace(STRONG, by_load=35.0)]
    (pair,) = shared_trucks(two[::-1] if turned else two)
    on_one_truck = 2.5 * 180 + 100 + 35 + 2 * 5  # 35 minutes, of which 30 are free
    assert pair.together == pytest.approx(on_one_truck)
    assert pair.saving == pytest.approx(2 * 900 - on_one_truck)


@TWO_WAYS
def test_the_fees_the_least_order_and_the_waiting_are_those_of_the_stronger_mix(turned: bool) -> None:
    two = [
        ONE,
        replace(
            STRONG, fees=((0.0, 90.0), (3.0, 0.0), (5.0, 0.0), (7.0, 0.0)), least=3.0, free=(10.0, 8.0), minute=3.0
        ),
    ]
    (pair,) = shared_trucks(two[::-1] if turned else two)
    waits = 35 - 2.5 * 8
    assert pair.together == pytest.approx(3 * 180 + 90 + 28 + 3 * waits)


def test_what_the_trucks_apart_are_kept_waiting_is_saved_too() -> None:
    (pair,) = shared_trucks([replace(ONE, waiting=12.5), replace(OTHER, waiting=30.25)])
    assert pair.saving == pytest.approx(2 * 900 + 12.5 + 30.25 - (2.5 * 171 + 100 + 28 + 2 * 5))


FULL_FEES = ((0.0, 150.0), (2.0, 100.0), (4.0, 50.0), (6.0, 0.0))


def stop(job: str, yards: float, **other: object) -> SmallPour:
    """A pour whose truck alone costs its yards at $171, its short-load fee and $28 for the way."""
    fee = next(fee for start, fee in reversed(FULL_FEES) if yards >= start)
    alone = replace(ONE, job=job, yards=yards, charge=yards * 171 + fee + 28, fees=FULL_FEES)
    return replace(alone, **other)  # type: ignore[arg-type]


def test_three_stops_on_one_truck_pay_one_fee_one_way_and_both_drives_by_hand() -> None:
    """Three yards and a half: 30 minutes to unload and twice 15 between are 60, of which 30 are free."""
    found = shared_trucks([stop("A", 1.0), stop("B", 1.0), stop("C", 1.5)])
    (three,) = [each for each in found if len(each.stops) == 3]
    apart = 3.5 * 171 + 3 * (150 + 28)
    on_one_truck = 3.5 * 171 + 100 + 28 + 30 * 2
    assert (three.yards, three.apart) == (3.5, pytest.approx(apart))
    assert three.together == pytest.approx(on_one_truck)
    assert three.saving == pytest.approx(apart - on_one_truck)
    assert three.best, "a pair saves 2 * 178 - 128 - 2 * 5 = 218, the three 346"


def test_three_stops_that_lack_a_minute_or_a_yard_are_not_offered() -> None:
    def offered(**limit: object) -> set[int]:
        return {len(each.stops) for each in shared_trucks([stop(job, 1.5, **limit) for job in "ABC"])}

    assert offered(time_left=60.0, capacity=4.5) == {2, 3}
    assert offered(time_left=59.9) == offered(capacity=4.4) == {2}


def test_the_plain_stops_of_a_three_come_before_the_one_with_fiber() -> None:
    dosed = mix(fiber="micro", per_yard="1.500000")
    found = shared_trucks([stop("A", 1.0, mix=dosed), stop("B", 1.0), stop("C", 1.0)])
    (three,) = [each for each in found if len(each.stops) == 3]
    assert [each.job for each in three.stops] == ["B", "C", "A"]


def test_fiber_from_the_plant_is_in_the_drum_from_the_first_stop_on() -> None:
    dosed = stop("A", 1.0, mix=mix(fiber="micro", per_yard="1.500000"))
    assert shared(dosed, stop("B", 1.0))
    assert not shared(replace(dosed, plant_fiber=True), stop("B", 1.0))
    assert shared(replace(dosed, plant_fiber=True), replace(dosed, job="B", plant_fiber=True))


def test_a_stop_after_hours_brings_its_fees_by_the_load_to_the_shared_truck() -> None:
    late = stop("B", 1.0, by_load=28.0 + 75, charge=171 + 150 + 28 + 75)
    (pair,) = shared_trucks([stop("A", 1.0), late])
    assert pair.together == pytest.approx(2 * 171 + 100 + 28 + 75 + 5 * 2)


def savings_of_a_set(trucks: tuple[SharedTruck, ...]) -> float:
    """What a set of trucks saves; nothing where it takes a job twice."""
    jobs = [each.job for truck in trucks for each in truck.stops]
    return sum(truck.saving for truck in trucks) if len(set(jobs)) == len(jobs) else 0.0


@pytest.mark.parametrize("seed", range(12))
def test_no_other_set_that_takes_no_job_twice_saves_more(seed: int) -> None:
    """Against every set there is, of up to three trucks: seven pours make no more."""
    chance = Random(seed)
    day = [
        stop(job, chance.choice([0.75, 1.0, 1.5, 2.0, 3.0, 4.0]), time_left=chance.choice([40.0, 55.0, 65.0]))
        for job in "ABCDEFG"
    ]
    found = shared_trucks(day)
    best = tuple(each for each in found if each.best)
    every = (some for size in (1, 2, 3) for some in combinations(found, size))
    assert savings_of_a_set(best) == pytest.approx(max(map(savings_of_a_set, every), default=0.0))
    assert len({each.job for truck in best for each in truck.stops}) == sum(len(truck.stops) for truck in best)


def test_two_pairs_may_save_more_than_a_three() -> None:
    """Four pours of four yards: a truck of nine takes two of them and never three."""
    found = shared_trucks([stop(job, 4.0, unloading=5.0) for job in "ABCD"])
    best = [{each.job for each in truck.stops} for truck in found if truck.best]
    assert [len(each) for each in best] == [2, 2]
    assert set.union(*best) == set("ABCD")


def test_the_calendar_is_told_which_jobs_share_and_pours_of_two_days_never_do() -> None:
    two_days = [stop("A", 1.0), stop("B", 1.0), stop("C", 1.0, day=ONE.day + 1), stop("D", 1.0, day=ONE.day + 1)]
    shares = jobs_that_share(shared_trucks([*two_days, stop("E", 8.75)]))
    assert shares == {"A": ("A", "B"), "B": ("A", "B"), "C": ("C", "D"), "D": ("C", "D")}


def test_a_day_of_a_hundred_pours_tries_the_smallest_in_threes_and_ends() -> None:
    day = [stop(f"job {number}", 1.0 + number % 5 / 4) for number in range(100)]
    found = shared_trucks(day)
    in_threes = {each.job for truck in found if len(truck.stops) == 3 for each in truck.stops}
    assert len(in_threes) == MOST_IN_THREES
    assert sum(truck.saving for truck in found if truck.best) > 0


def test_the_week_shows_the_best_set_and_its_sum_before_the_other_choices(tmp_path: Path) -> None:
    row = row_of(only_job(tmp_path, WEEK, PLANT), "26-07.xlsx")
    rows = [
        replace(row, job=each.job, pour=each, days=replace(row.days, job=each.job))
        for each in (stop("A", 1.0), stop("B", 1.0), stop("C", 1.5))
    ]
    (sheet,) = [each for each in week_sheets(week_of(rows)) if each.page.name == SHARED_LOADS]
    shown = {(cell.row, cell.col): cell.shows(None) for cell in sheet.cells}
    first = next(row for (row, col), value in shown.items() if col == 1 and value == "A + B + C")
    assert (shown[first, 4], shown[first, 12]) == (3.5, "BEST SET")
    assert (shown[first + 1, 1], shown[first + 1, 9]) == ("Best set, all days", pytest.approx(346))
    assert [shown[first + 2, col] for col in (1, 12)] == ["A + B", "another choice"]


def test_what_cannot_share_a_truck_is_told_with_its_reason() -> None:
    """A dispatcher who asks why not is told: no job is left out, and no dollars are invented."""
    bags, full = stop("bags", 0.0), stop("full", 9.5)
    other = replace(stop("other", 1.0), mix=mix(fiber="macro"))
    later, undated = stop("later", 1.0, day=ONE.day + 1), stop("undated", 1.0, day=nan)
    pours = [stop("A", 1.0), other, bags, full, later, undated]
    told = {each.jobs: each.reason for each in refused_loads(pours, shared_trucks(pours))}
    assert told == {
        ("A", "later"): "other days",
        ("bags",): "no ready-mix",
        ("full",): "full trucks",
        ("undated",): "no pour date",
        ("other", "later"): "other days",
    }


def test_two_kinds_of_fiber_on_one_day_are_told_to_be_other_mixes() -> None:
    pours = [replace(stop(job, 1.0), mix=mix(fiber=kind)) for job, kind in (("A", "micro"), ("B", "macro"))]
    assert [each.reason for each in refused_loads(pours, [])] == ["other mixes"]
