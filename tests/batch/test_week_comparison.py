"""Comparison of the jobs of a run: two small pours on one truck, unusual prices, one address twice."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from pathlib import Path

import pytest

from books import Rows, intake_from, jobs_of
from calc.declared import Declared, Input, Kind, Line
from calc.model.outliers import outliers
from calc.model.results import SmallPour
from calc.model.truck_sharing import shared_trucks, small_pour
from calc.trade.inputs.job import Job
from calc.trade.papers.mix import MIX, MixProperty
from priced_company import PRICED

DAY = 46139.0
FEES = ((0.0, 155.0), (2.0, 105.0), (4.0, 55.0), (6.0, 0.0))
PLAIN = {each.named.id: "no" for each in MIX}
"""A mix by its properties that takes nothing."""
SMALL = SmallPour(
    job="A", day=DAY, yards=1.5, charge=1.5 * 171 + 155 + 28, waiting=0.0, psi=3500.0, yard=171.0,
    mix=tuple(PLAIN.values()), fees=FEES, least=1.0, by_load=28.0, capacity=9.0, unloading=7.5,
    time_left=65.0, free=(30.0, 6.0), minute=2.25, between=15.0,
)  # fmt: skip
STRONG = replace(SMALL, job="B", yards=1.0, charge=179.0 + 155 + 28, psi=4000.0, yard=179.0, unloading=5.0)


def test_a_pair_saves_what_two_trucks_cost_less_one_with_the_dearer_yard_for_both() -> None:
    (pair,) = shared_trucks([SMALL, STRONG])
    apart = 1.5 * 171 + 155 + 28 + 179 + 155 + 28
    shared_cost = 2.5 * 179 + 105 + 28
    assert pair.saving == pytest.approx(apart - shared_cost)


def test_the_second_delivery_is_charged_for_the_driving_time() -> None:
    slow = replace(STRONG, unloading=20.0)
    (pair,) = shared_trucks([SMALL, slow])
    assert pair.together == pytest.approx(2.5 * 179 + 105 + 28 + 28.13), "12.5 min at $2.25"


def test_a_load_at_a_limit_of_the_fees_pays_the_cheaper_one() -> None:
    (pair,) = shared_trucks([replace(SMALL, yards=1.0), STRONG])
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
    assert shared_trucks([SMALL, other]) == []


def test_a_pair_that_just_fits_is_offered() -> None:
    assert shared_trucks([SMALL, replace(STRONG, yards=7.5, unloading=65 - 15 - 7.5, charge=2000.0)])


def mix(**other: str) -> tuple[str, ...]:
    """A mix, some of whose properties are not plain."""
    return tuple((PLAIN | {name.replace("__", "."): said for name, said in other.items()}).values())


def test_a_truck_with_fiber_goes_to_the_plain_stop_first_and_never_mixes_two_kinds() -> None:
    micro = replace(STRONG, mix=mix(Job__fiber="micro"))
    (pair,) = shared_trucks([micro, SMALL])
    assert tuple(each.job for each in pair.stops) == ("A", "B")
    assert shared_trucks([micro, replace(SMALL, mix=mix(Job__fiber="macro"))]) == []


WITH_FIBER: Mapping[Input, object] = {Job.fiber: "micro"}
"""Typed for both jobs: neither is so plain that it may be the first stop of any truck."""


def typed_pair(folder: Path, both: Mapping[Input, object], second: Mapping[Input, object]) -> list[SmallPour]:
    """Two small walks that are poured on one day, equal but for what is typed for the second."""
    typed = [dict(both), {**both, **second}]
    heads = [given for given in typed[1] if given.section is Job]
    jobs: Rows = [
        ["job", "bid date", "pour date", *(given.header for given in heads)],
        *(
            [name, "2026-04-13", "2026-04-27", *(job.get(given) for given in heads)]
            for name, job in zip("AB", typed, strict=True)
        ),
    ]
    facts: Rows = [
        ["job", "fact", "value"],
        *(["all", fact, said] for fact, said in (("Placing method", "chute"), ("Placing reason", "it is near"))),
        *(
            [name, given.label, said]
            for name, job in zip("AB", typed, strict=True)
            for given, said in job.items()
            if given not in heads
        ),
    ]
    areas: Rows = [["job", "area", "length ft", "width ft"], ["A", "walk", 40, 3], ["B", "walk", 40, 3]]
    company = {**PRICED, "Site conditions": [facts[0], *facts[1:3]]}
    week = {"Jobs": jobs, "Areas": areas, "Site conditions": [facts[0], *facts[3:]]}
    intake = intake_from(folder, week, company)
    jobs_taken = jobs_of(intake)
    assert len(jobs_taken) == 2, intake.findings
    return [small_pour(job) for job in jobs_taken]


def inputs_of(named: Declared) -> Iterator[Input]:
    """What a person types for a property: the input that it is, or those that its formula asks."""
    if isinstance(named, Input):
        yield named
    elif isinstance(named, Line):
        yield from (leaf for leaf in named.formula.leaves() if isinstance(leaf, Input))


def other_values(given: Input) -> Iterator[object]:
    """Other words of a choice, or the limits of a number."""
    if given.kind is Kind.CHOICE:
        yield from (word for word in given.words_allowed if word != given.default)
    yield from (str(each) for each in (given.ask_low, given.ask_high, given.low, given.high) if each is not None)


def typed_otherwise(folder: Path, property_: MixProperty, both: Mapping[Input, object]) -> list[SmallPour]:
    """Two equal jobs, but that one property of the second's mix comes out otherwise."""
    place = MIX.index(property_)
    asked = sorted(inputs_of(property_.named), key=lambda given: given.kind is Kind.CHOICE)
    tried = [(given, said) for given in asked for said in other_values(given)]
    for number, (given, said) in enumerate(tried):
        room = folder / str(number)
        room.mkdir()
        two = typed_pair(room, both, {given: said})
        if two[0].mix[place] != two[1].mix[place]:
            return two
    pytest.fail(f"nothing that can be typed changes {property_.named.label}")


def test_two_jobs_of_one_mix_are_offered_one_truck(tmp_path: Path) -> None:
    (pair,) = shared_trucks(typed_pair(tmp_path, WITH_FIBER, {}))
    assert {each.job for each in pair.stops} == {"A", "B"}


MUST_AGREE = [each for each in MIX if not each.more_serves]
ADDED_LATER = [each for each in MIX if each.added_later]


@pytest.mark.parametrize("property_", MUST_AGREE, ids=[each.named.id for each in MUST_AGREE])
def test_no_truck_is_offered_to_two_mixes_that_differ(tmp_path: Path, property_: MixProperty) -> None:
    one, another = typed_otherwise(tmp_path, property_, WITH_FIBER)
    assert shared_trucks([one, replace(another, mix=one.mix)]), "but for the mix they could share one"
    assert shared_trucks([one, another]) == []


@pytest.mark.parametrize("property_", ADDED_LATER, ids=[each.named.id for each in ADDED_LATER])
def test_what_can_be_added_later_goes_to_the_second_stop(tmp_path: Path, property_: MixProperty) -> None:
    plain, dosed = typed_pair(tmp_path, {}, {})[0], typed_otherwise(tmp_path, property_, WITH_FIBER)[1]
    (pair,) = shared_trucks([replace(dosed, job="dosed"), replace(plain, job="plain")])
    assert tuple(each.job for each in pair.stops) == ("plain", "dosed")


def test_the_stronger_mix_serves_both(tmp_path: Path) -> None:
    (strength,) = (each for each in MIX if each.more_serves)
    one, another = typed_otherwise(tmp_path, strength, WITH_FIBER)
    assert one.psi != another.psi
    (pair,) = shared_trucks([one, another])
    dearer = max(one.yard, another.yard)
    assert pair.together >= (one.yards + another.yards) * dearer


def test_the_best_saving_is_first() -> None:
    found = shared_trucks([SMALL, STRONG, replace(SMALL, job="C", charge=900.0)])
    savings = [each.saving for each in found if not each.best]
    assert savings == sorted(savings, reverse=True)
    assert [len(each.stops) for each in found].count(2) == 3


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
