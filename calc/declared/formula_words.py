"""How a line is worked, in words: its formula, with a name for each declaration that can be no other."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from calc.declared.line import FIXED, Fixed, Line
from calc.declared.section import Declared, Section
from calc.formula import words
from calc.formula.aggregate import ByRow
from calc.formula.levels import Level
from calc.formula.tree import Expr, Named
from calc.formula.words import Phrase

DIFFERS = "Differs by row; the formula stands in the cell"
"""What is said of a table with a formula of its own in each row, when all of them would be too long to read."""

LONGEST = 250
"""The most characters of a table that is said row by row."""


class FormulaWords:
    """The words of the lines of some sections.

    A label that only one declaration has is its name. Of several with the same label, the bare label is the one of the
    line's own section, else the only one of its own level; any other is followed by its section: Trucks [Order].
    """

    def __init__(self, sections: Sequence[type[Section]]) -> None:
        every = [member for section in sections for member in section.members if not member.sums_rows]
        self._everywhere = Counter(member.label for member in every)
        self._by_section = Counter((member.section, member.label) for member in every)
        self._by_level = Counter((member.level, member.label) for member in every)

    def of(self, line: Line) -> str:
        """How ``line`` is worked, in words that are short enough to read."""
        if isinstance(line, Fixed):
            return FIXED
        if line.own_words:
            return line.own_words
        said = self.in_full(line)
        return DIFFERS if len(said) > LONGEST and _has_table(line.formula) else said

    def in_full(self, line: Line) -> str:
        """The words that follow from the formula of ``line``, however long they are."""
        return self.of_case(line, line.formula)

    def of_case(self, line: Line, case: Expr) -> str:
        """The words of one row of a table: ``case`` is its formula."""
        return case.said(lambda named: self._name(named, line.section, line.level)).text

    def _name(self, named: Named, section: type[Section], level: Level) -> Phrase:
        flag = isinstance(named, Line) and named.is_flag
        if not isinstance(named, Declared) or self._is_plain(named, section, level):
            return words.name(named.label, flag=flag)
        return words.name(named.label, named.section.title, flag)

    def _is_plain(self, named: Declared, section: type[Section], level: Level) -> bool:
        """Whether the bare label means ``named`` in a line of this section and level."""
        label = named.label
        if self._everywhere[label] <= 1 or named.section is section:
            return True
        return not self._by_section[section, label] and named.level == level and self._by_level[level, label] == 1


def _has_table(formula: Expr) -> bool:
    return isinstance(formula, ByRow) or any(_has_table(part) for part in formula.parts)
