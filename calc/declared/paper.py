"""What a paper is made of: blocks of facts, tables, sentences, words of the house, lines to sign.

A paper is handed to one reader. It computes nothing: every number on it is brought from where it is computed.
"""

from __future__ import annotations

from dataclasses import dataclass

from calc.declared.line import Line
from calc.declared.section import Declared
from calc.formula.levels import Level

BY_HAND = "____________________"
"""Stands where nobody typed anything, so that a pen can fill it."""

DASH = "-"
"""Stands where nothing has to be said."""


@dataclass(frozen=True)
class Fact:
    """A row: what it is, and its number with its unit, or its words.

    ``named`` is what is shown, None for a blank to fill by hand. ``otherwise`` stands where nobody typed it. ``loud``
    is what the reader looks for first. ``row`` is the row that is shown (from 0) of a line that has several; without it
    its total is, where it has one. ``like`` is a unit whose number format is taken.
    """

    named: Declared | None
    label: str = ""
    otherwise: str = BY_HAND
    loud: bool = False
    row: int | None = None
    like: str = ""

    @property
    def called(self) -> str:
        """The words before it."""
        return self.label or (self.named.label if self.named is not None else "")


@dataclass(init=False, eq=False)
class Facts:
    """A block of facts. ``ticked`` puts a box behind each, to tick when it is on the truck.

    ``only_with`` names a level of typed rows: without any of them the block is left out. ``abreast`` puts numbers two
    in a row.
    """

    title: str
    rows: tuple[Fact, ...]
    ticked: bool
    only_with: Level | None
    abreast: bool

    def __init__(
        self, title: str, *rows: Fact, ticked: bool = False, only_with: Level | None = None, abreast: bool = False
    ) -> None:
        self.title, self.rows = title, rows
        self.ticked, self.only_with, self.abreast = ticked, only_with, abreast


@dataclass(frozen=True)
class Column:
    """A column of a table: a line, an input, fixed words for each row, the cell of a line, or a blank to fill by hand.

    ``wide`` is the wide column of a paper that has one: its words are wrapped.
    """

    head: str
    named: Declared | None = None
    words: tuple[str, ...] = ()
    points_to: Line | None = None
    wide: bool = False
    otherwise: str = DASH
    like: str = ""


@dataclass(init=False, eq=False)
class Table:
    """A row for each row of a level: its name (or its number behind ``called``), then a few columns.

    ``sums`` adds a row below with the totals of the columns that have one.
    """

    title: str
    level: Level
    columns: tuple[Column, ...]
    called: str
    head: str
    sums: bool

    def __init__(
        self,
        title: str,
        level: Level,
        *columns: Column,
        called: str = "",
        head: str = "",
        sums: bool = False,
    ) -> None:
        self.title, self.level, self.columns = title, level, columns
        self.called, self.head, self.sums = called, head, sums


@dataclass(frozen=True)
class RunningList:
    """The slots of each row of a level, side by side and line after line: a list that is read along a tape."""

    title: str
    level: Level
    named: Line
    called: str


@dataclass(init=False, eq=False)
class Sentences:
    """Fixed sentences."""

    title: str
    sentences: tuple[str, ...]

    def __init__(self, title: str, *sentences: str) -> None:
        self.title, self.sentences = title, sentences


@dataclass(frozen=True)
class CompanyText:
    """Words of the contractor's own: each row of a level of typed words, by its name. None typed, none shown."""

    title: str
    words: Declared


@dataclass(frozen=True)
class CautionList:
    """The cautions that the job earned, the loudest first, in words."""

    title: str


@dataclass(init=False, eq=False)
class SignatureLines:
    """Lines for a name and a date, a row for each who signs."""

    title: str
    who: tuple[str, ...]

    def __init__(self, title: str, *who: str) -> None:
        self.title, self.who = title, who


Part = Facts | Table | RunningList | Sentences | CompanyText | CautionList | SignatureLines
"""A block of a paper."""


@dataclass(init=False, eq=False)
class Paper:
    """A paper for one reader: its parts from top to bottom.

    ``describes`` says that it has a wide column beside the first, for words that are wrapped. ``stands`` is the fact
    beside which it is said when a stop keeps the bid from being ready.
    """

    title: str
    reader: str
    parts: tuple[Part, ...]
    describes: bool
    stands: Declared | None

    def __init__(
        self, title: str, reader: str, *parts: Part, describes: bool = False, stands: Declared | None = None
    ) -> None:
        self.title, self.reader, self.parts = title, reader, parts
        self.describes, self.stands = describes, stands
