"""What two spreadsheet programs that are not ours make of every workbook: the same to the last digit and the cent."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path

import pytest

from awkward_jobs import AWKWARD
from books import COMPANY, Rows, write_book
from calc import batch
from calc.files import shipped
from calc.layout.week_dates import STYLES
from calc.layout.week_names import SHEETS
from sheet_cells import read_cells, unlike
from sheet_lint import JOB, Standard, lint
from whole_job import ID, whole_company, whole_week
from witness import Program, recalculate

pytestmark = pytest.mark.slow

LOOKED_THROUGH = {
    ("demo", "26-041"), ("demo", "week"), ("whole", ID),
}  # fmt: skip
"""One of each kind, by folder and file: looking through a workbook takes seconds."""

BARE: dict[str, Rows] = {"Jobs": AWKWARD["Jobs"][:2], "Areas": AWKWARD["Areas"][:2]}
"""One job, and no company book at all."""


SORTS = ("demo", "whole", "awkward", "no house")
FORMULAS = 50_000
"""As many are computed in all the workbooks together, or more."""


@pytest.fixture(scope="module")
def workbooks(tmp_path_factory: pytest.TempPathFactory) -> dict[str, list[Path]]:
    """The demo's workbooks, those of the job that fills every column, those of the awkward jobs, and a bare one."""
    folder = tmp_path_factory.mktemp("workbooks")
    (folder / "bare").mkdir()
    sources = {
        "demo": (shipped("sample_inputs") / "jobs.xlsx", None),
        "whole": (
            write_book(folder / "whole.xlsx", whole_week()),
            write_book(folder / "whole company.xlsx", whole_company()),
        ),
        "awkward": (write_book(folder / "awkward.xlsx", AWKWARD), write_book(folder / "company.xlsx", COMPANY)),
        "no house": (write_book(folder / "bare" / "week.xlsx", BARE), None),
    }
    assert tuple(sources) == SORTS
    written = {}
    for name, (week, company) in sources.items():
        run = batch.load_run([week], company, None)
        batch.bid(run, folder / name)
        assert not run.not_written and not run.failures, [str(each) for each in run.findings]
        written[name] = [path for _, path, _ in run.written]
    return written


@pytest.fixture(scope="module", params=list(Program))
def program(request: pytest.FixtureRequest) -> Program:
    """Each witness in turn."""
    request.getfixturevalue(request.param.name.lower())
    return request.param


@pytest.fixture(scope="module")
def copies(
    workbooks: Mapping[str, Sequence[Path]], program: Program, tmp_path_factory: pytest.TempPathFactory
) -> dict[str, dict[Path, Path]]:
    """What a witness makes of the workbooks, which it is given in one call.

    Of the demo, whose jobs have the same lines, each workbook goes to one of the two; all the rest goes to both.
    """
    given = {
        sort: paths[program is Program.GNUMERIC :: 2] if sort == "demo" else paths for sort, paths in workbooks.items()
    }
    made = recalculate([path for paths in given.values() for path in paths], program, tmp_path_factory.mktemp("copies"))
    return {sort: {path: made[path] for path in paths} for sort, paths in given.items()}


@pytest.mark.parametrize("sort", SORTS)
def test_another_program_computes_every_cell_of_every_workbook_alike(
    sort: str, copies: Mapping[str, Mapping[Path, Path]]
) -> None:
    assert copies[sort]
    wrong = [
        f"{path.parent.name}/{path.name} {each}" for path, copy in copies[sort].items() for each in unlike(path, copy)
    ]
    assert not wrong, "\n".join(wrong[:20])


def test_there_are_thousands_of_formulas_to_compute(workbooks: Mapping[str, Sequence[Path]]) -> None:
    counted = 0
    for path in (path for each in workbooks.values() for path in each):
        counted += sum(held.formula is not None for held in read_cells(path).values())
        if counted > FORMULAS:
            return
    raise AssertionError(f"only {counted} formulas are computed")


def test_no_workbook_breaks_what_readers_printers_and_other_programs_rely_on(
    workbooks: Mapping[str, Sequence[Path]],
) -> None:
    style = STYLES["words"]
    week = Standard(sheets=SHEETS, typed=frozenset(SHEETS), full_size=frozenset(SHEETS), dates=(style.full, style.day))
    looked_through = [
        path for each in workbooks.values() for path in each if (path.parent.name, path.stem) in LOOKED_THROUGH
    ]
    assert len(looked_through) == len(LOOKED_THROUGH)
    for path in looked_through:
        faults = lint(path, week if path.name == "week.xlsx" else JOB)
        assert not faults, f"{path.parent.name}/{path.name}\n" + "\n".join(str(each) for each in faults[:20])
