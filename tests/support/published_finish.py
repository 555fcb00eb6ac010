"""Published figures: fiber, curing compound, joints and dowels."""

from __future__ import annotations

from published import CompanyBook, Known, Published, Typed, between, fixed, printed, says, slab, typed

UFGS_WALK = "UFGS 03300N section 3.8.3, walks"
UFGS_FIBER = "UFGS 03300N, fiber"
UFGS_CURE = "UFGS 03311 and 03300N: at most 200 ft2/gal in two coats, 5 m2/L"
PCA = "PCA joint table"
DOT_FOLIO = "state DOT dowel folio (2013)"

FIBER = (
    Published(
        "1.75 yards take 2.625 lb of micro fiber",
        f"{UFGS_FIBER}: at least 1.5 lb/yd3",
        Known.SEEN,
        (*fixed(1.75), typed("Job", fiber="micro")),
        (says("FiberDose.per_yard", 1.5), says("FiberTotal.weight", 2.625)),
    ),
    Published(
        "the metric dose of the federal guide is not its pound dose",
        f"{UFGS_FIBER} prints 2.6 kg/m3 beside 1.5 lb/yd3; 2.6 kg/m3 is 4.38 lb/yd3",
        Known.SEEN,
        (*fixed(1.75), typed("Job", fiber="micro"), typed("Site", fiber_dose="2.6 kg/m3")),
        (printed("FiberDose.per_yard", "4.38"),),
    ),
    Published(
        "the low end of the usual dose of micro fiber",
        "NRMCA CIP 24 and ACI 544.3R: 1.0 to 1.5 lb/yd3",
        Known.MEMORY,
        (*fixed(9), typed("Job", fiber="micro"), typed("Site", fiber_dose=1.0)),
        (says("FiberTotal.weight", 9), says("FiberTotal.bags", 9)),
    ),
    Published(
        "a tenth of a percent of polypropylene by volume",
        "0.001 x 27 ft3 x 0.91 x 62.4 lb/ft3, 1.533 lb/yd3; typed as 0.91 kg/m3, which is rounded",
        Known.ARITHMETIC,
        (*fixed(1), typed("Job", fiber="micro"), typed("Site", fiber_dose="0.91 kg/m3")),
        (says("FiberTotal.weight", 1.533, 0.0015),),
    ),
)


def cured(square_feet: float | str) -> tuple[Typed, ...]:
    """A slab of so many square feet."""
    return (typed("Area", shape="area given", given_area=square_feet, thickness=4),)


def covering(rate: float | str) -> CompanyBook:
    """A company book with another coverage of curing compound."""
    return CompanyBook(factors=(("Curing.coverage", "", rate),))


CURING = (
    Published(
        "250 square feet take 1.25 gallons, which is two cans",
        UFGS_CURE,
        Known.SEEN,
        cured(250),
        (says("Curing.need", 1.25), says("CuringChoice.small_packs", 2)),
    ),
    Published(
        "or one pail of five gallons",
        UFGS_CURE,
        Known.SEEN,
        cured(250),
        (says("Curing.need", 1.25), says("CuringChoice.large_packs", 1)),
        CompanyBook(packs=(("Curing.large", 88, 5),)),
    ),
    Published(
        "two coats of at most 400 square feet a gallon are one of 200",
        "UFGS 03372 section 3.5.3.3: each coat at most 400 ft2/gal",
        Known.SEEN,
        cured(800),
        (says("Curing.need", 800 / 400 + 800 / 400),),
    ),
    Published(
        "at the rate of California 250 square feet take 1.667 gallons",
        "Caltrans Standard Specifications 90-1.03B(3): 150 ft2/gal nominal",
        Known.MEMORY,
        cured(250),
        (printed("Curing.need", "1.667"),),
        covering(150),
    ),
    Published(
        "a compound that cures and seals is tested at 300",
        "ASTM C1315: 300 ft2/gal",
        Known.MEMORY,
        cured(300),
        (says("Curing.need", 1.0),),
        covering(300),
    ),
    Published(
        "fifty square metres take ten litres",
        "ASTM C309: 5 m2/L, printed beside 200 ft2/gal, which is 4.91",
        Known.PARTLY,
        cured("50 m2"),
        (says("Curing.need", 10 / 3.785411784),),
        covering("5 m2/L"),
    ),
)


def spaced(*factors: tuple[str, float]) -> CompanyBook:
    """A company book with its own rules for joints."""
    return CompanyBook(factors=tuple((f"Panel.{name}", "", value) for name, value in factors))


JOINTS = (
    *(
        Published(
            f"joints by slab and mix, {mix}",
            f"{PCA}: {', '.join(map(str, feet))} ft for 4, 5 and 6 in, {ratio} times the thickness",
            Known.SEEN,
            tuple(slab(60, 24, inches) for inches in (4, 5, 6)),
            tuple(says("Panel.spacing", each, off, row=row) for row, each in enumerate(feet)),
            spaced(("by_thickness", ratio), ("max_spacing", 18)),
        )
        for mix, ratio, feet, off in (
            ("slump 4 to 6 in, aggregate under 3/4 in", 24, (8, 10, 12), 0),
            ("slump 4 to 6 in, aggregate of 3/4 in and more", 30, (10, 13, 15), 0.5),
            ("slump under 4 in", 36, (12, 15, 18), 0),
        )
    ),
    Published(
        "a thick slab has a joint every 15 ft",
        "NRMCA CIP 6: 15 ft at most",
        Known.SEEN,
        (slab(60, 20, 9),),
        (says("Panel.spacing", 15), says("Panel.panels", 4)),
    ),
    Published(
        "a thick slab has a joint every 18 ft by the older guide",
        "ACI 302.1R-96: 18 ft at most",
        Known.SEEN,
        (slab(60, 24, 9),),
        (says("Panel.spacing", 18),),
        spaced(("max_spacing", 18)),
    ),
    Published(
        "no panel is longer than one and a half times its width",
        "PCA, ACI 302 and ACI 360: 3 ft wide is 4.5 ft long, 5 ft wide 7.5 ft",
        Known.SEEN,
        (slab(60, 3, 4), slab(60, 5, 4)),
        (says("Panel.spacing", 4.5), says("Panel.spacing", 7.5, row=1)),
    ),
    Published(
        "a city that allows one and a quarter",
        "copy of a city standard: 5 ft wide is 6.25 ft long",
        Known.SEEN,
        (slab(60, 5, 4),),
        (says("Panel.spacing", 6.25),),
        spaced(("by_width", 1.25)),
    ),
    Published(
        "a tooled walk has panels as long as wide",
        "masonry textbook (2016): spacing is the width of the walk, 10 ft at most",
        Known.SEEN,
        (slab(40, 4, 4),),
        (says("Panel.spacing", 4), says("Panel.panels", 10)),
        spaced(("by_width", 1)),
    ),
    *(
        Published(
            f"a slab of 40 by 40 ft, {inches} in thick, has panels of at most {feet:g} ft both ways",
            f"NRMCA CIP 6: 24 to 36 times the thickness and 15 ft at most; 30 times {inches} in is {feet:g} ft",
            Known.SEEN,
            (slab(40, 40, inches),),
            (
                says("Panel.limit", feet),
                says("Panel.joints_along", panels - 1),
                says("MatchedJoints.joints", panels - 1),
                says("MatchedJoints.length", 2 * (panels - 1) * 40),
            ),
        )
        for inches, feet, panels in ((3.5, 8.75, 5), (4, 10, 4), (5, 12.5, 4), (6, 15, 3), (8, 15, 3))
    ),
    Published(
        "a driveway of 20 ft has one joint down its middle",
        "PCA: a drive wider than 10 to 12 ft has a joint along its center",
        Known.MEMORY,
        (slab(40, 20, 4),),
        (says("Panel.joints_along", 1), says("Panel.panel_width", 10), says("MatchedJoints.joints", 3)),
    ),
    Published(
        "a driveway of 10 ft has none along it",
        "PCA: a drive up to 10 to 12 ft wide is one panel wide",
        Known.MEMORY,
        (slab(40, 10, 4),),
        (says("Panel.joints_along", 0), says("MatchedJoints.joints", 3)),
    ),
    Published(
        "panels are kept as square as they go, both ways",
        "ACI 302.1R: panels square or nearly so, the longer side at most 1.5 times the shorter",
        Known.MEMORY,
        (slab(36, 30, 4),),
        (
            between("MatchedJoints.even_panel", 10 / 1.5, 15),
            says("Panel.panel_width", 10),
            says("Panel.panel_length", 9),
        ),
    ),
    *(
        Published(
            f"a slab of {inches} in has panels of {feet} ft both ways by the old rule of thumb",
            f"rule of thumb: two to three feet a side for each inch of thickness; two times {inches}",
            Known.MEMORY,
            (slab(48, 24, inches),),
            (
                says("Panel.limit", feet),
                says("Panel.joints_along", 24 / feet - 1),
                says("MatchedJoints.joints", 48 / feet - 1),
            ),
            spaced(("by_thickness", 24)),
        )
        for inches, feet in ((4, 8), (6, 12))
    ),
    Published(
        "a federal walk of 40 ft has eight panels",
        f"{UFGS_WALK}: a joint every 5 ft; 8 panels, 7 joints, 28 ft for a walk of 40 by 4 ft",
        Known.SEEN,
        (slab(40, 4, 4),),
        (
            says("Panel.panels", 8),
            says("MatchedJoints.joints", 7),
            says("Panel.panel_length", 5),
            says("MatchedJoints.length_all", 28),
        ),
        spaced(("max_spacing", 5)),
    ),
)


def drilled(length: float, spacing: float, **more: float | str) -> tuple[Typed, ...]:
    """A slab with one edge that is doweled into old concrete."""
    return slab(40, 3), typed("Edge", kind="existing", length=length, spacing=spacing, **more)


DOWELS = (
    Published(
        "a lane of 12 ft has eleven dowels a foot apart",
        f"{DOT_FOLIO}: the first bar 12 in from the edge",
        Known.SEEN,
        drilled(12, 12, end_distance=12),
        (says("DoweledEdge.per_piece", 11), says("DoweledEdge.spacing_as_laid_out", 12)),
    ),
    Published(
        "a dowel of 18 in stands nine in each side",
        "state urban standard, figure 7010.101 (2018): 18 in long, 12 in apart, 9 in at least each side",
        Known.SEEN,
        drilled(12, 12, embedment=9, projection=9),
        (says("DoweledEdge.dowel_length", 18),),
    ),
    *(
        Published(
            f"the ring round a {bar} bar in a {hole} hole, {embed} in deep",
            "pi/4 times hole squared less bar squared, times the depth",
            Known.ARITHMETIC,
            drilled(1, 12, quantity=dowels, bar_diameter=bar, drill_diameter=hole, embedment=embed),
            (says("DoweledEdge.dowels", dowels), says("DoweledEdge.epoxy_volume", volume, volume * 0.001)),
        )
        for bar, hole, embed, dowels, volume in (
            ("3/8", "1/2", 4, 30, 10.31),
            ("1/2", "5/8", 6, 1, 0.66268),
            ("3/4", "7/8", 9, 1, 1.43581),
        )
    ),
)

FINISH = (*FIBER, *CURING, *JOINTS, *DOWELS)
