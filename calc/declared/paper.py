"""The parts of a paper: blocks of facts, tables, sentences, the company's own text, lines to sign.

A paper is for one reader. It computes nothing: every number on it is brought from its own cell.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from calc.declared.checks import Caution
from calc.declared.line import Line
from calc.declared.section import Declared, Section
from calc.formula.levels import Level

BY_HAND = "________________"
"""Shown where nothing was typed, to fill by hand."""

DASH = "-"
"""Shown where there is no text."""


class Columns(Enum):
    """The columns of a paper: for tables of many numbers, for text with a few small ones, or with sums of money."""

    EVEN = "even"
    WORDS = "words"
    SUMS = "sums"


@dataclass(frozen=True)
class Fact:
    """A row: what it is, and its number with its unit, or its words.

    ``named`` is what is shown, None for a blank to fill by hand. ``otherwise`` is shown where nothing was typed. A
    ``prominent`` fact is shown large. ``row`` is the row that is shown (from 0) of a line that has several, and a job
    without that row does not have the fact; without it the total is, where there is one. ``like`` is a unit whose
    number format is used. A fact ``if_any`` leaves its row empty where there is none of it.
    """

    named: Declared | None
    label: str = ""
    otherwise: str = BY_HAND
    prominent: bool = False
    row: int | None = None
    like: str = ""
    if_any: bool = False

    @property
    def called(self) -> str:
        """The label before it."""
        return self.label or (self.named.label if self.named is not None else "")


@dataclass(init=False, eq=False)
class Facts:
    """A block of facts. ``ticked`` puts a check box behind each, to check off when it is loaded.

    ``only_with`` names a level of typed rows: without any of them the block is left out; ``only_without`` names one
    with any of which it is. ``abreast`` puts two
    numbers in a row.
    """

    title: str
    rows: tuple[Fact, ...]
    ticked: bool
    only_with: Level | None
    only_without: Level | None
    abreast: bool

    def __init__(
        self,
        title: str,
        *rows: Fact,
        ticked: bool = False,
        only_with: Level | None = None,
        only_without: Level | None = None,
        abreast: bool = False,
    ) -> None:
        self.title, self.rows = title, rows
        self.ticked, self.only_with, self.only_without, self.abreast = ticked, only_with, only_without, abreast


@dataclass(frozen=True)
class Column:
    """A column of a table: a line, an input, or a blank to fill by hand.

    ``wide`` is the wide column of a paper that has one: its words are wrapped.
    """

    head: str
    named: Declared | None = None
    wide: bool = False
    like: str = ""


@dataclass(init=False, eq=False)
class Table:
    """A row for each row of a level: its name (or its number behind ``called``, or ``names``), then a few columns.

    ``sums`` adds a row below with the totals of the columns that have one, and so does ``total``, which names it. A row
    in which ``used`` is 0 is left empty, to write in; ``note`` says in a few words how the table is read or filled in.
    """

    title: str
    level: Level
    columns: tuple[Column, ...]
    called: str
    head: str
    sums: bool
    total: str
    names: Line | None
    used: Line | None
    note: str

    def __init__(
        self,
        title: str,
        level: Level,
        *columns: Column,
        called: str = "",
        head: str = "",
        sums: bool = False,
        total: str = "",
        names: Line | None = None,
        used: Line | None = None,
        note: str = "",
    ) -> None:
        self.title, self.level, self.columns = title, level, columns
        self.called, self.head, self.names = called, head, names
        self.used, self.note = used, note
        self.sums, self.total = sums or bool(total), total or "Total"


@dataclass(frozen=True)
class Earned:
    """A row of what was earned: its label, the line of the bid, and the line that stands for it when the job is done.

    None is the cost as it turned out, with the estimate where it is not known. ``adds`` is 1, or -1 for what is
    subtracted.
    """

    label: str
    estimate: Line
    actual: Line | None
    adds: int


@dataclass(frozen=True)
class JobCosts:
    """The costs that a job has, each with a box for what it came to.

    ``listed`` gives the number of the cost in each row, from 1, or 0 in a spare row; ``names`` and ``units`` are those
    of all costs in order. The costs of the group ``labor`` are one row, which ``subtotal`` has by group.
    """

    title: str
    listed: Line
    names: tuple[str, ...]
    units: tuple[str, ...]
    quantity: Line
    rate: Line
    amount: Line
    group: Line
    account: Line
    labor: str
    subtotal: Line


@dataclass(frozen=True)
class Actuals:
    """What follows from the boxes of the costs before it: totals, totals by ``group``, and what was earned.

    A box left blank is not known: its estimate is kept, and such rows are counted. ``one_row`` is the group whose costs
    have one box together.
    """

    title: str
    estimate: Line
    group: Line
    one_row: str
    groups: Level
    earned: tuple[Earned, ...]


@dataclass(frozen=True)
class RunningList:
    """The values of each row of a level, side by side and line after line: running measurements along a tape."""

    title: str
    level: Level
    named: Line


@dataclass(init=False, eq=False)
class Sentences:
    """Fixed sentences."""

    title: str
    sentences: tuple[str, ...]

    def __init__(self, title: str, *sentences: str) -> None:
        self.title, self.sentences = title, sentences


@dataclass(frozen=True)
class CompanyText:
    """The contractor's own text: each row of a level of typed text, by its name. None typed, none shown."""

    title: str
    words: Declared


@dataclass(init=False, eq=False)
class CautionList:
    """The active cautions of the job that its reader can act on, most severe first: what is usual, and what to do.

    ``only`` and ``without`` are cautions, or sections of them; without ``only`` all are meant. ``one_line`` leaves out
    what is usual, on a paper that is full; ``most`` is how many it has room for, the most severe; without it all have.
    """

    title: str
    one_line: bool
    most: int | None

    def __init__(
        self,
        title: str,
        *,
        only: tuple[Caution | type[Section], ...] = (),
        without: tuple[Caution | type[Section], ...] = (),
        one_line: bool = False,
        most: int | None = None,
    ) -> None:
        self.title, self.one_line, self.most = title, one_line, most
        self._only, self._without = only, without

    def holds(self, each: Caution) -> bool:
        """Whether a caution is for the reader of the paper."""
        named = {each, each.section}
        return (not self._only or not named.isdisjoint(self._only)) and named.isdisjoint(self._without)


@dataclass(frozen=True)
class BlankLines:
    """So many lines to write on."""

    title: str
    count: int


@dataclass(init=False, eq=False)
class SignatureLines:
    """Lines for a name and a date, a row for each who signs."""

    title: str
    who: tuple[str, ...]

    def __init__(self, title: str, *who: str) -> None:
        self.title, self.who = title, who


Part = (
    Facts
    | Table
    | JobCosts
    | Actuals
    | RunningList
    | Sentences
    | CompanyText
    | CautionList
    | BlankLines
    | SignatureLines
)
"""A block of a paper."""


@dataclass(init=False, eq=False)
class Paper:
    """A paper for one reader: its parts from top to bottom.

    ``columns`` are those of its grid: the wide one beside the first has wrapped text. ``status_beside`` is the fact
    beside which it is shown whether the bid is ready; ``ready`` is what is shown there if it is.
    """

    title: str
    reader: str
    parts: tuple[Part, ...]
    columns: Columns
    status_beside: Declared | None
    ready: str

    def __init__(
        self,
        title: str,
        reader: str,
        *parts: Part,
        columns: Columns = Columns.EVEN,
        status_beside: Declared | None = None,
        ready: str = "for the scope above",
    ) -> None:
        self.title, self.reader, self.parts = title, reader, parts
        self.columns, self.status_beside, self.ready = columns, status_beside, ready

    @property
    def describes(self) -> bool:
        """Whether it has a wide column for text beside the first."""
        return self.columns is not Columns.EVEN
