"""What the numbers of a small flatwork job are given for."""

from __future__ import annotations

from calc.declare import named_rows, slot_rows, typed_rows

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

VEHICLE = typed_rows("vehicle", titled=True)
"""A way of hauling that the house has or hires."""

DISPOSAL = typed_rows("site", titled=True)
"""A place that takes what is hauled away."""

ROLE = typed_rows("role", titled=True)
"""What a person of the crew is paid for."""

WORDING = typed_rows("place", titled=True)
"""A place in the papers that takes words of the contractor's own."""

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
"""A pile that goes to one place."""

PACKING = named_rows("packing", "small packs only", "large packs only", "large packs, then small")
"""A way of buying a liquid that comes in two sizes."""
