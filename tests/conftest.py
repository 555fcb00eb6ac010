"""What every test may ask for: the witnesses, and a loud word at the end when one of them is missing."""

from __future__ import annotations

import gc
import os
from typing import NoReturn

import pytest
from hypothesis import settings

from longest import LONGEST
from witness import Program, Recalculations, available

MISSING = "WITNESS MISSING"
REQUIRED = os.environ.get("FLATWORK_WITNESSES") == "required"
"""With ``FLATWORK_WITNESSES=required`` a missing witness fails the tests that need it instead of skipping them."""

# Next to nothing that a test makes is garbage before it is over, and looking for it takes a twelfth of the time.
gc.set_threshold(50_000, 20, 50)

# A shared machine may be slow at any moment: time is the benchmark's business. The same examples every time.
settings.register_profile("suite", deadline=None, derandomize=True)
settings.load_profile("suite")


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Puts the files that take longest first."""
    places = {name: place for place, name in enumerate(LONGEST)}
    items.sort(key=lambda each: places.get(each.path.stem, len(LONGEST)))


@pytest.fixture(scope="session")
def libreoffice() -> Program:
    """LibreOffice, or the test is skipped."""
    return _present(Program.LIBREOFFICE)


@pytest.fixture(scope="session")
def gnumeric() -> Program:
    """Gnumeric, or the test is skipped."""
    return _present(Program.GNUMERIC)


@pytest.fixture(scope="session", params=Program, ids=lambda program: program.name.lower())
def witness(request: pytest.FixtureRequest) -> Program:
    """Each witness in turn: the test runs once with each that is there."""
    return _present(request.param)


@pytest.fixture(scope="module")
def recalculated(tmp_path_factory: pytest.TempPathFactory) -> Recalculations:
    """Recalculated copies of files, made in few calls: ``add`` all files first, then ask for each ``result``.

    Each module has its own, so that no witness is given the files of another module.
    """
    return Recalculations(tmp_path_factory.mktemp("recalculated"))


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """A banner that nobody overlooks when a test went without its witness."""
    skipped = [report for report in terminalreporter.getreports("skipped") if MISSING in str(report.longrepr)]
    if not skipped:
        return
    missing = [program.package for program in Program if not available(program)]
    terminalreporter.section(MISSING, sep="!", red=True, bold=True)
    terminalreporter.line(f"{len(skipped)} tests did not run: no other spreadsheet program recalculated our workbooks.")
    terminalreporter.line(f"Install them with: apt-get install --no-install-recommends {' '.join(missing)}")


def _present(program: Program) -> Program:
    if not available(program):
        _give_up(f"{MISSING}: install {program.package}")
    return program


def _give_up(reason: str) -> NoReturn:
    if REQUIRED:
        pytest.fail(reason, pytrace=False)
    pytest.skip(reason)
