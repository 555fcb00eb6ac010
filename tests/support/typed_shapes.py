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

# A word that is no choice, the input that it is typed for, and the choice that is suggested; blank for a list of all.
SUGGESTED = (
    ("rectangel", "Area.shape", "rectangle"), ("rectangular", "Area.shape", "rectangle"),
    ("rect", "Area.shape", "rectangle"), ("square", "Area.shape", "rectangle"), ("strip", "Area.shape", "rectangle"),
    ("box", "Area.shape", "rectangle"), ("half circle", "Area.shape", "area given"),
    ("semicircle", "Area.shape", "area given"), ("half round", "Area.shape", "area given"),
    ("oval", "Area.shape", "area given"), ("irregular", "Area.shape", "area given"),
    ("kidney", "Area.shape", "area given"), ("L", "Area.shape", "outline points"),
    ("L-shape", "Area.shape", "outline points"), ("polygon", "Area.shape", "outline points"),
    ("round", "Area.shape", "circle"), ("circel", "Area.shape", "circle"), ("triangular", "Area.shape", "triangle"),
    ("tringle", "Area.shape", "triangle"), ("quarter round", "Area.shape", "quarter circle"),
    ("tapered", "Area.shape", "cross-sections"), ("trapezoidal", "Area.shape", "trapezoid"),
    ("hexagon", "Area.shape", ""), ("zigzag", "Area.shape", ""), ("star", "Area.shape", ""),
    ("dirt", "Job.soil", "loam"), ("earth", "Job.soil", "loam"), ("soil", "Job.soil", "loam"),
    ("rocky", "Job.soil", "gravelly"), ("gravel", "Job.soil", "gravelly"), ("sandy", "Job.soil", "sand"),
    ("clayey", "Job.soil", "clay"), ("loamy", "Job.soil", "loam"), ("peat", "Job.soil", ""), ("mud", "Job.soil", ""),
    ("silt", "Job.soil", ""), ("caliche", "Job.soil", ""),
    ("dirt", "Disposal.kind", "soil"), ("earth", "Disposal.kind", "soil"),
    ("rubble", "Disposal.kind", "concrete debris"),
    ("concrete", "Disposal.kind", "concrete debris"), ("brush", "Disposal.kind", "green waste"),
    ("yard waste", "Disposal.kind", "green waste"), ("tires", "Disposal.kind", ""),
    ("rebar", "Area.reinforcement", "bars"), ("wire mesh", "Area.reinforcement", "mesh"),
    ("WWM", "Area.reinforcement", "mesh"), ("fiber", "Area.reinforcement", ""),
    ("tailgate", "Access.method", "chute"), ("truck", "Access.method", "chute"),
    ("buggy", "Access.method", "wheelbarrow"),
    ("line pump", "Access.method", "pump"), ("boom", "Access.method", "pump"), ("sacks", "Access.method", "bags"),
    ("crane", "Access.method", ""),
    ("backhoe", "Digging.by", "machine"), ("mini excavator", "Digging.by", "machine"), ("shovel", "Digging.by", "hand"),
    ("sawcut", "Site.joint_method", "saw-cut"), ("saw cut", "Site.joint_method", "saw-cut"),
    ("grooved", "Site.joint_method", "tooled"), ("none", "Site.joint_method", ""),
    ("davis-bacon", "Crew.wages", "prevailing"), ("public", "Crew.wages", "prevailing"),
    ("cars", "AreaUse.vehicles", "light"), ("trucks", "AreaUse.vehicles", "heavy"),
    ("house", "Edge.kind", "building"), ("doweled", "Edge.kind", "existing"), ("forms", "Edge.kind", "form"),
    ("x", "Area.vapor_retarder", "yes"), ("true", "Area.vapor_retarder", "yes"), ("nope", "Area.vapor_retarder", "no"),
    ("HOA", "Permissions.client", "association"), ("homeowner", "Permissions.client", "owner"),
)  # fmt: skip

# A role that Wages does not have, and the role that is suggested; blank for a list of all.
ROLES = (
    ("labor", "laborer"), ("labour", "laborer"), ("labourer", "laborer"), ("helper", "laborer"),
    ("cement finisher", "finisher"), ("mason", "finisher"), ("finishers", "finisher"), ("truck driver", "driver"),
    ("teamster", "driver"), ("crew", "crew mix"), ("foreman", ""), ("operator", ""), ("apprentice", ""),
)  # fmt: skip
