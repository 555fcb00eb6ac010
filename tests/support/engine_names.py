"""Which result of the engine is which line of the program."""

NAMES = {
    "slab_area": "Slab.net_area_all", "net_yards": "Concrete.in_place_all", "soil_hauled_bank": "Spoil.bank",
    "soil_loose": "Spoil.loose", "soil_tons": "Spoil.tons", "green_loose": "Spoil.green_loose",
    "green_tons": "Spoil.green_tons", "base_yards": "Base.compacted_all", "form_feet": "FormNeeds.formed",
    "stakes": "FormNeeds.stakes", "joint_feet": "MatchedJoints.length_all", "dowels": "DowelNeeds.dowels",
    "drill_bits": "DowelNeeds.bits", "epoxy_tubes": "DowelNeeds.cartridges", "order_yards": "Order.quantity",
    "bid": "BidPrice.price", "contingency": "BidPrice.contingency", "overhead": "BidPrice.overhead",
}  # fmt: skip
"""Numbers of a job, by the engine's name."""

TASKS = {
    "hours_layout": ("layout",), "hours_cap_lines": ("cap lines",), "hours_cut_brush": ("cut brush",),
    "hours_grub": ("grub roots",), "hours_break_slab": ("break out slab",), "hours_chip": ("chip footings",),
    "hours_saw_cut": ("demolition saw cut",), "hours_dig": ("dig by hand", "dig by machine"),
    "hours_load_out": ("load by hand", "load by machine"), "hours_base": ("place base rock",),
    "hours_set_forms": ("set forms",), "hours_dowels": ("drill dowels",),
    "hours_isolation": ("install isolation joints",), "hours_bond_breaker": ("lay bond breaker",),
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
}  # fmt: skip
"""Cost lines of the engine, by the labels of the rows that they are."""

LABOR = {
    "money_labor_" + name.removeprefix("hours_"): tuple(f"Labor: {word}" for word in words)
    for name, words in TASKS.items()
}
"""Labor lines, by the tasks."""
MONEY = {f"money_{name}": labels for name, labels in COSTS.items()} | LABOR
"""Every cost line that stands in both."""
