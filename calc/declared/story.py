"""Where a line is told: the sheets that a person reads, each with sections in one of a few forms.

A story is what a person would say aloud: few numbers, each answer before its reasons. A line that no story tells stands
in the workings of its subject. The order of a story is that of the reader; it is free of the order of evaluation.
"""

from __future__ import annotations

from dataclasses import dataclass

from calc.declared.line import Line
from calc.declared.section import Declared
from calc.formula.levels import Level


@dataclass(frozen=True)
class Lines:
    """Numbers of the whole job, one below another: what it is, its number, how it is worked, its formula.

    Those of ``strong`` are what the section is for. ``note`` says in a few words how to read it.
    """

    title: str
    lines: tuple[Line, ...]
    note: str = ""
    strong: tuple[Line, ...] = ()


@dataclass(frozen=True)
class Step:
    """A column of a table: a line or an input of its level, with a short head where its label is long.

    ``like`` is a unit whose number format is used, for a column of many units.
    """

    named: Declared
    head: str = ""
    like: str = ""

    @property
    def heading(self) -> str:
        """Its head."""
        return self.head or self.named.label


@dataclass(frozen=True)
class Table:
    """A row for each thing of a level, a column for each step, and the total below.

    ``called`` heads the column of names, ``total`` is the name of the last row: without it there is none.
    """

    title: str
    level: Level
    called: str
    steps: tuple[Step, ...]
    total: str = ""
    note: str = ""


@dataclass(frozen=True)
class Found:
    """The same for the rows of a level that this job has, found by their running number.

    ``row`` is a line of the slots: the number of the row that stands in it, 0 in one that is not in use. The total adds
    up what is shown.
    """

    title: str
    row: Line
    called: str
    steps: tuple[Step, ...]
    total: str = ""
    note: str = ""


@dataclass(frozen=True)
class Beside:
    """A row of a pair: what was chosen, the runner-up, and by how much the runner-up is more.

    The difference is worked out of the two where ``more`` is not given and both are numbers.
    """

    label: str
    chosen: Declared
    runner_up: Declared | None = None
    more: Declared | None = None
    strong: bool = False


@dataclass(frozen=True)
class Pair:
    """What was chosen beside the runner-up."""

    title: str
    rows: tuple[Beside, ...]
    note: str = ""


@dataclass(frozen=True)
class Plans:
    """A drawing of each area."""

    title: str
    note: str = ""


Part = Lines | Table | Found | Pair | Plans
"""A section of a sheet of the story."""


@dataclass(frozen=True)
class StorySheet:
    """A sheet of the story: the page of one question, ``about`` says which.

    ``short`` is its name in a jump, ``workings`` the sheet with every other line of its subject.
    """

    name: str
    short: str
    about: str
    workings: str
    parts: tuple[Part, ...]
