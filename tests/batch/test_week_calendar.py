"""The calendar of the week: who is where on which day, how many crews that takes, and which days are over."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path

import pytest

from books import COMPANY, Rows, write_book
from calc import batch
from calc.layout.week import CALENDAR, JOBS
from calc.layout.week_calendar import PANEL
from calc.model.results import JobDays, WorkDay
from calc.model.week_calendar import week_calendar
from sheet_cells import read_cells

MONDAY = 46139.0
"""April 27, 2026."""


def days(
    job: str, *work: tuple[float, str, float], hours: float = 3.0, ask: float = 0.0, crews: float = 1.0
) -> JobDays:
    """A job with what it does on each day."""
    return JobDays(job, True, tuple(WorkDay(*each) for each in work), ask, hours, 7.0, crews)


def crews(jobs: Sequence[JobDays], sharing: Mapping[str, tuple[str, ...]] | None = None) -> list[tuple[int, float]]:
    """Crews and people of each day."""
    return [(each.crews, each.people) for each in week_calendar(jobs, sharing or {}).days]


def test_two_pours_on_one_day_need_two_crews_and_the_day_is_over() -> None:
    jobs = [days("A", (MONDAY, "pour", 3)), days("B", (MONDAY, "pour", 4))]
    assert crews(jobs) == [(2, 7)]
    assert [each.day for each in week_calendar(jobs, {}).over] == [MONDAY]
    assert week_calendar([days("A", (MONDAY, "pour", 3), crews=2), jobs[1]], {}).over == ()


def test_stripping_and_sealing_take_a_person_and_no_crew() -> None:
    assert crews([days("A", (MONDAY, "strip", 1)), days("B", (MONDAY, "seal", 1)), days("C", (MONDAY, "prep", 2))]) == [
        (1, 4)
    ]


def test_a_shared_truck_is_one_crew_only_where_both_pours_fit_the_day() -> None:
    truck = {"A": ("A", "B"), "B": ("A", "B")}
    fits = [days("A", (MONDAY, "pour", 3), hours=3.0), days("B", (MONDAY, "pour", 4), hours=4.0)]
    long = [fits[0], days("B", (MONDAY, "pour", 4), hours=4.1)]
    apart = [fits[0], days("B", (MONDAY + 1, "pour", 4))]
    assert crews(fits, truck) == [(1, 4)]
    assert crews(long, truck) == [(2, 7)]
    assert crews(apart, truck) == [(1, 3), (1, 4)]


def test_a_day_on_which_there_is_only_a_ticket_to_ask_for_is_listed() -> None:
    found = week_calendar([days("A", (MONDAY, "pour", 3), ask=MONDAY - 4)], {})
    assert [(each.day, each.crews, each.ask) for each in found.days] == [(MONDAY - 4, 0, ("A",)), (MONDAY, 1, ())]


@pytest.fixture(scope="module")
def week(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The week's workbook of ten jobs around Memorial Day, one without a pour date, with one crew."""
    folder = tmp_path_factory.mktemp("calendar")
    write_book(
        folder / "company.xlsx", {**COMPANY, "Holidays": [["holiday", "date"], ["Memorial Day 2026", "2026-05-25"]]}
    )
    pours = [*(f"2026-05-{day}" for day in (26, 27, 27, 28, 29)), None, *(f"2026-06-0{day}" for day in (1, 2, 3, 4))]
    jobs: Rows = [
        ["job", "bid date", "pour date"],
        *([f"27-{number:03}", "2026-05-01", pour] for number, pour in enumerate(pours)),
    ]
    areas: Rows = [
        ["job", "area", "length ft", "width ft", "thickness in"],
        *([f"27-{number:03}", "A1", 30, 5, 4] for number in range(10)),
    ]
    run = batch.load_run([write_book(folder / "jobs.xlsx", {"Jobs": jobs, "Areas": areas})], None, None)
    batch.bid(run, folder / "out")
    (path,) = [path for name, path, _ in run.written if not name]
    return path


def shown(week: Path, sheet: str) -> list[list[object]]:
    """The rows of a sheet, as they show, without the numbers of the rows."""
    held = {ref: each.value for (name, ref), each in read_cells(week).items() if name == sheet}
    rows: dict[int, list[object]] = {}
    for ref, what in held.items():
        rows.setdefault(int("".join(filter(str.isdigit, ref))), [])
        if not re.fullmatch(r"A\d+", ref):
            rows[int("".join(filter(str.isdigit, ref)))].append(what)
    return [rows[row] for row in sorted(rows)]


def test_the_friday_before_a_holiday_weekend_has_the_preparation(week: Path) -> None:
    rows = shown(week, CALENDAR)
    (friday,) = [row for row in rows if row[:1] == [46164.0] and len(row) > PANEL]
    assert "prep 2" in friday
    assert not [row for row in rows if row[:1] == [46167.0]], "nobody works on Memorial Day"


def test_an_eighth_job_stands_in_a_panel_below_with_its_days(week: Path) -> None:
    rows = shown(week, CALENDAR)
    heads = [row for row in rows if row[:1] == ["Day"]]
    assert [len([each for each in row if str(each).startswith("27-")]) for row in heads] == [PANEL, 2]
    assert any(row[:1] == [46177.0] and "pour 3" in row for row in rows[rows.index(heads[1]) :])


def test_a_job_without_a_pour_date_is_named_below_the_days(week: Path) -> None:
    assert ["No pour date", "27-005"] in shown(week, CALENDAR)


def test_the_front_names_in_words_the_days_that_need_more_crews(week: Path) -> None:
    rows = shown(week, JOBS)
    start = next(number for number, row in enumerate(rows) if row[:1] == ["Days that need more than the company has"])
    (wednesday,) = [row for row in rows[start:] if row[:1] == ["Wed May 27"]]
    assert wednesday[1] == "3 crews needed, 1 had; 8 people needed"
    assert str(wednesday[2]).startswith("27-001 pour 3, 27-002 pour 3")


def test_people_that_the_company_lacks_make_a_day_over_though_it_has_the_crews() -> None:
    jobs = [days("A", (MONDAY, "pour", 3), crews=2), days("B", (MONDAY, "pour", 4), crews=2)]
    enough, few = (week_calendar([replace(each, people_had=had) for each in jobs], {}) for had in (7.0, 6.0))
    assert enough.over == ()
    assert [each.day for each in few.over] == [MONDAY]


def test_a_job_whose_crew_comes_from_the_stop_before_is_counted_with_it() -> None:
    """The sums of the sheet Visits are those of the calendar: a crew that two jobs share is counted once."""
    fits = [days("A", (MONDAY, "pour", 3)), days("B", (MONDAY, "pour", 4))]
    (day,) = week_calendar(fits, {"A": ("A", "B"), "B": ("A", "B")}).days
    assert day.counted == {"A": (1, 4), "B": (0, 0.0)}
