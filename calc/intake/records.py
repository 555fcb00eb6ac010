"""What was read: each value with what was typed for it and where it stood."""

from __future__ import annotations

from dataclasses import dataclass, field

from calc.declared import Factor, Input, Override, Pack, Price, PriceDay, Taxed
from calc.errors import Finding, Place
from calc.formula.levels import Level

NOT_GIVEN = float("nan")
"""The value of an optional number that was not given."""

DEFAULT = "default"
"""The origin of a value that nobody typed."""

REFUSED = "refused"
"""The origin of a value that was typed and cannot be read: its job is held back, and nothing more is asked of it."""


BY_COLUMN = "by the column"
"""The origin of the kind of an edge that an edge column of Areas gave."""


@dataclass(frozen=True, slots=True)
class Entry:
    """A value as it is computed with, the arithmetic that gives it, what was typed, and the cell it stood in.

    ``typed`` has the unit with it where the header or the unit column said another than the declared one, so that it
    means the same wherever it is read. ``notes`` is what was noted beside a fact or an override.
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
        """The entry of a cell that gave no value: the default of ``given``, or no number."""
        return cls(NOT_GIVEN if given.default is None else given.default, origin=origin)


@dataclass
class Row:
    """One typed row below the job: its id, the place it stood at, the row above that it lies in, and its entries."""

    word: str
    place: Place
    within: int = 0
    entries: dict[Input, Entry] = field(default_factory=dict)
    refs: dict[str, str] = field(default_factory=dict)
    """The cells of the row, blank ones too, by the header of their column."""


@dataclass(frozen=True)
class PriceRow:
    """What the house book says beside a price, for the Prices sheet."""

    dated: float = NOT_GIVEN
    valid_until: float = NOT_GIVEN
    supplier: str = ""
    taxable: str = ""
    account: str = ""
    origin: str = "not given"


@dataclass
class CompanyBook:
    """What holds for every job of the run."""

    name: str = ""
    sha256: str = ""
    facts: dict[Input, Entry] = field(default_factory=dict)
    site: dict[Input, Entry] = field(default_factory=dict)
    factors: dict[tuple[Factor, int], Entry] = field(default_factory=dict)
    prices: dict[Price | Pack, Entry] = field(default_factory=dict)
    taxed: dict[Taxed, str] = field(default_factory=dict)
    days: dict[PriceDay, float] = field(default_factory=dict)
    price_rows: dict[Price, PriceRow] = field(default_factory=dict)
    rows: dict[Level, list[Row]] = field(default_factory=dict)
    books: set[str] = field(default_factory=set)
    """The names of all books that gave it something."""


@dataclass
class JobInput:
    """One job as it was typed."""

    id: str
    place: Place
    company: CompanyBook
    sha256: str = ""
    entries: dict[Input, Entry] = field(default_factory=dict)
    rows: dict[Level, list[Row]] = field(default_factory=dict)
    overrides: dict[tuple[Override, int], Entry] = field(default_factory=dict)
    notes: list[Finding] = field(default_factory=list)
    refs: dict[str, str] = field(default_factory=dict)
    """The cells of its row in Jobs, blank ones too, by the header of their column."""


@dataclass
class Intake:
    """Everything that one run was given: the jobs in order, and all findings in the order of the sheets."""

    company: CompanyBook
    jobs: list[JobInput] = field(default_factory=list)
    findings: list[Finding] = field(default_factory=list)
