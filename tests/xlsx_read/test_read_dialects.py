"""What a person would lose if a book from another program, or an odd one, gave another job: the bid itself.

The cells of odd files are the business of ``test_read``; here whole books go through to what is taken in.
"""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Callable, Mapping
from datetime import date
from pathlib import Path
from typing import Any
from zipfile import ZIP_DEFLATED, ZIP_STORED, ZipFile

import openpyxl
import pytest
import xlsxwriter

from books import Rows, write_book
from calc.cells import Book, column_letters
from calc.errors import MAX_LINE, Finding, FindingKind, Severity, Unreadable
from calc.files import shipped
from calc.intake.read_run import has_error, read_run
from calc.intake.records import Intake
from calc.intake.schema import ACKNOWLEDGEABLE, PRICE_LIST, TABLES
from calc.xlsx_read.read import read_book
from folders import ROOT
from hostile_packages import HOSTILE
from raw_package import changed, pack
from whole_job import ID, whole_company, whole_week
from witness import Program, recalculate

LONG = "x" * 10_000
"""More characters than any input cell may have."""

LIMIT = 300
"""Megabytes that a process may have while it reads any of these files."""

DEMO = shipped("sample_inputs") / "jobs.xlsx"
WEEK: dict[str, Rows] = {
    "Jobs": [["job", "bid date", "irrigation lines to cap"], ["24-03", "2026-04-13", 2], ["24-04", "2026-04-13", None]],
    "Areas": [
        ["job", "area", "length ft", "width ft", "thickness in", "notes"],
        ["24-03", "A1", "12' 6\"", 3, 4, "by the gate"],
        ["24-03", "A2", 10.5, 4, 5, None],
        ["24-04", "A1", "3.2 m", 4, 4, None],
    ],
}
"""A small jobs book without findings."""


def values_of(intake: Intake) -> dict[tuple[str, str, int], object]:
    """Every value that was read, by job, declaration and row."""
    found: dict[tuple[str, str, int], object] = {}
    for job in intake.jobs:
        rows = [(at, row.entries) for of_level in job.rows.values() for at, row in enumerate(of_level)]
        for at, entries in [(0, job.entries), *rows]:
            found |= {(job.id, given.id, at): str(entry.value) for given, entry in entries.items()}
    return found


def findings_at(intake: Intake, sheet: str, cell: str) -> list[Finding]:
    """The findings about a cell."""
    return [each for each in intake.findings if (each.place.sheet, each.place.cell) == (sheet, cell)]


def intake_of(*books: Book) -> Intake:
    """The intake of jobs books without a company book."""
    return read_run(books, None)


# --- the same book from other programs ------------------------------------------------------------------------------


def by_openpyxl(path: Path, out: Path) -> Path:
    """The book as openpyxl saves it."""
    openpyxl.load_workbook(path).save(out)
    return out


def in_line(path: Path, out: Path) -> Path:
    """The book with inline strings, as streaming libraries write it."""
    book = xlsxwriter.Workbook(out, {"constant_memory": True, "strings_to_formulas": False})
    for name, rows in sheets_of(path).items():
        sheet = book.add_worksheet(name)
        for at, row in enumerate(rows):
            sheet.write_row(at, 0, row, None)
    book.close()
    with ZipFile(out) as parts:
        assert any(b"inlineStr" in parts.read(name) for name in parts.namelist())
    return out


def sheets_of(path: Path) -> dict[str, list[tuple[Any, ...]]]:
    """The values of a book, dates as text."""
    book = openpyxl.load_workbook(path, data_only=True)
    return {
        sheet.title: [
            tuple(each.strftime("%Y-%m-%d") if isinstance(each, date) else each for each in row)
            for row in sheet.iter_rows(values_only=True)
        ]
        for sheet in book.worksheets
    }


@pytest.fixture(scope="module")
def demo() -> Intake:
    """The demo jobs as shipped."""
    return intake_of(read_book(DEMO))


@pytest.mark.parametrize("writer", [by_openpyxl, in_line])
def test_the_demo_saved_by_another_library_gives_the_same_jobs(
    writer: Callable[[Path, Path], Path], demo: Intake, tmp_path: Path
) -> None:
    other = intake_of(read_book(writer(DEMO, tmp_path / "jobs.xlsx")))
    assert values_of(other) == values_of(demo)
    assert [(str(each.place), each.found) for each in other.findings] == [
        (str(each.place), each.found) for each in demo.findings
    ]


def test_the_demo_saved_by_another_program_gives_the_same_jobs(witness: Program, demo: Intake, tmp_path: Path) -> None:
    copy = tmp_path / "jobs.xlsx"
    copy.write_bytes(DEMO.read_bytes())
    other = intake_of(read_book(recalculate([copy], witness, tmp_path)[copy]))
    assert values_of(other) == values_of(demo)
    assert [each.found for each in other.findings] == [each.found for each in demo.findings]


def test_the_job_that_fills_every_column_is_the_same_from_another_program(witness: Program, tmp_path: Path) -> None:
    files = [write_book(tmp_path / "jobs.xlsx", whole_week()), write_book(tmp_path / "company.xlsx", whole_company())]
    copies = recalculate(files, witness, tmp_path)
    ours = read_run([read_book(files[0])], read_book(files[1]))
    theirs = read_run([read_book(copies[files[0]])], read_book(copies[files[1]]))
    assert values_of(theirs) == values_of(ours)
    assert [job.id for job in theirs.jobs if not has_error(job, theirs.findings)] == [ID]


@pytest.mark.parametrize("ending", ["ods", "xls", "fods"])
def test_a_format_of_another_program_is_refused_by_name(ending: str, tmp_path: Path, libreoffice: Program) -> None:
    made = _converted(DEMO, ending, tmp_path)
    named = tmp_path / "jobs.xlsx"
    named.write_bytes(made.read_bytes())
    for path in (made, named):
        with pytest.raises(Unreadable) as refused:
            read_book(path)
        assert str(refused.value).startswith(f"{path.name}: ") and str(refused.value).isprintable()
        assert (
            "not an .xlsx workbook" in str(refused.value)
            or "not a workbook" in str(refused.value)
            or "old" in str(refused.value)
        )


def _converted(path: Path, ending: str, folder: Path) -> Path:
    profile = f"-env:UserInstallation={(folder / 'profile').as_uri()}"
    command = ["soffice", profile, "--headless", "--convert-to", ending, "--outdir", str(folder), str(path)]
    subprocess.run(command, check=True, capture_output=True, timeout=120)
    return folder / f"{path.stem}.{ending}"


def test_a_book_with_macros_gives_the_same_jobs_and_a_note(demo: Intake, tmp_path: Path) -> None:
    other = intake_of(read_book(changed(DEMO, tmp_path / "week.xlsm", {"xl/vbaProject.bin": b"\\0macro"})))
    assert values_of(other) == values_of(demo)
    assert any("macros" in each.found for each in other.findings)


# --- odd ways of filling a book -------------------------------------------------------------------------------------


def drawn(path: Path, draw: Callable[[Any, Any], None], options: Mapping[str, Any] | None = None) -> Path:
    """The small jobs book with changes in its sheet Areas."""
    book = xlsxwriter.Workbook(path, {"strings_to_formulas": False, **(options or {})})
    for name, rows in WEEK.items():
        sheet = book.add_worksheet(name)
        for at, row in enumerate(rows):
            sheet.write_row(at, 0, row)
        if name == "Areas":
            draw(book, sheet)
    book.close()
    return path


@pytest.fixture
def plain(tmp_path: Path) -> dict[tuple[str, str, int], object]:
    """The values of the small jobs book."""
    intake = intake_of(read_book(write_book(tmp_path / "plain.xlsx", WEEK)))
    assert not [each for each in intake.findings if each.severity is Severity.ERROR]
    return values_of(intake)


def test_days_of_a_book_that_counts_from_1904_are_the_same_days(
    plain: dict[tuple[str, str, int], object], tmp_path: Path
) -> None:
    for from_1904 in (False, True):
        book = xlsxwriter.Workbook(tmp_path / f"{from_1904}.xlsx", {"date_1904": from_1904})
        day = book.add_format({"num_format": "yyyy-mm-dd"})
        for name, rows in WEEK.items():
            sheet = book.add_worksheet(name)
            for at, row in enumerate(rows):
                sheet.write_row(at, 0, row)
            if name == "Jobs":
                for at in (1, 2):
                    sheet.write_datetime(at, 1, date(2026, 4, 13), day)
        book.close()
        intake = intake_of(read_book(tmp_path / f"{from_1904}.xlsx"))
        assert values_of(intake) == plain
        assert any("1904" in each.found for each in intake.findings) is from_1904


def test_the_stored_value_of_a_formula_is_read_with_a_note(
    plain: dict[tuple[str, str, int], object], tmp_path: Path
) -> None:
    def draw(_: Any, sheet: Any) -> None:
        sheet.write_formula("C3", "=21/2", None, 10.5)
        sheet.write_formula("D3", "=[1]Other!$A$1", None, 4)
        sheet.write_formula("F2", '="by the "&"gate"', None, "by the gate")

    intake = intake_of(read_book(drawn(tmp_path / "jobs.xlsx", draw)))
    assert values_of(intake) == plain
    for cell, formula in (("C3", "=21/2"), ("D3", "=[1]Other!$A$1"), ("F2", '="by the "&"gate"')):
        assert any(formula in each.found for each in findings_at(intake, "Areas", cell)), cell


def test_a_formula_without_a_stored_value_is_an_error(tmp_path: Path) -> None:
    book = openpyxl.load_workbook(write_book(tmp_path / "jobs.xlsx", WEEK))
    book["Areas"]["C3"] = "=21/2"
    book.save(tmp_path / "jobs.xlsx")
    intake = intake_of(read_book(tmp_path / "jobs.xlsx"))
    (finding,) = findings_at(intake, "Areas", "C3")
    assert finding.kind is FindingKind.UNCOMPUTED_FORMULA and "never stored" in finding.found
    assert [job.id for job in intake.jobs if has_error(job, intake.findings)] == ["24-03"]


def test_hidden_rows_and_columns_are_read_with_a_note(
    plain: dict[tuple[str, str, int], object], tmp_path: Path
) -> None:
    def draw(_: Any, sheet: Any) -> None:
        sheet.autofilter("A1:F4")
        sheet.filter_column("E", "x != 5")
        sheet.set_row(2, None, None, {"hidden": True})
        sheet.set_column("F:F", None, None, {"hidden": True})

    intake = intake_of(read_book(drawn(tmp_path / "jobs.xlsx", draw)))
    assert values_of(intake) == plain
    assert any("hidden" in each.found for each in findings_at(intake, "Areas", "A3"))
    assert any("hidden" in each.found for each in findings_at(intake, "Areas", "F1"))


def test_a_merged_header_and_merged_values_are_errors(tmp_path: Path) -> None:
    def header(_: Any, sheet: Any) -> None:
        sheet.merge_range("C1:D1", "length ft")

    def rows(_: Any, sheet: Any) -> None:
        sheet.merge_range("E2:E3", 4)

    intake = intake_of(read_book(drawn(tmp_path / "header.xlsx", header)))
    assert findings_at(intake, "Areas", "C1:D1")[0].severity is Severity.ERROR
    assert all(has_error(job, intake.findings) for job in intake.jobs)
    intake = intake_of(read_book(drawn(tmp_path / "rows.xlsx", rows)))
    assert [findings_at(intake, "Areas", cell)[0].severity for cell in ("E2", "E3")] == [Severity.ERROR] * 2
    assert [job.id for job in intake.jobs if has_error(job, intake.findings)] == ["24-03"]


def test_a_column_without_a_header_is_questioned(tmp_path: Path) -> None:
    def draw(_: Any, sheet: Any) -> None:
        sheet.write("G3", "36 in deep at the tree")

    intake = intake_of(read_book(drawn(tmp_path / "jobs.xlsx", draw)))
    (finding,) = findings_at(intake, "Areas", "G3")
    assert finding.kind is FindingKind.UNNAMED_COLUMN and "Column G has no header" in finding.found


def test_a_bare_number_in_a_column_of_another_unit_is_in_that_unit_however_it_is_written(tmp_path: Path) -> None:
    areas = [
        ["job", "area", "length (m)", "width ft"],
        *(["a", f"A{at}", typed, 3] for at, typed in enumerate(["1/2", "0.5", 0.5, "½"])),
    ]
    intake = intake_of(
        read_book(
            write_book(tmp_path / "jobs.xlsx", {"Jobs": [["job", "bid date"], ["a", "2026-04-13"]], "Areas": areas})
        )
    )
    lengths = {value for (_, name, _), value in values_of(intake).items() if name == "Area.length"}
    assert lengths == {str(0.5 / 0.3048)}


def test_a_fact_for_every_job_outside_the_company_book_is_an_error(tmp_path: Path) -> None:
    week = {**WEEK, "Site conditions": [["job", "fact", "value"], ["all", "Moisture", "wet"]]}
    company = {"Site conditions": [["job", "fact", "value"], ["24-03", "Moisture", "wet"]]}
    intake = read_run(
        [read_book(write_book(tmp_path / "jobs.xlsx", week))], read_book(write_book(tmp_path / "company.xlsx", company))
    )
    stops = [str(each.place) for each in intake.findings if each.severity is Severity.ERROR]
    assert stops == ["company.xlsx Site conditions!A2", "jobs.xlsx Site conditions!A2"]


STOP = next(iter(ACKNOWLEDGEABLE.values())).label
HEADS = ["job", "line", "value", "reason", "who"]
ODD_ROWS: dict[str, tuple[dict[str, Rows], str]] = {
    "a factor twice": ({"Factors": [["factor", "value"], ["Waste factor", 4], ["waste factor", 5]]}, "Factors!B3"),
    "a value without a factor": ({"Factors": [["factor", "value"], ["Waste factor", 4], [None, 5]]}, "Factors!B3"),
    "a kind for what has none": ({"Factors": [["factor", "for", "value"], ["Waste factor", "clay", 4]]}, "Factors!C2"),
    "a size of what comes in no pack": (
        {"Prices": [["item", "price", "size"], [next(each.label for each in PRICE_LIST if each.pack is None), 4, 5]]},
        "Prices!C2",
    ),
    "a stop with a value": ({"Overrides": [HEADS, ["24-03", STOP, 3, "thin", "RK"]]}, "Overrides!C2"),
    "a stop twice": (
        {"Overrides": [HEADS, *[["24-03", STOP, None, "thin", "RK"]] * 2]},
        "Overrides!B3",
    ),
    "a reason without end": (
        {"Overrides": [HEADS, ["24-03", "Concrete to order", 3, LONG, "RK"]]},
        "Overrides!D2",
    ),
}
"""Rows with too much or too little in them, and the cell of the finding."""


@pytest.mark.parametrize(("tables", "place"), ODD_ROWS.values(), ids=ODD_ROWS)
def test_a_row_with_too_much_or_too_little_is_reported(tables: dict[str, Rows], place: str, tmp_path: Path) -> None:
    intake = intake_of(read_book(write_book(tmp_path / "jobs.xlsx", {**WEEK, **tables})))
    assert findings_at(intake, *place.split("!"))


QUIET = {
    "Company": {"unit", "notes"}, "Site conditions": {"unit"}, "Prices": {"unit", "notes"},
    "Factors": {"unit", "usual", "source", "notes"}, "Main factors": {"unit", "usual", "source", "notes"},
}  # fmt: skip
"""Columns that are not read, so that they may have any text."""


@pytest.mark.parametrize("table", TABLES)
def test_ten_thousand_characters_are_reported_at_their_cell_in_every_column(table: str, tmp_path: Path) -> None:
    week, company = whole_week(("walk",)), whole_company()
    right = [read_book(write_book(tmp_path / f"{name}.xlsx", tables)) for name, tables in (("w", week), ("h", company))]
    headings = [each for each in TABLES[table].headings if each.header not in QUIET.get(table, ())]
    measures = {each.header for each in headings if each.given is not None}
    names = [{each.header} for each in headings if each.given is None]  # one by one: a row without its name is no row
    for headers in filter(None, [measures, *names]):
        rows = [list(row) for row in (company if table in company else week)[table]]
        places = [at for at, header in enumerate(rows[0]) if header in headers]
        for at in places:
            rows[1][at] = LONG
        if table in company:
            intake = read_run(right[:1], read_book(write_book(tmp_path / "long.xlsx", {**company, table: rows})))
        else:
            intake = read_run([read_book(write_book(tmp_path / "long.xlsx", {**week, table: rows}))], right[1])
        cells = {each.place.cell for each in intake.findings if each.place.sheet == table}
        wanted = {f"{column_letters(at + 1)}2" for at in places}
        assert wanted <= cells or (headers in names and any(cell.endswith("2") for cell in cells)), (headers, cells)
        assert all(len(str(each)) <= MAX_LINE + 3 for each in intake.findings)


# --- all of it within a limit ---------------------------------------------------------------------------------------

CHILD = f"""
import resource, sys
from pathlib import Path
from calc.errors import Unreadable
from calc.intake.read_run import read_run
from calc.xlsx_read.read import read_book

resource.setrlimit(resource.RLIMIT_AS, ({LIMIT} << 20, {LIMIT} << 20))
for path in sorted(Path(sys.argv[1]).iterdir()):
    try:
        print("read", path.name, len(read_run([read_book(path)], None).findings))
    except Unreadable as reason:
        print("refused", reason)
"""


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="the limit of memory is set as Linux sets it")
def test_every_odd_file_is_read_or_refused_within_three_hundred_megabytes(tmp_path: Path) -> None:
    wanted = {}
    for number, (name, (parts, message)) in enumerate(HOSTILE.items()):
        file = f"{number:03} {name.replace('/', ' ')}.xlsx"
        stored = sum(map(len, parts.values())) < 10_000_000
        pack(tmp_path / file, parts, ZIP_STORED if stored else ZIP_DEFLATED)
        wanted[file] = message
    (tmp_path / "zz demo.xlsx").write_bytes(DEMO.read_bytes())
    write_book(tmp_path / "zz whole.xlsx", whole_week())
    run = subprocess.run(
        [sys.executable, "-c", CHILD, str(tmp_path)], cwd=ROOT, capture_output=True, text=True, check=False, timeout=300
    )
    assert run.returncode == 0, run.stderr[-2000:]
    lines = run.stdout.splitlines()
    assert len(lines) == len(list(tmp_path.iterdir()))
    for file, message in wanted.items():
        assert any(line.startswith(f"refused {file}: ") and message in line for line in lines), file
    assert [line.split()[0] for line in lines[-2:]] == ["read", "read"]
