"""Pictures: drawn from cells, so that they show what the numbers say, before and after an edit."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise
from pathlib import Path

import openpyxl
import pytest

from books import Rows, in_lists_of, line, only_job, written
from calc.layout.bid_cautions import slots_for
from calc.layout.workbook import addresses
from calc.model.results import JobValues
from calc.trade.catalog import PLANS_DRAWN
from calc.trade.levels import AREA
from calc.trade.papers.area_text import AreaText
from calc.trade.takeoff.drawing import Plan
from calc.trade.takeoff.geometry import Slab
from calc.trade.takeoff.joints import MatchedJoints
from drawn_charts import Picture, cells, held, pictures
from front_page_reader import number
from priced_company import PRICED
from sheet_cells import read_cells, type_over
from witness import Place, Program, Recalculations

SHAPES: dict[str, Rows] = {
    "Jobs": [["job", "bid date"], ["one", "2026-04-13"]],
    "Areas": [
        ["area", "shape", "length ft", "width ft", "other width ft", "area ft2", "doweled edge ft", "dowel spacing in"],
        ["walk", "rectangle", "40' 6\"", 4, 3, None, 3, 12],
        ["tip", "triangle", 9, 5, None, None, None, None],
        ["pad", "circle", 8, None, None, None, None, None],
        ["turn", "quarter circle", 6, None, None, None, None, None],
        ["bend", "cross-sections", None, None, None, None, None, None],
        ["lot", "outline points", None, None, None, None, None, None],
        ["known", "area given", None, None, None, 49, None, None],
    ],
    "Cross-sections": [["area", "station ft", "width ft"], ["bend", 1, 3], ["bend", 6, 5], ["bend", 15, 2]],
    "Outline points": [
        ["area", "x ft", "y ft"],
        *(["lot", x, y] for x, y in ((2, 1), (2, 9), (7, 9), (7, 5), (12, 5), (12, 1))),
    ],
}
"""An area of each shape."""

ROUND = {"pad": 3 / 3.14159265, "turn": 0.9886}
"""The share of a round area that lies within its straight sides: twelve of a circle, six of a quarter."""


def shapes(folder: Path, **changed: Rows) -> JobValues:
    """The job of all shapes, with some of its tables changed."""
    return only_job(folder, SHAPES | changed, PRICED)


@pytest.fixture(scope="module")
def job(tmp_path_factory: pytest.TempPathFactory) -> JobValues:
    """The job of all shapes."""
    return shapes(tmp_path_factory.mktemp("shapes"))


@pytest.fixture(scope="module")
def book(job: JobValues, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Its workbook."""
    return written(job, tmp_path_factory.mktemp("book") / "one.xlsx")


def plans(path: Path) -> list[Picture]:
    """The plan of each area of the job of all shapes."""
    found = [each for each in pictures(path) if each.sheet == "Takeoff"]
    assert len(found) == len(SHAPES["Areas"]) - 1
    return found


def outline(plan: Picture, found: Mapping[Place, object]) -> list[tuple[float, float]]:
    """The points of an outline, along and across."""
    drawn = plan.drawn("outline")
    return [(number(x), number(y)) for x, y in zip(held(found, drawn.along), held(found, drawn.across), strict=True)]


def enclosed(points: list[tuple[float, float]]) -> float:
    """The area that a closed outline holds."""
    return abs(sum(x * down - right * y for (x, y), (right, down) in pairwise(points))) / 2


def values(path: Path) -> dict[Place, object]:
    """Every value of a workbook; an empty text is no value."""
    return {place: held.value for place, held in read_cells(path).items() if held.value not in (None, "")}


def test_there_is_a_plan_of_every_area_under_its_name_and_in_its_sizes(job: JobValues, book: Path) -> None:
    found = values(book)
    told = [tuple(held(found, title)[0] for title in each.titles) for each in plans(book)]
    names = [row[0] for row in SHAPES["Areas"][1:]]
    assert told == [(name, job.of(AreaText.shape, area)) for area, name in enumerate(names)]


def test_every_picture_says_in_words_what_it_shows(book: Path) -> None:
    told = [each.alt_text for each in pictures(book)]
    assert len(told) == len(plans(book)) > 0
    assert all(len(each) > 40 for each in told)
    assert len(set(told)) == len(told)


def test_a_plan_says_that_it_is_not_to_scale_and_that_no_side_was_surveyed(book: Path) -> None:
    for each in plans(book):
        assert "not to scale" in each.alt_text
        names = {drawn.name for drawn in each.series}
        assert names == {"outline, not to scale", "joints", "joints along", "doweled, side unknown"}


def test_an_outline_is_closed_and_holds_the_area_that_is_poured(job: JobValues, book: Path) -> None:
    found = values(book)
    for area, (plan, (name, *_)) in enumerate(zip(plans(book), SHAPES["Areas"][1:], strict=True)):
        points = outline(plan, found)
        assert points[0] == pytest.approx(points[-1]), f"{name} is open"
        drawn = enclosed(points) * number(job.of(Plan.across, area))
        share = ROUND.get(str(name), 1)
        assert drawn == pytest.approx(number(job.of(Slab.gross_area, area)) * share, rel=1e-3), name


def test_every_joint_is_drawn_where_the_joint_list_has_it_one_width_long(job: JobValues, book: Path) -> None:
    found, plan = values(book), plans(book)[0]
    drawn = plan.drawn("joints")
    lines = [(x, y) for x, y in zip(held(found, drawn.along), held(found, drawn.across), strict=True) if y != 0]
    joints = int(number(job.of(MatchedJoints.joints, 0)))
    assert joints > 2
    assert [y for _, y in lines] == [1] * joints
    assert [number(x) for x, _ in lines] == pytest.approx([40.5 * (n + 1) / (joints + 1) for n in range(joints)])


def test_a_patio_that_is_wider_than_long_is_drawn_along_its_joints_with_those_along_it_too(tmp_path: Path) -> None:
    wide = shapes(
        tmp_path,
        Areas=[["area", "length ft", "width ft", "doweled edge ft", "dowel spacing in"], ["patio", 20, 24, 6, 12]],
        **{"Cross-sections": [], "Outline points": []},
    )
    path = written(wide, tmp_path / "wide.xlsx")
    found = values(path)
    (plan,) = [each for each in pictures(path) if each.sheet == "Takeoff"]
    points = outline(plan, found)
    assert {point for point in points} == {(0, 0), (24, 0), (24, 1), (0, 1)}
    assert enclosed(points) * 20 == pytest.approx(20 * 24)
    across, along = plan.drawn("joints"), plan.drawn("joints along")
    assert [x for x in held(found, across.along) if x] == [8, 16]
    drawn = zip(held(found, along.along), held(found, along.across), strict=True)
    assert [(reach, place) for reach, place in drawn if reach] == [(24, 0.5)]
    assert held(found, plan.drawn("doweled").across) == [0, 0]


def test_what_is_doweled_is_drawn_as_long_as_it_is(book: Path) -> None:
    found = values(book)
    drawn = plans(book)[0].drawn("doweled")
    assert held(found, drawn.along) == [0, 3]
    assert held(found, drawn.across) == [0, 0]


def test_a_picture_lies_over_no_number_and_over_no_other_picture(book: Path) -> None:
    workbook = openpyxl.load_workbook(book)
    drawn = pictures(book)
    for place, each in enumerate(drawn):
        (top, left), (bottom, right) = each.first, each.last
        under = workbook[each.sheet].iter_rows(top, bottom, left, right, values_only=True)
        assert not [cell for row in under for cell in row if cell is not None], f"under {each.alt_text}"
        for other in drawn[:place]:
            beside = other.last[0] < top or other.last[1] <= left
            assert other.sheet != each.sheet or beside, f"{each.alt_text} over {other.alt_text}"


@pytest.mark.slow
def test_pictures_follow_an_edit(
    job: JobValues, book: Path, libreoffice: Program, recalculated: Recalculations, tmp_path: Path
) -> None:
    heads, _, *others = SHAPES["Areas"]
    longer = ["walk", "rectangle", 28, 4, 3, None, 5, 12]
    known = [["tip", "area given", 9, 5, None, 30, None, None] if row[0] == "tip" else row for row in others]
    where = addresses(job.shape, slots_for(job))
    edited = tmp_path / "edited.xlsx"
    type_over(
        book,
        {
            where["Area.length", 0]: 28.0,
            where["Edge.length", _doweled(job)]: 5.0,
            where["Area.shape", 1]: "area given",
            where["Area.given_area", 1]: 30.0,
        },
        edited,
    )
    anew = shapes(tmp_path, Areas=[heads, longer, *known])
    fresh = written(in_lists_of(job, anew.job), tmp_path / "fresh.xlsx")
    followed, wanted, before = values(recalculated.result(edited, libreoffice)), values(fresh), values(book)
    shown, anew = (
        [place for each in pictures(path) for drawn in each.series for place in _places(drawn.along, drawn.across)]
        for path in (book, fresh)
    )
    assert [followed[place] for place in shown] == [pytest.approx(wanted[place]) for place in anew]
    moved = {place for place in shown if followed[place] != pytest.approx(before[place])}
    for plan in plans(book)[:2]:
        assert moved & set(cells(plan.drawn("outline").along)), "the outline moved"
    assert moved & set(cells(plans(book)[0].drawn("joints").along)), "the joints moved"
    assert moved & set(cells(plans(book)[0].drawn("doweled").along)), "the doweled length moved"


def _places(*references: str) -> list[Place]:
    return [place for reference in references for place in cells(reference)]


def _doweled(job: JobValues) -> int:
    """The row of the first edge that is doweled."""
    spacing = line("Edge.spacing")
    return next(row for row in range(job.count(spacing.level)) if job.of(spacing, row) == 12)


def test_the_pictures_of_six_areas_cost_few_cells(tmp_path: Path) -> None:
    heads, *rows = SHAPES["Areas"]
    six = shapes(
        tmp_path,
        Areas=[heads, *([f"A{n}", *rows[0][1:]] for n in range(6))],
        **{"Cross-sections": [], "Outline points": []},
    )
    assert six.count(AREA) == 6
    lines = {each.id for section in PLANS_DRAWN for each in section.members}
    counted = sum(1 for name, _ in addresses(six.shape, slots_for(six)) if name in lines)
    assert 500 < counted < 1_250, "four numbers and a rule a point, sixteen points a plan, and the joints along it"
