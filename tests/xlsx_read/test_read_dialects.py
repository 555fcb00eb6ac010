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
from calc.errors import MAX_LINE, Finding, Severity, Unreadable
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
"""More letters than any cell of an input may have."""

LIMIT = 300
"""Megabytes that a process may have while it reads any of these files."""

DEMO = shipped("sample_inputs") / "jobs.xlsx"
WEEK: dict[str, Rows] = {
    "Jobs": [["job", "bid date", "caps"], ["24-03", "2026-04-13", 2], ["24-04", "2026-04-13", None]],
    "Areas": [
        ["job", "area", "length ft", "width ft", "thickness in", "notes"],
        ["24-03", "A1", "12' 6\"", 3, 4, "by the gate"],
        ["24-03", "A2", 10.5, 4, 5, None],
        ["24-04", "A1", "3.2 m", 4, 4, None],
    ],
}
"""A small week's book without a finding."""


def taken(intake: Intake) -> dict[tuple[str, str, int], object]:
    """Every value that was taken, by job, declaration and row."""
    found: dict[tuple[str, str, int], object] = {}
    for job in intake.jobs:
        rows = [(at, row.entries) for of_level in job.rows.values() for at, row in enumerate(of_level)]
        for at, entries in [(0, job.entries), *rows]:
            found |= {(job.id, given.id, at): str(entry.value) for given, entry in entries.items()}
    return found


def findings_at(intake: Intake, sheet: str, cell: str) -> list[Finding]:
    """What is said of a cell."""
    return [each for each in intake.findings if (each.place.sheet, each.place.cell) == (sheet, cell)]


def take(*books: Book) -> Intake:
    """The intake of week's books without a house book."""
    return read_run(books, None)


# --- the same book from other programs ------------------------------------------------------------------------------


def by_openpyxl(path: Path, out: Path) -> Path:
    """The book as openpyxl saves it."""
    openpyxl.load_workbook(path).save(out)
    return out


def in_line(path: Path, out: Path) -> Path:
    """The book with its words in the cells themselves, as writers that stream write it."""
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
    """The values of a book, a day as the words for it."""
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
    """The demo week as it is shipped."""
    return take(read_book(DEMO))


@pytest.mark.parametrize("writer", [by_openpyxl, in_line])
def test_the_demo_saved_by_another_library_gives_the_same_jobs(
    writer: Callable[[Path, Path], Path], demo: Intake, tmp_path: Path
) -> None:
    other = take(read_book(writer(DEMO, tmp_path / "week.xlsx")))
    assert taken(other) == taken(demo)
    assert [(str(each.place), each.found) for each in other.findings] == [
        (str(each.place), each.found) for each in demo.findings
    ]


def test_the_demo_saved_by_another_program_gives_the_same_jobs(witness: Program, demo: Intake, tmp_path: Path) -> None:
    copy = tmp_path / "week.xlsx"
    copy.write_bytes(DEMO.read_bytes())
    other = take(read_book(recalculate([copy], witness, tmp_path)[copy]))
    assert taken(other) == taken(demo)
    assert [each.found for each in other.findings] == [each.found for each in demo.findings]


def test_the_job_that_fills_every_column_is_the_same_from_another_program(witness: Program, tmp_path: Path) -> None:
    files = [write_book(tmp_path / "week.xlsx", whole_week()), write_book(tmp_path / "company.xlsx", whole_company())]
    copies = recalculate(files, witness, tmp_path)
    ours = read_run([read_book(files[0])], read_book(files[1]))
    theirs = read_run([read_book(copies[files[0]])], read_book(copies[files[1]]))
    assert taken(theirs) == taken(ours)
    assert [job.id for job in theirs.jobs if not has_error(job, theirs.findings)] == [ID]


@pytest.mark.parametrize("ending", ["ods", "xls", "fods"])
def test_what_another_program_saves_in_its_own_way_is_refused_by_name(
    ending: str, tmp_path: Path, libreoffice: Program
) -> None:
    made = _converted(DEMO, ending, tmp_path)
    named = tmp_path / "week.xlsx"
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


def test_a_book_with_macros_gives_the_same_jobs_and_says_so(demo: Intake, tmp_path: Path) -> None:
    other = take(read_book(changed(DEMO, tmp_path / "week.xlsm", {"xl/vbaProject.bin": b"\\0macro"})))
    assert taken(other) == taken(demo)
    assert any("macros" in each.found for each in other.findings)


# --- odd ways of filling a book -------------------------------------------------------------------------------------


def drawn(path: Path, draw: Callable[[Any, Any], None], options: Mapping[str, Any] | None = None) -> Path:
    """The small week's book with something drawn into its sheet Areas."""
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
    """What the small week's book gives."""
    intake = take(read_book(write_book(tmp_path / "plain.xlsx", WEEK)))
    assert not [each for each in intake.findings if each.severity is Severity.ERROR]
    return taken(intake)


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
        intake = take(read_book(tmp_path / f"{from_1904}.xlsx"))
        assert taken(intake) == plain
        assert any("1904" in each.found for each in intake.findings) is from_1904


def test_a_formula_for_an_input_is_taken_by_its_value_and_said(
    plain: dict[tuple[str, str, int], object], tmp_path: Path
) -> None:
    def draw(_: Any, sheet: Any) -> None:
        sheet.write_formula("C3", "=21/2", None, 10.5)
        sheet.write_formula("D3", "=[1]Other!$A$1", None, 4)
        sheet.write_formula("F2", '="by the "&"gate"', None, "by the gate")

    intake = take(read_book(drawn(tmp_path / "week.xlsx", draw)))
    assert taken(intake) == plain
    for cell, formula in (("C3", "=21/2"), ("D3", "=[1]Other!$A$1"), ("F2", '="by the "&"gate"')):
        assert any(formula in each.found for each in findings_at(intake, "Areas", cell)), cell


def test_a_formula_that_nobody_computed_is_asked_for(tmp_path: Path) -> None:
    book = openpyxl.load_workbook(write_book(tmp_path / "week.xlsx", WEEK))
    book["Areas"]["C3"] = "=21/2"
    book.save(tmp_path / "week.xlsx")
    intake = take(read_book(tmp_path / "week.xlsx"))
    (said,) = findings_at(intake, "Areas", "C3")
    assert "never stored" in said.found and said.severity is Severity.ERROR
    assert [job.id for job in intake.jobs if has_error(job, intake.findings)] == ["24-03"]


def test_rows_that_nobody_sees_are_taken_and_said(plain: dict[tuple[str, str, int], object], tmp_path: Path) -> None:
    def draw(_: Any, sheet: Any) -> None:
        sheet.autofilter("A1:F4")
        sheet.filter_column("E", "x != 5")
        sheet.set_row(2, None, None, {"hidden": True})
        sheet.set_column("F:F", None, None, {"hidden": True})

    intake = take(read_book(drawn(tmp_path / "week.xlsx", draw)))
    assert taken(intake) == plain
    assert any("hidden" in each.found for each in findings_at(intake, "Areas", "A3"))
    assert any("hidden" in each.found for each in findings_at(intake, "Areas", "F1"))


def test_a_header_in_merged_cells_stops_the_book_and_cells_under_a_merge_are_named(tmp_path: Path) -> None:
    def header(_: Any, sheet: Any) -> None:
        sheet.merge_range("C1:D1", "length ft")

    def rows(_: Any, sheet: Any) -> None:
        sheet.merge_range("E2:E3", 4)

    intake = take(read_book(drawn(tmp_path / "header.xlsx", header)))
    assert findings_at(intake, "Areas", "C1:D1")[0].severity is Severity.ERROR
    assert all(has_error(job, intake.findings) for job in intake.jobs)
    intake = take(read_book(drawn(tmp_path / "rows.xlsx", rows)))
    assert [findings_at(intake, "Areas", cell)[0].severity for cell in ("E2", "E3")] == [Severity.ERROR] * 2
    assert [job.id for job in intake.jobs if has_error(job, intake.findings)] == ["24-03"]


def test_a_column_without_a_header_is_asked_about(tmp_path: Path) -> None:
    def draw(_: Any, sheet: Any) -> None:
        sheet.write("G3", "36 in deep at the tree")

    intake = take(read_book(drawn(tmp_path / "week.xlsx", draw)))
    (said,) = findings_at(intake, "Areas", "G3")
    assert "Column G has no header" in said.found and said.severity is Severity.QUESTION


def test_a_bare_number_in_a_column_of_another_unit_is_in_that_unit_however_it_is_written(tmp_path: Path) -> None:
    areas = [
        ["job", "area", "length (m)", "width ft"],
        *(["a", f"A{at}", typed, 3] for at, typed in enumerate(["1/2", "0.5", 0.5, "½"])),
    ]
    intake = take(
        read_book(
            write_book(tmp_path / "week.xlsx", {"Jobs": [["job", "bid date"], ["a", "2026-04-13"]], "Areas": areas})
        )
    )
    lengths = {value for (_, name, _), value in taken(intake).items() if name == "Area.length"}
    assert lengths == {str(0.5 / 0.3048)}


def test_a_fact_for_every_job_beside_a_house_book_is_not_dropped_in_silence(tmp_path: Path) -> None:
    week = {**WEEK, "Site conditions": [["job", "fact", "value"], ["all", "Moisture", "wet"]]}
    company = {"Site conditions": [["job", "fact", "value"], ["24-03", "Moisture", "wet"]]}
    intake = read_run(
        [read_book(write_book(tmp_path / "week.xlsx", week))], read_book(write_book(tmp_path / "company.xlsx", company))
    )
    stops = [str(each.place) for each in intake.findings if each.severity is Severity.ERROR]
    assert stops == ["company.xlsx Site conditions!A2", "week.xlsx Site conditions!A2"]


STOP = next(iter(ACKNOWLEDGEABLE.values())).label
HEADS = ["job", "line", "value", "reason", "who"]
ODD_ROWS: dict[str, tuple[dict[str, Rows], str]] = {
    "a factor twice": ({"Factors": [["factor", "value"], ["Loss", 4], ["loss", 5]]}, "Factors!B3"),
    "a value without a factor": ({"Factors": [["factor", "value"], ["Loss", 4], [None, 5]]}, "Factors!B3"),
    "a kind for what has none": ({"Factors": [["factor", "for", "value"], ["Loss", "clay", 4]]}, "Factors!C2"),
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
"""Rows that say too much or too little, and the cell at which that is said."""


@pytest.mark.parametrize(("tables", "place"), ODD_ROWS.values(), ids=ODD_ROWS)
def test_a_row_that_says_too_much_or_too_little_is_named(tables: dict[str, Rows], place: str, tmp_path: Path) -> None:
    intake = take(read_book(write_book(tmp_path / "week.xlsx", {**WEEK, **tables})))
    assert findings_at(intake, *place.split("!"))


QUIET = {
    "Company": {"unit", "notes"}, "Site conditions": {"unit"}, "Prices": {"unit", "notes"},
    "Factors": {"unit", "usual", "source", "notes"},
}  # fmt: skip
"""Columns of which nothing is taken, so that they may hold anything."""


@pytest.mark.parametrize("table", TABLES)
def test_ten_thousand_letters_are_named_at_their_cell_in_every_column(table: str, tmp_path: Path) -> None:
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
        said = {each.place.cell for each in intake.findings if each.place.sheet == table}
        wanted = {f"{column_letters(at + 1)}2" for at in places}
        assert wanted <= said or (headers in names and any(cell.endswith("2") for cell in said)), (headers, said)
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
def test_every_odd_file_is_read_or_refused_in_three_hundred_megabytes(tmp_path: Path) -> None:
    wanted = {}
    for number, (name, (parts, said)) in enumerate(HOSTILE.items()):
        file = f"{number:03} {name.replace('/', ' ')}.xlsx"
        stored = sum(map(len, parts.values())) < 10_000_000
        pack(tmp_path / file, parts, ZIP_STORED if stored else ZIP_DEFLATED)
        wanted[file] = said
    (tmp_path / "zz demo.xlsx").write_bytes(DEMO.read_bytes())
    write_book(tmp_path / "zz whole.xlsx", whole_week())
    run = subprocess.run(
        [sys.executable, "-c", CHILD, str(tmp_path)], cwd=ROOT, capture_output=True, text=True, check=False, timeout=300
    )
    assert run.returncode == 0, run.stderr[-2000:]
    lines = run.stdout.splitlines()
    assert len(lines) == len(list(tmp_path.iterdir()))
    for file, said in wanted.items():
        assert any(line.startswith(f"refused {file}: ") and said in line for line in lines), file
    assert [line.split()[0] for line in lines[-2:]] == ["read", "read"]
