"""A workbook is read from page to page: every link leads to the cell that its words name, and no page is left over."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

import calc
from calc.audit.pdf import pdf_of
from calc.files import shipped
from calc.layout.sheets import SHORT_NAMES
from sheet_cells import Held, read_cells
from witness import Place, Program

JOB = "26-041"
MOST_PAGES = 134
"""Pages of the simplest job of the demo, on letter."""

_LINK = re.compile(r"HYPERLINK\(\"#'(?P<sheet>[^']+)'!(?P<cell>[A-Z]+(?P<row>\d+))\"")
_NUMBERED = re.compile(r"(?P<name>.+?) (?P<row>\d+)")
_SHEETS = {short: sheet for sheet, short in SHORT_NAMES.items()}


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The workbook of the simplest job of the demo."""
    folder = tmp_path_factory.mktemp("links")
    run = calc.bid(shipped("sample_inputs") / "jobs.xlsx", folder=folder, job=JOB, workers=1)
    return next(path for job, path, _ in run.written if job)


@pytest.fixture(scope="module")
def cells(book: Path) -> dict[Place, Held]:
    """Every cell of it."""
    return read_cells(book)


def test_every_link_leads_to_a_cell_with_something_in_it_that_its_words_name(cells: dict[Place, Held]) -> None:
    links = [(place, held, found) for place, held in cells.items() if (found := _LINK.search(held.formula or ""))]
    assert len(links) > 150, "the search is blind"
    filled = {(sheet, ref) for (sheet, ref), held in cells.items() if held.value not in (None, "") or held.formula}
    rows = {(sheet, re.sub(r"[A-Z]+", "", ref)) for sheet, ref in filled}
    lost = [place for place, _, found in links if (found["sheet"], found["row"]) not in rows]
    assert lost == [], "a link to an empty row"
    misnamed = []
    for place, held, found in links:
        told = _NUMBERED.fullmatch(str(held.value))
        if told and told["name"] in _SHEETS and (_SHEETS[told["name"]], told["row"]) != (found["sheet"], found["row"]):
            misnamed.append((place, held.value))
    assert misnamed == []


def test_the_workbook_of_a_small_job_prints_on_so_many_pages(book: Path, libreoffice: Program) -> None:
    assert libreoffice is Program.LIBREOFFICE
    pdf = pdf_of(book.name, book.read_bytes())
    pages = len(re.findall(rb"/Type/Page\b", pdf))
    assert 50 < pages <= MOST_PAGES, f"{pages} pages: a column prints on a page of its own, or a sheet has grown"
