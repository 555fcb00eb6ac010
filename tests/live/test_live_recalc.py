"""The written workbook is live: a value typed over in it gives in every line what a fresh run gives for that value.

What is typed over: every column of the input books with every word of its choices, every factor of every kind, every
price and pack size, every line that may be forced, and the stops; and the forced lines are let go again.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from pathlib import Path

import pytest

from calc.declared import Account, Declared, Input, Kind, Line, Pack, PriceDay, Taxed
from calc.intake.schema import FACTOR_LIST, INPUTS, OVERRIDABLE, OVERRIDDEN, PRICE_LIST, everything
from calc.layout.checks_sheet import failed
from calc.trade.inputs.pour import Ordering
from live_edits import Edit, Wish, chosen, let_go, wishes
from live_runs import (
    Books,
    TypedOver,
    all_edits,
    disagreements,
    formula_cells,
    read_books,
    shared_out,
    type_in_workbook,
)
from sheet_cells import read_cells, type_over
from whole_job import whole_company, whole_week
from witness import Program, recalculate

pytestmark = pytest.mark.slow

AREAS = ("walk", "001", "A*", "known", "thin")
"""The areas of the job that is typed over: every column is filled in one of them, and the walk may have any shape."""

STILL = {
    "it says how the sheets print": "Company.paper",
    "week.xlsx is written by it, and no job alone": "Company.dates Company.people",
    "a paper shows it, and no rule asks it": "Change.day Billing.contract_day Billing.day Billing.due",
    "no fiber has no dose, whatever its factor says": "FiberKind.dose:none",
    "they matter where two routes differ, and they do not": "Integrity.tolerance WorkIntegrity.rounding_allowance",
    "week.xlsx asks it, and no job alone": "WeekComparison.travel_between WeekComparison.low WeekComparison.high "
    "Company.crews",
    "the job is in a right of way, which has limits of its own": "AreaSlopes.max_cross_slope AreaSlopes.max_walk_slope",
    "a truck brings the concrete, and nobody lifts bags": "CrewHealth.max_lift",
    "no other haul plan of the job comes near the cheapest": "Choice.near_money Choice.near_share",
    "10 lb on a scale: no load of the job is over by so little": "HaulCautions.scale_step",
}
"""Why some columns move no number. Words that no formula asks need no reason."""

ASKED = {leaf for line in everything() if isinstance(line, Line) for leaf in line.formula.leaves()}
"""All that some formula asks, words among it."""


PARTS = 2
"""So many times a witness is called for all the edits: few, since LibreOffice takes as long to start as for a file."""


class Suite:
    """Everything that is typed over, and what each witness makes of it, asked once."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.books = read_books(folder / "books", whole_week(AREAS), whole_company())
        self.wishes = wishes(self.books.job)
        ways, self.still = chosen(self.books.job, self.wishes)
        sets = [all_edits(each) for each in shared_out(self.books.job, ways)]
        self.edited = [self.type_in(self.books, each, f"edited-{at}") for at, each in enumerate(sets)]
        self.override = self._forced_books()
        self.let_go = self.type_in(self.override, let_go(self.override.job), "let-go")
        self.too_short = self.type_in(self.books, _more_trucks(), "too-short")
        self.dead = self._dead(self.edited[0])
        few = [self.let_go, self.too_short, self.dead]
        self.parts = [self.edited[part::PARTS] for part in range(PARTS)]
        self.asked_together = [[*self.parts[0], *few], *self.parts[1:]]
        self.results: Callable[[Program, int], dict[Path, Path]] = cache(self._recalculated)

    def type_in(self, books: Books, edits: list[Edit], name: str) -> TypedOver:
        """A workbook of this suite typed over."""
        return type_in_workbook(books, edits, self.folder / f"{name}.xlsx")

    def disagreements(self, typed: TypedOver, witness: Program) -> list[str]:
        """What a witness gives otherwise than a fresh run."""
        return disagreements(typed, self.result(typed, witness))

    def result(self, typed: TypedOver, witness: Program) -> Path:
        """The copy of a workbook that a witness recalculated, together with others."""
        part = next(number for number, part in enumerate(self.asked_together) if any(each is typed for each in part))
        return self.results(witness, part)[typed.file]

    def _recalculated(self, witness: Program, part: int) -> dict[Path, Path]:
        return recalculate([each.file for each in self.asked_together[part]], witness, self.folder)

    def _forced_books(self) -> Books:
        """The job with every line forced that may be, and every stop accepted."""
        forcing, _ = chosen(self.books.job, [wish for wish in self.wishes if wish.what in ("override", "acknowledged")])
        return self.books.typed_over(all_edits(forcing), self.folder / "override")

    def _dead(self, typed: TypedOver) -> TypedOver:
        """The same with a number in place of one formula that follows the edits."""
        moved = next(
            place
            for place, each in formula_cells(typed.base)
            if place[0] == "Takeoff" and each.value(typed.base) != each.value(typed.fresh)
        )
        file = self.folder / "dead.xlsx"
        type_over(typed.file, {moved: 1234.5}, file)
        return TypedOver(file, typed.base, typed.edits, typed.fresh)


def _more_trucks() -> list[Edit]:
    """An order for more trucks than the list has rows."""
    return [Edit(Ordering.rule, 0, "fixed", "fixed"), Edit(Ordering.fixed, 0, 90, 90.0)]


@pytest.fixture(scope="module")
def suite(tmp_path_factory: pytest.TempPathFactory) -> Suite:
    """All edits, made once and recalculated together."""
    return Suite(tmp_path_factory.mktemp("liveness"))


@pytest.mark.parametrize("part", range(PARTS))
def test_a_value_typed_over_in_the_workbook_gives_what_a_new_run_gives(
    suite: Suite, witness: Program, part: int
) -> None:
    assert suite.parts[part], "there are fewer workbooks than parts"
    wrong = [(typed, found) for typed in suite.parts[part] if (found := suite.disagreements(typed, witness))]
    assert not wrong, "\n\n".join(_told(typed, found) for typed, found in wrong[:5])


def test_a_forced_line_that_is_let_go_is_computed_again(suite: Suite, witness: Program) -> None:
    assert {edit.named for edit in suite.let_go.edits} == set(OVERRIDDEN), "not every line is forced, and let go"
    found = suite.disagreements(suite.let_go, witness)
    assert not found, _told(suite.let_go, found)
    unmoved = [
        line.label
        for edit in suite.let_go.edits
        for line in OVERRIDABLE.values()
        if line.override is edit.named
        and suite.let_go.base.of(line, edit.index) == suite.let_go.fresh.of(line, edit.index)
    ]
    assert not unmoved, f"forced to what they are anyway: {unmoved}"


def test_a_list_that_an_edit_makes_too_short_says_so(suite: Suite, witness: Program) -> None:
    assert not failed(suite.books.job)
    assert not failed(suite.too_short.fresh), "a new run has room for all trucks"
    cells = read_cells(suite.result(suite.too_short, witness))
    told = [str(held.value) for (sheet, _), held in cells.items() if sheet == "Bid"]
    assert any(each.endswith(("CHECK FAILS: see Checks", "CHECKS FAIL: see Checks")) for each in told)
    assert not [each for each in told if each.endswith("checks ok")]


def test_a_formula_that_does_not_follow_would_be_seen(suite: Suite, witness: Program) -> None:
    assert any("1234.5" in found for found in suite.disagreements(suite.dead, witness))


def test_no_column_factor_or_price_is_left_out(suite: Suite) -> None:
    typed = {edit.named for each in suite.edited for edit in each.edits}
    left_out = [each.id for each in _all_that_may_be_typed() if each not in typed]
    assert not left_out, f"never typed over: {left_out}"


def test_no_column_that_a_person_fills_is_without_effect(suite: Suite) -> None:
    idle, still = _idle(suite), {each for names in STILL.values() for each in names.split()}
    assert not idle - still, f"typing these over changes no number: {sorted(idle - still)}"
    assert not still - idle, f"these are said to change no number, and do: {sorted(still - idle)}"


def _all_that_may_be_typed() -> tuple[Declared, ...]:
    givens = tuple(given for given in INPUTS if given.section.table)
    packs = (each for each in everything() if isinstance(each, Pack))
    return (*givens, *FACTOR_LIST, *PRICE_LIST, *packs, *OVERRIDDEN)


def _idle(suite: Suite) -> set[str]:
    """What moves no number in any of its wishes: a column, a kind of a factor, a price, a forced line."""
    moving = {_name(wish) for wish in suite.wishes if wish not in suite.still}
    return {_name(wish) for wish in suite.still if _name(wish) not in moving and not _is_mere_words(wish.named)}


def _is_mere_words(named: Declared) -> bool:
    return isinstance(named, Input) and named.kind is Kind.TEXT and named not in ASKED


def _name(wish: Wish) -> str:
    """What is tried: a kind of a factor by itself; what stands beside the prices together, as it is alike for all."""
    if isinstance(wish.named, Taxed | Account | PriceDay):
        return f"{type(wish.named).__name__}:{wish.named.name.rpartition('_')[2]}"
    return f"{wish.named.id}:{wish.what}" if wish.named in FACTOR_LIST and wish.what else wish.named.id


def _told(typed: TypedOver, found: list[str]) -> str:
    edits = ", ".join(str(each) for each in typed.edits)
    return f"{len(found)} cells of {typed.file.name} do not follow {edits}:\n" + "\n".join(found[:8])
