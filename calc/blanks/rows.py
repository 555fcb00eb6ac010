"""What the blank input workbooks hold: rows, messages and drop-down lists, taken from the declarations."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from calc.blanks.usual import factors_of, prices_in_order
from calc.declared import Factor, Input, Kind, Price
from calc.intake.schema import (
    ACKNOWLEDGEABLE,
    AREAS,
    COMPANY_TABLES,
    EVERY_JOB,
    EXAMPLE,
    FACT_TABLES,
    FACTOR_LIST,
    FACTOR_TABLES,
    FACTORS,
    JOBS,
    KEYS,
    LISTS,
    MAIN_FACTORS,
    NAMED_TABLES,
    OVERRIDABLE,
    OVERRIDES,
    PRICE_LIST,
    PRICES,
    SITE,
    TABLES,
    Heading,
    Table,
    facts_of,
)
from calc.intake.spelling import one_of
from calc.layout.sheets import SAFETY
from calc.trade.inputs.job import Site
from calc.trade.inputs.pour import Ordering
from calc.trade.ordering.order import Order

Typed = str | float
"""What a cell holds: text and dimensions as a person types them, a date as 2026-04-13, a price as a number."""

COMPANY_SHEETS = (*COMPANY_TABLES, SITE)
"""The sheets of the company book, in order."""

_YES_NO = ("yes", "no")
_EITHER = "yes or no"

_NEEDED = frozenset({*KEYS, "fact", "line", "reason", "who", "item", "factor"} - {"area"})
"""The columns without a declaration that must not be blank."""

_EXAMPLES: dict[str, dict[str, str]] = {
    SITE: {"fact": Site.fiber_dose.header, "value": Site.fiber_dose.example},
    OVERRIDES: {
        "area": "", "line": Order.quantity.label, "value": Ordering.fixed.example,
        "reason": Ordering.reason.example, "who": "AB",
    },
}  # fmt: skip
"""The examples for sheets whose columns have none of their own."""

_ANY_BOOK = (
    "Click a header to read what to type under it. A heavy line under a header marks a required column. Columns may "
    "be in any order, and you may delete those that you do not use.",
    'Type dimensions the way you write them: 12\' 6", 10-6, 4 1/2", 3.2 m, 45 cm, 100 mm. A number without a '
    "unit is in the unit of its header; a unit that you type overrides the header.",
    "A blank cell means the default, and every default used is listed in the workbook of the job. A zero is a zero.",
    f"A cell with a drop-down list takes a word from that list. All the lists are on the sheet {LISTS}.",
    "The cells are formatted as text, so that 1/2 and 24-03 stay as typed. Paste values only, and do not merge cells.",
)
_LAST = f"{SAFETY} The local code, the city's standard details and the mix supplier take precedence over this book."
JOBS_WORDS = (
    f"Only {JOBS} and {AREAS} are required: one row in {JOBS} per job, and one row in {AREAS} per piece of slab, with "
    "the id of its job.",
    *_ANY_BOOK,
    f"Rows with the job {EXAMPLE} are ignored: leave them, or type over them.",
    f"{SITE} holds what differs on one job. {OVERRIDES} overrides a line or acknowledges a stop, with a reason and "
    "initials.",
    "Company data, prices and factors are in the company book, company.xlsx, in the same folder as this book.",
    _LAST,
)
"""How to fill in the jobs book."""

MORE_SHEETS = (
    "This book has what usual jobs need. The full one also has Edges, Deductions, Outline points and Changes, and the "
    "seldom columns of Areas, such as slopes, reinforcement and old slabs: flatwork blank FILE.xlsx --full. A column "
    "that is missing here may also be added by hand."
)
"""The line about the full book."""

COMPANY_WORDS = (
    "Keep this book in the folder of the jobs books, as company.xlsx. It holds what is the same for every job.",
    *_ANY_BOOK,
    f"{PRICES} has one row per item. There is no default price: a line that needs a missing price says so.",
    f"{MAIN_FACTORS} has the dozen factors that most companies set, {FACTORS} the others. A blank value means the "
    "usual value, which is shown beside it.",
    f"{SITE} holds what usually applies: its rows have the job {EVERY_JOB}. The jobs book says where a job differs.",
    _LAST,
)
"""How to fill in the company book."""


@dataclass
class Row:
    """A row by header: its cells, those that are ``printed`` and not for typing, and the messages on its cells.

    ``words`` are those that its value is one of, when it is a choice.
    """

    cells: dict[str, Typed]
    example: bool = False
    printed: frozenset[str] = frozenset()
    messages: dict[str, str] = field(default_factory=dict)
    words: tuple[str, ...] = ()


@dataclass(frozen=True)
class DropDownList:
    """The words of one drop-down list, and the columns that explain each word."""

    title: str
    words: tuple[str, ...]
    beside: tuple[tuple[str, tuple[str, ...]], ...] = ()


def example_row(table: Table) -> Row:
    """The example row of a sheet; an input that the choices leave unused is blank."""
    cells: dict[str, Typed] = {heading.header: _example(table, heading) for heading in table.headings}
    if table.name in NAMED_TABLES:
        cells[table.level.axis.name] = EXAMPLE
    return Row(cells, example=True)


def _example(table: Table, heading: Heading) -> str:
    given = heading.given
    if given is None:
        return _EXAMPLES.get(table.name, {}).get(heading.label, heading.example)
    if given.section.table != table.name or (given.used_if is not None and not _holds(given.used_if)):
        return ""
    return str(_usual_word(given)) if given.kind is Kind.CHOICE else heading.example


def _usual_word(choice: Input) -> float | str | None:
    return choice.example or choice.default


def _holds(condition: tuple[Input | str, ...] | None) -> bool:
    """Whether the usual word of the choice of a condition meets it."""
    if condition is None:
        return False
    choice, *words = condition
    return isinstance(choice, Input) and _usual_word(choice) in words


def needed(heading: Heading) -> bool:
    """Whether the column is required with the usual choices."""
    given = heading.given
    if given is None:
        return heading.label in _NEEDED
    return given.required or _holds(given.needed_if)


def standing_rows(name: str) -> list[Row]:
    """The rows that a sheet of the company book has from the start; none if the company lists its own."""
    if name in FACT_TABLES:
        return [_fact_row(name, given) for given in facts_of(name)]
    if name == PRICES:
        return [_price_row(price) for price in prices_in_order()]
    if name in FACTOR_TABLES:
        return [_factor_row(factor, place) for factor in factors_of(name) for place in range(len(factor.values))]
    if name in NAMED_TABLES and TABLES[name].level.axis.words:
        key = TABLES[name].level.axis.name
        return [Row({key: word}, printed=frozenset({key})) for word in TABLES[name].level.axis.words]
    return []


def _fact_row(name: str, given: Input) -> Row:
    keys = {key: EVERY_JOB for key in FACT_TABLES[name]}
    cells: dict[str, Typed] = {**keys, "fact": given.header}
    return Row(cells, False, frozenset(cells), {"value": _message_of(given, given.help)}, given.words_allowed)


def _price_row(price: Price) -> Row:
    messages = {"price": price.help}
    if price.pack is not None:
        held, _, pack = price.pack.unit_text.partition("/")
        messages["size"] = f"Size of one {pack}, in {held}."
    return Row({"item": price.label, "unit": price.unit_text}, False, frozenset({"item", "unit"}), messages)


def _factor_row(factor: Factor, place: int) -> Row:
    usual = f"{factor.values[place]:.6f}".rstrip("0").rstrip(".")
    cells: dict[str, Typed] = {
        "factor": factor.label, "for": factor.level.axis.words[place] if factor.level.axes else "",
        "unit": factor.unit_text, "usual": usual, "source": _sentence(factor.source),
    }  # fmt: skip
    message = f"Blank means the usual {usual} {factor.unit_text}".rstrip() + "."
    if factor.low is not None and factor.high is not None:
        message += f" The usual range is {factor.low:g} to {factor.high:g}."
    return Row(cells, False, frozenset(cells), {"value": message})


def message(heading: Heading) -> str:
    """The message of a header: what to type under it."""
    if heading.given is not None:
        return _message_of(heading.given, heading.help)
    complete = "required" in heading.help or not needed(heading)
    return _sentence(heading.help) if complete else f"{_sentence(heading.help)} Required."


def _message_of(given: Input, help_text: str) -> str:
    return " ".join(filter(None, (_sentence(help_text), *_how(given), _when_blank(given))))


def _how(given: Input) -> tuple[str, ...]:
    if given.kind is Kind.CHOICE:
        return (f"Type {one_of(given.words_allowed)}.",)
    unit = f"Unit: {given.unit_text}." if given.kind is Kind.NUMBER and given.unit_text else ""
    return unit, f"Example: {given.example}." if given.example else ""


def _when_blank(given: Input) -> str:
    if given.required:
        return "Required."
    if given.needed_if is not None:
        choice, *words = given.needed_if
        asked = choice.label.lower() if isinstance(choice, Input) else ""
        return f"Required if {asked} is {one_of(words)}."
    if given.kind is Kind.CHOICE:
        return f"Blank means {given.default}."
    if given.kind is Kind.NUMBER and given.default is not None:
        return f"Blank means {given.default:g}."
    return "May be blank."


def _sentence(text: str) -> str:
    return f"{text[:1].upper()}{text[1:].rstrip('.')}."


def drop_downs_of(tables: Sequence[Table]) -> list[DropDownList]:
    """Every drop-down list of these sheets, in order."""
    drop_downs = [drop_down_of(table, heading) for table in tables for heading in table.headings]
    drop_downs += [
        _of_choice(table.name, given)
        for table in tables if table.name in FACT_TABLES
        for given in facts_of(table.name)
    ]  # fmt: skip
    return list({drop_down.title: drop_down for drop_down in drop_downs if drop_down.words}.values())


def drop_down_of(table: Table, heading: Heading) -> DropDownList:
    """The drop-down list of a column; one without words if any text may be typed."""
    if heading.given is not None:
        return _of_choice(table.name, heading.given)
    title = f"{table.name}: {heading.header}"
    if heading.label == "fact":
        facts = facts_of(table.name)
        beside = (("what it is", tuple(_sentence(each.help) for each in facts)),)
        return DropDownList(title, tuple(each.header for each in facts), beside)
    if heading.label == "line":
        stops = tuple(each.label for each in ACKNOWLEDGEABLE.values())
        units = (*(each.unit_text for each in OVERRIDABLE.values()), *("a stop" for _ in stops))
        return DropDownList(title, (*(each.label for each in OVERRIDABLE.values()), *stops), (("unit", units),))
    if heading.label == "taxable":
        return DropDownList(_EITHER, _YES_NO)
    words = {
        "item": [each.label for each in PRICE_LIST],
        "factor": [each.label for each in FACTOR_LIST],
        "for": [word for each in FACTOR_LIST if each.level.axes for word in each.level.axis.words],
    }.get(heading.label, [])  # fmt: skip
    return DropDownList(title, tuple(dict.fromkeys(words)))


def _of_choice(name: str, given: Input) -> DropDownList:
    """The drop-down list of a choice; all the columns for yes or no share one."""
    if given.words_allowed == _YES_NO:
        return DropDownList(_EITHER, _YES_NO)
    return DropDownList(f"{name}: {given.label.lower()}", given.words_allowed)
