"""The papers that go out: what each must show, what none may show, and whether they print, follow and stay whole."""

from __future__ import annotations

import re
import zipfile
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from books import COMPANY, Rows, in_lists_of, line, only_job, value, write_book, written
from calc.audit.proposal import proposal_workbook
from calc.blanks.measure_sheet import measure_sheet
from calc.cli import commands
from calc.declare import Factor, Line, Price
from calc.declared.paper import Columns, Table
from calc.errors import Unreadable
from calc.formula.levels import JOB
from calc.formula.value_types import ValueType
from calc.intake.schema import FACTOR_LIST, PRICE_LIST
from calc.layout.arial import pixels, width_of
from calc.layout.caution_table import all_cautions, paper_cautions
from calc.layout.paper_cells import GRIDS, NOTHING
from calc.model.results import JobValues
from calc.trade.catalog import SECTIONS
from calc.trade.papers.area_text import SIZE
from calc.trade.papers.catalog import PAPERS
from sheet_cells import read_cells, type_over, unlike
from witness import Place, Program, Recalculations, edit

NAMES = [paper.title for paper in PAPERS]
LETTER, MARGINS = (612.0, 792.0), (57.6, 79.2)
LEAST_SCALE = 0.7
"""The measure sheets are printed to fit; the papers are at full size."""

ACROSS, DOWN, FOOT = 705.0, 792.0, 61.2
"""Pixels that the columns of a paper may take; points of a letter page, and of its margins above and below."""

WORDS: Rows = [["place", "text"], ["Cracks", "Joints draw the crack to where it is meant to be."]]
PRICES = {
    price.label: [price.label, round(3.17 + 1.31 * place, 2), None, 3 if price.pack is not None else None]
    for place, price in enumerate(PRICE_LIST)
}
PRICED: dict[str, Rows] = {
    **COMPANY,
    "Company": [["fact", "value"], ["Company", "Gravelly Bend Flatwork"]],
    "Wording": WORDS,
    "Wages": [["role", "private $/h"], ["laborer", 46.13], ["finisher", 58.29], ["driver", 44.37]],
    "Vehicles": [
        ["vehicle", "struck bed capacity yd3", "payload ton", "bed length ft", "bed width ft", "hourly rate $/h",
         "mileage rate $/mile"],
        ["dump trailer", 5, 4.5, 12, 6, 38.41, 0.93],
    ],
    "Disposal sites": [
        ["site", "kind", "per ton $/ton", "minimum charge $/load", "one-way time min", "one-way distance mile",
         "opens h",
         "closes h"],
        ["Sedge Hollow transfer", "mixed", 92.11, 45.7, 22, 11, 7, 16],
    ],
    "Prices": [["item", "price", "unit", "size"], *PRICES.values()],
}  # fmt: skip
"""A company book whose prices are odd enough that none of them is met by chance."""

ONE: dict[str, Rows] = {
    "Jobs": [
        ["job", "client", "address", "bid date", "pour date", "fiber", "irrigation lines to cap"],
        ["26-041", "Tamarack Row Owners", "41 Orchard Spur", "2026-04-13", "2026-04-27", "micro", 2],
    ],
    "Areas": [
        ["area", "length ft", "width ft", "thickness in", "old slab ft2", "old slab thickness in", "formed ft",
         "base in", "doweled edge ft", "doweled edges", "dowel spacing in"],
        ["walk", "42' 6\"", 4, 4, 60, 4, 42.5, 4, 42.5, 1, 24],
    ],
    "Changes": [["what", "quantity", "rate $", "signed"], ["two more feet at the gate", 8, 22.5, "yes"]],
    "Site conditions": [
        ["fact", "value"], ["first truck at", "8.5"], ["contact on site", "Ilsa Brandt, 555-0177"],
        ["exclusions", "moving the controller"], ["entrained air", "yes"],
    ],
}  # fmt: skip
SIX: dict[str, Rows] = {
    **ONE,
    "Areas": [
        [*ONE["Areas"][0], "quantity"],
        *(
            [f"strip number {place}", 12 + 4 * place, 4, 4, 20, 4, 12, 2, 12, 1, 24, 1 + place % 2]
            for place in range(6)
        ),
    ],
}


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Where the workbooks of this module are."""
    return tmp_path_factory.mktemp("papers")


@pytest.fixture(scope="module")
def job(folder: Path) -> JobValues:
    """The job of one area."""
    return only_job(folder, ONE, PRICED)


@pytest.fixture(scope="module")
def book(folder: Path, job: JobValues) -> Path:
    """Its workbook."""
    return written(job, folder / "one.xlsx")


@pytest.fixture(scope="module")
def large(folder: Path) -> Path:
    """The workbook of the job of six areas."""
    return written(only_job(folder, SIX, PRICED), folder / "six.xlsx")


@pytest.fixture(scope="module")
def handed(folder: Path, book: Path) -> Path:
    """What is handed out of the job of one area."""
    path = folder / "handed.xlsx"
    path.write_bytes(proposal_workbook(book))
    return path


@cache
def values_of(path: Path) -> dict[Place, object]:
    """Every value of a workbook, read once; an empty text is no value."""
    return {place: held.value for place, held in read_cells(path).items() if held.value not in (None, "")}


@cache
def opened(path: Path) -> Any:
    """A workbook as it was written, read once."""
    return openpyxl.load_workbook(path)


def opened_values(path: Path, sheet: str) -> dict[str, object]:
    """What a sheet shows, by cell."""
    return {ref: held for (name, ref), held in values_of(path).items() if name == sheet}


def shown(path: Path, sheet: str) -> list[object]:
    """Everything that a sheet shows."""
    return [held for (name, _), held in values_of(path).items() if name == sheet]


def place_of_length(path: Path) -> Place:
    """Where the length of the walk stands on Measured."""
    return next(place for place, held in values_of(path).items() if place[0] == "Measured" and held == 42.5)


SEEN_BY_THE_CLIENT = (
    "BidPrice.price", "BidPrice.price_computed", "PaymentSchedule.amount", "PaymentSchedule.amount_all",
    "ChangeAmount.amount", "ChangeAmount.amount_all", "ChangeAmount.signed_amount", "ChangeAmount.signed_amount_all",
    "Invoice.changes", "Invoice.billed", "PriceParts.deposit", "PriceParts.on_pour_day", "PriceParts.on_completion",
    "ChangeAmount.contract", "ContractSum.amount", "ContractSum.amount_all", "InvoicePart.amount",
    "InvoicePart.amount_all", "InvoiceDue.due", "Billed.amount", "Billed.earlier", "Billed.now", "Billed.later",
    "Billed.amount_all", "Billed.earlier_all", "Billed.now_all", "Billed.later_all", "Invoice.unsigned",
)  # fmt: skip
"""What stands on Costs and is said to the client."""


def secrets(job: JobValues) -> set[float]:
    """Every cost, hour, rate and margin of the job that is no whole number, which many things are."""
    costs = [
        (member, row)
        for section in SECTIONS
        if section.sheet == "Costs"
        for member in section.members
        if isinstance(member, Line) and member.id not in SEEN_BY_THE_CLIENT and member.value_type is ValueType.NUMBER
        for row in range(job.count(member.level))
    ]
    known = [(price, 0) for price in PRICE_LIST if isinstance(price, Price)]
    numbers = {round(float(job.of(*each)), 6) for each in (*costs, *known)}
    seen = {round(float(job.of(line(name), row)), 6) for name in SEEN_BY_THE_CLIENT for row in rows_of(job, name)}
    return {number for number in numbers if abs(number % 1) > 1e-4 and number not in seen}


def rows_of(job: JobValues, name: str) -> range:
    """The rows of a declaration."""
    level = line(name).level
    return range(1 if level == JOB else job.count(level))


def met(number: float, numbers: set[float]) -> bool:
    """Whether a number is one of them, as it is or to the cent."""
    return any(abs(number - each) < 1e-6 or abs(number - round(each, 2)) < 1e-6 for each in numbers)


def numbers_in(texts: Iterator[str]) -> set[float]:
    """Every number with a point that stands in texts."""
    return {float(found.replace(",", "")) for text in texts for found in re.findall(r"\d[\d,]*\.\d+", text)}


@pytest.mark.parametrize("name", ["Proposal", "Change order", "Invoice"])
def test_the_client_sees_no_cost_hour_rate_or_margin(job: JobValues, book: Path, name: str) -> None:
    kept = secrets(job)
    assert len(kept) > 60
    assert any(isinstance(each, float) and met(each, kept) for each in shown(book, "Job cost")), "the search is blind"
    on_it = shown(book, name)
    numbers = {float(each) for each in on_it if isinstance(each, int | float)}
    numbers |= numbers_in(each for each in on_it if isinstance(each, str))
    assert [each for each in numbers if met(each, kept)] == []
    words = re.compile(r"\b(costs?|hours?|overhead|margin|markup|rates?|wages?|contingency)\b", re.IGNORECASE)
    assert [each for each in on_it if isinstance(each, str) and words.search(each)] == []


@pytest.mark.parametrize("name", ["Plant order", "Load list", "Pour day"])
def test_the_papers_for_plant_and_site_show_no_money(book: Path, name: str) -> None:
    sheet = opened(book)[name]
    assert [cell.coordinate for row in sheet.iter_rows() for cell in row if '"$"' in cell.number_format] == []
    assert not any("$" in each for each in shown(book, name) if isinstance(each, str))


MUST_SHOW = {
    "Proposal": "Company.name Job.client Job.address Job.bid_date Slab.net_area AreaText.description "
    "AreaText.thickness "
    "AreaText.base AreaText.dig Mixture.strength AreaText.old_slab_all PourText.shutoff OnSite.days_closed "
    "PaperFacts.exclusions BidPrice.price PaymentSchedule.amount ChangeAmount.amount "
    "Change.signed Invoice.billed Wording.words",
    "Plant order": "Order.quantity Order.trucks Mixture.strength MixText.slump MixText.aggregate PourText.air "
    "FiberDose.per_yard FiberTotal.bags Job.address PaperFacts.contact ArrivalTime.text TruckLoad.yards "
    "PourText.balance",
    "Load list": "LoadRow.name LoadRow.quantity LoadRow.unit_of_measure LoadRow.use OnSite.crew PaidTime.crew_visits",
    "Haul-off sheet": "PileText.destination PileText.load_line PileText.opens PileText.closes PileText.last_arrives "
    "PileText.not_accepted "
    "Hauled.loads Hauled.tons Hauled.dump_fee HaulVehicle.payload",
    "Pour day": "AreaText.thickness AreaText.mean_thickness AreaText.joint_depth Order.quantity TruckLoad.yards "
    "TruckTime.unloading "
    "TruckTime.allowance JointPlace.shown PourText.finish_window FinishersNeeded.last_load_time Curing.need "
    "CuringChoice.small_packs "
    "PourText.balance",
    "Invoice": "Company.name Job.client ContractSum.amount ContractSum.amount_all ChangeAmount.signed_amount "
    "Change.what InvoicePart.amount InvoicePart.note InvoiceDue.due Billed.amount Billed.earlier Billed.now "
    "Billed.later Billed.state",
    "Change order": "Company.name Job.client ChangeAmount.what_and_why ChangeAmount.amount ChangeAmount.contract "
    "ChangeAmount.days Change.signed BidPrice.price Invoice.billed",
    "Job cost": "CostTable.amount_all BidPrice.tax BidPrice.overhead BidPrice.price",
}


def on_paper(job: JobValues, name: str, row: int) -> bool:
    """Whether a paper has a row of it: one that is not in use is left empty, to write in."""
    if not rows_in_use(name):
        return value(job, name, row) not in NOTHING
    return any(float(job.of(used, row)) > 0 for used in rows_in_use(name))


@cache
def rows_in_use(name: str) -> list[Line]:
    """The lines that say which rows of a table with it are in use."""
    tables = [part for paper in PAPERS for part in paper.parts if isinstance(part, Table) and part.used is not None]
    return [
        table.used
        for table in tables
        if table.used is not None and line(name) in (table.names, *(column.named for column in table.columns))
    ]


@pytest.mark.parametrize("name", NAMES)
def test_whoever_holds_a_paper_finds_what_he_needs_on_it(job: JobValues, book: Path, name: str) -> None:
    on_it = set(map(str, shown(book, name)))
    dates = {str(job.of(line("Job.bid_date")))}
    lacking = [
        wanted
        for wanted in MUST_SHOW[name].split()
        for row in rows_of(job, wanted)
        if on_paper(job, wanted, row)
        if str(held := value(job, wanted, row)) not in on_it
        and str(held).removesuffix(".0") not in on_it
        and str(held) not in dates
    ]
    assert lacking == []


def test_every_number_on_a_paper_is_brought_by_a_formula(book: Path) -> None:
    for name in NAMES:
        sheet = opened(book)[name]
        typed = [cell.coordinate for row in sheet.iter_rows() for cell in row if cell.data_type in ("n", "d")]
        printed = sheet.print_area.split(":")[1].replace("$", "")
        last = openpyxl.utils.cell.coordinate_to_tuple(printed)[1]
        assert [each for each in typed if sheet[each].value is not None and sheet[each].column <= last] == [], name


def test_a_firm_that_gave_no_words_has_none_put_in_its_mouth(folder: Path) -> None:
    plain = {name: rows for name, rows in ONE.items() if name != "Changes"}
    path = written(only_job(folder, plain, {**PRICED, "Wording": [["place", "text"]]}), folder / "plain.xlsx")
    on_it = shown(path, "Proposal")
    assert "Price and payment schedule" in on_it
    assert not {"Terms", "Change orders", "Price with signed change orders"} & set(on_it)


def test_what_nobody_typed_is_left_for_a_pen(folder: Path) -> None:
    tables: dict[str, Rows] = {
        "Jobs": [["job", "bid date"], ["one", "2026-04-13"]],
        "Areas": [["length ft", "width ft"], [12, 3]],
    }
    path = written(only_job(folder, tables, PRICED), folder / "bare.xlsx")
    for name, label in (
        ("Proposal", "Job address"), ("Plant order", "Deliver to"), ("Haul-off sheet", "From"),
        ("Pour day", "Job address"),
    ):  # fmt: skip
        sheet = opened_values(path, name)
        (row,) = [row for row in range(1, 12) if sheet.get(f"A{row}") == label]
        assert set(str(sheet[f"B{row}"])) == {"_"}, name


SIZES = {
    12.5: "12' 6\"", 10 + 6.5 / 12: "10' 6 1/2\"", 3.2 / 0.3048: "10' 6\"", 7.99999: "8' 0\"", 0.5: '6"',
    0.0625: '3/4"', 11.99 / 12: "1' 0\"", 4 + 0.125 / 12: "4' 0 1/8\"", 9 + 11.9 / 12: "9' 11 7/8\"",
}  # fmt: skip


def test_a_size_on_a_paper_is_what_a_tape_shows(folder: Path) -> None:
    areas = [["area", "length ft", "width ft", "formed ft"], *([f"a{n}", feet, 1, 1] for n, feet in enumerate(SIZES))]
    job = only_job(folder, {"Jobs": ONE["Jobs"], "Areas": areas}, PRICED)
    assert [value(job, "AreaSize.text", row * len(SIZE.axis.words)) for row in range(len(SIZES))] == list(
        SIZES.values()
    )


def test_no_size_on_a_paper_is_a_decimal(book: Path) -> None:
    for name in NAMES[:-1]:
        decimal = [each for each in shown(book, name) if isinstance(each, str) and re.search(r"\d\.\d+ ?[\"']", each)]
        assert decimal == [], name
        sheet = opened(book)[name]
        assert not any(cell.value in ("in", "ft in") for row in sheet.iter_rows() for cell in row), name


def scale_of(sheet: Any) -> float:
    """How large a page prints, from the widths and heights that are written."""
    wide = sum(each.width * 5.25 for each in sheet.column_dimensions.values())
    tall = sum((sheet.row_dimensions[row].height or 15) for row in range(1, sheet.max_row + 1))
    return float(min((LETTER[0] - MARGINS[0]) / wide, (LETTER[1] - MARGINS[1]) / tall))


@pytest.mark.parametrize("name", NAMES)
def test_a_paper_of_six_areas_prints_on_one_page_at_full_size(large: Path, book: Path, name: str) -> None:
    for path in (large, book):
        sheet = opened(path)[name]
        assert sheet.page_setup.orientation == "portrait"
        assert sheet.page_setup.scale in (None, 100)
        assert not sheet.sheet_properties.pageSetUpPr.fitToPage
        assert sheet.print_title_rows
        assert "Check local code" in sheet.oddFooter.left.text
        # a width that is read has the room beside its characters in it
        assert sum(pixels(each.width - 5 / 7) for each in sheet.column_dimensions.values()) <= ACROSS
        heights = (sheet.row_dimensions[row].height or 15 for row in range(1, sheet.max_row + 1))
        assert sum(heights) <= DOWN - FOOT, f"{name} goes on a second page"


def test_no_caution_runs_off_the_page_of_the_foreman() -> None:
    room = {title: sum(map(pixels, GRIDS[Columns.EVEN][1:])) for title in paper_cautions()}
    told = [
        (title, text)
        for title, listed in paper_cautions().items()
        for each in all_cautions()
        if listed.holds(each)
        for text in ((each.do,) if listed.one_line else (each.do, each.usual))
    ]
    assert [each for each in told if width_of(each[1]) > room[each[0]]] == []


def held_to_its_costs(book: Path, anew: Path, edited: Path) -> None:
    """The costs on Job cost stay in their rows, so that what is typed beside them does; what an edit adds is told."""
    rows = [row for row in range(3, 60) if values_of(book).get(("Job cost", f"K{row}"))]
    assert len(rows) > 15
    for row in rows:
        assert values_of(edited)["Job cost", f"A{row}"] == values_of(book)["Job cost", f"A{row}"]
    new = values_of(anew)
    fresh = {new["Job cost", f"A{row}"]: row for row in range(3, 60) if new.get(("Job cost", f"K{row}"))}
    for row in rows:
        name = values_of(book)["Job cost", f"A{row}"]
        if name in fresh:
            estimate = values_of(edited)["Job cost", f"E{row}"]
            assert estimate == pytest.approx(values_of(anew)["Job cost", f"E{fresh[name]}"]), name
    (total,) = beside(edited, "Job cost", "Total", "E")
    assert [total] == pytest.approx(beside(anew, "Job cost", "Total", "E"))
    (added,) = beside(edited, "Job cost", "Costs added since issue", "E")
    listed = sum(float(values_of(edited)["Job cost", f"E{row}"]) for row in rows)
    labor = values_of(edited)["Job cost", f"E{rows[-1] + 5}"]
    assert added == pytest.approx(total - listed - labor, abs=0.005)


@pytest.mark.slow
@pytest.mark.filterwarnings("ignore:.*extension is not supported")
def test_the_papers_follow_an_edit(folder: Path, book: Path, libreoffice: Any, recalculated: Recalculations) -> None:
    longer = {**ONE, "Areas": [ONE["Areas"][0], ["walk", 60, *ONE["Areas"][1][2:]]]}
    fresh = in_lists_of(only_job(folder, ONE, PRICED), only_job(folder, longer, PRICED).job)
    anew, over = written(fresh, folder / "anew.xlsx"), folder / "over.xlsx"
    type_over(book, {place_of_length(book): 60.0}, over)
    edited = recalculated.result(over, libreoffice)
    told = unlike(anew, edited)
    assert [str(each) for each in told if each.sheet in NAMES and each.sheet != "Job cost"] == []
    held_to_its_costs(book, anew, edited)
    before, after = values_of(book), values_of(anew)
    for name in NAMES:
        assert any(before.get(place) != held for place, held in after.items() if place[0] == name), name


def parts(path: Path) -> dict[str, str]:
    """Every part of a file, as text."""
    with zipfile.ZipFile(path) as package:
        return {name: package.read(name).decode() for name in package.namelist()}


def test_what_is_handed_out_holds_the_proposal_and_nothing_else(job: JobValues, book: Path, handed: Path) -> None:
    inside = openpyxl.load_workbook(handed)
    assert inside.sheetnames == ["Proposal"]
    assert [cell.coordinate for row in inside["Proposal"].iter_rows() for cell in row if cell.data_type == "f"] == []
    assert not list(inside.defined_names)
    assert not inside.properties.creator
    assert not inside.properties.lastModifiedBy
    assert not inside.custom_doc_props.props
    texts = parts(handed)
    sheet = re.sub(r"<(pageMargins|col|row|pane|sheetFormatPr)\b[^>]*>", "", texts["xl/worksheets/sheet1.xml"])
    kept, numbers = secrets(job), numbers_in(iter((sheet, texts["xl/sharedStrings.xml"], texts["docProps/core.xml"])))
    assert [each for each in numbers if met(each, kept)] == []
    said = " ".join(map(str, shown(book, "Proposal")))
    foreign = [each for each in shown(book, "Costs") if isinstance(each, str) and len(each) > 12 and each not in said]
    assert len(foreign) > 50
    assert [each for each in foreign if any(each in text for text in texts.values())] == []
    assert not any(word in text for text in texts.values() for word in ("<f>", "definedName", "sha256", str(book)))


def test_what_is_handed_out_says_what_the_proposal_said(book: Path, handed: Path) -> None:
    def plain(path: Path) -> dict[str, object]:
        return {ref: held for (sheet, ref), held in values_of(path).items() if sheet == "Proposal"}

    assert plain(handed) == plain(book)


def test_the_proposal_is_one_page_of_pdf_where_libreoffice_is(
    book: Path, folder: Path, libreoffice: Program, capsys: pytest.CaptureFixture[str]
) -> None:
    assert libreoffice is Program.LIBREOFFICE
    with pytest.raises(SystemExit) as end:
        commands.main(["proposal", str(book), "--pdf", "-o", str(folder / "send.pdf")], prog_name="flatwork")
    assert (end.value.code, capsys.readouterr().out) == (0, f"wrote {folder / 'send.pdf'}\n")
    pdf = (folder / "send.pdf").read_bytes()
    assert pdf.startswith(b"%PDF-") and len(re.findall(rb"/Type/Page\b", pdf)) == 1


def test_without_libreoffice_a_pdf_is_refused_with_what_to_do(
    book: Path, folder: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setenv("PATH", str(folder))
    with pytest.raises(SystemExit) as end:
        commands.main(["proposal", str(book), "--pdf", "-o", str(folder / "none.pdf")], prog_name="flatwork")
    told = capsys.readouterr().err
    assert end.value.code == 3 and "Install it, or open the workbook and print it to PDF" in told
    assert not (folder / "none.pdf").exists()


def test_the_same_workbook_gives_the_same_hand_out(book: Path, handed: Path) -> None:
    assert proposal_workbook(book) == handed.read_bytes()


def test_a_workbook_that_was_edited_and_not_computed_is_not_handed_out(folder: Path, book: Path) -> None:
    edit(book, {place_of_length(book): 60}, folder / "stale.xlsx")
    with pytest.raises(Unreadable, match="has a formula that was not calculated"):
        proposal_workbook(folder / "stale.xlsx")


def test_a_price_that_is_not_the_computed_one_is_not_handed_out(folder: Path, job: JobValues, book: Path) -> None:
    price, texts = f"<v>{job.of(line('BidPrice.price'))}</v>", parts(book)
    costs = f"xl/worksheets/sheet{opened(book).sheetnames.index('Costs') + 1}.xml"
    assert price in texts[costs]
    with zipfile.ZipFile(folder / "other.xlsx", "w") as package:
        for name, text in texts.items():
            package.writestr(name, text.replace(price, "<v>1234</v>") if name == costs else text)
    with pytest.raises(Unreadable, match="differs from Costs!"):
        proposal_workbook(folder / "other.xlsx")


def test_a_proposal_that_is_not_ready_is_not_handed_out(folder: Path) -> None:
    thin = {**ONE, "Areas": [ONE["Areas"][0], ["walk", 12, 4, 1.5, *ONE["Areas"][1][4:]]]}
    path = written(only_job(folder, thin, PRICED), folder / "thin.xlsx")
    with pytest.raises(Unreadable, match="NOT READY"):
        proposal_workbook(path)
    unpriced = written(only_job(folder, ONE, COMPANY), folder / "unpriced.xlsx")
    with pytest.raises(Unreadable, match="NOT"):
        proposal_workbook(unpriced)


def test_a_file_that_is_none_of_ours_is_not_handed_out(folder: Path) -> None:
    with pytest.raises(Unreadable, match="not a job workbook that flatwork wrote"):
        proposal_workbook(write_book(folder / "input.xlsx", ONE))


def test_the_measure_sheet_is_a_page_for_the_site_and_one_for_an_area(tmp_path: Path) -> None:
    path = tmp_path / "measure.xlsx"
    path.write_bytes(measure_sheet())
    assert measure_sheet() == path.read_bytes()
    inside = openpyxl.load_workbook(path)
    assert inside.sheetnames == ["Site", "Area"]
    for sheet in inside.worksheets:
        assert sheet.page_setup.fitToHeight in (None, 1)
        assert scale_of(sheet) >= LEAST_SCALE
        assert not any("$" in str(cell.value) for row in sheet.iter_rows() for cell in row)
    words = set(shown(path, "Area")) | set(shown(path, "Site"))
    for asked in (
        "Length",
        "Thickness",
        "station ft",
        "depth in",
        "old joint",
        "depth to top of footing in",
        "Photos, from-to",
        "Initials",
    ):
        assert asked in words
    assert any("WHO CAPS" in str(each) for each in words)
    assert any("FOOTING?" in str(each) for each in words)


RETAINED: dict[str, Rows] = {
    **ONE,
    "Changes": [
        ["what", "reason", "rate $", "signed", "days added", "billed with"],
        ["two more feet at the gate", "the gate was moved", 180, "yes", 2, "payment on the day of the pour"],
        ["no broom finish", "", -40, "yes", 0, ""],
        ["root barrier", "a root was met", 252, "no", 0, ""],
    ],
    "Site conditions": [*ONE["Site conditions"], ["retainage", 5], ["invoice bills", "balance on completion"]],
}


def beside(path: Path, sheet: str, label: str, column: str) -> list[object]:
    """What stands in a column in the rows that have a label."""
    on_it = opened_values(path, sheet)
    rows = [int(ref[1:]) for ref, held in on_it.items() if re.fullmatch(r"A\d+", ref) and held == label]
    return [on_it.get(f"{column}{row}") for row in sorted(rows)]


def test_an_invoice_adds_up_to_the_contract_three_times(folder: Path) -> None:
    bid = only_job(folder, RETAINED, PRICED)
    path = written(bid, folder / "retained.xlsx")
    price = float(value(bid, "BidPrice.price"))
    _, contract, told_again = beside(path, "Invoice", "Contract to date", "C")
    assert contract == told_again == price + 140
    (due,) = beside(path, "Invoice", "Due on this invoice", "C")
    before, now, later = (beside(path, "Invoice", "Contract to date", column)[-1] for column in "DEF")
    assert now == due == value(bid, "PriceParts.on_completion") - 40
    assert later == value(bid, "PriceParts.retainage")
    assert before + now + later == pytest.approx(contract)
    assert beside(path, "Invoice", "less retainage held", "C") == [-later]


def test_no_retainage_is_said_to_be_none(book: Path) -> None:
    for label in ("less retainage held", "retainage released", "release of retainage"):
        assert beside(book, "Invoice", label, "B") == ["none by this contract"]


def test_each_change_order_says_why_and_what_the_contract_becomes(folder: Path) -> None:
    bid = only_job(folder, RETAINED, PRICED)
    path = written(bid, folder / "changed.xlsx")
    price = float(value(bid, "BidPrice.price"))
    for number, (text, contract) in enumerate(
        (
            ("two more feet at the gate. Reason: the gate was moved", 180),
            ("no broom finish", 140),
            ("root barrier. Reason: a root was met", 392),
        ),
        1,
    ):
        assert beside(path, "Change order", f"CO-{number}", "B") == [text]
        assert beside(path, "Change order", f"CO-{number}", "D") == [price + contract]
    assert beside(path, "Change order", "All change orders", "E") == [2]


def test_a_change_order_without_any_change_is_for_a_pen(folder: Path) -> None:
    bare = {name: rows for name, rows in ONE.items() if name != "Changes"}
    path = written(only_job(folder, bare, PRICED), folder / "pen.xlsx")
    labels = {cell.value: cell.row for cell in opened(path)["Change order"]["A"]}
    for label in ("What is done", "Why", "Contract from now on"):
        assert opened(path)["Change order"][f"B{labels[label]}"].border.bottom.style == "thin"


def next_to(path: Path, label: str) -> object:
    """What stands behind a label of the second half of a row of the Proposal."""
    on_it = opened_values(path, "Proposal")
    (row,) = [ref[1:] for ref, held in on_it.items() if held == label]
    return on_it[f"E{row}"]


def test_a_permit_that_was_not_typed_is_said_not_to_be_included(folder: Path, book: Path) -> None:
    assert next_to(book, "Permit") == "not included"
    permitted = {**ONE, "Site conditions": [*ONE["Site conditions"], ["permit", 85]]}
    path = written(only_job(folder, permitted, PRICED), folder / "permitted.xlsx")
    assert next_to(path, "Permit") == "included"


def loaded(path: Path) -> set[str]:
    """The items on the load list."""
    return {str(held) for ref, held in opened_values(path, "Load list").items() if ref.startswith("B")}


def test_a_job_from_bags_loads_bags_and_a_mixer_but_no_drill(folder: Path) -> None:
    tables: dict[str, Rows] = {
        "Jobs": [["job", "bid date"], ["one", "2026-04-13"]],
        "Areas": [["length ft", "width ft", "formed ft"], [4, 3, 14]],
        "Site conditions": [["fact", "value"], ["placing method", "bags"], ["placing reason", "too little"]],
    }
    on_it = loaded(written(only_job(folder, tables, PRICED), folder / "bagged.xlsx"))
    assert {"Bagged concrete", "Buckets for mixing water", "Rubber boots", "Form lumber 2x4", "Form stakes"} <= on_it
    assert any(each.startswith("Mixer: ") for each in on_it)
    unwanted = {
        "Rotary hammer drill",
        "Drill bits",
        "Concrete washout",
        "Respirators that fit, for dust",
        "Traffic cones",
    }
    assert not unwanted & on_it


def test_a_doweled_job_loads_drill_bits_vacuum_and_respirators_but_no_bags(book: Path) -> None:
    on_it = loaded(book)
    assert {
        "Rotary hammer drill", "Drill bits", "Vacuum with dust filter, hole brush", "Dowels to cut from it",
        "Respirators that fit, for dust", "Ear protection", "Concrete washout", "Gloves, waterproof",
    } <= on_it  # fmt: skip
    assert not {"Bagged concrete", "Buckets for mixing water", "Wire mesh sheets"} & on_it


def test_rock_that_is_delivered_is_not_loaded(folder: Path) -> None:
    rock = "Base rock, picked up on the way"
    far = {**ONE, "Areas": [ONE["Areas"][0], ["lot", 80, 20, *ONE["Areas"][1][3:]]]}
    delivered = only_job(folder, far, PRICED)
    assert value(delivered, "BaseHaul.delivered") == 1
    assert rock not in loaded(written(delivered, folder / "delivered.xlsx"))


def test_papers_of_the_site_leave_out_what_its_reader_cannot_act_on(book: Path) -> None:
    listed = paper_cautions()
    labels = {name: {each.label for each in all_cautions() if part.holds(each)} for name, part in listed.items()}
    assert set(labels) == {"Pour day", "Haul-off sheet"}
    for unwanted in ("Permits and documents", "Costs without a price", "Unusual margin", "Prevailing wage has no rate"):
        assert not any(unwanted in each for each in labels.values())
    for name, known in labels.items():
        assert "Underground utilities" in known
        on_it = shown(book, name)
        (utilities,) = (each for each in all_cautions() if each.label == "Underground utilities")
        assert utilities.label in on_it
        assert any(utilities.do in str(each) for each in on_it)
        assert any(utilities.usual in str(each) for each in on_it) or listed[name].one_line


def test_factors_of_money_never_reach_a_paper_of_the_site(job: JobValues) -> None:
    shares = {each.label for each in FACTOR_LIST if isinstance(each, Factor) and each.section.sheet == "Costs"}
    shown_on_site = {fact.called for paper in PAPERS[:-1] for part in paper.parts for fact in getattr(part, "rows", ())}
    assert len(shares) > 5
    assert not shares & shown_on_site


@pytest.mark.parametrize(("size", "across", "down"), [("letter", 612.0, 792.0), ("A4", 595.3, 841.9)])
def test_the_sheets_of_a_job_fit_both_sizes_of_paper(folder: Path, size: str, across: float, down: float) -> None:
    """A spreadsheet program whose letters are a little wider must not print a second page across."""
    company = {**PRICED, "Company": [*PRICED["Company"], ["paper", size]]}
    inside = openpyxl.load_workbook(written(only_job(folder, ONE, company), folder / f"{size}.xlsx"))
    wider = 1.059  # the digit of the default font in LibreOffice, as a share of that of the file, measured
    for sheet in inside.worksheets:
        upright = sheet.page_setup.orientation == "portrait"
        room = (across if upright else down) - 72 * (sheet.page_margins.left + sheet.page_margins.right)
        last = sheet.print_area.split(":")[1].replace("$", "").rstrip("0123456789")
        printed = range(1, openpyxl.utils.column_index_from_string(last) + 1)
        widths = {
            place: each.width for each in sheet.column_dimensions.values() for place in range(each.min, each.max + 1)
        }
        assert sum(widths.get(place, 9.14) * 5.25 for place in printed) * wider <= room, sheet.title


def test_a_formula_added_to_the_proposal_and_never_computed_is_not_handed_out_as_a_blank(
    folder: Path, book: Path
) -> None:
    texts = parts(book)
    sheet = f"xl/worksheets/sheet{opened(book).sheetnames.index('Proposal') + 1}.xml"
    added = '<row r="90"><c r="B90"><f>1+1</f></c></row></sheetData>'
    with zipfile.ZipFile(folder / "added.xlsx", "w") as package:
        for name, text in texts.items():
            package.writestr(name, text.replace("</sheetData>", added) if name == sheet else text)
    with pytest.raises(Unreadable, match="Proposal!B90 has a formula that was added, and no value"):
        proposal_workbook(folder / "added.xlsx")
