"""Workbooks made by hand, part by part: as no spreadsheet program writes them, or as only one of them does."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from datetime import datetime
from pathlib import Path
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo

import openpyxl

MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
LINKS = "http://schemas.openxmlformats.org/package/2006/relationships"
DOCUMENT = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"

ONE = '<c r="A1"><v>1</v></c>'
"""A cell with a number."""

Part = str | bytes
Change = Part | Callable[[str], str] | None
"""What a part becomes: other content, what a function makes of it, or nothing at all."""


def small_week(path: Path) -> Path:
    """A small jobs book as a spreadsheet program saves it."""
    book = openpyxl.Workbook()
    areas = book.worksheets[0]
    areas.title = "Areas"
    areas.append(["job", "area", "length ft", "poured"])
    areas.append(["24-03", " patio ", 10.5, datetime(2026, 3, 4)])
    areas.append(["24-03", "walk", "10'-6 1/2\"", True])
    book.create_sheet("Jobs").append(["job", "client"])
    book.save(path)
    return path


def sheet_xml(rows: str = "", rest: str = "", head: str = "") -> str:
    """A sheet with these rows, and what stands before and after them."""
    return f'<worksheet xmlns="{MAIN}">{head}<sheetData>{rows}</sheetData>{rest}</worksheet>'


def cells_xml(*cells: str) -> str:
    """A sheet with one row of cells."""
    return sheet_xml(f'<row r="1">{"".join(cells)}</row>')


def package(
    sheets: Mapping[str, Part],
    *,
    strings: Part = "",
    styles: Part = "",
    more: Mapping[str, Part] | None = None,
) -> dict[str, Part]:
    """The parts of a workbook by name: its sheets, its table of strings, its styles, and more that nothing links to."""
    numbers = range(1, len(sheets) + 1)
    tabs = "".join(f'<sheet name="{name}" sheetId="{n}" r:id="s{n}"/>' for n, name in zip(numbers, sheets, strict=True))
    targets = [(f"s{n}", "worksheet", f"worksheets/sheet{n}.xml") for n in numbers]
    parts: dict[str, Part] = {
        "[Content_Types].xml": "<Types/>",
        "_rels/.rels": _links([("b", "officeDocument", "xl/workbook.xml")]),
        "xl/workbook.xml": f'<workbook xmlns="{MAIN}" xmlns:r="{DOCUMENT}"><sheets>{tabs}</sheets></workbook>',
    }
    for kind, content in (("sharedStrings", strings), ("styles", styles)):
        if content:
            targets.append((kind, kind, f"{kind}.xml"))
            parts[f"xl/{kind}.xml"] = content
    parts["xl/_rels/workbook.xml.rels"] = _links(targets)
    parts |= {f"xl/worksheets/sheet{n}.xml": content for n, content in zip(numbers, sheets.values(), strict=True)}
    return parts | dict(more or {})


def pack(path: Path, parts: Mapping[str, Part] | Sequence[tuple[str, Part]], method: int = ZIP_DEFLATED) -> Path:
    """Write the parts as a zip; a sequence may hold a name twice."""
    entries = parts.items() if isinstance(parts, Mapping) else parts
    with ZipFile(path, "w", method) as file:
        for name, content in entries:
            entry = ZipInfo("placeholder")
            entry.filename = name  # ZipInfo itself would mend a name with a backslash
            entry.compress_type = method
            file.writestr(entry, content, compresslevel=1)
    return path


def changed(source: Path, path: Path, changes: Mapping[str, Change]) -> Path:
    """A copy of a workbook in which some parts are others; a part that is not there yet is added."""
    with ZipFile(source) as file:
        parts: dict[str, Part] = {name: file.read(name) for name in file.namelist()}
    for name, change in changes.items():
        if change is None:
            del parts[name]
        elif callable(change):
            before = parts[name]
            parts[name] = change(before if isinstance(before, str) else before.decode())
            assert parts[name] != (before if isinstance(before, str) else before.decode()), f"{name} did not change"
        else:
            parts[name] = change
    return pack(path, parts)


def _links(links: Sequence[tuple[str, str, str]]) -> str:
    inside = "".join(f'<Relationship Id="{i}" Type="{DOCUMENT}/{kind}" Target="{to}"/>' for i, kind, to in links)
    return f'<Relationships xmlns="{LINKS}">{inside}</Relationships>'
