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
    "hours_layout": ("layout",), "hours_cap": ("cap lines",), "hours_brush": ("cut brush",),
    "hours_grub": ("grub roots",), "hours_break": ("break out slab",), "hours_chip": ("chip footings",),
    "hours_dig": ("dig by hand", "dig by machine"), "hours_load_out": ("load by hand", "load by machine"),
    "hours_base": ("place base rock",), "hours_dowels": ("drill dowels",),
    "hours_isolation": ("install isolation joints",), "hours_finish": ("finish concrete",),
    "hours_cure": ("apply curing compound",), "hours_clean_up": ("clean up",),
}  # fmt: skip
"""Hours of the engine, by the tasks that they are."""
