"""A formula that carries pieces that change nothing is read twice to find what it does, and trusted less."""

from __future__ import annotations

import pytest

from calc.declare import (
    Expr,
    Section,
    abs_,
    both,
    either,
    equals,
    exact,
    given,
    largest,
    not_,
    round_up,
    rounded,
    total,
    typed_rows,
    when,
)
from calc.formula.levels import JOB
from calc.formula.sheet_text import sheet_text
from calc.layout.addresses import Block, CellMap, RefFrom

SHEET = "Tree"
PIPE = typed_rows("pipe")
ONE = exact(1)


class Leaf(Section, title="Leaves"):
    """Numbers to make trees of."""

    a = given("A", "")
    b = given("B", "")


class Pipe(Section, title="Pipes", each=PIPE):
    """Rows of which the job has none."""

    length = given("Length of the pipe", "", default=0.0)


PLACES = CellMap()
PLACES.put_cell(Leaf.a, SHEET, 0, 0)
PLACES.put_cell(Leaf.b, SHEET, 0, 1)
PLACES.put_range(Pipe.length, Block(SHEET, PIPE, 5, 0, False), 3)
a, b, none = Leaf.a, Leaf.b, total(Pipe.length)


@pytest.mark.parametrize(
    ("node", "cell"),
    [
        (none, "0"),
        (a + none, "A1"),
        (none + a * b, "A1*B1"),
        ((none + (a + b)) * a, "(A1+B1)*A1"),
        (a - none, "A1"),
        (none - a, "0-A1"),
        (a * none + b, "B1"),
        ((a + b) * ONE, "A1+B1"),
        (a * ((a + b) * ONE), "A1*(A1+B1)"),
        (ONE * a, "A1"),
        (a / ONE, "A1"),
        (none / a, "0"),
        (abs_(none) / b, "0"),
        (rounded(a * b, 0), "ROUND(ROUND(A1*B1,6),0)"),
        (round_up(a, to=ONE), "ROUNDUP(ROUND(A1,6),0)"),
        (round_up(ONE), "1"),
        (largest(none, 0), "0"),
        (largest(a, 0), "MAX(A1,0)"),
        (when(none > 0, a, b), "B1"),
        (when(equals(none, 0), a + b, 0) * a, "(A1+B1)*A1"),
        (when(both(a > 0, none > 0), a, b), "B1"),
        (when(both(a > 0, none <= 0), 1, 0), "IF(ROUND(A1,6)>0,1,0)"),
        (when(either(a > 0, none > 0), 1, 0), "IF(ROUND(A1,6)>0,1,0)"),
        (when(not_(none > 0), a, b), "A1"),
        (when(a > 0, none, 0), "0"),
        (when(a > exact(3), 1, 0), "IF(ROUND(A1,6)>3,1,0)"),
    ],
)
def test_what_changes_nothing_is_left_out_of_the_cell(node: Expr, cell: str) -> None:
    assert sheet_text(node, RefFrom(PLACES, SHEET)).replace("$", "") == cell
    assert node.level == JOB


@pytest.mark.parametrize(
    ("node", "cell"),
    [
        (a + b, "A1+B1"),
        (a * exact(12), "A1*12"),
        (when(a > 0, b, none), "IF(ROUND(A1,6)>0,B1,0)"),
        (when(both(a > 0, b > 0), 1, 0), "IF(AND(ROUND(A1,6)>0,ROUND(B1,6)>0),1,0)"),
        (rounded(a, 2), "ROUND(ROUND(A1*100,6),0)/100"),
    ],
)
def test_what_matters_stays(node: Expr, cell: str) -> None:
    assert sheet_text(node, RefFrom(PLACES, SHEET)).replace("$", "") == cell
