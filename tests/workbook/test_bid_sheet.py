"""The front page: the price and what it is made of, what was decided instead of what, and what moves the price."""

from __future__ import annotations

from pathlib import Path

import openpyxl
import pytest

from books import COMPANY, line, value, written_sheet
from calc import batch
from calc.files import shipped
from calc.layout.bid_decisions import SENSITIVITIES_SHOWN
from calc.layout.front_page import GRID
from calc.layout.log_sheet import count_defaults
from calc.model.results import JobValues, Sensitivity
from calc.model.sensitivity import with_sensitivity
from calc.trade.levels import GROUP
from calc.trade.money.price import BidPrice
from front_page_reader import ADDS, CHANGES, NEXT, PRICES, UNIT, VALUE, below, front_page, number, row_of, walk
from priced_company import PRICED

CREW_HOUR = (2 * 46 + 58) / 3
"""Two laborers and a finisher, in $."""

PAPERS = {"letter": (612.0, 792.0), "A4": (595.3, 841.9)}
"""Width and height of a paper, in points."""


def moves(job: JobValues) -> tuple[Sensitivity, ...]:
    """What moves the price of a job."""
    found = with_sensitivity(job).sensitivity
    assert found is not None
    return found


def on_the_price(cost: float) -> float:
    """What a dollar amount of cost does to the price: 5 % contingency, 12 % overhead, 18 % margin."""
    return cost * 1.05 * 1.12 / (1 - 0.18)


def move(job: JobValues, label: str) -> Sensitivity:
    """What one thing that nobody measured does to the price."""
    return next(each for each in moves(job) if each.label == label)


def of(job: JobValues, name: str, row: int = 0) -> float:
    """A number of a job by its id."""
    return number(value(job, name, row))


def test_a_price_that_lacks_prices_is_never_shown_as_if_it_were_whole(tmp_path: Path) -> None:
    lacking = walk(tmp_path, company=COMPANY)
    told = f"NOT COMPLETE: costs without a price: {of(lacking, 'BidPrice.unpriced'):.0f}, see Costs"
    assert of(lacking, "BidPrice.unpriced") > 1
    assert any(told in row for row in front_page(tmp_path, lacking))
    assert any("complete: every cost has a price" in row for row in front_page(tmp_path, walk(tmp_path)))


def test_the_parts_of_the_price_add_up_to_it_to_the_cent(tmp_path: Path) -> None:
    job = walk(tmp_path)
    rows = front_page(tmp_path, job)
    parts = [word.capitalize() for word in GROUP.axis.words] + ["Tax", "Contingency", "Overhead", "Margin and rounding"]
    whole = row_of(rows, "Price")
    assert whole[VALUE] == job.of(BidPrice.price)
    assert round(sum(number(row_of(rows, part)[VALUE]) for part in parts), 2) == whole[VALUE]
    assert sum(number(row_of(rows, part)[UNIT]) for part in parts) == pytest.approx(1)


def test_the_percent_rule_stands_beside_the_ladder_with_what_it_should_cost_more(tmp_path: Path) -> None:
    job = walk(tmp_path)
    rungs = job.count(line("OrderCandidate.order").level) // 2  # those of a pump follow
    expected = {
        of(job, "OrderCandidate.order", row): of(job, "OrderCandidate.expected_cost", row) for row in range(rungs)
    }
    more = expected[of(job, "OtherOrderRules.by_percent")] - expected[of(job, "BestOrder.order")]
    assert more > 0
    row = row_of(front_page(tmp_path, job), "Concrete to order")
    assert row[NEXT] == "percent rule: higher expected cost by"
    assert number(row[ADDS]) == pytest.approx(more)


def test_an_order_by_percent_is_told_what_the_ladder_would_have_saved(tmp_path: Path) -> None:
    by_risk, by_percent = walk(tmp_path), walk(tmp_path, [["Order rule", "percent"]])
    row = row_of(front_page(tmp_path, by_percent), "Concrete to order")
    assert row[NEXT] == "cheapest order size: lower expected cost, by"
    assert number(row[ADDS]) == pytest.approx(-of(by_risk, "RuleComparison.costs_more"))


def test_without_a_price_of_the_mix_no_other_order_is_called_dearer(tmp_path: Path) -> None:
    row = row_of(front_page(tmp_path, walk(tmp_path, company=COMPANY)), "Concrete to order")
    assert row[NEXT] == "no order to compare"
    assert row[ADDS] == 0


def test_the_next_haul_stands_beside_the_winner_with_the_difference(tmp_path: Path) -> None:
    job = walk(tmp_path)
    offers = job.count(line("PlanCost.cost").level)
    costs = sorted(of(job, "PlanCost.cost", row) for row in range(offers) if of(job, "PlanCost.is_compared", row))
    rows = front_page(tmp_path, job)
    row = row_of(rows, "Haul plan and loads")
    assert str(value(job, "Choice.plan_name")) in str(below(rows, "Haul plan and loads")[VALUE])
    assert str(value(job, "RunnerUp.plan_name")) in str(row[NEXT])
    assert str(value(job, "RunnerUp.vehicle_name")) in str(row[NEXT])
    assert number(row[ADDS]) == pytest.approx(costs[1] - costs[0])


def test_the_next_way_of_placing_stands_beside_the_winner_with_the_difference(tmp_path: Path) -> None:
    job = walk(tmp_path)
    ways = {
        str(value(job, "Method.name", row)): of(job, "MethodCost.cost", row)
        for row in range(4)
        if of(job, "MethodFit.fits", row)
    }
    first, second = sorted(ways, key=lambda way: ways[way])[:2]
    row = row_of(front_page(tmp_path, job), "Placing")
    assert row[VALUE] == first
    assert second in str(row[NEXT])
    assert number(row[ADDS]) == pytest.approx(ways[second] - ways[first])


def test_the_next_packs_stand_beside_those_that_are_bought_with_the_difference(tmp_path: Path) -> None:
    # 300 ft2 over 200 ft2/gal are 1.5 gal: two small cans at $24, or else a large pail at $88
    row = row_of(front_page(tmp_path, walk(tmp_path)), "Curing compound")
    assert row[VALUE] == 48
    assert row[NEXT] == "runner-up: 5-gal pails only"
    assert row[ADDS] == 40


def test_ways_that_buy_the_same_packs_are_not_sold_as_a_choice(tmp_path: Path) -> None:
    prices = [row for row in PRICED["Prices"] if row[0] != "Curing compound, 5-gal pail"]
    row = row_of(front_page(tmp_path, walk(tmp_path, company=PRICED | {"Prices": prices})), "Curing compound")
    assert row[NEXT] == "no other pails"


def test_hours_that_nobody_allowed_for_move_the_price_by_what_they_cost(tmp_path: Path) -> None:
    # 16 h, where the program begins to ask
    job, longer = walk(tmp_path), walk(tmp_path, [["Unforeseen-conditions allowance", 16]])
    (end,) = move(job, "Unforeseen-conditions allowance").ends
    assert end.value == 16
    # and more than the hours at crew mix, since the preparation takes another visit
    assert end.more > on_the_price(16 * CREW_HOUR)
    assert end.more == pytest.approx(of(longer, "BidPrice.price") - of(job, "BidPrice.price"))


def test_a_clean_up_within_the_minimum_hours_of_its_visit_moves_no_price(tmp_path: Path) -> None:
    # usually 1.5 h, from 0.75 to 3 h; whoever strips and cleans up is paid for 4 h, an hour of them to get there
    job = walk(tmp_path, length=6)
    ends = {end.value: end.more for end in move(job, "Hours per unit, clean up").ends}
    beyond = 3 + 0.012 * of(job, "EdgeTakeoff.formed_all") + 1 - 4
    assert list(ends) == [3.0]
    # both prices are rounded up to 5 dollars, so what is between them is off by less than that
    assert ends[3.0] == pytest.approx(on_the_price(beyond * 46), abs=5)


def test_what_was_typed_or_set_by_the_house_is_not_said_to_be_unmeasured(tmp_path: Path) -> None:
    named = {each.label for each in moves(walk(tmp_path))}
    assert {"Unforeseen-conditions allowance", "Finishing rate"} <= named
    company = PRICED | {"Factors": [["factor", "value"], ["Finishing rate", 90]]}
    known = {each.label for each in moves(walk(tmp_path, [["Unforeseen-conditions allowance", 0]], company))}
    assert not known & {"Unforeseen-conditions allowance", "Finishing rate"}


def test_an_end_without_a_price_is_not_called_cheap(tmp_path: Path) -> None:
    assert "Dug by" in {each.label for each in moves(walk(tmp_path))}
    prices = [row for row in PRICED["Prices"] if "mini excavator" not in str(row[0])]
    unpriced = moves(walk(tmp_path, company=PRICED | {"Prices": prices}))
    assert "Dug by" not in {each.label for each in unpriced}


def test_what_moves_the_price_most_stands_first_and_says_the_price_there(tmp_path: Path) -> None:
    job = walk(tmp_path)
    strongest = moves(job)
    rows = front_page(tmp_path, job)
    start = next(place for place, row in enumerate(rows) if row[0] == "Assumed input") + 1
    assert [each.effect for each in strongest] == sorted((each.effect for each in strongest), reverse=True)
    shown = rows[start : start + SENSITIVITIES_SHOWN]
    assert [row[0] for row in shown] == [each.label for each in strongest[:SENSITIVITIES_SHOWN]]
    for each, row in zip(strongest, shown, strict=False):
        for end, price, change in zip(each.ends, PRICES, CHANGES, strict=False):
            assert number(row[change]) == pytest.approx(end.more)
            assert number(row[price]) == pytest.approx(of(job, "BidPrice.price") + end.more)


def test_the_page_says_how_many_inputs_nobody_typed(tmp_path: Path) -> None:
    job = walk(tmp_path)
    told = f"{count_defaults(job.job)} inputs have their default value"
    assert any(str(row[0]).startswith(told) for row in front_page(tmp_path, job))


def test_the_bid_is_read_on_one_page_at_full_size(tmp_path: Path) -> None:
    run = batch.load_run([shipped("sample_inputs") / "jobs.xlsx"], None, None)
    for job in batch.evaluated(batch.ready_jobs(run)):
        sheet = openpyxl.load_workbook(written_sheet(job, "Bid", tmp_path / f"{job.job.id}.xlsx"))["Bid"]
        assert sheet.page_setup.orientation in (None, "portrait"), "absent means portrait"
        assert not sheet.sheet_properties.pageSetUpPr or not sheet.sheet_properties.pageSetUpPr.fitToPage
        for paper, (width, height) in PAPERS.items():
            margins = sheet.page_margins
            across, down = width - 72 * (margins.left + margins.right), height - 72 * (margins.top + margins.bottom)
            assert _wide() <= across, f"{job.job.id} on {paper}"
            assert _high(sheet) <= down, f"{job.job.id} on {paper}"


def _wide() -> float:
    """Points of its printed columns, each of so many digits of seven pixels and five more."""
    return sum((each * 7 + 5) * 0.75 for each in GRID.widths)


def _high(sheet: openpyxl.worksheet.worksheet.Worksheet) -> float:
    """Points of its rows."""
    return sum(sheet.row_dimensions[row].height or 15 for row in range(1, sheet.max_row + 1))


def test_the_front_page_says_what_was_overridden_and_how_many_boxes_were_changed(tmp_path: Path) -> None:
    job = walk(tmp_path)
    rows = front_page(tmp_path, job)
    assert row_of(rows, "Overridden, acknowledged")[VALUE] == "nothing"
    assert row_of(rows, "Changed since issue")[VALUE] == "0 boxes"
    assert row_of(rows, "Price at issue")[VALUE] == f"${of(job, 'BidPrice.price'):,.2f}"
