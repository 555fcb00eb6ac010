"""Machines that two jobs rent on one day: what one for both would cost, by the prices of the company book."""

from __future__ import annotations

from math import nan

import pytest

from calc.model.rental_sharing import rental_days
from calc.model.results import RentalUse

DAY = 46139.0
TERMS = (48.0, 68.0, 240.0, 4.0, 8.0, 5.0)
"""Half a day, a day, a week in $; half a day is 4 h, a day 8 h, a week 5 days."""


def use(job: str, hours: float, cost: float, day: float = DAY, terms: tuple[float, ...] = TERMS) -> RentalUse:
    """A plate compactor that a job rents."""
    return RentalUse(day, "plate compactor", job, hours, cost, terms)


@pytest.mark.parametrize(
    ("hours", "one_for_all"),
    [
        ((1.0, 3.0), 48.0),  # 4 h: half a day is enough
        ((2.0, 2.1), 68.0),  # 4.1 h: a day
        ((3.0, 5.1), 2 * 48.0),  # 8.1 h: two days at $136, so each keeps its own half day
    ],
)
def test_one_machine_for_both_is_the_cheapest_period_that_is_long_enough(
    hours: tuple[float, float], one_for_all: float
) -> None:
    (shared,) = rental_days([use("A", hours[0], 48.0), use("B", hours[1], 48.0)])
    assert (shared.in_bids, shared.one_for_all) == (96.0, one_for_all)


def test_a_period_without_a_price_is_never_taken() -> None:
    no_half = (nan, *TERMS[1:])
    (shared,) = rental_days([use("A", 1.0, 68.0, terms=no_half), use("B", 1.0, 68.0, terms=no_half)])
    assert shared.one_for_all == 68.0


def test_machines_of_two_days_or_of_two_kinds_are_not_shared() -> None:
    apart = rental_days([use("A", 1.0, 48.0), use("B", 1.0, 48.0, day=DAY + 1)])
    assert [(each.in_bids, each.one_for_all) for each in apart] == [(48.0, 48.0)] * 2
    assert rental_days([]) == []
