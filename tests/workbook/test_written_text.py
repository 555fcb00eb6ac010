"""What goes out through the writer goes out as it stands: formulas, and the words that stand in them."""

from __future__ import annotations

import zipfile
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from xlsxwriter.worksheet import Worksheet

from books import COMPANY, write_book
from calc import batch
from calc.batch.week import week_of
from calc.declared import Line
from calc.files import shipped
from calc.layout.week import DAYS, WeekRow, week_sheets
from calc.model.results import JobDays
from calc.model.truck_sharing import SmallPour
from calc.trade.catalog import SECTIONS
from calc.trade.money.week import COLUMNS
from calc.trade.papers.mix import MIX
from sheet_cells import read_cells

POUR = SmallPour(
    "one",
    46139.0,
    1.5,
    400.0,
    0.0,
    3500.0,
    171.0,
    ("no",) * len(MIX),
    ((0.0, 155.0), (2.0, 105.0), (4.0, 55.0), (6.0, 0.0)),
    1.0,
    28.0,
    9.0,
    20.0,
    65.0,
    (30.0, 6.0),
    2.25,
    15.0,
)
ROW = WeekRow(
    job="one", file="one.xlsx", client="Tamarack Row Owners", bid_date=46125.0, pour_date=46139.0,
    quantities=tuple(range(1, 1 + len(COLUMNS))), state="READY", reason="", caution="none", cautions=(), ledger=(),
    address="41 Orchard Spur", by_area=24.5, usual=(0.5, 2.0), pour=POUR,
    days=JobDays("one", True, (), 0.0, 4.0, 7.0, 1.0),
)  # fmt: skip


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> list[Path]:
    """Every workbook of the demo."""
    folder = tmp_path_factory.mktemp("demo")
    run = batch.load_run([shipped("sample_inputs") / "jobs.xlsx"], None, None)
    batch.bid(run, folder)
    return [path for _, path, _ in run.written]


def formulas(book: Path) -> Iterator[str]:
    """Every formula of a workbook."""
    yield from (f"={held.formula}" for held in read_cells(book).values() if held.formula is not None)


def test_no_formula_needs_what_our_writer_leaves_out(demo: list[Path]) -> None:
    """The writer marks functions that are younger than the file format; ours does not look for them."""
    found = {formula for book in demo for formula in formulas(book)}
    assert len(found) > 1000
    sheet = Worksheet()
    assert [each for each in found if sheet._prepare_formula(each) != each.removeprefix("=")] == []


def test_no_title_stands_over_nothing(demo: list[Path]) -> None:
    """A section of factors and prices alone has its rows on their own sheets."""
    bare = [
        section for section in SECTIONS if section.sheet and not any(isinstance(each, Line) for each in section.members)
    ]
    assert bare, "there is none, and nothing to look for"
    shown = {(sheet, held.value) for (sheet, _), held in read_cells(demo[0]).items()}
    assert [section.title for section in bare if (section.sheet, section.title) in shown] == []


@pytest.mark.parametrize("job", ["SORT(1)", "UNIQUE(A)", 'say "(1)"', "(x)"])
def test_a_job_that_is_called_like_a_function_still_has_its_link(job: str, tmp_path: Path) -> None:
    write_book(tmp_path / "company.xlsx", COMPANY)
    tables = {"Jobs": [["job", "bid date"], [job, "2026-04-13"]], "Areas": [["length ft", "width ft"], [12, 3]]}
    run = batch.load_run([write_book(tmp_path / "input.xlsx", tables)], None, None)
    batch.bid(run, tmp_path / "outputs")
    (week,) = [path for name, path, _ in run.written if not name]
    (written,) = [path.name for name, path, _ in run.written if name]
    with zipfile.ZipFile(week) as parts:
        sheet = parts.read("xl/worksheets/sheet1.xml").decode()
    assert "_xlfn" not in sheet
    assert 't="array"' not in sheet
    (link,) = [each for each in formulas(week) if "HYPERLINK" in each and "xlsx" in each]
    target, shown = link.removeprefix("=HYPERLINK(").removesuffix(")").replace('"&"', "").split('","')
    assert (target.removeprefix('"'), shown.removesuffix('"').replace('""', '"')) == (written, job)


def test_a_job_bid_alone_has_the_same_day_as_in_a_week() -> None:
    """A day on which nothing else is poured shows what it shows for the job alone."""
    alone, together = (
        [
            cell.shows(None)
            for plan in week_sheets(week_of(rows))
            if plan.page.name == DAYS
            for cell in plan.cells
            if cell.row == 5
        ]
        for rows in ([ROW], [replace(ROW, job="two", pour_date=ROW.pour_date + 7), ROW])
    )
    assert alone == together
    assert alone[1:4] == [ROW.pour_date, 1.0, 2.0]
