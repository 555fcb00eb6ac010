"""What a person would lose if the blank workbooks failed: a cell that is not read, a word that is refused."""

from __future__ import annotations

import runpy
from collections.abc import Callable, Iterator
from copy import deepcopy
from functools import partial
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from calc.blanks.blank import blank_company_book, blank_jobs_book, company_book, jobs_book
from calc.blanks.rows import COMPANY_SHEETS, Typed, example_row, standing_rows
from calc.blanks.sheets import DEEP
from calc.blanks.usual import USUAL_SHEETS, usual_tables
from calc.cells import Book, Cell, Kind, Sheet
from calc.errors import Finding, FindingKind, Severity
from calc.intake.read_run import has_error, read_run
from calc.intake.records import Intake
from calc.intake.schema import (
    EXAMPLE,
    FACT_TABLES,
    FACTOR_LIST,
    FACTOR_TABLES,
    FACTORS,
    LISTS,
    PRICE_LIST,
    PRICES,
    READ_ME,
    TABLES,
    WEEK_TABLES,
    facts_of,
)
from calc.intake.tables import read_table
from calc.trade.inputs.areas import Area
from calc.xlsx_read.read import read_book
from folders import ROOT
from sheet_lint import lint
from witness import Program, Recalculations
from written_book import Rule, Standard

TABLES_OF = {"jobs.xlsx": USUAL_SHEETS, "jobs-full.xlsx": WEEK_TABLES, "company.xlsx": COMPANY_SHEETS}
RENEW = "renew it with: python .samples/make.py"
BLANKS: dict[str, Callable[[], bytes]] = {
    "jobs.xlsx": blank_jobs_book,
    "jobs-full.xlsx": partial(blank_jobs_book, full=True),
    "company.xlsx": blank_company_book,
}
FULL = "jobs-full.xlsx"
JOB = "26-001"
NOTHING_LIKE_IT = "zzzzzz"

Tables = dict[str, list[dict[str, Typed]]]


@pytest.fixture(scope="module")
def blanks(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    """Both blanks as files."""
    folder = tmp_path_factory.mktemp("blanks")
    for name, make in BLANKS.items():
        (folder / name).write_bytes(make())
    return {name: folder / name for name in BLANKS}


def seen(path: Path) -> dict[str, object]:
    """What a person meets in a workbook: cells and their formats, rules and messages, widths, what stays in sight."""
    book = openpyxl.load_workbook(path)
    found: dict[str, object] = {"sheets": book.sheetnames}
    for sheet in book.worksheets:
        cells = {cell.coordinate: (cell.value, cell.number_format, cell.font.i) for row in sheet for cell in row}
        rules = sorted((str(rule.sqref), rule.type, str(rule.formula1), str(rule.prompt)) for rule in rules_of(sheet))
        widths = {letter: column.width for letter, column in sheet.column_dimensions.items()}
        found[sheet.title] = (cells, rules, widths, sheet.freeze_panes)
    return found


def rules_of(sheet: Any) -> list[Any]:
    """The rules of the cells of a sheet: lists and messages."""
    return list(sheet.data_validations.dataValidation)


def column_of(sheet: Any, header: str) -> int:
    """The number of the column under a header."""
    return next(cell.column for cell in sheet[1] if cell.value == header)


def in_memory(tables: Tables, name: str = "jobs.xlsx") -> Book:
    """A book with these rows under their headers, as if it had been read from a file."""
    sheets = {}
    for title, rows in tables.items():
        headers = [heading.header for heading in TABLES[title].headings]
        lines: list[tuple[int, dict[int, Cell]]] = []
        for number, texts in enumerate([headers, *([row.get(each, "") for each in headers] for row in rows)], start=1):
            cells = {at: Cell(title, number, at, Kind.TEXT, text) for at, text in enumerate(texts, start=1) if text}
            lines.append((number, cells))
        sheets[title] = Sheet(title, tuple(lines))
    return Book(Path(name), name, sheets, name)


def examples(job: str = JOB) -> Tables:
    """The example rows of the blank week under the id of a job."""
    return {name: [example_row(TABLES[name]).cells | {"job": job}] for name in WEEK_TABLES}


def taken(week: Path, company: Path | None = None) -> Intake:
    """A run of a jobs book."""
    return read_run([read_book(week)], read_book(company) if company else None)


def stops(findings: list[Finding]) -> list[str]:
    """The stops among findings, as they are printed."""
    return [str(each) for each in findings if each.severity is Severity.ERROR]


def lists_in(path: Path) -> Iterator[tuple[str, str, int, list[str]]]:
    """Every drop-down of a file: its sheet, its header, its first row, and the words in its range on Lists."""
    book = openpyxl.load_workbook(path)
    for sheet in book.worksheets:
        for rule in rules_of(sheet):
            if rule.type == "list":
                place = next(iter(rule.sqref.ranges))
                title, _, area = rule.formula1.partition("!")
                words = [str(cell.value) for (cell,) in book[title][area.replace("$", "")]]
                yield sheet.title, str(sheet.cell(1, place.min_col).value), place.min_row, words


def typed_over(path: Path, to: Path, change: Callable[[Any], None]) -> Path:
    """A copy of a workbook that somebody typed into."""
    book = openpyxl.load_workbook(path)
    change(book)
    book.save(to)
    return to


def type_a_strip(book: Any) -> None:
    """A strip, as a person types it: one row in Jobs, one in Areas."""
    typed = {
        "Jobs": {"job": "24-03", "client": "Quillfeather", "bid date": "2026-04-20"},
        "Areas": {"job": "24-03", "area": "1/2", "length ft": "10'-6 1/2\"", "width ft": "3.2 m", "thickness in": 4},
    }
    for title, cells in typed.items():
        for header, value in cells.items():
            book[title].cell(3, column_of(book[title], header)).value = value


@pytest.mark.parametrize("name", BLANKS)
def test_the_blank_that_ships_has_the_columns_that_the_program_reads(name: str, blanks: dict[str, Path]) -> None:
    assert seen(ROOT / "templates" / name) == seen(blanks[name]), RENEW


@pytest.mark.parametrize("name", BLANKS)
def test_writing_a_blank_again_changes_no_byte(name: str, blanks: dict[str, Path]) -> None:
    assert BLANKS[name]() == blanks[name].read_bytes()


@pytest.mark.parametrize("name", BLANKS)
def test_a_blank_hides_nothing_and_prints_on_paper(name: str, blanks: dict[str, Path]) -> None:
    asked_of_jobs_only = {Rule.SHEET_ORDER, Rule.IDENTITY, Rule.TYPED_NUMBER}
    faults = lint(blanks[name], Standard(sheets=(), full_size=frozenset()))
    assert [str(fault) for fault in faults if fault.rule not in asked_of_jobs_only] == []


@pytest.mark.parametrize("name", BLANKS)
def test_every_header_of_the_blank_is_read_back_as_its_column(
    name: str, blanks: dict[str, Path], tmp_path: Path
) -> None:
    def fill_a_row(book: Any) -> None:
        for title in TABLES_OF[name]:
            for cell in book[title][1]:
                book[title].cell(DEEP, cell.column).value = f"under {cell.value}"

    book = read_book(typed_over(blanks[name], tmp_path / name, fill_a_row))
    for title in TABLES_OF[name]:
        rows, findings = read_table(book, book.sheets[title], TABLES[title])
        assert findings == []
        read = {header: cell.value for header, cell in rows[-1].cells.items()}
        shown = TABLES[title].headings
        if name == "jobs.xlsx":
            shown = next(table.headings for table in usual_tables() if table.name == title)
        assert read == {heading.header: f"under {heading.header}" for heading in shown}


@pytest.mark.parametrize("name", BLANKS)
def test_every_header_says_what_to_type_when_it_is_clicked(name: str, blanks: dict[str, Path]) -> None:
    for sheet in openpyxl.load_workbook(blanks[name]).worksheets:
        said = {str(rule.sqref): rule.prompt for rule in rules_of(sheet) if rule.type is None and rule.prompt}
        headers = [] if sheet.title in (READ_ME, LISTS) else [cell.coordinate for cell in sheet[1]]
        assert set(headers) <= set(said)


def test_a_dimension_or_an_id_typed_into_the_blank_does_not_become_a_date(blanks: dict[str, Path]) -> None:
    book = openpyxl.load_workbook(blanks[FULL])
    for title in WEEK_TABLES:
        for heading in TABLES[title].headings:
            if heading.given is None or heading.unit:
                column = column_of(book[title], heading.header)
                drawn = [cell for (cell,) in book[title].iter_rows(2, None, column, column)]
                below = next(each for each in book[title].column_dimensions.values() if each.min <= column <= each.max)
                assert {cell.number_format for cell in (*drawn, below)} == {"@"}, heading.header


def test_a_strip_typed_into_the_blank_is_bid_without_a_stop(blanks: dict[str, Path], tmp_path: Path) -> None:
    intake = taken(typed_over(blanks["jobs.xlsx"], tmp_path / "jobs.xlsx", type_a_strip), blanks["company.xlsx"])
    assert stops(intake.findings) == []
    (job,) = intake.jobs
    (area,) = job.rows[TABLES["Areas"].level]
    assert (job.id, area.word) == ("24-03", "1/2")
    assert area.entries[Area.length].value == 10 + 6.5 / 12
    assert area.entries[Area.width].value == pytest.approx(3.2 / 0.3048, rel=1e-12)


@pytest.mark.parametrize("name", ["jobs.xlsx", FULL])
def test_the_blank_as_it_stands_says_that_there_is_nothing_to_bid(name: str, blanks: dict[str, Path]) -> None:
    intake = taken(blanks[name], blanks["company.xlsx"])
    assert intake.jobs == []
    (told,) = intake.findings
    assert told.severity is Severity.NOTE and told.found.startswith("Jobs has only the example row")


def test_the_example_rows_say_nothing_once_a_job_is_typed(blanks: dict[str, Path], tmp_path: Path) -> None:
    intake = taken(typed_over(blanks["jobs.xlsx"], tmp_path / "jobs.xlsx", type_a_strip), blanks["company.xlsx"])
    assert [job.id for job in intake.jobs] == ["24-03"] and intake.findings == []


def test_the_usual_sheets_of_a_job_fit_the_width_of_a_screen(blanks: dict[str, Path]) -> None:
    book = openpyxl.load_workbook(blanks["jobs.xlsx"])
    for title in ("Jobs", "Areas"):
        digits = sum(column.width * (column.max - column.min + 1) for column in book[title].column_dimensions.values())
        assert 7 * digits < 1280, f"{title} takes {7 * digits:.0f} pixels"


def test_what_most_companies_set_stands_in_front_of_everything_else(blanks: dict[str, Path]) -> None:
    book = openpyxl.load_workbook(blanks["company.xlsx"])
    assert book.sheetnames[1:3] == ["Company", "Main factors"]
    names = [row[0].value for row in book["Main factors"].iter_rows(min_row=2) if row[0].value]
    assert {"Sales tax", "Overhead", "Margin", "Contingency", "Working day", "Minimum job charge"} <= set(names)
    assert len(names) <= 14
    assert next(row[0].value for row in book["Prices"].iter_rows(min_row=2)) == "Ready-mix, 3000 psi"


def test_an_example_of_a_vehicle_is_no_vehicle(blanks: dict[str, Path]) -> None:
    company = taken(blanks["jobs.xlsx"], blanks["company.xlsx"]).company
    for name in ("Vehicles", "Disposal sites", "Holidays"):
        assert company.rows[TABLES[name].level] == []


@pytest.mark.parametrize("name", ["jobs.xlsx", FULL])
def test_the_example_rows_are_a_job_that_can_be_bid(name: str, blanks: dict[str, Path], tmp_path: Path) -> None:
    def give_it_an_id(book: Any) -> None:
        for title in TABLES_OF[name]:
            assert book[title]["A2"].value == EXAMPLE
            book[title]["A2"].value = JOB

    intake = taken(typed_over(blanks[name], tmp_path / "jobs.xlsx", give_it_an_id), blanks["company.xlsx"])
    assert [job.id for job in intake.jobs] == [JOB]
    # an example in every column: some of them need what another column of the row would say
    told = [each for each in intake.findings if each.kind is not FindingKind.UNUSED_INPUT]
    assert [str(each) for each in told if not each.found.startswith("No price is given")] == []


def test_every_word_of_every_list_of_the_week_is_taken(blanks: dict[str, Path]) -> None:
    def found(title: str, header: str, word: str) -> list[Finding]:
        tables = examples()
        tables[title][0][header] = word
        at = [heading.header for heading in TABLES[title].headings].index(header)
        ref = Cell(title, 2, at + 1, Kind.TEXT, word).ref
        findings = read_run([in_memory(tables)], None).findings
        return [each for each in findings if (each.place.sheet, each.place.cell) == (title, ref)]

    lists = list(lists_in(blanks[FULL]))
    assert {("Jobs", "fiber"), ("Areas", "shape"), ("Site conditions", "fact"), ("Overrides", "line")} <= {
        (title, header) for title, header, _, _ in lists
    }
    for title, header, _, words in lists:
        assert stops(found(title, header, NOTHING_LIKE_IT)), f"{title} {header} takes anything"
        for word in words:
            assert stops(found(title, header, word)) == [], f"{title} {header}: {word}"


def test_every_word_of_every_list_of_the_house_book_is_taken(blanks: dict[str, Path]) -> None:
    def findings_of(title: str, row: dict[str, Typed]) -> list[Finding]:
        return read_run([], in_memory({title: [row]}, "company.xlsx")).findings

    for title, header, number, words in lists_in(blanks["company.xlsx"]):
        standing = standing_rows(title)
        start = (standing[number - 2] if standing else example_row(TABLES[title])).cells
        for word in words:
            row = deepcopy(start) | {header: word} | ({"value": value_for(title, word)} if header == "fact" else {})
            if header in ("factor", "for"):
                factors = [each.cells for sheet in FACTOR_TABLES for each in standing_rows(sheet)]
                row = next(each for each in factors if each[header] == word)
                row |= {"value": row["usual"]}
            assert stops(findings_of(title, row)) == [], f"{title} {header}: {word}"


def value_for(title: str, fact: str) -> str:
    """A value that a fact may have: its example, or its default; a fact that names a row has none here."""
    given = next(each for each in facts_of(title) if each.header == fact)
    return given.example or (str(given.default) if given.words_allowed else "")


def test_every_choice_offers_all_its_words(blanks: dict[str, Path]) -> None:
    offered = {(title, header): tuple(words) for path in blanks.values() for title, header, _, words in lists_in(path)}
    for title, table in TABLES.items():
        for heading in table.headings:
            if heading.given is not None and heading.given.words_allowed:
                assert offered[title, heading.header] == heading.given.words_allowed
    for title in FACT_TABLES:
        assert offered[title, "fact"] == tuple(given.header for given in facts_of(title))


def test_every_choice_among_the_facts_of_the_house_has_its_list(blanks: dict[str, Path]) -> None:
    offered = {
        (title, row): tuple(words)
        for title, header, row, words in lists_in(blanks["company.xlsx"])
        if header == "value"
    }
    wanted = {
        (title, row): given.words_allowed
        for title in FACT_TABLES
        for row, given in enumerate(facts_of(title), start=2)
        if given.words_allowed
    }
    assert offered == wanted


def test_every_price_and_every_factor_of_the_house_book_can_be_filled_in_as_it_stands(blanks: dict[str, Path]) -> None:
    book = openpyxl.load_workbook(blanks["company.xlsx"])

    def rows_of(title: str) -> Iterator[dict[str, Typed]]:
        headers = [cell.value for cell in book[title][1]]
        for row in book[title].iter_rows(min_row=2, values_only=True):
            if row[0]:
                yield {header: value or "" for header, value in zip(headers, row, strict=True)}

    prices, factors = list(rows_of(PRICES)), [row for title in FACTOR_TABLES for row in rows_of(title)]
    assert {row["price"] for row in prices} == {row["value"] for row in factors} == {""}
    filled = {
        PRICES: [row | {"price": "1.25", "size": "5"} for row in prices],
        FACTORS: [row | {"value": row["usual"]} for row in factors],
    }
    intake = read_run([], in_memory(filled, "company.xlsx"))
    told = [str(each) for each in intake.findings if "is not sold in packs" not in each.found]
    assert told == []
    assert [intake.company.prices[price].value for price in PRICE_LIST] == [1.25] * len(PRICE_LIST)
    assert {key: entry.value for key, entry in intake.company.factors.items()} == {
        (factor, place): pytest.approx(value, rel=0, abs=1e-6)  # a third has no end, and rules count in millionths
        for factor in FACTOR_LIST
        for place, value in enumerate(factor.values)
    }


@pytest.mark.parametrize("name", BLANKS)
def test_a_blank_saved_by_another_program_is_still_read(
    name: str, blanks: dict[str, Path], libreoffice: Program, recalculated: Recalculations, tmp_path: Path
) -> None:
    recalculated.add(*blanks.values())
    saved = recalculated.result(blanks[name], libreoffice)
    book = read_book(saved)
    for title in TABLES_OF[name]:
        assert read_table(book, book.sheets[title], TABLES[title])[1] == []
    if name != "company.xlsx":
        filled = typed_over(saved, tmp_path / "jobs.xlsx", type_a_strip)
        assert stops(taken(filled, blanks["company.xlsx"]).findings) == []
    else:
        assert stops(read_run([], book).findings) == []


def test_a_book_with_more_rows_than_the_blank_is_written_whole(tmp_path: Path) -> None:
    ids = [f"J{number}" for number in range(DEEP + 50)]
    path = tmp_path / "jobs.xlsx"
    path.write_bytes(jobs_book({"Jobs": [{"job": each, "bid date": "2026-04-20"} for each in ids]}))
    assert [job.id for job in taken(path).jobs] == ids


def test_a_column_or_a_row_that_a_book_does_not_have_is_refused_not_dropped() -> None:
    with pytest.raises(ValueError, match="Jobs has no column colour"):
        jobs_book({"Jobs": [{"job": "1", "colour": "red"}]})
    with pytest.raises(ValueError, match="there is no sheet Prices"):
        jobs_book({"Prices": [{"item": "sand"}]})
    with pytest.raises(ValueError, match="Prices has no row for moon dust"):
        company_book({"Prices": [{"item": "moon dust", "price": 1.0}]})


def test_the_demo_has_one_job_that_is_not_ready_and_one_question_to_show() -> None:
    folder = ROOT / "sample_inputs"
    intake = taken(folder / "jobs.xlsx", folder / "company.xlsx")
    assert {"26-041", "26-042"} <= {job.id for job in intake.jobs}
    assert not any(has_error(job, intake.findings) for job in intake.jobs)
    asked = [str(each) for each in intake.findings if each.severity is not Severity.NOTE]
    assert len(asked) == 1 and "Vertical change in level" in asked[0], asked


def test_the_demo_that_ships_is_the_one_that_is_written_down(tmp_path: Path) -> None:
    script = runpy.run_path(str(ROOT / ".samples" / "make.py"))
    for name, content in script["books"]().items():
        (tmp_path / "fresh.xlsx").write_bytes(content)
        assert seen(ROOT / name) == seen(tmp_path / "fresh.xlsx"), RENEW
