"""What can be declared: givens, factors, prices, lines, checks, cautions, and the sections that hold them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum
from typing import ClassVar

from calc.formula.build import both, correlation, is_given, is_word, opposite, size, when
from calc.formula.kinds import FormulaError, Sort
from calc.formula.levels import JOB, Level
from calc.formula.tree import Expr, Gather, Named
from calc.units.algebra import Unit, unit


class Kind(Enum):
    """How a given is typed."""

    NUMBER = "number"
    SLOPE = "slope"
    CHOICE = "choice"
    TEXT = "text"
    DATE = "date"
    ROW = "row"


class Severity(Enum):
    """How loud a caution is. A stop keeps the bid from being ready until a person accepts it by name."""

    STOP = "stop"
    CAUTION = "caution"
    NOTE = "note"


class Declared(Named):
    """Anything declared: a label, a unit, and the section that it stands in."""

    section: type[Section]
    name: str

    def __init__(self, label: str, unit_text: str = "", sort: Sort = Sort.NUMBER, help_text: str = "") -> None:
        self.label = label
        self.unit_text = unit_text
        self.help = help_text
        self._unit = unit(unit_text)
        self._sort = sort
        self._level: Level | None = None

    @property
    def sort(self) -> Sort:
        return self._sort

    @property
    def unit(self) -> Unit:
        return self._unit

    @property
    def level(self) -> Level:
        return self.section.level if self._level is None else self._level

    @property
    def id(self) -> str:
        """The name that stays the same when a label is reworded: ``Order.trucks``."""
        return f"{self.section.called}.{self.name}"

    def members(self) -> Iterator[tuple[str, Declared]]:
        """What the declaration stands for, in order of evaluation, each with the end of its name."""
        yield "", self

    def is_(self, word: str) -> Expr:
        """Whether a choice is that word. Raises FormulaError when the choice has no such word."""
        words = getattr(self, "words_allowed", None)
        if words is None or word not in words:
            raise FormulaError(f"{self.label} is never {word!r}; it is one of {words}")
        return is_word(self, word)


class Given(Declared):
    """Something a person types, or leaves to its default. A blank optional number is ``none``.

    ``low`` and ``high`` are the hard limits (``over`` a limit that must be exceeded), ``ask_low`` and ``ask_high``
    those outside which the program asks. ``signed`` columns may be negative. ``needed_if`` names a choice and the words
    of it that make this one needed, ``used_if`` those that make it used. A row is typed by its name in the table of
    the level ``rows``, and is its number there.
    """

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
        needed_if: tuple[Given | str, ...] | None = None,
        used_if: tuple[Given | str, ...] | None = None,
        rows: Level | None = None,
    ) -> None:
        super().__init__(label, unit_text, _SORTS[kind], help)
        self.needed_if, self.used_if, self.rows = needed_if, needed_if or used_if, rows
        self.kind, self.default, self.required = kind, default, required
        self.low, self.high, self.over = low, high, over
        self.ask_low, self.ask_high = ask_low, ask_high
        self.signed, self.whole, self.words_allowed, self.example = signed, whole, words, example

    @property
    def header(self) -> str:
        """The header of its column: the label in small letters with the unit."""
        unit_text = "" if self.kind is Kind.DATE else self.unit_text
        return f"{self.label.lower()} {unit_text}".strip()


_SORTS = {
    Kind.ROW: Sort.NUMBER,
    Kind.NUMBER: Sort.NUMBER,
    Kind.SLOPE: Sort.NUMBER,
    Kind.DATE: Sort.NUMBER,
    Kind.CHOICE: Sort.TEXT,
    Kind.TEXT: Sort.TEXT,
}


class Factor(Declared):
    """A number of the trade with its range and its source, which the house book may change.

    On a level of named rows it has one value for each row.
    """

    def __init__(
        self, label: str, unit_text: str, values: tuple[float, ...], low: float | None, high: float | None, source: str
    ) -> None:
        super().__init__(label, unit_text)
        self.values, self.low, self.high, self.source = values, low, high, source
        self._level = JOB if len(values) == 1 else None


class Price(Declared):
    """What something costs, from the house book only: there is no default price. ``none`` until it is given."""

    def __init__(self, label: str, unit_text: str, pack_unit: str, help_text: str) -> None:
        super().__init__(label, unit_text, help_text=help_text)
        self.pack = Pack(f"{label}: size", pack_unit) if pack_unit else None
        self._level = JOB
        if self.pack is not None:
            self.pack._level = JOB

    def members(self) -> Iterator[tuple[str, Declared]]:
        yield "", self
        if self.pack is not None:
            yield "_pack", self.pack


class Pack(Declared):
    """How much one pack of a priced thing holds. ``none`` until it is given."""


class Forced(Declared):
    """What a person forces a line to be, with a reason and a name. ``none`` when the line is left as computed."""

    def __init__(self, label: str, unit_text: str, low: float | None = None) -> None:
        super().__init__(label, unit_text)
        self.low = low


class Line(Declared):
    """A number (or a sentence) that follows from others.

    ``all_rows`` is its total over the rows of its level, where that means something.
    """

    def __init__(self, label: str, unit_text: str, formula: Expr, source: str, adds: bool = False) -> None:
        super().__init__(label, unit_text, formula.sort)
        self.formula, self.source = formula, source
        self.computed: Line | None = None
        self.forced: Forced | None = None
        self.all_rows: Line | None = None
        if adds:
            self.all_rows = Line(label, unit_text, Gather("total", self, JOB), "sum of the rows")
            self.all_rows._level = JOB

    def members(self) -> Iterator[tuple[str, Declared]]:
        if self.computed is not None and self.forced is not None:
            yield "_computed", self.computed
            yield "_forced", self.forced
        yield "", self
        if self.all_rows is not None:
            yield "_all", self.all_rows

    @property
    def is_forced(self) -> Expr:
        """Whether a person forced it. Raises FormulaError for a line that may not be forced."""
        if self.forced is None:
            raise FormulaError(f"{self.label!r} may not be forced")
        return is_given(self.forced)


class Check(Declared):
    """Two routes to one number. ``missed`` is 1 when they differ by more than the tolerance."""

    def __init__(self, label: str, unit_text: str, one: Expr, another: Expr, tolerance: Factor) -> None:
        super().__init__(label, unit_text)
        self.one = Line(f"{label}: one route", unit_text, one, "check")
        self.another = Line(f"{label}: another route", unit_text, another, "check")
        self.tolerance = tolerance
        plain_difference = size(_bare(self.one) - _bare(self.another))
        self.missed = Line(f"{label}: missed", "", when(plain_difference > tolerance, 1, 0), "check")

    def members(self) -> Iterator[tuple[str, Declared]]:
        yield "_one", self.one
        yield "_another", self.another
        yield "_missed", self.missed


def _bare(value: Expr) -> Expr:
    return correlation("", lambda bare: bare, value, source="a tolerance is a plain number")


class Caution(Declared):
    """Something to watch: ``fires`` is 1 when the job earned it, ``found`` and ``number`` say what was found."""

    def __init__(
        self,
        label: str,
        severity: Severity,
        fires: Expr,
        found: Expr,
        number: Expr,
        unit_text: str,
        usual: str,
        do: str,
        source: str,
    ) -> None:
        super().__init__(label)
        if fires.sort is not Sort.FLAG:
            raise FormulaError(f"{label!r}: a caution fires on a yes or no, and {fires.words} is {fires.sort.value}")
        self.severity, self.usual, self.do, self.source = severity, usual, do, source
        self.accepted = Forced(f"Accepted: {label}", "") if severity is Severity.STOP else None
        self.fires = Line(f"{label}: fires", "", when(fires, 1, 0), source)
        self.found = Line(f"{label}: found", "", found, source)
        self.number = Line(f"{label}: number", unit_text, number, source)
        self.open = self._open()

    def _open(self) -> Line | None:
        """For a stop: 1 when it fires and nobody accepted it."""
        if self.accepted is None:
            return None
        is_open = both(self.fires > 0, opposite(is_given(self.accepted)))
        return Line(f"{self.label}: not accepted", "", when(is_open, 1, 0), self.source)

    def members(self) -> Iterator[tuple[str, Declared]]:
        if self.accepted is not None:
            yield "_accepted", self.accepted
        yield "_fires", self.fires
        yield "_found", self.found
        yield "_number", self.number
        if self.open is not None:
            yield "_open", self.open


class Section:
    """A group of declarations of one level. Its docstring is its heading.

    ``table`` is the input sheet that its givens are typed in, ``sheet`` the sheet of the job workbook that its lines
    stand on, ``slots_for`` the line that says how many slots the job needs when the level has slots. ``called`` is
    the name that its lines go by, for a section made by a function.
    """

    called: ClassVar[str] = ""
    title: ClassVar[str] = ""
    heading: ClassVar[str] = ""
    level: ClassVar[Level] = JOB
    table: ClassVar[str] = ""
    sheet: ClassVar[str] = ""
    slots_for: ClassVar[Line | None] = None
    declarations: ClassVar[tuple[Declared, ...]] = ()
    members: ClassVar[tuple[Declared, ...]] = ()

    def __init_subclass__(
        cls,
        *,
        title: str,
        each: Level = JOB,
        table: str = "",
        sheet: str = "",
        slots_for: Line | None = None,
        called: str = "",
    ) -> None:
        super().__init_subclass__()
        own = [(name, value) for name, value in vars(cls).items() if isinstance(value, Declared)]
        cls.called = called or cls.__name__
        cls.title, cls.heading, cls.level = title, " ".join((cls.__doc__ or "").split()), each
        cls.table, cls.sheet, cls.slots_for = table, sheet, slots_for
        cls.declarations = tuple(value for _, value in own)
        members: list[Declared] = []
        for name, value in own:
            value.section, value.name = cls, name
            for ending, member in value.members():
                member.section, member.name = cls, name + ending
                members.append(member)
        cls.members = tuple(members)
        for member in members:
            _check_level(member)


PaperRow = Declared | tuple[Declared, Line]
"""A row of a paper."""


@dataclass(frozen=True)
class Paper:
    """A sheet for one reader: blocks of a heading and the rows that stand under it.

    A row is a declaration, or a declaration with the line that says in words why it is so.
    """

    title: str
    blocks: tuple[tuple[str, tuple[PaperRow, ...]], ...]

    def __init__(self, title: str, *blocks: tuple[str, tuple[PaperRow, ...]]) -> None:
        object.__setattr__(self, "title", title)
        object.__setattr__(self, "blocks", blocks)


def _check_level(member: Declared) -> None:
    if isinstance(member, Line) and not member.formula.level <= member.level:
        raise FormulaError(
            f"{member.label!r} is given once for each {member.level}, and its formula goes by {member.formula.level}: "
            "bring the lower level up with total(), least() or at()"
        )
    if isinstance(member, Factor) and len(member.values) != max(1, len(_words_of(member.level))):
        raise FormulaError(f"{member.label!r} needs one value for each {member.level}")


def _words_of(level: Level) -> tuple[str, ...]:
    return level.axis.words if level.axes else ()
