"""The tree: what a formula is made of, and what it refuses to be made of.

Every node knows its sort (number, flag or words), its unit, its level and how it is said. Operators build nodes;
nothing is computed here. A node that is used as if it had a value raises :class:`FormulaError` with advice.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import NoReturn

from calc.formula.functions import CALL, FUNCTIONS, Function
from calc.formula.levels import JOB, Level
from calc.formula.unit_rules import VERBS
from calc.formula.value_types import FormulaError, ValueType
from calc.units.algebra import COUNTS, PLAIN, Unit


class Expr:
    """A node of a formula."""

    @property
    def sort(self) -> ValueType:
        """What the node gives: a number, unless it says otherwise."""
        return ValueType.NUMBER

    @property
    def unit(self) -> Unit:
        """The unit of a number; the plain unit for flags and words."""
        return PLAIN

    @property
    def level(self) -> Level:
        """What the node has a value for each of."""
        return JOB

    @property
    def words(self) -> str:
        """The node as it is said."""
        return type(self).__name__

    @property
    def words_rank(self) -> int:
        """How tightly its words bind."""
        return CALL

    @property
    def parts(self) -> tuple[Expr, ...]:
        """The nodes it is made of."""
        return ()

    @property
    def zero(self) -> bool:
        """Whether it is the bare 0, which is 0 of any unit."""
        return False

    @property
    def is_one(self) -> bool:
        """Whether it is the bare 1, which is one of whatever is counted beside it."""
        return False

    @property
    def count(self) -> Expr:
        """A number of things as a plain number; FormulaError for what is not counted."""
        if any(name not in COUNTS for name, _ in self.unit.powers):
            raise FormulaError(f"cannot drop the unit of {self.words} [{self.unit}]: it is not a count")
        return UnitCast(self, PLAIN)

    def leaves(self) -> Iterator[Named]:
        """Every named thing the node is made of, in order, repeats included."""
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

    def _no_value(self, asked: str, use: str) -> NoReturn:
        raise FormulaError(f"{self.words} has no value yet, so {asked} cannot ask about it; use {use}")


Operand = Expr | float | str
"""What may stand beside an operator: a node, the numbers 0 and 1, or words."""


@dataclass(frozen=True, eq=False)
class Literal(Expr):
    """A bare 0 or 1, or words in quotes."""

    value: float | str

    @property
    def sort(self) -> ValueType:
        return ValueType.TEXT if isinstance(self.value, str) else ValueType.NUMBER

    @property
    def words(self) -> str:
        return self.value if isinstance(self.value, str) else f"{self.value:g}"

    @property
    def zero(self) -> bool:
        return self.value == 0

    @property
    def is_one(self) -> bool:
        return self.value == 1


@dataclass(frozen=True, eq=False)
class Exact(Expr):
    """A number that is so by definition: its value, its unit, and how it is said ("12 in per ft")."""

    value: float
    exact_unit: Unit
    said: str
    written: str
    """How a spreadsheet formula has it."""

    @property
    def unit(self) -> Unit:
        return self.exact_unit

    @property
    def words(self) -> str:
        return self.said


class Named(Expr):
    """A leaf with a name: something declared. ``calc.declare`` says what kinds there are."""

    label: str

    @property
    def known_level(self) -> Level | None:
        """Its level; None while the section that it stands in is still being written."""
        return self.level

    @property
    def words(self) -> str:
        return self.label

    def leaves(self) -> Iterator[Named]:
        yield self


@dataclass(frozen=True, eq=False)
class Apply(Expr):
    """A function of the table, applied row by row; ``gives`` is the unit that its unit rule found."""

    function: Function
    arguments: tuple[Expr, ...]
    gives: Unit

    @property
    def sort(self) -> ValueType:
        return self.function.sort or self.arguments[-1].sort

    @property
    def unit(self) -> Unit:
        return self.gives

    @property
    def parts(self) -> tuple[Expr, ...]:
        return self.arguments

    @property
    def level(self) -> Level:
        level = JOB
        for part in self.arguments:
            level = level * part.level
        return level

    @property
    def words_rank(self) -> int:
        return self.function.words_rank

    @property
    def words(self) -> str:
        return self.function.words(
            *(bracketed(part.words, part.words_rank, self.function.need(i)) for i, part in enumerate(self.arguments))
        )


def bracketed(text: str, rank: int, need: int) -> str:
    """``text`` in brackets when it binds less tightly than what it stands in needs."""
    return text if rank >= need else f"({text})"


@dataclass(frozen=True, eq=False)
class UnitCast(Expr):
    """A number whose unit is dropped or given by declaration, at the places of the program where that is allowed."""

    part: Expr
    gives: Unit

    @property
    def unit(self) -> Unit:
        return self.gives

    @property
    def parts(self) -> tuple[Expr, ...]:
        return (self.part,)

    @property
    def level(self) -> Level:
        return self.part.level

    @property
    def words_rank(self) -> int:
        return self.part.words_rank

    @property
    def words(self) -> str:
        return self.part.words


def expression(value: Operand) -> Expr:
    """``value`` as a node. A bare number other than 0 and 1 is refused: it needs a name, a unit and a source."""
    if isinstance(value, Expr):
        return value
    if isinstance(value, str):
        return Literal(value)
    if isinstance(value, (int, float)) and not isinstance(value, bool) and value in (0, 1):
        return Literal(float(value))
    raise FormulaError(f"{value!r} stands bare in a formula; declare it with a label, a unit and a source")


def apply(name: str, *operands: Operand) -> Apply:
    """The function ``name`` of the table applied to ``operands``; its unit rule refuses what cannot be meant."""
    function = FUNCTIONS[name]
    arguments = tuple(expression(operand) for operand in operands)
    return Apply(function, arguments, function.unit(VERBS.get(name, name.replace("_", " ")), arguments))
