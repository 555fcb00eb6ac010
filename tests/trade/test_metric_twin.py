"""A job typed in metres, millimetres, litres and tonnes is the same bid as the one typed in feet, in every line."""

from __future__ import annotations

import math
from fractions import Fraction
from functools import partial
from pathlib import Path

import pytest

from books import Rows, only_job
from calc.declared import Factor, Input, Kind, Line
from calc.intake.schema import (
    FACT_TABLES,
    FACTOR_LIST,
    FACTOR_TABLES,
    FACTORS,
    MAIN_FACTORS,
    OVERRIDABLE,
    OVERRIDES,
    PRICE_LIST,
    PRICES,
    TABLES,
    everything,
    facts_of,
)
from calc.model.results import JobValues
from calc.units.parse import read_quantity
from whole_job import Tables, headed, whole_company, whole_week

YARD = Fraction("0.9144")
POUND = Fraction("0.45359237")
GALLON = Fraction("3.785411784")
METRIC: dict[str, tuple[str, Fraction]] = {
    "in": ("mm", Fraction("25.4")),
    "ft": ("m", Fraction("0.3048")),
    "mile": ("km", Fraction("1.609344")),
    "in2": ("mm2", Fraction("25.4") ** 2),
    "ft2": ("m2", Fraction("0.3048") ** 2),
    "ft3": ("m3", Fraction("0.3048") ** 3),
    "yd3": ("m3", YARD**3),
    "gal": ("l", GALLON),
    "lb": ("kg", POUND),
    "ton": ("t", 2000 * POUND / 1000),
    "lbf": ("n", POUND * Fraction("9.80665")),
}
"""The metric unit that goes for each unit, and how many make one of it: definitions (NIST Handbook 44, from memory)."""


def metric(value: object, unit: str) -> tuple[float, str]:
    """What was typed in a column of ``unit``, in metric units: 10' 6\" in ft is 3.2004 m, 1.5 lb/yd3 is 0.89 kg/m3."""
    number = Fraction(read_quantity(value, unit, signed=True).exact if isinstance(value, str) else str(value))
    if unit == "F":
        return float((number - 32) / Fraction("1.8")), "C"
    above, *below = unit.split("/")
    said, size = METRIC.get(above, (above, Fraction(1)))
    number *= size
    for part in below:
        name, size = METRIC.get(part, (part, Fraction(1)))
        said, number = f"{said}/{name}", number / size
    return float(number), said


def in_cell(value: object, unit: str) -> object:
    """The same with its unit beside it, as ``3.2004 m``; what has no metric unit stays as it is."""
    if value is None or not unit:
        return value
    number, said = metric(value, unit)
    return value if said == unit else f"{number!r} {said}"


def twin(tables: Tables, *, units_in_cells: bool) -> Tables:
    """The same books in metric units: a unit stands in its header (or the unit column), or in each cell."""
    return {name: _twin_of(name, rows, units_in_cells) for name, rows in tables.items()}


def _twin_of(name: str, rows: Rows, units_in_cells: bool) -> Rows:
    if name == PRICES:  # a price is for one pack, one bag, one hour; only what a pack holds has a metric unit
        held = {each.label: each.pack.unit_text.partition("/")[0] for each in PRICE_LIST if each.pack is not None}
        return _by_row(rows, "item", "size", held)
    if name == OVERRIDES:
        return _by_row(rows, "line", "value", {each.label: each.unit_text for each in OVERRIDABLE.values()})
    if name in FACTOR_TABLES or name in FACT_TABLES:
        listed, key = (FACTOR_LIST, "factor") if name in FACTOR_TABLES else (_measured(name), "fact")
        return _by_row(rows, key, "value", {each.label: each.unit_text for each in listed}, beside=not units_in_cells)
    return _by_column(name, rows, units_in_cells)


def _by_row(rows: Rows, key: str, typed: str, units: dict[str, str], beside: bool = False) -> Rows:
    """The unit of the column ``typed`` goes by what the row is about; it may stand in the column ``unit`` beside it."""
    header = list(rows[0])
    about, value = header.index(key), header.index(typed)
    made = [list(row) for row in rows]
    for row in made[1:]:
        unit = units.get(str(row[about]), "")
        if beside and unit and row[value] is not None:
            row[value], row[header.index("unit")] = metric(row[value], unit)
        else:
            row[value] = in_cell(row[value], unit)
    return made


def _by_column(name: str, rows: Rows, units_in_cells: bool) -> Rows:
    """The unit goes by the column."""
    header = list(rows[0])
    made = [list(row) for row in rows]
    for heading in TABLES[name].headings:
        if not heading.unit or heading.given is None or heading.given.kind is not Kind.NUMBER:
            continue
        at = header.index(heading.header)
        for row in made[1:]:
            if row[at] is not None:
                row[at] = in_cell(row[at], heading.unit) if units_in_cells else metric(row[at], heading.unit)[0]
        if not units_in_cells:
            made[0][at] = f"{heading.label} {metric(0, heading.unit)[1]}"
    return made


def _measured(table: str) -> tuple[Input, ...]:
    return tuple(each for each in facts_of(table) if each.kind is Kind.NUMBER)


def company() -> Tables:
    """The company book of the whole job, with every factor a little off what is usual."""
    rows = [
        {"factor": factor.label, "for": word, "value": factor.values[at] * 1.01}
        for factor in FACTOR_LIST
        for at, word in enumerate(_kinds(factor))
    ]
    return whole_company() | {FACTORS: headed(FACTORS, rows), MAIN_FACTORS: headed(MAIN_FACTORS, [])}


def _kinds(factor: Factor) -> tuple[str | None, ...]:
    return factor.level.axis.words if factor.level.axes else (None,)


def unlike(one: JobValues, another: JobValues) -> list[str]:
    """Every line that two jobs do not have in common, with both values, and the lists that are not of one length."""
    lengths = [
        f"{level}: {count} rows and {another.count(level)}"
        for level, count in one.counts.items()
        if count != another.count(level)
    ]
    return lengths + [
        f"{named.id} row {row + 1}: {one.of(named, row)} and {another.of(named, row)}"
        for named in everything()
        if isinstance(named, Line)
        for row in range(min(one.count(named.level), another.count(named.level)))
        if not _alike(one.of(named, row), another.of(named, row))
    ]


def _alike(one: float | str, another: float | str) -> bool:
    if isinstance(one, str) or isinstance(another, str):
        return one == another
    return math.isclose(one, another, rel_tol=1e-9, abs_tol=1e-9) or (math.isnan(one) and math.isnan(another))


@pytest.fixture(scope="module")
def in_feet(tmp_path_factory: pytest.TempPathFactory) -> JobValues:
    """The job that fills every column, in the units of the blank."""
    return only_job(tmp_path_factory.mktemp("feet"), whole_week(), company())


@pytest.mark.parametrize("units_in_cells", [False, True], ids=["units in the headers", "units in the cells"])
def test_a_job_typed_in_metric_units_is_the_same_bid_in_every_line(
    units_in_cells: bool, in_feet: JobValues, tmp_path: Path
) -> None:
    metres = partial(twin, units_in_cells=units_in_cells)
    in_metres = only_job(tmp_path, metres(whole_week()), metres(company()))
    assert unlike(in_feet, in_metres) == []


def test_a_metric_number_read_in_feet_would_be_noticed(in_feet: JobValues, tmp_path: Path) -> None:
    metres = twin(whole_week(), units_in_cells=False)
    stations = [["job", "area", "station ft", *metres["Cross-sections"][0][3:]], *metres["Cross-sections"][1:]]
    found = unlike(in_feet, only_job(tmp_path, metres | {"Cross-sections": stations}, company()))
    assert any(said.startswith("StationStrip.gap row 2") for said in found)


def test_the_twin_is_metric_through_and_through() -> None:
    for units_in_cells in (False, True):
        books = twin(whole_week(), units_in_cells=units_in_cells) | twin(company(), units_in_cells=units_in_cells)
        typed = [str(cell) for rows in books.values() for row in rows[1 if units_in_cells else 0 :] for cell in row]
        last = {text.split()[-1] for text in typed if text.split()}
        assert {"mm", "m", "m2", "m3", "l", "t", "kg/m3"} <= last
        assert not last & {part for unit in METRIC for part in (unit, f"$/{unit}", f"lb/{unit}")}
