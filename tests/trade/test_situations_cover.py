"""No rule of the trade is taken on faith: each is reached by two or more hand-worked situations."""

from __future__ import annotations

from collections import Counter

from calc.declared import Line
from calc.trade.catalog import SECTIONS
from situation import situations

BOOKKEEPING = {"Checks", "Cautions"}
"""Sheets whose lines hold other lines against each other; they have tests of their own."""
SHOWING = {
    f"calc.trade.{name}"
    for name in (
        "money.bid",
        "ordering.rule_comparison",
        "takeoff.drawing",
        "papers.area_text",
        "papers.load_items",
        "papers.pour_text",
        "papers.proposal_text",
    )
}
"""Rule files that only say for a page what others worked out; the tests of the front page, the pictures and the papers
hold them."""
SECOND_ROUTES = {"calc.trade.cautions.second_routes", "calc.trade.cautions.money_checks"}
"""The steps of the checks that stand on other sheets than Checks: bookkeeping too, held where the checks are."""
CALENDAR = "calc.trade.work.calendar"
"""The days of a job: ``test_calendar`` holds them by drawn dates against Python's own calendar."""
RUNNERS_UP = ("Others", "Next")
"""Ends of the names of sections that look for what comes next after a winner; ``test_front_page`` holds them."""
ENOUGH = 2


def rules() -> list[Line]:
    """Every line that a rule of the trade gives."""
    return [
        each
        for section in SECTIONS
        if section.sheet not in BOOKKEEPING
        and section.__module__ not in SHOWING | SECOND_ROUTES | {CALENDAR}
        and not section.called.endswith(RUNNERS_UP)
        for each in section.declarations
        if isinstance(each, Line)
    ]


def rule_of(line: Line) -> str:
    """A name of the rule that gives the line: of sections that one function makes, each has the same rules."""
    section = line.section
    return f"{section.__module__}.{section.__qualname__}.{line.name}" if "<locals>" in section.__qualname__ else line.id


def test_every_rule_is_worked_by_hand_in_two_situations_or_more() -> None:
    lines = {each.id: each for each in rules()}
    worked = (name for situation in situations() for name in situation.expect if name in lines)
    reached = Counter(rule_of(lines[name]) for name in worked)
    short = [f"{name}: {reached[rule_of(each)]}" for name, each in lines.items() if reached[rule_of(each)] < ENOUGH]
    assert not short, f"{len(short)} rules are worked by hand in fewer than {ENOUGH} situations:\n" + "\n".join(short)


def test_no_situation_is_told_twice() -> None:
    told = Counter(situation.sentence for situation in situations())
    assert [sentence for sentence, times in told.items() if times > 1] == []
