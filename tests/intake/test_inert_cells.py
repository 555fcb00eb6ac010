"""No typed cell does nothing without a word: it moves a line, is shown on a paper, or has a finding.

The jobs are drawn; ``FLATWORK_INERT=70`` draws so many, by ``FLATWORK_SEED`` where one is given.
"""

from __future__ import annotations

import os
from pathlib import Path
from random import Random

import pytest

from books import Rows, intake_from
from calc.declared import Input, Kind
from calc.errors import Finding, FindingKind
from calc.intake.schema import INPUTS, WEEK_TABLES, facts_of
from inert_cells import STATED, drawn_intake, inert_cells, printed

JOBS = int(os.environ.get("FLATWORK_INERT", "4"))
SEED = int(os.environ.get("FLATWORK_SEED", "20260413"))


def test_every_typed_cell_moves_a_line_or_is_shown_or_has_a_finding(tmp_path: Path) -> None:
    print("seed", SEED)
    _, intake = drawn_intake(SEED, JOBS, tmp_path)
    inert, moving = inert_cells(intake, Random(SEED))
    shown = printed()
    assert [str(cell) for cell in inert if cell.given.id not in STATED and cell.given not in shown] == []
    if JOBS >= 70:  # of so many jobs, each column moves something in one
        typed = [each for table in WEEK_TABLES for each in facts_of(table)]
        tried = {each for each in typed if each.kind not in (Kind.TEXT, Kind.ROW)}
        assert {each.id for each in tried - moving - shown} == set()
        assert {each.id for each in moving} >= set(STATED)


AREA = {"job": "24-031", "area": "A1", "length ft": 12, "width ft": 3}
HEADERS = {"Areas": ["job", "area"], "Jobs": ["job", "bid date"]}


def findings(tmp_path: Path, table: str, **typed: object) -> list[Finding]:
    """The notes about a job in one row of which these cells are typed."""
    rows = {"Jobs": {"job": "24-031", "bid date": "2026-04-13"}, "Areas": AREA}
    keys = {} if table in rows else {"job": "24-031"} | ({} if table in ("Plants", "Changes") else {"area": "A1"})
    rows = rows | {table: rows.get(table, keys) | {name.replace("_", " "): value for name, value in typed.items()}}
    week: dict[str, Rows] = {name: [list(row), list(row.values())] for name, row in rows.items()}
    return [each for each in intake_from(tmp_path, week).findings if each.kind is FindingKind.UNUSED_INPUT]


@pytest.mark.parametrize(
    ("table", "typed", "said"),
    [
        ("Areas", {"doweled edge ft": 5}, "Doweled edge has no dowels without dowel spacing."),
        ("Areas", {"dowel spacing in": 18}, "Dowel spacing is not used without doweled edge."),
        ("Areas", {"old slab ft2": 20}, "Old slab is not used without old slab thickness."),
        ("Areas", {"old slab thickness in": 4}, "Old slab thickness is not used without old slab."),
        ("Areas", {"bar spacing in": 12}, "Bar spacing is not used when reinforcement is none."),
        ("Areas", {"bar size": "#5"}, "Bar size is not used when reinforcement is none."),
        ("Edges", {"length ft": 5, "embedment in": 5}, "Embedment is not used without dowel spacing."),
        ("Edges", {"length ft": 5, "drill diameter in": 0.5}, "Drill diameter is not used without dowel spacing."),
        ("Edges", {"length ft": 5, "thickened width in": 8}, "Thickened width is not used without extra depth."),
        ("Edges", {"length ft": 5, "extra depth in": 8}, "Extra depth is not used without thickened width."),
        ("Edges", {"notes": "at the gate"}, "Notes is not used without length."),
        ("Outline points", {"x ft": 1, "y ft": 0}, "X is not used when shape is rectangle."),
        ("Plants", {"width ft": 3}, "Width is not used without depth."),
        ("Plants", {"ball height ft": 1}, "Ball height is not used without root ball."),
        ("Changes", {"rate $": 5, "billed with": "deposit on signing"}, "Billed with is not used when signed is no."),
        ("Jobs", {"fiber dose lb/yd3": 2}, "Fiber dose is not used when fiber is none."),
        ("Jobs", {"bonding coats coat": 2}, "Bonding coats is not used without rows in Footings."),
    ],
)
def test_a_cell_without_what_it_needs_is_told_at_its_place(
    table: str, typed: dict[str, object], said: str, tmp_path: Path
) -> None:
    found = findings(tmp_path, table, **typed)
    assert said in [each.found for each in found] and all(each.place.cell for each in found)


def test_what_an_input_needs_is_never_itself_and_names_inputs_of_the_books() -> None:
    needing: list[Input] = [each for each in INPUTS if each.needs]
    assert len(needing) > 25 and all(each not in needs.needs for needs in needing for each in [needs])


def test_a_unit_beside_words_and_notes_without_a_value_are_told(tmp_path: Path) -> None:
    facts: Rows = [
        ["job", "fact", "value", "unit", "notes"],
        ["24-031", "Moisture", "wet", "in", None],
        ["24-031", "Permit", None, "$", "ask the city"],
    ]
    week: dict[str, Rows] = {
        "Jobs": [["job", "bid date"], ["24-031", "2026-04-13"]],
        "Areas": [["job", "length ft", "width ft"], ["24-031", 12, 3]],
        "Site conditions": facts,
    }
    told = [(each.place.cell, each.kind) for each in intake_from(tmp_path, week).findings]
    assert told == [("D2", FindingKind.UNUSED_INPUT), ("E3", FindingKind.UNUSED_INPUT)]
