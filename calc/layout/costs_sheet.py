"""The table of costs: one row per cost, with how its quantity is worked and where its rate comes from."""

from __future__ import annotations

from calc.declared import Line
from calc.formula.value_types import ValueType
from calc.layout.addresses import Block, CellMap
from calc.layout.blocks import head
from calc.layout.line_sheets import CODE, FIGURES, ITEM, QUANTITY, SOURCE, UNIT, WIDTHS, WORKED, format_of
from calc.layout.page import Computed, FormulaText, Number, Page
from calc.layout.styles import ID_FORMAT
from calc.layout.worked import FORMULA_WORDS
from calc.trade.money.cost_rows import ROWS
from calc.trade.money.costs import COST, CostTable

RATE, AMOUNT, TAXED, BOOKED, NUMBER, ACCOUNT, UNTIL, STALE, REMARK, KNOWN, LACKS = range(FIGURES, FIGURES + 11)
"""The columns beside the text of a cost."""

COST_WIDTHS = (*WIDTHS[:REMARK], 30.0, *WIDTHS[REMARK + 1 :])
"""The widths of the sheet, with room for the reason why a cost is 0."""

_COLUMNS: tuple[tuple[Line, int, str], ...] = (
    (CostTable.quantity, QUANTITY, "#,##0.00"),
    (CostTable.rate, RATE, '"$"#,##0.00'),
    (CostTable.amount, AMOUNT, ""),
    (CostTable.taxed, TAXED, ""),
    (CostTable.group, BOOKED, ""),
    (CostTable.account, ACCOUNT, ID_FORMAT),
    (CostTable.known, KNOWN, "0"),
    (CostTable.unpriced, LACKS, "0"),
    (CostTable.last_day, UNTIL, ""),
    (CostTable.expired, STALE, "0"),
    (CostTable.zero_reason, REMARK, ""),
)
_HEADS = {
    ITEM: "Cost", QUANTITY: "Quantity", UNIT: "Unit", WORKED: "How it is worked", CODE: "Formula", SOURCE: "Rate from",
    NUMBER: "No.",
}  # fmt: skip


def lay_costs(page: Page, places: CellMap) -> None:
    """The table, and the sum of its amounts below it."""
    for col in range(LACKS + 1):
        page.words(col, CostTable.title if col == ITEM else "", "section")
    page.next()
    page.words(ITEM, CostTable.heading, "heading")
    page.next()
    for col, text in _HEADS.items():
        head(page, page.row, col, text)
    for line, col, _ in _COLUMNS[1:]:
        head(page, page.row, col, line.label)
    block = Block(page.name, COST, page.row + 1, len(ROWS), False, {COST: NUMBER}, ITEM)
    for line, col, _ in _COLUMNS:
        places.put_range(line, block, col)
    page.next()
    for index in range(len(ROWS)):
        _lay_cost(page, index)
        page.next()
    page.next()
    _lay_sums(page, places)
    page.next()


def _lay_cost(page: Page, index: int) -> None:
    cost = ROWS[index]
    page.words(ITEM, cost.label, "label")
    page.words(UNIT, cost.unit_text, "unit")
    page.words(WORKED, FORMULA_WORDS.of_case(CostTable.quantity, cost.quantity))
    page.put(FormulaText(page.row, CODE, "code", CostTable.quantity, index))
    rate = FORMULA_WORDS.of_case(CostTable.rate, cost.rate)
    page.words(SOURCE, f"Prices: {cost.price.label}" if cost.price is not None else rate, "note")
    page.put(Number(page.row, NUMBER, "number", index + 1))
    for line, col, format_text in _COLUMNS:
        role = "sentence" if line.value_type is ValueType.TEXT else "formula"
        page.put(Computed(page.row, col, role, line, index, format_text or format_of(line)))
    page.fit(f"0: {cost.none}", REMARK)


def _lay_sums(page: Page, places: CellMap) -> None:
    for line, col in ((CostTable.amount, AMOUNT), (CostTable.unpriced, LACKS), (CostTable.expired, STALE)):
        if line.all_rows is not None:
            places.put_cell(line.all_rows, page.name, page.row, col)
            page.put(Computed(page.row, col, "sum", line.all_rows, 0, format_of(line)))
    page.words(ITEM, "All costs", "label")
    page.next()
