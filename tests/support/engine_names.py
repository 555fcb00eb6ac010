"""Which result of the engine is which line of the program."""

NAMES = {
    "slab_area": "Slab.net_area_all", "net_yards": "Concrete.in_place_all", "soil_hauled_bank": "Spoil.bank",
    "soil_loose": "Spoil.loose", "soil_tons": "Spoil.tons", "green_loose": "GreenSpoil.loose",
    "green_tons": "GreenSpoil.tons", "base_yards": "Base.compacted_all", "base_tons": "BaseNeeds.tons",
    "base_bought": "BaseNeeds.buy", "form_feet": "EdgeTakeoff.formed_all", "stakes": "Stakes.stakes_all",
    "joint_feet": "MatchedJoints.length_all", "dowels": "DowelNeeds.dowels", "drill_bits": "DowelNeeds.bits",
    "epoxy_tubes": "DowelNeeds.cartridges", "reinforcing_pounds": "BarMat.weight_all",
    "chairs": "Reinforcement.supports_all", "tie_hundreds": "ReinforcementNeeds.tie_hundreds",
    "mesh_sheets": "Reinforcement.sheets_all", "vapor_retarder_rolls": "ReinforcementNeeds.vapor_rolls",
    "haul_trips": "Choice.loads", "haul_wait_hours": "Choice.waiting", "haul_top_up_hours": "Choice.top_up_hours",
    "last_load_day": "Choice.last_day", "base_trips": "BaseHaul.trips", "base_haul_hours": "BaseHaul.hours",
    "prep_hours": "PrepVisit.hours", "prep_visits": "PrepVisit.visits", "prep_people": "PrepVisit.people",
    "bags": "Order.bags", "standby_minutes": "TruckTime.standby_all", "place_hours": "Pour.hours",
    "pour_people": "PourVisit.people", "pour_placers": "PourVisit.placers", "pour_finishers": "PourVisit.finishers",
    "placer_time_on_site": "PourVisit.placer_time", "finisher_time_on_site": "PourVisit.finisher_time",
    "saw_time_on_site": "PourVisit.saw_time", "finish_window_on_site": "PourVisit.window",
    "finish_from_last_truck": "FinishersNeeded.last_load_time", "finishers_needed": "FinishersNeeded.count",
    "bags_share_prep": "PourVisit.is_shared", "crew_visits": "PaidTime.crew_visits",
    "single_visits": "PaidTime.single_visits", "task_hours": "Visit.task_hours_all",
    "clock_hours": "PaidTime.clock_hours", "wash_box_feet3": "Protection.washout_capacity",
    "direct_cost": "BidPrice.direct", "contingency": "BidPrice.contingency", "overhead": "BidPrice.overhead",
    "break_even_cost": "BidPrice.break_even", "price_before_rounding": "BidPrice.to_cent", "bid": "BidPrice.price",
}  # fmt: skip
"""Numbers of a job, by the engine's name."""

WAYS = {"chute": "chute", "barrow": "wheelbarrow", "pump": "pump", "bags": "bags"}
"""Placing methods."""
PLANS = {"A": "all mixed", "B": "green waste separated", "C": "concrete debris separated", "D": "all separated",
         "E": "green waste and concrete debris separated", "F": "soil separated"}  # fmt: skip
"""Haul plans by their letter."""
VISITS = ("prep", "pour", "strip", "seal")
"""Kinds of visits, each with its hours on tasks, paid hours, and hours beyond tasks."""

TASKS = {
    "hours_layout": ("layout",), "hours_cap_lines": ("cap lines",), "hours_cut_brush": ("cut brush",),
    "hours_grub": ("grub roots",), "hours_break_slab": ("break out slab",), "hours_chip": ("chip footings",),
    "hours_saw_cut": ("demolition saw cut",), "hours_dig": ("dig by hand", "dig by machine"),
    "hours_load_out": ("load by hand", "load by machine"), "hours_base": ("place base rock",),
    "hours_set_forms": ("set forms",), "hours_dowels": ("drill dowels",),
    "hours_isolation": ("install isolation joints",), "hours_bond_breaker": ("lay bond breaker",),
    "hours_vapor_retarder": ("lay vapor retarder",),
    "hours_reinforcement": ("place reinforcing bars", "place wire mesh"),
    "hours_unforeseen": ("unforeseen conditions",), "hours_bonding": ("apply bonding agent",),
    "hours_protection": ("protect existing walk",), "hours_place": ("place concrete", "mix bags"),
    "hours_finish": ("finish concrete",), "hours_tooled_joints": ("tool joints",),
    "hours_sawn_joints": ("saw-cut joints",), "hours_cure": ("apply curing compound",),
    "hours_strip_forms": ("strip forms",), "hours_clean_up": ("clean up",), "hours_seal": ("apply sealer",),
}  # fmt: skip
"""Hours of the engine, by the tasks that they are."""

COSTS = {
    "concrete": ("Ready-mix concrete",), "air": ("Entrained air in the mix",),
    "accelerator": ("Accelerator in the mix",), "retarder": ("Retarder in the mix",),
    "winter_heat": ("Winter heat in the mix",), "pea_gravel": ("Pea-gravel pump mix",),
    "short_load": tuple(f"Short loads, tier {tier}" for tier in (1, 2, 3)),
    "delivery": ("Concrete delivery, per truck",), "standby": ("Truck standby",), "pump_set_up": ("Pump set-up",),
    "pump_hours": ("Pump hours",), "pump_yards": ("Pump yardage",), "pump_prime": ("Pump priming",),
    "bags": ("Bagged concrete",), "bag_clean_up": ("Clean-up, bagged concrete",),
    "fiber": ("Micro fiber bags", "Macro fiber bags"), "base_rock": ("Base rock, purchase",),
    "base_delivery": ("Base rock, delivery",), "board_2x4": ("Form lumber 2x4, share of reuse",),
    "board_2x6": ("Form lumber 2x6, share of reuse",), "board_2x8": ("Form lumber 2x8, share of reuse",),
    "stakes": ("Stakes, share of reuse",), "form_release_agent": ("Form release agent, per job",),
    "dowel_bars": ("Dowel stock bars",), "drill_bits": ("Drill bits for dowels",),
    "epoxy": ("Epoxy cartridges for dowels",), "isolation_filler": ("Isolation-joint filler strips, bought",),
    "cap_and_sealant": ("Joint cap and sealant, per foot",),
    "bonding_agent": ("Bonding agent, small pails", "Bonding agent, 5-gal pails"),
    "curing_compound": ("Curing compound, small pails", "Curing compound, 5-gal pails"),
    "sealer": ("Sealer, small pails", "Sealer, 5-gal pails"), "bond_breaker": ("Bond breaker for footings",),
    "washout": ("Concrete washout, per job",), "caution_set": ("Caution tape and signs, per job",),
    "barricades": ("Barricades, days on site",), "jackhammer": ("Rental: demolition hammer",),
    "chipping_hammer": ("Rental: chipping hammer",), "saw": ("Rental: concrete saw",),
    "plate_compactor": ("Rental: plate compactor",), "mixer": ("Rental: mixer",),
    "generator": ("Rental: generator",), "mini_excavator": ("Rental: mini excavator",),
    "mini_excavator_delivery": ("Mini excavator delivery, per job",), "permit": ("Permit",),
    "environmental": ("Environmental fee of the plant",), "fuel": ("Fuel surcharge of the plant",),
    "after_hours": ("After-hours fee of the plant",), "plant_fiber": ("Fiber put in at the plant",),
    "saturday": ("Saturday fee of the plant, per load", "Saturday fee of the plant, per yard"),
    "reinforcing_bars": tuple(f"Reinforcing bars, {size}" for size in ("#3", "#4", "#5")),
    "chairs": ("Bar supports",), "ties": ("Bar ties, hundreds",), "mesh": ("Wire mesh sheets",),
    "vapor_retarder": ("Vapor retarder rolls",), "base_truck": ("Base rock pick-up, truck",),
    "base_driver": ("Base rock pick-up, driver",), "dump_fees": ("Hauling, dump fees",),
    "haul_truck": ("Hauling, truck",), "haul_driver": ("Hauling, driver",),
    "separating": ("Sorting out green waste",), "mobilization_crew": ("Mobilization, crew visits",),
    "mobilization_one": ("Mobilization, one-person visits",), "beyond_prep": ("Time beyond tasks, prep",),
    "beyond_strip": ("Time beyond tasks, strip",), "beyond_seal": ("Time beyond tasks, seal",),
    "premium_laborer": ("Overtime premium, laborers",), "premium_finisher": ("Overtime premium, finishers",),
}  # fmt: skip
"""Cost lines of the engine, by the labels of the rows that they are."""

LABOR = {
    "money_labor_" + name.removeprefix("hours_"): tuple(f"Labor: {word}" for word in words)
    for name, words in TASKS.items()
}
"""Labor lines, by the tasks."""
BEYOND_POUR = {
    ("beyond_pour", "beyond_shared"): "Time beyond tasks, pour, placers",
    ("beyond_pour_finishers", "beyond_shared_finishers"): "Time beyond tasks, pour, finishers",
}
"""Time beyond tasks of the pour, which the engine calls otherwise where it shares the preparation visit."""
MONEY = {f"money_{name}": labels for name, labels in COSTS.items()} | LABOR
"""Every cost line that stands in both."""
