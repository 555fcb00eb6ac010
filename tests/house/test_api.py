"""The functions that a notebook calls: they do what the commands do, and the example on the developers' page runs."""

from __future__ import annotations

import math
import re
import subprocess
import sys
from datetime import date
from pathlib import Path

import openpyxl
import pytest

import calc
from books import COMPANY, write_book
from calc import batch
from calc.batch import Run
from calc.files import Saved, shipped
from calc.intake.schema import everything
from folders import ROOT

DEMO = shipped("sample_inputs") / "jobs.xlsx"


@pytest.fixture(scope="module")
def inputs() -> calc.Inputs:
    """The demo as it is read."""
    return calc.read(DEMO)


@pytest.fixture(scope="module")
def values(inputs: calc.Inputs) -> calc.Values:
    """The values of the first job of the demo."""
    return calc.evaluate(inputs.jobs[0])


@pytest.fixture
def two_jobs(tmp_path: Path) -> Path:
    """A jobs book of which one job has no areas, beside a company book."""
    write_book(tmp_path / "company.xlsx", COMPANY)
    tables = {
        "Jobs": [["job", "client"], ["J1", "Ann"], ["J2", "Bo"]],
        "Areas": [["job", "length ft", "width ft"], ["J1", 12, 3], ["J2", "about ten", 3]],
    }
    return write_book(tmp_path / "jobs.xlsx", tables)


def test_importing_calc_loads_no_library_and_no_rule() -> None:
    code = "import sys, calc; calc.__version__; print(*sorted(each for each in sys.modules if each[:5] == 'calc.'))"
    environment = {"PYTHONPATH": str(ROOT)}
    out = subprocess.run(
        [sys.executable, "-c", code], env=environment, capture_output=True, text=True, check=True
    ).stdout
    assert out.split() == ["calc._version"]


def test_every_public_name_is_there_and_documented() -> None:
    for name in calc.__all__:
        assert getattr(calc, name).__doc__
    assert set(calc.__all__) <= set(dir(calc))


def test_a_misspelled_name_is_an_attribute_error() -> None:
    misspelled = "bit"
    with pytest.raises(AttributeError, match="'bit'"):
        getattr(calc, misspelled)


def test_a_bid_writes_what_the_command_writes(two_jobs: Path) -> None:
    run = calc.bid(two_jobs, folder=two_jobs.parent / "out", bid_date=date(2026, 4, 13), workers=1)
    assert isinstance(run, Run) and run.folder == two_jobs.parent / "out"
    assert [(job, path.name, how) for job, path, how in run.written] == [
        ("J1", "J1.xlsx", Saved.WRITTEN),
        ("", "week.xlsx", Saved.WRITTEN),
    ]
    assert run.not_written == ["J2"] and run.code == 1
    again = batch.load_run([two_jobs], None, 46125.0)
    batch.bid(again, two_jobs.parent / "out", workers=1)
    assert [how for _, _, how in again.written] == [Saved.UNCHANGED, Saved.UNCHANGED]


def test_results_go_beside_the_book_when_no_folder_is_named(two_jobs: Path) -> None:
    run = calc.bid(str(two_jobs), job="J1", bid_date=date(2026, 4, 13), workers=1)
    assert run.folder == two_jobs.parent / "outputs" and (run.folder / "J1.xlsx").is_file()


def test_reading_tells_jobs_from_those_that_an_error_holds_back(two_jobs: Path) -> None:
    found = calc.read(two_jobs, bid_date=date(2026, 4, 13))
    assert [job.id for job in found.jobs] == ["J1"] and found.held == ("J2",) and found.failures == ()
    assert any(str(each).startswith("jobs.xlsx:Areas!B3") or "Areas!B3" in str(each) for each in found.findings)
    assert found.job("J1") is found.jobs[0]
    with pytest.raises(KeyError):
        found.job("J2")


def test_a_company_book_is_taken_from_wherever_it_is(two_jobs: Path, tmp_path: Path) -> None:
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    (tmp_path / "company.xlsx").rename(elsewhere / "ours.xlsx")
    found = calc.read([two_jobs], elsewhere / "ours.xlsx", bid_date=date(2026, 4, 13))
    assert found.jobs[0].company.name == "ours.xlsx"


def test_a_job_that_is_not_there_is_not_taken_for_an_empty_run(two_jobs: Path) -> None:
    for function in (calc.read, calc.bid, calc.check):
        with pytest.raises(LookupError, match="no job J9"):
            function(two_jobs, job="J9")


def test_a_book_that_cannot_be_read_is_a_failure_and_raises_nothing(tmp_path: Path) -> None:
    (tmp_path / "jobs.xlsx").write_bytes(b"no workbook")
    found = calc.read(tmp_path / "jobs.xlsx")
    assert found.jobs == () and len(found.failures) == 1


def test_a_check_finds_what_a_bid_finds_and_writes_nothing(two_jobs: Path) -> None:
    checked = calc.check(two_jobs, bid_date=date(2026, 4, 13))
    assert not checked.written and checked.folder is None and not (two_jobs.parent / "outputs").exists()
    assert checked.findings == calc.bid(two_jobs, bid_date=date(2026, 4, 13), workers=1).findings


def test_the_catalog_has_every_declaration_with_what_an_engineer_asks_of_it() -> None:
    catalog = calc.lines()
    assert [each.id for each in catalog] == [each.id for each in everything()]
    assert {each.kind for each in catalog} == {
        "line",
        "input",
        "factor",
        "price",
        "pack",
        "taxed",
        "account",
        "date",
        "override",
    }
    assert all(each.id and each.label and each.level and each.sheet for each in catalog)
    assert [each.id for each in catalog if each.kind in ("line", "factor") and not each.source] == []
    assert [each.id for each in catalog if each.kind == "line" and not each.words] == []
    (quantity,) = catalog.named("Order.quantity")
    assert quantity.unit == "yd3" and quantity.level == "job" and quantity in catalog.find("order.QUANT")
    with pytest.raises(KeyError):
        catalog.named("Order.nothing")


def test_the_values_of_a_job_are_those_in_its_workbook(values: calc.Values, tmp_path: Path) -> None:
    run = calc.bid(DEMO, folder=tmp_path, job=values.job.job.id, workers=1)
    sheets = openpyxl.load_workbook(run.written[0][1], data_only=True)
    shown = {cell.value for row in sheets["Order and placing"] for cell in row}
    for name in ("Order.quantity", "Order.trucks"):
        assert values.of(name) in shown, name


def test_every_row_of_a_level_has_its_value_and_its_name(values: calc.Values) -> None:
    areas = values.named("Area.length")
    assert [each.row for each in areas] == list(range(1, len(areas) + 1)) and areas[0].row_word
    assert values.of("Area.length", len(areas)) == areas[-1].value
    with pytest.raises(KeyError, match="no row"):
        values.of("Area.length", len(areas) + 1)
    assert {each.id for each in values} <= {each.id for each in calc.lines()}


def test_a_frame_has_a_row_for_each_value(values: calc.Values) -> None:
    frame = values.to_frame()
    assert len(frame) == len(values) > 2000
    assert list(frame.columns) == [
        "id", "kind", "label", "unit", "level", "sheet", "source", "words", "row", "row_word", "value",
    ]  # fmt: skip
    assert frame.set_index(["id", "row"]).index.is_unique
    assert list(calc.lines().to_frame().id) == [each.id for each in calc.lines()]


def test_an_unknown_price_is_not_a_number_and_not_zero(two_jobs: Path) -> None:
    (job,) = calc.read(two_jobs, bid_date=date(2026, 4, 13)).jobs
    given = {price.label for price in job.company.prices}
    unknown = next(each for each in calc.evaluate(job) if each.kind == "price" and each.label not in given)
    assert isinstance(unknown.value, float) and math.isnan(unknown.value)


def test_the_example_on_the_developers_page_runs(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    page = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    (example,) = re.findall(r"```python\n(import calc\n.*?)```", page, re.DOTALL)
    (tmp_path / "sample_inputs").mkdir()
    for book in shipped("sample_inputs").glob("*.xlsx"):
        (tmp_path / "sample_inputs" / book.name).write_bytes(book.read_bytes())
    monkeypatch.chdir(tmp_path)
    names: dict[str, object] = {}
    exec(compile(example, "DEVELOPERS.md", "exec"), names)
    assert (tmp_path / "bids" / "week.xlsx").is_file() and len(example.splitlines()) <= 12
    assert names["quantity"] == calc.evaluate(calc.read(DEMO).jobs[0]).of("Order.quantity")
