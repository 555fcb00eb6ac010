"""What two small pours on one truck are asked for: each fact of a job where it belongs, and each limit of the pair."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from books import COMPANY, Rows, only_job
from calc.model.results import SmallPour
from calc.model.truck_sharing import shared_trucks, small_pour
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
