"""The frame of a workbook: which part is which sheet, what is hidden, how numbers are shown, what is left aside.

From it :func:`minimal_package` makes the package that openpyxl is given: the rows, the strings and the number formats of the
file, and nothing else of it. Charts, names, pictures, links, themes and styles are none of the input, and a reader that
never sees them cannot stumble over the way another program writes them.
"""

from __future__ import annotations

import posixpath
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from html import escape
from io import BytesIO
from typing import Final, NamedTuple
from xml.etree.ElementTree import Element, ParseError
from zipfile import ZipFile

from defusedxml.common import DTDForbidden
from defusedxml.ElementTree import fromstring

from calc.errors import Unreadable
from calc.xlsx_read.limits import MAIN, TRUE, strict_or_foreign
from calc.xlsx_read.package import NOT_OURS, SAVE_AGAIN, BoundedZip, doctype_in

MAX_SHEETS: Final = 60
"""Sheets of a book."""

MAX_NAME: Final = 255
"""Letters of the name of a sheet: most programs stop at 31."""

MAX_FRAME: Final = 4_000_000
"""Bytes of each part of the frame: it is parsed whole. Tables of styles have a few thousand."""

MAX_LOOKS: Final = 65_490
"""Looks that cells may have, and number formats among them: the most that a spreadsheet program keeps."""

MAX_CODE: Final = 255
"""Letters of a number format: no spreadsheet program lets a person type more."""

CUSTOM: Final = 164
"""The first id of a number format that the book itself describes; smaller ones are the same in every book."""

_LINKS: Final = "http://schemas.openxmlformats.org/package/2006/relationships"
_DOCUMENT: Final = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
_TYPES: Final = "http://schemas.openxmlformats.org/package/2006/content-types"
_FORMAT: Final = "application/vnd.openxmlformats-officedocument.spreadsheetml"


class Entry(NamedTuple):
    """A sheet of the book: its name, whether it is hidden, and the part that holds it."""

    name: str
    hidden: bool
    part: str


@dataclass(frozen=True)
class PackageParts:
    """What the frame of a book says."""

    sheets: tuple[Entry, ...]
    strings: str
    """The part with the table of strings, or blank: a book of numbers has none."""
    formats: tuple[tuple[int, str], ...]
    """The book's own number formats: id and format."""
    looks: tuple[int, ...]
    """The id of the number format of each look that a cell may have."""
    from_1904: bool
    """Whether its dates count from 1904."""
    notes: tuple[str, ...]
    """What was left aside, in whole sentences."""


class _Link(NamedTuple):
    kind: str
    target: str


def read_package_parts(parcel: BoundedZip) -> PackageParts:
    """Read the frame of the book.

    :raises Unreadable: when a part of it is missing or damaged, or when the book is none or has too many sheets.
    """
    if "_rels/.rels" not in parcel.names:
        raise Unreadable(f"this is a zip file, not a workbook. Unpack it first if a workbook is in it. {NOT_OURS}")
    start = next((link.target for link in _links(parcel, "").values() if link.kind == "officeDocument"), "")
    root = _parse(parcel, start, MAIN, "workbook")
    links = _links(parcel, start)
    kinds = {link.kind: link.target for link in links.values()}
    sheets, notes = _sheets(root, links)
    properties = root.find(f"{{{MAIN}}}workbookPr")
    from_1904 = properties is not None and properties.get("date1904") in TRUE
    if any(name.endswith("vbaproject.bin") for name in parcel.names):
        notes.append("It holds macros: they are ignored.")
    if "externalLink" in kinds:
        notes.append("It links to other workbooks: the values that it keeps of them are used as they stand.")
    if from_1904:
        notes.append("Its dates count from 1904: they are read so.")
    formats, looks = _styles(parcel, kinds.get("styles", ""))
    return PackageParts(tuple(sheets), kinds.get("sharedStrings", ""), formats, looks, from_1904, tuple(notes))


def minimal_package(frame: PackageParts, sheets: Sequence[bytes], strings: bytes) -> BytesIO:
    """A workbook of these sheets, named 1, 2, 3 and so on, with the strings and number formats of the book."""
    numbers = range(1, len(sheets) + 1)
    parts: dict[str, bytes | str] = {f"xl/worksheets/sheet{n}.xml": sheets[n - 1] for n in numbers}
    kinds = dict.fromkeys(parts, "worksheet") | {"xl/workbook.xml": "sheet.main", "xl/styles.xml": "styles"}
    if strings:
        parts["xl/sharedStrings.xml"] = strings
        kinds["xl/sharedStrings.xml"] = "sharedStrings"
    types = (f'<Override PartName="/{part}" ContentType="{_FORMAT}.{kind}+xml"/>' for part, kind in kinds.items())
    links = (
        f'<Relationship Id="r{n}" Type="{_DOCUMENT}/worksheet" Target="worksheets/sheet{n}.xml"/>' for n in numbers
    )
    tabs = "".join(f'<sheet name="{n}" sheetId="{n}" xmlns:r="{_DOCUMENT}" r:id="r{n}"/>' for n in numbers)
    epoch = f'<workbookPr date1904="{int(frame.from_1904)}"/>'
    parts["[Content_Types].xml"] = _element("Types", _TYPES, types)
    parts["xl/workbook.xml"] = _element("workbook", MAIN, (epoch, f"<sheets>{tabs}</sheets>"))
    parts["xl/_rels/workbook.xml.rels"] = _element("Relationships", _LINKS, links)
    parts["xl/styles.xml"] = _minimal_styles(frame)
    file = BytesIO()
    with ZipFile(file, "w") as package:
        for part, content in parts.items():
            package.writestr(part, content)
    return file


def _minimal_styles(frame: PackageParts) -> str:
    """The looks of the book with nothing but their number formats; openpyxl asks for one of everything else."""
    formats = (f'<numFmt numFmtId="{id_}" formatCode="{escape(code)}"/>' for id_, code in frame.formats)
    looks = (f'<xf numFmtId="{id_}"/>' for id_ in frame.looks)
    return _element(
        "styleSheet",
        MAIN,
        (
            f"<numFmts>{''.join(formats)}</numFmts>",
            "<fonts><font/></fonts><fills><fill><patternFill/></fill></fills><borders><border/></borders>",
            f"<cellStyleXfs><xf/></cellStyleXfs><cellXfs>{''.join(looks)}</cellXfs>",
            '<cellStyles><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles>',
        ),
    )


def _element(name: str, namespace: str, inside: Iterable[str]) -> str:
    return f'<{name} xmlns="{namespace}">{"".join(inside)}</{name}>'


def _sheets(root: Element, links: dict[str, _Link]) -> tuple[list[Entry], list[str]]:
    """The sheets that hold cells, in the order of their tabs, and a note for each other one."""
    sheets: list[Entry] = []
    notes: list[str] = []
    for sheet in root.iterfind(f"{{{MAIN}}}sheets/{{{MAIN}}}sheet"):
        name = sheet.get("name", "")
        if not 0 < len(name) <= MAX_NAME:
            raise Unreadable(f"it has a sheet without a name, or with one that is too long. {SAVE_AGAIN}")
        link = links.get(sheet.get(f"{{{_DOCUMENT}}}id", ""))
        if link is None:
            raise Unreadable(f"it names a sheet {name} that is not in it. {SAVE_AGAIN}")
        if link.kind == "worksheet":
            sheets.append(Entry(name, sheet.get("state", "visible") != "visible", link.target))
        else:
            notes.append(f"Its sheet {name} is a chart or a macro, not cells: it is ignored.")
    if len(sheets) > MAX_SHEETS:
        raise Unreadable(
            f"it has {len(sheets)} sheets; a book may have {MAX_SHEETS}. Take out those that are no input."
        )
    if not sheets:
        raise Unreadable(f"it has no sheet with cells. {SAVE_AGAIN}")
    for what in ({sheet.name.casefold() for sheet in sheets}, {sheet.part.casefold() for sheet in sheets}):
        if len(what) < len(sheets):
            raise Unreadable(f"it has two sheets that are one, or have one name. {SAVE_AGAIN}")
    return sheets, notes


def _styles(parcel: BoundedZip, part: str) -> tuple[tuple[tuple[int, str], ...], tuple[int, ...]]:
    """The number formats of the book, and the id of the format of each look; a book without styles has one look."""
    if not part:
        return (), (0,)
    root = _parse(parcel, part, MAIN, "styleSheet")
    formats = {
        int(each.get("numFmtId", "0")): each.get("formatCode", "General")
        for each in root.iterfind(f"{{{MAIN}}}numFmts/{{{MAIN}}}numFmt")
    }
    looks = [int(each.get("numFmtId", "0")) for each in root.iterfind(f"{{{MAIN}}}cellXfs/{{{MAIN}}}xf")] or [0]
    if len(looks) > MAX_LOOKS or any(len(code) > MAX_CODE for code in formats.values()):
        raise Unreadable(f"it has more looks than a spreadsheet program can keep. {SAVE_AGAIN}")
    known = [look if look < CUSTOM or look in formats else 0 for look in looks]
    used = set(known)
    return tuple((id_, code) for id_, code in formats.items() if id_ in used), tuple(known)


def _links(parcel: BoundedZip, part: str) -> dict[str, _Link]:
    """Where the links of a part lead, by their id; the links of the file itself are those of the part ``""``."""
    folder, name = posixpath.split(part)
    root = _parse(parcel, posixpath.join(folder, "_rels", f"{name}.rels"), _LINKS, "Relationships")
    links = {}
    for link in root:
        kind, target = link.get("Type", "").rpartition("/")[2], link.get("Target", "")
        if link.get("TargetMode") != "External":
            target = posixpath.normpath(posixpath.join("/", folder, target)).lstrip("/")
        links[link.get("Id", "")] = _Link(kind, target)
    return links


def _parse(parcel: BoundedZip, part: str, namespace: str, root: str) -> Element:
    """The outermost element of a part of the frame."""
    try:
        element: Element = fromstring(parcel.take(part, MAX_FRAME), forbid_dtd=True)
    except DTDForbidden as reason:
        raise Unreadable(doctype_in(part)) from reason
    except ParseError as reason:
        raise Unreadable(f"its part {part} is damaged ({reason}). {SAVE_AGAIN}") from reason
    if element.tag != f"{{{namespace}}}{root}":
        raise Unreadable(strict_or_foreign(element.tag[1:].partition("}")[0], f"its part {part}"))
    return element
