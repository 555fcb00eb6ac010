"""The levels of a small flatwork job: what a number is given for, such as the job, an area, an edge or a truck."""

from __future__ import annotations

from calc.declare import *

AREA = typed_rows("area", across=True, titled=True)
"""One continuous piece of new slab of one thickness."""

CROSS_SECTION = typed_rows("cross-section", within=AREA)
"""A place along an area where its width or its depth was measured, at a station from one end."""

OUTLINE_POINT = typed_rows("outline point", within=AREA)
"""A corner of an area's outline, in order around it."""

DEDUCTION = typed_rows("deduction", within=AREA)
"""Something inside an area that is not poured: a post, a valve box, a tree well."""

EDGE = typed_rows("edge", within=AREA)
"""A part of an area's outline."""

FOOTING = typed_rows("footing", within=AREA)
"""An old footing under the new slab."""

PLANT = typed_rows("plant")
"""Plants of one kind that are removed."""

PLAN = named_rows(
    "haul plan",
    "all mixed",
    "green waste separated",
    "concrete debris separated",
    "all separated",
    "green waste and concrete debris separated",
    "soil separated",
    only_with={"green waste separated": PLANT, "green waste and concrete debris separated": PLANT},
)
"""Which piles are hauled separately, and which are mixed. Without plants two of them come to the same as others."""

VEHICLE = typed_rows("vehicle", titled=True)
"""A vehicle that the company owns or hires."""

PILE = named_rows(
    "pile",
    "green waste",
    "soil",
    "concrete debris",
    "everything mixed",
    "mixed without green waste",
    "mixed without concrete debris",
    "nothing mixed",
    "soil hauled as mixed",
    "mixed without soil",
    only_with={"green waste": PLANT, "mixed without green waste": PLANT, "soil hauled as mixed": PLANT},
)
"""What one load may hold: one material, or what each haul plan leaves mixed, in the order of the plans."""

DISPOSAL = typed_rows("site", titled=True)
"""A disposal site."""

ROLE = named_rows("role", "laborer", "finisher", "driver", "crew mix")
"""The role that a member of the crew is paid for; a crew mix is one rate for the whole crew, blank to work it out."""

WORDING = typed_rows("place", titled=True)
"""A place in the documents for the contractor's own wording."""

HOLIDAY = typed_rows("holiday", titled=True)
"""A day on which the company does not work."""

STRENGTH = named_rows("strength", "2500 psi", "3000 psi", "3500 psi", "4000 psi", "4500 psi", "5000 psi")
"""A mix that the plant sells, by compressive strength."""

TIER = named_rows("tier", "tier 1", "tier 2", "tier 3", "no fee")
"""A tier of the plant's short-load fee: tier 1 is the smallest load."""

POURING = named_rows("pouring", "direct from truck", "pumped")
"""How the concrete is discharged, as far as the order depends on it: a pump needs a pump mix and keeps some of it."""

ORDER_SIZE = slot_rows("order size", within=POURING)
"""An order size that is tried."""

TRUCK = slot_rows("truck")
"""A ready-mix truck of the pour, in order of arrival."""

JOINT = slot_rows("joint", within=AREA)
"""A joint across an area, in order along its length."""

EIGHTH = named_rows("eighth", "no eighth", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8")
"""A number of eighths of an inch, as a tape measure shows it."""

FIBER = named_rows("fiber", "none", "micro", "macro")
"""A kind of fiber."""

SOIL = named_rows("soil", "topsoil", "loam", "clay", "sand", "gravelly")
"""A kind of soil."""

MOISTURE = named_rows("moisture", "dry", "damp", "wet")
"""How wet the soil is when it is hauled."""

_GREEN_WASTE = {"green waste": PLANT}

STREAM = named_rows("stream", "green waste", "soil", "concrete debris", only_with=_GREEN_WASTE)
"""What is dug up or broken out, by material."""

HAUL_PLACE = named_rows("place in the haul", "green waste", "concrete debris", "soil", "mixed", only_with=_GREEN_WASTE)
"""The order in which piles are hauled: a pile of one material has that material's place."""

HAULED = named_rows("hauled", "green waste", "soil", "concrete debris", "mixed", only_with=_GREEN_WASTE)
"""A pile of the haul plan that was chosen."""

PACKING = named_rows("packing", "small pails only", "5-gal pails only", "5-gal pails, then small pails")
"""A way of buying a liquid that is sold in two sizes of pail."""

METHOD = named_rows("method", "chute", "wheelbarrow", "pump", "bags")
"""A placing method."""

COOLING = named_rows("concrete at", "50 F", "60 F", "70 F", "80 F", "90 F")
"""A concrete temperature for which the finishing time is known."""

BOARD = named_rows("board", "2x4", "2x6", "2x8")
"""A size of form lumber."""

TASK = named_rows(
    "task",
    "layout",
    "cap lines",
    "cut brush",
    "grub roots",
    "demolition saw cut",
    "break out slab",
    "chip footings",
    "dig by hand",
    "dig by machine",
    "load by hand",
    "load by machine",
    "place base rock",
    "set forms",
    "drill dowels",
    "install isolation joints",
    "lay bond breaker",
    "lay vapor retarder",
    "place reinforcing bars",
    "place wire mesh",
    "unforeseen conditions",
    "apply bonding agent",
    "protect existing walk",
    "place concrete",
    "mix bags",
    "finish concrete",
    "tool joints",
    "saw-cut joints",
    "apply curing compound",
    "strip forms",
    "clean up",
    "apply sealer",
)
"""A labor task, in the order in which the crew does them: preparation, the pour, and what is done after it."""

PREP_TASK = named_rows("prep task", *TASK.axis.words[: TASK.axis.words.index("apply bonding agent")])
"""A task of the preparation visits: the first rows of the tasks."""

_PLACED = ("place concrete", "mix bags")
LATER_TASK = named_rows(
    "later task", *(word for word in TASK.axis.words if word not in (*PREP_TASK.axis.words, *_PLACED))
)
"""A task of the pour and after it, except placing and mixing, whose hours depend on the placing method."""

VISIT = named_rows("visit", "prep", "pour", "strip", "seal")
"""A kind of visit to the job: preparation, the pour, stripping the forms, and sealing."""

DAY = slot_rows("day")
"""A day of the calendar of a job: before the pour, the pour, after it, and from the first on which it may be sealed."""

BAR = named_rows("bar", "#3", "#4", "#5")
"""A size of reinforcing bar, by its number: the diameter in eighths of an inch."""

BAR_WAY = named_rows("direction", "across the first side", "across the second side")
"""A direction of the bars of a mat."""

TOOL = named_rows(
    "tool",
    "demolition hammer",
    "chipping hammer",
    "concrete saw",
    "plate compactor",
    "mixer",
    "generator",
    "mini excavator",
)
"""A machine that may be rented for a job."""

RENTAL = named_rows("rental", "half day", "daily", "weekly")
"""A rental period."""

GROUP = named_rows("group", "concrete", "materials", "equipment", "disposal", "labor", "fees")
"""A cost group."""

DRAW = named_rows(
    "draw", "deposit on signing", "payment on the day of the pour", "balance on completion", "release of retainage"
)
"""A payment of the payment schedule, and when it is due."""

CONTRACT_PART = named_rows("part of the contract", "price as signed", "signed change orders")
"""What the contract sum is made of."""

INVOICE_PART = named_rows(
    "part of the invoice", "payment", "change orders billed with it", "less retainage held", "retainage released"
)
"""What an invoice bills."""

CHANGE = typed_rows("change")
"""A change order: CO-1, CO-2 and so on, in the order in which they are typed."""

POINT = named_rows("point", *(str(number) for number in range(1, 17)))
"""A point of the drawn outline of an area, in drawing order."""

DRAWN_END = named_rows("end", "beginning", "end")
"""An end of a length that is drawn."""
