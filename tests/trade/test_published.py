"""The bid gives what handbooks, agencies and standards print; where it does not, its factor says why."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping

import pytest

from books import line, value
from calc.declared import Factor, Line
from calc.intake.schema import everything
from calc.model.results import JobValues
from published import RANGE, Published, Says, Usual, bid_all
from published_concrete import CONCRETE
from published_finish import FINISH
from published_ground import GROUND
from published_haul import HAUL
from published_money import MONEY
from published_order import ORDER
from published_reinforcement import REINFORCEMENT, REINFORCEMENT_USUAL
from published_site import SITE, USUAL_SITE
from published_usual import USUAL
from published_weather import USUAL_WEATHER, WEATHER
from published_whole import METRIC_STRIP, STRIP, WHOLE
from published_work import WORK, WORK_USUAL

FIGURES = (*CONCRETE, *ORDER, *GROUND, *HAUL, *FINISH, *WORK, *WEATHER, *MONEY, *SITE, *REINFORCEMENT, *WHOLE)
Bids = Mapping[str, JobValues]


@pytest.fixture(scope="module")
def bids(tmp_path_factory: pytest.TempPathFactory) -> Bids:
    """The bid of every published figure, by its name."""
    return bid_all(tmp_path_factory.mktemp("published"), FIGURES)


@pytest.mark.parametrize("figure", FIGURES, ids=lambda figure: figure.name)
def test_a_published_figure_is_what_the_contractor_gets(figure: Published, bids: Bids) -> None:
    off = [said for said in figure.says if not said.low <= number(bids[figure.name], said) <= said.high]
    assert not off, f"{figure.source} ({figure.known.value}): " + "; ".join(
        f"{said.line} is {number(bids[figure.name], said):.9g}, published {said.low:.9g} to {said.high:.9g}"
        for said in off
    )


@pytest.mark.parametrize(
    "usual",
    (*USUAL, *WORK_USUAL, *USUAL_WEATHER, *USUAL_SITE, *REINFORCEMENT_USUAL),
    ids=lambda usual: f"{usual.factor} {usual.kind} {usual.source}",
)
def test_a_usual_factor_is_the_published_one_or_says_why_it_is_not(usual: Usual, bids: Bids) -> None:
    factor = line(usual.factor)
    assert isinstance(factor, Factor)
    kinds = factor.level.axis.words if factor.level.axes else ("",)
    taken = value(bids[STRIP_OF_THE_BENCH], usual.factor, kinds.index(usual.kind))
    if not usual.departs:
        assert usual.low <= float(taken) <= usual.high, f"{usual.source} ({usual.known.value})"
        return
    assert not usual.low <= float(taken) <= usual.high, "it no longer departs: leave the departure out of its row"
    if usual.departs == RANGE:
        assert factor.low is not None and factor.high is not None
        assert factor.low <= usual.low and usual.high <= factor.high
    else:
        assert usual.departs in factor.source


def test_a_job_typed_in_metres_is_the_same_bid(bids: Bids) -> None:
    feet, metres = bids[STRIP.name], bids[METRIC_STRIP.name]
    for each in everything():
        if not isinstance(each, Line):
            continue
        for row in range(feet.count(each.level) if each.level.axes else 1):
            in_feet, in_metres = feet.of(each, row), metres.of(each, row)
            if isinstance(in_feet, str) or isinstance(in_metres, str):
                assert in_feet == in_metres, each.id
            else:
                assert in_metres == pytest.approx(in_feet, rel=1e-9, abs=1e-9, nan_ok=True), each.id


def test_no_two_figures_hide_each_other() -> None:
    names = Counter(figure.name.casefold() for figure in FIGURES)
    assert [name for name, times in names.items() if times > 1] == []


def number(job: JobValues, said: Says) -> float:
    """What the bid says of a line, or of its ratio to another."""
    found = float(value(job, said.line, _place(job, said.line, said.row)))
    return found / float(value(job, said.over, _place(job, said.over, said.row))) if said.over else found


def _place(job: JobValues, name: str, row: int) -> int:
    """The row of a line in this job, of a row by its place among all that its level may have."""
    level = line(name).level
    if not level.axes:
        return 0
    return row if level.crossed or not level.axis.words else level.axis.places(job.counts).index(row)


STRIP_OF_THE_BENCH = "a walk is four inches where nobody says otherwise"
"""A job of the bench's company book, which has no factors of its own."""
