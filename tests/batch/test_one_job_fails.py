"""A job that cannot be worked out costs no other job, nor the week, and is told with what made it."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from books import Rows, write_book
from calc import batch
from calc.batch import worker
from calc.errors import FindingKind
from calc.intake import company_book
from calc.model.evaluate import evaluate
from short_workbooks import short_workbook

JOBS = ("one", "round", "three")


@pytest.fixture
def week(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A jobs book of three jobs; the forms of one are curved, and the company spaces the stakes of those by 0 ft."""
    worker._evaluate_chunk.cache_clear()
    monkeypatch.setattr(worker, "job_workbook", short_workbook)
    monkeypatch.setattr(company_book, "divided_by", frozenset)  # so that the reader lets 0 pass
    tables: dict[str, Rows] = {
        "Jobs": [["job", "bid date"], *([job, "2026-04-13"] for job in JOBS)],
        "Areas": [["job", "length ft", "width ft"], *([job, 12, 3] for job in JOBS)],
        "Edges": [["job", "kind", "length ft", "curved"], *([job, "form", 12, "yes"] for job in JOBS[1:2])],
    }
    write_book(tmp_path / "company.xlsx", {"Factors": [["factor", "value"], ["Stake spacing on a curve", 0]]})
    return write_book(tmp_path / "jobs.xlsx", tables)


def told_by_the_week(folder: Path) -> set[object]:
    """Every value of the workbook of the week."""
    return {cell.value for sheet in openpyxl.load_workbook(folder / "week.xlsx") for row in sheet for cell in row}


def test_an_infinity_in_one_job_touches_no_other_and_names_its_cell(week: Path) -> None:
    run = batch.load_run([week], None, None)
    batch.bid(run, week.parent / "out")
    found = [each for each in run.findings if each.kind is FindingKind.INFINITE_NUMBER]
    assert [(each.job, str(each.place)) for each in found] == [("round", "company.xlsx Factors!B2")]
    assert "Stake spacing on a curve, 0" in found[0].remedy and run.not_written == ["round"] and run.failures == []
    assert [job for job, _, _ in run.written] == ["one", "three", ""] and run.code == 1
    told = told_by_the_week(week.parent / "out")
    assert {"one", "round", "three"} <= told and not any("inf" in str(each).split() for each in told)
    checked = batch.load_run([week], None, None)
    batch.check(checked)
    assert [each.state for each in checked.outcomes] == [each.state for each in run.outcomes]
    assert checked.not_written == ["round"]


@pytest.mark.parametrize("where", ["evaluate", "row_of"])
def test_an_error_of_the_rules_in_one_job_touches_no_other(
    where: str, week: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    row_of = worker.row_of

    def fails(jobs: Sequence[Any]) -> Any:
        if any(job.id == "three" for job in jobs):
            raise IndexError("list index out of range")
        return evaluate(jobs)

    def fails_for_the_week(values: Any, file: str) -> Any:
        if values.job.id == "three":
            raise IndexError("list index out of range")
        return row_of(values, file)

    monkeypatch.setattr(worker, where, fails if where == "evaluate" else fails_for_the_week)
    run = batch.load_run([week], None, None)
    batch.bid(run, week.parent / "out")
    assert run.failures == ["three: it could not be worked out: IndexError: list index out of range"] and run.code == 3
    assert [job for job, _, _ in run.written] == ["one", ""] and run.not_written == ["round"]
