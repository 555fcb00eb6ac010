"""What people write is read exactly: not a sixteenth off, not in another unit, and never guessed at."""

from __future__ import annotations

import re
import string
import struct
import subprocess
import sys
import time
import unicodedata
from collections.abc import Callable
from decimal import Decimal
from fractions import Fraction
from functools import partial
from pathlib import Path
from typing import Any

import pint
import pytest
import xlsxwriter
from hypothesis import given
from hypothesis import strategies as st

from calc.errors import InputRefused
from calc.units.parse import Reading, looks_like_inches_after_point, read_quantity, read_slope, tidy
from folders import ROOT
from typed_tables import FT, LENGTHS, OTHERS, REFUSED, REFUSED_SLOPES, SIGNED, SLOPE, SLOPES
from witness import Program, recalculate, values

UNITS = sorted({unit for _, unit, *_ in (*LENGTHS, *OTHERS, *REFUSED)})

READINGS = [
    *((text, read_quantity(text, unit)) for text, unit, *_ in (*LENGTHS, *OTHERS)),
    *((text, read_quantity(text, unit, signed=True)) for text, unit, *_ in SIGNED),
    *((text, read_slope(text, unit)) for text, *_ in SLOPES for unit in ("%", "ratio")),
]
"""Every reading of the tables, with what was typed."""


def bits(number: float) -> bytes:
    """The eight bytes of a float: zero and negative zero differ here."""
    return struct.pack(">d", number)


def assert_worked(reading: Reading) -> None:
    """The value is what its formula gives, bit for bit, and the exact value but for the rounding of floats."""
    if reading.formula:
        assert bits(reading.value) == bits(float(eval(reading.formula)))
    assert abs(reading.value - float(reading.exact)) <= 1e-9 * max(1.0, abs(reading.value))
    assert bits(reading.value) != bits(-0.0)


def refusal(read: Callable[[], Reading]) -> InputRefused:
    """The refusal that ``read`` ends in."""
    with pytest.raises(InputRefused) as caught:
        read()
    return caught.value


@pytest.mark.parametrize(("text", "unit", "exact", "formula"), [*LENGTHS, *OTHERS])
def test_what_is_written_is_the_number_that_is_bid(text: str, unit: str, exact: str, formula: str) -> None:
    reading = read_quantity(text, unit)
    assert (reading.exact, reading.formula) == (Fraction(exact), formula)
    assert_worked(reading)


@pytest.mark.parametrize(("text", "unit", "exact", "formula"), SIGNED)
def test_below_zero_is_read_where_a_column_takes_it(text: str, unit: str, exact: str, formula: str) -> None:
    reading = read_quantity(text, unit, signed=True)
    assert (reading.exact, reading.formula) == (Fraction(exact), formula)
    assert_worked(reading)


@pytest.mark.parametrize(("text", "percent", "formula", "ratio_formula"), SLOPES)
def test_a_slope_is_what_was_written(text: str, percent: str, formula: str, ratio_formula: str) -> None:
    in_percent, as_ratio = read_slope(text), read_slope(text, "ratio")
    assert (in_percent.exact, in_percent.formula) == (Fraction(percent), formula)
    assert (as_ratio.exact, as_ratio.formula) == (Fraction(percent) / 100, ratio_formula)
    assert_worked(in_percent)
    assert_worked(as_ratio)


@pytest.mark.parametrize(("text", "unit", "what", "remedy"), REFUSED)
def test_a_text_that_may_mean_something_else_is_refused_and_says_what_to_type(
    text: str, unit: str, what: str, remedy: str
) -> None:
    refused = refusal(lambda: read_quantity(text, unit))
    assert (refused.found, refused.remedy) == (f'"{text}" {what}', remedy)


@pytest.mark.parametrize(("text", "what"), REFUSED_SLOPES)
def test_a_slope_that_may_mean_something_else_is_refused(text: str, what: str) -> None:
    refused = refusal(lambda: read_slope(text))
    assert (refused.found, refused.remedy) == (f'"{text}" {what}', SLOPE)


def test_a_column_is_not_read_as_a_slope_in_a_unit_that_slopes_do_not_have() -> None:
    with pytest.raises(KeyError):
        read_slope("2%", "ft")


@pytest.mark.parametrize("text", ["", " ", "\u00a0", "\u200b\ufeff", "\n"])
def test_a_cell_that_only_looks_filled_is_refused(text: str) -> None:
    refused = refusal(lambda: read_quantity(text, "ft"))
    assert (refused.found, refused.remedy) == ("Nothing is typed where a length in ft is wanted.", FT)


@pytest.mark.parametrize("unit", UNITS)
def test_every_example_that_a_remedy_gives_can_be_typed(unit: str) -> None:
    remedy = refusal(lambda: read_quantity("abc", unit)).remedy
    examples = re.fullmatch(r"Type .*, for example (.*)\.", remedy)
    assert examples
    for example in examples[1].split(" or "):
        assert read_quantity(example, unit).exact > 0


def test_every_example_of_a_slope_can_be_typed() -> None:
    examples = re.fullmatch(r"Type a slope such as (.*), (.*) or (.*)\.", SLOPE)
    assert examples
    assert [round(read_slope(example).value, 4) for example in examples.groups()] == [2, 2.0833, 2.0833]


@pytest.mark.parametrize(
    ("text", "unit", "note"),
    [
        ("10-6 1/2", "ft", "read as 10 ft 6 1/2 in"),
        ("10-6", "ft", "read as 10 ft 6 in"),
        ("10'-6\"", "ft", ""),
        ("4-1/2", "ft", ""),
        ("3 t", "ton", "read as metric tonnes: 3.307 short tons"),
        ("3 t", "lb", "read as metric tonnes: 3.307 short tons"),
        ("$50/t", "$/ton", "t read as metric tonnes"),
        ("3 tons", "ton", ""),
    ],
)
def test_a_reading_that_may_surprise_says_how_it_was_read(text: str, unit: str, note: str) -> None:
    assert read_quantity(text, unit).note == note


@pytest.mark.parametrize(
    ("text", "note"),
    [
        ("2", "read as 2 %"),
        ("0.5", "read as 0.5 %"),
        ("0", "read as 0 %"),
        ("0.49", "read as a ratio, 49 %"),
        ("0.02", "read as a ratio, 2 %"),
        ("2%", ""),
        ("1:48", ""),
    ],
)
def test_a_bare_slope_says_how_it_was_read(text: str, note: str) -> None:
    assert read_slope(text).note == note


@pytest.mark.parametrize(
    ("text", "ask"),
    [
        ("10'-14\"", "Is 10 ft 14 in meant, which is 11 ft 2 in?"),
        ("10' 14 1/2\"", "Is 10 ft 14 1/2 in meant, which is 11 ft 2 1/2 in?"),
        ("10'-12\"", "Is 10 ft 12 in meant, which is 11 ft 0 in?"),
        ("10'-11 7/8\"", ""),
        ('126"', ""),
    ],
)
def test_inches_that_make_another_foot_are_asked_about(text: str, ask: str) -> None:
    assert read_quantity(text, "ft").ask == ask


@pytest.mark.parametrize(
    ("text", "both"),
    [("10'-6\"", True), ("10-6", True), ("10 ft 6", True), ("10'", False), ('6"', False), ("10.6", False)],
)
def test_feet_and_inches_are_noticed_so_that_a_lone_decimal_beside_them_can_be_asked_about(
    text: str, both: bool
) -> None:
    assert read_quantity(text, "ft").feet_and_inches is both


@pytest.mark.parametrize("text", ["10.6", "10.1", "10.11", "10.10", "10.06", ".6", "0.9", "-3.4", " 10.6\u00a0"])
def test_a_decimal_that_may_be_feet_and_inches_is_noticed(text: str) -> None:
    assert looks_like_inches_after_point(text)


@pytest.mark.parametrize(
    "text", ["10", "10.", "10.0", "10.5", "10.05", "10.25", "10.75", "10.12", "10.60", "10.006", "10.6 m", "10.6.1", ""]
)
def test_a_decimal_that_is_no_feet_and_inches_is_not_asked_about(text: str) -> None:
    assert not looks_like_inches_after_point(text)


@pytest.mark.parametrize(
    ("text", "plain"),
    [
        ("\u201810\u2019 6\u201d", "'10' 6\""),
        ("10\u2032 6\u2033", "10' 6\""),
        ("10\u00b4 6''", "10' 6\""),
        ("\ufeff2\u00a0\u20091\u20442\u200b", "2 1/2"),
        ("2½", "2 1/2"),
        ("⅞", "7/8"),
        ("½2", "1/2 2"),
        ("\u22123 \u2013 4", "-3 - 4"),
        ("3 ft² 2 yd³", "3 ft^2 2 yd^3"),
        ("\uff11\uff12", "\uff11\uff12"),
    ],
)
def test_what_a_phone_corrected_is_brought_back_to_what_was_typed(text: str, plain: str) -> None:
    assert tidy(text) == plain


@pytest.mark.parametrize(
    ("plain", "signs"),
    [
        ("'", "\u2018\u2019\u201a\u201b\u2032\u2035\u02b9\u02bc\u00b4`"),
        ('"', "\u201c\u201d\u201e\u201f\u2033\u2036\u02ba\u02dd"),
        ("-", "\u2010\u2011\u2012\u2013\u2014\u2015\u2212"),
        ("/", "\u2044\u2215"),
        ("", "\u200b\u200c\u200d\u200e\u200f\u2060\ufeff\u00ad"),
        (" ", "\u00a0\u2002\u2003\u2007\u2009\u202f\u3000\t\n"),
    ],
)
def test_every_sign_that_stands_for_one_of_the_keyboard_is_read_as_it(plain: str, signs: str) -> None:
    assert [tidy(f"4{sign}2") for sign in signs] == [f"4{plain}2"] * len(signs)


def test_every_vulgar_fraction_is_read_behind_its_whole_number() -> None:
    signs = [chr(code) for code in (*range(0xBC, 0xBF), *range(0x2150, 0x215F))]
    for sign in signs:
        assert read_quantity(f"2{sign}", "in").value == pytest.approx(2 + unicodedata.numeric(sign), abs=1e-15)


def test_a_tidied_text_is_not_changed_again() -> None:
    for text, _ in READINGS:
        assert tidy(tidy(text)) == tidy(text)


VULGAR = {Fraction(eighths, 8): sign for eighths, sign in enumerate("⅛¼⅜½⅝¾⅞", start=1)}
WITH_MARKS = (
    "{feet}'-{inches}\"",
    "{feet}' {inches}\"",
    "{feet}'{inches}\"",
    "{feet}'{inches}",
    "{feet}' - {inches}''",
    "{feet}\u2019 \u2013 {inches}\u201d",
    "{feet}\u2032{inches}\u2033",
    "{feet} ft {inches} in",
    "{feet}ft{inches}in",
    "{feet} ft. {inches} in.",
    "{feet} ft. {inches}",
    "{feet} Feet {inches} Inches",
)
INCHES_ALONE = (
    '{inches}"',
    "{inches}''",
    "{inches}\u201d",
    "{inches} in",
    "{inches}in.",
    "{inches} INCHES",
    "{inches}",
)
TAPE = st.integers(0, 12 * 16 - 1).map(lambda sixteenths: Fraction(sixteenths, 16))


def spellings(inches: Fraction) -> list[str]:
    """Every way to write a number of inches from the tape: 6 1/2, 6-1/2, 6½, 6.5, and 1/2 without a whole one."""
    whole, part = divmod(inches, 1)
    if not part:
        return [str(whole)]
    ways = [f"{whole} {part}", f"{whole}-{part}", str(float(inches))]
    if part in VULGAR:
        ways.append(f"{whole}{VULGAR[part]}")
    return ways if whole else [*ways, str(part)]


@given(st.integers(0, 9999), TAPE, st.sampled_from(WITH_MARKS))
def test_feet_and_inches_come_back_to_the_sixteenth_in_every_spelling(feet: int, inches: Fraction, form: str) -> None:
    for written in spellings(inches):
        text = form.format(feet=feet, inches=written)
        in_feet, in_inches = read_quantity(text, "ft"), read_quantity(text, "in")
        assert (in_feet.exact, in_inches.exact) == (feet + inches / 12, feet * 12 + inches), text
        assert in_feet.feet_and_inches, text
        assert in_feet.note == in_feet.ask == "", text
        assert_worked(in_feet)
        assert_worked(in_inches)


@given(st.integers(0, 9999), TAPE)
def test_feet_and_inches_with_a_bare_dash_come_back_to_the_sixteenth(feet: int, inches: Fraction) -> None:
    for written in spellings(inches):
        if written == str(inches) and "/" in written:
            continue  # 10-1/2 is ten and a half
        reading = read_quantity(f"{feet}-{written}", "ft")
        assert reading.exact == feet + inches / 12, written
        assert reading.note == f"read as {feet} ft {tidy(written).replace('-', ' ')} in", written
        assert_worked(reading)


@given(TAPE, st.sampled_from(INCHES_ALONE))
def test_inches_come_back_to_the_sixteenth_in_every_spelling(inches: Fraction, form: str) -> None:
    for written in spellings(inches):
        text = form.format(inches=written)
        reading = read_quantity(text, "in")
        assert reading.exact == inches, text
        assert not reading.feet_and_inches, text
        assert_worked(reading)


@given(st.decimals(0, 999_999_999, places=3, allow_nan=False), st.sampled_from(UNITS), st.booleans())
def test_a_bare_decimal_is_a_number_in_the_unit_of_its_column(number: Decimal, unit: str, below_zero: bool) -> None:
    text = f"{'-' * below_zero}{number}"
    reading = read_quantity(text, unit, signed=True)
    assert (reading.value, reading.exact, reading.formula) == (float(text), Fraction(text), "")


@given(st.integers(1, 99), st.integers(1, 999))
def test_a_slope_of_rise_to_run_is_read_exactly(rise: int, run: int) -> None:
    reading = read_slope(f"{rise}:{run}")
    assert reading.exact == Fraction(100 * rise, run)
    assert_worked(reading)


# What may stand in a typed number, so that random texts come near to what can be read.
PIECES = st.sampled_from(
    ["1", "0", "12", ".5", " ", "'", '"', "-", "/", "ft", "in", "m2", "per", "$", "%", ":", "½", "t", "C"]
)
NEARLY = st.lists(PIECES, max_size=9).map("".join)


@given(st.one_of(st.text(), st.text(string.printable), NEARLY), st.sampled_from(UNITS), st.booleans())
def test_no_text_at_all_ends_in_a_stack_trace(text: str, unit: str, signed: bool) -> None:
    for read in (partial(read_quantity, text, unit, signed=signed), partial(read_slope, text)):
        try:
            reading = read()
        except InputRefused as refused:
            assert refused.found.endswith(".") and refused.found.isprintable()
            assert refused.remedy.endswith(".")
        else:
            assert_worked(reading)
    assert looks_like_inches_after_point(text) in (True, False)


@pytest.mark.parametrize("piece", ["9", "1/", "1 ", "'", " ", "m", "½", "-", "9.", "a"])
def test_an_endless_text_is_refused_at_once(piece: str) -> None:
    text = piece * 200_000
    begun = time.perf_counter()
    for refused in (refusal(lambda: read_quantity(text, "ft")), refusal(lambda: read_slope(text))):
        assert f"is {len(text)} characters long, too long to be a " in refused.found
        assert len(refused.found) < 100
    looks_like_inches_after_point(text)
    assert time.perf_counter() - begun < 1


def test_the_longest_sensible_text_is_not_refused_for_its_length() -> None:
    assert read_quantity("10".rjust(60), "ft").value == 10
    assert "61 characters" in refusal(lambda: read_quantity("10".rjust(61), "ft")).found


# A unit as it is typed, and how pint writes it.
PINT_NAMES = {
    "in": "inch", "ft": "foot", "yd": "yard", "mile": "mile", "mm": "mm", "cm": "cm", "m": "m", "km": "km",
    "in2": "inch**2", "ft2": "foot**2", "sf": "foot**2", "sy": "yard**2", "square miles": "mile**2", "m2": "m**2",
    "cu in": "inch**3", "ft3": "foot**3", "cf": "foot**3", "yd3": "yard**3", "cy": "yard**3", "cu cm": "cm**3",
    "m3": "m**3", "gal": "gallon", "L": "liter", "oz": "ounce", "lb": "pound", "ton": "short_ton", "g": "gram",
    "kg": "kg", "t": "metric_ton", "s": "second", "min": "minute", "h": "hour", "F": "degF", "C": "degC",
    "%": "percent", "mph": "mile/hour", "km/h": "km/hour", "kph": "km/hour", "m/s": "m/second", "ft/min": "foot/minute",
    "psi": "pound_force_per_square_inch", "MPa": "megapascal", "kPa": "kilopascal", "N/mm2": "newton/mm**2",
    "lb/yd3": "pound/yard**3", "pcf": "pound/foot**3", "kg/m3": "kg/m**3", "oz/gal": "ounce/gallon",
    "ft2/gal": "foot**2/gallon", "m2/L": "m**2/liter", "ft2/h": "foot**2/hour", "m2/min": "m**2/minute",
}  # fmt: skip


@pytest.fixture(scope="module")
def registry() -> pint.UnitRegistry[Any]:
    """pint on exact fractions."""
    return pint.UnitRegistry(non_int_type=Fraction)


@pytest.mark.parametrize("typed", PINT_NAMES)
def test_no_unit_is_another_size_than_an_independent_library_says(typed: str, registry: pint.UnitRegistry[Any]) -> None:
    amount = registry.Quantity(Fraction(7, 2), PINT_NAMES[typed])
    columns = {unit: registry.Quantity(Fraction(1), PINT_NAMES[unit]) for unit in UNITS if unit in PINT_NAMES}
    taken = [unit for unit, one in columns.items() if one.dimensionality == amount.dimensionality]
    assert taken, f"no column takes {typed}"
    for unit in taken:
        reading = read_quantity(f"3.5 {typed}", unit)
        assert reading.exact == amount.to(PINT_NAMES[unit]).magnitude, unit
        assert_worked(reading)
    by_the_yard = {unit for unit, one in columns.items() if typed == "yd" and one.check("[volume]")}
    for unit in by_the_yard:  # concrete is bought by the yard, which is a cubic one
        assert read_quantity("3.5 yd", unit) == read_quantity("3.5 cy", unit)
    for unit in columns.keys() - taken - by_the_yard:
        assert refusal(partial(read_quantity, f"3.5 {typed}", unit)).found.endswith(" is wanted."), unit


def test_reading_a_bid_does_not_pay_for_the_unit_registry() -> None:
    code = "import sys, calc.units.parse; sys.exit('pint' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], cwd=ROOT, check=False).returncode == 0


def test_a_spreadsheet_program_works_every_formula_to_the_same_number(witness: Program, tmp_path: Path) -> None:
    worked = [(text, reading) for text, reading in READINGS if reading.formula]
    book = tmp_path / "typed.xlsx"
    with xlsxwriter.Workbook(str(book), {"in_memory": True}) as workbook:
        sheet = workbook.add_worksheet("Typed")
        for row, (_, reading) in enumerate(worked):
            sheet.write_formula(row, 0, f"={reading.formula}", None, -1)
    computed = values(recalculate([book], witness, tmp_path)[book])
    assert len(computed) == len(worked) > 100
    for row, (text, reading) in enumerate(worked, start=1):
        found = computed["Typed", f"A{row}"]
        assert isinstance(found, int | float)
        assert abs(found - reading.value) <= 1e-12 * max(1.0, abs(reading.value)), text
