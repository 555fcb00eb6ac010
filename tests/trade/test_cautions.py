"""Cautions are active past their limits and not before, most severe first, and a stop is open until acknowledged."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import openpyxl
import pytest

from books import COMPANY, Rows, intake_from, only_job, value, write_book, written_sheet
from calc import batch
from calc.batch import job_findings
from calc.declared import Caution, Severity
from calc.errors import FindingKind
from calc.intake.read_run import has_error
from calc.layout.bid_cautions import DO, NUMBER, SEVERITY, SHOWN
from calc.layout.caution_table import active_cautions, all_cautions
from calc.layout.front_page import GRID, LAST
from calc.layout.grid import CHECKS, VALUE
from calc.layout.text_width import text_width
from calc.model.results import JobValues
from caution_limits import LIMITS as FIRST_LIMITS
from caution_limits import STANDING, WELL, Limit, Tables, a_job, acknowledged, ordered, weathered
from caution_limits_site import MORE
from priced_company import PRICED

LIMITS = FIRST_LIMITS | MORE
CAUTIONS = {each.id: each for each in all_cautions()}
A_FEW = slice(None, None, 6)
"""Of the stops, those whose workbook is written: it is the same writer for all."""
STOPS = [name for name, each in CAUTIONS.items() if each.severity is Severity.STOP and name in LIMITS]
LABEL = 0
CompanyBook = Mapping[str, Rows]


@pytest.fixture(scope="module")
def jobs(tmp_path_factory: pytest.TempPathFactory) -> dict[tuple[str, bool], JobValues]:
    """For every caution the job just inside its limit (False) and the one just past it (True), worked out together."""
    sides = [(name, past) for name in LIMITS for past in (False, True)]
    folder = tmp_path_factory.mktemp("limits")
    intakes = [intake_from(folder, *_on_side(LIMITS[name], loud)) for name, loud in sides]
    wrong = [str(found) for each in intakes for found in each.findings if found.severity.word == "error"]
    assert not wrong, wrong[:5]
    assert not any(has_error(job, each.findings) for each in intakes for job in each.jobs)
    inputs = [job for each in intakes for job in each.jobs]
    return dict(zip(sides, batch.evaluated(inputs), strict=True))


def _on_side(limit: Limit, past: bool) -> tuple[Tables, CompanyBook]:
    return (limit.past, limit.past_company or COMPANY) if past else (limit.inside, limit.inside_company or COMPANY)


def earned(folder: Path, tables: Tables) -> dict[str, Caution]:
    """The cautions that a job earns, in order, by id."""
    return {each.id: each for each in active_cautions(only_job(folder, tables))}


def front_page(folder: Path, tables: Tables, company: CompanyBook = COMPANY) -> list[list[object]]:
    """The rows of the sheet Bid as they open."""
    path = written_sheet(only_job(folder, tables, company), "Bid", folder / "bid.xlsx")
    book = openpyxl.load_workbook(path, read_only=True, data_only=True)
    rows = [list(row) for row in book["Bid"].iter_rows(values_only=True)]
    book.close()
    return rows


def readiness(rows: list[list[object]]) -> str:
    """What the front page says beside the price."""
    return next(str(each) for row in rows for each in row if str(each).startswith(("READY", "NOT READY")))


def taken(folder: Path, tables: Tables, company: CompanyBook = COMPANY) -> batch.Run:
    """What a run takes in from one book."""
    company_book = write_book(folder / "company.xlsx", company)
    return batch.load_run([write_book(folder / "week.xlsx", tables)], company_book, None)


def checked(folder: Path, tables: Tables, company: CompanyBook = COMPANY) -> batch.Run:
    """A run that finds everything and writes nothing."""
    run = taken(folder, tables, company)
    for job in batch.evaluated(batch.ready_jobs(run)):
        run.findings += batch.job_findings(job)
    return run


def bid(folder: Path, tables: Tables) -> batch.Run:
    """A run that writes its workbooks."""
    run = taken(folder, tables)
    batch.bid(run, folder / "outputs")
    return run


def test_no_caution_goes_untried_on_either_side_of_its_limit() -> None:
    assert set(LIMITS) == set(CAUTIONS)


@pytest.mark.parametrize("name", LIMITS)
def test_a_job_just_inside_a_limit_is_not_warned(name: str, jobs: dict[tuple[str, bool], JobValues]) -> None:
    assert name not in {each.id for each in active_cautions(jobs[name, False])}


@pytest.mark.parametrize("name", LIMITS)
def test_a_job_just_past_a_limit_is_warned_with_the_number(name: str, jobs: dict[tuple[str, bool], JobValues]) -> None:
    job = jobs[name, True]
    caution = next((each for each in active_cautions(job) if each.id == name), None)
    assert caution is not None
    assert job.of(caution.number) == pytest.approx(LIMITS[name].number, rel=1e-9)


@pytest.mark.parametrize("name", CAUTIONS)
def test_a_caution_says_what_is_usual_what_to_do_and_who_says_so(name: str) -> None:
    caution = CAUTIONS[name]
    assert all(text.strip() for text in (caution.usual, caution.do, caution.source))
    told = f"{caution.label} {caution.found.formula.words} {caution.usual} {caution.do}".casefold()
    assert "illegal" not in told, "usual limits are not law: local code is"


@pytest.mark.parametrize("name", LIMITS)
def test_what_to_do_has_room_on_the_bid_and_what_was_found_on_checks(
    name: str, jobs: dict[tuple[str, bool], JobValues]
) -> None:
    caution = CAUTIONS[name]
    assert text_width(caution.brief) <= GRID.room(DO, LAST), caution.brief
    assert text_width(caution.label) <= GRID.room(LABEL, SEVERITY - 1), caution.label
    found = str(jobs[name, True].of(caution.found))
    assert text_width(found) <= CHECKS.room(VALUE + 2), found


def test_a_job_with_nothing_wrong_is_spared_all_but_the_standing_notes(tmp_path: Path) -> None:
    asked = [["Permit", 0], ["Client kind", "owner"], ["Air temperature", 70], ["Concrete temperature", 70]]
    well = WELL | {"Site conditions": [["fact", "value"], *asked]}
    by_truck = PRICED | {"Prices": [row for row in PRICED["Prices"] if row[0] != "Concrete bag"]}
    found = {each.id: each for each in active_cautions(only_job(tmp_path, well, by_truck))}
    assert set(found) == STANDING
    assert {each.severity for each in found.values()} == {Severity.NOTE}


def test_without_a_coat_of_bonding_agent_nothing_is_bonded_so_the_slab_is_free(tmp_path: Path) -> None:
    held = LIMITS["SlabCautions.restraint"].past
    bare = held | {"Site conditions": [["fact", "value"], ["Bonding coats", 0]]}
    assert "SlabCautions.restraint" in earned(tmp_path, held)
    assert "SlabCautions.restraint" not in earned(tmp_path, bare)


def test_a_pour_from_bags_opens_the_ground_and_burns_skin_but_backs_no_truck_up(tmp_path: Path) -> None:
    bags, company = LIMITS["SafetyCautions.lifting"].past, LIMITS["SafetyCautions.lifting"].past_company
    found = {each.id for each in active_cautions(only_job(tmp_path, bags, company or COMPANY))}
    assert {"SiteCautions.utilities", "SiteCautions.concrete_burns", "PourCautions.surface_water"} <= found
    assert not {"SafetyCautions.backing", "SiteCautions.washout"} & found


def test_the_locate_note_names_the_ticket_and_its_last_day_once_they_are_typed(tmp_path: Path) -> None:
    facts = [["fact", "value"], ["Locate ticket", "2604-1187"], ["Locate expires", "2026-05-11"]]
    job = only_job(tmp_path, WELL | {"Site conditions": facts})
    note = CAUTIONS["SiteCautions.utilities"]
    assert job.of(note.found) == "Locate ticket 2604-1187: its last day is 28 days after the bid date."
    assert job.of(note.number) == 28


def test_a_finishing_time_is_not_known_on_the_paper_until_the_concrete_has_a_temperature(tmp_path: Path) -> None:
    bare, typed = only_job(tmp_path, WELL), only_job(tmp_path, weathered(Concrete_temperature=75))
    assert value(bare, "PourText.finish_window") == "not known"
    assert value(typed, "PourText.finish_window") == "2 h 43 min"  # 3.125 h, less 25 min


def test_a_slab_below_the_stop_is_not_told_twice_that_it_is_thin(tmp_path: Path) -> None:
    found = earned(tmp_path, a_job(slabs=[1.5, 3, 3]))
    assert [name for name in found if "thin" in name] == ["SlabCautions.too_thin"]


def test_the_most_severe_caution_is_first_on_the_front_page(tmp_path: Path) -> None:
    past = ordered(0.1) | {"Areas": a_job(slabs=[1.5])["Areas"]}
    job = only_job(tmp_path, past)
    order = [each.severity for each in active_cautions(job)]
    assert order == sorted(order, key=list(Severity).index)
    assert set(order) == set(Severity), "the job must earn one of each to say anything"
    words = {each.value for each in Severity}
    front = front_page(tmp_path, past)
    shown = [row for row in front if row[SEVERITY] in words]
    first = list(active_cautions(job))[:SHOWN]
    assert len(order) > SHOWN, "more must be active than the page shows"
    assert [row[LABEL] for row in shown] == [each.label for each in first]
    assert [row[SEVERITY] for row in shown] == [each.value for each in order[:SHOWN]]
    assert [row[DO] for row in shown] == [each.brief for each in first]
    assert [row[NUMBER] for row in shown] == [pytest.approx(job.of(each.number)) for each in first]
    assert f"and {len(order) - SHOWN} more on Checks" in [row[LAST] for row in front]


@pytest.mark.parametrize("name", STOPS[A_FEW])
def test_a_stop_keeps_the_bid_from_being_ready_until_a_person_acknowledges_it_by_name(
    name: str, tmp_path: Path
) -> None:
    caution, past, company = CAUTIONS[name], LIMITS[name].past, LIMITS[name].past_company or PRICED
    assert readiness(front_page(tmp_path, past, company)).startswith("NOT READY: 1 stop not acknowledged")
    rows = front_page(tmp_path, acknowledged(past, caution.label), company)
    assert readiness(rows) == "READY TO SEND"
    assert caution.label in [row[LABEL] for row in rows], "an acknowledged stop is still shown"


@pytest.mark.parametrize("name", STOPS)
def test_a_stop_is_a_finding_that_says_what_to_do_and_makes_the_exit_code_1(
    name: str, jobs: dict[tuple[str, bool], JobValues]
) -> None:
    findings = job_findings(jobs[name, True])
    assert batch.Run(findings=findings).code == 1
    found = [each for each in findings if each.job == "one" and CAUTIONS[name].label in each.found]
    assert [each.remedy for each in found] == [CAUTIONS[name].do]


@pytest.mark.parametrize("name", STOPS)
def test_an_acknowledged_stop_is_no_finding_and_the_exit_code_is_0(name: str, tmp_path: Path) -> None:
    past = acknowledged(LIMITS[name].past, CAUTIONS[name].label)
    run = checked(tmp_path, past, LIMITS[name].past_company or COMPANY)
    assert [each for each in run.findings if each.severity.word == "error"] == []
    assert run.code == 0


@pytest.mark.parametrize("missing", ["reason", "who"])
@pytest.mark.parametrize("name", STOPS)
def test_a_stop_is_not_acknowledged_without_a_reason_and_a_name(name: str, missing: str, tmp_path: Path) -> None:
    run = taken(tmp_path, acknowledged(LIMITS[name].past, CAUTIONS[name].label, **{missing: ""}))
    assert run.not_written == ["one"]
    assert run.code == 1
    assert [each.kind for each in run.findings if each.place.sheet == "Overrides"] == [FindingKind.MISSING_REASON]


@pytest.mark.parametrize("name", [each for each in LIMITS if each not in STOPS])
def test_a_caution_or_a_note_is_no_finding_so_the_exit_code_stays_0(
    name: str, jobs: dict[tuple[str, bool], JobValues]
) -> None:
    found = job_findings(jobs[name, True])
    assert [each for each in found if each.severity.word == "error"] == []


def test_a_stop_in_one_job_keeps_no_workbook_of_the_week_from_being_written(tmp_path: Path) -> None:
    tables: Tables = {
        "Jobs": [["job", "bid date"], ["thin", "2026-04-13"], ["sound", "2026-04-13"]],
        "Areas": [["job", "length ft", "width ft", "thickness in"], ["thin", 9, 9, 1.5], ["sound", 9, 9, 4]],
    }
    run = bid(tmp_path, tables)
    assert run.code == 1
    assert {job for job, _, _ in run.written} >= {"thin", "sound"}
    assert {each.job for each in run.findings if each.severity.word == "error"} == {"thin"}
