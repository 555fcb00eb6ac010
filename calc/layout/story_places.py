"""Where each line of the four subjects is laid: in the story where one tells it, else in the workings."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from calc.declared import Declared, Input, Line, Section, story
from calc.declared.story import StorySheet
from calc.formula.keys import GroupSum, SumIf
from calc.formula.levels import JOB, Level
from calc.formula.tree import nodes_of
from calc.layout.step_formats import is_words
from calc.layout.story_sheet import has_rows, told_lines
from calc.layout.workings_sheet import Group
from calc.trade.catalog import SECTIONS
from calc.trade.levels import AREA
from calc.trade.story.catalog import STORY


@cache
def _subjects() -> dict[str, StorySheet]:
    return {sheet.name: sheet for sheet in STORY}


def lines_in_story(counts: Mapping[Level, int]) -> set[Line]:
    """The lines that the story of a job tells."""
    return {line for sheet in STORY for part in sheet.parts if has_rows(part, counts) for line in told_lines(part)}


def workings_of(counts: Mapping[Level, int]) -> dict[str, dict[Level, list[Group]]]:
    """For each sheet of workings its lines, by level and section, in the order in which they are worked.

    What belongs to an area stands with the areas, whatever it is for.
    """
    told = lines_in_story(counts)
    sheets: dict[str, dict[Level, list[Group]]] = {sheet.workings: {} for sheet in STORY}
    for section in SECTIONS:
        if section.sheet not in _subjects() or section.is_left_out(counts):
            continue
        lines = tuple(each for each in section.members if isinstance(each, Line) and _is_own(each) and each not in told)
        if lines:
            sheets[_sheet_of(section)].setdefault(section.level, []).append(Group(section, lines))
    return {name: {level: levels[level] for level in _in_order(levels)} for name, levels in sheets.items()}


def lines_left_out(counts: Mapping[Level, int]) -> set[Line]:
    """The lines of the sections that the job has no rows for: formulas say 0, or a dash, in their place."""
    return {
        each
        for section in SECTIONS
        if section.sheet in _subjects() and section.is_left_out(counts)
        for each in section.members
        if isinstance(each, Line)
    }


def upright_lines(counts: Mapping[Level, int]) -> frozenset[Line]:
    """The lines that must stand one row below another, as the column does that a formula adds up by them.

    A spreadsheet program adds up a column by another column, never by a row.
    """
    told = {
        line
        for sheet in STORY
        for part in sheet.parts
        if isinstance(part, story.Table) and has_rows(part, counts)
        for line in told_lines(part)
    }
    upright: set[Declared] = {*told}
    for one, other in (*_added_up_by(), *_added_up_by()):
        if {one, other} & upright or any(isinstance(each, Input) or is_words(each) for each in (one, other)):
            upright |= {one, other}
    return frozenset(each for each in upright if isinstance(each, Line)) - told


@cache
def _added_up_by() -> tuple[tuple[Declared, Declared], ...]:
    """What formulas add up, and by which line or input of the same rows."""
    return tuple(
        (node.part, node.key)
        for section in SECTIONS
        for line in section.members
        if isinstance(line, Line)
        for node in nodes_of(line.formula)
        if isinstance(node, SumIf | GroupSum) and isinstance(node.part, Declared) and isinstance(node.key, Declared)
    )


def _is_own(line: Line) -> bool:
    """A total over the rows stands with its line."""
    return not line.name.endswith("_all")


def _sheet_of(section: type[Section]) -> str:
    first = STORY[0].workings
    return first if AREA.axes <= section.level.axes else _subjects()[section.sheet].workings


def _in_order(levels: Mapping[Level, list[Group]]) -> list[Level]:
    """The numbers of the whole job first, then the other levels in the order in which they come up."""
    return sorted(levels, key=lambda level: level != JOB)
