"""Input books with something else in them, by chance: in a cell, in a part of the file, in its bytes."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from datetime import datetime
from random import Random

from calc.cells import Book, Cell, Kind, Sheet, column_letters

TEXTS = (
    "", " ", "none", "all", "example", "default", "1/2", "10-6", "10'-6 1/2\"", "3.2 m", "3 gal", "½", "\uff11\uff12",
    "1,5", "1e3", "=1+1", "#N/A", "TRUE", "-3", "+3", "0", "007", "yes", "N", "rectangle", "job", "length ft", "lenght",
    "2026-04-13", "31.12.2026", "tbd", "?", "\u200b", "a\nb", "a\rb", "\u202egnp", "🙂", "\x01", "<5", "A*", "((((((",
    "1" + " " * 50 + "2", "1//2", "1/0", "0/0", "5%", "$5", "1:48", "'", '"', "nan", "inf", "1_000", "\ud7ff",
    "x" * 61, "x" * 2001, "9" * 400, "<r>x</r>", "_x0041_", "a\x0bb", "]]>", "&lt;", "<v>", "\ufffe", "\x85", "\u2028",
)  # fmt: skip
NUMBERS = (0, -1, 1, 2, 5, 12.5, 0.1 + 0.2, 1e-9, -1e-9, 1e15, 1e300, 46125, 2**53, 3.0000001, 400)
DAYS = (datetime(2026, 1, 2), datetime(1900, 1, 1), datetime(2026, 4, 13, 12, 30), datetime(9999, 12, 31))


Grid = dict[str, dict[tuple[int, int], Cell]]
"""The cells of a book by sheet, row and column."""


def grid_of(book: Book) -> Grid:
    """The cells of a book, to be changed."""
    return {
        name: {(row, column): cell for row, cells in sheet.rows for column, cell in cells.items()}
        for name, sheet in book.sheets.items()
    }


def book_of(grid: Grid, like: Book) -> Book:
    """A book of these cells, as the reader would give it."""
    sheets = {}
    for name, cells in grid.items():
        rows: dict[int, dict[int, Cell]] = {}
        for (row, column), cell in sorted(cells.items()):
            rows.setdefault(row, {})[column] = replace(cell, sheet=name, row=row, column=column)
        merged = dict.fromkeys(cell.merged for cell in cells.values() if cell.merged)
        sheets[name] = Sheet(name, tuple(rows.items()), merged_ranges=tuple(merged))
    return replace(like, sheets=sheets)


def _value(chance: Random, cell: Cell) -> Cell:
    value = chance.choice(NUMBERS)
    return replace(cell, kind=Kind.NUMBER, value=value, formula="")


def _text(chance: Random, cell: Cell) -> Cell:
    return replace(cell, kind=Kind.TEXT, value=chance.choice(TEXTS), formula="")


def _slip(chance: Random, cell: Cell) -> Cell:
    """A letter more, less or other than was typed."""
    text = str(cell.value)
    at = chance.randrange(len(text) + 1)
    return replace(
        cell,
        kind=Kind.TEXT,
        value=text[:at] + chance.choice(["", "x", "7", " ", "'", "/"]) + text[at + chance.randrange(2) :],
    )


def _other_kind(chance: Random, cell: Cell) -> Cell:
    kind, value = chance.choice(
        [
            (Kind.BOOLEAN, True), (Kind.BOOLEAN, False), (Kind.ERROR, "#DIV/0!"), (Kind.ERROR, "#N/A"),
            (Kind.UNCOMPUTED, "=A1*2"), (Kind.DURATION, "7:30:00"), (Kind.DATE, chance.choice(DAYS)),
        ]
    )  # fmt: skip
    return replace(cell, kind=kind, value=value)


def _formula(_: Random, cell: Cell) -> Cell:
    return replace(cell, formula="=B1*2")


def _merge(_: Random, cell: Cell) -> Cell:
    return replace(cell, merged=f"{cell.ref}:{column_letters(cell.column + 1)}{cell.row + 1}")


KINDS: tuple[Callable[[Random, Cell], Cell], ...] = (_value, _text, _text, _slip, _other_kind, _formula, _merge)


def change(chance: Random, grid: Grid) -> str:
    """Changes one thing in a book, and says what."""
    name = chance.choice(sorted(grid))
    cells = grid[name]
    if not cells:
        return "nothing"
    place = chance.choice(sorted(cells))
    what = chance.randrange(12)
    if what == 0:
        del cells[place]
        return f"{name}{place} cleared"
    if what == 1:
        return _swap_columns(chance, name, cells)
    if what == 2:
        other = chance.choice(sorted(cells))
        cells[place], cells[other] = cells[other], cells[place]
        return f"{name}{place} and {other} swapped"
    if what == 3:
        other = (place[0] + chance.randrange(3), place[1] + chance.randrange(3))
        cells[other] = replace(cells[place])
        return f"{name}{place} copied to {other}"
    cells[place] = chance.choice(KINDS)(chance, cells[place])
    return f"{name}{place} is {cells[place].kind.name} {cells[place].value!r:.60}"


def _swap_columns(chance: Random, name: str, cells: dict[tuple[int, int], Cell]) -> str:
    """Swaps two columns, or two headers only."""
    columns = sorted({column for _, column in cells})
    one, other = chance.choice(columns), chance.choice(columns)
    rows = [1] if chance.random() < 0.5 else sorted({row for row, _ in cells})
    for row in rows:
        a, b = cells.pop((row, one), None), cells.pop((row, other), None)
        if a is not None:
            cells[row, other] = a
        if b is not None:
            cells[row, one] = b
    return f"{name} columns {one} and {other} swapped in {len(rows)} rows"


MARKS = (
    '<c r="A1"><v>1</v></c>', "<row/>", "<v>7</v>", "<f>1+1</f>", "&#0;", "&amp;", "<", ">", '"', "&x;", "<!DOCTYPE x>",
    "<!--", "]]>", "\0", "\ufffe", "<is><t>x</t></is>", ' t="s"', ' t="str"', ' t="inlineStr"', ' t="e"', ' t="b"',
    ' t="d"', ' s="9"', ' r="XFD1048576"', ' r="A0"', ' r="Z1"', ' hidden="1"', '<mergeCell ref="A1:C3"/>', "1e999",
    "-0", "NaN", "9" * 30,
)  # fmt: skip
PIECE = re.compile(r"<(?:c|row|v|t|si|sheet|xf|Relationship)\b[^>]*>|[a-zA-Z]+=\"[^\"]*\"|>[^<>]+<")
"""What of a part is changed: a tag, an attribute, or what stands between two tags."""


def change_part(chance: Random, parts: dict[str, bytes]) -> str:
    """Changes one thing in a part of a workbook file, and says what."""
    name = chance.choice(sorted(parts))
    what = chance.randrange(14)
    if what == 0:
        del parts[name]
        return f"{name} is gone"
    if what == 1:
        other = chance.choice(sorted(parts))
        parts[name], parts[other] = parts[other], parts[name]
        return f"{name} and {other} swapped"
    if what == 2:
        parts[name] = parts[name][: chance.randrange(len(parts[name]) + 1)]
        return f"{name} cut short"
    text = parts[name].decode("utf-8", "replace")
    found = [each.span() for each in PIECE.finditer(text)] or [(0, len(text))]
    (start, end), (first, last) = chance.choice(found), chance.choice(found)
    new = chance.choice([chance.choice(MARKS), "", text[start:end] * 2, text[first:last]])
    parts[name] = (text[:start] + new + text[end:]).encode("utf-8", "replace")
    return f"{name} {text[start:end]!r:.60} becomes {new!r:.60}"


def change_bytes(chance: Random, content: bytes) -> bytes:
    """The bytes of a file with a few others, a piece lost, a piece twice, or cut short."""
    start = chance.randrange(len(content))
    end = min(len(content), start + chance.choice([1, 2, 16, 512]))
    match chance.randrange(5):
        case 0:
            return content[:start] + chance.randbytes(end - start) + content[end:]
        case 1:
            return content[:start] + content[end:]
        case 2:
            return content[:end] + content[start:]
        case 3:
            return content[:start]
    return content[:start] + bytes(end - start) + content[end:]
