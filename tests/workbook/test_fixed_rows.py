"""A table of fixed words says them: a formula in its place would send a reader looking for what it depends on."""

from __future__ import annotations

import openpyxl
import pytest

from books import only_job, written
from calc.declared import Fixed
from calc.declared.line import FIXED
from calc.intake.schema import everything
from calc.layout.bid_cautions import slots_for
from calc.layout.workbook import addresses
from calc.layout.worked import worked
from calc.model.results import JobValues

STRIP = {
    "Jobs": [["job", "bid date"], ["one", "2026-04-13"]],
    "Areas": [["length ft", "width ft", "thickness in"], [12, 3, 4]],
    "Plants": [["quantity"], [1]],
}
TABLES = [each for each in everything() if isinstance(each, Fixed)]


@pytest.fixture(scope="module")
def job(tmp_path_factory: pytest.TempPathFactory) -> JobValues:
    return only_job(tmp_path_factory.mktemp("fixed"), STRIP)


@pytest.fixture(scope="module")
def book(job: JobValues, tmp_path_factory: pytest.TempPathFactory) -> openpyxl.Workbook:
    return openpyxl.load_workbook(written(job, tmp_path_factory.mktemp("book") / "one.xlsx"))


@pytest.mark.parametrize("table", TABLES, ids=[each.id for each in TABLES])
def test_each_row_of_a_fixed_table_is_a_plain_cell(table: Fixed, job: JobValues, book: openpyxl.Workbook) -> None:
    places = addresses(job.shape, slots_for(job))
    for row in range(job.count(table.level)):
        sheet, ref = places[table.id, row]
        shown = book[sheet][ref]
        assert (shown.data_type, shown.value) == (
            "n" if table.value_type.value == "a number" else "s",
            job.of(table, row),
        )
    assert worked(table) == FIXED


def test_a_word_in_a_table_of_formulas_is_a_plain_cell_too(job: JobValues, book: openpyxl.Workbook) -> None:
    """Wages are not taxed, whatever the company book says; whether concrete is follows from its price."""
    places = addresses(job.shape, slots_for(job))
    taxed = next(each for each in everything() if each.id == "CostTable.taxed")
    words = taxed.level.axis.words
    shown = {word: book[places[taxed.id, row][0]][places[taxed.id, row][1]] for row, word in enumerate(words)}
    assert (shown["Labor: layout"].value, shown["Labor: layout"].data_type) == ("no", "s")
    assert shown["Ready-mix concrete"].data_type == "f"
