"""Things that are easily counted twice. Each job here comes out otherwise where the rule is written the naive way."""

from __future__ import annotations

from math import ceil, pi
from pathlib import Path

import pytest

from books import Rows, only_job, value

JOB: Rows = [["job", "bid date", "soil"], ["1", "2026-04-13", "loam"]]
YD3 = 27.0


def areas(**columns: object) -> Rows:
    """One strip of 30 x 4 ft, 4 in thick, with more columns."""
    typed: dict[str, object] = {"length ft": 30, "width ft": 4, "thickness in": 4}
    typed |= {name.replace("_", " "): what for name, what in columns.items()}
    return [["job", *typed], ["1", *typed.values()]]


def test_waste_is_not_added_to_the_need_and_again_in_the_order(tmp_path: Path) -> None:
    job = only_job(tmp_path, {"Jobs": JOB, "Areas": areas(length_ft=60)})
    net = 60 * 4 * (4 / 12) / YD3
    assert value(job, "Order.by_percent") == ceil(net * 1.08 / 0.25) * 0.25 == 3.25
    assert ceil(net * 1.03 * 1.08 / 0.25) * 0.25 == 3.5  # the naive way


def test_a_root_ball_is_not_in_the_green_pile_and_in_the_soil(tmp_path: Path) -> None:
    plants = [["job", "count", "root ball ft", "ball height ft"], ["1", 4, 2, 1.5]]
    job = only_job(tmp_path, {"Jobs": JOB, "Areas": areas(), "Plants": plants})
    hole = 30 * 4 * (4 / 12) / YD3
    balls = 4 * pi * 1.5 * 0.67 / YD3
    assert value(job, "Spoil.bank") == pytest.approx(hole - balls, rel=1e-9)
    assert value(job, "Spoil.green_loose") == pytest.approx(balls * 1.1, rel=1e-9)


def test_a_footing_in_the_dig_is_not_soil(tmp_path: Path) -> None:
    footings = [["job", "length ft", "width ft", "top below in"], ["1", 10, 1, 2]]
    job = only_job(tmp_path, {"Jobs": JOB, "Areas": areas(), "Footings": footings})
    assert value(job, "Spoil.bank") == pytest.approx((30 * 4 * 4 - 10 * 1 * 2) / 12 / YD3, rel=1e-9)


def test_an_old_slab_in_the_dig_is_not_soil(tmp_path: Path) -> None:
    job = only_job(tmp_path, {"Jobs": JOB, "Areas": areas(old_slab_ft2=40, old_slab_thickness_in=3)})
    assert value(job, "Spoil.bank") == pytest.approx((30 * 4 * 4 - 40 * 3) / 12 / YD3, rel=1e-9)
    assert value(job, "Rubble.solid") == pytest.approx(40 * 3 / 12 / YD3, rel=1e-9)


def test_the_working_room_along_a_form_is_dug_and_not_poured(tmp_path: Path) -> None:
    job = only_job(tmp_path, {"Jobs": JOB, "Areas": areas(formed_ft=30)})
    assert value(job, "Concrete.in_place_all") == pytest.approx(30 * 4 * 4 / 12 / YD3, rel=1e-9)
    assert value(job, "Spoil.bank") == pytest.approx((30 * 4 + 30 * 0.25) * 4 / 12 / YD3, rel=1e-9)


@pytest.mark.parametrize("soil", ["topsoil", "loam", "clay", "sand", "gravelly"])
def test_swell_changes_the_room_and_never_the_weight(soil: str, tmp_path: Path) -> None:
    swollen = {"Factors": [["factor", "for", "value"], ["Swell of soil", soil, 60]]}
    week = {"Jobs": [["job", "bid date", "soil"], ["1", "2026-04-13", soil]], "Areas": areas()}
    usual, more = only_job(tmp_path, week, None), only_job(tmp_path, week, swollen)
    assert value(more, "Spoil.tons") == value(usual, "Spoil.tons")
    assert value(more, "Spoil.loose") > value(usual, "Spoil.loose")


def test_bags_are_rounded_once_a_truck_and_the_order_once(tmp_path: Path) -> None:
    week = {
        "Jobs": [["job", "bid date", "fiber"], ["1", "2026-04-13", "micro"]],
        "Areas": areas(length_ft=202.5, width_ft=6),
        "Site conditions": [["job", "fact", "value"], ["1", "Fiber dose", 1.5]],
    }
    job = only_job(tmp_path, week)
    net = 202.5 * 6 * (4 / 12) / YD3  # 15 yd3
    order = ceil(net * 1.08 / 0.25) * 0.25  # 16.25, on two trucks of 8.25 and 8
    assert (value(job, "Order.quantity"), value(job, "Order.trucks")) == (order, 2)
    assert value(job, "TruckFiber.bags_all") == ceil(8.25 * 1.5) + ceil(8 * 1.5)


def test_copies_multiply_what_hangs_on_an_area_once(tmp_path: Path) -> None:
    footings = [["job", "length ft", "width ft", "top below in"], ["1", 10, 1, 1]]
    one = only_job(tmp_path, {"Jobs": JOB, "Areas": areas(formed_ft=30), "Footings": footings})
    three = only_job(tmp_path, {"Jobs": JOB, "Areas": areas(formed_ft=30, copies=3), "Footings": footings})
    for name in ("Concrete.in_place_all", "Dig.bank_all", "OldFooting.chipped_all", "Border.formed_all", "Curing.need"):
        assert value(three, name) == pytest.approx(3 * float(value(one, name)), rel=1e-9), name
