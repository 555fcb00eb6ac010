"""Published figures: units, areas, volumes, thickness, and what is ordered."""

from __future__ import annotations

from published import CompanyBook, Known, Published, fixed, printed, says, slab, typed

NIST = "NIST Handbook 44 App. C and SP 811 App. B"
NAVY = "Navy engineering aid course, chapter on estimating, after NAVFAC P-405"
CIP_8 = "NRMCA CIP 8, on yield"
OFFSETS = "surveying textbook, examples 12.1 and 12.2, areas by offsets"
RAILROAD = "Handbook of Railroad Construction (1857), art. 108"

CUBIC_FEET = 27
"""Cubic feet in a cubic yard: publications give one, the program the other."""

UNITS = (
    Published(
        "a cubic yard is 27 cubic feet",
        NIST,
        Known.MEMORY,
        (slab(9, 9, 4),),
        (says("Concrete.in_place", 1.0),),
    ),
    Published(
        "four inches is a third of a foot",
        f"{NIST}; with 0.33 ft it would be 2.933 yd3, 1 % low",
        Known.ARITHMETIC,
        (slab(60, 4, "4 in"),),
        (printed("Concrete.in_place", "2.963"),),
    ),
    Published(
        "a payload of 7,500 lb is 3.75 short tons, not long ones",
        f"{NIST}: 7,500 lb is 3.75 short tons or 3.402 t",
        Known.MEMORY,
        (slab(10, 4),),
        (says("HaulVehicle.payload", 3.75),),
        CompanyBook(vehicle=typed("Vehicle", struck_capacity=5, payload="7500 lb")),
    ),
    Published(
        "a slab of 10 m2 and 100 mm is one cubic metre",
        f"{NIST}: 0.764554857984 m3 to the yard",
        Known.ARITHMETIC,
        (slab("5 m", "2 m", "100 mm"),),
        (says("Concrete.in_place", 1 / 0.764554857984),),
    ),
)

AREAS = (
    Published(
        "equal offsets, 2,860 square feet",
        OFFSETS,
        Known.SEEN,
        (
            typed("Area", shape="cross-sections"),
            *(
                typed("CrossSection", station=50 * place, width=width)
                for place, width in enumerate((0, 5.2, 8.7, 9.2, 4.9, 10.4, 5.2, 12.2, 2.8))
            ),
        ),
        (says("Slab.gross_area", 2860),),
    ),
    Published(
        "unequal offsets, 4,492 square feet",
        f"{OFFSETS}; printed 4,492, exactly 4,492.25",
        Known.SEEN,
        (
            typed("Area", shape="cross-sections"),
            *(
                typed("CrossSection", station=at, width=width)
                for at, width in zip(
                    (0, 60, 140, 240, 270, 375, 435), (7.2, 11.9, 14.4, 6.0, 6.1, 11.8, 12.4), strict=True
                )
            ),
        ),
        (says("Slab.gross_area", 4492, 0.5),),
    ),
    Published(
        "offsets in metres, 9,000 square metres",
        "school text on the trapezoidal rule; Simpson's rule would give 8,976 m2, and the program says trapezoids",
        Known.SEEN,
        (
            typed("Area", shape="cross-sections"),
            *(
                typed("CrossSection", station=f"{24 * place} m", width=f"{width} m")
                for place, width in enumerate((84, 54, 45, 66, 54, 66, 96))
            ),
        ),
        (says("Slab.gross_area", 9000 / 0.09290304),),
    ),
    Published(
        "a traverse of four corners, 102,935.7 square feet",
        "open surveying text, traverse computations, example 1",
        Known.SEEN,
        (
            typed("Area", shape="outline points"),
            *(
                typed("OutlineCorner", y=north, x=east)
                for north, east in ((500, 2000), (323.614, 1561.426), (526.996, 1488.321), (719.336, 1686.956))
            ),
        ),
        (says("Slab.gross_area", 102935.7, 0.1),),
    ),
    Published(
        "a curved walk is its width times its middle line",
        "Pappus: 4 ft wide, radius 20 ft, a quarter turn, 125.66 ft2; typed as a quarter circle less a smaller one",
        Known.ARITHMETIC,
        (
            typed("Area", shape="quarter circle", length=22),
            typed("Deduction", shape="area given", given_area=254.469),
        ),
        (printed("Slab.net_area", "125.66"),),
    ),
)

# The cut has a bottom of 20 ft and sides of 1.5 to 1, so its mean width is 20 ft and 1.5 times its depth. Depths of 0,
# 5, 10, 15 and 0 ft stand 50 ft apart. No slab is 15 ft thick: lengths are typed at a tenth, volumes are a thousandth.
_HAIR = 0.01
"""A depth of nothing, in inches: no slab has a thickness of 0."""
_CUT = (2, 2.75, 3.5, 4.25, 2), (_HAIR, 6, 12, 18, _HAIR)

VOLUMES = (
    Published(
        "a cut by the prismoidal rule, not by average end areas",
        f"{RAILROAD}: 52,500 ft3 or 1,944.4 yd3; average end areas give 56,250 ft3, 7 % more; typed at a tenth",
        Known.SEEN,
        tuple(
            slab(5, width, depth, other_width=far_width, other_thickness=far_depth)
            for width, far_width, depth, far_depth in zip(_CUT[0], _CUT[0][1:], _CUT[1], _CUT[1][1:], strict=False)
        ),
        (
            *(
                says("Concrete.in_place", cubic_feet / CUBIC_FEET, 5e-4, row=row)
                for row, cubic_feet in enumerate((3.125, 11.875, 24.375, 13.125))
            ),
            says("Concrete.in_place_all", 1.9444, 5e-4),
        ),
    ),
    Published(
        "equal ends, where both rules agree",
        "the prismoidal rule with ends of 100 ft2 each, 50 ft apart: 5,000 ft3",
        Known.ARITHMETIC,
        (slab(50, 50, "2 ft", other_width=50, other_thickness="2 ft"),),
        (says("Concrete.in_place", 5000 / CUBIC_FEET),),
    ),
    Published(
        "a cellar of walls, footings and floor, parts and sum",
        f"{NAVY}: 85.76, 50.04, 133.32, 69.32 and 188.96 ft3 make 527.40",
        Known.SEEN,
        (
            slab(32, 0.67, "2 ft", quantity=2),
            slab(18.67, 0.67, "2 ft", quantity=2),
            slab(33.33, 2, "1 ft", quantity=2),
            slab(17.33, 2, "1 ft", quantity=2),
            slab(18.67, 30.67, ".33 ft"),
        ),
        (
            *(
                says("Concrete.in_place", cubic_feet / CUBIC_FEET, 0.005 / CUBIC_FEET, row=row)
                for row, cubic_feet in enumerate((85.76, 50.04, 133.32, 69.32, 188.96))
            ),
            says("Concrete.in_place_all", 527.40 / CUBIC_FEET, 0.005 / CUBIC_FEET),
        ),
    ),
    *(
        Published(
            f"a yard covers {area:g} square feet at {inches} in",
            "324 over the thickness in inches, from 27 ft3 to the yard and 12 in to the foot",
            Known.ARITHMETIC,
            (typed("Area", shape="area given", given_area=area, thickness=inches),),
            (says("Concrete.in_place", 1.0),),
        )
        for area, inches in ((81, 4), (64.8, 5), (54, 6))
    ),
)

THICKNESS = (
    Published(
        "an eighth too thick takes one yard more in 32",
        f"{CIP_8}: 1/8 in in a 4 in slab is 3 %, a yard in 32",
        Known.SEEN,
        (slab(72, 36, 4), slab(72, 36, '4 1/8"')),
        (says("Concrete.in_place", 32), says("Concrete.in_place", 33, row=1)),
    ),
    Published(
        "an eighth too deep at every stop takes one yard more in 32",
        f"{CIP_8}, as measured by depth points",
        Known.SEEN,
        (slab(72, 36, 4), *(typed("CrossSection", station=at, depth="4 1/8") for at in (0, 36, 72))),
        (says("Concrete.in_place", 33), says("Excavation.depth", 4)),
    ),
    Published(
        "a slab of 100 mm takes 1.6 % less than one of 4 in",
        "100 mm against 101.6 mm",
        Known.ARITHMETIC,
        (slab(81, 1, "100 mm"),),
        (says("Concrete.in_place", 1 - 0.016, 0.0005),),
    ),
    Published(
        "a walk is four inches where nobody says otherwise",
        "UFGS 03300N section 3.8.3 and two city codes: 4 in",
        Known.SEEN,
        (typed("Area", length=81, width=1),),
        (says("MeanThickness.mean", 4), says("Concrete.in_place", 1.0)),
    ),
    Published(
        "on clay, four inches of slab and four of gravel are dug eight deep",
        "city code: dig 8 in, 4 in of gravel, 4 in of slab",
        Known.SEEN,
        (slab(40, 3, 4, base=4), typed("Job", soil="clay")),
        (says("Excavation.depth", 8),),
    ),
    Published(
        "a walk without base is dug as deep as the slab",
        "another city code: dig 5 in for 5 in of slab, no base",
        Known.SEEN,
        (slab(40, 3, 5),),
        (says("Excavation.depth", 5),),
    ),
)

TEN_PERCENT = CompanyBook(factors=(("OtherOrderRules.allowance", "", 10),))

ORDERS = (
    Published(
        "the cellar with ten percent is ordered up, never down to 21",
        f"{NAVY}: 527.40 ft3 and 10 % are 580.14 ft3 or 21.487 yd3, printed as 21; plants sell by the quarter yard",
        Known.SEEN,
        (typed("Area", shape="area given", given_area=527.40, thickness="1 ft"),),
        (
            says("Order.quantity", 21.5),
            printed("Order.required", "21.487"),
            says("Order.required", 580.14 / CUBIC_FEET),
        ),
        CompanyBook(factors=(("OtherOrderRules.allowance", "", 10), ("Risk.waste", "", 10))),
    ),
    Published(
        "1.63 yards by the quarter are 1.75",
        "practice of US plants: to the next quarter or half yard",
        Known.MEMORY,
        (slab(40, 3, 4),),
        (says("Order.quantity", 1.75),),
        TEN_PERCENT,
    ),
    Published(
        "1.63 yards by the half are 2",
        "practice of US plants: to the next quarter or half yard",
        Known.MEMORY,
        (slab(40, 3, 4),),
        (says("Order.quantity", 2.0),),
        CompanyBook(factors=(("OtherOrderRules.allowance", "", 10), ("Risk.increment", "", 0.5))),
    ),
    Published(
        "a hair over two yards is no reason to buy a quarter more",
        "practice of US plants, and arithmetic: 2.000000001 is 2",
        Known.ARITHMETIC,
        fixed(2.000000001),
        (says("Order.quantity", 2.0),),
    ),
    *(
        Published(
            f"{yards} yards in trucks of ten are {trucks}",
            "the order over a truck's load, rounded up",
            Known.ARITHMETIC,
            fixed(yards),
            (says("Order.trucks", trucks), says("TruckLoad.yards_all", yards)),
            CompanyBook(factors=(("Risk.truck_capacity", "", 10),)),
        )
        for yards, trucks in ((10.0, 1), (10.5, 2))
    ),
)

CONCRETE = (*UNITS, *AREAS, *VOLUMES, *THICKNESS, *ORDERS)
