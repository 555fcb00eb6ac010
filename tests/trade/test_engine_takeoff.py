"""The engine's takeoff, joints and hauling against numbers worked by hand."""

import math
from dataclasses import replace

import pytest

from engine_bench import F, make, slab
from reference_engine.bars import area_mat, dowels_on_edge, job_dowels
from reference_engine.engine import build
from reference_engine.facts import (
    Area,
    Deduction,
    Edge,
    Footing,
    Job,
    Plant,
    Shape,
    Site,
    Station,
    Vehicle,
)
from reference_engine.footings import footing_takeoff
from reference_engine.geometry import dig_thickness, net_area, plan_area, pour_thickness
from reference_engine.hauling import (
    HaulPlan,
    Pile,
    _run_the_clock,
    base_haul,
    day_of,
    haul_plans,
    loads,
    near_tie,
    plans,
    tip_money,
)
from reference_engine.joints import joint_plan
from reference_engine.rounding import cents, up
from reference_engine.takeoff import area_takeoff, job_takeoff

# rounding


def test_noise_in_a_number_does_not_buy_a_quarter_yard():
    assert up(2.2500000000000004, 0.25) == 2.25
    assert up(2.2501, 0.25) == 2.5


def test_half_a_cent_is_not_lost():
    assert cents(1.005) == 101
    assert cents(0.125) == 13
    assert cents(-0.125) == -13


# takeoff


def test_a_plain_slab_is_not_short_of_concrete():
    # 300 ft2 x 4 in / 324 = 3.703704
    assert area_takeoff(slab(30, 10), F).concrete_yards == pytest.approx(300 * 4 / 324)


def test_a_slab_that_tapers_both_ways_has_its_exact_volume():
    # 18/6 x (3 x (2x4 + 5) + 6 x (4 + 2x5)) / 324 = 3 x (39 + 84) / 324 = 1.138889
    area = Area(Shape("trapezoid", 18, 3, 6), edge_1=4, edge_2=5)
    assert area_takeoff(area, F).concrete_yards == pytest.approx(369 / 324)


def test_a_tapered_slab_is_dug_as_deep_as_it_is_planned_not_as_measured():
    area = slab(20, 4, edge_1=4.0, edge_2=5.0, depths=(6.0, 6.0, 6.0))
    assert (dig_thickness(area), pour_thickness(area)) == (4.5, 6.0)
    # dig: 80 ft2 x 4.5 in / 324
    assert area_takeoff(area, F).soil_yards == pytest.approx(80 * 4.5 / 324)


def test_uneven_stations_are_not_averaged():
    # 8 x (3 + 3.5)/2 + 12 x (3.5 + 2.5)/2 = 26 + 36 = 62
    stops = (Station(1, 3.0), Station(9, 3.5), Station(21, 2.5))
    assert plan_area(Shape("stations", stations=stops)) == pytest.approx(62)


def test_an_outline_walked_backward_keeps_its_area():
    # an L: 10 x 4 + 5 x 6 = 70
    points = ((0, 0), (10, 0), (10, 4), (5, 4), (5, 10), (0, 10))
    assert plan_area(Shape("polygon", points=points)) == plan_area(Shape("polygon", points=points[::-1])) == 70


def test_a_slab_with_nothing_left_after_its_holes_stops():
    with pytest.raises(ValueError, match="no slab left"):
        net_area(slab(2, 2, deductions=(Deduction(Shape("rectangle", 2, 2)),)))


def test_working_room_is_dug_but_not_poured():
    # dig: (80 + 0.25 x 10) x 6 / 324; concrete: 80 x 4 / 324
    got = area_takeoff(slab(10, 8, base=2.0, edges=(Edge("form", 10),)), F)
    assert got.soil_yards == pytest.approx(82.5 * 6 / 324)
    assert got.concrete_yards == pytest.approx(80 * 4 / 324)


def test_a_footing_that_sticks_up_is_chipped_and_not_paid_twice():
    footing = Footing(10, 1, -1.0, 2.0, 1, "yes")
    got = footing_takeoff(footing, slab(30, 4, base=2.0), F)
    # chip 2 + 1 = 3 in over 10 ft2; displaced 4 - 2 = 2 in; in the dig 6 in; bond 10 + 10 x 2/12
    assert got.chip_yards == pytest.approx(30 / 324)
    assert got.chip_hours == pytest.approx(30 / 324 * 7 * 2)
    assert got.displaced_yards == pytest.approx(20 / 324)
    assert got.in_dig_yards == pytest.approx(60 / 324)
    assert got.bond_area == pytest.approx(10 + 10 * 2 / 12)


def test_rock_over_a_footing_is_only_what_fits():
    # 120 ft2, base 2 in; top 5 in down leaves 1 in of rock over 10 ft2; top 2 in down leaves none
    deep = slab(30, 4, base=2.0, footings=(Footing(10, 1, 5.0),))
    high = slab(30, 4, base=2.0, footings=(Footing(10, 1, 2.0),))
    assert area_takeoff(deep, F).base_yards == pytest.approx((110 * 2 + 10 * 1) / 324)
    assert area_takeoff(high, F).base_yards == pytest.approx(110 * 2 / 324)


def test_a_footing_under_the_slab_and_one_with_a_bond_breaker_take_no_bonding_agent():
    low = footing_takeoff(Footing(10, 1, 4.0), slab(30, 4), F)
    slip = footing_takeoff(Footing(10, 1, 1.0, bond_breaker=True), slab(30, 4), F)
    assert (low.bond_area, low.displaced_yards) == (0.0, 0.0)
    assert (slip.bond_area, slip.bond_breaker_area) == (0.0, 10)


def test_swell_does_not_make_soil_heavier():
    # 162 ft2 x 4 in / 324 = 2 yd; 2 x 3300 x 1.15 / 2000 = 3.795 t; loose 2 x 1.33
    t = job_takeoff(make(slab(18, 9), soil="clay", moisture="wet"))
    assert t.soil_tons == pytest.approx(2 * 3300 * 1.15 / 2000)
    assert t.soil_loose == pytest.approx(2.66)


def test_root_balls_are_hauled_once():
    # 2 x pi/4 x 2^2 x 1 x 0.67 / 27 = 0.155923 yd
    t = job_takeoff(make(slab(18, 9), plants=(Plant(2, ball_diameter=2, ball_height=1),)))
    ball = 2 * math.pi * 0.67 / 27
    assert t.root_ball_bank == pytest.approx(ball)
    assert t.soil_bank == pytest.approx(2 - ball)
    assert t.green_loose == pytest.approx(1.1 * ball)
    assert t.green_tons == pytest.approx(ball * 1100 / 2000)


def test_copies_multiply_all_that_hangs_on_an_area():
    got = area_takeoff(slab(10, 8, copies=3, edges=(Edge("form", 10), Edge("wall", 8))), F)
    # stakes up(10/3) + 1 = 5 a copy
    assert (got.area, got.form_feet, got.stakes, got.isolation_feet) == (240, 30, 15, 24)


# dowels, bars, mesh


@pytest.mark.parametrize(
    ("length", "count"),
    # usable 8 ft at 12 in: 8 + 1; usable 0.5: 1 + 1; usable 0 on 1 ft: 1 in the middle; under 1 ft: none
    [(9.0, 9), (9.01, 10), (1.5, 2), (1.49, 1), (1.0, 1), (0.99, 0)],
)
def test_dowels_are_not_off_by_one(length, count):
    assert dowels_on_edge(Edge("existing", length, dowel_spacing=12.0)) == count


def test_no_spacing_means_no_dowels():
    assert dowels_on_edge(Edge("existing", 20)) == 0


def test_dowel_bars_are_cut_with_spares_and_saw_kerf():
    # 9 x 1.05 = 9.45 -> 10 pieces; (240 + 1/8) / (12 + 1/8) = 19.8 -> 19 a bar -> 1 bar; up(9/40) = 1 bit
    # 9 holes of 1/2 in for 3/8 in bars: up(9/18) = 1 tube
    got = job_dowels(make(slab(9, 4, edges=(Edge("existing", 9, 1, 12.0, drill_diameter=0.5),))))
    assert (got.count, got.pieces, got.bars) == (9, {(0.375, 12.0): 10}, {0.375: 1})
    assert (got.bits, got.epoxy_tubes) == (1, 1)


def test_reinforcing_bars_come_out_of_stock_bars():
    # 20.5 x 9.5, 3 in clear: 20/1.5 -> 14 + 1 = 15 bars of 9 ft, two a stock bar: 8;
    # 9/1.5 = 6 + 1 = 7 bars of 20 ft: 7. Weight (135 + 140) x 0.668; chairs 194.75/16 -> 13
    mat = area_mat(slab(20.5, 9.5, reinforcement="bars", bar_number=4, bar_spacing=18), F)
    assert (mat.bars_each_way, mat.stock_bars, mat.chairs) == ((15, 7), 15, 13)
    assert mat.pounds == pytest.approx(275 * 0.668)
    assert mat.ties == 52.5
    assert mat.hours == pytest.approx(275 * 0.668 * 0.011)


def test_a_bar_longer_than_stock_is_lapped():
    # 40 ft + one lap of 40 x 0.5 in = 41.667 ft -> 3 stock bars each; 11.5/1.5 -> 8 + 1 = 9 of them: 27
    # the other way 40/1.5 -> 27 + 1 = 28 bars of 11.5 ft, one a stock bar: 28
    mat = area_mat(slab(40.5, 12, reinforcement="bars", bar_number=4, bar_spacing=18), F)
    assert mat.stock_bars == 27 + 28
    assert mat.pounds == pytest.approx((9 * (40 + 20 / 12) + 28 * 11.5) * 0.668)


def test_mesh_is_bought_in_whole_sheets():
    # 20.5 x 9.5: up(20/9.5) = 3 by up(9/4.5) = 2; a circle of 12 ft: 113.1 x 1.15 / 50 = 2.6 -> 3; a patch: 1
    assert area_mat(slab(9.5, 20.5, reinforcement="mesh"), F).sheets == 6
    assert area_mat(Area(Shape("circle", 12), reinforcement="mesh"), F).sheets == 3
    assert area_mat(slab(0.5, 0.5, reinforcement="mesh"), F).sheets == 1


# joints


def test_a_panel_exactly_at_the_limit_gets_no_extra_joint():
    # limit 30 x 4 / 12 = 10 ft: width 10 none along; spacing min(10, 15) = 10: 30/10 - 1 = 2 joints of 10 ft
    got = joint_plan(slab(30, 10), F)
    assert (got.across, got.along, got.feet, got.longest_panel) == (2, 0, 20, 10)


def test_a_wide_slab_is_jointed_both_ways():
    # width 12: up(1.2) - 1 = 1 along; panels 6 ft; spacing 9 ft: up(3.33) - 1 = 3; 3 x 12 + 30 = 66 ft
    got = joint_plan(slab(30, 12), F)
    assert (got.across, got.along, got.panel_width, got.spacing, got.feet) == (3, 1, 6, 9, 66)


def test_a_typed_panel_width_counts_only_when_clearly_narrower():
    # 9 ft is exactly 10 % under 10 ft: ignored; 5 ft: one joint along, spacing 7.5 ft: 3 across
    assert joint_plan(slab(30, 10, panel_width=9.0), F).along == 0
    got = joint_plan(slab(30, 10, panel_width=5.0), F)
    assert (got.along, got.across) == (1, 3)


def test_old_joints_are_matched_from_where_the_slab_begins():
    # the slab begins at 1 ft: old joints at 5, 10, 20 of 27 ft; the ends are none; no gap is over 10 ft
    # at 3 in thick the limit is 7.5 ft: one more at 15, and none in the last 7 ft
    stops = (Station(1, 3), Station(28, 3))
    area = Area(Shape("stations", stations=stops), old_joints=(1.0, 6.0, 11.0, 21.0, 28.0, 30.0))
    assert joint_plan(area, F).positions == [5, 10, 20]
    assert joint_plan(replace(area, thickness=3.0), F).positions == [5, 10, 15, 20]


def test_a_forced_count_beats_old_joints():
    got = joint_plan(slab(30, 10, old_joints=(7.0,), forced_cross_joints=1, forced_long_joints=1), F)
    assert (got.positions, got.along, got.feet) == ([15], 1, 10 + 30)


def test_a_typed_run_turns_the_slab():
    assert (joint_plan(slab(30, 10, run=10.0), F).width, joint_plan(slab(30, 10, run=30.0), F).width) == (30, 10)
    odd = joint_plan(slab(30, 10, run=20.0), F)
    assert (odd.width, odd.asked) == (10, True)


def test_a_shape_without_sides_needs_both_lengths_for_joints():
    assert joint_plan(Area(Shape("circle", 12), run=12.0), F) is None
    # width 12 over the limit of 10: one along
    assert joint_plan(Area(Shape("circle", 12), run=12.0, panel_width=12.0), F).along == 1


# hauling


def soil_pile(tons: float, loose: float, hours: float = 0.0, trip: float = 1.0, n: int = 0) -> Pile:
    """A pile of soil."""
    site = Site("pit", "soil", 20.0, minimum=60.0)
    return Pile(("soil",), "soil", loose, tons, hours, 0.0, loads=n, trip=trip, site=site)


def test_a_load_is_planned_under_the_payload():
    # 4.5 t payload x 0.9 = 4.05 t: 4.05 t is one load, 4.06 two; by volume 3.5 / 3 -> 2
    truck = Vehicle("truck", 5.0, 4.5)
    assert loads(make(), soil_pile(4.05, 3.0), truck) == (1, "weight")
    assert loads(make(), soil_pile(4.06, 3.0), truck) == (2, "weight")
    assert loads(make(), soil_pile(1.0, 3.5), replace(truck, bed=3.0)) == (2, "volume")


def test_the_minimum_at_the_scale_house_counts_a_load():
    # two loads of 2.35 t at $20 = $47, minimum $60 each
    assert tip_money(soil_pile(4.7, 3.0, n=2), Site("pit", "soil", 20.0, minimum=60.0), 0.0) == 120
    # dirty soil: $75 a load
    assert tip_money(soil_pile(4.7, 3.0, n=2), Site("pit", "soil", 40.0, contamination=75.0), 1.0) == 2 * (94 + 75)
    assert tip_money(soil_pile(4.7, 3.0, n=2), Site("mill", "mixed", 40.0, contamination=75.0), 1.0) == 188


def test_the_truck_does_not_leave_before_it_is_loaded_or_back():
    # two people: green 2 h -> ready 1.0, away 1.0, back 2.0; soil 8 h -> 4 h, two loads:
    # first at 1 + 2 = 3.0; the last at the later of 5.0 and 4.5, back 6.5
    green = Pile(("green",), "green", 1.0, 0.5, 2.0, 0.0, loads=1, trip=1.0, site=Site("yard", "green"))
    plan = HaulPlan("D", Vehicle("truck", 5, 4.5), [green, soil_pile(6, 4, 8.0, 1.5, 2)], 0, 0, 0, 1, 2)
    _run_the_clock(make(), plan)
    assert (green.first_leaves, green.back) == (1.0, 2.0)
    soil = plan.piles[1]
    assert (soil.first_leaves, soil.back, soil.returns) == (3.0, 6.5, [4.5, 6.5])
    assert plan.last_day == 1


def test_the_last_minute_of_a_day_is_not_the_next_day():
    assert (day_of(7.5, 7.5), day_of(7.51, 7.5), day_of(15.0, 7.5), day_of(0.0, 7.5)) == (1, 2, 2, 1)


def _streams(*names: str) -> dict:
    return {n: Pile((n,), "", 1.0, 1.0, 1.0, 0.0) for n in names}


def test_a_plan_is_not_shown_twice():
    assert list(plans(_streams("soil"))) == ["A", "D"]
    assert list(plans(_streams("green", "concrete", "soil"))) == ["A", "B", "C", "D", "E", "F"]
    # soil and concrete: B is A again, E is C again
    assert list(plans(_streams("concrete", "soil"))) == ["A", "C", "D", "F"]


def test_a_mixed_pile_goes_last_and_a_lone_stream_keeps_its_place():
    assert [p.streams for p in plans(_streams("green", "concrete", "soil"))["F"]] == [("soil",), ("green", "concrete")]
    assert [p.streams for p in plans(_streams("green", "concrete"))["C"]] == [("green",), ("concrete",)]


def haul_job(vehicle: Vehicle, **facts) -> Job:
    """Two bank yards of loam: 2.5 loose, 2.9 t; a soil site 15 min away, 15 min on the scale: trips of 0.75 h."""
    site = Site("pit", "soil", 20.0, minutes=15.0, miles=5.0, turnaround=15.0)
    return make(slab(18, 9), fleet=(vehicle,), sites=(site,), crew=2, **facts)


def _plan(job: Job) -> HaulPlan:
    b = build(job)
    return b.haul


def test_own_hauling_costs_driver_truck_and_miles():
    # 2.9 t on 4.05: one load. Dump 58; truck 0.75 x 40 + 10 x 1 = 40; driver 0.75 x 40 = 30
    plan = _plan(haul_job(Vehicle("truck", 5.0, 4.5, 1.0, 40.0, 1.0)))
    assert (plan.trips, plan.tip, plan.truck, plan.driver) == (1, 58, 40, 30)
    # own driving is prep time: layout 0.75, dig 3.4, load out 1.6675, drive 0.75
    assert plan.prep_hours == pytest.approx(0.75 + 3.4 + 1.6675 + 0.75)


def test_a_hired_truck_is_paid_while_it_is_loaded_and_for_its_minimum():
    # loading 2.5 x 0.667 / 2 people = 0.83375 h; with the trip 1.58375; minimum 4: 2.41625 more; 4 x $100
    plan = _plan(haul_job(Vehicle("hired", 10.0, 12.0, 1.0, 100.0, 0.0, True, 4.0)))
    assert plan.wait_hours == pytest.approx(0.83375)
    assert plan.top_up_hours == pytest.approx(4 - 0.75 - 0.83375)
    assert (plan.truck, plan.driver) == (pytest.approx(400), 0)
    # its driving is not the crew's: 0.75 + 3.4 + 1.6675
    assert plan.prep_hours == pytest.approx(5.8175)


def test_a_machine_loads_a_hired_truck_alone():
    plan = _plan(haul_job(Vehicle("hired", 10.0, 12.0, 1.0, 100.0, 0.0, True), machine_digging=True))
    assert plan.wait_hours == pytest.approx(0.25)


def test_a_site_that_refuses_wet_soil_is_no_candidate():
    job = haul_job(Vehicle("truck", 5.0, 4.5), moisture="wet")
    job = replace(job, sites=(replace(job.sites[0], takes_wet=False),))
    b = build(job)
    assert b.haul is None and b.spoil


def test_separating_is_paid_only_where_green_is_kept_apart_from_something():
    sites = tuple(Site(k, k, 20.0) for k in ("mixed", "green", "soil", "concrete"))
    truck = Vehicle("truck", 10.0, 12.0)
    job = make(slab(18, 9), plants=(Plant(1, 3, 3, 3),), fleet=(truck,), sites=sites)
    b = build(job)
    rows = {p.letter: p.separating_hours for p in haul_plans(job, b.takeoff, b.tasks, 0.0)}
    # brush 27/27 x 0.25 = 0.25 loose yards x 0.25 h
    assert rows == {"A": 0, "B": 0.0625, "D": 0.0625, "F": 0.0625}


def test_three_tons_of_rock_come_by_own_trailer_and_more_is_delivered():
    # one truck of 2 t: up(3/2) = 2 trips of 55 min
    trailer = Vehicle("trailer", 3.0, 2.0, 1.0, 20.0, 0.5)
    job = make(slab(18, 9), fleet=(Vehicle("hired", 10, 12, hired=True), trailer))
    t = replace(job_takeoff(job), base_tons=2.9, base_bought=3.0)
    got = base_haul(job, t)
    assert (got.trips, got.hours, got.delivered) == (2, pytest.approx(2 * 55 / 60), False)
    # truck 110/60 x 20 + 2 x 16 x 0.5; driver 110/60 x 40
    assert (got.truck, got.driver) == (pytest.approx(110 / 3 + 16), pytest.approx(220 / 3))
    assert base_haul(job, replace(t, base_bought=3.5)).delivered
    assert base_haul(replace(job, fleet=()), t).delivered


def test_a_near_tie_at_exactly_the_limit_is_shown():
    rows = [HaulPlan("A", None, [], 0, 0, 0, 1, 2, tip=t) for t in (100.0, 125.0)]
    assert near_tie(make(), rows)
    assert not near_tie(make(), [rows[0], replace(rows[1], tip=125.01)])
