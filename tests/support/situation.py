"""Situations that a contractor would recognise, worked by hand: the files in ``tests/situations``.

A file is one job in a sentence, with what is typed for it and what each line must come to::

    situation = "A walk of 36 square feet, 4 inches thick, flush with the lawn"
    source = "common practice, no source: a strip of 36 ft2 at 4 in takes 0.444 yd3"

    [tables]
    Areas = [["length ft", "width ft", "thickness in"], [12, 3, 4]]

    [expect]
    "Slab.net_area" = "12 * 3"
    "Concrete.in_place" = "36 * 4 / 12 / 27"
    "TruckLoad.yards" = ["0.5"]

``tables`` are sheets of the jobs book; a file without Jobs gets one job with only a bid date, and an empty text is
an empty cell. ``[company]`` replaces whole sheets of the company book of ``books.COMPANY``. What is expected stands as
arithmetic (``by_hand.worked``), words in quotes of their own (``"'none'"``, also for a number that is not given). A
line with more than one row takes a list, in row order; rows that the list leaves out must come to 0, as empty truck
slots and the edge columns of Areas that were left blank do. Of a line whose rows have names, such as the table of
costs, ``{ "Form release agent, per job" = "9.5" }`` holds the rows that it names and no others, and with ``others =
"0"`` all the
rest too. Rows without names, such as a ladder of orders, go by number: ``{ 3 = "4.25", 4 = "4.5" }``. A number that a
source gives rounded takes
``{ is = "0.444", within = 0.001 }``, ``within`` being a part of it. ``[work]`` holds figures worked out on the side,
which any expression below them may use by name.
"""

from __future__ import annotations

import math
import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Any

from books import COMPANY, Rows
from calc.declared import Declared
from calc.intake.schema import everything
from folders import TESTS
from hand_arithmetic import side_figures, worked

FOLDER = TESTS / "situations"
ONE_JOB: Rows = [["job", "bid date"], ["one", "2026-04-13"]]
WITHIN = 1e-9
"""How far, as a part of the expected number, the program may be from it."""
OTHERS = "others"
"""Stands for the rows that a file leaves out, where rows go by their names."""
FACTS = {"situation", "source", "tables", "house", "work", "expect"}
NOTHING = 1e-12
"""How far from a true zero floats may end up."""


@dataclass(frozen=True)
class Expected:
    """One row of a line and the arithmetic that it must come to."""

    line: str
    row: int
    arithmetic: str
    within: float = WITHIN
    figures: Mapping[str, Fraction] = field(default_factory=dict)

    def differs(self, got: object) -> str:
        """What is wrong with what the program or a sheet says; empty when nothing is."""
        want = worked(self.arithmetic, self.figures)
        if isinstance(want, str):
            right = got == want or (want == "none" and isinstance(got, float) and math.isnan(got))
            said = repr(want)
        else:
            right = isinstance(got, int | float) and math.isclose(got, want, rel_tol=self.within, abs_tol=NOTHING)
            said = f"{float(want):.12g}"
        where = f"{self.line} row {self.row + 1}"
        return "" if right else f"{where}: expected {self.arithmetic} = {said}, got {got!r}"


@dataclass(frozen=True)
class Situation:
    """A file: what is typed, and what is expected of the lines it names."""

    name: str
    sentence: str
    source: str
    week: dict[str, Rows]
    company: dict[str, Rows]
    figures: dict[str, Fraction]
    expect: dict[str, Any]

    @property
    def unknown(self) -> list[str]:
        """The ids in the file that no declaration goes by, as after a line was renamed."""
        return sorted(self.expect.keys() - _named().keys())

    def expected(self, named: Declared, rows: int) -> Iterator[Expected]:
        """What is expected of each of the ``rows`` rows of a line. Raises ValueError when the file has more."""
        for row, each in sorted(self._by_row(named, rows).items()):
            if row >= rows:
                raise ValueError(f"{self.name}: {named.id} has {rows} row(s) in the job, and the file row {row + 1}")
            facts = each if isinstance(each, dict) else {"is": each}
            yield Expected(named.id, row, facts["is"], facts.get("within", WITHIN), self.figures)

    def _by_row(self, named: Declared, rows: int) -> dict[int, Any]:
        """What the file says of a line, by row from 0: the rows that it names or numbers, or all of them."""
        given = self.expect[named.id]
        if not isinstance(given, dict) or "is" in given:
            listed = given if isinstance(given, list) else [given]
            return dict(enumerate(listed + ["0"] * (rows - len(listed))))
        others = dict.fromkeys(range(rows), given[OTHERS]) if OTHERS in given else {}
        return others | {self._row(named, row): each for row, each in given.items() if row != OTHERS}

    def _row(self, named: Declared, row: str) -> int:
        """The row that goes by a word of its level, or by a number, counted from 0."""
        words = named.level.axis.words if named.level.axes else ()
        if row in words:
            return words.index(row)
        if words or not row.isdecimal():
            raise ValueError(f"{self.name}: {named.id} has no row {row!r}")
        return int(row) - 1


@cache
def situations() -> tuple[Situation, ...]:
    """Every file, in order of name."""
    return tuple(read(path) for path in sorted(FOLDER.glob("*.toml")))


def read(path: Path) -> Situation:
    """One file. Raises ValueError for a fact that is not known."""
    facts = tomllib.loads(path.read_text(encoding="utf-8"))
    unknown = facts.keys() - FACTS
    if unknown:
        raise ValueError(f"{path.name}: {', '.join(sorted(unknown))} is not known")
    week = {"Jobs": ONE_JOB} | _cells(facts["tables"])
    company = COMPANY | _cells(facts.get("house", {}))
    figures = side_figures(facts.get("work", {}))
    return Situation(path.stem, facts["situation"], facts["source"], week, company, figures, facts["expect"])


def declared(name: str) -> Declared:
    """The declaration that goes by an id."""
    return _named()[name]


@cache
def _named() -> dict[str, Declared]:
    return {each.id: each for each in everything()}


def _cells(tables: dict[str, list[list[object]]]) -> dict[str, Rows]:
    return {name: [[None if cell == "" else cell for cell in row] for row in rows] for name, rows in tables.items()}
