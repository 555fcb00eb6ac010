"""Shapes of books as people make them: other headers, sheets of their own, totals, and what each must give."""

from __future__ import annotations

# A header of Areas over a column of numbers, and the column that it means; blank where it means none.
HEADERS = (
    ("thick", "thickness in"), ("thicknes in", "thickness in"), ("Thick in", "thickness in"), ("depth", "thickness in"),
    ("depth in", "thickness in"), ("Depth (in)", "thickness in"), ("slab in", "thickness in"),
    ("slab thickness", "thickness in"), ("concrete depth in", "thickness in"), ("slab depth", "thickness in"),
    ("gravel", "base in"), ("gravel in", "base in"), ("rock in", "base in"), ("base rock", "base in"),
    ("base rock in", "base in"), ("road base in", "base in"), ("stone", "base in"), ("subbase", "base in"),
    ("qty", "quantity"), ("Qty", "quantity"), ("count", "quantity"), ("pcs", "quantity"), ("how many", "quantity"),
    ("quantty", "quantity"),
    ("forms", "formed ft"), ("form", "formed ft"), ("forms lf", "formed ft"), ("form ft", "formed ft"),
    ("formed edge ft", "formed ft"), ("formed edges", "formed ft"), ("forming", "formed ft"), ("formd ft", "formed ft"),
    ("dowels", "doweled edge ft"), ("dowel ft", "doweled edge ft"), ("dowel edge ft", "doweled edge ft"),
    ("doweled", "doweled edge ft"), ("dowel", "doweled edge ft"),
    ("isolation", "wall ft"), ("expansion joint", "wall ft"), ("against wall", "wall ft"), ("house", "wall ft"),
    ("sf", "area ft2"), ("sq ft", "area ft2"), ("SQFT", "area ft2"), ("square feet", "area ft2"),
    ("demo", "old slab ft2"), ("tear out", "old slab ft2"), ("removal", "old slab ft2"),
    ("existing slab", "old slab ft2"),
    ("w2", "other width ft"), ("end width", "other width ft"), ("width 2", "other width ft"),
    ("elevation", "height above grade in"), ("above grade", "height above grade in"),
    ("rebar spacing", "bar spacing in"), ("panel", "panel width ft"), ("running", "running slope %"),
    ("cross", "cross slope %"), ("street", "street grade %"), ("clear", "clear width ft"),
    ("phone", ""), ("invoice", ""), ("my rank", ""), ("zone", ""), ("crew", ""), ("color code", ""), ("truck", ""),
)  # fmt: skip

KEY_HEADERS = ("Job ID", "job id", "Job No", "job #", "JOB")
AREA_HEADERS = ("Area ID", "area id", "Area No", "area #", "AREA")
"""Headers of the columns with an id, which are read."""

# The name of a sheet with facts of a job, and the sheet that it must be called.
FACT_SHEETS = ("Conditions", "Site", "Facts", "Site cond", "Job conditions", "Site facts")

# Rows below two areas of 10 by 3 and 20 by 4 ft, whether there is a blank row before it, and whether it is a total.
TOTALS = (
    ((None, None, 30, 7), False, True), ((None, None, 30, 7), True, True), ((None, None, 30, None), False, True),
    ((None, None, 30, None), True, True), ((None, None, None, 7), True, True), ((None, None, 12, 3), True, True),
    ((None, None, 1000, 99), True, True),
    ((None, None, 12, 3), False, False), (("7", None, 30, 7), True, False), (("7", "A9", 30, 7), False, False),
    ((None, "A9", 30, 7), True, False),
)  # fmt: skip
