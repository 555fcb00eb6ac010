"""The house book: who bids, what things cost, the house's own factors, and its usual site conditions."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache

from calc.cells import Book, Cell, Sheet
from calc.declared import Factor, Pack, Price
from calc.errors import Finding, InputRefused, Severity
from calc.intake.facts import origin_of, read_facts
from calc.intake.named_rows import complete, read_named_rows
from calc.intake.records import NOT_GIVEN, CompanyBook, Entry, PriceRow
from calc.intake.schema import (
    COMPANY,
    FACTOR_LIST,
    FACTORS,
    NAMED_TABLES,
    PRICE_LIST,
    PRICES,
    SITE,
    TABLES,
    facts_of,
)
from calc.intake.sheets import Sheets
from calc.intake.spelling import did_you_mean, normalize
from calc.intake.tables import TableRow, read_table
from calc.intake.values import read_choice, read_date, read_number, read_words


def read_company_book(sheets: Sheets, books: Sequence[Book], apart: bool = False) -> tuple[CompanyBook, list[Finding]]:
    """What holds for every job. Blank tables leave the usual factors and no prices.

    ``apart`` says that ``books`` are house books, and hold no jobs.
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
    if FACTORS in sheets:
        findings += _read_factors(company, *sheets[FACTORS])
    if PRICES in sheets:
        findings += _read_prices(company, *sheets[PRICES])
    for book in books:
        sheet = next((each for name, each in book.sheets.items() if normalize(name) == normalize(SITE)), None)
        if sheet is not None:
            facts, found = read_facts(book, sheet, TABLES[SITE], facts_of(SITE), company=True, both=not apart)
            company.site |= {given: entry for (_, given), entry in facts.items()}
            findings += found
    return company, findings


def _read_factors(company: CompanyBook, book: Book, sheet: Sheet) -> list[Finding]:
    rows, findings = read_table(book, sheet, TABLES[FACTORS])
    return findings + [each for row in rows for each in _read_factor(company, row)]


def _read_factor(company: CompanyBook, row: TableRow) -> list[Finding]:
    name = row.cells.get("factor")
    if "value" not in row.cells:
        return []
    if name is None:
        return [_refused(row, row.cells["value"], "A value without a factor.", "Type the factor, or clear the row.")]
    known = {normalize(each.label): each for each in FACTOR_LIST}
    factor = known.get(normalize(str(name.value)))
    if factor is None:
        return [
            _refused(
                row,
                name,
                f'There is no factor "{name.value}".',
                did_you_mean(str(name.value), [each.label for each in FACTOR_LIST]),
            )
        ]
    cell = row.cells["value"]
    try:
        place = _kind_of(factor, row.cells.get("for"))
        if (factor, place) in company.factors:
            raise InputRefused("It stands twice.", "Leave one of the two rows.")
        unit = _typed_unit(row, factor.unit_text)
        entry, _, note = read_number(cell, factor.unit_text, unit, False, False, origin_of(row, cell, company=True))
    except InputRefused as refused:
        return [_refused(row, cell, f"{factor.label}: {refused.found}", refused.remedy)]
    company.factors[factor, place] = entry
    return [*_read_as(row, cell, factor.label, note), *_outside(row, cell, factor, entry)]


def _kind_of(factor: Factor, cell: Cell | None) -> int:
    words = factor.level.axis.words if factor.level.axes else ()
    if not words and cell is not None:
        raise InputRefused("It does not go by kind, and the column for says one.", "Leave the column for blank.")
    if not words:
        return 0
    if cell is None:
        raise InputRefused("It goes by kind, and the column for is blank.", f"Type one of: {', '.join(words)}.")
    return words.index(read_choice(words, cell))


def _typed_unit(row: TableRow, meant: str) -> str:
    cell = row.cells.get("unit")
    return str(cell.value).strip() if cell is not None else meant


def _outside(row: TableRow, cell: Cell, factor: Factor, entry: Entry) -> list[Finding]:
    value = float(entry.value)
    low, high = factor.low, factor.high
    if (low is None or value >= low) and (high is None or value <= high):
        return []
    text = f"{factor.label}: {value:g} {factor.unit_text} is outside the usual {low:g} to {high:g}; is that meant?"
    return [Finding(Severity.ASK, row.at(cell), text)]


def _read_prices(company: CompanyBook, book: Book, sheet: Sheet) -> list[Finding]:
    rows, findings = read_table(book, sheet, TABLES[PRICES])
    seen: set[Price] = set()
    for row in rows:
        findings += _read_price(company, row, seen)
    return findings


@cache
def _prices_by_name() -> dict[str, Price]:
    return {normalize(each.label): each for each in PRICE_LIST}


def _read_price(company: CompanyBook, row: TableRow, seen: set[Price]) -> list[Finding]:
    name = row.cells.get("item")
    if name is None:
        return [_refused(row, None, "A price without an item.", "Type the item, or clear the row.")]
    price = _prices_by_name().get(normalize(str(name.value)))
    if price is None:
        return [
            Finding(
                Severity.NOTE,
                row.at(name),
                f'No rule asks the price of "{name.value}", so it is passed over.',
                did_you_mean(str(name.value), [each.label for each in PRICE_LIST]),
            )
        ]
    if price in seen:
        return [_refused(row, name, f'The price of "{name.value}" stands twice.', "Leave one of the two rows.")]
    seen.add(price)
    findings: list[Finding] = []
    for label, declared in (("price", price), ("size", price.pack)):
        if label in row.cells and declared is not None:
            findings += _read_amount(company, row, row.cells[label], declared)
    if price.pack is None and "size" in row.cells:
        text = f'"{name.value}" is not bought by the pack, so its size is passed over.'
        findings.append(Finding(Severity.NOTE, row.at(row.cells["size"]), text, "Clear the size."))
    company.price_rows[price], found = _price_row(row, price in company.prices)
    if company.price_rows[price].taxable:
        company.taxed[price.taxed] = company.price_rows[price].taxable
    company.days[price.dated] = company.price_rows[price].dated
    company.days[price.valid] = company.price_rows[price].valid_until
    return findings + found


def _read_amount(company: CompanyBook, row: TableRow, cell: Cell, declared: Price | Pack) -> list[Finding]:
    above, _, below = declared.unit_text.partition("/")
    try:
        unit = _unit_of_price(row, declared) if isinstance(declared, Price) else above
        entry, _, note = read_number(cell, above, unit, False, False, origin_of(row, cell, company=True))
        if isinstance(declared, Pack) and float(entry.value) <= 0:
            raise InputRefused("A pack that holds nothing.", f"Type how many {above} one {below} holds.")
    except InputRefused as refused:
        return [_refused(row, cell, f"{declared.label}: {refused.found}", refused.remedy)]
    company.prices[declared] = entry
    return _read_as(row, cell, declared.label, note)


def _unit_of_price(row: TableRow, price: Price) -> str:
    """The unit column says what the price is for; it must be what the rule means."""
    meant = price.unit_text.partition("/")[2]
    cell = row.cells.get("unit")
    typed = normalize(str(cell.value)).removeprefix("$").removeprefix("/").removeprefix("per ").strip() if cell else ""
    if typed and typed not in (meant, f"{meant}s"):
        raise InputRefused(
            f'The price is for one "{typed}", and the rules take it for one {meant}.',
            f"Give the price of one {meant}, and type {meant} as its unit.",
        )
    return "$"


def _price_row(row: TableRow, given: bool) -> tuple[PriceRow, list[Finding]]:
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
                facts[label] = read_words(cell)
        except InputRefused as refused:
            findings.append(_refused(row, cell, f"{label}: {refused.found}", refused.remedy))
    origin = f"{row.place.book} {row.place.sheet} row {row.number}" if given else "not given"
    return PriceRow(
        float(facts.get("dated", NOT_GIVEN)),
        float(facts.get("valid until", NOT_GIVEN)),
        str(facts.get("supplier", "")),
        str(facts.get("taxable", "")),
        str(facts.get("account", "")),
        origin,
    ), findings


def _read_as(row: TableRow, cell: Cell, label: str, note: str) -> list[Finding]:
    return [Finding(Severity.NOTE, row.at(cell), f"{label}: {note}")] if note else []


def _refused(row: TableRow, cell: Cell | None, found: str, remedy: str) -> Finding:
    return Finding(Severity.STOP, row.at(cell), found, remedy)
