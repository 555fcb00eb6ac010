"""The engine's ordering, placing, purchases, calendar and money against numbers worked by hand."""

from dataclasses import replace
from datetime import date

import pytest

from engine_bench import PRICES, F, make, slab
from reference_engine import work_out
from reference_engine.calendar_days import job_days
from reference_engine.choose_way import choose
from reference_engine.facts import (
    Factors,
    Pack,
    Pay,
    Rental,
    Wages,
)
from reference_engine.placing import Way, bag_count, bag_way, barrow_rate, standby, truck_limit_minutes
from reference_engine.ready_mix import at_least_minimum, fiber_bags, order_lines, short_load_fee, split_trucks
from reference_engine.rentals import cheapest_packs, rental_money
from reference_engine.risk import best_rung, depth_spread, expected_need, first_order, job_rung, rung, short_lump
from reference_engine.rounding import cents
from reference_engine.shared_loads import best_set, groups, make_stop, may_share, saving
from reference_engine.takeoff import job_takeoff

# ordering


def test_the_ladder_of_orders_gives_the_known_answer():
    known = {
        3.50: (-1.261, 0.8964, 0.3271, 0.0123, 736, 1588.19),
        3.75: (-0.260, 0.6025, 0.1353, 0.0705, 779, 1355.77),
        4.00: (0.742, 0.2290, 0.0332, 0.2184, 772, 1003.72),
        4.25: (1.744, 0.0406, 0.0041, 0.4393, 815, 882.11),
        4.50: (2.746, 0.0030, 0.0002, 0.6854, 858, 905.42),
        4.75: (3.747, 0.0001, 0.0000, 0.9352, 901, 961.87),
        5.00: (4.749, 0.0000, 0.0000, 1.1852, 944, 1021.04),
    }
    # five people at $55: 160 + 24 + 172 + 5 x 1.25 x 55 + 250 = 949.75
    job = make(crew=5, placers=3, finishers=2, wages=Wages(Pay(55.0, 55.0)))
    assert short_lump(job, "chute") == pytest.approx(949.75)
    rungs = [job_rung(job, "chute", 3.8148, 0.2496, q) for q in known]
    for row, (z, chance, short, left, cost, expected) in zip(rungs, known.values(), strict=True):
        assert row.z == pytest.approx(z, abs=0.002)
        assert row.chance_short == pytest.approx(chance, abs=0.0003)
        assert row.expected_short == pytest.approx(short, abs=0.0001)
        assert row.expected_left == pytest.approx(left, abs=0.0001)
        assert row.concrete_cost == pytest.approx(cost)
        assert row.expected_cost == pytest.approx(expected, abs=0.2)
    assert best_rung(rungs).order == 4.25


def test_waste_and_pump_prime_are_added_once():
    assert expected_need(make(), 4.0, "chute") == pytest.approx(4.12)
    assert expected_need(make(), 4.0, "pump") == pytest.approx(4.32)


def test_the_spread_of_measured_depths():
    # 4, 4, 5, 5: s = 0.57735; x sqrt(3/1) / sqrt(4) = 0.5
    assert depth_spread(slab(9, 4, depths=(4, 4, 5, 5)), F) == pytest.approx(0.5)
    assert depth_spread(slab(9, 4, depths=(4, 4, 5), base=2.0), F) == 0.25
    assert depth_spread(slab(9, 4, base=1.9), F) == 0.375


def test_without_spread_an_order_is_short_or_it_is_not():
    assert rung(3.75, 4.0, 0.0, 700, 65, 900).expected_cost == 1600
    assert rung(4.25, 4.0, 0.0, 700, 65, 900).expected_cost == pytest.approx(716.25)


def test_no_order_is_under_the_plants_minimum():
    # need 0.3 yd: two increments under 0.5 is zero; the least order is 1 yd
    assert first_order(make(), 0.3) == 1.0
    assert first_order(make(), 3.8148) == 3.5
    assert at_least_minimum(make(), 0.4) == 1.0
    assert at_least_minimum(make(), 1.1) == 1.25


def test_a_truck_at_a_boundary_belongs_to_the_cheaper_tier():
    job = make()
    assert [short_load_fee(job, q) for q in (1.75, 2.0, 3.75, 4.0, 5.75, 6.0)] == [160, 110, 110, 60, 60, 0]


def test_trucks_are_split_evenly():
    assert split_trucks(15.75, 9.0, 0.25) == [8.0, 7.75]
    assert split_trucks(9.0, 9.0, 0.25) == [9.0]
    assert split_trucks(9.25, 9.0, 0.25) == [4.75, 4.5]


def test_fees_are_paid_by_the_load_and_small_orders_by_the_minimum():
    prices = replace(PRICES, environmental=12.5, fuel=10.0, saturday=35.0, after_hours=95.0)
    job = make(prices=prices, pour_date=date(2026, 5, 9), after_hours=True)
    lines = order_lines(job, "chute", 9.25)
    # two trucks of 4.75 and 4.5: $60 each
    assert lines["concrete"] == pytest.approx(9.25 * 172)
    assert (lines["short_load"], lines["delivery"], lines["environmental"]) == (120, 48, 25)
    assert (lines["fuel"], lines["saturday"], lines["after_hours"]) == (20, 70, 190)
    by_yard = replace(job, prices=replace(prices, saturday_by="yard"))
    assert order_lines(by_yard, "chute", 9.25)["saturday"] == pytest.approx(9.25 * 35)


def test_fiber_is_whole_bags_a_truck():
    # 5 yd x 1.5 lb = 7.5 -> 8 a truck
    job = make(fiber="micro", fiber_dose=1.5, prices=replace(PRICES, micro_fiber_pounds=1.0))
    assert fiber_bags(job, [5.0, 5.0]) == 16


# placing


def test_wheelbarrows_slow_down_on_a_bad_way_once():
    # cycle 1.1 + 100/150; 2 x 2.75/27 x 60/cycle x 0.8 = 5.534591
    rate = 2 * 2.75 / 27 * 60 / (1.1 + 100 / 150) * 0.8
    assert barrow_rate(make()) == pytest.approx(rate) == pytest.approx(5.534591)
    assert barrow_rate(make(moisture="wet", way_slope=0.2)) == pytest.approx(rate * 0.7)
    assert barrow_rate(make(way_slope=0.05)) == pytest.approx(rate)


def test_bags_take_the_waste_factor_once():
    # 1 yd x 1.03 x 27 / 0.6 = 46.35 -> 47 bags; 47 x 4 / 60 = 3.133333 h
    assert bag_count(make(), 1.0) == 47
    t = replace(job_takeoff(make()), net_yards=1.0)
    way = bag_way(make(), t, 0.0)
    assert (way.elapsed, way.task_hours) == (pytest.approx(188 / 60), pytest.approx(376 / 60))
    one = bag_way(make(crew=1, placers=1), t, 0.0)
    assert (one.elapsed, one.task_hours) == (pytest.approx(376 / 60), pytest.approx(376 / 60))


def test_bags_above_the_cap_are_shown_but_do_not_win():
    t = job_takeoff(make())
    assert bag_way(make(), replace(t, net_yards=1.0), 0.0).competes
    assert not bag_way(make(), replace(t, net_yards=1.25), 0.0).competes
    assert bag_way(make(), replace(t, net_yards=1.26), 0.0) is None
    assert bag_way(make(order_rule="fixed", fixed_order=1.0), replace(t, net_yards=0.5), 0.0) is None


def test_a_truck_waits_free_for_its_allowance():
    # 9 yd: 54 min; 2 yd: 30 min
    assert (standby(make(), 9.0, 70.0), standby(make(), 2.0, 30.0), standby(make(), 2.0, 45.0)) == (16, 0, 15)


def test_hot_air_shortens_the_time_on_the_truck():
    assert truck_limit_minutes(make(air_temperature=84.0)) == 65
    assert truck_limit_minutes(make(air_temperature=85.0)) == 35


def _way(method: str, cost: float, elapsed: float, fits: bool = True) -> Way:
    return Way(method, 4.0, [4.0], elapsed, 2 * elapsed, fits, cost=cost)


def test_a_dollar_does_not_decide_between_ways():
    slow, quick = _way("barrow", 800.0, 1.0), _way("chute", 801.0, 0.5)
    assert choose(make(), [slow, quick], [None, None])[0] is quick
    assert choose(make(), [slow, replace(quick, cost=801.01)], [None, None])[0] is slow
    twin = replace(quick, elapsed=1.0)
    assert choose(make(), [slow, twin], [None, None])[0] is slow


def test_a_way_that_is_too_slow_for_the_truck_cannot_win():
    assert choose(make(), [_way("barrow", 1.0, 2, False), _way("chute", 900.0, 1)], [None] * 2)[0].method == "chute"
    assert choose(make(), [_way("barrow", 1.0, 2, False), _way("chute", 9.0, 1, False)], [None] * 2)[0].cost == 1.0


# purchases


def test_rental_by_half_day_day_and_week():
    price = Rental(50.0, 80.0, 240.0)
    assert [rental_money(h, price, F) for h in (0, 4, 4.01, 8, 8.01, 40)] == [0, 50, 80, 80, 160, 240]


def test_a_machine_that_loads_stays_to_the_last_load():
    price = Rental(50.0, 80.0)
    assert rental_money(3.0, price, F, 1) == 50
    assert rental_money(3.0, price, F, 2) == 160
    assert rental_money(0.0, price, F, 2) == 0


def test_a_pail_may_be_cheaper_than_gallons():
    packs = (Pack(1, 29.99), Pack(5, 99.95))
    assert cheapest_packs(4.0, packs) == ([0, 1], 99.95, 1.0)
    assert cheapest_packs(3.0, packs)[:2] == ([3, 0], 89.97)
    assert cheapest_packs(6.2, packs)[:2] == ([2, 1], 159.93)
    assert cheapest_packs(0.0, packs)[1] == 0


# calendar


def test_visits_fall_on_working_days():
    # pour on Monday 4 May 2026: prep Thursday and Friday, strip Tuesday, seal 28 days later on Monday 1 June
    got = job_days(date(2026, 5, 4), 2, False, 1, 1, F)
    assert got["prep_dates"] == [date(2026, 4, 30), date(2026, 5, 1)]
    assert (got["strip_dates"], got["seal_dates"]) == ([date(2026, 5, 5)], [date(2026, 6, 1)])
    assert got["locate_by"] == date(2026, 4, 28)


def test_holidays_and_saturdays_move_visits():
    house = Factors(works_saturdays=True, holidays=(date(2026, 5, 5),))
    got = job_days(date(2026, 5, 4), 1, False, 1, 0, house)
    assert (got["prep_dates"], got["strip_dates"]) == ([date(2026, 5, 2)], [date(2026, 5, 6)])
    assert job_days(date(2026, 5, 4), 1, True, 0, 0, house)["prep_dates"] == [date(2026, 5, 4)]
    assert not job_days(date(2026, 5, 3), 1, False, 0, 0, house)["pour_on_working_day"]


# shared loads


def test_two_small_pours_on_one_truck_save_a_short_load():
    # alone 1.5 x 172 + 160 + 24 = 442 each; together 3 x 172 + 110 + 24 = 650;
    # on the truck 30 + 15 + 30 = 75 min, 45 beyond the allowance at $2: 884 - 650 - 90 = 144
    job = make(order_rule="fixed", fixed_order=1.5, plant_drive=10.0, pour_date=date(2026, 5, 4))
    stops = tuple(make_stop(j, work_out(j)) for j in (job, replace(job, name="other")))
    assert may_share(stops)
    assert saving(stops) == pytest.approx(144)
    amount, chosen = best_set(groups(list(stops)))
    assert (amount, len(chosen)) == (pytest.approx(144), 1)


def test_a_shared_truck_keeps_the_time_limit_the_day_and_the_mix():
    job = make(order_rule="fixed", fixed_order=1.5, plant_drive=10.0, pour_date=date(2026, 5, 4))
    stop = make_stop(job, work_out(job))

    def other(**facts):
        return replace(stop, job=replace(job, **facts))

    assert not may_share((stop, other(plant_drive=25.0)))
    assert not may_share((stop, other(pour_date=date(2026, 5, 5))))
    assert may_share((stop, other(retarder=True)))
    assert not may_share((other(accelerator=True), other(retarder=True)))


# money


def test_a_small_patio_costs_what_a_pencil_says():
    job = make(order_rule="fixed", fixed_order=1.25, factors=Factors(tax=0.08))
    got = work_out(job)
    # prep 0.75 + 0.45 = 1.2 h; two people are paid 4 h each: 6.8 h beyond the tasks
    # pour: place 0.5 h by two; finish 1 h; cure 0.16 h. Placers are paid 4 h each,
    # the finisher 3.5 - 25/60 + 0.16/3 + 1 = 4.136667: 12.136667 clock - 2.16 tasks = 9.976667, split 8 : 4.136667
    # strip 0.12 + 1.5 = 1.62 h, paid 4: 2.38
    expected = {
        "money_labor_layout": 33.00,
        "money_labor_set_forms": 19.80,
        "money_labor_place": 40.00,
        "money_labor_finish": 52.00,
        "money_labor_cure": 7.04,
        "money_labor_strip_forms": 4.80,
        "money_labor_clean_up": 60.00,
        "money_beyond_prep": 272.00,
        "money_beyond_pour": 263.05,
        "money_beyond_pour_finishers": 176.82,
        "money_beyond_strip": 95.20,
        "money_concrete": 215.00,
        "money_short_load": 160.00,
        "money_delivery": 24.00,
        "money_mobilization_crew": 100.00,
        "money_mobilization_one": 30.00,
        "money_board_2x4": 2.00,
        "money_stakes": 0.75,
        "money_form_release_agent": 12.00,
        "money_curing_compound": 24.50,
    }
    for name, amount in expected.items():
        assert got[name] == amount, name
    others = [n for n, v in got.items() if n.startswith("money_") and v and n not in expected]
    assert others == []
    # sum 1,591.96; taxable 254.25 -> 20.34; 1,612.30; 5 % = 80.615 -> 80.62; 12 % of 1,692.92 = 203.15
    assert got["lines_total"] == 1591.96
    assert (got["sales_tax"], got["direct_cost"]) == (20.34, 1612.30)
    assert (got["contingency"], got["overhead"], got["break_even_cost"]) == (80.62, 203.15, 1896.07)
    # 1,896.07 / 0.82 = 2,312.28 -> 2,315; deposit 10 %
    assert (got["price_before_rounding"], got["bid"]) == (2312.28, 2315)
    assert got["payments"] == [231.5, 2083.5]


def test_a_shown_way_counts_everything_that_depends_on_it():
    # the patio by chute, fixed 1.25 yd: plant 399; labor 40 + 52 + 7.04 + 263.05 + 176.82; mobilization 50;
    # left over: need 0.987654 x 1.03 = 1.017284, spread
    # 80 x 0.375/324 = 0.092593; 80 x 0.125/324 = 0.030864; twice 0.009877: 0.098598; z = 2.3603
    # E short 0.0003, E left 0.2330 x 65 = 15.15
    got = work_out(make(order_rule="fixed", fixed_order=1.25))
    assert got["volume_spread"] == pytest.approx(0.098598, abs=1e-5)
    left = round(got["expected_left"] * 65, 2)
    assert left == pytest.approx(15.15, abs=0.05)
    assert got["way_costs"] == [pytest.approx(399 + 538.91 + 50 + left)]


def test_a_minimum_job_charge_holds_for_the_job():
    got = work_out(make(order_rule="fixed", fixed_order=1.25, factors=Factors(minimum_job=3001.0)))
    assert (got["bid"], got["minimum_applied"]) == (3005, True)


def test_the_last_draw_takes_the_odd_cent():
    got = work_out(make(order_rule="fixed", fixed_order=1.25, draws=(1 / 3, 1 / 3, 1 / 3)))
    assert sum(cents(p) for p in got["payments"]) == cents(got["bid"])
