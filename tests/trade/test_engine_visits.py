"""The engine's labor, visits and paid time against numbers worked by hand, and what must hold for any job."""

from dataclasses import replace

import pytest

from engine_bench import PRICES, F, make, slab
from engine_jobs import random_jobs
from reference_engine import work_out
from reference_engine.engine import build
from reference_engine.facts import (
    Edge,
    Job,
)
from reference_engine.labor import carry_hours, load_out_hours
from reference_engine.pay import job_rates
from reference_engine.prep import prep_people, prep_visits
from reference_engine.rounding import cents
from reference_engine.visits import finish_window, paid_prep, pour_of, prep_of

# labor


def test_a_long_way_by_hand_is_paid():
    # 27/2.75 trips x 2 x 100 ft / 150 / 60 = 0.218182 h; wet: / 0.7
    job = make(spoil_way=150.0)
    assert carry_hours(job, 1.0) == pytest.approx(27 / 2.75 * 200 / 150 / 60)
    assert carry_hours(replace(job, moisture="wet"), 1.0) == pytest.approx(27 / 2.75 * 200 / 150 / 60 / 0.7)
    assert carry_hours(replace(job, spoil_way=50.0), 1.0) == 0
    assert carry_hours(replace(job, machine_digging=True), 1.0) == 0


def test_loading_by_hand_is_slower_than_by_machine():
    assert load_out_hours(make(), 3.0) == pytest.approx(2.001)
    assert load_out_hours(make(machine_digging=True), 3.0) == pytest.approx(0.3)


def test_the_composite_crew_rate_follows_the_heads_as_typed():
    # two laborers and one finisher: (2 x 40 + 52) / 3 = 44; crew of two: (40 + 52) / 2 = 46
    assert job_rates(make()).crew_mix == 44
    assert job_rates(make(crew=2)).crew_mix == 46


def test_public_work_without_a_wage_table_stops():
    with pytest.raises(ValueError, match="prevailing"):
        job_rates(make(wage_table="prevailing"))


# visits and paid time


def test_a_full_prep_day_is_one_visit_and_a_minute_more_is_two():
    # a crew of 3 works 3 x 7.5 = 22.5 h on a stretched day
    job = make()
    assert (prep_visits(job, 22.5), prep_people(job, 22.5, 1)) == (1, 3)
    assert (prep_visits(job, 22.6), prep_people(job, 22.6, 2)) == (2, 2)


def test_nobody_comes_for_less_than_half_a_day():
    # 3 h of two people: 1.5 + 1 = 2.5 h each, paid 4: 8 h, 5 beyond the tasks
    paid = paid_prep(prep_of(make(), 3.0, 1, 0), F)
    assert (paid.clock, paid.beyond) == (8, 5)


def test_a_stretched_day_costs_its_premium():
    # 22.5 h of three people: 7.5 + 1 = 8.5 h each: half an hour beyond the day, three times
    paid = paid_prep(prep_of(make(), 22.5, 1, 0), F)
    assert (paid.clock, paid.long_laborer) == (25.5, 1.5)


def test_hauling_that_takes_another_day_brings_fewer_people():
    # 22.5 h with the last load on day 2: up(22.5 / 15) = 2 people on two days
    prep = prep_of(make(), 22.5, 1, 2)
    assert (prep.visits, prep.people) == (2, 2)


def test_the_finish_window_follows_the_temperature():
    # between 60 F (4.5 h) and 70 F (3.5 h); the table is held at its ends
    assert finish_window(make(concrete_temperature=65.0), True) == pytest.approx(4.0)
    assert finish_window(make(concrete_temperature=65.0, accelerator=True), True) == pytest.approx(3.0)
    assert finish_window(make(concrete_temperature=30.0), True) == 5.5
    assert finish_window(make(retarder=True), True) == 4.5
    assert finish_window(make(retarder=True), False) == 3.5


def _pour(job: Job):
    return build(job).pour


def test_no_more_finishers_than_the_window_asks_for():
    # 400 ft2: finish 5 h; order 5.25 yd by chute: 0.4375 -> 0.5 h; window 3.5 - 25/60 - 0.5 = 2.5833 h
    # 20 x 20: one joint along, panels 10 ft, one joint across: 40 ft, 0.8 h
    # 5.8 / 2.5833 = 2.245 -> 3 finishers of the 4 typed
    job = make(slab(20, 20, height_above_grade=4.0), crew=6, finishers=4, order_rule="fixed", fixed_order=5.25)
    pour = _pour(job)
    assert (pour.finishers, pour.people, pour.placers) == (3, 5, 2)
    # placers 0.5 + (5 + 0.8 + 0.8 + 1.5)/5; finishers stay 3.08333 + 0.8/5
    assert pour.placer_time == pytest.approx(0.5 + 8.1 / 5)
    assert pour.finisher_time == pytest.approx(3.5 - 25 / 60 + 0.16)
    # the last truck is the only one: 0.5 + 5.8/3 = 2.4333, inside 3.0833; two finishers would take 3.4
    assert pour.last_finish == pytest.approx(0.5 + 5.8 / 3)
    assert (pour.finishers_needed, pour.caution) == (3, False)


def test_too_few_finishers_are_named():
    job = make(slab(20, 20, height_above_grade=4.0), finishers=1, order_rule="fixed", fixed_order=5.25)
    pour = _pour(job)
    # 0.5 + 5.8 = 6.3 h with one
    assert (pour.last_finish, pour.caution, pour.finishers_needed) == (pytest.approx(6.3), True, 3)


def test_the_one_who_saws_is_paid_to_the_end():
    # 30 x 10: 20 ft of joint; 3.5 - 25/60 + 4 + 0.6 = 7.68333; early entry 4.68333
    job = make(slab(30, 10, height_above_grade=4.0), joints="sawn", order_rule="fixed", fixed_order=4.0)
    assert _pour(job).saw_time == pytest.approx(3.5 - 25 / 60 + 4.6)
    # early entry: 4.68333, but finishing alone takes 0.5 + (3.75 + 0.6 + 1.5)/3 = 2.45 and the window 3.28
    assert _pour(replace(job, joints="early entry")).saw_time == pytest.approx(3.5 - 25 / 60 + 1.6)


def test_a_small_pour_from_bags_shares_the_prep_visit():
    # 18 ft2 x 4 in = 0.2222 yd: 0.228889 x 27 / 0.6 = 10.3 -> 11 bags, 44 min
    # prep: layout 0.75 + forms 0.27 = 1.02 h, 0.51 each; finisher 3.5 + 0.036/2 = 3.518; 4.028 <= 7.5
    # finish 0.225, one joint of 3 ft (spacing 4.5 ft) 0.06, cure 0.036
    area = slab(6, 3, height_above_grade=4.0, edges=(Edge("form", 6),))
    job = make(area, crew=2, methods=(), prices=replace(PRICES, bag=6.0))
    bid = build(job)
    assert (bid.way.bags, bid.pour.shared, bid.pour.people) == (11, True, 2)
    assert bid.way.elapsed == pytest.approx(44 / 60)
    assert bid.pour.finisher_time == pytest.approx(4.028)
    assert bid.pour.placer_time == pytest.approx(0.51 + 44 / 60 + (0.225 + 0.06 + 0.036) / 2)
    # paid: 4 h for one, 5.028 for the other; one crew visit and one strip visit
    assert bid.time.pour.clock == pytest.approx(9.028)
    assert bid.lines["mobilization_crew"] == 50.0
    assert bid.lines["mobilization_one"] == 30.0
    # tasks 1.02 + 2 x 44/60 + 0.321 = 2.807667; beyond 6.220333, split 4 : 5.028
    beyond = 9.028 - 1.02 - 88 / 60 - 0.321
    assert bid.lines["beyond_shared"] == pytest.approx(round(beyond * 4 / 9.028 * 40, 2))
    assert bid.lines["beyond_shared_finishers"] == pytest.approx(round(beyond * 5.028 / 9.028 * 52, 2))


def test_a_bag_pour_after_two_prep_days_does_not_share_a_visit():
    area = slab(6, 3, height_above_grade=4.0, edges=(Edge("form", 6),))
    job = make(area, crew=2, methods=(), unforeseen_hours=15.0)
    # 16.02 h of two people is more than 15: two prep visits
    bid = build(job)
    assert (bid.prep.visits, bid.pour.shared) == (2, False)


# any job


@pytest.fixture(scope="module")
def bids():
    """Three hundred drawn jobs, worked out."""
    return [(job, work_out(job)) for job in random_jobs(300, 20260504)]


def test_no_bid_misses_its_total_by_a_cent(bids):
    for job, got in bids:
        lines = sum(cents(v) for n, v in got.items() if n.startswith("money_"))
        assert lines == cents(got["lines_total"]), job.name
        assert lines + cents(got["sales_tax"]) == cents(got["direct_cost"]), job.name
        parts = cents(got["direct_cost"]) + cents(got["contingency"]) + cents(got["overhead"])
        assert parts == cents(got["break_even_cost"]), job.name
        assert sum(cents(p) for p in got["payments"]) == cents(got["bid"]), job.name
        assert got["bid"] >= got["price_before_rounding"] and got["bid"] % 5 == 0, job.name


def test_nobody_works_unpaid(bids):
    for job, got in bids:
        people = min(job.crew, job.placers + job.finishers)
        for kind in ("prep", "strip", "seal"):
            assert got[f"{kind}_clock"] >= got[f"{kind}_task_hours"] - 1e-9, job.name
        longest = max(got["placer_time_on_site"], got["finisher_time_on_site"], got["saw_time_on_site"])
        assert got["pour_clock"] >= longest + 1, job.name
        assert got["pour_people"] <= max(people, job.crew) and got["pour_finishers"] >= 1, job.name
        assert got["clock_hours"] + 1e-9 >= got["prep_task_hours"] + got["strip_task_hours"], job.name


def test_no_load_is_overweight(bids):
    for job, got in bids:
        for tons, n in zip(got.get("pile_tons", []), got.get("pile_loads", []), strict=True):
            assert n * got["payload_limit"] >= tons - 1e-6, job.name
        hauled = sum(got.get("pile_tons", []))
        every = got["green_tons"] + got["soil_tons"] + got["old_concrete_tons"]
        assert "haul_plan" not in got or hauled == pytest.approx(every), job.name


def test_no_panel_is_over_the_limit(bids):
    for job, got in bids:
        rows = zip(got["area_longest_panel"], got["area_panel_width"], got["area_joint_limit"], strict=True)
        for longest, width, limit in rows:
            assert limit is None or (longest <= limit + 1e-6 and width <= limit + 1e-6), job.name


def test_no_truck_is_over_its_capacity_and_no_order_is_lost(bids):
    for job, got in bids:
        if got["method"] == "bags":
            assert got["bags"] * 0.6 / 27 >= got["net_yards"] - 1e-6, job.name
            continue
        assert sum(got["trucks"]) == pytest.approx(got["order_yards"]), job.name
        assert max(got["trucks"]) <= 9 and got["order_yards"] >= 1, job.name
        assert not got["ladder_too_short"], job.name


def test_hauling_comes_home_in_order_and_within_the_prep_days(bids):
    for job, got in bids:
        backs = got.get("pile_back", [])
        assert backs == sorted(backs), job.name
        assert got["prep_visits"] >= got.get("last_load_day", 1), job.name
        assert got["prep_people"] <= job.crew, job.name


def test_the_dig_holds_the_slab_and_its_base(bids):
    for job, got in bids:
        assert all(got["area_dig_check"]), job.name


def test_the_same_seed_gives_the_same_bids(bids):
    again = [work_out(job)["bid"] for job in random_jobs(20, 20260504)]
    assert again == [got["bid"] for _, got in bids[:20]]


def test_pour_times_stand_alone_for_every_way(bids):
    for job in random_jobs(40, 7):
        b = build(job)
        pour = pour_of(job, b.way, b.tasks, b.prep)
        assert pour.shared == b.pour.shared and pour.people == b.pour.people
