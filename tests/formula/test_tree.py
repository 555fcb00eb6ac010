"""A formula means in its cell, and in words, what its tree means: every bracket that it needs stands where it must."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from operator import add, mul, sub, truediv
from pathlib import Path

import numpy as np
import pytest
import xlsxwriter
from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from calc import declare
from calc.declare import (
    TWO,
    Expr,
    Input,
    Section,
    both,
    choice,
    count_of,
    either,
    equals,
    is_given,
    joined,
    largest,
    not_,
    round_down,
    round_up,
    rounded,
    row_number,
    typed_rows,
    when,
)
from calc.formula.compute import Batch
from calc.formula.levels import JOB
from calc.formula.sheet_text import sheet_text
from calc.formula.tree import Apply, expression
from calc.formula.value_types import ValueType
from calc.layout.addresses import CellMap, RefFrom
from witness import Program, Recalculations, differences
from words_of_jobs import Column, agrees
from words_reader import Calculator, Parser, Row

SHEET = "Tree"


class Leaf(Section, title="Leaves"):
    """Numbers to make trees of."""

    a = declare.given("A", "")
    b = declare.given("B", "")
    c = declare.given("C", "")
    d = declare.given("D", "")
    kind = choice("Kind", "strip", "circle", default="strip")


VALUES = {Leaf.a: 3.0, Leaf.b: -0.375, Leaf.c: 7.0, Leaf.d: 100.125, Leaf.kind: "circle"}
NUMBERS: tuple[Input, ...] = (Leaf.a, Leaf.b, Leaf.c, Leaf.d)
a, b, c, d = NUMBERS
for each in NUMBERS:
    each.typed = False  # as lines are, whose cells hold what they must


class Box(Section, title="Boxes", table="Boxes"):
    """Cells of the workbook that a person may type anything into."""

    width = declare.given("Width", "", default=3, help="A number.")
    spacing = declare.given("Spacing", "", help="A number or none.")


PLACES = CellMap()
for column, leaf in enumerate(VALUES):
    PLACES.put_cell(leaf, SHEET, 0, column)

FRAME = Batch(1)
for leaf, value in VALUES.items():
    FRAME.columns[leaf] = np.array([value], dtype=object if isinstance(value, str) else float)


def text(node: Expr) -> str:
    """The tree as it stands in a cell."""
    return sheet_text(node, RefFrom(PLACES, SHEET)).replace("$", "")


def number(node: Expr) -> float | str:
    """The tree as it is computed."""
    value = FRAME.value(node, JOB)[0]
    return value if isinstance(value, str) else float(value)


def test_neither_text_nor_a_zero_in_a_box_makes_an_error_of_a_formula() -> None:
    """Text and errors count as 0; what a person types as 0 is not divided by; an optional number is asked."""
    PLACES.put_cell(Box.width, SHEET, 1, 0)
    PLACES.put_cell(Box.spacing, SHEET, 1, 1)
    assert text(a + Box.width) == 'A1+SUMIF(A2,">0")'
    assert text(a / Box.width) == 'IF(SUMIF(A2,">0")=0,0,A1/SUMIF(A2,">0"))'
    assert text(a / (Box.width * b)) == 'IF(SUMIF(A2,">0")*B1=0,0,A1/(SUMIF(A2,">0")*B1))'
    assert text(a / (Box.width + b)) == 'A1/(SUMIF(A2,">0")+B1)'
    assert text(when(Box.width > 0, a / Box.width, 0)) == 'IF(ROUND(SUMIF(A2,">0"),6)>0,A1/SUMIF(A2,">0"),0)'
    assert text(declare.if_given(Box.spacing, a)) == "IF(ISNUMBER(B2),MAX(0,B2),A1)"


@pytest.mark.parametrize(
    ("node", "cell", "words"),
    [
        (a - (b - c), "A1-(B1-C1)", "A − (B − C)"),
        (a - b - c, "A1-B1-C1", "A − B − C"),
        (a / (b * c), "A1/(B1*C1)", "A ÷ (B × C)"),
        (a / b / c, "A1/B1/C1", "A ÷ B ÷ C"),
        (a / (b / c), "A1/(B1/C1)", "A ÷ (B ÷ C)"),
        ((a + b) * c, "(A1+B1)*C1", "(A + B) × C"),
        (a + b * c, "A1+B1*C1", "A + B × C"),
        (-a * b, "(0-A1)*B1", "(−A) × B"),
        (1 - a / TWO, "1-A1/2", "1 − A ÷ 2"),
        (round_up(a + b) * c, "ROUNDUP(ROUND(A1+B1,6),0)*C1", "(A + B, rounded up) × C"),
        (
            a / round_up(b - c, to=d * a),
            "IF(ROUNDUP(ROUND((B1-C1)/(D1*A1),6),0)*(D1*A1)=0,0,A1/(ROUNDUP(ROUND((B1-C1)/(D1*A1),6),0)*(D1*A1)))",
            "A ÷ (B − C, rounded up to the next (D × A))",
        ),
        (
            when(a + b > c, a, b) * d,
            "IF(ROUND(A1+B1,6)>ROUND(C1,6),A1,B1)*D1",
            "(A if A + B > C, else B) × D",
        ),
        (
            when(both(a > 0, not_(equals(b, 1))), 1, 0),
            "IF(AND(ROUND(A1,6)>0,NOT(ROUND(B1,6)=1)),1,0)",
            "1 if A > 0 and B ≠ 1",
        ),
        (
            when(Leaf.kind.is_("strip"), joined("no. ", count_of(a + b, "each")), 'a "round" one'),
            'IF(E1="strip","no. "&A1+B1,"a ""round"" one")',
            '(“no. ” & A + B) if Kind is “strip”, else “a "round" one”',
        ),
        (
            joined("in ", when(is_given(a), "few", "many"), ' "', count_of(c, "each"), '"'),
            '"in "&IF(ISNUMBER(A1),"few","many")&" """&C1&""""',
            '“in ” & (“few” if A is given, else “many”) & “ "” & C & “"”',
        ),
        (largest(a, b - c, 0), "MAX(A1,B1-C1,0)", "greatest of A, B − C and 0"),
    ],
)
def test_a_formula_has_the_brackets_it_needs_in_the_cell_and_in_words(node: Expr, cell: str, words: str) -> None:
    assert text(node) == cell
    assert node.words == words


@pytest.mark.parametrize(
    ("one", "other"),
    [
        (both(a > 0, either(b > 0, c > 0)), either(both(a > 0, b > 0), c > 0)),
        (when(a > 0, when(b > 0, a, b), c), when(b > 0, a, when(a > 0, b, c))),
    ],
    ids=["or within and", "choice within choice"],
)
def test_two_formulas_that_differ_are_not_said_alike(one: Expr, other: Expr) -> None:
    assert one.words != other.words


def test_the_parts_of_a_formula_are_found_however_deep_they_stand() -> None:
    assert list((when(a > b, round_up(c), d) + a).leaves()) == [a, b, c, d, a]


def test_a_formula_of_words_is_words_however_they_are_chosen() -> None:
    assert when(a > 0, "few", joined("many ", count_of(c, "each"))).value_type is ValueType.TEXT
    assert row_number(typed_rows("row")).value_type is ValueType.NUMBER


# Trees by the hundred. A float that is 0 on paper and not in the machine is 0 in some programs, and a divisor that is
# nearly 0 makes anything of it: such trees are left out.

leaves = st.sampled_from([*NUMBERS, TWO, expression(0), expression(1)])
Tree = st.SearchStrategy[Expr]


def conditions(numbers: Tree) -> Tree:
    """Comparisons, and what they are put together to."""
    compare = st.sampled_from([Expr.__gt__, Expr.__ge__, Expr.__lt__, Expr.__le__, equals])
    plain = st.builds(lambda how, one, other: how(one, other), compare, numbers, numbers)
    put = st.sampled_from([both, either])
    return plain | st.builds(lambda how, one, other: how(one, other), put, plain, plain) | plain.map(not_)


def grown(numbers: Tree) -> Tree:
    """Trees one size larger."""
    sign = st.sampled_from([add, sub, mul, truediv])
    several = st.lists(numbers, min_size=2, max_size=3)
    return (
        st.builds(lambda how, one, other: how(one, other), sign, numbers, numbers)
        | st.builds(when, conditions(numbers), numbers, numbers)
        | several.map(lambda parts: largest(*parts))
        | st.sampled_from([round_up, round_down, partial(rounded, digits=2)]).flatmap(numbers.map)
        | numbers.map(lambda part: -part)
    )


SENTENCES: Tree = st.builds(
    lambda one, word, other, condition: joined(
        count_of(one, "each"), ' "', when(condition, word, joined(count_of(other, "each"), " or ", word)), '"'
    ),
    leaves.map(round_up),
    st.sampled_from(["strip", '"', "", "a & b"]),
    st.builds(sub, leaves, leaves).map(round_down),
    conditions(leaves),
)
FORMULAS: Tree = st.recursive(leaves, grown, max_leaves=12)


def nodes(node: Expr) -> Iterator[Expr]:
    """The node and all that it is made of."""
    yield node
    for part in node.parts:
        yield from nodes(part)


def sound(node: Expr) -> bool:
    """Whether the value of every part can be compared between programs."""
    divisors = [each.arguments[1] for each in nodes(node) if isinstance(each, Apply) and each.function.name == "divide"]
    if any(abs(float(number(divisor))) < 1e-3 for divisor in divisors):
        return False
    values = [number(each) for each in nodes(node) if each.value_type is ValueType.NUMBER]
    return all(isinstance(value, str) or abs(value) < 1e6 for value in values)


def many(trees: Tree, count: int, wanted: Callable[[Expr], bool] = lambda _: True) -> list[Expr]:
    """So many random trees, the same every time."""
    found: list[Expr] = []

    @settings(max_examples=count, phases=[Phase.generate])
    @given(trees.filter(wanted))
    def keep(tree: Expr) -> None:
        found.append(tree)

    keep()
    return found


@pytest.fixture(scope="module")
def trees() -> list[Expr]:
    """Random formulas and sentences."""
    return many(FORMULAS, 300, sound) + many(SENTENCES, 60)


@pytest.fixture(scope="module")
def book(trees: list[Expr], tmp_path_factory: pytest.TempPathFactory, recalculated: Recalculations) -> Path:
    """The leaves in the first row, and below it a formula a row with its value."""
    path = tmp_path_factory.mktemp("trees") / "trees.xlsx"
    workbook = xlsxwriter.Workbook(str(path), {"in_memory": True})
    sheet = workbook.add_worksheet(SHEET)
    sheet.write_row(0, 0, VALUES.values())
    for row, tree in enumerate(trees, start=1):
        sheet.write_formula(row, 0, f"={sheet_text(tree, RefFrom(PLACES, SHEET))}", None, number(tree))
    workbook.close()
    recalculated.add(path)
    return path


def test_the_random_formulas_are_deep_enough_to_need_brackets(trees: list[Expr]) -> None:
    texts = [text(tree) for tree in trees]
    assert sum("(" in each for each in texts) > 100
    assert sum(len(list(nodes(tree))) > 7 for tree in trees) > 100
    assert {sign for sign in "+-*/<>=&" if any(sign in each for each in texts)} == set("+-*/<>=&")


def read_back(node: Expr) -> float | str:
    """The value of the words of a tree, as somebody works it out who knows only the page of the reader."""
    everywhere = Row({}, {})
    values = {leaf.label: Column((), [everywhere], [value]) for leaf, value in VALUES.items()}
    calculator = Calculator(lambda name: values[name.label], {"job": ()}, {"job": [everywhere]}, everywhere)
    return calculator.value(Parser(frozenset(values), frozenset({"job"})).read(node.words))


def test_the_words_of_a_random_formula_have_its_value(trees: list[Expr]) -> None:
    wrong = [f"{tree.words}: {read_back(tree)!r}" for tree in trees if not agrees(read_back(tree), number(tree))]
    assert not wrong, "\n".join(wrong)


def test_a_random_formula_is_computed_in_its_cell_as_it_is_here(
    book: Path, witness: Program, recalculated: Recalculations
) -> None:
    assert [str(each) for each in differences(book, recalculated.result(book, witness))] == []
