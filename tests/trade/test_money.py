"""Money foots: cents add to subtotals, subtotals to the direct cost, parts to the price; nothing counts twice."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal
from pathlib import Path

import pytest

from books import only_job, value
from calc.model.results import JobValues
from calc.trade.levels import GROUP
from calc.trade.money.cost_rows import ROWS
from priced_company import PRICED
from random_bids import JOBS_A_WEEK, WEEKS, drawn_bids

CENT = Decimal("0.01")


def cents(number: object) -> Decimal:
    """An amount as an accountant reads it off a sheet."""
    return Decimal(repr(round(float(str(number)), 6))).quantize(CENT, ROUND_HALF_UP)


@pytest.fixture(scope="module")
def bids(tmp_path_factory: pytest.TempPathFactory) -> list[JobValues]:
    """The drawn bids, evaluated."""
    return list(drawn_bids(tmp_path_factory.mktemp("bids")))


def amounts(bid: JobValues) -> list[Decimal]:
    """The amounts of the table of costs, row by row."""
    return [cents(value(bid, "CostTable.amount", row)) for row in range(len(ROWS))]


def test_there_are_three_hundred_bids_and_they_differ(bids: list[JobValues]) -> None:
    assert len(bids) == WEEKS * JOBS_A_WEEK
    assert len({value(each, "BidPrice.price") for each in bids}) > 200


def test_every_amount_is_how_much_times_its_rate_to_the_cent(bids: list[JobValues]) -> None:
    for bid in bids:
        for row, amount in enumerate(amounts(bid)):
            worked = float(value(bid, "CostTable.quantity", row)) * float(value(bid, "CostTable.rate", row))
            assert amount == cents(worked), ROWS[row].label


def test_the_cents_that_are_shown_add_to_the_subtotals_and_to_the_direct_cost(bids: list[JobValues]) -> None:
    for bid in bids:
        shown = amounts(bid)
        for place, group in enumerate(GROUP.axis.words):
            own = sum((each for each, row in zip(shown, ROWS, strict=True) if row.group == group), Decimal(0))
            assert own == cents(value(bid, "Subtotal.amount", place))
        assert sum(shown) + cents(value(bid, "BidPrice.tax")) == cents(value(bid, "BidPrice.direct"))


def test_tax_is_on_what_is_bought_and_never_on_labor_or_haul(bids: list[JobValues]) -> None:
    for bid in bids:
        taxed = [value(bid, "CostTable.taxed", row) == "yes" for row in range(len(ROWS))]
        assert not any(
            flag for flag, row in zip(taxed, ROWS, strict=True) if row.group in ("labor", "disposal", "fees")
        )
        base = sum((each for each, flag in zip(amounts(bid), taxed, strict=True) if flag), Decimal(0))
        assert base == cents(value(bid, "BidPrice.taxed"))
        assert cents(value(bid, "BidPrice.tax")) == cents(float(base) * float(value(bid, "BidPrice.tax_rate")) / 100)


def test_the_price_times_one_less_its_margin_is_the_full_cost_before_rounding(bids: list[JobValues]) -> None:
    for bid in bids:
        share = 1 - float(value(bid, "BidPrice.margin")) / 100
        assert cents(float(value(bid, "BidPrice.unrounded")) * share) == cents(value(bid, "BidPrice.break_even"))
        full = (
            cents(value(bid, "BidPrice.direct"))
            + cents(value(bid, "BidPrice.contingency"))
            + cents(value(bid, "BidPrice.overhead"))
        )
        assert full == cents(value(bid, "BidPrice.break_even"))


def test_the_price_goes_up_to_its_step_and_never_below_the_minimum(bids: list[JobValues]) -> None:
    for bid in bids:
        price, step = cents(value(bid, "BidPrice.price")), cents(value(bid, "BidPrice.rounding"))
        floor = max(cents(value(bid, "BidPrice.to_cent")), cents(value(bid, "BidPrice.minimum")))
        assert price % step == 0
        assert floor <= price < floor + step


def test_the_parts_that_fall_due_add_to_the_price_to_the_cent(bids: list[JobValues]) -> None:
    for bid in bids:
        parts = [cents(value(bid, "PaymentSchedule.amount", draw)) for draw in range(4)]
        assert sum(parts) == cents(value(bid, "BidPrice.price"))
        assert all(part >= 0 for part in parts)
        assert parts[0] <= cents(value(bid, "Company.deposit_cap"))


def test_a_large_deposit_leaves_less_for_the_day_of_the_pour_and_never_less_than_nothing_for_the_end(
    tmp_path: Path,
) -> None:
    week = {
        "Jobs": [["job", "bid date"], ["one", "2026-04-13"]],
        "Areas": [["length ft", "width ft"], [30, 4]],
        "Site conditions": [["fact", "value"], ["Retainage", 10]],
    }
    uncapped = [row for row in PRICED["Company"] if "eposit" not in str(row[0])]
    factors = [
        ["factor", "value"],
        ["Deposit, share of the price", 40],
        ["Payment on the day of the pour, share of the price", 60],
    ]
    job = only_job(tmp_path, week, {**PRICED, "Company": uncapped, "Factors": factors})
    deposit, poured, completed, held = (cents(value(job, "PaymentSchedule.amount", draw)) for draw in range(4))
    assert deposit + poured + held == cents(value(job, "BidPrice.price"))
    assert completed == 0 < poured


def test_an_unsigned_change_is_not_billed_and_a_signed_one_leaves_the_bid_as_it_was(tmp_path: Path) -> None:
    week = {
        "Jobs": [["job", "bid date"], ["one", "2026-04-13"]],
        "Areas": [["length ft", "width ft"], [30, 4]],
    }
    (tmp_path / "before").mkdir()
    before = only_job(tmp_path / "before", week, PRICED)
    changes = [
        ["what", "quantity", "rate $", "signed"],
        ["wider", 8, 22.5, "yes"],
        ["step", 1, 340, "no"],
        ["less", 2, -10, "yes"],
    ]
    after = only_job(tmp_path, week | {"Changes": changes}, PRICED)
    assert value(after, "BidPrice.price") == value(before, "BidPrice.price")
    assert cents(value(after, "Invoice.billed")) == cents(value(before, "BidPrice.price")) + Decimal("160.00")
    assert cents(value(after, "Invoice.unsigned")) == Decimal("340.00")


ONCE = (
    "Form release agent, per job",
    "Concrete washout, per job",
    "Caution tape and signs, per job",
    "Labor: clean up",
    "Permit",
    "Mobilization, crew visits",
    "Mobilization, one-person visits",
)


def test_what_is_paid_once_a_job_is_not_paid_once_an_area(tmp_path: Path) -> None:
    facts = {
        "Site conditions": [["fact", "value"], ["Permit", 85]],
        "Jobs": [["job", "bid date"], ["one", "2026-04-13"]],
    }
    (tmp_path / "one").mkdir()
    one = only_job(
        tmp_path / "one", facts | {"Areas": [["area", "length ft", "width ft", "formed ft"], ["A", 20, 4, 20]]}, PRICED
    )
    halves = [["area", "length ft", "width ft", "formed ft"], ["A", 10, 4, 10], ["B", 10, 4, 10]]
    two = only_job(tmp_path, facts | {"Areas": halves}, PRICED)
    for label in ONCE:
        row = next(place for place, each in enumerate(ROWS) if each.label == label)
        assert value(one, "CostTable.quantity", row) == value(two, "CostTable.quantity", row), label
    assert value(one, "BidPrice.minimum") == value(two, "BidPrice.minimum")


def test_waste_contingency_and_the_risk_of_the_order_are_three_cushions_and_not_one_thrice(tmp_path: Path) -> None:
    week = {"Jobs": [["job", "bid date"], ["one", "2026-04-13"]], "Areas": [["length ft", "width ft"], [60, 4]]}
    none = [["factor", "value"], ["Waste factor", 0], ["Default depth uncertainty, fewer than 4 depths", 0],
            ["String line error", 0], ["Area measurement error", 0], ["Plant yield error", 0],
            ["Contingency", 0]]  # fmt: skip
    (tmp_path / "bare").mkdir()
    bare = only_job(tmp_path / "bare", week, PRICED | {"Factors": none})
    assert value(bare, "Order.quantity") == 3.0, "240 ft2 at 4 in are 2.963 yd3, up to the quarter"
    assert value(bare, "Order.risk") == 0
    (tmp_path / "priced").mkdir()
    cushioned = only_job(tmp_path / "priced", week, PRICED | {"Factors": [*none[:-1], ["Contingency", 10]]})
    assert value(cushioned, "Order.quantity") == 3.0
    assert cents(value(cushioned, "BidPrice.contingency")) == cents(float(value(cushioned, "BidPrice.direct")) * 0.1)
    assert value(cushioned, "BidPrice.direct") == value(bare, "BidPrice.direct")


def test_every_cost_is_in_the_table_once() -> None:
    labels = [row.label for row in ROWS]
    assert len(labels) == len(set(labels))
