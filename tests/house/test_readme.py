"""The pages cannot fall behind the program."""

from __future__ import annotations

import re
from collections.abc import Iterator
from importlib import import_module
from pathlib import Path

import click
import pytest

from calc import __version__
from calc.cli import commands
from calc.errors import FindingKind, InputRefused
from calc.intake.manual import renewed
from calc.layout.sheets import SHEETS_OF_LINES
from calc.layout.styles import LEGEND
from calc.layout.week_names import SHEETS
from calc.trade.papers.catalog import PAPERS
from calc.units.parse import read_quantity
from folders import ROOT

README = (ROOT / "README.md").read_text(encoding="utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
DEMO = "python3 -m venv .venv && .venv/bin/pip install -q . && .venv/bin/flatwork demo"
TESTS = 'python3 -m venv .venv && .venv/bin/pip install -q -e ".[dev]" && .venv/bin/python -m pytest -q'

MB = 1_000_000
LIMITS = {
    "calc.xlsx_read.package": {
        "MAX_FILE": "the file",
        "MAX_UNPACKED": "the file, uncompressed",
        "MAX_RATIO": "a part of the file over 1 MB, uncompressed",
        "MAX_PARTS": "parts of the file",
    },
    "calc.xlsx_read.package_parts": {
        "MAX_SHEETS": "sheets",
        "MAX_NAME": "the name of a sheet",
        "MAX_STRUCTURE": "the list of sheets, the styles and other such parts, each",
        "MAX_STYLES": "cell formats",
        "MAX_CODE": "characters of a number format",
    },
    "calc.xlsx_read.sheet_prescan": {
        "MAX_ROWS": "rows of a sheet",
        "MAX_COLUMNS": "columns of a sheet",
        "MAX_MERGED": "merged ranges of a sheet",
        "MAX_FORMULA": "characters of one formula",
    },
    "calc.xlsx_read.limits": {
        "MAX_CELLS": "cells with content",
        "MAX_CHARACTERS": "characters of all texts, numbers and formulas",
        "MAX_ELEMENTS": "XML elements",
        "MAX_DEPTH": "nesting of XML elements",
        "MAX_NAMES": "different names of XML elements in a part",
        "MAX_BUFFERED": "one row, or one text",
    },
    "calc.cell_text": {"MAX_TEXT": "characters of one cell"},
    "calc.intake.values": {"MAX_INPUT_TEXT": "characters of a text input", "MAX_ID": "characters of an id"},
}
"""The limits of the reader, by module and name, and how the README calls each."""

NO_LIMIT_OF_INPUT = {"MAX_REFUSAL"}
"""How long the program's own refusals may be."""


def rows(first_head: str) -> Iterator[list[str]]:
    """The rows of every table of the README whose first column has that head."""
    found = re.compile(rf"^\| {re.escape(first_head)} \|.*\n\|[-| ]+\n((?:\|.*\n)+)", re.MULTILINE)
    for table in found.finditer(README):
        for row in table[1].splitlines():
            yield [cell.strip().strip("`") for cell in row.strip("|").split(" | ")]


def test_the_tables_of_inputs_are_those_of_the_declarations() -> None:
    assert renewed(README) == README, "run: python -m calc.intake.manual README.md"


def test_the_table_of_finding_codes_is_that_of_the_program() -> None:
    assert all(f"| `{each.code}` | {each.severity.word} |" in DEVELOPERS for each in FindingKind)
    assert renewed(DEVELOPERS) == DEVELOPERS, "run: python -m calc.intake.manual DEVELOPERS.md"


def test_the_two_commands_of_set_up_stand_as_they_are_run() -> None:
    lines = README.splitlines()
    assert DEMO in lines
    assert TESTS in lines
    assert TESTS in (ROOT / ".ci/run").read_text(encoding="utf-8")


@pytest.mark.parametrize("name", sorted(commands.commands))
def test_no_command_and_no_option_is_left_out(name: str) -> None:
    usage = next(cells[0] for cells in rows("command") if cells[0].startswith(f"flatwork {name}"))
    said = " ".join(cells[0] for cells in rows("option"))
    for option in commands.commands[name].params:
        if isinstance(option, click.Option):
            assert any(word in usage for word in option.opts), f"{name} {option.opts}"
            assert name == "blank" or all(word in said for word in option.opts), f"{name} {option.opts}"


def test_what_is_shown_as_typed_is_read_so() -> None:
    shown = [cells for cells in rows("typed") if re.fullmatch(r"[\d.]+", cells[2])]
    assert len(shown) > 15
    for typed, unit, number in shown:
        assert read_quantity(typed, unit).value == pytest.approx(float(number), abs=5e-7), typed


def test_what_is_shown_as_refused_is_refused_in_those_words() -> None:
    refused = [cells for cells in rows("typed") if cells[2].startswith("it ")]
    assert len(refused) > 4
    for typed, unit, reason in refused:
        with pytest.raises(InputRefused, match=re.escape(reason.removeprefix("it "))):
            read_quantity(typed, unit)


def test_the_limits_of_the_reader_are_those_it_holds() -> None:
    at_most = {cells[0]: cells[1] for cells in rows("of what")}
    told = {}
    for name, limits in LIMITS.items():
        module = import_module(name)
        known = {each for each in vars(module) if each.startswith("MAX_") and each in get_own(module)}
        assert known - NO_LIMIT_OF_INPUT == set(limits), name
        told |= {called: getattr(module, limit) for limit, called in limits.items()}
    assert set(at_most) == set(told)
    for called, limit in told.items():
        number = at_most[called].replace(" MB", "000000").replace(",", "")
        digits = re.match(r"\d+", number)
        assert digits is not None and int(digits[0]) == limit, called


def get_own(module: object) -> set[str]:
    """The names that a module gives a value itself, rather than imports."""
    source = Path(getattr(module, "__file__")).read_text(encoding="utf-8")  # noqa: B009
    return set(re.findall(r"^(\w+)(?:: Final)? = ", source, re.MULTILINE))


def test_every_sheet_and_every_style_of_what_comes_out_is_told() -> None:
    sheets = {cells[0] for cells in rows("sheet")} | {cells[0] for cells in rows("sheet of `week.xlsx`")}
    job = {"Bid", "Measured", *SHEETS_OF_LINES, "Factors", "Prices", "Checks", "Log", *(each.title for each in PAPERS)}
    assert sheets == job | set(SHEETS)
    assert len(list(rows("style"))) == len(LEGEND)


def test_every_picture_and_page_that_is_shown_is_there() -> None:
    for page, text in (("README.md", README), ("DEVELOPERS.md", DEVELOPERS)):
        for target in re.findall(r"\]\(([^)#]+)\)", text):
            assert (ROOT / target).is_file(), f"{page}: {target}"


def test_the_pictures_are_small_enough_for_a_page() -> None:
    pictures = list((ROOT / ".pictures").glob("*.png"))
    assert pictures
    assert all(picture.stat().st_size < 200_000 for picture in pictures)


def test_what_developers_are_told_to_look_at_and_to_run_is_there() -> None:
    paths = re.findall(r"`((?:calc|tests|\.samples|\.pictures|\.ci|templates|sample_inputs)/[\w./*]*)`", DEVELOPERS)
    assert len(paths) > 20
    for path in paths:
        assert list(ROOT.glob(path.rstrip("/"))), path


def test_the_tests_that_developers_are_referred_to_are_there() -> None:
    tests = "".join(path.read_text(encoding="utf-8") for path in (ROOT / "tests").glob("*/test_*.py"))
    named = re.findall(r"`(test_\w+)`", DEVELOPERS)
    assert len(named) > 5
    for name in named:
        assert f"def {name}(" in tests, name


def test_what_changed_ends_with_the_version_that_is_here() -> None:
    assert f"**{__version__}**" in DEVELOPERS
