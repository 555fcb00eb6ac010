"""What was not typed of the weather is not guessed at, and a plan or a name by hand is heard, or it is said why not."""

from __future__ import annotations

from pathlib import Path

import pytest

from books import COMPANY, Rows, only_job, value
from calc.layout.caution_table import active_cautions
from calc.model.results import JobValues
from caution_limits import STANDING, Tables, a_job, drying, weathered

WEATHER = {"Air_temperature": 96, "Concrete_temperature": 96, "Humidity": 10, "Wind": 20}
"""A day on which no slab is poured without a plan."""


def priced(*rows: tuple[str, float, float | None]) -> dict[str, Rows]:
    """A company book with a mix of 3500 psi and these prices: item, price, size."""
    return COMPANY | {"Prices": [["item", "price", "size"], ["Ready-mix, 3500 psi", 172, None], *rows]}


def warned(job: JobValues) -> set[str]:
    """The cautions of the weather that a job earned, beyond the notes of every pour."""
    earned = {each.id for each in active_cautions(job)} - STANDING
    return {name.removeprefix("PourCautions.") for name in earned if name.startswith("PourCautions.")}


@pytest.mark.parametrize("plan", ["windbreak", "fogging", "evaporation retarder", "night pour"])
def test_a_plan_against_drying_turns_the_stop_into_a_caution(plan: str, tmp_path: Path) -> None:
    assert warned(only_job(tmp_path, drying(2))) == {"evaporation_unplanned"}
    assert warned(only_job(tmp_path, drying(2, Evaporation_plan=plan))) == {"evaporation"}


@pytest.mark.parametrize("missing", WEATHER)
def test_drying_is_not_guessed_at_when_a_part_of_the_weather_is_blank(missing: str, tmp_path: Path) -> None:
    assert "evaporation_unplanned" in warned(only_job(tmp_path, weathered(**WEATHER)))
    some = {fact: number for fact, number in WEATHER.items() if fact != missing}
    job = only_job(tmp_path, weathered(**some))
    assert value(job, "Evaporation.rate") == value(job, "Evaporation.known") == 0
    assert not warned(job) & {"evaporation", "evaporation_unplanned"}


def test_a_day_of_which_nothing_is_known_is_asked_about_and_warned_of_nothing_else(tmp_path: Path) -> None:
    assert warned(only_job(tmp_path, a_job())) == {"weather_unknown"}


@pytest.mark.parametrize("degrees", [-20, 0, 39])
def test_frost_in_the_air_is_warned_of_and_breaks_no_formula(degrees: float, tmp_path: Path) -> None:
    job = only_job(tmp_path, weathered(Air_temperature=degrees, Concrete_temperature=60, Humidity=50, Wind=10))
    assert "cold_weather" in warned(job)
    assert 0 < float(value(job, "Evaporation.rate")) <= 60**2.5 * 5e-6


def test_damp_air_that_wets_the_slab_does_not_count_as_drying(tmp_path: Path) -> None:
    job = only_job(tmp_path, weathered(Air_temperature=90, Concrete_temperature=50, Humidity=100, Wind=10))
    assert value(job, "Evaporation.rate") == 0


def test_heat_takes_half_an_hour_off_the_time_of_a_truck(tmp_path: Path) -> None:
    limits = [value(only_job(tmp_path, weathered(Air_temperature=air)), "DischargeLimit.limit") for air in (84.9, 85)]
    assert limits == [90, 60]


def by_hand(method: str, **facts: float | str) -> Tables:
    """A job whose way of placing is named by hand."""
    return weathered(Placing_method=method, Placing_reason="as agreed", **facts)


@pytest.mark.parametrize(
    ("method", "way", "said"),
    [
        ("wheelbarrow", "wheelbarrow", "wheelbarrow: chosen by hand; see Measured for the reason"),
        ("pump", "pump", "pump: chosen by hand; see Measured for the reason"),
        ("bags", "chute", "bags was chosen by hand and is not possible; chute: cheapest of the 2 methods that fit"),
    ],
)
def test_a_way_named_by_hand_is_taken_or_it_is_said_why_not(method: str, way: str, said: str, tmp_path: Path) -> None:
    job = only_job(tmp_path, by_hand(method), priced())
    assert value(job, "Placing.name") == way
    assert value(job, "PlacingWords.reason") == said


def test_a_way_is_not_named_by_hand_without_a_reason(tmp_path: Path) -> None:
    with pytest.raises(AssertionError, match="Placing reason"):
        only_job(tmp_path, weathered(Placing_method="pump"))


def test_where_nothing_can_reach_the_forms_the_bid_is_stopped_and_says_so(tmp_path: Path) -> None:
    job = only_job(tmp_path, weathered(Chute_access="no", Wheelbarrow_access="no"), priced())
    assert "unloading_time" in warned(job)
    assert value(job, "PlacingWords.reason") == "chute: the job allows no placing method"


def test_bags_do_not_take_the_place_of_an_order_that_is_fixed(tmp_path: Path) -> None:
    bags = priced(("Concrete bag", 2, 0.6))
    assert value(only_job(tmp_path, a_job(), bags), "Order.bags") > 0
    fixed = weathered(Order_rule="fixed", Fixed_order=2.5, Order_reason="the rest fills a planter")
    assert value(only_job(tmp_path, fixed, bags), "Order.quantity") == 2.5


def test_concrete_ordered_by_hand_where_bags_are_cheaper_is_placed_by_the_next_way(tmp_path: Path) -> None:
    override = a_job(override=[["Concrete to order", 1.5, "the truck is here", "QZ"]])
    job = only_job(tmp_path, override, priced(("Concrete bag", 2, 0.6)))
    assert value(job, "Placing.name") == "bags"
    assert (value(job, "Order.bags"), value(job, "Order.trucks"), value(job, "Pour.method")) == (0, 1, "chute")
    assert value(job, "Order.overage") == pytest.approx(1.5 - 1.03)
