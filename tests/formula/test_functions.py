"""Every function of the table computes in a spreadsheet program what it computes here, on numbers chosen to be hard.

The programs agree with each other everywhere but on the exact half of a millionth, which LibreOffice rounds up when a
float falls a little short of it and Gnumeric does not: there the paper decides, in a test of its own.
"""

from __future__ import annotations

import random
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from itertools import product
from math import inf, nextafter
from pathlib import Path

import numpy as np
import pytest
import xlsxwriter
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.formula.functions import FUNCTIONS, NONE, Column, millionths
from witness import Program, Recalculations, differences

Value = float | str | bool
Case = tuple[Value, ...]


@dataclass(frozen=True)
class Table:
    """Cases of one function; ``product`` says that the first two values are multiplied to make its first argument."""

    name: str
    cases: list[Case]
    product: bool = False


def both_signs(*numbers: float) -> list[float]:
    """The numbers, and the numbers below zero."""
    return [*numbers, *(-number for number in numbers)]


THIRTY_FIVE = (35 - 1e-12, 35.0, 35 + 1e-12, 35 + 4e-7, 35 + 6e-7, 35 + 1e-6, 35.5)
TINY = (1e-12, 4e-7, 6e-7, 0.999999e-6, 1e-6, 1.000001e-6)
LARGE = (1.005, 2.675, 1234.565, 99999.995, 1e6, 12345678.905, 999999.999999, 1e9)
HARD = [0.0, *both_signs(*TINY, *THIRTY_FIVE, *LARGE)]
SOME = [0.0, 1.0, -0.1, 1e-6, 3.3, -3.3, 35 + 1e-12, -1e9]
NEAR: list[Case] = [
    *product(both_signs(*TINY), (0.0, 1e-6)),
    *product(both_signs(*THIRTY_FIVE), (35.0, -35.0)),
    *product((0.0, 999999.999999, 1e9), (0.0, 1e6, 1e9)),
]
"""Two numbers that lie a hair apart, or a world."""

FLAGS: list[Case] = list(product((True, False), repeat=2)) + list(product((True, False), repeat=3))
WORDS = ("strip", "circle", "1", "001", "1E3", "<5")


def each(*numbers: float) -> list[Case]:
    """Numbers as cases of a function of one."""
    return [(number,) for number in numbers]


def drawn(count: int, tail: int) -> list[tuple[int, int]]:
    """Pairs of whole numbers whose product ends in ``tail``, of all sizes, the same every time."""
    chance = random.Random(count + tail)
    pairs: list[tuple[int, int]] = []
    while len(pairs) < count:
        one, other = chance.randrange(10 ** chance.randint(2, 6)), chance.randrange(10 ** chance.randint(1, 4))
        if one * other % 10 ** len(str(tail)) == tail % 10 ** len(str(tail)):
            pairs.append((one, other))
    return pairs


HALF_CENTS: list[Case] = [
    ((one if place % 2 else -one) / 100, other / 10) for place, (one, other) in enumerate(drawn(600, 5))
]
"""A quantity and a rate whose product is an exact half of a cent, on paper."""

WHOLE: list[Case] = [(one / 10, other / 10) for one, other in drawn(120, 100)]
"""Two numbers whose product is whole, on paper."""

STEPS = (0.1, 0.25, 0.7, 1.1, 3.0, 50.0)
MULTIPLES: list[Case] = [(float(round(step * k, 2)), step) for step in STEPS for k in (0, 1, 3, 7, 29, 1001)]

TABLES = [
    *(Table(name, list(product(SOME, SOME))) for name in ("add", "subtract", "multiply", "largest", "smallest")),
    Table("divide", list(product(SOME, filter(None, SOME)))),
    *(Table(name, [(0.0, 35.5, -3.0), (-1.0, -2.0, -1e9)]) for name in ("largest", "smallest")),
    *(Table(name, NEAR) for name in ("more", "not_less", "less", "not_more", "equals")),
    Table("is_word", list(product(WORDS, WORDS))),
    Table("given", [(NONE,), *each(*HARD)]),
    Table("if_given", [(one, other) for one in (NONE, 0.0, -2.5, 1e9) for other in (0.0, 7.0)]),
    *(Table(name, [case for case in FLAGS if len(case) == size]) for name in ("both", "either") for size in (2, 3)),
    Table("not_", [(True,), (False,)]),
    Table("when", [(flag, 2.5, -1.0) for flag in (True, False)]),
    Table("when", [(flag, "strip", "circle") for flag in (True, False)]),
    *(Table(name, each(*HARD)) for name in ("round_up", "round_down", "money", "abs_")),
    *(Table(name, WHOLE, product=True) for name in ("round_up", "round_down")),
    Table("round_up_to", MULTIPLES),
    Table("round_up_to", [(*case, 0.1) for case in WHOLE], product=True),
    Table("rounded", [(number, digits) for number in HARD for digits in (1.0, 100.0, 1000.0)]),
    Table("rounded", [(*case, 100.0) for case in HALF_CENTS[:100]], product=True),
    Table("money", HALF_CENTS, product=True),
    Table("square_root", each(0.0, *TINY, *THIRTY_FIVE, *LARGE)),
    Table("exponential", each(-30.0, -1.0, 0.0, 1e-6, 1.0, 20.0)),
    Table("logarithm", each(*TINY, *THIRTY_FIVE, *LARGE)),
    Table("normal_cdf", each(*both_signs(0.0, 1e-6, 0.5, 1.0, 1.96, 3.3, 8.0))),
    Table("normal_inv", each(1e-6, 0.001, 0.025, 0.3, 0.5, 0.7, 0.975, 0.999)),
    Table("date_words", each(*(46135.0 + day for day in range(31)), 61.0, 36526.0, 45351.0, 46446.0)),
    Table("weekday", each(*(46135.0 + day for day in range(15)), 61.0, 36526.0)),
    Table("joined", [("in ", count, " trucks") for count in (0.0, 1.0, 12.0, -35.0, 1e6, 123456789012.0)]),
    Table("joined", [("way ", word) for word in WORDS]),
]


def column(values: tuple[Value, ...]) -> Column:
    """Values as a formula gets them: numbers with NaN for none, flags, or words."""
    if isinstance(values[0], str) and values[0] != NONE:
        return np.array(values, dtype=object)
    return np.array([np.nan if value == NONE else value for value in values])


def computed(table: Table) -> Column:
    """What the numbers face gives for each case."""
    columns = [column(values) for values in zip(*table.cases, strict=True)]
    if table.product:
        columns = [columns[0] * columns[1], *columns[2:]]
    return FUNCTIONS[table.name].numbers(*columns)


def formula(table: Table, row: int) -> str:
    """What the sheet face says in a row."""
    cells = [f"{letter}{row}" for letter in "ABC"[: len(table.cases[0])]]
    if table.product:
        cells = [f"{cells[0]}*{cells[1]}", *cells[2:]]
    return f"={FUNCTIONS[table.name].sheet(*cells)}"


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory, recalculated: Recalculations) -> Path:
    """All tables, a sheet each: the values of a case, and the formula with what was computed here."""
    path = tmp_path_factory.mktemp("functions") / "functions.xlsx"
    workbook = xlsxwriter.Workbook(str(path), {"in_memory": True})
    money = workbook.add_format({"num_format": "$#,##0.00"})
    for number, table in enumerate(TABLES):
        sheet = workbook.add_worksheet(f"{table.name} {number}")
        look = money if table.name == "money" else None
        for row, (case, value) in enumerate(zip(table.cases, computed(table).tolist(), strict=True)):
            for place, argument in enumerate(case):
                write = sheet.write_string if isinstance(argument, str) else sheet.write
                write(row, place, argument)
            sheet.write_formula(row, 3, formula(table, row + 1), look, value)
    workbook.close()
    recalculated.add(path)
    return path


def test_no_function_is_left_out() -> None:
    assert {table.name for table in TABLES} == set(FUNCTIONS)


def test_a_hard_number_reaches_the_sheet_as_it_is() -> None:
    numbers = {value for table in TABLES for case in table.cases for value in case if isinstance(value, float)}
    assert [number for number in numbers if float(f"{number:.16G}") != number] == []


def test_every_function_computes_in_a_spreadsheet_program_what_it_computes_here(
    book: Path, witness: Program, recalculated: Recalculations
) -> None:
    assert [str(each) for each in differences(book, recalculated.result(book, witness))] == []


@pytest.mark.parametrize(
    ("name", "arguments", "expected"),
    [
        ("round_up", (35 + 1e-12,), 35),
        ("round_up", (35 + 1e-6,), 36),
        ("round_up", (-35.000001,), -36),
        ("round_up", (1.1 * 1.1 * 100,), 121),
        ("round_up", (nextafter(1e9, inf),), 1e9),
        ("round_up", (2e9,), 2e9),
        ("round_down", (35 - 1e-12,), 35),
        ("round_down", (-35.9,), -35),
        ("round_up_to", (0.3, 0.1), 0.1 * 3),
        ("round_up_to", (9.01, 0.25), 9.25),
        ("money", (1.005,), 1.01),
        ("money", (-2.675,), -2.68),
        ("money", (0.0049995,), 0.01),
        ("rounded", (1.0005, 1000), 1.001),
    ],
)
def test_an_order_or_a_price_is_what_a_person_finds_by_hand(
    name: str, arguments: tuple[float, ...], expected: float
) -> None:
    columns = (np.array([argument]) for argument in arguments)
    assert FUNCTIONS[name].numbers(*columns).tolist() == [expected]


def test_a_count_rounded_to_nothing_is_said_without_a_sign() -> None:
    counts = FUNCTIONS["round_down"].numbers(np.array([-0.3, -1e-9, 0.3]))
    assert FUNCTIONS["joined"].numbers(counts).tolist() == ["0", "0", "0"]


MILLION = 10**6
FACTOR = st.integers(-(10**6), 10**6) | st.integers(-(10**5), 10**5).map(lambda number: 10 * number + 5)
PRODUCTS = st.lists(
    st.tuples(FACTOR, st.integers(0, 10**5), st.integers(0, 4), st.integers(0, 4)), min_size=40, max_size=40
)
"""Two whole numbers and how many digits of each stand behind the point; many of the products end in 5."""


def multiplied(products: list[tuple[int, int, int, int]]) -> Column:
    """The products as floats have them."""
    return np.array([one / 10**left * (other / 10**right) for one, other, left, right in products])


def whole_millionths(number: Fraction) -> int:
    """On paper: the nearest whole millionth, halves away from zero."""
    size = (abs(number) * MILLION + Fraction(1, 2)).__floor__()
    return size if number >= 0 else -size


@settings(max_examples=50)
@given(PRODUCTS)
def test_no_amount_is_a_cent_off(products: list[tuple[int, int, int, int]]) -> None:
    paper = [(Decimal(one) * other).scaleb(-left - right) for one, other, left, right in products]
    twice = [
        amount.quantize(Decimal("1e-6"), ROUND_HALF_UP).quantize(Decimal("0.01"), ROUND_HALF_UP) for amount in paper
    ]
    assert FUNCTIONS["money"].numbers(multiplied(products)).tolist() == [float(amount) for amount in twice]


@settings(max_examples=50)
@given(PRODUCTS)
def test_the_half_of_a_millionth_counts_up_as_it_does_on_paper(products: list[tuple[int, int, int, int]]) -> None:
    paper = [whole_millionths(Fraction(one * other, 10 ** (left + right))) for one, other, left, right in products]
    assert millionths(multiplied(products)).tolist() == paper


@settings(max_examples=50)
@given(PRODUCTS)
def test_no_bag_is_bought_or_saved_by_the_dust_of_floats(products: list[tuple[int, int, int, int]]) -> None:
    paper = [whole_millionths(Fraction(one * other, 10 ** (left + right))) for one, other, left, right in products]
    up = [-(-abs(number) // MILLION) * (1 if number > 0 else -1) for number in paper]
    down = [abs(number) // MILLION * (1 if number > 0 else -1) for number in paper]
    assert FUNCTIONS["round_up"].numbers(multiplied(products)).tolist() == up
    assert FUNCTIONS["round_down"].numbers(multiplied(products)).tolist() == down
