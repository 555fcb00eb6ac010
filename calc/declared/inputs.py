"""What comes from outside the rules: inputs, factors, prices and overrides."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import Enum
from functools import cached_property
from typing import Union

from calc.declared.section import Declared
from calc.formula.levels import JOB, Level
from calc.formula.value_types import FormulaError, ValueType
from calc.units.algebra import DATE


class Kind(Enum):
    """How an input is typed."""

    NUMBER = "number"
    SLOPE = "slope"
    CHOICE = "choice"
    TEXT = "text"
    DATE = "date"
    ROW = "row"


MOST = 1_000_000.0
"""The largest number that may be typed where no lower limit is declared: no small job has a larger one."""

LEAST = 1e-6
"""The smallest number that may be typed but 0: the rules count in millionths."""


@dataclass(frozen=True, slots=True)
class Limits:
    """The limits of a number, in its unit, as an :class:`Input` has them."""

    low: float | None = None
    high: float | None = None
    over: float | None = None
    ask_low: float | None = None
    ask_high: float | None = None
    whole: bool = False


Condition = Union["Input", Level, "tuple[Input | str, ...]"]
"""What an input needs: another input that is typed and not 0, rows of a level, or a choice with some of its words."""

Needed = Union["Input", str, Level, "tuple[Input | str, ...]"]
"""A condition as it is declared: an input of the same section may be told by its name there."""


class Input(Declared):
    """Something a person types, or leaves to its default. A blank optional number is ``none``.

    ``low`` and ``high`` are the hard limits (``over`` a limit that must be exceeded), ``ask_low`` and ``ask_high``
    those outside which the program asks. ``signed`` columns may be negative. ``needed_if`` names a choice and the words
    of it that make this one needed, ``used_if`` those that make it used (as ``needed_if``, unless it says otherwise).
    ``needs`` are conditions without which it does nothing, which a finding then says.
    A row is typed by its name in the table of the level ``rows``, and is its number there. ``names`` is the level of
    named rows that the words of a choice name: a word is for jobs that have its row.
    """

    typed = True

    def __init__(
        self,
        label: str,
        unit_text: str,
        kind: Kind,
        *,
        default: float | str | None = None,
        required: bool = False,
        low: float | None = None,
        high: float | None = None,
        over: float | None = None,
        ask_low: float | None = None,
        ask_high: float | None = None,
        signed: bool = False,
        whole: bool = False,
        words: tuple[str, ...] = (),
        help: str = "",
        example: str = "",
        needed_if: tuple[Input | str, ...] | None = None,
        used_if: tuple[Input | str, ...] | None = None,
        needs: tuple[Needed, ...] = (),
        rows: Level | None = None,
        names: Level | None = None,
    ) -> None:
        super().__init__(label, unit_text, _VALUE_TYPES[kind], help)
        self.needed_if, self.used_if, self.rows = needed_if, used_if or needed_if, rows
        self.names, self._needs = names, needs
        self.kind, self.default, self.required = kind, default, required
        self.limits = Limits(low, high, over, ask_low, ask_high, whole)
        self.low, self.high, self.over = low, high, over
        self.ask_low, self.ask_high = ask_low, ask_high
        self.signed, self.whole, self.words_allowed, self.example = signed, whole, words, example

    @cached_property
    def needs(self) -> tuple[Condition, ...]:
        """The conditions without which it does nothing, with the inputs that they name."""
        return tuple(map(self._condition, self._needs))

    def _condition(self, needed: Needed) -> Condition:
        if isinstance(needed, tuple):
            choice, *words = needed
            return (self._named(choice), *words)
        return needed if isinstance(needed, Level) else self._named(needed)

    def _named(self, given: Input | str) -> Input:
        found = getattr(self.section, given) if isinstance(given, str) else given
        assert isinstance(found, Input)
        return found

    @property
    def optional(self) -> bool:
        """Whether it may be none."""
        return self.default is None and not self.required

    def words_offered(self, counts: Mapping[Level, int]) -> tuple[str, ...]:
        """The words that a job with so many rows of each level may choose from."""
        if self.names is None:
            return self.words_allowed
        axis = self.names.axis
        left_out = {*axis.words} - {*axis.words_of(counts)}
        return tuple(word for word in self.words_allowed if word not in left_out)

    @cached_property
    def header(self) -> str:
        """The header of its column: the label in small letters with the unit."""
        return f"{self.label.lower()} {self.unit_shown}".strip()


_VALUE_TYPES = {
    Kind.ROW: ValueType.NUMBER,
    Kind.NUMBER: ValueType.NUMBER,
    Kind.SLOPE: ValueType.NUMBER,
    Kind.DATE: ValueType.NUMBER,
    Kind.CHOICE: ValueType.TEXT,
    Kind.TEXT: ValueType.TEXT,
}


class Factor(Declared):
    """A number of the trade with its range and its source, which the company book may change.

    On a level of named rows it has one value for each row. It must stay ``below`` another factor, if it has one.
    """

    typed = True

    def __init__(
        self,
        label: str,
        unit_text: str,
        values: tuple[float, ...],
        low: float | None,
        high: float | None,
        source: str,
        below: Factor | None = None,
    ) -> None:
        super().__init__(label, unit_text)
        self.below = below
        self.values, self.low, self.high, self.source = values, low, high, source
        self._level = JOB if len(values) == 1 else None

    def check_level(self) -> None:
        """One value, or one for each of the named rows of its level."""
        words = self.level.axis.words if self.level.axes else ()
        if len(self.values) != max(1, len(words)):
            raise FormulaError(f"{self.label!r} needs one value for each {self.level}")


class Price(Declared):
    """What something costs, from the company book only: there is no default price. ``none`` until it is given."""

    def __init__(self, label: str, unit_text: str, pack_unit: str, taxed: bool, help_text: str) -> None:
        super().__init__(label, unit_text, help_text=help_text)
        self.taxed = Taxed(f"{label}: taxed", "yes" if taxed else "no")
        self.taxed._level = JOB
        self.account = Account(f"{label}: account")
        self.account._level = JOB
        self.dated, self.valid = PriceDay(f"{label}: dated"), PriceDay(f"{label}: valid until")
        self.dated._level = self.valid._level = JOB
        self.pack = Pack(f"{label}: size", pack_unit) if pack_unit else None
        self._level = JOB
        if self.pack is not None:
            self.pack._level = JOB

    @property
    def size(self) -> Pack:
        """The size of one pack. Raises FormulaError for a thing that does not come in packs."""
        if self.pack is None:
            raise FormulaError(f"{self.label!r} does not come in packs, so it has no size")
        return self.pack

    def members(self) -> Iterator[tuple[str, Declared]]:
        yield "", self
        if self.pack is not None:
            yield "_pack", self.pack
        yield "_taxed", self.taxed
        yield "_account", self.account
        yield "_dated", self.dated
        yield "_valid", self.valid


class Taxed(Declared):
    """Whether a purchase is taxed: by the company book, else as is usual for its kind."""

    def __init__(self, label: str, default: str) -> None:
        super().__init__(label, "", ValueType.TEXT)
        self.default = default


class Account(Declared):
    """The account that a purchase is booked to, as the company book has it; ``none`` where it has none."""

    def __init__(self, label: str) -> None:
        super().__init__(label, "", ValueType.TEXT)


class PriceDay(Declared):
    """The day of a price, or its last valid day. ``none`` where the company book has none."""

    optional = True

    def __init__(self, label: str) -> None:
        super().__init__(label, DATE)


class Pack(Declared):
    """The size of one pack of a priced thing. ``none`` until it is given."""


class Override(Declared):
    """A value typed to override a line, with a reason and a name, within ``limits``. ``none`` when the line is left as
    computed."""

    typed = optional = True

    def __init__(self, label: str, unit_text: str, limits: Limits = Limits()) -> None:
        super().__init__(label, unit_text)
        self.limits = limits
