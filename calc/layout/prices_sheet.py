"""The sheet Prices: unit prices, each with its source, and the vehicles, sites and wages of the company."""

from __future__ import annotations

from collections.abc import Callable

from calc.declared import Input, Pack, Price, Section
from calc.formula.levels import Level
from calc.intake.records import JobInput, PriceRow
from calc.intake.schema import NAMED_TABLES, PRICE_LIST
from calc.layout.addresses import Block, CellMap
from calc.layout.blocks import head
from calc.layout.line_sheets import format_of, open_page
from calc.layout.page import CellValue, JobText, Number, Page, Typed
from calc.layout.styles import DATE_FORMAT, ID_FORMAT
from calc.model.results import Shape
from calc.trade.catalog import SECTIONS

PRICES = "Prices"
_PRICE_HEADS = (
    "Item",
    "Price",
    "Unit",
    "Container size",
    "Size unit",
    "Dated",
    "Valid until",
    "Taxable",
    "Account",
    "Supplier",
    "From",
)
_PRICE_WIDTHS = (36.0, 11.0, 9.0, 11.0, 10.0, 11.0, 11.0, 9.0, 12.0, 22.0, 26.0)
_VALUE = 1
_BAND = 8  # columns of a band beside the name and the number


def prices_page(places: CellMap, shape: Shape) -> Page:
    """Every price that the rules use, given or not, and the company's vehicles, disposal sites, wages and wording."""
    page = open_page(PRICES, "Prices: from the company book; edit a price here", _PRICE_WIDTHS, _PRICE_HEADS)
    for price in PRICE_LIST:
        _lay_price(page, places, price)
        page.next()
    for section in SECTIONS:
        if section.table in NAMED_TABLES:
            page.next()
            _lay_named(page, places, section, dict(shape)[section.level])
    return page


def _lay_named(page: Page, places: CellMap, section: type[Section], count: int) -> None:
    """A table whose rows have names: the name, the number, and its columns, in bands."""
    level = section.level
    for col in range(len(_PRICE_HEADS)):
        page.words(col, section.title if col == 0 else "", "section")
    page.next()
    page.words(0, section.heading, "heading")
    page.next()
    givens = [each for each in section.declarations if isinstance(each, Input)]
    for start in range(0, len(givens), _BAND):
        head(page, page.row, 0, level.axis.name)
        head(page, page.row, 1, "No.")
        block = Block(PRICES, level, page.row + 1, count, False, {level: 1}, 0)
        for col, given in enumerate(givens[start : start + _BAND], start=2):
            head(page, page.row, col, given.header)
            places.put_range(given, block, col)
            for index in range(count):
                page.put(Typed(block.first + index, col, "factor", given, index, format_of(given) or ID_FORMAT))
        for index in range(count):
            page.put(JobText(block.first + index, 0, "label", _name_of(level, index)))
            page.put(Number(block.first + index, 1, "number", index + 1))
        page.next(count + 2)


def _name_of(level: Level, index: int) -> Callable[[JobInput], CellValue]:
    return lambda job: job.rows[level][index].word


def _lay_price(page: Page, places: CellMap, price: Price) -> None:
    page.words(0, price.label, "label")
    _lay_amount(page, places, price, _VALUE)
    page.words(2, price.unit_text, "unit")
    if price.pack is not None:
        _lay_amount(page, places, price.pack, 3)
        page.words(4, price.pack.unit_text, "unit")
    facts: tuple[tuple[int, Callable[[PriceRow], CellValue], str], ...] = (
        (9, lambda row: row.supplier, ""),
        (10, lambda row: row.origin, ""),
    )
    for col, fact, format_text in facts:
        page.put(JobText(page.row, col, "issue", _of_row(price, fact), format_text))
    for col, day in ((5, price.dated), (6, price.valid)):
        places.put_cell(day, PRICES, page.row, col)
        page.put(Typed(page.row, col, "factor", day, 0, DATE_FORMAT))
    places.put_cell(price.taxed, PRICES, page.row, 7)
    page.put(Typed(page.row, 7, "factor", price.taxed, 0, ""))
    places.put_cell(price.account, PRICES, page.row, 8)
    page.put(Typed(page.row, 8, "factor", price.account, 0, ID_FORMAT))


def _lay_amount(page: Page, places: CellMap, named: Price | Pack, col: int) -> None:
    places.put_cell(named, PRICES, page.row, col)
    page.put(Typed(page.row, col, "factor", named, 0, format_of(named)))


def _of_row(price: Price, fact: Callable[[PriceRow], CellValue]) -> Callable[[JobInput], CellValue]:
    return lambda job: fact(job.company.price_rows.get(price, PriceRow()))
