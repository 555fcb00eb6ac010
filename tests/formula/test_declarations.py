"""Every way to misuse a declaration is refused where it stands, in a sentence that says what to write instead."""

from __future__ import annotations

import subprocess
import sys
from collections import Counter
from pathlib import Path
from shutil import copytree, ignore_patterns

import pytest

from calc import declare
from calc.declare import (
    JOB,
    Factor,
    FormulaError,
    Input,
    Line,
    Price,
    Section,
    Severity,
    caution,
    factor,
    factors,
    line,
    price,
    total,
)
from calc.declared import Declared, Override
from calc.formula.value_types import ValueType
from calc.trade.catalog import SECTIONS, complete
from calc.units.algebra import COUNTS
from folders import ROOT
from misuses import ACKNOWLEDGED, AREA, KIND, MISUSES, Area, Kind


@pytest.mark.parametrize("misuse", MISUSES)
def test_a_misuse_is_refused_with_the_label_and_what_to_write_instead(misuse: str) -> None:
    write, said = MISUSES[misuse]
    with pytest.raises(FormulaError) as refused:
        write()
    assert [each for each in said if each not in str(refused.value)] == []


def test_a_line_of_the_job_over_many_rows_is_refused_with_how_to_bring_them_up() -> None:
    with pytest.raises(FormulaError, match=r"'Sought' is given once for each job, .* for each area.*total\(\)"):

        class Wrong(Section, title="Wrong"):
            sought = line("Sought", "ft2", Area.area, source="test")


def test_a_line_of_one_kind_of_row_over_another_is_refused() -> None:
    with pytest.raises(
        FormulaError, match="'Sought' is given once for each kind, and its formula has a value for each area and kind"
    ):

        class Wrong(Section, title="Wrong", each=KIND):
            sought = line("Sought", "ft2*lb/yd3", Area.area * Kind.dose, source="test")


def test_factors_that_are_not_one_for_each_row_are_refused() -> None:
    with pytest.raises(FormulaError, match="'Weights' needs one value for each kind"):

        class Wrong(Section, title="Wrong", each=KIND):
            weights = factors("Weights", "lb", 1, 2, 3, source="test")


@pytest.mark.parametrize("misuse", ACKNOWLEDGED)
def test_a_misuse_is_not_passed_over_nor_left_to_an_error_without_advice(misuse: str) -> None:
    with pytest.raises(FormulaError):
        ACKNOWLEDGED[misuse]()


class Ordered(Section, title="Ordered", each=AREA, sheet="Takeoff", called="Second"):
    """A section with one
    of everything."""

    waste = factor("Waste", "%", 5, low=2, high=8, source="house rule")
    sand = price("Sand", "$/pack", pack="lb/pack")
    net = line("Net", "ft2", Area.area, source="test", adds=True, may_be_overridden=True)
    gross = line("Gross", "ft2", net * (1 + waste / declare.PERCENT), source="test")
    stop = caution("Small", Severity.STOP, net < gross, "The net:", net, "ft2", usual="more", do="ask", source="test")


def test_a_section_lists_what_it_holds_in_the_order_in_which_it_is_worked_out() -> None:
    assert [member.id for member in Ordered.members] == [
        "Second.waste",
        "Second.sand",
        "Second.sand_pack",
        "Second.sand_taxed",
        "Second.sand_account",
        "Second.sand_dated",
        "Second.sand_valid",
        "Second.net_computed",
        "Second.net_override",
        "Second.net",
        "Second.net_all",
        "Second.gross",
        "Second.stop_acknowledged",
        "Second.stop_fires",
        "Second.stop_found",
        "Second.stop_number",
        "Second.stop_open",
    ]
    assert (Ordered.title, Ordered.heading, Ordered.sheet) == (
        "Ordered",
        "A section with one of everything.",
        "Takeoff",
    )
    assert [each.name for each in Ordered.declarations] == ["waste", "sand", "net", "gross", "stop"]


def test_a_line_that_can_be_overridden_is_used_as_overridden_and_else_as_computed() -> None:
    net = Ordered.net
    assert isinstance(net.computed, Line)
    assert isinstance(net.override, Override)
    assert net.formula.words == "Net: override or, if blank, Net: computed"
    assert net.computed.formula is Area.area
    assert {member.unit_text for member in (net, net.computed, net.override)} == {"ft2"}
    assert [each.label for each in Ordered.gross.formula.leaves()] == ["Net", "Waste"]


def test_the_sum_of_all_rows_belongs_to_the_job() -> None:
    assert Ordered.net.all_rows is not None
    assert Ordered.net.all_rows.level == JOB
    assert Ordered.net.level == AREA
    assert total(Ordered.net) is Ordered.net.all_rows
    assert total(Ordered.gross) is not total(Ordered.gross)


ALL = [member for section in SECTIONS for member in section.members]
LINES = [member for member in ALL if isinstance(member, Line)]


def repeated(names: list[str]) -> list[str]:
    """The names that stand there more than once."""
    return [name for name, count in Counter(names).items() if count > 1]


def of_kind(kind: type[Declared]) -> list[Declared]:
    """The declarations of the trade of one kind."""
    return [member for member in ALL if isinstance(member, kind)]


LOST = """
from calc.declare import *


class Lost(Section, title="Lost"):
    much = line("Lost", "", exact(1), source="test")
"""


def test_a_section_that_the_catalog_lacks_is_refused_by_name_and_not_left_out_of_every_bid(tmp_path: Path) -> None:
    copytree(ROOT / "calc", tmp_path / "calc", ignore=ignore_patterns("__pycache__"))
    (tmp_path / "calc" / "trade" / "work" / "lost.py").write_text(LOST, encoding="utf-8")
    run = subprocess.run(
        [sys.executable, "-c", "import calc.trade.catalog"], cwd=tmp_path, capture_output=True, text=True, check=False
    )
    assert run.returncode == 1
    assert '<Section Lost "Lost" of calc.trade.work.lost> is not in the catalog' in run.stderr


def test_a_section_that_the_catalog_has_twice_is_refused_by_name() -> None:
    with pytest.raises(FormulaError, match=f"{SECTIONS[0].called} .* more than once"):
        complete(*SECTIONS, SECTIONS[0])


def test_what_is_declared_is_shown_by_its_id_label_and_unit() -> None:
    assert repr(Ordered.gross) == '<Line Second.gross "Gross" [ft2]>'
    assert (
        repr(line("Loose volume of the pile", "", declare.exact(1), source="test"))
        == '<Line of no section yet "Loose volume of the pile">'
    )
    assert repr(Ordered) == f'<Section Second "Ordered" of {__name__}>'


def test_no_two_declarations_of_the_trade_have_one_id() -> None:
    assert repeated([member.id for member in ALL]) == []


def comes_out(each: Line) -> bool:
    """Whether a line has the unit of its formula, or counts what its formula gives as a plain number."""
    return each.unit == each.formula.unit or (each.formula.unit.plain and each.unit_text in COUNTS)


def test_every_line_of_the_trade_has_a_label_a_source_and_the_unit_of_its_formula() -> None:
    assert [each.id for each in LINES if not each.label or not each.source] == []
    assert [
        each.id for each in LINES if each.value_type is not each.formula.value_type or each.value_type is ValueType.FLAG
    ] == []
    assert [each.id for each in LINES if not comes_out(each)] == []


def test_every_line_uses_only_what_stands_before_it() -> None:
    order = {member: place for place, member in enumerate(ALL)}
    assert [each.id for each in LINES if any(order[leaf] >= order[each] for leaf in each.formula.leaves())] == []


def test_every_factor_has_a_source_and_lies_in_its_range() -> None:
    found = of_kind(Factor)
    assert [each.id for each in found if not each.source] == []
    assert [each.id for each in found if not all(_in_range(each, value) for value in each.values)] == []


def _in_range(found: Factor, value: float) -> bool:
    low, high = found.low, found.high
    return (low is None or low <= value) and (high is None or value <= high)


def test_a_row_of_overrides_factors_or_prices_names_one_thing_only() -> None:
    assert repeated([each.label for each in LINES if each.override is not None]) == []
    for kind in (Override, Factor, Price):
        assert repeated([each.label for each in of_kind(kind)]) == []


def test_no_two_columns_of_an_input_sheet_have_one_header() -> None:
    givens = [member for member in ALL if isinstance(member, Input)]
    assert repeated([f"{each.section.table}: {each.label.casefold()}" for each in givens]) == []
    assert [each.id for each in givens if not each.section.table] == []
    assert [each.id for each in givens if each.words_allowed and each.default not in each.words_allowed] == []
