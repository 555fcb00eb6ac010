"""A reader of the words that say how a line is worked, who knows nothing of the program but this page.

    words       a table, or a value
    table       for “row” and “row”: value; for “row”: value         a row that is not named has 0
    value       choice, list, default or suffixed
    choice      A if C, else B          to the end of the words or of the bracket; without else, a condition that fails
                                        gives 0; B may be a choice again
    list        greater of A and B; greatest of A, B and C; smaller of; smallest of. With semicolons where a part has a
                comma. Each part is a sum.
    default     A or, if blank, B
    suffixed    A, rounded up; rounded down; rounded to a whole number, to 2 decimals, to 3 decimals; rounded up to the
                next STEP; to the cent; not below 0; as a date. It goes for everything before it.
    joined      A & B                   texts and counts to one text
    condition   C or D, C and D (never both without brackets), not (C); A > B, ≥, <, ≤, =, ≠, both sides counted to the
                millionth; TEXT is TEXT, is not; NAME is given, is blank; a NAME alone holds if it is above 0
    pick        stands in brackets beside + − × ÷:
                total of NAME; lowest; highest; first row with the lowest (its number); running total of; first;
                previous NAME (first: A); number of the LEVEL; name of the LEVEL; rows of the LEVEL, how many there
                are. With "within the LEVEL" they keep to the rows that belong to the same row of that level.
                NAME in row PLACE, NAME in Row...; they too may be "within". NAME for TEXT, the row with that name that
                goes with this row; total of NAME for “row” and “row”.
                NAME where KEY = A; NAME in the last row where KEY ≤ A; total of NAME where KEY = A, or KEY is TEXT;
                total of NAME with the same KEY; first row with the same KEY.
                row “name” is the number of the row. square root of, e to the power of, natural logarithm of, absolute
                value of, normal probability below, normal density at, normal quantile of, weekday of (1 for Sunday),
                each of one place.
    sum         + and −, then × and ÷, then "squared". A minus before a product turns its sign.
    place       NAME, number, pi, “text” or (words)
    NAME        the longest label that fits; in ‘quotes’ where it holds a sign or a word of this page. Where several
                declarations have one label, it is the one of the line's own section, else the only one of its level;
                any other is followed by the title of its section: Trucks [Order].

A number that is blank counts as 0, and so does its product, and a row that the job does not have. Rounding counts whole
millionths, halves away from zero.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date, timedelta
from statistics import NormalDist
from typing import Any, Protocol

Value = float | str | bool


class Unreadable(Exception):
    """Words that the page above does not allow, or that it leaves open."""


@dataclass(frozen=True)
class Name:
    """A label, and the title of its section where it is said."""

    label: str
    section: str = ""


@dataclass(frozen=True)
class Node:
    """One phrase: what it is, and its parts."""

    kind: str
    parts: tuple[Any, ...] = ()


SUFFIXES = {
    ", rounded up to the next ": "step", ", rounded up": "up", ", rounded down": "down",
    ", rounded to a whole number": "round 1", ", rounded to 2 decimals": "round 100",
    ", rounded to 3 decimals": "round 1000", ", to the cent": "round 100", ", not below 0": "floor",
    ", as a date": "date", " or, if blank, ": "default",
}  # fmt: skip
COMPARISONS = (" ≥ ", " ≤ ", " > ", " < ", " = ", " ≠ ", " is not ", " is ")
FUNCTIONS = {
    "square root of ": math.sqrt,
    "e to the power of ": math.exp,
    "natural logarithm of ": math.log,
    "weekday of ": lambda day: (math.floor(day) - 1) % 7 + 1,
    "absolute value of ": abs,
    "normal probability below ": lambda z: math.erfc(-z / math.sqrt(2)) / 2,
    "normal density at ": lambda z: math.exp(-z * z / 2) / math.sqrt(2 * math.pi),
    "normal quantile of ": lambda p: NormalDist().inv_cdf(p),
}
LISTS = {"greater of ": max, "greatest of ": max, "smaller of ": min, "smallest of ": min}
GATHERED = (
    "running total of ",
    "total of ",
    "highest ",
    "lowest ",
    "first row with the lowest ",
    "previous ",
    "first ",
)


@dataclass
class Parser:
    """Reads one text; ``labels`` and ``levels`` are the names that there are."""

    labels: frozenset[str]
    levels: frozenset[str]
    text: str = ""
    at: int = 0
    lengths: Sequence[int] = field(init=False)

    def __post_init__(self) -> None:
        self.lengths = sorted({len(each) for each in self.labels}, reverse=True)

    def read(self, text: str) -> Node:
        """The phrase of ``text``. Raises :class:`Unreadable`."""
        self.text, self.at = text, 0
        node = self._words()
        if self.at < len(text):
            raise self._stuck("nothing")
        return node

    def _stuck(self, wanted: str) -> Unreadable:
        return Unreadable(f"{wanted} is wanted at | in: {self.text[: self.at]}|{self.text[self.at :]}")

    def _take(self, *tokens: str) -> str:
        """The first of ``tokens`` that stands here, which is passed; or nothing."""
        for token in tokens:
            if self.text.startswith(token, self.at):
                self.at += len(token)
                return token
        return ""

    def _need(self, *tokens: str) -> str:
        found = self._take(*tokens)
        if not found:
            raise self._stuck(" or ".join(map(repr, tokens)))
        return found

    def _sees(self, *tokens: str) -> bool:
        return any(self.text.startswith(token, self.at) for token in tokens)

    def _words(self) -> Node:
        return self._table() if self._sees("for “") else self._choice()

    def _table(self) -> Node:
        cases: dict[str, Node] = {}
        self._need("for ")
        while True:
            rows = self._quoted_series()
            self._need(": ")
            cases |= dict.fromkeys(rows, self._choice())
            if not self._take("; for "):
                return Node("table", (cases,))

    def _choice(self) -> Node:
        value = self._value()
        if not self._take(" if "):
            return value
        condition = self._either()
        return Node("if", (condition, value, self._choice() if self._take(", else ") else Node("constant", (0.0,))))

    def _value(self) -> Node:
        if chosen := self._take(*LISTS):
            return Node("list", (chosen, *self._series()))
        value = self._joined()
        while suffix := self._take(*SUFFIXES):
            kind = SUFFIXES[suffix]
            if kind == "step":
                value = Node("step", (value, self._place()))
            elif kind == "default":
                return Node("default", (value, self._value()))
            else:
                value = Node(kind, (value,))
        return value

    def _series(self) -> list[Node]:
        parts = [self._sum()]
        while self._take("; and ", "; ", ", ", " and "):
            parts.append(self._sum())
        return parts

    def _joined(self) -> Node:
        parts = [self._either()]
        while self._take(" & "):
            parts.append(self._either())
        return Node("join", tuple(parts)) if len(parts) > 1 else parts[0]

    def _either(self) -> Node:
        parts = [self._comparison()]
        word = " and " if self._sees(" and ") else " or "
        while self._take(word):
            parts.append(self._comparison())
        if len(parts) > 1 and self._sees(" and ", " or "):
            raise self._stuck("a bracket")
        return Node(word.strip(), tuple(parts)) if len(parts) > 1 else parts[0]

    def _comparison(self) -> Node:
        if self._take("not ("):
            inside = self._either()
            self._need(")")
            return Node("not", (inside,))
        left = self._pick()
        if asked := self._take(" is given", " is blank"):
            return Node(asked.strip(), (left,))
        sign = self._take(*COMPARISONS)
        return Node("compare", (sign.strip(), left, self._pick())) if sign else left

    def _pick(self) -> Node:
        if function := self._take(*FUNCTIONS):
            return Node("function", (function, self._place()))
        if self._take("row “"):
            self.at -= 1
            return Node("row called", (self._quoted(),))
        if what := self._take("number of the ", "name of the ", "rows of the "):
            return Node(f"row {what.split()[0]}", (self._level(), self._within()))
        if self._take("first row with the same "):
            return Node("first alike", (self._name(),))
        if how := self._take(*GATHERED):
            return self._gathered(how.strip())
        start = self.at
        if (name := self._maybe_name()) is not None and (picked := self._row_of(name)) is not None:
            return picked
        self.at = start
        return self._sum()

    def _gathered(self, how: str) -> Node:
        name = self._name()
        if how == "total of" and self._take(" with the same "):
            return Node("total alike", (name, self._name()))
        if how == "total of" and self._take(" where "):
            key = self._name()
            self._need(" = ", " is ")
            return Node("total where", (name, key, self._sum()))
        if how == "total of" and self._take(" for "):
            return Node("total of rows", (name, tuple(self._quoted_series())))
        within = self._within()
        if how != "previous":
            return Node(how, (name, within))
        self._need(" (first: ")
        otherwise = self._choice()
        self._need(")")
        return Node(how, (name, within, otherwise))

    def _row_of(self, name: Name) -> Node | None:
        """A pick of one row of ``name``, if the words go on so."""
        if self._take(" where "):
            key = self._name()
            self._need(" = ")
            return Node("where", (name, key, self._sum()))
        if self._take(" in the last row where "):
            key = self._name()
            self._need(" ≤ ")
            return Node("last where", (name, key, self._sum()))
        if self._take(" for "):
            return Node("named row", (name, self._place()))
        if self._take(" in row ") or (self._sees(" in Row ") and self._take(" in ")):
            return Node("row at", (name, self._place(), self._within()))
        return None

    def _within(self) -> str:
        return self._level() if self._take(" within the ") else "job"

    def _level(self) -> str:
        return self._need(*sorted(self.levels, key=len, reverse=True))

    def _sum(self) -> Node:
        if self._take("−"):
            return Node("negative", (self._product(),))
        value = self._product()
        while sign := self._take(" + ", " − "):
            value = Node(sign.strip(), (value, self._product()))
        return value

    def _product(self) -> Node:
        value = self._squared()
        while sign := self._take(" × ", " ÷ "):
            value = Node(sign.strip(), (value, self._squared()))
        return value

    def _squared(self) -> Node:
        value = self._place()
        return Node("×", (value, value)) if self._take(" squared") else value

    def _place(self) -> Node:
        if self._take("("):
            inside = self._words()
            self._need(")")
            return inside
        if self._sees("“"):
            return Node("text", (self._quoted(),))
        if (name := self._maybe_name()) is not None:
            return Node("name", (name,))
        if self._take("pi"):
            return Node("constant", (math.pi,))
        return self._number()

    def _number(self) -> Node:
        end = self.at
        while end < len(self.text) and (self.text[end].isdigit() or self.text[end : end + 2] in _THOUSANDS):
            end += 1
        if end == self.at:
            raise self._stuck("a name or a number")
        digits, self.at = self.text[self.at : end], end
        return Node("constant", (float(digits.replace(",", "")),))

    def _quoted(self) -> str:
        self._need("“")
        end = self.text.find("”", self.at)
        if end < 0:
            raise self._stuck("”")
        quoted, self.at = self.text[self.at : end], end + 1
        return quoted

    def _quoted_series(self) -> list[str]:
        quoted = [self._quoted()]
        while self._sees("; and “", "; “", ", “", " and “") and self._take("; and ", "; ", ", ", " and "):
            quoted.append(self._quoted())
        return quoted

    def _name(self) -> Name:
        name = self._maybe_name()
        if name is None:
            raise self._stuck("a name")
        return name

    def _maybe_name(self) -> Name | None:
        if self._take("‘"):
            label = self.text[self.at : self.text.index("’", self.at)]
            self.at += len(label) + 1
        else:
            label = next((each for each in map(self._here, self.lengths) if each), "")
            self.at += len(label)
        if label not in self.labels:
            return None
        if not self._take(" ["):
            return Name(label)
        section = self.text[self.at : self.text.index("]", self.at)]
        self.at += len(section) + 1
        return Name(label, section)

    def _here(self, length: int) -> str:
        """The label of this length that stands here and ends with its word."""
        label = self.text[self.at : self.at + length]
        ends = not self.text[self.at + length : self.at + length + 1].isalnum()
        return label if ends and label in self.labels else ""


_THOUSANDS = tuple(f",{digit}" for digit in range(10))


def names_in(node: object) -> Iterable[Name]:
    """Every name that is read in a phrase."""
    if isinstance(node, Name):
        yield node
    elif isinstance(node, Node):
        for part in node.parts:
            yield from names_in(part)
    elif isinstance(node, Mapping):
        for part in node.values():
            yield from names_in(part)


def whole_millionths(value: float) -> int:
    """A number in whole millionths, halves away from zero; the last bits of a float do not count."""
    scaled = abs(value) * 1e6
    return int(math.copysign(math.floor(scaled + 0.5 + min(scaled * 4e-16, 0.1)), value))


def _to_step(value: float, step: int, how: str) -> float:
    """A number, counted in millionths, to a multiple of ``step`` millionths."""
    size = abs(whole_millionths(value))
    steps = {"up": -(-size // step), "down": size // step, "near": (2 * size + step) // (2 * step)}[how]
    return math.copysign(steps * step / 1e6, value) if steps else 0.0


def in_words(day: float) -> str:
    """A date, such as Mon Apr 27."""
    if math.isnan(day):
        return "none"
    on = date(1899, 12, 30) + timedelta(days=int(day))
    return f"{on:%a} {on:%b} {on.day}"


def as_text(value: Value) -> str:
    """A part of a text: words, or a count."""
    return value if isinstance(value, str) else "none" if math.isnan(value) else f"{value:.15g}"


@dataclass(frozen=True)
class Row:
    """A row of a level: its number along each axis, and the name that it has there."""

    along: Mapping[str, int]
    names: Mapping[str, str]


class Table(Protocol):
    """The values of one declaration in one job."""

    axes: tuple[str, ...]
    """The axes of its level that have no other below them."""
    rows: Sequence[Row]
    values: Sequence[Value]


@dataclass
class Calculator:
    """Works a phrase out for one row of one line. ``table_of`` gives the values of a name, ``axes_of`` the axes of a
    level, ``names_of`` the names along an axis, those of rows that this job does not have among them."""

    table_of: Callable[[Name], Table]
    axes_of: Mapping[str, tuple[str, ...]]
    rows_of: Mapping[str, Sequence[Row]]
    row: Row
    names_of: Callable[[str], Collection[str]] = lambda _axis: ()

    def value(self, node: Node) -> Value:
        """The value of a phrase; a number that is blank is 0."""
        value = self._raw(node)
        return 0.0 if isinstance(value, float) and math.isnan(value) else value

    def _number(self, node: Node) -> float:
        value = self.value(node)
        if isinstance(value, str):
            raise Unreadable(f"a number is wanted, and {node} is {value!r}")
        return float(value)

    def _raw(self, node: Node) -> Value:
        work = getattr(self, f"_{_SIGNS.get(node.kind, node.kind.replace(' ', '_'))}")
        return work(*node.parts)

    def _same_group(self, table: Table, within: str) -> list[int]:
        """The rows of ``table`` that belong to this row's row of the level ``within``."""
        axes = self.axes_of[within]
        mine = [self.row.along[axis] for axis in axes]
        return [place for place, row in enumerate(table.rows) if [row.along[axis] for axis in axes] == mine]

    def _group(self, name: Name, within: str) -> list[float]:
        table = self.table_of(name)
        return [float(table.values[place]) for place in self._same_group(table, within)]

    def _my_place(self, table: Table) -> int:
        """The row of ``table`` that goes with this one."""
        mine = [self.row.along[axis] for axis in table.axes]
        return next(place for place, row in enumerate(table.rows) if [row.along[axis] for axis in table.axes] == mine)

    def _name(self, name: Name) -> Value:
        table = self.table_of(name)
        if not set(table.axes) <= set(self.row.along):
            raise Unreadable(f"{name.label} has a value for each {' and '.join(table.axes)}, and no row is said")
        return table.values[self._my_place(table)]

    def _text(self, words: str) -> Value:
        return words

    def _constant(self, value: float) -> Value:
        return value

    def _table(self, cases: Mapping[str, Node]) -> Value:
        axes = [axis for axis in self.row.along if cases.keys() <= {*self._names_along(axis)}]
        if len(axes) != 1:
            raise Unreadable(f"rows called {list(cases)} are those of {len(axes)} levels")
        case = cases.get(self.row.names[axes[0]])
        return 0.0 if case is None else self._raw(case)

    def _names_along(self, axis: str) -> Collection[str]:
        return self.names_of(axis) or [row.names[axis] for row in self._rows_along(axis)]

    def _rows_along(self, axis: str) -> Sequence[Row]:
        return next(self.rows_of[level] for level, axes in self.axes_of.items() if axes == (axis,))

    def _if(self, condition: Node, yes: Node, no: Node) -> Value:
        return self._raw(yes if self._holds(condition) else no)

    def _holds(self, condition: Node) -> bool:
        return self._number(condition) > 0

    def _list(self, how: str, *parts: Node) -> Value:
        return float(LISTS[how]([self._number(part) for part in parts]))

    def _step(self, value: Node, step: Node) -> Value:
        size = self._number(step)
        return _to_step(self._number(value) / size, 1_000_000, "up") * size

    def _up(self, value: Node) -> Value:
        return _to_step(self._number(value), 1_000_000, "up")

    def _down(self, value: Node) -> Value:
        return _to_step(self._number(value), 1_000_000, "down")

    def _round(self, scale: int, value: Node) -> Value:
        return _to_step(self._number(value) * scale, 1_000_000, "near") / scale

    def _round_1(self, value: Node) -> Value:
        return self._round(1, value)

    def _round_100(self, value: Node) -> Value:
        return self._round(100, value)

    def _round_1000(self, value: Node) -> Value:
        return self._round(1000, value)

    def _floor(self, value: Node) -> Value:
        return max(0.0, self._number(value))

    def _date(self, value: Node) -> Value:
        return in_words(float(self._raw(value)))

    def _default(self, value: Node, default: Node) -> Value:
        raw = self._raw(value)
        return self._raw(default) if isinstance(raw, float) and math.isnan(raw) else raw

    def _join(self, *parts: Node) -> Value:
        return "".join(as_text(self._raw(part)) for part in parts)

    def _and(self, *parts: Node) -> Value:
        return all(self._holds(part) for part in parts)

    def _or(self, *parts: Node) -> Value:
        return any(self._holds(part) for part in parts)

    def _not(self, part: Node) -> Value:
        return not self._holds(part)

    def _is_given(self, part: Node) -> Value:
        return not math.isnan(float(self._raw(part)))

    def _is_blank(self, part: Node) -> Value:
        return math.isnan(float(self._raw(part)))

    def _compare(self, sign: str, left: Node, right: Node) -> Value:
        if sign in ("is", "is not"):
            one, other = self.value(left), self.value(right)
            if not isinstance(one, str) or not isinstance(other, str):
                raise Unreadable(f"{one!r} {sign} {other!r}: both should be words")
            return (one == other) is (sign == "is")
        a, b = whole_millionths(self._number(left)), whole_millionths(self._number(right))
        return {">": a > b, "≥": a >= b, "<": a < b, "≤": a <= b, "=": a == b, "≠": a != b}[sign]

    def _function(self, which: str, part: Node) -> Value:
        return float(FUNCTIONS[which](self._number(part)))

    def _negative(self, part: Node) -> Value:
        return -self._number(part)

    def _plus(self, one: Node, other: Node) -> Value:
        return self._number(one) + self._number(other)

    def _minus(self, one: Node, other: Node) -> Value:
        return self._number(one) - self._number(other)

    def _times(self, one: Node, other: Node) -> Value:
        return float(self._raw(one)) * float(self._raw(other))

    def _over(self, one: Node, other: Node) -> Value:
        divisor = self._number(other)
        return self._number(one) / divisor if divisor else math.nan

    def _total_of(self, name: Name, within: str) -> Value:
        return math.fsum(self._group(name, within))

    def _highest(self, name: Name, within: str) -> Value:
        return max(self._group(name, within), default=0.0)

    def _lowest(self, name: Name, within: str) -> Value:
        return min(self._group(name, within), default=0.0)

    def _first_row_with_the_lowest(self, name: Name, within: str) -> Value:
        group = self._group(name, within)
        near = [abs(value - min(group)) <= 4e-15 * abs(min(group)) for value in group]
        return near.index(True) + 1.0 if group else 0.0

    def _running_total_of(self, name: Name, within: str) -> Value:
        table = self.table_of(name)
        here = self._my_place(table)
        return math.fsum(float(table.values[place]) for place in self._same_group(table, within) if place <= here)

    def _first(self, name: Name, within: str) -> Value:
        return self._group(name, within)[0]

    def _previous(self, name: Name, within: str, otherwise: Node) -> Value:
        table = self.table_of(name)
        before = self._my_place(table) - 1
        return table.values[before] if before in self._same_group(table, within) else self._raw(otherwise)

    def _row_number(self, level: str, within: str) -> Value:
        mine = {axis: self.row.along[axis] for axis in self.axes_of[level]}
        upper = self.axes_of[within]
        rows = [
            row.along for row in self.rows_of[level] if all(row.along[axis] == self.row.along[axis] for axis in upper)
        ]
        return 1.0 + next(at for at, row in enumerate(rows) if all(row[axis] == mine[axis] for axis in mine))

    def _row_rows(self, level: str, within: str) -> Value:
        upper = self.axes_of[within]
        return float(sum(all(row.along[axis] == self.row.along[axis] for axis in upper) for row in self.rows_of[level]))

    def _row_name(self, level: str, _within: str) -> Value:
        return ", ".join(self.row.names[axis] for axis in self.axes_of[level])

    def _row_called(self, called: str) -> Value:
        numbers = {
            float(place)
            for level, axes in self.axes_of.items()
            if len(axes) == 1
            for place, row in enumerate(self.rows_of[level], 1)
            if row.names[axes[0]] == called
        }
        if len(numbers) != 1:
            raise Unreadable(f"row “{called}” is the number of {len(numbers)} rows")
        return numbers.pop()

    def _row_at(self, name: Name, place: Node, within: str) -> Value:
        table = self.table_of(name)
        group = self._same_group(table, within)
        if not table.rows:
            return math.nan
        return table.values[group[int(self._number(place)) - 1]]

    def _total_of_rows(self, name: Name, rows: Sequence[str]) -> Value:
        return math.fsum(float(self._called(name, row)) for row in rows)

    def _named_row(self, name: Name, which: Node) -> Value:
        return self._called(name, self.value(which))

    def _called(self, name: Name, called: Value) -> Value:
        """The row that is called so along one of its axes, and goes with this row along the others."""
        table = self.table_of(name)
        found = [
            table.values[place]
            for place, row in enumerate(table.rows)
            for named in table.axes
            if row.names[named] == called
            and all(row.along[axis] == self.row.along.get(axis, row.along[axis]) for axis in {*table.axes} - {named})
        ]
        if not found and any(called in self._names_along(axis) for axis in table.axes):
            return 0.0
        if len(found) != 1:
            raise Unreadable(f"{len(found)} rows of {name.label} are called {called}")
        return found[0]

    def _where(self, name: Name, key: Name, wanted: Node) -> Value:
        values, keys, sought = self.table_of(name).values, self.table_of(key).values, self._number(wanted)
        found = [value for value, each in zip(values, keys, strict=True) if each == sought]
        return found[0] if found else math.nan

    def _last_where(self, name: Name, key: Name, wanted: Node) -> Value:
        values, keys, sought = self.table_of(name).values, self.table_of(key).values, self._number(wanted)
        found = [value for value, each in zip(values, keys, strict=True) if float(each) <= sought]
        return found[-1] if found else math.nan

    def _total_where(self, name: Name, key: Name, wanted: Node) -> Value:
        values, keys, sought = self.table_of(name).values, self.table_of(key).values, self.value(wanted)
        return math.fsum(float(value) for value, each in zip(values, keys, strict=True) if each == sought)

    def _total_alike(self, name: Name, key: Name) -> Value:
        values, keys = self.table_of(name).values, self.table_of(key).values
        mine = self._name(key)
        return math.fsum(float(value) for value, each in zip(values, keys, strict=True) if each == mine)

    def _first_alike(self, key: Name) -> Value:
        return list(self.table_of(key).values).index(self._name(key)) + 1.0


_SIGNS = {"+": "plus", "−": "minus", "×": "times", "÷": "over"}
