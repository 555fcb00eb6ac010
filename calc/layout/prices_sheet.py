"""The sheet Prices: unit prices, each with its supplier, and the vehicles, sites and wages of the company."""

from __future__ import annotations

from collections.abc import Callable

from calc.declared import Pack, Price
from calc.intake.records import JobInput, PriceRow
from calc.intake.schema import NAMED_TABLES, PRICE_LIST
from calc.layout.grid import ITEM, VALUE
from calc.layout.measured_tables import lay_table
from calc.layout.page import CellValue, FixedText, JobText, Typed
from calc.layout.sheet_layout import SheetLayout
from calc.layout.shown import format_of
from calc.layout.styles import ID_FORMAT
from calc.model.results import Shape
from calc.trade.catalog import SECTIONS

PRICES = "Prices"
ABOUT = "from the company book; edit a price here, and the job follows"
_UNIT, _SIZE, _SIZE_UNIT, _TAXED, _ACCOUNT, _DATED, _VALID, _SUPPLIER = range(VALUE + 1, VALUE + 9)
_FROM = _SUPPLIER + 3
_HEADS = {
    ITEM: ("Item", "", True),
    VALUE: ("Price", "", False),
    _UNIT: ("Unit", "", True),
    _SIZE: ("Size", "", False),
    _SIZE_UNIT: ("Unit", "", True),
    _TAXED: ("Taxable", "", True),
    _ACCOUNT: ("Account", "", True),
    _DATED: ("Dated", "", False),
    _VALID: ("Valid until", "", False),
    _SUPPLIER: ("Supplier", "", True),
    _FROM: ("From", "", True),
}


def lay_prices(sheet: SheetLayout, shape: Shape) -> None:
    """Every price that the rules use, given or not, and the company's vehicles, disposal sites, wages and wording."""
    sheet.section("Prices", "one unit costs so much, in $; a thing without a price stops the bid that needs it")
    sheet.column_heads(_HEADS, sheet.grid.last)
    for price in PRICE_LIST:
        _lay_price(sheet, price)
    for section in SECTIONS:
        if section.table in NAMED_TABLES:
            lay_table(sheet, [section], section.level, dict(shape))


def _lay_price(sheet: SheetLayout, price: Price) -> None:
    page, places = sheet.page, sheet.places
    sheet.number_row()
    top, last = page.row, sheet.label(price.label)
    _lay_amount(sheet, price, VALUE)
    page.put(FixedText(page.row, _UNIT, "stepunit", price.unit_text))
    if price.pack is not None:
        _lay_amount(sheet, price.pack, _SIZE)
        page.put(FixedText(page.row, _SIZE_UNIT, "stepunit", price.pack.unit_text))
    for named, col in ((price.dated, _DATED), (price.valid, _VALID), (price.taxed, _TAXED), (price.account, _ACCOUNT)):
        places.put_cell(named, PRICES, page.row, col)
    page.put(Typed(page.row, _DATED, "box", price.dated, 0, format_of(price.dated)))
    page.put(Typed(page.row, _VALID, "box", price.valid, 0, format_of(price.valid)))
    page.put(Typed(page.row, _TAXED, "boxwords", price.taxed, 0, ""))
    page.put(Typed(page.row, _ACCOUNT, "boxwords", price.account, 0, ID_FORMAT))
    page.put(JobText(page.row, _SUPPLIER, "typedwords", _of_row(price, lambda row: row.supplier), wraps=False))
    page.put(JobText(page.row, _FROM, "typedname", _origin(price), wraps=False))
    sheet.end_row()
    sheet.close_label(top, last)


def _lay_amount(sheet: SheetLayout, named: Price | Pack, col: int) -> None:
    sheet.places.put_cell(named, PRICES, sheet.page.row, col)
    sheet.page.put(Typed(sheet.page.row, col, "box", named, 0, format_of(named)))


def _of_row(price: Price, fact: Callable[[PriceRow], CellValue]) -> Callable[[JobInput], CellValue]:
    return lambda job: fact(job.company.price_rows.get(price, PriceRow()))


def _origin(price: Price) -> Callable[[JobInput], CellValue]:
    """Its row in the company book, without the name of the book, which the Log has."""

    def text(job: JobInput) -> CellValue:
        origin = job.company.price_rows.get(price, PriceRow()).origin
        return origin.rpartition(" Prices ")[2]

    return text
