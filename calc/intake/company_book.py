"""The company book: who bids, prices, the company's own factors, and its usual site conditions."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cache

from calc.cells import Book, Cell, Sheet
from calc.declared import Factor, Pack, Price
from calc.errors import Finding, FindingKind, InputRefused, Place
from calc.intake.facts import origin_of, place_of, read_facts
from calc.intake.named_rows import complete, read_named_rows
from calc.intake.records import NOT_GIVEN, CompanyBook, Entry, PriceRow
from calc.intake.schema import (
    COMPANY,
    FACTOR_LIST,
    FACTOR_TABLES,
    NAMED_TABLES,
    PRICE_LIST,
    PRICES,
    SITE,
    TABLES,
    divided_by,
    facts_of,
)
from calc.intake.sheets import Sheets
from calc.intake.spelling import did_you_mean, normalize
from calc.intake.tables import TableRow, read_table
from calc.intake.values import (
    Remark,
    a_number,
    labeled,
    read_choice,
    read_date,
    read_number,
    read_text,
    refuse_cell_type,
    share_of_money,
)
from calc.trade.money.price import BidPrice, PriceParts


def read_company_book(sheets: Sheets, books: Sequence[Book], apart: bool = False) -> tuple[CompanyBook, list[Finding]]:
    """The data that apply to every job. Without tables there are the usual factors and no prices.

    ``apart`` says that ``books`` are company books without jobs.
    """
    names = [book.name for book in books]
    company = CompanyBook(", ".join(names), ",".join(book.sha256 for book in books), books=set(names))
    findings: list[Finding] = []
    if COMPANY in sheets:
        facts, found = read_facts(*sheets[COMPANY], TABLES[COMPANY], facts_of(COMPANY), company=True)
        company.facts = {given: entry for (_, given), entry in facts.items()}
        findings += found
    for name in NAMED_TABLES:
        if name in sheets:
            findings += read_named_rows(company, *sheets[name], name)
    complete(company)
    for name in FACTOR_TABLES:
        if name in sheets:
            findings += _read_factors(company, *sheets[name], name)
    findings += _not_below(company)
    if PRICES in sheets:
        findings += _read_prices(company, *sheets[PRICES])
    for book in books:
        sheet = next((each for name, each in book.sheets.items() if normalize(name) == normalize(SITE)), None)
        if sheet is not None:
            facts, found = read_facts(book, sheet, TABLES[SITE], facts_of(SITE), company=True, both=not apart)
            company.site |= {given: entry for (_, given), entry in facts.items()}
            findings += found
    return company, findings


def _read_factors(company: CompanyBook, book: Book, sheet: Sheet, name: str) -> list[Finding]:
    rows, findings = read_table(book, sheet, TABLES[name])
    return findings + [each for row in rows for each in _read_factor(company, row)]


def _read_factor(company: CompanyBook, row: TableRow) -> list[Finding]:
    name, cell = row.cells.get("factor"), row.cells.get("value")
    if cell is None:
        return []
    if name is None:
        remedy = "Type the factor, or clear the row."
        return [Finding(FindingKind.MISSING_FACTOR, row.at(cell), "A value without a factor.", remedy)]
    factor = _factors_by_name().get(normalize(str(name.value)))
    if factor is None:
        remedy = did_you_mean(str(name.value), [each.label for each in FACTOR_LIST])
        return [Finding(FindingKind.UNKNOWN_FACTOR, row.at(name), f'There is no factor "{name.value}".', remedy)]
    try:
        index = _kind_index(factor, row.cells.get("for"))
        if (factor, index) in company.factors:
            raise InputRefused(FindingKind.DUPLICATE_FACTOR, "It is typed twice.", "Delete one of the two rows.")
        unit = _typed_unit(row, factor.unit_text)
        origin = origin_of(row, cell, company=True)
        refuse_cell_type(cell, factor.label, a_number(factor.unit_text), factor.unit_text)
        read = read_number(cell, factor.unit_text, unit, False, False, origin)
        entry, remarks = share_of_money(read, cell) if factor in _SHARES else read
        _refuse_wild(factor, float(entry.value))
    except InputRefused as refused:
        return [row.refused(cell, labeled(factor.label, refused))]
    company.factors[factor, index] = entry
    return [*_remarks(row, cell, factor.label, remarks), *_outside_usual(row, cell, factor, entry)]


_SHARES = frozenset({
    BidPrice.tax_rate, BidPrice.contingency_rate, BidPrice.overhead_rate, BidPrice.margin_rate,
    PriceParts.deposit_rate, PriceParts.pour_rate,
})  # fmt: skip
"""The shares of money that a company sets."""

_WHOLE = 100.0


_FAR = 100.0
"""How many times the top of its usual range a factor may be, and how small a part of its foot where it divides."""


def _refuse_wild(factor: Factor, value: float) -> None:
    """Raises InputRefused for a factor far outside its usual range, for one that the rules divide by when it is not
    more than 0, and for a whole share."""
    if factor in _SHARES and value >= _WHOLE:
        remedy = f"Type a share below 100 %; usual is {factor.values[0]:g} %."
        raise InputRefused(FindingKind.OUT_OF_RANGE, f"{value:g} % is all of it, or more.", remedy)
    if factor in divided_by() and value <= 0:
        unit = f" {factor.unit_text}" if factor.unit_text else ""
        remedy = f"Type a number more than 0; usual is {factor.values[0]:g}{unit}."
        raise InputRefused(FindingKind.OUT_OF_RANGE, f"{value:g}{unit} is not more than 0.", remedy)
    high, low = (factor.high or 0.0) * _FAR, (factor.low or 0.0) / _FAR
    if (high and value > high) or (low and factor in divided_by() and value < low):
        found = f"{value:g} is far outside the usual {factor.low:g} to {factor.high:g}."
        raise InputRefused(FindingKind.OUT_OF_RANGE, found, f"Type a number near {factor.values[0]:g}.")


def _not_below(company: CompanyBook) -> Iterator[Finding]:
    """An error for each pair of factors of which the first is not below the second."""
    for factor in FACTOR_LIST:
        if factor.below is not None:
            pair = [company.factors.get((each, 0)) for each in (factor, factor.below)]
            less, more = (
                float(entry.value) if entry else each.values[0]
                for each, entry in zip((factor, factor.below), pair, strict=True)
            )
            typed = next((entry for entry in pair if entry is not None), None)
            if typed is not None and less >= more:
                found = f"{factor.label} is {less:g} {factor.unit_text}, and {factor.below.label} {more:g}."
                remedy = f"Type a {factor.label.lower()} below the {factor.below.label.lower()}."
                yield Finding(FindingKind.OUT_OF_RANGE, place_of(typed, Place(), company), found, remedy)


@cache
def _factors_by_name() -> dict[str, Factor]:
    return {normalize(each.label): each for each in FACTOR_LIST}


def _kind_index(factor: Factor, cell: Cell | None) -> int:
    """Which of the factor's kinds the column for names; 0 for a factor without kinds."""
    kinds = factor.level.axis.words if factor.level.axes else ()
    if not kinds and cell is not None:
        found = "It has one value for every kind, and the column for names one."
        raise InputRefused(FindingKind.INVALID_FACTOR_KIND, found, "Leave the column for blank.")
    if not kinds:
        return 0
    if cell is None:
        found = "It has a value for each kind, and the column for is blank."
        raise InputRefused(FindingKind.INVALID_FACTOR_KIND, found, f"Type one of: {', '.join(kinds)}.")
    return kinds.index(read_choice(kinds, cell))


def _typed_unit(row: TableRow, meant: str) -> str:
    cell = row.cells.get("unit")
    return str(cell.value).strip() if cell is not None else meant


def _outside_usual(row: TableRow, cell: Cell, factor: Factor, entry: Entry) -> list[Finding]:
    value = float(entry.value)
    low, high = factor.low, factor.high
    if (low is None or value >= low) and (high is None or value <= high):
        return []
    found = f"{factor.label}: {value:g} {factor.unit_text} is outside the usual {low:g} to {high:g}. Is that correct?"
    return [Finding(FindingKind.UNUSUAL_VALUE, row.at(cell), found)]


def _read_prices(company: CompanyBook, book: Book, sheet: Sheet) -> list[Finding]:
    rows, findings = read_table(book, sheet, TABLES[PRICES])
    read: set[Price] = set()
    for row in rows:
        findings += _read_price(company, row, read)
    return findings


@cache
def _prices_by_name() -> dict[str, Price]:
    return {normalize(each.label): each for each in PRICE_LIST}


def _read_price(company: CompanyBook, row: TableRow, read: set[Price]) -> list[Finding]:
    """Reads one row of Prices; ``read`` are the prices of the rows before it."""
    name = row.cells.get("item")
    if name is None:
        remedy = "Type the item, or clear the row."
        return [Finding(FindingKind.MISSING_ITEM, row.place, "A price without an item.", remedy)]
    price = _prices_by_name().get(normalize(str(name.value)))
    if price is None:
        found = f'No rule uses the price of "{name.value}". It is ignored.'
        remedy = did_you_mean(str(name.value), [each.label for each in PRICE_LIST])
        return [Finding(FindingKind.UNKNOWN_ITEM, row.at(name), found, remedy)]
    if price in read:
        found = f'The price of "{name.value}" is typed twice.'
        return [Finding(FindingKind.DUPLICATE_PRICE, row.at(name), found, "Delete one of the two rows.")]
    read.add(price)
    findings: list[Finding] = []
    for label, declared in (("price", price), ("size", price.pack)):
        if label in row.cells and declared is not None:
            findings += _read_amount(company, row, row.cells[label], declared)
    if price.pack is None and "size" in row.cells:
        found = f'"{name.value}" is not sold in packs. Its size is ignored.'
        findings.append(Finding(FindingKind.UNUSED_PACK_SIZE, row.at(row.cells["size"]), found, "Clear the size."))
    findings += _without_size(company, row, price)
    details, errors = _price_row(row, price in company.prices)
    company.price_rows[price] = details
    if details.taxable:
        company.taxed[price.taxed] = details.taxable
    if details.account:
        company.accounts[price.account] = details.account
    company.days[price.dated] = details.dated
    company.days[price.valid] = details.valid_until
    return findings + errors


def _without_size(company: CompanyBook, row: TableRow, price: Price) -> list[Finding]:
    """The error of a price by the pack, or of a fee below a size, that has no size: no rule could use it."""
    if price.pack is None or price not in company.prices or "size" in row.cells:
        return []
    place = Place(row.place.book, row.place.sheet, row.refs.get("size", row.cells["price"].ref))
    above, _, below = price.pack.unit_text.partition("/")
    remedy = f"Type its size in {above} a {below}, or clear the price."
    return [Finding(FindingKind.MISSING_PACK_SIZE, place, f"{price.label} has a price and no size.", remedy)]


def _read_amount(company: CompanyBook, row: TableRow, cell: Cell, declared: Price | Pack) -> list[Finding]:
    """Reads the price of an item, or the size of its pack."""
    above, _, below = declared.unit_text.partition("/")
    try:
        unit = _price_unit(row, declared) if isinstance(declared, Price) else above
        refuse_cell_type(cell, declared.label, a_number(above))
        entry, remarks = read_number(cell, above, unit, False, False, origin_of(row, cell, company=True))
        if isinstance(declared, Pack) and float(entry.value) <= 0:
            remedy = f"Type how many {above} are in one {below}."
            raise InputRefused(FindingKind.INVALID_PACK_SIZE, "The size of a pack must be more than 0.", remedy)
    except InputRefused as refused:
        return [row.refused(cell, labeled(declared.label, refused))]
    company.prices[declared] = entry
    return [*_remarks(row, cell, declared.label, remarks), *_doubted_price(row, cell, declared, float(entry.value))]


def _doubted_price(row: TableRow, cell: Cell, declared: Price | Pack, value: float) -> list[Finding]:
    """The question about a price of $0, which is taken as typed."""
    if value or isinstance(declared, Pack):
        return []
    found = f"{declared.label}: its price is $0. Is 0 meant? Clear the cell if the price is not known."
    return [Finding(FindingKind.UNUSUAL_VALUE, row.at(cell), found)]


def _price_unit(row: TableRow, price: Price) -> str:
    """The currency of a price. Raises InputRefused when the unit column is not the unit that the rules use."""
    meant = price.unit_text.partition("/")[2]
    cell = row.cells.get("unit")
    typed = normalize(str(cell.value)).removeprefix("$").removeprefix("/").removeprefix("per ").strip() if cell else ""
    if typed and typed not in (meant, f"{meant}s"):
        found = f'The price is per "{typed}", and the rules use the price per {meant}.'
        remedy = f"Type the price per {meant}, and {meant} as its unit."
        raise InputRefused(FindingKind.WRONG_PRICE_UNIT, found, remedy)
    return "$"


def _price_row(row: TableRow, given: bool) -> tuple[PriceRow, list[Finding]]:
    """The other columns of a price; ``given`` says that the price itself was read."""
    facts: dict[str, float | str] = {}
    findings = []
    for label in ("dated", "valid until", "supplier", "taxable", "account"):
        cell = row.cells.get(label)
        if cell is None:
            continue
        try:
            if label in ("dated", "valid until"):
                facts[label] = read_date(cell)
            elif label == "taxable":
                facts[label] = read_choice(("yes", "no"), cell)
            else:
                facts[label] = read_text(cell)
        except InputRefused as refused:
            findings.append(row.refused(cell, labeled(label, refused)))
    origin = f"{row.place.book} {row.place.sheet} row {row.number}" if given else "not given"
    return PriceRow(
        float(facts.get("dated", NOT_GIVEN)),
        float(facts.get("valid until", NOT_GIVEN)),
        str(facts.get("supplier", "")),
        str(facts.get("taxable", "")),
        str(facts.get("account", "")),
        origin,
        row.refs.get("price", ""),
    ), findings


def _remarks(row: TableRow, cell: Cell, label: str, remarks: Sequence[Remark]) -> list[Finding]:
    return [Finding(each.kind, row.at(cell), f"{label}: {each.text}") for each in remarks]
