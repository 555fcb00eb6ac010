"""The small trade as live sheets: what the formulas give in spreadsheet programs is what was computed here.

This is the shape of every workbook that the program writes, without its looks: rows side by side and one below the
other, ranges of one cell and of none, totals up, look-ups down and across.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from calc.declare import Line
from small_jobs import AWKWARD, NO_EDGES, ONE_OF_EACH, Job, area, edge, evaluate, plan
from small_layout import Layout, formula, write
from small_trade import AREA, EDGE, PLAN, Bid, Cheapest, Rail, Slab, Whole
from witness import Program, Recalculations, differences, edit, formulas, values

JOBS = {"awkward ids": AWKWARD, "one of each": ONE_OF_EACH, "no edges": NO_EDGES}

EDITED = replace(
    AWKWARD,
    values={Bid.mix: "black", Bid.spare: 6, Bid.pump: 3.335, Bid.client: '="<5"'},
    rows={
        **AWKWARD.rows,
        AREA: [area("1", 14, 4, 3.5), area("001", 10 + 6 / 12, 9.25), area("<5", 8, 2.5, 6)],
        EDGE: [edge(2, 7.5), edge(0, 12.5, "yes"), edge(0, 6), edge(2, 8)],
        PLAN: [plan("A*", 0), plan("1E3", 9)],
    },
    overrides={(Slab.volume, 2): 0.75},
)
"""The awkward job with other values in its cells: another mix, another winner, another row forced."""


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Where the books of this module are."""
    return tmp_path_factory.mktemp("sheets")


@pytest.fixture(scope="module")
def books(folder: Path, recalculated: Recalculations) -> dict[str, Path]:
    """A workbook of each job."""
    books = {name: write(folder / f"{name}.xlsx", job) for name, job in JOBS.items()}
    recalculated.add(*books.values())
    return books


@pytest.fixture(scope="module")
def edited(folder: Path, books: dict[str, Path], recalculated: Recalculations) -> tuple[Path, Path]:
    """The awkward job typed over in its workbook, and written anew as it is then."""
    anew, over = write(folder / "anew.xlsx", EDITED), folder / "typed over.xlsx"
    before, live = values(books["awkward ids"]), formulas(anew)
    changes = {
        place: value for place, value in values(anew).items() if place not in live and value != before.get(place)
    }
    edit(books["awkward ids"], changes, over)
    recalculated.add(over)
    return over, anew


@pytest.mark.parametrize("name", JOBS)
def test_the_sheet_computes_what_was_computed_here(
    books: dict[str, Path],
    edited: tuple[Path, Path],
    name: str,
    witness: Program,
    recalculated: Recalculations,
) -> None:
    assert [str(each) for each in differences(books[name], recalculated.result(books[name], witness))] == []


def test_a_cell_typed_over_changes_everything_as_a_new_run_does(
    books: dict[str, Path], edited: tuple[Path, Path], witness: Program, recalculated: Recalculations
) -> None:
    over, anew = edited
    assert [str(each) for each in differences(anew, recalculated.result(over, witness))] == []
    before, after = values(books["awkward ids"]), values(anew)
    assert sum(before[place] != after[place] for place in formulas(anew)) > 50


def test_the_layout_depends_on_the_rows_and_not_on_what_is_in_them(
    books: dict[str, Path], edited: tuple[Path, Path]
) -> None:
    assert formulas(edited[1]) == formulas(books["awkward ids"])


@pytest.mark.parametrize(
    ("job", "line", "text"),
    [
        (AWKWARD, Slab.run, "=SUMIFS(Typed!$J$20:$J$23,Typed!$H$20:$H$23,G$4)"),
        (ONE_OF_EACH, Slab.run, "=SUMIFS(Typed!$J$20:$J$20,Typed!$H$20:$H$20,G$4)"),
        (NO_EDGES, Slab.run, "=0"),
        (AWKWARD, Slab.area.all_rows, "=SUM($G$5:$I$5)"),
        (AWKWARD, Slab.says, '="no. "&G$4&" is "&G$3'),
        (AWKWARD, Rail.band, '=SUMIF(Typed!$J20,">0")*SUMIF(INDEX(Typed!$F$14:$I$14,1,$H19+1),">0")'),
        (AWKWARD, Rail.area_called, '="of "&INDEX(Typed!$F$11:$I$11,1,$H19+1)'),
        (AWKWARD, Rail.share, "=IF(ROUND($B$6,6)>0,INDEX($F$5:$I$5,1,$H19+1)/$B$6,0)"),
        (AWKWARD, Rail.earlier, "=IF($H18=$H19,Typed!$J19,0)"),
        (
            AWKWARD,
            Whole.mix_cost,
            "=MAX(0,IFERROR(INDEX(Typed!$I$40:$I$47,MATCH(Typed!$B$5,Typed!$H$41:$H$47,0)+1),0))",
        ),
        (NO_EDGES, Whole.longest, "=0"),
        (NO_EDGES, Cheapest.loads, "=0"),
    ],
)
def test_a_formula_says_where_its_numbers_stand(job: Job, line: Line, text: str) -> None:
    assert formula(Layout(evaluate([job]), 0), line) == text
