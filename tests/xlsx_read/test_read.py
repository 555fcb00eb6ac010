"""Reading of workbooks: no value, address or warning may be lost, and no ordinary file may be refused."""

from __future__ import annotations

import hashlib
import re
from datetime import date, datetime, time, timedelta
from pathlib import Path

import openpyxl
import pytest
import xlsxwriter
from hypothesis import given, settings
from hypothesis import strategies as st
from openpyxl.cell.rich_text import CellRichText, TextBlock
from openpyxl.cell.text import InlineFont
from openpyxl.chart import BarChart

from calc.cells import column_letters
from calc.xlsx_read.limits import Limits
from calc.xlsx_read.read import Book, Cell, Kind, read_book
from calc.xlsx_read.sheet_prescan import column_number, scan_sheet
from raw_package import MAIN, ONE, Part, cells_xml, changed, pack, package, sheet_xml, small_week
from witness import Program, recalculate


def cells(book: Book, sheet: str = "Areas") -> dict[str, Cell]:
    """The cells of a sheet by address."""
    return {cell.ref: cell for _, row in book.sheets[sheet].rows for cell in row.values()}


def contents(book: Book, sheet: str = "Areas") -> dict[str, tuple[Kind, object]]:
    """The kinds and values of the cells of a sheet."""
    return {ref: (cell.kind, cell.value) for ref, cell in cells(book, sheet).items()}


@pytest.fixture
def week(tmp_path: Path) -> Path:
    """A small jobs book."""
    return small_week(tmp_path / "jobs.xlsx")


# --- cells ---------------------------------------------------------------------------------------------------


def test_every_kind_of_value_arrives_as_it_was_typed(tmp_path: Path) -> None:
    typed: dict[str, tuple[object, str, Kind, object]] = {
        "A1": (7, "General", Kind.NUMBER, 7),
        "B1": (0.1, "0.00", Kind.NUMBER, 0.1),
        "C1": ("  1/2 ", "@", Kind.TEXT, "  1/2 "),
        "D1": ("two\nlines", "General", Kind.TEXT, "two\nlines"),
        "E1": (True, "General", Kind.BOOLEAN, True),
        "F1": (False, "General", Kind.BOOLEAN, False),
        "G1": (date(2026, 3, 4), "yyyy-mm-dd", Kind.DATE, datetime(2026, 3, 4)),
        "H1": (datetime(2026, 3, 4, 7, 30), "yyyy-mm-dd hh:mm", Kind.DATE, datetime(2026, 3, 4, 7, 30)),
        "I1": (time(7, 30), "h:mm", Kind.DURATION, "7:30:00"),
        "J1": (timedelta(hours=26, minutes=5), "[h]:mm", Kind.DURATION, "26:05:00"),
        "K1": ("#N/A", "General", Kind.ERROR, "#N/A"),
        "L1": (0, "General", Kind.NUMBER, 0),
        "M1": ("   ", "General", Kind.TEXT, "   "),
        "N1": ("½ in, señor 🙂", "General", Kind.TEXT, "½ in, señor 🙂"),
        "GR20000": ("last", "General", Kind.TEXT, "last"),
    }
    book = openpyxl.Workbook()
    book.active.title = "Areas"
    for ref, (value, number_format, _, _) in typed.items():
        book.active[ref] = value
        book.active[ref].number_format = number_format
    book.save(tmp_path / "kinds.xlsx")
    read = cells(read_book(tmp_path / "kinds.xlsx"))
    assert {ref: (cell.kind, cell.value, cell.number_format) for ref, cell in read.items()} == {
        ref: (kind, value, number_format) for ref, (_, number_format, kind, value) in typed.items()
    }
    assert type(read["A1"].value) is int
    assert type(read["E1"].value) is bool


def test_a_formula_keeps_its_text_and_its_stored_value(tmp_path: Path) -> None:
    stored: dict[str, tuple[object, Kind]] = {
        "A1": (3.5, Kind.NUMBER),
        "A2": ("yes", Kind.TEXT),
        "A3": (True, Kind.BOOLEAN),
        "A4": ("#DIV/0!", Kind.ERROR),
    }
    with xlsxwriter.Workbook(tmp_path / "f.xlsx") as book:
        sheet = book.add_worksheet("Areas")
        for ref, (value, _) in stored.items():
            sheet.write_formula(ref, "=B1*2", value=value)
        sheet.write_array_formula("A5:A5", "{=SUM(B1:B2)}", value=9)
    read = cells(read_book(tmp_path / "f.xlsx"))
    assert {ref: (read[ref].value, read[ref].kind) for ref in stored} == stored
    assert {read[ref].formula for ref in stored} == {"=B1*2"}
    assert (read["A5"].formula, read["A5"].value) == ("=SUM(B1:B2)", 9)


def test_a_formula_without_a_stored_value_is_not_a_blank_cell(tmp_path: Path) -> None:
    book = openpyxl.Workbook()
    book.active.title = "Areas"
    book.active.append([5, "=A1*2"])
    book.save(tmp_path / "f.xlsx")
    read = cells(read_book(tmp_path / "f.xlsx"))
    assert (read["B1"].kind, read["B1"].value, read["B1"].formula) == (Kind.UNCOMPUTED, "=A1*2", "=A1*2")


def test_a_formula_with_an_empty_result_counts_as_calculated(tmp_path: Path) -> None:
    sheet = cells_xml(
        '<c r="A1" t="str"><f>IF(1,"")</f><v></v></c>',
        '<c r="B1"><f>1+1</f><v></v></c>',
        '<c r="C1" t="str"><f>1+1</f></c>',
    )
    read = contents(read_book(pack(tmp_path / "f.xlsx", package({"Areas": sheet}))))
    assert read == {"A1": (Kind.TEXT, ""), "B1": (Kind.UNCOMPUTED, "=1+1"), "C1": (Kind.UNCOMPUTED, "=1+1")}


def test_a_shared_formula_is_read_for_each_of_its_cells(tmp_path: Path) -> None:
    rows = (
        '<row r="1"><c r="B1"><f t="shared" si="0" ref="B1:B2">A1*2</f><v>2</v></c></row>'
        '<row r="2"><c r="B2"><f t="shared" si="0"/><v>4</v></c></row>'
    )
    read = cells(read_book(pack(tmp_path / "f.xlsx", package({"Areas": sheet_xml(rows)}))))
    assert [(cell.formula, cell.value) for cell in read.values()] == [("=A1*2", 2), ("=A2*2", 4)]


def test_a_data_table_is_read_as_a_formula(tmp_path: Path) -> None:
    sheet = cells_xml('<c r="B1"><f t="dataTable" ref="B1:B2" dt2D="0" dtr="0" r1="A1"/><v>4</v></c>')
    read = cells(read_book(pack(tmp_path / "f.xlsx", package({"Areas": sheet}))))
    assert (read["B1"].formula, read["B1"].value) == ("=TABLE(A1,)", 4)


def test_text_is_read_however_the_file_stores_it(tmp_path: Path) -> None:
    strings = (
        f'<sst xmlns="{MAIN}"><si><t xml:space="preserve"> plain </t></si>'
        "<si><r><t>rich </t></r><r><rPr><b/></rPr><t>text</t></r><rPh sb='0' eb='1'><t>aloud</t></rPh></si>"
        "<si><t/></si><si><t>a_x000D_\nb</t></si></sst>"
    )
    sheet = cells_xml(
        '<c r="A1" t="s"><v>0</v></c><c r="B1" t="s"><v>1</v></c><c r="C1" t="s"><v>2</v></c>',
        '<c r="D1" t="s"><v>3</v></c><c r="E1" t="inlineStr"><is><t>in line</t></is></c>',
        '<c r="F1" t="inlineStr"><is><r><t>in </t></r><r><t>pieces</t></r></is></c><c r="G1" s="0"/>',
    )
    read = contents(read_book(pack(tmp_path / "t.xlsx", package({"Areas": sheet}, strings=strings))))
    assert read == {
        "A1": (Kind.TEXT, " plain "),
        "B1": (Kind.TEXT, "rich text"),
        "D1": (Kind.TEXT, "a\r\nb"),
        "E1": (Kind.TEXT, "in line"),
        "F1": (Kind.TEXT, "in pieces"),
    }


def test_text_with_bold_words_is_the_text(tmp_path: Path) -> None:
    book = openpyxl.Workbook()
    book.active.title = "Areas"
    book.active["A1"] = CellRichText("front ", TextBlock(InlineFont(b=True), "walk"))
    book.save(tmp_path / "rich.xlsx")
    assert contents(read_book(tmp_path / "rich.xlsx")) == {"A1": (Kind.TEXT, "front walk")}


@settings(max_examples=40)
@given(
    st.dictionaries(
        st.tuples(st.integers(0, 60), st.integers(0, 30)),
        st.one_of(
            st.booleans(),
            st.floats(-1e300, 1e300),
            st.integers(-(10**9), 10**9),
            st.text(st.characters(codec="utf-8", exclude_categories=["C"]), min_size=1, max_size=30),
        ),
        max_size=12,
    )
)
def test_every_typed_value_is_read_at_its_address(tmp_path_factory: pytest.TempPathFactory, typed: dict) -> None:
    path = tmp_path_factory.getbasetemp() / "typed.xlsx"
    with xlsxwriter.Workbook(path, {"strings_to_urls": False, "strings_to_formulas": False}) as book:
        sheet = book.add_worksheet("Areas")
        for (row, column), value in typed.items():
            write = sheet.write_string if isinstance(value, str) else sheet.write
            write(row, column, value)
    read = {(cell.row - 1, cell.column - 1): cell.value for cell in cells(read_book(path)).values()}
    assert read == {place: _as_kept(value) for place, value in typed.items()}


def _as_kept(value: object) -> object:
    """XlsxWriter writes sixteen digits of a float."""
    return float(f"{value:.16G}") if isinstance(value, float) else value


@pytest.mark.parametrize("from_1904", [False, True])
def test_a_date_is_the_same_day_in_books_that_count_from_1900_and_from_1904(tmp_path: Path, from_1904: bool) -> None:
    with xlsxwriter.Workbook(tmp_path / "d.xlsx", {"date_1904": from_1904}) as book:
        book.add_worksheet("Areas").write_datetime(
            "A1", datetime(2026, 3, 4), book.add_format({"num_format": "yyyy-mm-dd"})
        )
    read = read_book(tmp_path / "d.xlsx")
    assert contents(read) == {"A1": (Kind.DATE, datetime(2026, 3, 4))}
    assert any("1904" in note for note in read.notes) is from_1904


def test_dates_and_times_in_iso_format_are_dates_and_times(tmp_path: Path) -> None:
    sheet = cells_xml(
        '<c r="A1" t="d"><v>2026-03-04</v></c><c r="B1" t="d"><v>2026-03-04T07:30:00</v></c>',
        '<c r="C1" t="d"><v>07:30:00</v></c>',
    )
    assert contents(read_book(pack(tmp_path / "d.xlsx", package({"Areas": sheet})))) == {
        "A1": (Kind.DATE, datetime(2026, 3, 4)),
        "B1": (Kind.DATE, datetime(2026, 3, 4, 7, 30)),
        "C1": (Kind.DURATION, "7:30:00"),
    }


def test_a_date_outside_the_calendar_is_an_error_not_a_number(tmp_path: Path) -> None:
    styles = f'<styleSheet xmlns="{MAIN}"><cellXfs><xf/><xf numFmtId="14"/></cellXfs></styleSheet>'
    sheet = cells_xml('<c r="A1" s="1"><v>9999999999</v></c>')
    read = read_book(pack(tmp_path / "d.xlsx", package({"Areas": sheet}, styles=styles)))
    assert contents(read) == {"A1": (Kind.ERROR, "#VALUE!")}


def test_merged_ranges_are_reported_even_when_they_are_blank(tmp_path: Path) -> None:
    book = openpyxl.Workbook()
    book.active.title = "Areas"
    book.active["B2"], book.active["D4"] = "patio", "walk"
    book.active.merge_cells("B2:C3")
    book.active.merge_cells("F1:G2")
    book.save(tmp_path / "m.xlsx")
    read = read_book(tmp_path / "m.xlsx")
    assert set(read.sheets["Areas"].merged_ranges) == {"B2:C3", "F1:G2"}
    assert {ref: cell.merged for ref, cell in cells(read).items()} == {"B2": "B2:C3", "D4": ""}


def test_a_value_under_a_merged_range_is_not_lost(tmp_path: Path) -> None:
    sheet = sheet_xml(
        '<row r="1"><c r="A1"><v>1</v></c><c r="B1"><v>2</v></c></row>',
        '<mergeCells count="1"><mergeCell ref="A1:B1"/></mergeCells>',
    )
    read = cells(read_book(pack(tmp_path / "m.xlsx", package({"Areas": sheet}))))
    assert [(cell.value, cell.merged) for cell in read.values()] == [(1, "A1:B1"), (2, "A1:B1")]


def test_hidden_cells_are_read_and_marked(tmp_path: Path) -> None:
    with xlsxwriter.Workbook(tmp_path / "h.xlsx") as book:
        for name in ("Areas", "Spare", "Secret"):
            sheet = book.add_worksheet(name)
            for row in range(5):
                sheet.write_row(row, 0, [row, row, row])
        areas, spare, secret = book.worksheets()
        areas.set_row(1, None, None, {"hidden": True})
        areas.autofilter("A1:C5")
        areas.filter_column("A", "x != 3")
        areas.set_row(3, None, None, {"hidden": True})
        areas.set_row(4, 0)
        areas.set_column("C:XFD", None, None, {"hidden": True})
        spare.hide()
        secret.very_hidden()
    read = read_book(tmp_path / "h.xlsx")
    hidden = {ref for ref, cell in cells(read).items() if cell.hidden}
    assert hidden == {"A2", "B2", "C1", "C2", "C3", "A4", "B4", "C4", "A5", "B5", "C5"}
    assert {name: sheet.hidden for name, sheet in read.sheets.items()} == {
        "Areas": False,
        "Spare": True,
        "Secret": True,
    }
    assert all(cell.hidden for cell in cells(read, "Spare").values())
    assert len(cells(read, "Secret")) == 15


def test_a_row_without_height_and_a_column_without_width_are_hidden(tmp_path: Path) -> None:
    sheet = sheet_xml(
        '<row r="1"><c r="A1"><v>1</v></c><c r="B1"><v>2</v></c></row>'
        '<row r="2" ht="0" customHeight="1"><c r="A2"><v>3</v></c></row>',
        head='<cols><col min="2" max="16384" width="0"/></cols>',
    )
    read = cells(read_book(pack(tmp_path / "h.xlsx", package({"Areas": sheet}))))
    assert {ref: cell.hidden for ref, cell in read.items()} == {"A1": False, "B1": True, "A2": True}


def test_rows_come_in_order_and_blank_ones_not_at_all(week: Path) -> None:
    book = openpyxl.load_workbook(week)
    book["Areas"]["A9"] = "24-04"
    book["Areas"]["B7"].number_format = "0.00"  # a style is not a value
    book.save(week)
    rows = read_book(week).sheets["Areas"].rows
    assert [(number, list(row)) for number, row in rows] == [
        (1, [1, 2, 3, 4]),
        (2, [1, 2, 3, 4]),
        (3, [1, 2, 3, 4]),
        (9, [1]),
    ]


def test_a_book_has_its_name_its_sha256_and_the_order_of_its_tabs(week: Path) -> None:
    read = read_book(week)
    assert (read.path, read.name, read.notes) == (week, "jobs.xlsx", ())
    assert list(read.sheets) == ["Areas", "Jobs"]
    assert read.sha256 == hashlib.sha256(week.read_bytes()).hexdigest()


def test_an_address_is_the_one_that_spreadsheet_programs_show() -> None:
    assert [column_letters(n) for n in (1, 26, 27, 200, 702, 703, 16384)] == ["A", "Z", "AA", "GR", "ZZ", "AAA", "XFD"]
    assert all(column_number(column_letters(n)) == n for n in range(1, 16385))


# --- other programs --------------------------------------------------------------------------------------


def test_the_same_book_saved_by_another_program_gives_the_same_cells(tmp_path: Path, witness: Program) -> None:
    path = tmp_path / "jobs.xlsx"
    with xlsxwriter.Workbook(path) as book:
        day = book.add_format({"num_format": "yyyy-mm-dd"})
        text = book.add_format({"num_format": "@"})
        sheet = book.add_worksheet("Areas")
        sheet.write_row("A1", ["job", "length ft", "poured", " note "])
        sheet.write_string("A2", "24-03", text)
        sheet.write_number("B2", 10.5)
        sheet.write_datetime("C2", datetime(2026, 3, 4), day)
        sheet.write_string("D2", "1/2", text)
        sheet.write_boolean("E2", True)
        sheet.write_formula("F2", "=B2*2", value=21)
        sheet.write_formula("G2", "=1/0", value="#DIV/0!")
        sheet.write_formula("H2", '=IF(B2>0,"","x")', value="")
        sheet.merge_range("A4:B4", "merged")
        sheet.set_row(1, None, None, {"hidden": True})
        sheet.data_validation("A5:A900", {"validate": "list", "source": "=$A$1:$D$1"})
        sheet.conditional_format("B2:B900", {"type": "data_bar"})
        sheet.freeze_panes(1, 0)
        chart = book.add_chart({"type": "column"})
        chart.add_series({"values": "=Areas!$B$2:$B$2"})
        sheet.insert_chart("J2", chart)
        book.define_name("rate", "=Areas!$B$2")
    ours = contents(read_book(path))
    read = read_book(recalculate([path], witness, tmp_path)[path])
    theirs = cells(read)
    assert contents(read) == ours | {"H2": (Kind.TEXT, "")}  # the empty text was computed there, not stored here
    assert [theirs[ref].formula for ref in ("F2", "G2", "H2")] == ["=B2*2", "=1/0", '=IF(B2>0,"","x")']
    assert {ref for ref, cell in theirs.items() if cell.hidden} == {ref for ref in ours if ref.endswith("2")}
    assert theirs["A4"].merged == "A4:B4"


PLAIN = sheet_xml('<row r="2"><c r="B2"><v>5</v></c></row>')
DIALECTS: dict[str, Part] = {
    "a prefix on every tag": re.sub(r"<(/?)(\w)", r"<\1x:\2", PLAIN).replace("xmlns=", "xmlns:x="),
    "no addresses": sheet_xml('<row/><row><c/><c t="n"><v>5</v></c></row>'),
    "UTF-16": PLAIN.encode("utf-16"),
    "a declared size of a whole sheet": sheet_xml(
        '<row r="2"><c r="B2"><v>5</v></c></row>', head='<dimension ref="A1:XFD1048576"/>'
    ),
    "a declared size that is none": sheet_xml('<row r="2"><c r="B2"><v>5</v></c></row>', head='<dimension ref=""/>'),
    "formatted rows to the end": sheet_xml(
        '<row r="2"><c r="B2"><v>5</v></c></row>'
        + "".join(f'<row r="{r}" ht="{r % 89}"><c r="A{r}" s="0"/></row>' for r in range(3, 30000))
        + '<row r="1048576"><c r="XFD1048576" s="0"/></row>'
    ),
    "line breaks and comments": PLAIN.replace("><", "><!-- <c> -->\n\t<"),
    "rules that openpyxl cannot read": sheet_xml(
        '<row r="2"><c r="B2"><v>5</v></c></row>',
        '<conditionalFormatting><cfRule type="nonsense"/></conditionalFormatting><dataValidations count="x"/>'
        "<legacyDrawing/><extLst><ext/></extLst>",
    ),
}


@pytest.mark.parametrize("sheet", DIALECTS.values(), ids=DIALECTS)
def test_a_sheet_in_the_dialect_of_another_program_is_read(tmp_path: Path, sheet: Part) -> None:
    path = pack(tmp_path / "jobs.xlsx", package({"Areas": sheet, "Empty": sheet_xml()}))
    assert contents(read_book(path)) == {"B2": (Kind.NUMBER, 5)}
    assert read_book(path).sheets["Empty"].rows == ()


@pytest.mark.parametrize("row", [9, 10])
def test_a_sheet_in_utf_16_is_read_whatever_its_size(tmp_path: Path, row: int) -> None:
    sheet = sheet_xml(f'<row r="{row}"><c r="B{row}"><v>5</v></c></row>').encode("utf-16")
    assert contents(read_book(pack(tmp_path / "u.xlsx", package({"Areas": sheet})))) == {f"B{row}": (Kind.NUMBER, 5)}


def test_formatted_rows_below_the_table_cost_nothing() -> None:
    rows = '<row r="2"><c r="B2"><v>5</v></c></row>' + "".join(f'<row r="{r}" ht="9"/>' for r in range(3, 9999))
    facts, kept = scan_sheet(sheet_xml(rows, "<pageMargins/>").encode(), "Areas", Limits())
    assert (facts.last_row, facts.last_column) == (2, 2)
    assert b'r="2"' in kept
    assert not any(word in kept for word in (b'r="3"', b'r="9998"', b"pageMargins"))


def test_parts_in_other_places_and_under_other_names_are_found(tmp_path: Path) -> None:
    parts = package({"Areas": cells_xml(ONE)}, styles=f'<styleSheet xmlns="{MAIN}"/>')
    odd = {name.replace("xl/", "XL\\").replace("/", "\\"): content for name, content in parts.items()}
    odd["deep\\looks.xml"] = odd.pop("XL\\styles.xml")
    odd["XL\\_rels\\workbook.xml.rels"] = str(odd["XL\\_rels\\workbook.xml.rels"]).replace(
        "styles.xml", "./../Deep/looks.xml"
    )
    assert contents(read_book(pack(tmp_path / "odd.xlsx", odd))) == {"A1": (Kind.NUMBER, 1)}


def test_an_undefined_number_format_does_no_harm(tmp_path: Path) -> None:
    styles = f'<styleSheet xmlns="{MAIN}"><cellXfs><xf numFmtId="200"/></cellXfs></styleSheet>'
    read = cells(read_book(pack(tmp_path / "w.xlsx", package({"Areas": cells_xml(ONE)}, styles=styles))))
    assert (read["A1"].value, read["A1"].number_format) == (1, "General")


def test_content_that_is_no_input_cannot_stop_a_book(tmp_path: Path, week: Path) -> None:
    more = {"docProps/core.xml": "<not <xml", "xl/theme/theme1.xml": "", "xl/media/image1.png": b"\x89PNG"}
    assert contents(read_book(changed(week, tmp_path / "more.xlsx", more))) == contents(read_book(week))


def test_macros_links_and_chart_sheets_are_ignored_with_a_note(tmp_path: Path, week: Path) -> None:
    book = openpyxl.load_workbook(week)
    book.create_chartsheet("Curve").add_chart(BarChart())
    book.save(week)
    path = changed(
        week,
        tmp_path / "week.xlsm",
        {
            "xl/vbaProject.bin": b"\0macro",
            "xl/externalLinks/externalLink1.xml": "<broken",
            "xl/_rels/workbook.xml.rels": lambda links: links.replace(
                "</Relationships>",
                '<Relationship Id="x1" Type="http://x/externalLink" Target="externalLinks/externalLink1.xml"/>'
                "</Relationships>",
            ),
        },
    )
    read = read_book(path)
    assert list(read.sheets) == ["Areas", "Jobs"]
    assert [next(word for word in ("Curve", "macros", "links") if word in note) for note in read.notes] == [
        "Curve",
        "macros",
        "links",
    ]
