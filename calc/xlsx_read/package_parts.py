"""The structure of a workbook: which part is which sheet, hidden sheets, number formats, ignored content.

From it :func:`minimal_package` makes the package that openpyxl reads: the rows, the strings and the number formats of
the file, and nothing else. Charts, names, pictures, links, themes and styles are no input, and the way in which another
program writes them cannot break a reader that never sees them.
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
from calc.xlsx_read.limits import MAIN, TRUE, wrong_root_error
from calc.xlsx_read.package import NAME_A_WORKBOOK, SAVE_AGAIN, BoundedZip, doctype_error

MAX_SHEETS: Final = 60
"""Sheets of a book."""

MAX_NAME: Final = 255
"""Characters of the name of a sheet; most programs allow 31."""

MAX_STRUCTURE: Final = 4_000_000
"""Bytes of each part other than sheets and strings, parsed whole; styles usually have a few thousand."""

MAX_STYLES: Final = 65_490
"""Cell styles of a book: the limit of spreadsheet programs."""

MAX_CODE: Final = 255
"""Characters of a number format: the limit of spreadsheet programs."""

CUSTOM: Final = 164
"""The first id of a custom number format; smaller ids are built in."""

_RELATIONSHIPS: Final = "http://schemas.openxmlformats.org/package/2006/relationships"
_DOCUMENT: Final = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
_TYPES: Final = "http://schemas.openxmlformats.org/package/2006/content-types"
_FORMAT: Final = "application/vnd.openxmlformats-officedocument.spreadsheetml"


class Entry(NamedTuple):
    """A sheet of the book: its name, whether it is hidden, and its part."""

    name: str
    hidden: bool
    part: str


@dataclass(frozen=True)
class PackageParts:
    """The structure of a book."""

    sheets: tuple[Entry, ...]
    strings: str
    """The part with the shared strings; blank for a book without text."""
    formats: tuple[tuple[int, str], ...]
    """The custom number formats: id and format code."""
    styles: tuple[int, ...]
    """The number format id of each cell style."""
    struck: tuple[bool, ...]
    """Whether each cell style strikes its text through."""
    from_1904: bool
    """Whether it uses the 1904 date system."""
    notes: tuple[str, ...]
    """Sentences about content that was ignored or converted."""


class _Relationship(NamedTuple):
    kind: str
    target: str


def read_package_parts(package_zip: BoundedZip) -> PackageParts:
    """Read the structure of the book.

    :raises Unreadable: when a part is missing or damaged, the file is not a workbook, or it has too many sheets.
    """
    if "_rels/.rels" not in package_zip.names:
        raise Unreadable(
            f"this is a zip file, not a workbook. Unpack it first if it contains a workbook. {NAME_A_WORKBOOK}"
        )
    start = next(
        (link.target for link in _relationships(package_zip, "").values() if link.kind == "officeDocument"), ""
    )
    root = _parse(package_zip, start, MAIN, "workbook")
    links = _relationships(package_zip, start)
    kinds = {link.kind: link.target for link in links.values()}
    sheets, notes = _sheets(root, links)
    properties = root.find(f"{{{MAIN}}}workbookPr")
    from_1904 = properties is not None and properties.get("date1904") in TRUE
    if any(name.endswith("vbaproject.bin") for name in package_zip.names):
        notes.append("The workbook has macros. They are ignored.")
    if "externalLink" in kinds:
        notes.append("The workbook links to other workbooks. Their stored values were read.")
    if from_1904:
        notes.append("The dates of the workbook count from 1904. They were read accordingly.")
    formats, styles, struck = _styles(package_zip, kinds.get("styles", ""))
    return PackageParts(tuple(sheets), kinds.get("sharedStrings", ""), formats, styles, struck, from_1904, tuple(notes))


def minimal_package(structure: PackageParts, sheets: Sequence[bytes], strings: bytes) -> BytesIO:
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
    epoch = f'<workbookPr date1904="{int(structure.from_1904)}"/>'
    parts["[Content_Types].xml"] = _element("Types", _TYPES, types)
    parts["xl/workbook.xml"] = _element("workbook", MAIN, (epoch, f"<sheets>{tabs}</sheets>"))
    parts["xl/_rels/workbook.xml.rels"] = _element("Relationships", _RELATIONSHIPS, links)
    parts["xl/styles.xml"] = _minimal_styles(structure)
    file = BytesIO()
    with ZipFile(file, "w") as package:
        for part, content in parts.items():
            package.writestr(part, content)
    return file


def _minimal_styles(structure: PackageParts) -> str:
    """The cell styles with number format and strike only, and one of each other part that openpyxl requires."""
    formats = (f'<numFmt numFmtId="{id_}" formatCode="{escape(code)}"/>' for id_, code in structure.formats)
    pairs = zip(structure.styles, structure.struck, strict=True)
    styles = (f'<xf numFmtId="{id_}" fontId="{int(struck)}"/>' for id_, struck in pairs)
    return _element(
        "styleSheet",
        MAIN,
        (
            f"<numFmts>{''.join(formats)}</numFmts>",
            "<fonts><font/><font><strike/></font></fonts><fills><fill><patternFill/></fill></fills><borders><border/></borders>",
            f"<cellStyleXfs><xf/></cellStyleXfs><cellXfs>{''.join(styles)}</cellXfs>",
            '<cellStyles><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles>',
        ),
    )


def _element(name: str, namespace: str, inside: Iterable[str]) -> str:
    return f'<{name} xmlns="{namespace}">{"".join(inside)}</{name}>'


def _sheets(root: Element, links: dict[str, _Relationship]) -> tuple[list[Entry], list[str]]:
    """The worksheets in the order of their tabs, and a note for each other sheet."""
    sheets: list[Entry] = []
    notes: list[str] = []
    for sheet in root.iterfind(f"{{{MAIN}}}sheets/{{{MAIN}}}sheet"):
        name = sheet.get("name", "")
        if not 0 < len(name) <= MAX_NAME:
            raise Unreadable(f"it has a sheet without a name, or with a name that is too long. {SAVE_AGAIN}")
        link = links.get(sheet.get(f"{{{_DOCUMENT}}}id", ""))
        if link is None:
            raise Unreadable(f"its sheet {name} is missing from the file. {SAVE_AGAIN}")
        if link.kind == "worksheet":
            sheets.append(Entry(name, sheet.get("state", "visible") != "visible", link.target))
        else:
            notes.append(f"The sheet {name} is a chart or a macro, without cells. It is ignored.")
    if len(sheets) > MAX_SHEETS:
        raise Unreadable(f"it has {len(sheets)} sheets, and the limit is {MAX_SHEETS}. Delete those that are no input.")
    if not sheets:
        raise Unreadable(f"it has no sheet with cells. {SAVE_AGAIN}")
    for unique in ({sheet.name.casefold() for sheet in sheets}, {sheet.part.casefold() for sheet in sheets}):
        if len(unique) < len(sheets):
            raise Unreadable(f"it has two sheets with one name or one part. {SAVE_AGAIN}")
    return sheets, notes


def _styles(
    package_zip: BoundedZip, part: str
) -> tuple[tuple[tuple[int, str], ...], tuple[int, ...], tuple[bool, ...]]:
    """The custom number formats; of each cell style its number format id, and whether it strikes through.

    A book without styles has one.
    """
    if not part:
        return (), (0,), (False,)
    root = _parse(package_zip, part, MAIN, "styleSheet")
    formats = {
        int(each.get("numFmtId", "0")): each.get("formatCode", "General")
        for each in root.iterfind(f"{{{MAIN}}}numFmts/{{{MAIN}}}numFmt")
    }
    cell_styles = root.findall(f"{{{MAIN}}}cellXfs/{{{MAIN}}}xf")
    styles = [int(each.get("numFmtId", "0")) for each in cell_styles] or [0]
    fonts = [_strikes(each) for each in root.iterfind(f"{{{MAIN}}}fonts/{{{MAIN}}}font")]
    font_ids = [int(each.get("fontId", "0")) for each in cell_styles]
    struck = [0 <= font < len(fonts) and fonts[font] for font in font_ids]
    if len(styles) > MAX_STYLES or any(len(code) > MAX_CODE for code in formats.values()):
        raise Unreadable(
            f"it has more cell styles or longer number formats than a spreadsheet program allows. {SAVE_AGAIN}"
        )
    known = [id_ if id_ < CUSTOM or id_ in formats else 0 for id_ in styles]
    used = set(known)
    return tuple((id_, code) for id_, code in formats.items() if id_ in used), tuple(known), tuple(struck) or (False,)


def _strikes(font: Element) -> bool:
    """Whether a font strikes its text through."""
    strike = font.find(f"{{{MAIN}}}strike")
    return strike is not None and strike.get("val", "1") not in ("0", "false")


def _relationships(package_zip: BoundedZip, part: str) -> dict[str, _Relationship]:
    """The relationships of a part by id; those of the package itself belong to the part ``""``."""
    folder, name = posixpath.split(part)
    root = _parse(package_zip, posixpath.join(folder, "_rels", f"{name}.rels"), _RELATIONSHIPS, "Relationships")
    links = {}
    for link in root:
        kind, target = link.get("Type", "").rpartition("/")[2], link.get("Target", "")
        if link.get("TargetMode") != "External":
            target = posixpath.normpath(posixpath.join("/", folder, target)).lstrip("/")
        links[link.get("Id", "")] = _Relationship(kind, target)
    return links


def _parse(package_zip: BoundedZip, part: str, namespace: str, root: str) -> Element:
    """The outermost element of a part."""
    try:
        element: Element = fromstring(package_zip.take(part, MAX_STRUCTURE), forbid_dtd=True)
    except DTDForbidden as reason:
        raise Unreadable(doctype_error(part)) from reason
    except ParseError as reason:
        raise Unreadable(f"its part {part} is damaged ({reason}). {SAVE_AGAIN}") from reason
    if element.tag != f"{{{namespace}}}{root}":
        raise Unreadable(wrong_root_error(element.tag[1:].partition("}")[0], f"its part {part}"))
    return element
