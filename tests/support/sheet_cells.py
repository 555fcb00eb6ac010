"""The cells of a workbook file, read and typed over without a library in between.

Tens of workbooks are read for each run of the tests. A library makes an object of each cell and its looks, and drops
every stored value when it saves; here a file is read ten times as fast, and a cell that is typed over leaves all other
bytes of its file as they are.
"""

from __future__ import annotations

import re
import zipfile
from collections.abc import Iterator, Mapping, Sequence
from functools import lru_cache
from io import BytesIO
from pathlib import Path
from typing import NamedTuple
from xml.etree.ElementTree import Element, fromstring
from xml.parsers.expat import ParserCreate
from xml.sax.saxutils import escape

from witness import TOLERANCE, Difference, Place

MAIN = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
LINK = "{http://schemas.openxmlformats.org/officeDocument/2006/relationships}id"

_CELL = re.compile(
    r'<c r="([A-Z]+[0-9]+)"(?: s="[0-9]+")?(?: t="([A-Za-z]+)")?(?:/>|(>)\s*'
    r"(<f\b[^>]*?(?:/>|>([^<]*)</f>))?\s*"
    r"(<v\b[^>]*?(?:/>|>([^<]*)</v>))?\s*"
    r"(?:<is>\s*<t\b[^>]*?(?:/>|>([^<]*)</t>)\s*</is>)?\s*</c>)"
)
"""A cell as programs write it: its reference and kind; its formula and value, each with tags and text; its words."""
_BEGUN = re.compile(r"<c[\s/>]")


class Held(NamedTuple):
    """What a cell holds: its value (a number, words, or an error as its words), and its formula if it has one."""

    value: float | str | None
    formula: str | None = None
    is_error: bool = False


def read_cells(path: Path | BytesIO) -> Mapping[Place, Held]:
    """Every cell of a workbook that holds something, by sheet and reference; a file is read once while it stays as it
    is."""
    if isinstance(path, BytesIO):
        return _cells_of(path)
    found = path.stat()
    return _read_cells(path, found.st_mtime_ns, found.st_size)


@lru_cache(maxsize=16)
def _read_cells(path: Path, _written: int, _size: int) -> Mapping[Place, Held]:
    return _cells_of(path)


def _cells_of(path: Path | BytesIO) -> Mapping[Place, Held]:
    with zipfile.ZipFile(path) as parts:
        strings = list(_strings(parts))
        return {
            (sheet, ref): held
            for sheet, part in sheet_parts(parts).items()
            for ref, held in cells_of_part(parts.read(part), strings)
            if held is not None
        }


def cells_of_part(part: bytes, strings: Sequence[str]) -> list[tuple[str, Held | None]]:
    """The reference of each cell of a sheet with what it holds; raises for a part that is not well-formed.

    A pattern finds them in half the time that a tree takes. Where it does not find every cell that is begun, or could
    take something else for one, the part is read as a tree.
    """
    text = part.decode()
    found = _CELL.findall(text)
    if not found or len(found) != len(_BEGUN.findall(text)) or "<!" in text or "\r" in text:
        return cells_of_tree(part, strings)
    ParserCreate().Parse(part, True)
    return [
        (
            ref,
            _held(
                kind,
                _said(value) if stored else None,
                _said(formula) if computed else None,
                _said(words),
                strings,
            )
            if inside
            else None,
        )
        for ref, kind, inside, computed, formula, stored, value, words in found
    ]


def cells_of_tree(part: bytes, strings: Sequence[str]) -> list[tuple[str, Held | None]]:
    """The same, read as a tree."""
    return [
        (
            cell.get("r", ""),
            _held(cell.get("t", "n"), cell.findtext(f"{MAIN}v"), cell.findtext(f"{MAIN}f"), _words(cell), strings),
        )
        for cell in fromstring(part).iter(f"{MAIN}c")
    ]


def sheet_names(path: Path) -> list[str]:
    """The sheets of a workbook, in order."""
    with zipfile.ZipFile(path) as parts:
        return list(sheet_parts(parts))


class AsStored(NamedTuple):
    """What a spreadsheet program stores in a cell: its kind and its content in the terms of the file, and the cell of
    its sheet whose number format it takes."""

    kind: str
    content: str
    format_of: str


def type_over(path: Path, changes: Mapping[Place, float | str | AsStored | None], out: Path) -> None:
    """Writes ``path`` with other values typed into some cells to ``out``, None for a cell that is cleared; all other
    stored values stay, stale or not.

    Raises ``ValueError`` for a cell that is not there.
    """
    with zipfile.ZipFile(path) as parts, zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED, compresslevel=1) as copy:
        sheets = sheet_parts(parts)
        wanted: dict[str, list[tuple[str, float | str | AsStored | None]]] = {}
        for (sheet, ref), value in changes.items():
            wanted.setdefault(sheets[sheet], []).append((ref, value))
        for name in parts.namelist():
            text = parts.read(name)
            for ref, value in wanted.get(name, []):
                text = _typed_over(text.decode(), ref, value, path).encode()
            copy.writestr(name, text)


def unlike(original: Path, recalculated: Path) -> list[Difference]:
    """Every formula cell whose stored value is not what was recalculated; one without a value, or with an error, is."""
    ours, theirs = read_cells(original), read_cells(recalculated)
    found = []
    for place, held in ours.items():
        if held.formula is None:
            continue
        other = theirs.get(place, Held(None))
        if held.is_error or other.is_error or not same(held.value, other.value):
            found.append(Difference(*place, held.formula, held.value, other.value))
    return found


def same(one: object, another: object) -> bool:
    """Whether two values say the same: words exactly, numbers within the tolerance of the witnesses."""
    if isinstance(one, float) and isinstance(another, float):
        return abs(one - another) <= TOLERANCE * max(1.0, abs(one), abs(another))
    return one is not None and one == another


def _typed_over(text: str, ref: str, value: float | str | AsStored | None, path: Path) -> str:
    look = None
    if isinstance(value, AsStored):
        kind, inside = f' t="{value.kind}"', value.content
        look = re.search(rf'<c r="{value.format_of}"( s="\d+")', text)
    elif value is None:
        kind, inside = "", ""
    elif isinstance(value, str):
        kind, inside = ' t="inlineStr"', f'<is><t xml:space="preserve">{escape(value)}</t></is>'
    else:
        kind, inside = "", f"<v>{value!r}</v>"
    cell = re.compile(rf'<c r="{ref}"( s="\d+")?[^>/]*(?:/>|>.*?</c>)', re.DOTALL)
    text, count = cell.subn(lambda found: f'<c r="{ref}"{look[1] if look else found[1] or ""}{kind}>{inside}</c>', text)
    if count != 1:
        raise ValueError(f"{path.name} has no cell {ref} to type over")
    return text


def _held(kind: str, value: str | None, formula: str | None, words: str, strings: Sequence[str]) -> Held | None:
    if kind == "inlineStr":
        return Held(words)
    if value is None:
        return None if formula is None else Held("" if kind == "str" else None, formula)
    if not value:  # a formula that shows no words, as the writer stores it
        return Held("", formula)
    if kind == "s":
        return Held(strings[int(value)], formula)
    if kind in ("str", "e"):
        return Held(value, formula, kind == "e")
    return Held(float(value), formula)


def _said(text: str) -> str:
    """The text of an element, as it is between its tags."""
    return text if "&" not in text else fromstring(f"<t>{text}</t>").text or ""


def _strings(parts: zipfile.ZipFile) -> Iterator[str]:
    if "xl/sharedStrings.xml" in parts.namelist():
        yield from _string_table(parts.read("xl/sharedStrings.xml"))


@lru_cache(maxsize=4)
def _string_table(part: bytes) -> tuple[str, ...]:
    return tuple(_words(item) for item in fromstring(part).iter(f"{MAIN}si"))


def _words(item: Element) -> str:
    return "".join(text.text or "" for text in item.iter(f"{MAIN}t"))


def sheet_parts(parts: zipfile.ZipFile) -> dict[str, str]:
    """The part of each sheet, in the order of the sheets."""
    links = {link.get("Id"): link.get("Target", "") for link in fromstring(parts.read("xl/_rels/workbook.xml.rels"))}
    sheets = fromstring(parts.read("xl/workbook.xml")).iter(f"{MAIN}sheet")
    return {each.get("name", ""): f"xl/{links[each.get(LINK)].removeprefix('/xl/')}" for each in sheets}
