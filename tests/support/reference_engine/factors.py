"""Every number of the trade that a contractor may change, at its usual value."""

from dataclasses import dataclass, field

SOILS = {
    "topsoil": (2500.0, 0.25),
    "loam": (2900.0, 0.25),
    "clay": (3300.0, 0.33),
    "sand": (3000.0, 0.12),
    "gravelly": (3200.0, 0.12),
}


@dataclass
class Factors:
    """Every number of the trade that a contractor may change, at its usual value."""

    # digging and vegetation
    soils: dict = field(default_factory=lambda: dict(SOILS))
    moisture: dict = field(default_factory=lambda: {"dry": 0.92, "damp": 1.00, "wet": 1.15})
    working_room: float = 0.25
    brush_compaction: float = 0.25
    root_ball_bowl: float = 0.67
    root_ball_swell: float = 1.10
    brush_pounds: float = 350.0
    root_ball_pounds: float = 1100.0
    # old concrete
    over_break: float = 0.0
    concrete_swell: float = 0.60
    concrete_pounds: float = 4050.0
    # base
    base_tons_per_yard: float = 1.90
    base_waste: float = 0.05
    base_increment: float = 0.5
    base_delivery_above: float = 3.0
    base_loose_tons_per_yard: float = 1.40
    rock_yard_minutes: float = 20.0
    rock_yard_miles: float = 8.0
    rock_yard_turnaround: float = 15.0
    # forms, dowels, liquids, isolation
    board_uses: float = 4.0
    stake_uses: float = 8.0
    stake_spacing: float = 3.0
    curve_stake_spacing: float = 1.5
    dowel_waste: float = 0.05
    stock_bar_feet: float = 20.0
    kerf: float = 0.125
    holes_per_bit: float = 40.0
    holes_per_tube: float = 18.0
    bond_coverage: float = 200.0
    cure_coverage: float = 200.0
    sealer_coverage: float = 250.0
    isolation_piece: float = 10.0
    # joints
    panel_thicknesses: float = 30.0
    panel_maximum: float = 15.0
    panel_ratio: float = 1.5
    panel_floor: float = 4.0
    panel_tolerance: float = 0.10
    # reinforcement and vapor retarder
    bar_pounds: dict = field(default_factory=lambda: {3: 0.376, 4: 0.668, 5: 1.043})
    bar_edge_inches: float = 3.0
    lap_diameters: float = 40.0
    chair_area: float = 16.0
    tie_share: float = 0.5
    bar_hours_pound: float = 0.011
    mesh_length: float = 10.0
    mesh_width: float = 5.0
    mesh_lap: float = 0.5
    mesh_waste: float = 0.15
    mesh_hours: float = 0.007
    vapor_waste: float = 0.10
    vapor_hours: float = 0.002
    # labor, hours a unit
    layout_hours: float = 0.004
    layout_minimum: float = 0.75
    cap_hours: float = 0.6
    brush_hours: float = 0.9
    grub_hours: float = 0.6
    break_hours: float = 1.6
    chip_hours: float = 7.0
    chip_reinforced: float = 2.0
    saw_hours: float = 0.03
    dig_hours: float = 1.7
    machine_dig_hours: float = 0.45
    load_out_hours: float = 0.667
    machine_load_hours: float = 0.10
    base_hours: float = 0.55
    set_form_hours: float = 0.045
    strip_form_hours: float = 0.012
    dowel_hours: float = 0.06
    bond_hours: float = 0.010
    bond_breaker_hours: float = 0.010
    isolation_hours: float = 0.015
    finish_area_per_hour: float = 80.0
    tool_joint_hours: float = 0.02
    cure_hours: float = 0.002
    seal_hours: float = 0.004
    clean_up_hours: float = 1.5
    protection_hours: float = 0.25
    separating_hours: float = 0.25
    # carrying by hand
    carry_free: float = 50.0
    barrow_feet3: float = 2.75
    barrow_speed: float = 150.0
    barrow_fixed_minutes: float = 1.1
    barrow_efficiency: float = 0.8
    bad_way: float = 0.7
    steep: float = 0.05
    barrow_default: float = 50.0
    # hauling
    payload_share: float = 0.90
    dirty_turf: float = 1.0
    dirty_roots: float = 0.25
    near_tie_dollars: float = 25.0
    near_tie_share: float = 0.02
    wait_note_hours: float = 1.0
    site_opens: float = 8.0
    # concrete
    waste: float = 0.03
    percent_rule: float = 0.08
    pump_prime_yards: float = 0.20
    order_increment: float = 0.25
    minimum_order: float = 1.0
    truck_capacity: float = 9.0
    ladder_rows: int = 40
    spread_base: float = 0.25
    spread_dirt: float = 0.375
    spread_base_inches: float = 2.0
    points_needed: int = 4
    common_bias: float = 0.125
    area_error: float = 0.01
    yield_error: float = 0.01
    short_hours: float = 1.25
    repair_allowance: float = 250.0
    surplus_yard: float = 65.0
    # placing
    chute_rate: float = 12.0
    pump_rate: float = 14.0
    place_minimum: float = 0.5
    pump_minimum_hours: float = 3.0
    pump_extra_hours: float = 0.75
    unload_minimum: float = 30.0
    unload_per_yard: float = 6.0
    truck_limit: float = 90.0
    truck_limit_hot: float = 60.0
    hot_air: float = 85.0
    truck_spacing: float = 20.0
    way_tie: float = 1.0
    bag_cap: float = 1.0
    bag_shown: float = 0.25
    bag_yield: float = 0.60
    bag_minutes: float = 4.0
    bag_crew: int = 2
    finish_window: tuple = ((50.0, 5.5), (60.0, 4.5), (70.0, 3.5), (80.0, 2.75), (90.0, 2.0))
    window_default_temperature: float = 70.0
    accelerator_window: float = 0.75
    retarder_window: float = 1.0
    saw_after: float = 4.0
    saw_after_early: float = 1.0
    wash_truck: float = 10.0
    wash_pump: float = 35.0
    wash_tools: float = 8.0
    wash_box: float = 1.5
    gallons_per_foot3: float = 7.48
    # visits
    day_hours: float = 8.0
    visit_fixed: float = 1.0
    visit_minimum: float = 4.0
    prep_stretch: float = 0.5
    prep_least_people: int = 2
    one_person: int = 1
    overtime: float = 1.5
    pour_stop_hours: float = 12.0
    task_share_note: float = 0.40
    # rentals
    rental_half: float = 4.0
    rental_day: float = 8.0
    # shared loads
    between_stops: float = 15.0
    # calendar
    works_saturdays: bool = False
    holidays: tuple = ()
    seal_days: int = 28
    locate_days: int = 2
    # money
    tax: float = 0.0
    contingency: float = 0.05
    overhead: float = 0.12
    margin: float = 0.18
    minimum_job: float = 0.0
    price_step: float = 5.0
    deposit_share: float = 0.10
    deposit_cap: float | None = 1000.0
