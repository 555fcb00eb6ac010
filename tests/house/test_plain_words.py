"""What a person reads keeps to the words of the trade: words that were retired must not come back.

A reader who meets two words for one thing looks for two things. The list holds words that stood in the program once and
puzzled people who tried it; each is followed by the one that is used instead.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from pathlib import Path

import click
import openpyxl
import pytest
from click.testing import CliRunner

import calc
from calc.cli import commands as flatwork
from wrong_books_messages import EXPECTED

ROOT = Path(__file__).parents[2]

RETIRED = {
    r"labour\w*": "labor, laborer",
    r"licence": "license",
    r"colour\w*": "color",
    r"centre": "center",
    r"mobilis\w+": "mobilization",
    r"bevelled": "beveled",
    r"how loud|loudest": "severity",
    r"house book": "company book",
    r"week's book": "jobs book",
    r"in all": "total",
    r"dump plan": "haul-off sheet",
    r"two on a truck": "shared loads",
    r"hand-out": "proposal",
    r"passed over": "ignored",
    r"held back": "not written; retainage",
    r"as of issue": "fixed at issue",
    r"slip of the pen": "typing error",
    r"only keeps the place": "is a placeholder",
    r"not one of its words": "is not a valid choice",
    r"form oil": "form release agent",
    r"hardboard": "bender board",
    r"wash-out box": "concrete washout",
    r"keep out of it": "not accepted",
    r"least charge|least hours": "minimum charge, minimum hours",
    r"dwell": "turnaround time",
    r"dirty surcharge": "contamination surcharge",
    r"over-chip": "over-break",
    r"stomped": "compacted",
    r"wet way": "muddy route",
    r"full cost": "break-even cost",
    r"barrows?": "wheelbarrow, buggy",
    r"largest stone": "maximum aggregate size",
    r"cap and caulk": "joint cap and sealant",
    r"one-call centre": "811",
    r"papers to ask for": "permits and documents",
    r"\d+ \w+\(s\)": "the plural that the number asks for",
}
"""Retired words, as patterns, and what stands in their place."""

JOB = "26-045"
"""The job of the demo that has the most papers and cautions."""

_RETIRED = re.compile("|".join(rf"\b(?:{pattern})(?!\w)" for pattern in RETIRED), re.IGNORECASE)


def catalog() -> Iterator[tuple[str, str]]:
    """What every line says of itself."""
    for line in calc.lines():
        yield line.id, " / ".join((line.label, line.unit, line.source, line.words))


def readme() -> Iterator[tuple[str, str]]:
    """The lines of README."""
    for number, text in enumerate((ROOT / "README.md").read_text(encoding="utf-8").splitlines(), 1):
        yield f"README.md:{number}", text


def of_workbook(path: Path) -> Iterator[tuple[str, str]]:
    """The titles, cells and notes of a workbook."""
    for sheet in openpyxl.load_workbook(path, data_only=True):
        yield f"{path.name} {sheet.title}", sheet.title
        for row in sheet.iter_rows():
            for cell in row:
                place = f"{path.name} {sheet.title}!{cell.coordinate}"
                if isinstance(cell.value, str):
                    yield place, cell.value
                if cell.comment is not None:
                    yield place, cell.comment.text


def shipped() -> Iterator[tuple[str, str]]:
    """The blanks and the input books of the demo."""
    for path in sorted((*ROOT.glob("templates/*.xlsx"), *ROOT.glob("sample_inputs/*.xlsx"))):
        yield from of_workbook(path)


def commands() -> Iterator[tuple[str, str]]:
    """What the commands say for --help."""
    names = flatwork.list_commands(click.Context(flatwork))
    for arguments in ([], *([name] for name in names)):
        yield " ".join(("flatwork", *arguments)), CliRunner().invoke(flatwork, [*arguments, "--help"]).output


def messages() -> Iterator[tuple[str, str]]:
    """What the program answers to each book with a mistake in it."""
    for name, (_, findings) in EXPECTED.items():
        yield from ((name, each) for each in findings)


def written(folder: Path) -> Iterator[tuple[str, str]]:
    """The texts of every sheet of a job of the demo, and of the summary of its run."""
    run = calc.bid(ROOT / "sample_inputs" / "jobs.xlsx", folder=folder, job=JOB, workers=1)
    assert run.written
    for path in sorted(folder.glob("*.xlsx")):
        yield from of_workbook(path)


def retired(texts: list[tuple[str, str]]) -> list[str]:
    """Each retired word with the place where it stands."""
    assert len(texts) > 3
    return [f"{place}: {found[0]}" for place, text in texts for found in _RETIRED.finditer(text)]


@pytest.mark.parametrize("said", [catalog, readme, shipped, commands, messages], ids=lambda each: each.__name__)
def test_nothing_that_a_person_reads_says_it_in_a_retired_word(said: Callable[[], Iterator[tuple[str, str]]]) -> None:
    assert retired(list(said())) == []


@pytest.mark.slow
def test_no_sheet_of_a_written_job_says_it_in_a_retired_word(tmp_path: Path) -> None:
    assert retired(list(written(tmp_path))) == []


@pytest.mark.parametrize("text", ["Labour, in all", "1 costs have 2 way(s)", "the house book", "Wash-out box"])
def test_a_retired_word_is_found_where_it_stands(text: str) -> None:
    assert len(retired([("", ""), ("", text), ("", "Labor"), ("", "install")])) >= 1
