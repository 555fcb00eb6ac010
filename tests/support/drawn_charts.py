"""What is drawn in a workbook, read out of its package: the charts, the cells that they refer to, where they lie."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from xml.etree import ElementTree
from zipfile import ZipFile

from openpyxl.utils import range_boundaries

from calc.cells import column_letters
from sheet_cells import sheet_parts
from witness import Place

_MAIN = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
_CHART = "{http://schemas.openxmlformats.org/drawingml/2006/chart}"
_DRAWING = "{http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing}"
_LINKED = "{http://schemas.openxmlformats.org/officeDocument/2006/relationships}"


@dataclass(frozen=True)
class Drawn:
    """A series: what the legend calls it, and the ranges of its places along and across."""

    name: str
    along: str
    across: str


@dataclass(frozen=True)
class Picture:
    """A chart: its sheet, the rows and columns that it lies over (from 1), its alt text, its titles, its series."""

    sheet: str
    first: tuple[int, int]
    last: tuple[int, int]
    alt_text: str
    titles: tuple[str, ...]
    series: tuple[Drawn, ...]

    def drawn(self, name: str) -> Drawn:
        """The series whose name begins so."""
        return next(each for each in self.series if each.name.startswith(name))


def pictures(path: Path) -> list[Picture]:
    """Every chart of a workbook, in the order in which they stand on its sheets."""
    with ZipFile(path) as package:
        return [picture for name, part in sheet_parts(package).items() for picture in _on_sheet(package, name, part)]


def cells(reference: str) -> list[Place]:
    """The cells of a range, one after the other."""
    sheet, _, span = reference.rpartition("!")
    left, top, right, bottom = range_boundaries(span.replace("$", ""))
    assert left is not None and top is not None and right is not None and bottom is not None
    name = sheet.strip("'")
    return [(name, f"{column_letters(col)}{row}") for row in range(top, bottom + 1) for col in range(left, right + 1)]


def held(values: Mapping[Place, object], reference: str) -> list[object]:
    """What the cells of a range hold."""
    return [values.get(place) for place in cells(reference)]


def _tree(package: ZipFile, part: str) -> ElementTree.Element:
    return ElementTree.fromstring(package.read(part))


def _links(package: ZipFile, part: str) -> dict[str, str]:
    """The parts that a part refers to, by the id of the link."""
    folder, _, name = part.rpartition("/")
    links = f"{folder}/_rels/{name}.rels"
    if links not in package.namelist():
        return {}
    found = {each.attrib["Id"]: each.attrib["Target"] for each in _tree(package, links)}
    return {key: re.sub(r"[^/]+/\.\./", "", f"{folder}/{target}") for key, target in found.items()}


def _on_sheet(package: ZipFile, name: str, part: str) -> list[Picture]:
    drawings = [target for target in _links(package, part).values() if "/drawings/" in target]
    return [picture for drawing in drawings for picture in _in_drawing(package, name, drawing)]


def _in_drawing(package: ZipFile, sheet: str, drawing: str) -> list[Picture]:
    links = _links(package, drawing)
    found = []
    for anchor in _tree(package, drawing).iter(f"{_DRAWING}twoCellAnchor"):
        frame = next(anchor.iter(f"{_DRAWING}cNvPr"))
        chart = _tree(package, links[next(anchor.iter(f"{_CHART}chart")).attrib[f"{_LINKED}id"]])
        first, last = (_corner(anchor, end) for end in ("from", "to"))
        titles = tuple(_said(each) for each in chart.iter(f"{_CHART}title"))
        series = tuple(_series(each) for each in chart.iter(f"{_CHART}ser"))
        found.append(Picture(sheet, first, last, frame.attrib.get("descr", ""), titles, series))
    return found


def _corner(anchor: ElementTree.Element, end: str) -> tuple[int, int]:
    corner = anchor.find(f"{_DRAWING}{end}")
    assert corner is not None
    row, col = (int(corner.findtext(f"{_DRAWING}{each}") or 0) + 1 for each in ("row", "col"))
    return row, col


def _said(title: ElementTree.Element) -> str:
    """The range that a title is linked to, else its words."""
    linked = title.findtext(f".//{_CHART}f")
    return linked or "".join(title.itertext()).strip()


def _series(series: ElementTree.Element) -> Drawn:
    name = series.find(f"{_CHART}tx")
    ranges = []
    for ends in (("xVal", "cat"), ("yVal", "val")):
        part = next(found for each in ends if (found := series.find(f"{_CHART}{each}")) is not None)
        ranges.append(part.findtext(f".//{_CHART}f") or "")
    return Drawn("".join(name.itertext()) if name is not None else "", *ranges)
