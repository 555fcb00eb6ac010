"""A number that nothing reads is room on a sheet: each line is read by something, or says why it is shown."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from dataclasses import fields, is_dataclass

from calc.declared import Caution, Check, Declared, Input, Kind, Line
from calc.trade.catalog import SECTIONS
from calc.trade.money import bid, cost_rows, week
from calc.trade.papers.catalog import PAPERS
from folders import ROOT

SHOWN = {
    "BidPrice.markup": "what the margin comes to as a markup on cost, which many people think in",
    "OtherOrderRules.percent_risk": "how often the percent rule runs short, to say to whoever always adds 8 percent",
    "FiberTotal.weight": "how much fiber the order takes, beside the bags to buy",
    "Pile.loose": "how large each pile is when it lies loose",
    "Choice.cost": "what the haul costs in all",
    "Hauled.round_trip": "how long a trip takes",
    "BarSize.cost": "what a stock bar costs, by its size",
    "PourByMethod.longest": "how long the longest person would be there by each method",
    "PaidTime.cost": "what the time beyond tasks costs in all",
    "Hauled.limited_by": "whether a load is full by room or by weight",
    "Hauled.worth_driving": "how much further a cheaper site may be",
    "DoweledEdge.spacing_as_laid_out": "the spacing that the crew marks",
    "Panel.panel_length": "how long a panel is where no old joint governs",
    "JointPlace.why": "why a joint stands where it does",
    "Protection.washout_capacity": "how large a box the wash water takes",
    "Task.quantity_unit": "the unit of the amount beside it",
    "Labor.hours_per_ft2": "hours for a square foot, as a contractor compares jobs",
    "CostTable.zero_reason": "why a cost that is not listed comes to nothing",
    "TaskRow.row": "which task stands in a row of the list",
    "RentalChoice.way": "whether a machine is rented for half a day, days or weeks",
}
"""Lines that are a number which a person would say aloud, and are shown for that alone."""

EVERY = [member for section in SECTIONS for member in section.members]


def named_in(found: object) -> Iterator[Declared]:
    """Every declaration in a paper, a table of decisions, a list of columns, however deep."""
    if isinstance(found, Declared):
        yield found
    elif isinstance(found, (tuple, list)):
        for each in found:
            yield from named_in(each)
    elif is_dataclass(found) and not isinstance(found, type):
        for each in fields(found):
            yield from named_in(getattr(found, each.name))


def named_in_code() -> Iterator[Declared]:
    """The declarations that the program names outside its rules and its blanks: the model, the layout, the audit."""
    own = {(section.__name__, each.name): each for section in SECTIONS for each in section.declarations}
    for path in (ROOT / "calc").rglob("*.py"):
        if path.relative_to(ROOT).parts[1] not in {"trade", "blanks"}:
            for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
                if isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name):
                    named = own.get((node.value.id, node.attr))
                    yield from () if named is None else (named,)


def read() -> set[Declared]:
    """Whatever is read by a formula, a check, a caution, a paper, a cost, the front page, the week or the program."""
    lines = [each for each in EVERY if isinstance(each, Line) and not each.name.endswith("_all")]
    found = {leaf for each in lines for leaf in each.formula.leaves()}
    found |= {section.slots_for for section in SECTIONS if section.slots_for is not None}
    for section in SECTIONS:
        for each in section.declarations:
            if isinstance(each, Check | Caution):
                found |= {member for _, member in each.members()}
    for module in (bid, cost_rows, week):
        found |= {each for name, value in vars(module).items() if name.isupper() for each in named_in(value)}
    return found | set(named_in(PAPERS)) | set(named_in_code())


def test_every_line_is_read_or_says_why_it_is_shown() -> None:
    by_whom = read()
    unread = {
        each.id
        for each in EVERY
        if isinstance(each, Line) and each not in by_whom and each.all_rows not in by_whom
        if not each.name.endswith("_all")  # a total comes with the line that adds up
    }
    assert unread == set(SHOWN)


def test_every_input_is_read_unless_it_is_words() -> None:
    by_whom = read()
    typed = [each for each in EVERY if isinstance(each, Input) and each.kind is not Kind.TEXT]
    assert [each.id for each in typed if each not in by_whom] == []
