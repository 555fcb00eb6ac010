"""Sheets rendered from row templates: the file is the one that xlsxwriter makes cell by cell, with words as typed."""

from __future__ import annotations

from pathlib import Path
from random import Random
from zipfile import ZipFile

import pytest
from defusedxml.ElementTree import fromstring

from books import Rows, intake_from, jobs_of, only_job, written
from calc.batch import evaluated, load_run, ready_jobs
from calc.cell_text import escape_control
from calc.errors import Unreadable
from calc.files import shipped
from calc.layout.addresses import CellMap
from calc.layout.page import CellValue, IssueValue, Page
from calc.layout.workbook import resolve
from calc.model.results import JobValues
from calc.model.sensitivity import with_sensitivity
from calc.xlsx_write import worksheets as sheets
from calc.xlsx_write import write
from calc.xlsx_write.row_templates import sheet_template
from calc.xlsx_write.write import Identity, job_workbook
from random_jobs import company_tables, drawn_job, random_company, week_tables
from sheet_cells import read_cells
from whole_job import whole_company, whole_week
from witness import Program, recalculate

ODD = ("<r>Tom</r>", "_x0041_", "<r><t>a</t></r>", "a & b < c > d", " two  spaces ", "a\nb", "#N/A", "=1+1")
"""Words that a file format gives a meaning of its own."""


@pytest.fixture
def demo() -> list[JobValues]:
    """The jobs of the demo."""
    return list(evaluated(ready_jobs(load_run([shipped("sample_inputs") / "jobs.xlsx"], None, None))))


def rendered(job: JobValues) -> bytes:
    """The workbook of a job, which has to come from row templates: the other way is taken away."""
    with pytest.MonkeyPatch.context() as patch:
        patch.delattr(write, "CellSheet")
        return job_workbook(with_sensitivity(job))


def cell_by_cell(job: JobValues) -> bytes:
    """The workbook of a job as xlsxwriter makes it cell by cell."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(write, "supports_rendered_rows", lambda: False)
        patch.delattr(sheets, "sheet_template")
        return job_workbook(with_sensitivity(job))


@pytest.mark.slow
def test_the_demo_is_rendered_to_the_byte_as_it_is_written_cell_by_cell(demo: list[JobValues]) -> None:
    for job in demo[::4]:
        assert rendered(job) == cell_by_cell(job), job.job.id


@pytest.mark.slow
def test_a_job_that_fills_every_column_is_too(tmp_path: Path) -> None:
    (job,) = jobs_of(intake_from(tmp_path, whole_week(), whole_company()))
    assert rendered(job) == cell_by_cell(job)


@pytest.mark.slow
def test_so_are_random_jobs_in_whatever_order_they_come(tmp_path: Path) -> None:
    chance = Random(20261125)
    company = random_company(chance)
    drawn = [(f"J{number}", drawn_job(chance, company)) for number in range(3)]
    jobs = jobs_of(intake_from(tmp_path, week_tables(drawn), company_tables(company)))
    first = [rendered(job) for job in jobs]
    assert len(set(first)) == len(jobs) > 2
    assert [rendered(job) for job in reversed(jobs)] == first[::-1]
    for job, data in zip(jobs, first, strict=True):
        assert data == cell_by_cell(job), job.job.id


@pytest.mark.slow
def test_jobs_of_one_shape_share_their_row_templates_and_nothing_else(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    heads = ["job", "bid date", "client"]
    week: dict[str, Rows] = {
        "Jobs": [heads, ["one", "2026-04-13", "Tom"], ["two", "2026-04-14", "Ann & Bo"], ["three", "2026-04-13", "Cy"]],
        "Areas": [["job", "length ft", "width ft"], ["one", 12, 3], ["two", "11' 11\"", 3], ["three", "12 1/8", 3]],
    }
    jobs = jobs_of(intake_from(tmp_path, week))
    assert len({job.shape for job in jobs}) == 1
    made = []
    monkeypatch.setattr(sheets, "sheet_template", lambda *of: made.append(of[0].name) or sheet_template(*of))
    rendered(jobs[0])
    made.clear()
    both = [rendered(job) for job in jobs[1:]]
    assert made == ["Log", "Log"]
    assert both == [cell_by_cell(job) for job in jobs[1:]]


@pytest.fixture(scope="module")
def odd(tmp_path_factory: pytest.TempPathFactory) -> tuple[JobValues, Path]:
    """A small job in which somebody typed such words wherever words are typed, and its workbook."""
    folder = tmp_path_factory.mktemp("odd")
    heads, cells = ["client", "address", "photos", "notes"], list(ODD)
    facts = ["contact on site", "plan revision", "exclusions", "locate ticket"]
    week: dict[str, Rows] = {
        "Jobs": [["job", "bid date", *heads], ["one", "2026-04-13", *cells[:4]]],
        "Areas": [["length ft", "width ft"], [12, 3]],
        "Site conditions": [["fact", "value"], *([fact, words] for fact, words in zip(facts, cells[4:], strict=True))],
    }
    job = only_job(folder, week)
    return job, written(job, folder / "one.xlsx")


def test_what_was_typed_stands_in_a_workbook_that_is_well_formed(odd: tuple[JobValues, Path]) -> None:
    """As words of the job's own, and as what the formulas that bring them come to."""
    _, book = odd
    with ZipFile(book) as file:
        for name in file.namelist():
            fromstring(file.read(name))
    for words in ODD:
        found = [held for held in read_cells(book).values() if held.value in (words, escape_control(words))]
        assert any(held.formula is None for held in found), words
        assert all(not held.is_error for held in found), words
        assert {held.value for held in found} == {escape_control(words)}
    assert any(held.formula and held.value == escape_control(ODD[0]) for held in read_cells(book).values())


def test_a_spreadsheet_program_reads_odd_words_as_they_were_typed(
    witness: Program, odd: tuple[JobValues, Path], tmp_path: Path
) -> None:
    _, book = odd
    copy = read_cells(recalculate([book], witness, tmp_path)[book])
    spellings = {escape_control(words): {words, escape_control(words)} for words in ODD}
    brought = {
        place: held.value for place, held in read_cells(book).items() if held.formula and held.value in spellings
    }
    assert len(set(brought.values())) > 3
    assert [place for place, value in brought.items() if copy[place].value not in spellings[value]] == []


@pytest.mark.parametrize("code", [1, 11, 12, 31])
def test_a_character_that_no_workbook_holds_is_refused_at_its_cell(code: int, tmp_path: Path) -> None:
    heads, row = ["job", "bid date", "client"], ["one", "2026-04-13", f"Tam{chr(code)}arack"]
    (found,) = intake_from(tmp_path, {"Jobs": [heads, row], "Areas": [["length ft", "width ft"], [12, 3]]}).findings
    assert (found.place.sheet, found.place.cell) == ("Jobs", "C2")
    assert f"(code {code}) after 3 characters." in found.found


def the_file(page: Page, job: JobValues | None = None) -> bytes:
    """A workbook of one sheet."""
    return write.workbook_bytes([resolve(page, CellMap())], job, Identity("Odd", "", 46125.0, "letter", bare=True))


def a_page(value: CellValue) -> Page:
    """A sheet with one cell of the job's own."""
    page = Page("Odd", (20.0,))
    page.put(IssueValue(0, 0, "words", lambda _: value))
    return page


@pytest.mark.parametrize("value", [float("nan"), float("inf"), -float("inf")])
def test_what_is_no_number_is_refused_and_not_written(value: float) -> None:
    with pytest.raises(Unreadable, match="which is not a number"):
        the_file(a_page(value))


def test_the_longest_text_that_a_cell_takes_is_taken_and_no_longer_one(tmp_path: Path) -> None:
    book = tmp_path / "long.xlsx"
    book.write_bytes(the_file(a_page("\N{BRICK}" * 16_383 + "x")))
    assert read_cells(book)["Odd", "A1"].value == "\N{BRICK}" * 16_383 + "x"
    with pytest.raises(Unreadable, match="32,767 characters"):
        the_file(a_page("\N{BRICK}" * 16_384))


def test_two_cells_at_one_address_are_refused() -> None:
    page = a_page("one")
    page.put(IssueValue(0, 0, "words", lambda _: "two"))
    with pytest.raises(ValueError, match="two cells of Odd have the address A1"):
        the_file(page)


def test_empty_rows_and_rows_with_a_height_are_written_as_the_writer_writes_them() -> None:
    def page() -> Page:
        page = Page("Odd", (20.0, 10.0), heights={0: 22, 3: 15, 40: 30.5, 77: 15.0})
        for row, col in ((0, 1), (2, 0), (17, 3), (40, 0), (41, 1)):
            page.put(IssueValue(row, col, "words", lambda _: "some words that take more than a line of their column"))
        page.put(IssueValue(2, 1, "sentence", lambda _: "wrapped words that take more than a line", wraps=True))
        page.put(IssueValue(3, 1, "sentence", lambda _: 3.0, wraps=True))
        return page

    ready_rows = the_file(page())
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(write, "supports_rendered_rows", lambda: False)
        assert the_file(page()) == ready_rows
