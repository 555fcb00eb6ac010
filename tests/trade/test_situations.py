"""A job worked by hand comes out of the program, and out of the sheet, as it came off the paper."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import pytest

from books import COMPANY, write_book, written
from calc.batch import evaluated
from calc.intake.read_run import has_error, read_run
from calc.layout.bid_cautions import slots_for
from calc.layout.workbook import addresses
from calc.model.results import JobValues
from calc.trade.money.costs import COST
from calc.xlsx_read.read import read_book
from hand_arithmetic import NotArithmetic, side_figures, worked
from sheet_cells import Held, read_cells
from situation import Expected, Situation, declared, read, situations
from witness import Program, Recalculations

IN_SHEETS = situations()[::80]
"""The situations that a spreadsheet program works out too: it takes the better part of a second for each."""


def named(each: Situation) -> str:
    """The name of the file, for the report."""
    return each.name


@pytest.fixture(scope="module")
def jobs(tmp_path_factory: pytest.TempPathFactory) -> dict[str, JobValues]:
    """The job of every situation, taken in from workbooks on disk and evaluated all together, as a week is.

    Together they show too that no job of a chunk leans on another. One that a stop holds back is not among them.
    """
    folder = tmp_path_factory.mktemp("situations")
    usual = read_book(write_book(folder / "company.xlsx", COMPANY))
    ready = {}
    for each in situations():
        own = folder / each.name
        own.mkdir()
        company = usual if each.company == COMPANY else read_book(write_book(own / "company.xlsx", each.company))
        intake = read_run([read_book(write_book(own / "week.xlsx", each.week))], company)
        (job,) = intake.jobs
        if not has_error(job, intake.findings):
            ready[each.name] = job
    return dict(zip(ready, evaluated(list(ready.values())), strict=True))


@pytest.fixture(scope="module")
def recalculated_jobs(
    jobs: dict[str, JobValues],
    libreoffice: Program,
    recalculated: Recalculations,
    tmp_path_factory: pytest.TempPathFactory,
) -> dict[str, Path]:
    """The workbooks of some situations, as LibreOffice recalculated them in one call."""
    folder = tmp_path_factory.mktemp("written")
    files = {
        each.name: written(jobs[each.name], folder / f"{each.name}.xlsx") for each in IN_SHEETS if each.name in jobs
    }
    recalculated.add(*files.values())
    return {name: recalculated.result(file, libreoffice) for name, file in files.items()}


def wrong(situation: Situation, job: JobValues, answer: Callable[[Expected], object]) -> list[str]:
    """What is answered otherwise than the file says, a line each."""
    return [f"{name}: no line goes by that id" for name in situation.unknown] + [
        said
        for line in (declared(name) for name in situation.expect if name not in situation.unknown)
        for each in situation.expected(line, job.count(line.level))
        if (said := each.differs(answer(each)))
    ]


@pytest.mark.parametrize("situation", situations(), ids=named)
def test_a_job_comes_out_as_it_was_worked_by_hand(situation: Situation, jobs: dict[str, JobValues]) -> None:
    assert situation.name in jobs, "a stop holds the job back"
    job = jobs[situation.name]
    found = wrong(situation, job, lambda each: job.of(declared(each.line), each.row))
    assert not found, "\n".join([situation.sentence, *found])


@pytest.mark.slow
@pytest.mark.parametrize("situation", IN_SHEETS, ids=named)
def test_the_sheet_says_what_was_worked_by_hand(
    situation: Situation, jobs: dict[str, JobValues], recalculated_jobs: dict[str, Path]
) -> None:
    assert situation.name in jobs, "a stop holds the job back"
    job = jobs[situation.name]
    places = addresses(job.shape, slots_for(job))
    cells = read_cells(recalculated_jobs[situation.name])
    found = wrong(situation, job, lambda each: cells.get(places[each.line, each.row], Held(None)).value)
    assert not found, "\n".join([situation.sentence, *found])


@pytest.mark.parametrize(
    ("arithmetic", "comes_to"),
    [
        ("36 * 4 / 12 / 27", Fraction(4, 9)),
        ("ceil(3.2 / 0.25) * 0.25", Fraction(13, 4)),
        ("ceil(0.3 / 0.1)", 3),  # 0.3 / 0.1 is less than 3 in floats
        ("ceil((0.1 + 0.2) / 0.1)", 3),  # and this more
        ("-2 ** 2", -4),
        ("max(0, 1 - 3)", 0),
        ("round_half_up_cents(1.005)", Fraction(101, 100)),
        ("'worked as typed'", "worked as typed"),
        ("exp(0) + ln(1)", 1),
        ("tail(0)", Fraction(1, 2)),
    ],
)
def test_arithmetic_on_paper_is_exact(arithmetic: str, comes_to: object) -> None:
    assert worked(arithmetic) == comes_to


@pytest.mark.parametrize(
    "said",
    ["4 *", "area * 4", "Slab.net_area", "abs(3)", "max(1, key=2)", "True", "1 < 2", "1 / 0", "1 + 'one'", "[4]", ""],
)
def test_what_is_no_arithmetic_is_refused(said: str) -> None:
    with pytest.raises(NotArithmetic, match=r"^['\"]"):
        worked(said)


@pytest.mark.parametrize(
    ("arithmetic", "printed"),
    [("tail(1.96)", "0.0250"), ("tail(-1)", "0.8413"), ("curve(0)", "0.3989"), ("curve(-2)", "0.0540")],
)
def test_the_normal_curve_on_paper_is_the_one_of_the_tables(arithmetic: str, printed: str) -> None:
    assert f"{float(worked(arithmetic)):.4f}" == printed


def test_a_figure_on_the_side_may_use_those_above_it() -> None:
    assert side_figures({"area": "12 * 3", "yards": "area / 81"}) == {"area": 36, "yards": Fraction(4, 9)}
    assert worked("yards * 27", {"yards": Fraction(4, 9)}) == 12
    with pytest.raises(NotArithmetic, match="yards"):
        side_figures({"area": "yards * 81", "yards": "4 / 9"})
    with pytest.raises(NotArithmetic, match="must be a number"):
        side_figures({"area": "'wide'"})


def test_a_wrong_answer_is_named_with_its_line_and_its_arithmetic() -> None:
    expected = Expected("Slab.net_area", 1, "12 * 3")
    assert expected.differs(36.0) == ""
    assert expected.differs(36.0000001) == "Slab.net_area row 2: expected 12 * 3 = 36, got 36.0000001"
    assert expected.differs("36") and expected.differs(None) and expected.differs(float("nan"))
    assert Expected("MeanThickness.mean", 0, "'none'").differs(float("nan")) == ""
    assert Expected("MeanThickness.mean", 0, "0").differs(float("nan"))


NAMED = """
situation = "A level of named rows"
source = "made up"
[tables]
Areas = [["length ft", "width ft"], [12, 3]]
[expect]
"Subtotal.amount" = { labor = "120.5", others = "0" }
"CostTable.amount" = { "Form release agent, per job" = "9.5" }
"OrderCandidate.order" = { 2 = "4.25" }
"BestOrder.order" = { 1 = "4.25" }
"""


def test_a_row_goes_by_its_name_and_one_without_a_name_by_its_number(tmp_path: Path) -> None:
    (tmp_path / "named.toml").write_text(NAMED, encoding="utf-8")
    situation = read(tmp_path / "named.toml")

    def rows(name: str, count: int) -> dict[int, str]:
        return {each.row: each.arithmetic for each in situation.expected(declared(name), count)}

    assert rows("Subtotal.amount", 6) == {0: "0", 1: "0", 2: "0", 3: "0", 4: "120.5", 5: "0"}
    (oil,) = rows("CostTable.amount", len(COST.axis.words))
    assert COST.axis.words[oil] == "Form release agent, per job"
    assert rows("OrderCandidate.order", 40) == {1: "4.25"}
    with pytest.raises(ValueError, match=r"named: BestOrder\.order has no row '1'"):
        rows("BestOrder.order", 2)
