"""Releases of xlsxwriter in which a private part is gone, or answers otherwise: every cell is written all the same.

Each release is a copy of the installed one with its source edited, imported in the place of the installed one.
"""

from __future__ import annotations

import importlib
import re
import shutil
import sys
import warnings
from collections.abc import Callable, Iterator
from io import BytesIO
from pathlib import Path
from types import ModuleType
from zipfile import ZipFile

import pytest
import xlsxwriter
from xlsxwriter.worksheet import Worksheet

import calc
from books import only_job
from calc.batch.week import row_of, week_of
from calc.layout.week import week_sheets
from calc.model.results import JobValues
from calc.model.sensitivity import with_sensitivity
from calc.xlsx_write import write, xlsxwriter_internals
from sheet_cells import Held, read_cells
from whole_job import whole_company, whole_week
from witness import Place

INSTALLED = Path(xlsxwriter.__file__).parent
Edit = tuple[str, str, str]
"""A file of xlsxwriter, or ``*`` for all, a pattern in its source, and what replaces it."""


def renamed(name: str) -> list[Edit]:
    """The same release with a part of it under another name."""
    return [("*", rf"\b{name}\b", f"{name}_since_renamed")]


REMOVED: dict[str, tuple[str, list[Edit]]] = {
    "numbers_formats": ("_get_xf_index", renamed("_get_xf_index")),
    "numbers_strings": ("_get_shared_string_index", renamed("_get_shared_string_index")),
    "asks_for_rows": ("_write_rows", renamed("_write_rows")),
    "asks_for_chart_values": ("_get_range_data", renamed("_get_range_data")),
    "prepares_formulas": ("_prepare_formula", renamed("_prepare_formula")),
}
"""For each check, the part that it looks after, and the edits that take it away."""

OTHERWISE: dict[str, tuple[str, list[Edit]]] = {
    "numbers_formats": (
        "numbers formats otherwise than the file",
        [
            *renamed("_get_xf_index"),
            ("format.py", r"(?m)^(class Format\b.*)", r"\1\n    def _get_xf_index(self):\n        return 1\n"),
        ],
    ),
    "numbers_strings": (
        "gives more than a number",
        [
            ("sharedstrings.py", r"return index\b", "return index, self.count"),
            ("worksheet.py", r"\._get_shared_string_index\(string\)", "._get_shared_string_index(string)[0]"),
        ],
    ),
    "asks_for_rows": (
        "writes to another file",
        [
            ("*", r"\bself\.fh\b", "self.file"),
            ("xmlwriter.py", r"(?m)^(class XMLwriter.*)", r"\1\n    fh = open(__import__('os').devnull, 'w')\n"),
        ],
    ),
    "asks_for_chart_values": (
        "gives the values within a list of rows",
        [
            ("worksheet.py", r"return data\n\n    def _csv_join", "return [data]\n\n    def _csv_join"),
            ("worksheet.py", r"            return \(\)\n", "            return [()]\n"),
            ("workbook.py", r"_get_range_data\(\*cells\)", "_get_range_data(*cells)[0]"),
        ],
    ),
    "prepares_formulas": (
        "gives more than a text",
        [
            ("worksheet.py", r"formula = self\._prepare_formula\(", "formula, _ = self._prepare_formula("),
            (
                "worksheet.py",
                r"(?m)^(    def _prepare_formula)(.*)",
                r"\1(self, *of):\n        return self._prepared(*of), True\n\n    def _prepared\2",
            ),
        ],
    ),
}
"""For each check, how its part answers otherwise, and the edits that make it so with all of xlsxwriter in agreement."""

RELEASES = [
    *(pytest.param(check, edits, id=f"{part} is gone") for check, (part, edits) in REMOVED.items()),
    *(pytest.param(check, edits, id=f"{check}: the part {how}") for check, (how, edits) in OTHERWISE.items()),
]


@pytest.fixture(scope="module")
def job(tmp_path_factory: pytest.TempPathFactory) -> JobValues:
    """A job that fills every column, with every chart."""
    return with_sensitivity(only_job(tmp_path_factory.mktemp("whole"), whole_week(), whole_company()))


@pytest.fixture(scope="module")
def expected(job: JobValues) -> tuple[Contents, Contents]:
    """What the workbooks hold with the installed release, which supports rendered rows."""
    assert xlsxwriter_internals.supports_rendered_rows() and xlsxwriter_internals.prepares_formulas()
    with pytest.MonkeyPatch.context() as patch:
        patch.delattr(write, "CellSheet")
        return workbooks(write, job)


Contents = tuple[dict[Place, Held], dict[str, list[str]]]
"""The cells of a workbook, and for each of its charts the values that it stores."""


def workbooks(writer: ModuleType, job: JobValues) -> tuple[Contents, Contents]:
    """The contents of the workbook of a job, and of the workbook of a run that has this job alone."""
    sheets = week_sheets(week_of([row_of(job, "one.xlsx")]))
    week = writer.workbook_bytes(sheets, None, writer.identity_of(job, "Week"))
    return contents(writer.job_workbook(job)), contents(week)


def contents(data: bytes) -> Contents:
    """What a workbook shows, with the values that its charts store."""
    with ZipFile(BytesIO(data)) as file:
        charts = {name: file.read(name).decode() for name in file.namelist() if "/charts/" in name}
    return read_cells(BytesIO(data)), {name: re.findall(r"<c:v>(.*?)</c:v>", text) for name, text in charts.items()}


@pytest.fixture
def release(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Callable[[list[Edit]], ModuleType]]:
    """Installs an edited copy of xlsxwriter and gives the writer of workbooks that imports it."""

    def install(edits: list[Edit]) -> ModuleType:
        copy = tmp_path / "xlsxwriter"
        shutil.copytree(INSTALLED, copy, ignore=shutil.ignore_patterns("__pycache__"))
        for name, pattern, replacement in edits:
            edited = 0
            for path in copy.glob("*.py") if name == "*" else [copy / name]:
                text, count = re.subn(pattern, replacement, path.read_text(encoding="utf-8"))
                path.write_text(text, encoding="utf-8")
                edited += count
            assert edited, f"the installed xlsxwriter has no {pattern} in {name}: look at its check again"
        for module in [each for each in sys.modules if each.split(".")[0] == "xlsxwriter" or each.startswith(OURS)]:
            monkeypatch.delitem(sys.modules, module)
        monkeypatch.setattr(calc, "xlsx_write", calc.xlsx_write)  # importing anew sets it; this puts it back
        monkeypatch.syspath_prepend(tmp_path)
        return importlib.import_module(f"{OURS}.write")

    yield install
    for module in [each for each in sys.modules if each.split(".")[0] == "xlsxwriter" or each.startswith(OURS)]:
        del sys.modules[module]


OURS = "calc.xlsx_write"


@pytest.mark.parametrize(("check", "edits"), RELEASES)
def test_a_release_of_xlsxwriter_that_changes_a_private_part_loses_no_cell_and_no_chart(
    check: str,
    edits: list[Edit],
    release: Callable[[list[Edit]], ModuleType],
    job: JobValues,
    expected: tuple[Contents, Contents],
) -> None:
    writer = release(edits)
    assert Path(sys.modules["xlsxwriter"].__file__ or "").parent != INSTALLED
    internals = sys.modules[f"{OURS}.xlsxwriter_internals"]
    checks = {name: getattr(internals, name)() for name in REMOVED}
    assert [name for name, works in checks.items() if not works] == [check]
    assert internals.supports_rendered_rows() is (check == "prepares_formulas")
    assert workbooks(writer, job) == expected


def test_rows_that_xlsxwriter_does_not_take_are_written_cell_by_cell(
    monkeypatch: pytest.MonkeyPatch, job: JobValues, expected: tuple[Contents, Contents]
) -> None:
    """Even where every check says that it takes them."""
    monkeypatch.setattr(xlsxwriter_internals.RenderedRowsSheet, "_write_rows", Worksheet._write_rows)
    assert workbooks(write, job) == expected


def test_a_warning_about_the_future_of_a_library_stops_no_job(monkeypatch: pytest.MonkeyPatch, job: JobValues) -> None:
    properties = write._set_properties

    def deprecated(*of: object) -> None:
        warnings.warn("this will go away", DeprecationWarning, stacklevel=1)
        properties(*of)

    monkeypatch.setattr(write, "_set_properties", deprecated)
    with pytest.warns(DeprecationWarning):
        assert write.job_workbook(job)
