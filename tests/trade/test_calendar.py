"""The days of a job: by hand around weekends and holidays, by published dates, against another program."""

from __future__ import annotations

import random
from collections.abc import Mapping
from datetime import date, timedelta
from pathlib import Path

import pytest

from books import COMPANY, Rows, intake_from, jobs_of, only_job, value
from calc.formula.dates import words_of
from calc.model.results import JobValues
from calc.trade.levels import DAY
from reference_engine.calendar_days import job_days
from reference_engine.factors import Factors

EPOCH = date(1899, 12, 30)

FEDERAL_2026 = {
    date(2026, 1, 1): "Thu",
    date(2026, 1, 19): "Mon",
    date(2026, 2, 16): "Mon",
    date(2026, 5, 25): "Mon",
    date(2026, 6, 19): "Fri",
    date(2026, 7, 3): "Fri",
    date(2026, 9, 7): "Mon",
    date(2026, 10, 12): "Mon",
    date(2026, 11, 11): "Wed",
    date(2026, 11, 26): "Thu",
    date(2026, 12, 25): "Fri",
}
"""Federal holidays of 2026 and their weekdays: 5 U.S.C. 6103, by the list of the Office of Personnel Management, from
memory; July 4 is a Saturday and observed on Friday, July 3."""


def serial(day: date) -> float:
    """The number of a day in a spreadsheet."""
    return float((day - EPOCH).days)


def company(holidays: Mapping[str, date] | None = None, **facts: object) -> dict[str, Rows]:
    """The company book with facts and holidays."""
    told: list[list[object]] = [["fact", "value"], ["Company", "Gravelly Bend Flatwork"]]
    told += [[name.replace("_", " "), typed] for name, typed in facts.items()]
    days: list[list[object]] = [
        ["holiday", "date"],
        *([name, day.isoformat()] for name, day in (holidays or {}).items()),
    ]
    return {**COMPANY, "Company": told, **({"Holidays": days} if holidays else {})}


def walk(pour: date | None, *site: tuple[str, object], length: float = 40, width: float = 10) -> dict[str, Rows]:
    """A walk dug 8 in deep: 40 by 10 ft takes more than one preparation day."""
    day = [["job", "bid date", "pour date"], ["one", "2026-01-05", pour.isoformat() if pour else None]]
    areas = [["length ft", "width ft", "thickness in", "base in"], [length, width, 4, 4]]
    return {"Jobs": day, "Areas": areas, "Site conditions": [["fact", "value"], *(list(each) for each in site)]}


def worked_on(job: JobValues, visit: str) -> list[date]:
    """The days of a kind of visit."""
    return [
        EPOCH + timedelta(days=float(value(job, "CalendarDay.on", row)))
        for row in range(job.count(DAY))
        if value(job, "DayWork.visit", row) == visit
    ]


def day(job: JobValues, name: str) -> date | None:
    """A day of the calendar; None where it is not known."""
    number = float(value(job, f"Calendar.{name}"))
    return EPOCH + timedelta(days=number) if number else None


MONDAY = date(2026, 4, 27)


def test_preparation_before_a_monday_is_on_friday(tmp_path: Path) -> None:
    job = only_job(tmp_path, walk(MONDAY, length=12, width=4), company())
    assert worked_on(job, "prep") == [date(2026, 4, 24)]
    assert (day(job, "locate_by"), day(job, "strip_day")) == (date(2026, 4, 22), None)


def test_three_days_over_a_weekend_skip_it(tmp_path: Path) -> None:
    job = only_job(tmp_path, walk(date(2026, 4, 28), length=60), company())
    count = int(float(value(job, "CalendarRules.prep")))
    assert count >= 3
    working = [date(2026, 4, each) for each in (13, 14, 15, 16, 17, 20, 21, 22, 23, 24, 27)]
    assert worked_on(job, "prep") == working[-count:]


def test_a_saturday_is_worked_on_only_where_the_company_says_so(tmp_path: Path) -> None:
    job = only_job(tmp_path, walk(MONDAY, length=12, width=4), company(Saturday_work="yes"))
    assert worked_on(job, "prep") == [date(2026, 4, 25)]
    assert day(job, "locate_by") == date(2026, 4, 23)


def test_nobody_works_on_a_holiday(tmp_path: Path) -> None:
    book = company({"Day off": date(2026, 4, 24)})
    job = only_job(tmp_path, walk(MONDAY, length=12, width=4), book)
    assert worked_on(job, "prep") == [date(2026, 4, 23)]
    assert day(job, "locate_by") == date(2026, 4, 21)


def test_a_pour_on_a_sunday_or_a_holiday_is_asked_about(tmp_path: Path) -> None:
    book = company({"Memorial Day 2026": date(2026, 5, 25)})
    asked = {
        pour: float(value(only_job(tmp_path, walk(pour), book), "Calendar.days_off"))
        for pour in (date(2026, 5, 22), date(2026, 5, 23), date(2026, 5, 24), date(2026, 5, 25), date(2026, 5, 26))
    }
    assert list(asked.values()) == [0, 3, 2, 1, 0]


def test_bags_that_share_the_visit_prepare_on_the_day_of_the_pour(tmp_path: Path) -> None:
    bags = ("Placing method", "bags"), ("Placing reason", "no truck gets in")
    book = {**company(), "Prices": [["item", "price", "unit", "size"], ["Concrete bag", 6.5, "bag", 0.6]]}
    job = only_job(tmp_path, walk(MONDAY, *bags, length=3, width=2), book)
    assert worked_on(job, "prep") == []
    assert (day(job, "first_prep_day"), day(job, "last_prep_day")) == (MONDAY, MONDAY)
    assert day(job, "locate_by") == date(2026, 4, 23)


def test_sealing_waits_28_days_and_for_the_end_of_a_holiday(tmp_path: Path) -> None:
    # 28 days after Monday April 27 is Monday May 25
    sealed = walk(MONDAY, ("Sealer coats", 1), length=12, width=4)
    assert day(only_job(tmp_path, sealed, company()), "seal_day") == date(2026, 5, 25)
    book = company({"Memorial Day 2026": date(2026, 5, 25)})
    assert day(only_job(tmp_path, sealed, book), "seal_day") == date(2026, 5, 26)


def test_without_a_pour_date_no_day_is_made_up(tmp_path: Path) -> None:
    job = only_job(tmp_path, walk(None), company())
    names = ("pour_day", "first_prep_day", "last_prep_day", "strip_day", "seal_day", "locate_by")
    assert [day(job, name) for name in names] == [None] * 6
    assert [value(job, f"Calendar.{name}") for name in ("start_words", "pour_words", "locate_words")] == [
        "not known"
    ] * 3
    assert {value(job, "DayWork.visit", row) for row in range(job.count(DAY))} == {"-"}


def test_a_job_of_many_days_has_a_calendar_that_reaches_them_all(tmp_path: Path) -> None:
    job = only_job(tmp_path, walk(MONDAY, length=400, width=40), company())
    days = int(float(value(job, "CalendarRules.prep")))
    assert days > 50
    # a week of five days, counted back from the Friday before
    weeks, more = divmod(days - 1, 5)
    assert day(job, "first_prep_day") == date(2026, 4, 24) - timedelta(days=7 * weeks + more)
    assert len(worked_on(job, "prep")) == days


@pytest.mark.parametrize(("holiday", "weekday"), FEDERAL_2026.items(), ids=str)
def test_the_weekday_of_a_published_holiday_is_right(holiday: date, weekday: str) -> None:
    assert words_of(serial(holiday)).split()[0] == weekday == holiday.strftime("%a")


def test_no_holiday_of_a_published_list_is_a_working_day(tmp_path: Path) -> None:
    book = company({f"holiday {number}": each for number, each in enumerate(FEDERAL_2026)})
    for pour in (date(2026, 5, 26), date(2026, 7, 6), date(2026, 11, 27)):
        job = only_job(tmp_path, walk(pour), book)
        assert not {*worked_on(job, "prep"), *worked_on(job, "strip")} & {*FEDERAL_2026}


def test_the_notice_of_a_state_of_three_days_moves_the_call_to_811(tmp_path: Path) -> None:
    book = {**company(), "Factors": [["factor", "value"], ["Notice for a locate ticket, working days", 3]]}
    assert day(only_job(tmp_path, walk(MONDAY, length=12, width=4), book), "locate_by") == date(2026, 4, 21)


def test_three_hundred_jobs_have_the_days_of_an_independent_calendar(tmp_path: Path) -> None:
    chance = random.Random(4)
    for number in range(10):
        saturdays = chance.random() < 0.5
        off = sorted({date(2026, 1, 1) + timedelta(days=chance.randrange(365)) for _ in range(chance.randrange(25))})
        book = company(
            {f"day {place}": each for place, each in enumerate(off)}, Saturday_work="yes" if saturdays else "no"
        )
        pours = [date(2026, 2, 1) + timedelta(days=chance.randrange(300)) for _ in range(30)]
        folder = tmp_path / str(number)
        folder.mkdir()
        for job, pour in zip(jobs_of(intake_from(folder, drawn_week(chance, pours), book)), pours, strict=True):
            holds_against_the_reference(job, pour, Factors(works_saturdays=saturdays, holidays=tuple(off)))


def drawn_week(chance: random.Random, pours: list[date]) -> dict[str, Rows]:
    """Jobs of all sizes, some sealed."""
    names = [f"job {number}" for number in range(len(pours))]
    return {
        "Jobs": [
            ["job", "bid date", "pour date"],
            *([n, "2026-01-05", p.isoformat()] for n, p in zip(names, pours, strict=True)),
        ],
        "Areas": [
            ["job", "area", "length ft", "width ft", "thickness in", "base in"],
            *([name, "A1", chance.randint(3, 60), chance.randint(3, 14), 4, chance.choice([0, 4])] for name in names),
        ],
        "Edges": [["job", "area", "kind", "length ft"], *([name, "A1", "form", 9] for name in names[::2])],
        "Site conditions": [["job", "fact", "value"], *([name, "Sealer coats", 1] for name in names[::3])],
    }


def holds_against_the_reference(job: JobValues, pour: date, factors: Factors) -> None:
    """Every day of the job is that of the independent calendar."""
    prep, strip, seal = (int(float(value(job, f"CalendarRules.{name}"))) for name in ("prep", "strip", "seal"))
    told = job_days(pour, prep, prep == 0, strip, seal, factors)
    assert float(value(job, "CalendarMarks.fits")), job.job.id
    for visit in ("prep", "strip", "seal"):
        want = [] if visit == "prep" and prep == 0 else told[f"{visit}_dates"]
        assert worked_on(job, visit) == want, (job.job.id, visit)
    assert day(job, "locate_by") == told["locate_by"]
    assert day(job, "last_prep_day") == told["locate_valid_through"]
    assert bool(float(value(job, "CalendarMarks.pour_works"))) == told["pour_on_working_day"]
