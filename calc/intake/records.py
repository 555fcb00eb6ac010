"""The input of a run: each value with what was typed for it and where."""

from __future__ import annotations

from dataclasses import dataclass, field

from calc.declared import Account, Factor, Input, Override, Pack, Price, PriceDay, Taxed
from calc.errors import Finding, Place
from calc.formula.levels import Level

NOT_GIVEN = float("nan")
"""The value of an optional number that was not typed."""

DEFAULT = "default"
"""The origin of a value that was not typed."""

REFUSED = "refused"
"""The origin of a value that was typed and cannot be read: it is reported once, and its job is not written."""

ACKNOWLEDGED = "acknowledged"
"""What an acknowledged stop has as its typed value."""

EDGE_COLUMN = "edge column"
"""The origin of an edge's kind when the edge was typed in a column of Areas."""


@dataclass(frozen=True, slots=True)
class Entry:
    """A value in its declared unit, the arithmetic that gives it, what was typed, and the cell it was typed in.

    ``typed`` includes the unit where it was not the declared one, so that it means the same wherever it is read.
    ``notes`` is the text in the column notes of a fact or an override.
    """

    value: float | str
    formula: str = ""
    typed: str = ""
    origin: str = DEFAULT
    reason: str = ""
    who: str = ""
    notes: str = ""
    feet_and_inches: bool = False

    @classmethod
    def not_typed(cls, given: Input, origin: str = DEFAULT) -> Entry:
        """The entry of an input without a value: the default of ``given``, or :data:`NOT_GIVEN`."""
        return cls(NOT_GIVEN if given.default is None else given.default, origin=origin)


@dataclass
class Row:
    """One typed row of a table below the job.

    ``word`` is its id or name, ``within`` the index of the area that it belongs to.
    """

    word: str
    place: Place
    within: int = 0
    entries: dict[Input, Entry] = field(default_factory=dict)
    refs: dict[str, str] = field(default_factory=dict)
    """The addresses of its cells, blank ones too, by header."""


@dataclass(frozen=True)
class PriceRow:
    """The other columns of a price in the company book, for the Prices sheet."""

    dated: float = NOT_GIVEN
    valid_until: float = NOT_GIVEN
    supplier: str = ""
    taxable: str = ""
    account: str = ""
    origin: str = "not given"
    cell: str = ""
    """Where its price is typed, or would be; blank for an item without a row."""


@dataclass
class CompanyBook:
    """The data of the company, which apply to every job of the run."""

    name: str = ""
    sha256: str = ""
    facts: dict[Input, Entry] = field(default_factory=dict)
    site: dict[Input, Entry] = field(default_factory=dict)
    factors: dict[tuple[Factor, int], Entry] = field(default_factory=dict)
    prices: dict[Price | Pack, Entry] = field(default_factory=dict)
    taxed: dict[Taxed, str] = field(default_factory=dict)
    accounts: dict[Account, str] = field(default_factory=dict)
    days: dict[PriceDay, float] = field(default_factory=dict)
    price_rows: dict[Price, PriceRow] = field(default_factory=dict)
    rows: dict[Level, list[Row]] = field(default_factory=dict)
    books: set[str] = field(default_factory=set)
    """The names of all books with a company table."""


@dataclass
class JobInput:
    """One job as it was typed, with the findings that its Log lists."""

    id: str
    place: Place
    company: CompanyBook
    sha256: str = ""
    entries: dict[Input, Entry] = field(default_factory=dict)
    rows: dict[Level, list[Row]] = field(default_factory=dict)
    overrides: dict[tuple[Override, int], Entry] = field(default_factory=dict)
    findings: list[Finding] = field(default_factory=list)
    refs: dict[str, str] = field(default_factory=dict)
    """The addresses of the cells of its row in Jobs, blank ones too, by header."""


@dataclass
class Intake:
    """The whole input of a run: the jobs in order, and all findings in the order of the sheets."""

    company: CompanyBook
    jobs: list[JobInput] = field(default_factory=list)
    findings: list[Finding] = field(default_factory=list)
