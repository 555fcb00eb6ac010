"""What stands in the text of a formula: its calls, its literals, its references, and the shape a copy keeps."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property, lru_cache

from openpyxl.formula.tokenizer import Token, Tokenizer
from openpyxl.utils import column_index_from_string, get_column_letter

REFERENCE = re.compile(
    r"(?:(?P<sheet>'(?:[^'\[\]]|'')+'|[^\W\d][\w.]*)!)?"
    r"(?P<column>\$?[A-Z]{1,3})(?P<row>\$?[1-9]\d*)(?::(?P<last_column>\$?[A-Z]{1,3})(?P<last_row>\$?[1-9]\d*))?"
)
"""A cell or a bounded range, with its sheet when that is another one."""


@dataclass(frozen=True)
class Area:
    """The cells that a reference means: a sheet, and rows and columns from 1, both ends in."""

    sheet: str
    row: int
    column: int
    last_row: int
    last_column: int

    @property
    def one_cell(self) -> bool:
        """Is it a single cell?"""
        return (self.row, self.column) == (self.last_row, self.last_column)

    @property
    def backwards(self) -> bool:
        """Does it end before it begins? Such a range takes in the header above an empty block."""
        return self.last_row < self.row or self.last_column < self.column

    def cells(self) -> Iterator[tuple[str, int, int]]:
        """Sheet, row and column of each cell."""
        for row in range(self.row, self.last_row + 1):
            for column in range(self.column, self.last_column + 1):
                yield self.sheet, row, column

    def __str__(self) -> str:
        first = f"{get_column_letter(self.column)}{self.row}"
        last = f"{get_column_letter(self.last_column)}{self.last_row}"
        return f"{self.sheet}!{first}" if self.one_cell else f"{self.sheet}!{first}:{last}"


@dataclass(frozen=True)
class Call:
    """A function in a formula, in capitals, and the tokens of its first argument."""

    name: str
    first: tuple[Token, ...]

    def first_is(self, *names: str, whole: bool = False) -> bool:
        """Does the first argument begin with a call of one of ``names``, and is it ``whole`` that call?"""
        if not self.first or not _opens(self.first[0]) or _name(self.first[0]) not in names:
            return False
        return not whole or _close(self.first, 0) == len(self.first) - 1

    @property
    def first_text(self) -> str:
        """The first argument when it is nothing but a text in quotes, else blank."""
        alone = len(self.first) == 1 and self.first[0].subtype == Token.TEXT
        return self.first[0].value[1:-1] if alone else ""


class Formula:
    """A formula, taken apart; ``text`` has its equals sign."""

    def __init__(self, text: str) -> None:
        self.text = text
        self._tokens = tuple(token for token in Tokenizer(text).items if token.type != Token.WSPACE)

    @cached_property
    def calls(self) -> list[Call]:
        """The functions it calls, in the order they are written."""
        return [Call(_name(token), self._first_argument(at)) for at, token in enumerate(self._tokens) if _opens(token)]

    @cached_property
    def literals(self) -> list[float]:
        """The numbers typed into it."""
        return [float(token.value) for token in self._operands(Token.NUMBER)]

    @cached_property
    def references(self) -> list[str]:
        """The cells, ranges and names it refers to, as written."""
        return [token.value for token in self._operands(Token.RANGE)]

    @cached_property
    def has_error(self) -> bool:
        """Does an error such as ``#REF!`` stand in it?"""
        return any(True for _ in self._operands(Token.ERROR))

    @cached_property
    def operations(self) -> int:
        """How many functions and operators it has."""
        return len(self.calls) + sum(1 for token in self._tokens if token.type == Token.OP_IN)

    def shape(self, row: int, column: int) -> str:
        """The formula with its relative references told as steps from its own cell: a copy has the same shape."""
        return " ".join(
            _steps(token.value, row, column) if token.subtype == Token.RANGE else token.value for token in self._tokens
        )

    def _operands(self, subtype: str) -> Iterator[Token]:
        return (token for token in self._tokens if token.type == Token.OPERAND and token.subtype == subtype)

    def _first_argument(self, opening: int) -> tuple[Token, ...]:
        end = _close(self._tokens, opening)
        depth = 0
        for at in range(opening + 1, end):
            token = self._tokens[at]
            if token.type == Token.SEP and depth == 0:
                return self._tokens[opening + 1 : at]
            depth += _deeper(token)
        return self._tokens[opening + 1 : end]


@lru_cache(maxsize=50_000)
def area(reference: str, sheet: str) -> Area | None:
    """What ``reference`` means in a formula on ``sheet``; ``None`` when it is no bounded reference to cells."""
    match = REFERENCE.fullmatch(reference)
    if match is None:
        return None
    name, column, row, last_column, last_row = match.group("sheet", "column", "row", "last_column", "last_row")
    return Area(
        sheet=name.removeprefix("'").removesuffix("'").replace("''", "'") if name else sheet,
        row=_row(row),
        column=_column(column),
        last_row=_row(last_row or row),
        last_column=_column(last_column or column),
    )


def _opens(token: Token) -> bool:
    return bool(token.type == Token.FUNC and token.subtype == Token.OPEN)


def _name(token: Token) -> str:
    return str(token.value).removesuffix("(").upper()


def _deeper(token: Token) -> int:
    """1 for an opening bracket, -1 for a closing one."""
    return int(token.subtype == Token.OPEN) - int(token.subtype == Token.CLOSE)


def _close(tokens: tuple[Token, ...], opening: int) -> int:
    """The index of the bracket that closes the one at ``opening``."""
    depth = 0
    for at in range(opening, len(tokens)):
        depth += _deeper(tokens[at])
        if depth == 0:
            return at
    raise ValueError("a bracket is not closed")


def _steps(reference: str, row: int, column: int) -> str:
    match = REFERENCE.fullmatch(reference)
    if match is None:
        return reference
    parts = [match["sheet"] or ""]
    for name, text in match.groupdict().items():
        if name == "sheet" or text is None or text.startswith("$"):
            parts.append(text or "")
        elif name.endswith("row"):
            parts.append(f"{_row(text) - row:+}")
        else:
            parts.append(f"{_column(text) - column:+}")
    return "|".join(parts)


def _row(text: str) -> int:
    return int(text.removeprefix("$"))


def _column(text: str) -> int:
    return int(column_index_from_string(text.removeprefix("$")))
