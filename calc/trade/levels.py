"""What the numbers of a small flatwork job are given for."""

from __future__ import annotations

from calc.declare import *

AREA = typed_rows("area", across=True, titled=True)
"""One continuous piece of new slab of one thickness."""

STATION = typed_rows("station", within=AREA)
"""A stop on one walk along an area, with the tape from one end."""

CORNER = typed_rows("corner", within=AREA)
"""A corner of an area's outline, in the order walked."""

DEDUCTION = typed_rows("deduction", within=AREA)
"""Something that stands in an area and is not poured: a post, a box, a tree well."""

EDGE = typed_rows("edge", within=AREA)
"""A piece of an area's outline."""

FOOTING = typed_rows("footing", within=AREA)
"""Old concrete that the new slab passes over."""

PLANT = typed_rows("plant")
"""Plants of one kind that are taken out."""

PLAN = named_rows(
    "haul plan",
    "A: all mixed",
    "B: green apart",
    "C: old concrete apart",
    "D: all apart",
    "E: green and old concrete apart",
    "F: soil apart",
)
"""A way of parting what is hauled away."""

VEHICLE = typed_rows("vehicle", titled=True)
"""A way of hauling that the house has or hires."""

PILE = named_rows(
    "pile",
    "green",
    "soil",
    "concrete",
    "A: everything mixed",
    "B: mixed without green",
    "C: mixed without old concrete",
    "D: nothing mixed",
    "E: soil as mixed",
    "F: mixed without soil",
)
"""What may lie on a vehicle: a stream by itself, or what each haul plan leaves mixed."""

DISPOSAL = typed_rows("site", titled=True)
"""A place that takes what is hauled away."""

ROLE = named_rows("role", "labourer", "finisher", "driver")
"""What a person of the crew is paid for."""

WORDING = typed_rows("place", titled=True)
"""A place in the papers that takes words of the contractor's own."""

STRENGTH = named_rows("strength", "2500 psi", "3000 psi", "3500 psi", "4000 psi", "4500 psi", "5000 psi")
"""A mix that the plant has a price for."""

TIER = named_rows("tier", "below the first", "below the second", "below the third", "from there on")
"""A step of what the plant charges for a short load: below the first limit, and so on."""

POURING = named_rows("pouring", "from the truck", "through a pump")
"""How the concrete leaves the truck, as far as the order minds: a pump wants another mix, and keeps some of it."""

RUNG = slot_rows("rung", 40, within=POURING)
"""An order that is tried: a rung of the ladder of orders."""

TRUCK = slot_rows("truck", 8)
"""A ready-mix truck of the pour, first to last."""

JOINT = slot_rows("joint", 24, within=AREA)
"""A joint across an area, in order along its run."""

EIGHTH = named_rows("eighth", "no eighth", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8")
"""A whole number of eighths of an inch, as a tape shows it."""

FIBER = named_rows("fiber", "none", "micro", "macro")
"""A kind of fiber."""

SOIL = named_rows("soil", "topsoil", "loam", "clay", "sand", "gravelly")
"""A kind of soil."""

MOISTURE = named_rows("moisture", "dry", "damp", "wet")
"""How wet the soil is when it is hauled."""

STREAM = named_rows("stream", "green", "soil", "old concrete")
"""What is dug up or broken out, by what it is."""

HAULED = named_rows("hauled", "green", "soil", "old concrete", "mixed")
"""A pile of the plan that was chosen."""

PACKING = named_rows("packing", "small packs only", "large packs only", "large packs, then small")
"""A way of buying a liquid that comes in two sizes."""

METHOD = named_rows("method", "chute", "barrow", "pump", "bags")
"""A way of placing the concrete."""

COOLING = named_rows("concrete at", "50 F", "60 F", "70 F", "80 F", "90 F")
"""A temperature of the concrete that the finishing time is known for."""

BOARD = named_rows("board", "2x4", "2x6", "2x8")
"""A size of form board."""

TASK = named_rows(
    "task",
    "layout",
    "cap lines",
    "cut brush",
    "grub roots",
    "saw for removal",
    "break slab",
    "chip footings",
    "dig by hand",
    "dig by machine",
    "load by hand",
    "load by machine",
    "base",
    "set forms",
    "drill dowels",
    "isolation",
    "bond",
    "protect old walk",
    "place",
    "mix bags",
    "finish",
    "tool joints",
    "saw joints",
    "cure",
    "strip forms",
    "clean up",
    "seal",
    "unknown",
)
"""What the crew does, in the order in which it is done."""

TOOL = named_rows(
    "tool",
    "breaker",
    "chipping hammer",
    "concrete saw",
    "plate",
    "mixer",
    "generator",
    "mini-machine",
)
"""A machine that is rented for a job."""

RENTAL = named_rows("rental", "half a day", "days", "weeks")
"""A way of paying for a rented machine."""

GROUP = named_rows("group", "concrete", "materials", "equipment", "disposal", "labor", "fees")
"""What a cost is booked under."""

DRAW = named_rows("draw", "on signing", "on the day of the pour", "on completion", "when retention is released")
"""A part of the price, and when it falls due."""

CHANGE = typed_rows("change")
"""A change that was ordered after the bid: CO-1, CO-2 and so on, in the order in which they are typed."""

POINT = named_rows("point", *(str(number) for number in range(1, 17)))
"""A point that the plan of an area is drawn through, in the order in which it is drawn."""
