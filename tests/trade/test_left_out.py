"""What a job has nothing of is left out of its workbook, and is nothing in every formula."""

from __future__ import annotations

import pytest

from books import COMPANY, intake_from, jobs_of
from calc.declare import FormulaError, Section, exact, given, line
from calc.declared import Line
from calc.formula.levels import JOB
from calc.layout.bid_cautions import slots_for
from calc.layout.workbook import addresses, plan_of
from calc.model.evaluate import LEAST_ROOM, MOST_SLOTS, SHOWN_ROOM, evaluate, slots_of
from calc.model.results import JobValues, each_job
from calc.trade.catalog import SECTIONS
from calc.trade.levels import FOOTING

WEEK = {
    "Jobs": [["job", "bid date"], ["plain", "2026-04-13"], ["rich", "2026-04-13"], ["bare", "2026-04-13"]],
    "Areas": [
        ["job", "area", "length ft", "width ft", "base in"],
        *([job, "A1", 12, 3, 4] for job in ("plain", "rich", "bare")),
    ],
    "Footings": [
        ["job", "area", "length ft", "width ft", "depth to top of footing in", "required cover in"],
        ["rich", "A1", 1, 1, 3, 4],
    ],
    "Plants": [
        ["job", "what", "quantity", "width ft", "depth ft", "height ft"],
        ["rich", "shrub", 3, 2, 2, 3],
    ],
    "Deductions": [["job", "area", "shape", "length ft", "width ft"], ["rich", "A1", "rectangle", 1, 1]],
    "Cross-sections": [["job", "area", "station ft", "depth in"], ["rich", "A1", 1, 4], ["rich", "A1", 2, 5]],
}
"""Two jobs of nothing but a strip, and between them one with a footing, a shrub, an opening and measured depths."""

BY_NEED = [section for section in SECTIONS if section.needs != JOB]


@pytest.fixture(scope="module")
def jobs(tmp_path_factory: pytest.TempPathFactory) -> dict[str, JobValues]:
    """The three jobs, evaluated together."""
    found = jobs_of(intake_from(tmp_path_factory.mktemp("left-out"), WEEK, COMPANY))
    return {each.job.id: each for each in found}


def left_out(job: JobValues) -> list[type[Section]]:
    return [section for section in SECTIONS if section.is_left_out(job.counts)]


def test_a_section_of_a_job_that_has_nothing_of_it_is_not_written(jobs: dict[str, JobValues]) -> None:
    job = jobs["plain"]
    shape = job.shape, slots_for(job)
    places = {id_ for id_, _ in addresses(*shape)}
    heads = {
        (plan.page.name, cell.shows(job)) for plan in plan_of(*shape) for cell in plan.cells if cell.role == "section"
    }
    assert any(section.needs != JOB for section in left_out(job))
    for section in left_out(job):
        assert (section.sheet, section.title) not in heads
        assert not places & {each.id for each in section.members if isinstance(each, Line)}


def test_a_job_that_has_something_of_a_section_has_all_of_it(jobs: dict[str, JobValues]) -> None:
    job = jobs["rich"]
    assert not {section.title for section in left_out(job)} & {section.title for section in BY_NEED}
    places = addresses(job.shape, slots_for(job))
    lines = [each for section in BY_NEED for each in section.members if isinstance(each, Line)]
    assert lines
    assert all((each.id, 0) in places for each in lines if not each.name.endswith("_all") and each.section.sheet)


def test_a_line_of_a_section_that_is_left_out_is_nothing(jobs: dict[str, JobValues]) -> None:
    for name in ("plain", "bare"):
        job = jobs[name]
        lines = [each for section in BY_NEED for each in section.members if isinstance(each, Line)]
        values = {job.of(each, row) for each in lines for row in range(job.count(each.level))}
        assert values == {0.0, "-"}


def test_a_job_is_worth_the_same_beside_one_that_has_more(jobs: dict[str, JobValues]) -> None:
    for each in jobs.values():
        (alone,) = each_job(evaluate([each.job]), [each.job])
        assert alone.counts == each.counts
        for section in SECTIONS:
            for member in section.members:
                rows = range(each.count(member.level))
                together = [str(each.of(member, row)) for row in rows]
                assert [str(alone.of(member, row)) for row in rows] == together, member.id


def test_a_line_that_may_be_overridden_is_never_left_out() -> None:
    with pytest.raises(FormulaError, match="may be overridden, so its section is never left out"):

        class Footings(Section, title="Footings that may be overridden", needs=FOOTING):
            """A box on Measured would have nothing behind it."""

            sides = given("Sides", "")
            both_sides = line("Both sides", "", sides * exact(2), source="twice", may_be_overridden=True)


def test_a_list_has_half_as_many_rows_again_as_the_job_needs_and_at_least_two_more() -> None:
    assert LEAST_ROOM == 2
    assert slots_of([0, 1, 2, 3, 4, 5, 5.2, 20]).tolist() == [2, 3, 4, 5, 6, 8, 9, 30]
    assert slots_of([0, 37], shown=True).tolist() == [SHOWN_ROOM, 37 + SHOWN_ROOM]
    assert slots_of([1e9]).tolist() == [MOST_SLOTS]
