"""What a contractor would lose if the order went wrong: short on a Friday, or a yard too much in the street."""

from __future__ import annotations

from math import ceil
from pathlib import Path

import pytest

from books import value
from calc.model.results import JobValues
from calc.trade.levels import ORDER_SIZE
from pour_jobs import DELIVERY, FEES, MIX, Pour

DEPTHS = (4.625, 3.5, 3.625, 4.25, 4.25, 3.75)
"""Six depths of a patio whose mean is four inches."""
SURE = {
    "DepthUncertainty.default_std_dev": 0.0,
    "VolumeUncertainty.string_line_error": 0.0,
    "VolumeUncertainty.area_error": 0.0,
    "VolumeUncertainty.yield_error": 0.0,
}
"""A house that knows its volumes to the drop."""
STEP = 0.25


def number(job: JobValues, name: str, row: int = 0) -> float:
    """What the program gives for a line; of the ladder, from the truck."""
    return float(value(job, name, row))


def rung_of(job: JobValues, order: float) -> int:
    """The row of the ladder that tries an order."""
    orders = [number(job, "OrderCandidate.order", row) for row in range(job.count(ORDER_SIZE) // 2)]
    return orders.index(order)


WORKED = Pour(depths=DEPTHS, facts={"Placing crew": 3, "Finishers": 2, "Crew": 5})
"""The patio of the worked ladder: 300 ft2, a crew of five at 275 dollars an hour, and no other thing out of the way."""
LADDER = (
    ("3.50", "-1.261", "0.8964", "0.3271", "0.0123", "736.00", "1588.19"),
    ("3.75", "-0.260", "0.6025", "0.1353", "0.0705", "779.00", "1355.77"),
    ("4.00", "0.742", "0.2290", "0.0332", "0.2184", "772.00", "1003.72"),
    ("4.25", "1.744", "0.0406", "0.0041", "0.4393", "815.00", "882.11"),
    ("4.50", "2.746", "0.0030", "0.0002", "0.6854", "858.00", "905.42"),
    ("4.75", "3.747", "0.0001", "0.0000", "0.9352", "901.00", "961.87"),
    ("5.00", "4.749", "0.0000", "0.0000", "1.1852", "944.00", "1021.04"),
)
"""Order, spreads above the need, chance, expected short and left over, the plant's charge, the expected cost."""


@pytest.fixture(scope="module")
def worked(tmp_path_factory: pytest.TempPathFactory) -> JobValues:
    """The patio of the worked ladder."""
    return WORKED.bid(tmp_path_factory.mktemp("worked"))


def as_printed(got: float, like: str) -> str:
    """A number with as many decimals as a printed one."""
    return f"{got:.{len(like.partition('.')[2])}f}"


def test_a_contractor_who_works_the_ladder_by_hand_finds_every_digit(worked: JobValues) -> None:
    lines = ("order", "z_score", "risk", "shortfall", "surplus", "plant_charges", "expected_cost")
    for row, printed in enumerate(LADDER):
        got = [
            as_printed(number(worked, f"OrderCandidate.{name}", row), like)
            for name, like in zip(lines, printed, strict=True)
        ]
        assert got == list(printed)


@pytest.mark.parametrize(
    ("name", "printed"),
    [
        ("Shortage.required", "3.8148"),
        ("VolumeUncertainty.std_dev", "0.2496"),
        ("Shortage.shortage_cost", "949.75"),
        ("Shortage.surplus_cost", "237"),
        ("OtherOrderRules.by_percent", "4.00"),
        ("OtherOrderRules.percent_risk", "0.23"),
        ("BestOrder.order", "4.25"),
        ("Order.quantity", "4.25"),
        ("Order.risk", "0.04"),
        ("Order.surplus", "0.44"),
    ],
)
def test_what_stands_beside_the_worked_ladder_is_right_too(name: str, printed: str, worked: JobValues) -> None:
    assert as_printed(number(worked, name), printed) == printed


def test_a_contractor_who_takes_more_depths_is_not_sold_more_concrete_for_it(tmp_path: Path) -> None:
    spreads, orders = [], []
    for times in (1, 2, 4):
        job = Pour(width=9, depths=DEPTHS * times, fees=()).bid(tmp_path)
        spreads.append(number(job, "VolumeUncertainty.std_dev"))
        orders.append(number(job, "Order.quantity"))
    assert spreads[0] > spreads[1] > spreads[2]
    assert orders[0] >= orders[1] >= orders[2]
    assert orders[0] > orders[2], "this patio cannot tell"


def test_a_pour_that_must_not_run_short_never_gets_a_smaller_order(tmp_path: Path) -> None:
    orders = [
        number(Pour(fees=(), factors={"Risk.cold_joint_repair": repair}).bid(tmp_path), "Order.quantity")
        for repair in (0, 250, 1000, 4000, 16000)
    ]
    assert orders == sorted(orders)
    assert orders[0] < orders[-1], "this patio cannot tell"


@pytest.mark.parametrize(("limit", "fee"), FEES)
def test_an_order_just_under_a_limit_jumps_to_it_when_the_fee_is_dearer_than_a_quarter_yard(
    limit: float, fee: float, tmp_path: Path
) -> None:
    need = limit - STEP
    sure = SURE | {"Risk.waste": 0.0}
    after = dict(zip((2.0, 4.0, 6.0), (110.0, 60.0, 0.0), strict=True))[limit]
    job = Pour(length=need * 9, width=9, factors=sure, mix=120).bid(tmp_path)
    assert number(job, "Order.required") == pytest.approx(need)
    assert fee - after > STEP * (120 + 65), "the plant must ask so much that a jump pays"
    assert number(job, "Order.quantity") == limit


def test_an_order_stays_under_a_limit_when_the_quarter_yard_is_dearer_than_the_fee(tmp_path: Path) -> None:
    job = Pour(length=1.75 * 9, width=9, factors=SURE | {"Risk.waste": 0.0}, mix=172).bid(tmp_path)
    assert number(job, "Order.quantity") == 1.75  # fifty dollars of fee against 59.25 of concrete


def test_of_two_orders_that_cost_the_same_the_smaller_is_phoned(tmp_path: Path) -> None:
    fees = ((2.0, 180.0), (4.0, 120.0), (6.0, 60.0))
    job = Pour(length=1.75 * 9, width=9, factors=SURE | {"Risk.waste": 0.0}, mix=175, fees=fees).bid(tmp_path)
    under, at_limit = (number(job, "OrderCandidate.expected_cost", rung_of(job, order)) for order in (1.75, 2.0))
    assert under == at_limit
    assert number(job, "Order.quantity") == 1.75


@pytest.mark.parametrize("yards", [3.6, 3.75, 3.76, 7.0, 7.01])
def test_a_pour_known_to_the_drop_is_not_padded(yards: float, tmp_path: Path) -> None:
    job = Pour(length=yards * 9, width=9, factors=SURE | {"Risk.waste": 0.0}, fees=()).bid(tmp_path)
    assert number(job, "VolumeUncertainty.std_dev") == 0
    assert number(job, "Order.quantity") == ceil(round(yards / STEP, 6)) * STEP
    assert number(job, "Order.risk") == 0


def test_an_order_below_the_need_is_called_short_when_nothing_spreads(tmp_path: Path) -> None:
    job = Pour(length=36, width=9, factors=SURE | {"Risk.waste": 0.0}).bid(tmp_path)
    below, enough = (rung_of(job, order) for order in (3.75, 4.0))
    assert number(job, "OrderCandidate.risk", below) == 1 and number(
        job, "OrderCandidate.shortfall", below
    ) == pytest.approx(0.25)
    assert number(job, "OrderCandidate.risk", enough) == 0 and number(job, "OrderCandidate.shortfall", enough) == 0
    assert number(job, "OrderCandidate.surplus", below) == pytest.approx(0)


@pytest.mark.parametrize(
    ("pour", "by_risk", "by_percent"),
    [(Pour(), 4.5, 4.0), (Pour(length=117, width=9, factors=SURE), 13.5, 14.25)],
    ids=["a patio nobody measured", "a drive measured to the drop"],
)
def test_the_percent_rule_is_neither_a_floor_nor_a_ceiling(
    pour: Pour, by_risk: float, by_percent: float, tmp_path: Path
) -> None:
    job = pour.bid(tmp_path)
    assert number(job, "Order.quantity") == by_risk
    assert number(job, "OtherOrderRules.by_percent") == by_percent


def test_the_percent_rule_says_what_it_risks(worked: JobValues) -> None:
    job, rung = worked, rung_of(worked, 4.0)
    assert number(job, "OtherOrderRules.by_percent") == 4.0
    assert number(job, "OtherOrderRules.percent_risk") == pytest.approx(
        number(job, "OrderCandidate.risk", rung), rel=1e-12
    )


@pytest.mark.parametrize(("limit", "fee"), FEES)
def test_a_load_of_the_limit_itself_has_the_cheaper_fee(limit: float, fee: float, tmp_path: Path) -> None:
    cheaper = {2.0: 110.0, 4.0: 60.0, 6.0: 0.0}[limit]
    job = Pour(length=limit * 9, width=9, factors={"Risk.waste": 0.0}).bid(tmp_path)
    fees = [number(job, "OrderCandidate.fees", rung_of(job, limit + step)) for step in (-STEP, 0, STEP)]
    assert fees == [fee, cheaper, cheaper]
    charges = [number(job, "OrderCandidate.plant_charges", rung_of(job, limit + step)) for step in (-STEP, 0)]
    assert charges[0] == (limit - STEP) * MIX + fee + DELIVERY
    assert charges[1] == limit * MIX + cheaper + DELIVERY


def test_a_fee_is_not_missed_by_a_hair_of_a_limit_typed_in_metres(tmp_path: Path) -> None:
    job = Pour(length=36, width=9, fees=((4.0 + 1e-9, 110.0),), factors={"Risk.waste": 0.0}).bid(tmp_path)
    assert number(job, "OrderCandidate.fees", rung_of(job, 3.75)) == 110
    assert number(job, "OrderCandidate.fees", rung_of(job, 4.0)) == 0  # a billionth of a yard is dust, not a short load


def test_less_than_the_plant_sells_is_never_ordered(tmp_path: Path) -> None:
    job = Pour(length=4, width=9, factors={"Risk.waste": 0.0}).bid(tmp_path)
    assert number(job, "OrderCandidate.order", 0) == 1.0, "4/9 yd3 are needed, and a yard is the least"
    whole, more = (rung_of(job, order) for order in (1.0, 1.25))
    assert number(job, "OrderCandidate.plant_charges", whole) == MIX + 160 + DELIVERY
    assert number(job, "OrderCandidate.plant_charges", more) == 1.25 * MIX + 160 + DELIVERY
    assert number(job, "OtherOrderRules.by_percent", 0) == 1.0


@pytest.mark.parametrize(
    ("order", "fees"),
    [
        (8.75, 0.0),  # one truck, nearly full
        (9.0, 0.0),  # one truck, full to the brim
        (9.25, 60.0 + 60.0),  # 4.75 and 4.5: both short
        (11.75, 60.0),  # 6 and 5.75: only the second is short
        (12.0, 0.0),  # 6 and 6
        (18.25, 0.0),  # three trucks of more than six
    ],
)
def test_each_truck_of_several_pays_for_its_own_load(order: float, fees: float, tmp_path: Path) -> None:
    job = Pour(length=order * 9, width=9, factors={"Risk.waste": 0.0}).bid(tmp_path)
    rung, trucks = rung_of(job, order), ceil(order / 9)
    assert number(job, "OrderCandidate.trucks", rung) == trucks
    assert number(job, "OrderCandidate.fees", rung) == fees
    assert number(job, "OrderCandidate.plant_charges", rung) == order * MIX + fees + trucks * DELIVERY


def test_a_second_truck_that_a_quarter_yard_calls_for_is_paid_for(tmp_path: Path) -> None:
    job = Pour(length=81, width=9, factors=SURE | {"Risk.waste": 0.0}).bid(tmp_path)
    full, over = (number(job, "OrderCandidate.plant_charges", rung_of(job, order)) for order in (9.0, 9.25))
    assert over - full == pytest.approx(0.25 * MIX + 120 + DELIVERY)
    assert number(job, "Order.quantity") == 9.0


def test_a_job_without_a_price_keeps_its_order_by_percent_and_says_so(tmp_path: Path) -> None:
    job = Pour(facts={"Strength": 4000}).bid(tmp_path)  # only 3500 psi has a price
    assert number(job, "ChosenMix.known") == 0
    assert number(job, "Order.quantity") == 4.0
    assert "price" in str(value(job, "Order.rule"))


def test_holding_the_last_truck_never_makes_the_pour_shorter_or_fuller(tmp_path: Path) -> None:
    job = Pour(length=117, width=9).bid(tmp_path)
    assert number(job, "Order.trucks") == 2
    assert number(job, "Balance.risk") <= number(job, "Order.risk")
    assert number(job, "Balance.surplus") <= number(job, "Order.surplus")
    gain = number(job, "Shortage.shortage_cost") * (number(job, "Order.risk") - number(job, "Balance.risk"))
    gain += number(job, "Shortage.surplus_cost") * (number(job, "Order.surplus") - number(job, "Balance.surplus"))
    assert number(job, "Balance.saving") == pytest.approx(gain, abs=0.006)
    assert gain > 50, "a call that saves nothing proves nothing"


def test_one_truck_has_no_balance_to_call(worked: JobValues) -> None:
    assert number(worked, "Balance.saving") == 0 and number(worked, "Balance.last_load") == 0
    assert number(worked, "Balance.risk") == number(worked, "Order.risk")
    assert number(worked, "Balance.surplus") == number(worked, "Order.surplus")


def test_a_ladder_is_as_long_as_the_pour_needs_and_half_as_long_again(tmp_path: Path) -> None:
    job = Pour(length=120, width=27).bid(tmp_path)
    needed, rungs = number(job, "Shortage.sizes"), job.count(ORDER_SIZE) // 2
    assert needed == 71 and rungs == 71 + 36
    assert number(job, "BestOrder.row") < needed
