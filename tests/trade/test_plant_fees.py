"""Fees that a plant may add, against the calendar and against what they add to an order, and the rate of a crew."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta
from pathlib import Path

import pytest

from books import COMPANY, Rows, only_job, value
from calc.model.results import JobValues

PLANT: Rows = [
    ["item", "price", "size"],
    ["Ready-mix, 3500 psi", 171, None],
    ["Concrete delivery", 28, None],
    ["Short-load fee, tier 1", 155, 2],
    ["Short-load fee, tier 2", 105, 4],
    ["Short-load fee, tier 3", 55, 6],
]
"""A plant that adds nothing."""


def bid(
    folder: Path,
    *,
    pour: str | None = None,
    added: Sequence[Sequence[object]] = (),
    facts: Sequence[Sequence[object]] = (),
    wages: Rows = (("role", "private $/h"), ("laborer", 46), ("finisher", 58)),
    fiber: str = "none",
) -> JobValues:
    """A walk of 8 yd3 placed from the chute, with what the plant adds."""
    folder.mkdir(exist_ok=True)
    week: dict[str, Rows] = {
        "Jobs": [["job", "bid date", "pour date", "fiber"], ["one", "2026-04-13", pour, fiber]],
        "Areas": [["length ft", "width ft", "thickness in"], [108, 6, 4]],
        "Site conditions": [
            ["fact", "value"],
            ["Placing method", "chute"],
            ["Placing reason", "it is near"],
            *facts,
        ],
    }
    return only_job(folder, week, COMPANY | {"Prices": [*PLANT, *added], "Wages": wages})


@pytest.mark.parametrize(
    ("day", "weekday"),
    [
        ("2026-07-04", "Saturday"),
        ("2028-01-01", "Saturday"),
        ("2028-02-29", "Tuesday"),
        ("2030-11-01", "Friday"),
        ("2027-12-25", "Saturday"),
    ],
)
def test_a_saturday_is_a_saturday_by_the_printed_calendar(tmp_path: Path, day: str, weekday: str) -> None:
    """Printed calendars: Independence Day of 2026, New Year of 2028, Christmas of 2027 are Saturdays."""
    job = bid(tmp_path, pour=day, added=[["Saturday fee, per load", 40, None]])
    assert value(job, "PlantFees.by_load") == (40 if weekday == "Saturday" else 0)


def test_one_day_in_seven_is_a_saturday(tmp_path: Path) -> None:
    """ISO 8601 counts Monday as day 1 and Saturday as day 6."""
    first = date(2026, 12, 26)
    for number in range(14):
        day = first + timedelta(days=number)
        job = bid(tmp_path / str(number), pour=day.isoformat())
        assert value(job, "PlantFees.is_saturday") == (day.isoweekday() == 6), day


def test_no_pour_date_is_no_saturday_though_the_bid_is_written_on_one(tmp_path: Path) -> None:
    week: dict[str, Rows] = {
        "Jobs": [["job", "bid date"], ["one", "2026-04-18"]],
        "Areas": [["length ft", "width ft"], [9, 9]],
    }
    assert value(only_job(tmp_path, week, COMPANY), "PlantFees.is_saturday") == 0


def test_a_fee_by_the_load_raises_every_order_by_its_trucks_and_by_the_chance_of_one_more(tmp_path: Path) -> None:
    """Expected cost is a sum of prices times chances: a fee of $60 enters it by the load, and once in the lump."""
    facts = [["Order rule", "risk"]]
    plain = bid(tmp_path / "plain", facts=facts)
    more = bid(tmp_path / "more", facts=facts, added=[["Environmental fee", 45, None], ["Fuel surcharge", 15, None]])
    for row in range(12):
        trucks, risk = (float(value(plain, f"OrderCandidate.{name}", row)) for name in ("trucks", "risk"))
        rise = float(value(more, "OrderCandidate.expected_cost", row)) - float(
            value(plain, "OrderCandidate.expected_cost", row)
        )
        assert rise == pytest.approx(60 * trucks + 60 * risk, abs=0.011), row
    assert {float(value(plain, "OrderCandidate.trucks", row)) for row in range(12)} == {1, 2}


def test_a_fee_by_the_yard_is_paid_for_what_is_left_over_and_in_the_least_yard(tmp_path: Path) -> None:
    saturday = {"pour": "2026-04-25", "facts": [["Order rule", "risk"]]}
    plain = bid(tmp_path / "plain", **saturday)  # type: ignore[arg-type]
    more = bid(tmp_path / "more", added=[["Saturday fee, per yard", 8, None]], **saturday)  # type: ignore[arg-type]
    for name in ("Shortage.shortage_cost", "Shortage.surplus_cost", "DischargePrice.yard"):
        assert float(value(more, name)) - float(value(plain, name)) == pytest.approx(8), name


def test_a_blank_price_is_no_fee_and_leaves_nothing_unpriced(tmp_path: Path) -> None:
    plain = bid(tmp_path / "plain", pour="2026-04-25", facts=[["After-hours delivery", "yes"]])
    free = bid(
        tmp_path / "free",
        pour="2026-04-25",
        facts=[["After-hours delivery", "yes"]],
        added=[[item, 0, None] for item in ("Environmental fee", "After-hours fee", "Saturday fee, per yard")],
    )
    for name in ("BidPrice.price", "BidPrice.unpriced", "PourCost.delivery"):
        assert value(plain, name) == value(free, name), name


def test_fiber_from_the_plant_is_paid_by_the_yard_and_no_bag_is_bought(tmp_path: Path) -> None:
    """UFGS 03300N asks at least 1.5 lb/yd3 of micro fiber: eight and a half yards take thirteen bags of 1 lb."""
    facts = [["Order rule", "fixed"], ["Fixed order", 8.5], ["Order reason", "as agreed"]]
    bags = bid(tmp_path / "bags", fiber="micro", facts=facts)
    plant = bid(tmp_path / "plant", fiber="micro", facts=facts, added=[["Fiber put in at the plant", 11, None]])
    assert value(bags, "FiberTotal.bags") == 13
    assert value(plant, "FiberTotal.bags") == 0
    assert float(value(plant, "PourCost.concrete")) - float(value(bags, "PourCost.concrete")) == pytest.approx(8.5 * 11)
    assert "put in at the plant" in str(value(plant, "PourText.fiber"))


@pytest.mark.parametrize(
    ("crew", "placing", "finishing", "rate"),
    [
        (5, 3, 2, (3 * 40 + 2 * 50) / 5),
        (3, 3, 2, (1 * 40 + 2 * 50) / 3),
        (1, 2, 1, 50),
        (8, 2, 1, (2 * 40 + 50) / 3),
    ],
)
def test_an_hour_of_the_crew_costs_the_average_of_its_people(
    tmp_path: Path, crew: int, placing: int, finishing: int, rate: float
) -> None:
    """Estimating textbooks: the average wage of a crew is that of its members, each by their number."""
    facts = [["Crew", crew], ["Placing crew", placing], ["Finishers", finishing]]
    job = bid(tmp_path, facts=facts, wages=[["role", "private $/h"], ["laborer", 40], ["finisher", 50]])
    assert value(job, "CrewRate.composite") == pytest.approx(rate)


def test_a_rate_for_the_crew_mix_holds_whoever_is_on_the_pour(tmp_path: Path) -> None:
    wages: Rows = [["role", "private $/h"], ["laborer", 40], ["finisher", 50], ["crew mix", 47.5]]
    assert value(bid(tmp_path, facts=[["Finishers", 3]], wages=wages), "CrewRate.composite") == 47.5
