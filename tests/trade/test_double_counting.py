"""Things that are easily counted twice. Each job here comes out otherwise where the rule is written the naive way."""

from __future__ import annotations

from math import ceil, pi
from pathlib import Path

import pytest

from books import Rows, only_job, value

JOB: Rows = [["job", "bid date", "soil"], ["1", "2026-04-13", "loam"]]
YD3 = 27.0
STEP = 0.25


def areas(**columns: object) -> Rows:
    """One strip of 30 x 4 ft, 4 in thick, with more columns."""
    typed: dict[str, object] = {"length ft": 30, "width ft": 4, "thickness in": 4}
    typed |= {name.replace("_", " "): what for name, what in columns.items()}
    return [["job", *typed], ["1", *typed.values()]]


def worked(got: float | str, *, right: float, naive: float) -> bool:
    """Whether a value is the right one, in a job that tells the right one from the naive one."""
    assert right != pytest.approx(naive, rel=1e-3), "this job cannot tell the two apart"
    return got == pytest.approx(right, rel=1e-9)


def test_waste_is_not_added_to_the_need_and_again_in_the_order(tmp_path: Path) -> None:
    job = only_job(tmp_path, {"Jobs": JOB, "Areas": areas(length_ft=60)})
    net = 60 * 4 * (4 / 12) / YD3
    assert worked(value(job, "Order.required"), right=net * 1.03, naive=net * 1.03 * 1.08)
    right, naive = (ceil(net * waste / STEP) * STEP for waste in (1.08, 1.03 * 1.08))
    assert worked(value(job, "OtherOrderRules.by_percent"), right=right, naive=naive)


def test_a_root_ball_is_not_in_the_green_pile_and_in_the_soil(tmp_path: Path) -> None:
    plants: Rows = [["job", "quantity", "root ball ft", "ball height ft"], ["1", 4, 2, 1.5]]
    job = only_job(tmp_path, {"Jobs": JOB, "Areas": areas(), "Plants": plants})
    hole = 30 * 4 * (4 / 12) / YD3
    balls = 4 * pi * 1.5 * 0.67 / YD3
    assert worked(value(job, "Spoil.bank"), right=hole - balls, naive=hole)
    assert worked(value(job, "Spoil.tons"), right=(hole - balls) * 2900 / 2000, naive=hole * 2900 / 2000)
    assert worked(value(job, "GreenSpoil.loose"), right=balls * 1.1, naive=balls * 1.25)  # not swollen as soil


def test_a_footing_in_the_dig_is_not_soil(tmp_path: Path) -> None:
    footings: Rows = [["job", "length ft", "width ft", "depth to top of footing in"], ["1", 10, 1, 2]]
    job = only_job(tmp_path, {"Jobs": JOB, "Areas": areas(), "Footings": footings})
    hole = 30 * 4 * 4 / 12 / YD3
    assert worked(value(job, "Spoil.bank"), right=hole - 10 * 1 * 2 / 12 / YD3, naive=hole)


def test_a_footing_that_stays_is_not_hauled(tmp_path: Path) -> None:
    footings: Rows = [["job", "length ft", "width ft", "depth to top of footing in"], ["1", 10, 1, 1]]
    job = only_job(tmp_path, {"Jobs": JOB, "Areas": areas(), "Footings": footings})
    in_dig = 10 * 1 * 3 / 12 / YD3
    assert worked(value(job, "ConcreteDebris.solid"), right=in_dig / 3, naive=in_dig)  # an inch of three is knocked off


def test_an_old_slab_in_the_dig_is_not_soil(tmp_path: Path) -> None:
    job = only_job(tmp_path, {"Jobs": JOB, "Areas": areas(old_slab_ft2=40, old_slab_thickness_in=3)})
    hole, slab = 30 * 4 * 4 / 12 / YD3, 40 * 3 / 12 / YD3
    assert worked(value(job, "Spoil.bank"), right=hole - slab, naive=hole)
    assert worked(value(job, "ConcreteDebris.solid"), right=slab, naive=hole)


def test_old_concrete_that_is_more_than_its_hole_leaves_no_soil_and_fails_no_check(tmp_path: Path) -> None:
    job = only_job(tmp_path, {"Jobs": JOB, "Areas": areas(old_slab_ft2=120, old_slab_thickness_in=5)})
    assert value(job, "Spoil.bank") == 0
    assert value(job, "Integrity.excavation_failed") == 0


def test_the_working_room_along_a_form_is_dug_and_not_poured(tmp_path: Path) -> None:
    job = only_job(tmp_path, {"Jobs": JOB, "Areas": areas(formed_ft=30)})
    slab, room = 30 * 4 * 4 / 12 / YD3, 30 * 0.25 * 4 / 12 / YD3
    assert worked(value(job, "Concrete.in_place_all"), right=slab, naive=slab + room)
    assert worked(value(job, "Spoil.bank"), right=slab + room, naive=slab)
    assert worked(value(job, "Curing.need"), right=120 / 200, naive=127.5 / 200)


@pytest.mark.parametrize("soil", ["topsoil", "loam", "clay", "sand", "gravelly"])
def test_swell_changes_the_room_and_never_the_weight(soil: str, tmp_path: Path) -> None:
    swollen: dict[str, Rows] = {"Factors": [["factor", "for", "value"], ["Soil swell, bank to loose", soil, 60]]}
    week = {"Jobs": [["job", "bid date", "soil"], ["1", "2026-04-13", soil]], "Areas": areas()}
    usual, more = only_job(tmp_path, week, None), only_job(tmp_path, week, swollen)
    bank, tons = 120 * 4 / 12 / YD3, float(value(usual, "Spoil.tons"))
    assert worked(value(more, "Spoil.tons"), right=tons, naive=tons * 1.6)
    assert worked(value(more, "Spoil.loose"), right=bank * 1.6, naive=bank)


def test_fiber_is_rounded_by_the_truck_and_not_by_the_order(tmp_path: Path) -> None:
    week = {
        "Jobs": [["job", "bid date", "fiber"], ["1", "2026-04-13", "macro"]],
        "Areas": areas(length_ft=84, width_ft=14),
    }
    job = only_job(tmp_path, week)
    assert value(job, "Order.quantity") == 15.75  # on two trucks of 8 and 7.75; 4 lb a yard, 5 lb a bag
    bags = ceil(8 * 4 / 5) + ceil(7.75 * 4 / 5)
    assert worked(value(job, "TruckFiber.bags_all"), right=bags, naive=ceil(15.75 * 4 / 5))


def test_the_order_is_rounded_once_and_not_piece_by_piece(tmp_path: Path) -> None:
    pads: Rows = [["job", "area", "length ft", "width ft"], *(["1", f"A{number}", 5, 5] for number in range(3))]
    job = only_job(tmp_path, {"Jobs": JOB, "Areas": pads})
    one = 25 * (4 / 12) / YD3 * 1.08
    right, naive = ceil(3 * one / STEP) * STEP, 3 * ceil(one / STEP) * STEP
    assert worked(value(job, "Order.quantity"), right=right, naive=naive)


def test_a_truck_is_not_ordered_full_because_it_comes(tmp_path: Path) -> None:
    job = only_job(tmp_path, {"Jobs": JOB, "Areas": areas(length_ft=69, width_ft=10)})
    assert worked(value(job, "TruckLoad.yards_all"), right=9.25, naive=2 * 9)
    assert worked(value(job, "TruckLoad.yards", 0), right=4.75, naive=9)  # as even as the plant's step allows


def test_copies_multiply_what_hangs_on_an_area_once(tmp_path: Path) -> None:
    footings: Rows = [["job", "length ft", "width ft", "depth to top of footing in"], ["1", 10, 1, 1]]
    one = only_job(tmp_path, {"Jobs": JOB, "Areas": areas(formed_ft=30), "Footings": footings})
    three = only_job(tmp_path, {"Jobs": JOB, "Areas": areas(formed_ft=30, quantity=3), "Footings": footings})
    for name in (
        "Concrete.in_place_all",
        "Excavation.bank_all",
        "OldFooting.chipped_volume_all",
        "EdgeTakeoff.formed_all",
        "Curing.need",
    ):
        single = float(value(one, name))
        assert worked(value(three, name), right=3 * single, naive=9 * single), name
