"""Comparison of the jobs of a run: two small pours on one truck, unusual prices, one address twice."""

from __future__ import annotations

from dataclasses import dataclass, replace

import pytest

from calc.model.outliers import outliers
from calc.model.truck_sharing import SmallPour, pairs

DAY = 46139.0
FEES = ((0.0, 155.0), (2.0, 105.0), (4.0, 55.0), (6.0, 0.0))
SMALL = SmallPour(
    job="A", day=DAY, yards=1.5, charge=1.5 * 171 + 155 + 28, waiting=0.0, psi=3500.0, yard=171.0,
    mix=("none", "no", "no", "no", "no"), fees=FEES, least=1.0, delivery=28.0, capacity=9.0, unloading=7.5,
    time_left=65.0, free=(30.0, 6.0), minute=2.25, between=15.0,
)  # fmt: skip
STRONG = replace(SMALL, job="B", yards=1.0, charge=179.0 + 155 + 28, psi=4000.0, yard=179.0, unloading=5.0)


def test_a_pair_saves_what_two_trucks_cost_less_one_with_the_dearer_yard_for_both() -> None:
    (pair,) = pairs([SMALL, STRONG])
    apart = 1.5 * 171 + 155 + 28 + 179 + 155 + 28
    together = 2.5 * 179 + 105 + 28
    assert pair.saving == pytest.approx(apart - together)


def test_the_second_delivery_is_charged_for_the_driving_time() -> None:
    slow = replace(STRONG, unloading=20.0)
    (pair,) = pairs([SMALL, slow])
    assert pair.together == pytest.approx(2.5 * 179 + 105 + 28 + 28.13), "12.5 min at $2.25"


def test_a_load_at_a_limit_of_the_fees_pays_the_cheaper_one() -> None:
    (pair,) = pairs([replace(SMALL, yards=1.0), STRONG])
    assert pair.together == pytest.approx(2 * 179 + 105 + 28)


@pytest.mark.parametrize(
    "other",
    [
        replace(STRONG, day=DAY + 1),
        replace(STRONG, day=float("nan")),
        replace(STRONG, yards=7.75),
        replace(STRONG, yards=0.0),
        replace(STRONG, psi=0.0),
        replace(STRONG, unloading=65 - 15 - 7.5 + 0.1),
        replace(STRONG, charge=0.0),
    ],
    ids=["another day", "no day", "no room", "no concrete", "no price", "no time", "no saving"],
)
def test_a_pair_that_cannot_be_is_not_offered(other: SmallPour) -> None:
    assert pairs([SMALL, other]) == []


def test_a_pair_that_just_fits_is_offered() -> None:
    assert pairs([SMALL, replace(STRONG, yards=7.5, unloading=65 - 15 - 7.5, charge=2000.0)])


def test_a_truck_with_fiber_goes_to_the_plain_stop_first_and_never_mixes_two_kinds() -> None:
    micro = replace(STRONG, mix=("micro", "no", "no", "no", "no"))
    (pair,) = pairs([micro, SMALL])
    assert (pair.first.job, pair.second.job) == ("A", "B")
    assert pairs([micro, replace(SMALL, mix=("macro", "no", "no", "no", "no"))]) == []


def test_the_best_saving_is_first() -> None:
    found = pairs([SMALL, STRONG, replace(SMALL, job="C", charge=900.0)])
    savings = [each.saving for each in found]
    assert savings == sorted(savings, reverse=True)
    assert len(found) == 3


@dataclass(frozen=True)
class Bid:
    """The values of a job that are compared."""

    job: str
    by_area: float
    address: str = "none"
    usual: tuple[float, float] = (0.5, 2.0)


def test_a_price_by_area_far_from_the_median_is_reported_for_review() -> None:
    found = outliers([Bid("a", 20), Bid("b", 24), Bid("c", 48), Bid("d", 48.1), Bid("e", 9)])
    assert [found[job] != "-" for job in "abcde"] == [False, False, False, True, True]
    assert "2.0 times" in found["d"]


def test_two_prices_have_no_usable_median() -> None:
    assert set(outliers([Bid("a", 10), Bid("b", 90)]).values()) == {"-"}


def test_one_address_twice_is_reported_on_both_jobs_and_a_blank_one_on_none() -> None:
    found = outliers([Bid("a", 20, "41 Orchard Spur"), Bid("b", 20, "41  orchard spur"), Bid("c", 20), Bid("d", 20)])
    assert found == {"a": "same address as b", "b": "same address as a", "c": "-", "d": "-"}
