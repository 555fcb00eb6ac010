"""The expression tree of formulas.

Every node has a value type (number, flag or text), a unit, a level and its formula in words. Operators build nodes;
nothing is computed here. Using a node as if it had a value raises :class:`FormulaError` with advice.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import NoReturn

from calc.formula import words
from calc.formula.functions import FUNCTIONS, Function
from calc.formula.levels import JOB, Level
from calc.formula.unit_rules import VERBS
from calc.formula.value_types import FormulaError, ValueType
from calc.formula.words import Phrase
from calc.units.algebra import COUNTS, PLAIN, Unit


class Expr:
    """A node of a formula."""

    @property
    def value_type(self) -> ValueType:
        """The type of its values: a number, unless a subclass differs."""
        return ValueType.NUMBER

    @property
    def unit(self) -> Unit:
        """The unit of a number; the plain unit for flags and texts."""
        return PLAIN

    @property
    def level(self) -> Level:
        """The level whose rows it has a value for."""
        return JOB

    def said(self, names: Names) -> Phrase:
        """The formula in words, with the names that ``names`` gives to its declarations."""
        raise NotImplementedError(f"no words for {type(self).__name__} with {names}")

    @property
    def words(self) -> str:
        """The formula in words, each declaration by its label."""
        return self.said(_by_label).text

    @property
    def parts(self) -> tuple[Expr, ...]:
        """Its child nodes."""
        return ()

    @property
    def zero(self) -> bool:
        """Whether it is the bare 0, which is 0 of any unit."""
        return False

    @property
    def is_one(self) -> bool:
        """Whether it is the bare 1, which counts as one of what it is combined with."""
        return False

    @property
    def count(self) -> Expr:
        """A number of things as a plain number; FormulaError for what is not counted."""
        if any(name not in COUNTS for name, _ in self.unit.powers):
            raise FormulaError(f"cannot drop the unit of {self.words} [{self.unit}]: it is not a count")
        return UnitCast(self, PLAIN)

    def leaves(self) -> Iterator[Named]:
        """Every declaration in the tree, in order, with repetitions."""
        for part in self.parts:
            yield from part.leaves()

    def __add__(self, other: Operand) -> Expr:
        return apply("add", self, other)

    def __radd__(self, other: Operand) -> Expr:
        return apply("add", other, self)

    def __sub__(self, other: Operand) -> Expr:
        return apply("subtract", self, other)

    def __rsub__(self, other: Operand) -> Expr:
        return apply("subtract", other, self)

    def __mul__(self, other: Operand) -> Expr:
        return apply("multiply", self, other)

    def __rmul__(self, other: Operand) -> Expr:
        return apply("multiply", other, self)

    def __truediv__(self, other: Operand) -> Expr:
        return apply("divide", self, other)

    def __rtruediv__(self, other: Operand) -> Expr:
        return apply("divide", other, self)

    def __gt__(self, other: Operand) -> Expr:
        return apply("more", self, other)

    def __ge__(self, other: Operand) -> Expr:
        return apply("not_less", self, other)

    def __lt__(self, other: Operand) -> Expr:
        return apply("less", self, other)

    def __le__(self, other: Operand) -> Expr:
        return apply("not_more", self, other)

    def __neg__(self) -> Expr:
        return apply("subtract", 0, self)

    def __pow__(self, _other: object) -> NoReturn:
        raise FormulaError(f"{self.words}: '**' knows no units; multiply, or use square() or square_root()")

    def __bool__(self) -> bool:
        self._no_value("'if', 'and', 'or', 'min' and 'max'", "when(), both(), either(), smallest() or largest()")

    def __float__(self) -> float:
        self._no_value("a function of plain numbers", "a function for formulas, such as square_root()")

    def __ceil__(self) -> int:
        self._no_value("math.ceil()", "round_up()")

    def __floor__(self) -> int:
        self._no_value("math.floor()", "round_down()")

    def __abs__(self) -> Expr:
        self._no_value("abs()", "abs_()")

    def __int__(self) -> int:
        self._no_value("int()", "round_down()")

    def __floordiv__(self, _other: object) -> Expr:
        self._no_value("'//'", "round_down() of a division")

    def __mod__(self, _other: object) -> Expr:
        self._no_value("'%'", "round_down() and a subtraction")

    def __round__(self, _digits: int | None = None) -> int:
        self._no_value("round()", "rounded() or money()")

    def __iter__(self) -> Iterator[Expr]:
        self._no_value("'sum' and 'for'", "total()")

    def _no_value(self, construct: str, use: str) -> NoReturn:
        raise FormulaError(f"{self.words} has no value yet, so {construct} cannot be used on it; use {use}")


Operand = Expr | float | str
"""An operand of an operator: a node, the number 0 or 1, or a text."""


@dataclass(frozen=True, eq=False)
class Literal(Expr):
    """A bare 0 or 1, or words in quotes."""

    value: float | str

    @property
    def value_type(self) -> ValueType:
        return ValueType.TEXT if isinstance(self.value, str) else ValueType.NUMBER

    def said(self, names: Names) -> Phrase:
        return words.text(self.value) if isinstance(self.value, str) else words.number(self.value)

    @property
    def zero(self) -> bool:
        return self.value == 0

    @property
    def is_one(self) -> bool:
        return self.value == 1


@dataclass(frozen=True, eq=False)
class Exact(Expr):
    """A number that is exact by definition: its value, its unit, and its text in words."""

    value: float
    exact_unit: Unit
    in_words: str
    in_sheet: str
    """Its text in a spreadsheet formula."""

    @property
    def unit(self) -> Unit:
        return self.exact_unit

    def said(self, names: Names) -> Phrase:
        return Phrase(self.in_words)


@dataclass(frozen=True, eq=False)
class RowCalled(Exact):
    """The number of the row of ``of`` with the name ``row_name``; 0 in a job that does not have that row.

    Its value is the one in a job that has all rows of its level.
    """

    row_name: str
    of: Level

    def said(self, names: Names) -> Phrase:
        return words.prefix("row")(words.text(self.row_name))


class Named(Expr):
    """A leaf with a name: a declaration. ``calc.declared`` has the kinds of them."""

    label: str
    typed = False
    """Whether a person types its cells in the workbook, so that anything may come to stand in them."""

    @property
    def resolved_level(self) -> Level | None:
        """Its level; None while the body of its section is still being executed."""
        return self.level

    @property
    def worked_by(self) -> Expr | None:
        """The formula of its cells; None for what is typed."""
        return None

    def said(self, names: Names) -> Phrase:
        return names(self)

    def leaves(self) -> Iterator[Named]:
        yield self


Names = Callable[[Named], Phrase]
"""Gives a declaration its name in a formula."""


def _by_label(named: Named) -> Phrase:
    return words.name(named.label)


@dataclass(frozen=True, eq=False)
class Apply(Expr):
    """A function of the table, applied row by row; ``result_unit`` is the unit of its result."""

    function: Function
    arguments: tuple[Expr, ...]
    result_unit: Unit

    @property
    def value_type(self) -> ValueType:
        return self.function.value_type or self.arguments[-1].value_type

    @property
    def unit(self) -> Unit:
        return self.result_unit

    @property
    def parts(self) -> tuple[Expr, ...]:
        return self.arguments

    @property
    def level(self) -> Level:
        level = JOB
        for part in self.arguments:
            level = level * part.level
        return level

    def said(self, names: Names) -> Phrase:
        return self.function.words(*(part.said(names) for part in self.arguments))


def bracketed(text: str, rank: int, argument_rank: int) -> str:
    """``text``, in brackets when its precedence is below the required one."""
    return text if rank >= argument_rank else f"({text})"


@dataclass(frozen=True, eq=False)
class UnitCast(Expr):
    """A number whose unit is replaced by declaration; the functions that may do so build it."""

    part: Expr
    result_unit: Unit

    @property
    def unit(self) -> Unit:
        return self.result_unit

    @property
    def parts(self) -> tuple[Expr, ...]:
        return (self.part,)

    @property
    def level(self) -> Level:
        return self.part.level

    def said(self, names: Names) -> Phrase:
        return self.part.said(names)


@dataclass(frozen=True, eq=False)
class Term(UnitCast):
    """A plain number that has a name in mathematics, such as the normal density, made of other functions."""

    called: str
    of: Expr

    def said(self, names: Names) -> Phrase:
        return words.prefix(self.called)(self.of.said(names))


def expression(value: Operand) -> Expr:
    """``value`` as a node.

    Raises FormulaError for a number other than 0 and 1: it needs a name, a unit and a source.
    """
    if isinstance(value, Expr):
        return value
    if isinstance(value, str):
        return Literal(value)
    if isinstance(value, (int, float)) and not isinstance(value, bool) and value in (0, 1):
        return Literal(float(value))
    raise FormulaError(f"{value!r} has no name in a formula; declare it with a label, a unit and a source")


def apply(name: str, *operands: Operand) -> Apply:
    """The function ``name`` of the table applied to ``operands``.

    Its unit rule raises FormulaError for arguments that do not fit.
    """
    function = FUNCTIONS[name]
    arguments = tuple(expression(operand) for operand in operands)
    return Apply(function, arguments, function.unit(VERBS.get(name, name.replace("_", " ")), arguments))


def nodes_of(node: Expr) -> Iterator[Expr]:
    """A node with all nodes of its formula; not those of the lines that it refers to."""
    yield node
    if not isinstance(node, Named):
        for part in node.parts:
            yield from nodes_of(part)
