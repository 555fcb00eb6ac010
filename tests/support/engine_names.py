"""Which result of the engine is which line of the program."""

NAMES = {
    "slab_area": "Slab.net_area_all", "net_yards": "Concrete.in_place_all", "soil_hauled_bank": "Spoil.bank",
    "soil_loose": "Spoil.loose", "soil_tons": "Spoil.tons", "green_loose": "Spoil.green_loose",
    "green_tons": "Spoil.green_tons", "base_yards": "Base.compacted_all", "form_feet": "FormNeeds.formed",
    "stakes": "FormNeeds.stakes", "joint_feet": "MatchedJoints.length_all", "dowels": "DowelNeeds.dowels",
    "drill_bits": "DowelNeeds.bits", "epoxy_tubes": "DowelNeeds.cartridges", "order_yards": "Order.quantity",
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
