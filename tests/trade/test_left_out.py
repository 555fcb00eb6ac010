"""What a job has nothing of is left out of its workbook, and is nothing in every formula."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from books import COMPANY, Rows, intake_from, jobs_of
from calc.declare import FormulaError, Section, at, exact, given, line, look_up
from calc.declared import Line
from calc.formula.levels import JOB, Level
from calc.intake.schema import everything
from calc.layout.bid_cautions import slots_for
from calc.layout.validations import validations_of
from calc.layout.workbook import addresses, papers_of, plan_of
from calc.model.evaluate import LEAST_ROOM, MOST_SLOTS, SHOWN_ROOM, evaluate, slots_of
from calc.model.results import JobValues, each_job
from calc.trade.catalog import SECTIONS
from calc.trade.hauling.choice import Choice
from calc.trade.hauling.piles import LoadMix
from calc.trade.levels import FOOTING, HAUL_PLACE, HAULED, PILE, PLAN, PLANT, STREAM

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


HAULING: dict[str, Rows] = {
    **COMPANY,
    "Wages": [["role", "private $/h"], ["laborer", 46], ["finisher", 58]],
    "Vehicles": [
        ["vehicle", "struck bed capacity yd3", "payload ton", "hourly rate $/h", "hired", "minimum hours h"],
        ["dump trailer", 5, 4.5, 40, "no", 0],
        ["dump truck", 10, 9, 95, "yes", 4],
    ],
    "Disposal sites": [
        ["site", "kind", "per ton $/ton", "one-way time min", "one-way distance mile"],
        ["landfill", "mixed", 45, 20, 9],
        ["crusher", "concrete debris", 12, 10, 4],
        ["clean fill", "soil", 9, 12, 5],
    ],
}
"""A company with two vehicles, and a site for each kind of pile that a job without plants has."""

RAGGED = (STREAM, PILE, PLAN, HAUL_PLACE, HAULED)


def names(job: JobValues, level: Level) -> list[str]:
    start = job.starts[level]
    return [str(word) for word in job.frame.rows_of(level).words[start : start + job.count(level)]]


def test_piles_and_plans_of_green_waste_are_for_jobs_with_plants(jobs: dict[str, JobValues]) -> None:
    assert [names(jobs["rich"], level) for level in RAGGED] == [list(level.axis.words) for level in RAGGED]
    for name in ("plain", "bare"):
        assert names(jobs[name], STREAM) == ["soil", "concrete debris"]
        assert names(jobs[name], PLAN) == ["all mixed", "concrete debris separated", "all separated", "soil separated"]
        assert names(jobs[name], PILE) == [
            "soil",
            "concrete debris",
            "everything mixed",
            "mixed without concrete debris",
            "nothing mixed",
            "mixed without soil",
        ]
        assert names(jobs[name], HAUL_PLACE) == ["concrete debris", "soil", "mixed"]
        assert names(jobs[name], HAULED) == ["soil", "concrete debris", "mixed"]


def test_no_sheet_of_the_haul_has_a_row_for_green_waste_where_there_is_none(jobs: dict[str, JobValues]) -> None:
    of_green = {word for level in RAGGED for word in level.axis.words}
    of_green -= {word for level in RAGGED for word in names(jobs["plain"], level)}
    haul = {"Haul workings", "Dig and haul", "Haul-off sheet"}
    said = {}
    for name, job in jobs.items():
        shape = job.shape, slots_for(job)
        plans = [plan for plan in (*plan_of(*shape), *papers_of(*shape)) if plan.page.name in haul]
        said[name] = {plan.page.name for plan in plans for cell in plan.cells if cell.shows(job) in of_green}
    assert said == {"rich": haul, "plain": set(), "bare": set()}


def test_the_drop_down_of_haul_plans_offers_those_that_the_job_has(jobs: dict[str, JobValues]) -> None:
    for name, job in jobs.items():
        (measured,) = (plan.page for plan in plan_of(job.shape, slots_for(job)) if plan.page.name == "Measured")
        (told,) = (told for _, told in validations_of(measured) if told["error_title"] == "Haul plan")
        assert told["source"] == ["cheapest", *names(job, PLAN)], name


NUMBERING = {
    "LoadMix.number",
    "HaulOrder.number",
    "PlanSplit.number",
    "PlanSplit.mixed_pile",
    "PlanSplit.mixed_place",
    "PilesInOrder.concrete",
    "PilesInOrder.soil",
    "PilesInOrder.mixed",
    "PlanWord.fallback",
    "PlanWord.fallback_all",
    "Choice.winner",
    "Choice.plan",
    "Choice.row",
    "RunnerUp.row",
    "RunnerUp.plan",
    "Hauled.row",
    "Hauled.place",
    "DumpAccount.first_site",
}
"""The lines that say which row it is."""

FORCED = ("cheapest", "all mixed", "concrete debris separated", "all separated", "soil separated")


def test_a_job_without_plants_costs_what_one_with_no_plants_left_costs(tmp_path: Path) -> None:
    """The one has no rows of green waste, the other has them all, empty; every number that both have is the same."""
    pairs = [(plan, f"{plan} {kind}") for plan in FORCED for kind in ("without", "emptied")]
    jobs_book: dict[str, Rows] = {
        "Jobs": [["job", "bid date"], *([job, "2026-04-13"] for _, job in pairs)],
        "Areas": [
            ["job", "length ft", "width ft", "old slab ft2", "old slab thickness in"],
            *([job, 30, 12, 80, 4] for _, job in pairs),
        ],
        "Site conditions": [
            ["job", "fact", "value"],
            *([job, "Haul plan", plan] for plan, job in pairs),
            *([job, "Haul reason", "to compare"] for plan, job in pairs if plan != "cheapest"),
        ],
        "Plants": [["job", "what", "quantity"], *([job, "shrub", 0] for _, job in pairs if job.endswith("emptied"))],
    }
    found = {each.job.id: each for each in jobs_of(intake_from(tmp_path, jobs_book, HAULING))}
    for plan in FORCED:
        without, emptied = (found[f"{plan} {kind}"] for kind in ("without", "emptied"))
        assert without.of(Choice.loads) > 0 and names(without, PLAN) != names(emptied, PLAN)
        for each in (each for each in everything() if isinstance(each, Line) and each.id not in NUMBERING):
            if each.section.needs == PLANT:
                continue
            ours, theirs = (dict(by_name(job, each)) for job in (without, emptied))
            assert not [row for row in ours if not same(ours[row], theirs[row])], (plan, each.id, ours, theirs)


def same(one: float | str, other: float | str) -> bool:
    if isinstance(one, str) or isinstance(other, str):
        return one == other
    return one == pytest.approx(other, rel=1e-12, abs=1e-12, nan_ok=True)


def by_name(job: JobValues, each: Line) -> Iterator[tuple[object, float | str]]:
    """The values of a line, by the names of its rows, or by their numbers where they have no names."""
    start, words = job.starts[each.level], job.frame.rows_of(each.level).words
    for row in range(job.count(each.level)):
        yield words[start + row] or row, job.of(each, row)


def test_a_rule_finds_a_row_that_some_jobs_lack_by_its_name_only() -> None:
    with pytest.raises(FormulaError, match="does not have every row in every job; name the row by row_called"):
        at(LoadMix.tons, exact(2))
    with pytest.raises(FormulaError, match="does not have every row in every job; use at"):
        look_up(LoadMix.tons, "soil")


def test_a_list_has_half_as_many_rows_again_as_the_job_needs_and_at_least_two_more() -> None:
    assert LEAST_ROOM == 2
    assert slots_of([0, 1, 2, 3, 4, 5, 5.2, 20]).tolist() == [2, 3, 4, 5, 6, 8, 9, 30]
    assert slots_of([0, 37], shown=True).tolist() == [SHOWN_ROOM, 37 + SHOWN_ROOM]
    assert slots_of([1e9]).tolist() == [MOST_SLOTS]
