"""The witnesses themselves: what they must find, so that their silence means something."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any
from xml.etree.ElementTree import ParseError
from xml.parsers.expat import ExpatError
from zipfile import ZipFile

import pytest
import xlsxwriter

from folders import SUPPORT, TESTS
from sheet_cells import Held, cells_of_part, cells_of_tree, sheet_parts
from witness import Difference, Program, Recalculations, WitnessFailed, differences, edit, formulas, recalculate, values

pytestmark = pytest.mark.slow

Plant = Callable[[Any, Any], None]
"""Changes the small workbook before it is closed; is given its workbook and its one sheet."""


def cell(ref: str, *content: object) -> Plant:
    """Write ``content`` over a cell: a number or text, or a formula, its look and its value."""
    return lambda _, sheet: sheet.write(ref, *content)


def write(path: Path, *plants: Plant) -> Path:
    """A small workbook, right in every cell, then changed by ``plants``."""
    workbook = xlsxwriter.Workbook(str(path), {"in_memory": True})
    sheet = workbook.add_worksheet("Slab volume")
    money = workbook.add_format({"num_format": "$#,##0.00"})
    day = workbook.add_format({"num_format": "yyyy-mm-dd"})
    sheet.write_string("A1", "Slab volume")
    sheet.write_number("A2", 10.5)
    sheet.write_formula("A3", "=A2*2", None, 21)
    sheet.write_formula("A4", "=ROUND(ROUND(A2*1.01,6),2)", money, 10.61)
    sheet.write_formula("A5", '=IF(A2>10,"long","short")', None, "long")
    sheet.write_formula("A6", "=A2>10", None, True)
    sheet.write_formula("A7", "=A8+1", day, 45001)
    sheet.write_number("A8", 45000, day)
    for plant in plants:
        plant(workbook, sheet)
    workbook.close()
    return path


WRONG: dict[str, tuple[str, str, object]] = {
    "a number a little off": ("A3", "=A2*2", 21.0000001),
    "a number written as text": ("A3", "=A2*2", "21"),
    "no value": ("A3", "=A2*2", ""),
    "an error, the same on both sides": ("A3", "=A2/0", "#DIV/0!"),
    "text in other letters": ("A5", '=IF(A2>10,"long","short")', "Long"),
    "one for true": ("A6", "=A2>10", 1),
    "a day late": ("A7", "=A8+1", 45002),
}
"""What is wrong: the cell, its formula and the value written beside it."""


@pytest.fixture(scope="module")
def wrong(tmp_path_factory: pytest.TempPathFactory, recalculated: Recalculations) -> dict[str, tuple[Path, str]]:
    """A workbook for each of :data:`WRONG`, and the one cell that is wrong in it; all go out in one call."""
    folder = tmp_path_factory.mktemp("wrong")
    books = {}
    for number, (said, (ref, formula, value)) in enumerate(WRONG.items()):
        path = write(folder / f"{number}.xlsx", cell(ref, formula, None, value))
        recalculated.add(path)
        books[said] = path, ref
    return books


def found(original: Path, program: Program, recalculated: Recalculations) -> list[Difference]:
    """What ``program`` finds in ``original``."""
    return differences(original, recalculated.result(original, program))


def test_a_workbook_that_is_right_is_not_accused(
    tmp_path: Path, witness: Program, recalculated: Recalculations
) -> None:
    assert found(write(tmp_path / "right.xlsx"), witness, recalculated) == []


@pytest.mark.parametrize("said", WRONG)
def test_a_wrong_value_beside_a_formula_is_found(
    wrong: dict[str, tuple[Path, str]], said: str, witness: Program, recalculated: Recalculations
) -> None:
    original, ref = wrong[said]
    assert [(each.sheet, each.ref) for each in found(original, witness, recalculated)] == [("Slab volume", ref)]


def test_a_cent_is_found_in_a_sum_so_large_that_the_relative_tolerance_would_pass_it(
    tmp_path: Path, witness: Program, recalculated: Recalculations
) -> None:
    def millions(workbook: Any, sheet: Any) -> None:
        money = workbook.add_format({"num_format": "$#,##0.00"})
        sheet.write_formula("B1", "=20000000.01", money, 20000000.02)
        sheet.write_formula("B2", "=20000000.01", None, 20000000.02)

    original = write(tmp_path / "millions.xlsx", millions)
    assert [each.ref for each in found(original, witness, recalculated)] == ["B1"]


def test_a_difference_reads_as_a_sentence_with_place_formula_and_both_values() -> None:
    assert (
        str(Difference("Dig and haul", "C7", "=A1+1", 2.0, None))
        == "Dig and haul!C7 =A1+1: written 2.0, recalculated nothing"
    )


def test_an_edit_reaches_what_depends_on_it_and_the_rest_stays(
    tmp_path: Path, witness: Program, recalculated: Recalculations
) -> None:
    original, edited = write(tmp_path / "as written.xlsx"), tmp_path / "edited.xlsx"
    edit(original, {("Slab volume", "A2"): "=9+6/12"}, edited)
    after = values(recalculated.result(edited, witness))
    assert (after["Slab volume", "A3"], after["Slab volume", "A5"]) == (19, "short")
    assert after["Slab volume", "A8"] == values(original)["Slab volume", "A8"]
    assert formulas(edited) == formulas(original) | {("Slab volume", "A2"): "=9+6/12"}


def test_an_edit_of_an_empty_cell_is_refused_since_it_would_prove_nothing(tmp_path: Path) -> None:
    with pytest.raises(ValueError, match=r"Slab volume!C9 is empty"):
        edit(write(tmp_path / "written.xlsx"), {("Slab volume", "C9"): 1}, tmp_path / "edited.xlsx")


def test_two_files_of_one_name_each_get_their_own_answer(tmp_path: Path, witness: Program) -> None:
    files = []
    for length in (2, 5):
        folder = tmp_path / f"wëek {length}"
        folder.mkdir()
        files.append(write(folder / "a job.xlsx", cell("A2", length)))
    results = recalculate(files, witness, tmp_path)
    assert [values(results[file])["Slab volume", "A3"] for file in files] == [4, 10]


def test_a_file_that_a_witness_cannot_load_is_named_instead_of_counting_as_equal(
    tmp_path: Path, witness: Program
) -> None:
    broken = tmp_path / "broken.xlsx"
    broken.write_bytes(b"PK\x03\x04 no workbook")
    with pytest.raises(WitnessFailed, match=r"broken\.xlsx"):
        recalculate([write(tmp_path / "sound.xlsx"), broken], witness, tmp_path)


def test_cells_are_found_by_the_pattern_as_they_are_in_the_tree(
    tmp_path: Path, witness: Program, recalculated: Recalculations
) -> None:
    odd = write(
        tmp_path / "odd.xlsx",
        cell("B1", "a & b < c > \"d\" 'e'\nf"),
        cell("B2", '=IF(A2>1,"<&>","")&"é"', None, "<&>é"),
        cell("B3", '=""', None, ""),
        cell("B4", "=1/0", None, "#DIV/0!"),
    )
    edit(odd, {("Slab volume", "A2"): 9}, tmp_path / "saved.xlsx")
    for path in (odd, tmp_path / "saved.xlsx", recalculated.result(odd, witness)):
        with ZipFile(path) as file:
            (part,) = (file.read(name) for name in sheet_parts(file).values())
        strings = [f"text {number}" for number in range(20)]
        assert cells_of_part(part, strings) == cells_of_tree(part, strings)
        assert len(cells_of_part(part, strings)) >= 11


MAIN = '<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData><row r="1">'
END = "</row></sheetData></worksheet>"


@pytest.mark.parametrize(
    "unusual",
    [
        '<c t="inlineStr" r="A1"><is><r><t>A</t></r><r><t>Z</t></r></is></c>',
        '<c\nr="A1" t="str"><v>AZ</v></c>',
        '<c r="A1" t="str"><!-- <c r="B1"><v>1</v></c> --><v>AZ</v></c>',
        '<c r="A1" t="str"><v><![CDATA[AZ]]></v></c>',
    ],
)
def test_a_cell_in_an_unusual_form_is_read_all_the_same(unusual: str) -> None:
    usual = '<c r="C1" s="4"><f>1&lt;2</f><v>1</v></c>'
    part = f"{MAIN}{unusual}{usual}{END}".encode()
    assert cells_of_part(part, []) == [("A1", Held("AZ")), ("C1", Held(1.0, "1<2"))]


def test_a_part_that_is_not_well_formed_is_no_sheet() -> None:
    with pytest.raises((ExpatError, ParseError)):
        cells_of_part(f'{MAIN}<c r="A1"><v>1</v></c></sheetData></worksheet>'.encode(), [])


def test_files_that_were_added_together_are_recalculated_in_one_call(tmp_path: Path, libreoffice: Program) -> None:
    together = Recalculations(tmp_path)
    files = [write(tmp_path / f"{number}.xlsx") for number in range(3)]
    together.add(*files)
    results = {together.result(file, libreoffice) for file in files}
    assert len(results) == len(files)
    assert len({result.parent for result in results}) == 1


@pytest.mark.parametrize(
    ("setting", "outcome"), [("", "1 skipped"), ("required", "1 error")], ids=["may be missing", "required"]
)
def test_a_missing_witness_is_never_silent(tmp_path: Path, setting: str, outcome: str) -> None:
    for file in (TESTS / "conftest.py", SUPPORT / "longest.py", SUPPORT / "witness.py"):
        shutil.copy(file, tmp_path)
    (tmp_path / "test_it.py").write_text("def test_it(libreoffice):\n    pass\n", encoding="utf-8")
    environment = {"PATH": str(tmp_path), "FLATWORK_WITNESSES": setting, "SYSTEMROOT": os.environ.get("SYSTEMROOT", "")}
    run = subprocess.run(
        [sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", str(tmp_path)],
        cwd=tmp_path,
        env=environment,
        capture_output=True,
        text=True,
        check=False,
    )
    assert outcome in run.stdout
    assert "WITNESS MISSING" in run.stdout
    assert "libreoffice-calc" in run.stdout
    assert (run.returncode == 0) == (setting != "required")
