"""The sheet Checks: every check with both routes in one row, and the active cautions in full, on two pages."""

from __future__ import annotations

from pathlib import Path

import openpyxl
import pytest

from books import written_sheet
from calc import api, batch
from calc.declared import Caution, Check
from calc.files import shipped
from calc.layout.bid_cautions import slots_for
from calc.layout.caution_table import active_cautions, all_cautions, limit_of
from calc.layout.checks_sheet import PROVEN, TOLD, all_checks
from calc.layout.grid import CHECKS, ITEM, VALUE, WORKINGS
from calc.layout.page import FullSizePage
from calc.layout.text_width import text_width
from calc.layout.workbook import plan_of
from calc.model.results import JobValues

_INDENT = 9.0
"""Pixels by which a text is set in."""


@pytest.fixture(scope="module")
def job() -> JobValues:
    """The simplest job of the demo."""
    (values,) = batch.evaluated([api.read(shipped("sample_inputs") / "jobs.xlsx").job("26-041")])
    return values


def rows_of(job: JobValues, folder: Path) -> list[list[object]]:
    """The rows of the sheet as they open."""
    path = written_sheet(job, "Checks", folder / "checks.xlsx")
    book = openpyxl.load_workbook(path, read_only=True, data_only=True)
    rows = [list(row) for row in book["Checks"].iter_rows(values_only=True)]
    book.close()
    return rows


@pytest.mark.parametrize("check", all_checks(), ids=lambda check: check.label)
def test_a_check_is_read_in_one_row_and_says_what_to_do(check: Check) -> None:
    assert text_width(check.label) <= CHECKS.room(ITEM, ITEM)
    for text in (check.compared, check.remedy):
        assert text.strip() and '"' not in text
        assert text_width(text) <= CHECKS.room(TOLD) - _INDENT, text


def test_no_check_holds_a_number_against_nothing(job: JobValues) -> None:
    shown = [each for each in all_checks() if job.of(each.one) != 0]
    assert len(shown) > len(all_checks()) / 2
    assert [each.label for each in shown if job.of(each.another) == 0] == []


@pytest.mark.parametrize("caution", all_cautions(), ids=lambda caution: caution.label)
def test_a_caution_is_read_whole_on_checks_and_in_the_table_of_all(caution: Caution) -> None:
    assert text_width(caution.do) <= CHECKS.room(VALUE + 2)
    assert text_width(limit_of(caution)) <= CHECKS.room(ITEM)
    assert text_width(caution.usual) <= WORKINGS.room(VALUE + 5) - _INDENT


def test_the_checks_and_the_cautions_of_a_usual_job_take_two_pages(job: JobValues) -> None:
    (page,) = (each.page for each in plan_of(job.shape, slots_for(job)) if each.page.name == "Checks")
    assert isinstance(page, FullSizePage)
    assert len(page.breaks) == 1, "and no page is longer than its room, or there were more breaks"


def test_the_active_cautions_stand_on_checks_with_what_was_found_what_to_do_and_who_says_so(
    job: JobValues, tmp_path: Path
) -> None:
    book = openpyxl.load_workbook(
        written_sheet(job, "Checks", tmp_path / "checks.xlsx"), read_only=True, data_only=True
    )
    rows = [list(row) for row in book["Checks"].iter_rows(values_only=True)]
    start = next(place for place, row in enumerate(rows) if row[ITEM] == "Caution") + 1
    active = list(active_cautions(job))
    assert len(active) > 8
    for place, each in enumerate(active):
        first, second, third = rows[start + 3 * place : start + 3 * place + 3]
        assert (first[ITEM], second[ITEM], third[ITEM]) == (each.label, each.severity.value, limit_of(each))
        assert (first[VALUE + 2], second[VALUE + 2]) == (job.of(each.found), each.do)
        assert second[VALUE] == pytest.approx(job.of(each.number))


def test_every_check_of_the_workbook_itself_passes_as_it_is_written(job: JobValues, tmp_path: Path) -> None:
    book = openpyxl.load_workbook(
        written_sheet(job, "Checks", tmp_path / "checks.xlsx"), read_only=True, data_only=True
    )
    rows = [list(row) for row in book["Checks"].iter_rows(values_only=True)]
    labels = [*(each.label for each in all_checks()), "Job cost = Costs", *(each.label for each in PROVEN)]
    shown = {row[ITEM]: row[VALUE + 3] for row in rows if row[ITEM] in labels}
    assert shown == dict.fromkeys(labels, 0)
