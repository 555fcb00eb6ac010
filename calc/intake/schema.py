"""The tables of the input workbooks, derived from the declarations of the inputs."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache

from calc.declared import Caution, Declared, Factor, Input, Line, Override, Price
from calc.formula.divisors import divisors
from calc.formula.levels import JOB, Level
from calc.trade.catalog import SECTIONS
from calc.trade.inputs.areas import SHORT_EDGES
from calc.trade.levels import DISPOSAL, HOLIDAY, ROLE, VEHICLE, WORDING

KEYS = {
    "job": "the id of the job",
    "area": "the id of the area within the job",
    **{level.axis.name: "the name it goes by" for level in (VEHICLE, DISPOSAL, ROLE, WORDING, HOLIDAY)},
}
"""The columns that identify a row, or the job and area that it belongs to."""

FACT_TABLES = {"Company": (), "Site conditions": ("job",)}
"""The tables with one fact per row, with their key columns."""

NAMED_TABLES = ("Vehicles", "Disposal sites", "Wages", "Wording", "Holidays")
"""The tables of the company book whose rows have names."""

COMPANY_TABLES = ("Company", "Main factors", *NAMED_TABLES, "Prices", "Factors")
"""The sheets of the company book. Each may be in a jobs book instead, but not in both."""

JOBS, AREAS, SITE, OVERRIDES = "Jobs", "Areas", "Site conditions", "Overrides"
COMPANY, PRICES, FACTORS, MAIN_FACTORS = "Company", "Prices", "Factors", "Main factors"
FACTOR_TABLES = (MAIN_FACTORS, FACTORS)
"""The sheets with a factor a row: those that most companies set, and all others. Either takes any factor."""
ROW_TABLES = ("Cross-sections", "Outline points", "Deductions", "Edges", "Footings")
"""The tables whose rows belong to an area."""
PLANTS, CHANGES = "Plants", "Changes"

READ_ME, LISTS = "Read me", "Lists"
"""The sheets of a blank book without input: instructions, and the lists of its drop-downs."""

EVERY_JOB = "all"
"""The job of a row of Site conditions in the company book that applies to every job."""

EXAMPLE = "example"
"""The job id of the example rows of a blank book, which are ignored."""


@dataclass(frozen=True)
class Heading:
    """A column of a table: its label, its unit, its help text, and the input that it fills."""

    label: str
    unit: str = ""
    help: str = ""
    given: Input | None = None
    example: str = ""

    @property
    def header(self) -> str:
        """The header in the blank book, label and unit; unique within a table."""
        return f"{self.label} {self.unit}".strip()


@dataclass(frozen=True)
class Table:
    """A sheet of an input workbook: its columns, the level of its rows, and its help text."""

    name: str
    headings: tuple[Heading, ...]
    level: Level = JOB
    help: str = ""

    def has(self, label: str) -> bool:
        """Whether it has a column with that label."""
        return any(heading.label == label for heading in self.headings)


def facts_of(table: str) -> tuple[Input, ...]:
    """The inputs that are typed in ``table``, in order of declaration."""
    return tuple(
        each
        for section in SECTIONS
        if section.table == table
        for each in section.declarations
        if isinstance(each, Input)
    )


_KEY_EXAMPLES = {
    "job": EXAMPLE,
    "area": "A1",
    "vehicle": "dump trailer",
    "site": "Quarry Road fill",
    "role": "laborer",
    "place": "validity",
    "holiday": "Independence Day 2026",
}


def _level_of(table: str) -> Level:
    return next(section.level for section in SECTIONS if section.table == table)


def _key(name: str) -> Heading:
    return Heading(name, "", KEYS[name], example=_KEY_EXAMPLES[name])


def _of_given(given: Input) -> Heading:
    return Heading(given.label.lower(), given.unit_shown, given.help, given, given.example)


def _typed_table(name: str, keys: tuple[str, ...], more: tuple[Heading, ...] = ()) -> Table:
    section = next(section for section in SECTIONS if section.table == name)
    givens = tuple(_of_given(given) for given in facts_of(name))
    notes = tuple(each for each in givens if each.label == "notes")
    headings = (*(_key(key) for key in keys), *(each for each in givens if each not in notes), *more, *notes)
    return Table(name, headings, section.level, section.heading)


def _short_edges() -> tuple[Heading, ...]:
    """The edge columns of Areas: each fills one input of an edge of the area."""
    return tuple(
        Heading(label.lower(), given.unit_text, f"{given.help} For an area that has no row in Edges.", given, "0")
        for _, columns in SHORT_EDGES
        for label, given in columns
    )


def _fact_table(name: str, keys: tuple[str, ...], text: str) -> Table:
    headings = (
        *(_key(key) for key in keys),
        Heading("fact", help="which fact; take it from the list"),
        Heading("value", help="what it is; a bare number is in the unit that stands beside the fact"),
        Heading("unit", help="the unit that a bare number is in; it may be left blank"),
        Heading("notes", help="anything else"),
    )
    return Table(name, headings, JOB, text)


_OVERRIDES = Table(
    OVERRIDES,
    (
        _key("job"),
        _key("area"),
        Heading("line", help="the line that is forced, or the stop that is accepted"),
        Heading("value", help="what it is forced to, in the unit of the line; blank to accept a stop"),
        Heading("reason", help="why; required"),
        Heading("who", help="initials; required"),
        Heading("notes", help="anything else"),
    ),
    JOB,
    "Lines that a person forces, and stops that a person accepts, each with a reason and a name.",
)

_PRICES = Table(
    PRICES,
    (
        Heading("item", help="what is bought; take it from the list"),
        Heading("price", help="what one unit costs, in $"),
        Heading("unit", help="what the price is for"),
        Heading("size", help="how much one pack holds, for what comes in packs"),
        Heading("dated", help="the day of the price, as 2026-03-30"),
        Heading("valid until", help="the last day of the price"),
        Heading("supplier", help="who sells it"),
        Heading("taxable", help="yes or no"),
        Heading("account", help="the account it is booked to"),
        Heading("notes", help="anything else"),
    ),
    JOB,
    "What things cost. There is no default price.",
)

_FACTORS = Table(
    FACTORS,
    (
        Heading("factor", help="which factor; take it from the list"),
        Heading("for", help="the kind it is for, where it goes by kind"),
        Heading("value", help="the company's own value; blank keeps the usual one"),
        Heading("unit", help="the unit that a bare number is in"),
        Heading("usual", help="what is taken when blank"),
        Heading("source", help="where the usual value comes from"),
        Heading("notes", help="anything else"),
    ),
    JOB,
    "The factors that the company sets differently from the usual ones.",
)


def _tables() -> dict[str, Table]:
    tables = (
        _typed_table(JOBS, ("job",)),
        _typed_table(AREAS, ("job", "area"), _short_edges()),
        _fact_table(SITE, ("job",), "Facts of a job, only where they differ from the company's usual ones."),
        *(_typed_table(name, ("job", "area")) for name in ROW_TABLES),
        _typed_table(PLANTS, ("job",)),
        _typed_table(CHANGES, ("job",)),
        _OVERRIDES,
        _fact_table(COMPANY, (), "Who bids."),
        replace(_FACTORS, name=MAIN_FACTORS, help="The dozen factors that most companies set."),
        *(_typed_table(name, (_level_of(name).axis.name,)) for name in NAMED_TABLES),
        _PRICES,
        _FACTORS,
    )
    return {table.name: table for table in tables}


TABLES = _tables()
"""Every table by sheet name."""

WEEK_TABLES = tuple(name for name in TABLES if name not in COMPANY_TABLES)
"""The sheets of the jobs book, in order."""


def everything() -> tuple[Declared, ...]:
    """Every declaration with its members, in order of evaluation."""
    return tuple(member for section in SECTIONS for member in section.members)


INPUTS = tuple(each for each in everything() if isinstance(each, Input))
FACTOR_LIST = tuple(each for each in everything() if isinstance(each, Factor))
PRICE_LIST = tuple(each for each in everything() if isinstance(each, Price))
OVERRIDABLE = {
    each.label.casefold(): each for each in everything() if isinstance(each, Line) and each.override is not None
}
"""The lines that can be overridden, by label in lower case."""
ACKNOWLEDGEABLE = {
    each.label.casefold(): each
    for section in SECTIONS
    for each in section.declarations
    if isinstance(each, Caution) and each.acknowledged is not None
}
"""The stop cautions that can be acknowledged, by label in lower case."""
OVERRIDDEN = tuple(each for each in everything() if isinstance(each, Override))


@cache
def divided_by() -> frozenset[Factor]:
    """The factors that the rules divide by, at once or through other lines: each must be more than 0.

    Inputs declare their own limits: the rules ask first where one that may be 0 divides.
    """
    formulas = (each.formula for each in everything() if isinstance(each, Line))
    return frozenset(found for formula in formulas for found in divisors(formula) if isinstance(found, Factor))
