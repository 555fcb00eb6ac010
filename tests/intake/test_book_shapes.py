"""What was typed is used or said loudly: other headers, other sheets, totals below a table, cells struck through."""

from __future__ import annotations

from pathlib import Path

import pytest
import xlsxwriter

from books import Rows, book_of
from calc.errors import Severity
from calc.intake.read_run import has_error, read_run
from calc.intake.records import Intake
from calc.trade.levels import AREA
from calc.xlsx_read.read import read_book
from typed_shapes import AREA_HEADERS, FACT_SHEETS, HEADERS, KEY_HEADERS, TOTALS

JOBS: Rows = [["job", "bid date"], ["7", "2026-04-13"]]
AREAS: Rows = [["job", "area", "length ft", "width ft"], ["7", "A1", 10, 3], ["7", "A2", 20, 4]]


def read(folder: Path, **sheets: Rows) -> Intake:
    """A book with these sheets."""
    tables = {"Jobs": JOBS, "Areas": AREAS} | {name.replace("_", " "): rows for name, rows in sheets.items()}
    return read_run([book_of(folder / "jobs.xlsx", tables)], None)


def said(intake: Intake, severity: Severity) -> list[str]:
    """The findings of a severity."""
    return [str(each) for each in intake.findings if each.severity is severity]


@pytest.mark.parametrize(("header", "meant"), HEADERS)
def test_numbers_under_an_unknown_header_are_never_passed_over(header: str, meant: str, tmp_path: Path) -> None:
    intake = read(tmp_path, Areas=[[*AREAS[0], header], ["7", "A1", 10, 3, 4], ["7", "A2", 20, 4, "4"]])
    if meant:
        (error,) = said(intake, Severity.ERROR)
        assert error.startswith("jobs.xlsx Areas!E1: error:") and f'Did you mean "{meant}"?' in error
    else:
        assert not said(intake, Severity.ERROR)
        (asked,) = said(intake, Severity.QUESTION)
        assert f'The column "{header}" is not known, and there are numbers in it' in asked


def test_words_under_a_header_of_ones_own_are_noted_only(tmp_path: Path) -> None:
    for words in ("north side", "call first", "555-0117", "by the gate"):
        intake = read(tmp_path, Areas=[[*AREAS[0], "remarks"], ["7", "A1", 10, 3, words]])
        assert not said(intake, Severity.ERROR) and not said(intake, Severity.QUESTION)


@pytest.mark.parametrize("job", KEY_HEADERS)
@pytest.mark.parametrize("area", AREA_HEADERS)
def test_an_id_may_be_headed_as_one(job: str, area: str, tmp_path: Path) -> None:
    intake = read(tmp_path, Areas=[[job, area, "length ft", "width ft"], ["7", "north", 10, 3]])
    assert [row.word for row in intake.jobs[0].rows[AREA]] == ["north"] and not intake.findings


@pytest.mark.parametrize("name", FACT_SHEETS)
def test_a_sheet_of_facts_by_another_name_stops(name: str, tmp_path: Path) -> None:
    facts = [["job", "fact", "value"], ["7", "Crew", 3]]
    tables: dict[str, Rows] = {"Jobs": JOBS, "Areas": AREAS, name: facts}
    intake = read_run([book_of(tmp_path / "jobs.xlsx", tables)], None)
    (error,) = said(intake, Severity.ERROR)
    assert f'The sheet "{name}" is not known. Did you mean "Site conditions"?' in error
    assert has_error(intake.jobs[0], intake.findings)


@pytest.mark.parametrize("name", ["Areas (2)", "old areas", "spare", "Sheet3"])
def test_a_second_table_of_areas_is_asked_about(name: str, tmp_path: Path) -> None:
    tables: dict[str, Rows] = {"Jobs": JOBS, "Areas": AREAS, name: AREAS}
    intake = read_run([book_of(tmp_path / "jobs.xlsx", tables)], None)
    (asked,) = said(intake, Severity.QUESTION)
    assert f'The sheet "{name}" has a table like Areas. It is ignored. Is that meant?' in asked


@pytest.mark.parametrize("name", ["Notes", "Sketch", "Prices 2019 old", "Phone list"])
def test_a_sheet_of_ones_own_is_noted_only(name: str, tmp_path: Path) -> None:
    tables: dict[str, Rows] = {"Jobs": JOBS, "Areas": AREAS, name: [["call", "whom"], ["monday", "the plant"]]}
    intake = read_run([book_of(tmp_path / "jobs.xlsx", tables)], None)
    assert [each.severity for each in intake.findings] == [Severity.NOTE]


@pytest.mark.parametrize(("cells", "apart", "is_total"), TOTALS)
def test_a_total_below_the_areas_is_asked_about_and_not_poured(
    cells: tuple[object, ...], apart: bool, is_total: bool, tmp_path: Path
) -> None:
    intake = read(tmp_path, Areas=[*AREAS, *([[None]] if apart else []), cells])
    assert len(intake.jobs[0].rows[AREA]) == (2 if is_total else 3)
    assert len(said(intake, Severity.QUESTION)) == is_total


def test_a_cell_that_is_struck_through_is_read_and_asked_about(tmp_path: Path) -> None:
    book = xlsxwriter.Workbook(str(tmp_path / "jobs.xlsx"))
    struck = book.add_format({"font_strikeout": True})
    for name, rows in (("Jobs", JOBS), ("Areas", AREAS)):
        sheet = book.add_worksheet(name)
        for at, row in enumerate(rows):
            for place, typed in enumerate(row):
                whole = name == "Areas" and at == 2
                sheet.write(at, place, typed, struck if whole or (name, at, place) == ("Areas", 1, 3) else None)
    book.close()
    asked = said(read_run([read_book(tmp_path / "jobs.xlsx")], None), Severity.QUESTION)
    assert len(asked) == 2
    assert 'Areas!D2: question: "3" is struck through. It was read.' in asked[0]
    assert "Areas!A3: question: The row is struck through. It was read." in asked[1]
