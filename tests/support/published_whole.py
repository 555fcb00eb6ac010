"""Whole small jobs, worked by hand from published rules: everything that the rules say of each, in one row."""

from __future__ import annotations

from published import CompanyBook, Known, Published, Says, Typed, printed, says, slab, typed
from published_ground import POUNDS, SOIL_PILE

RULES = (
    "soil from a construction methods textbook (clay 3,000 lb/yd3, swell 30 %), 10 % waste from a Navy course, fiber "
    "and curing compound from UFGS 03300N and 03311, panels and joints from PCA and ACI 302.1R"
)
DOWEL_RULES = "one dowel more than there are spaces, state DOT dowel folio (2013)"

STRIP_HOUSE = CompanyBook(
    factors=(
        ("OtherOrderRules.allowance", "", 10),
        ("Soil.density", "clay", 3000),
        ("Soil.swell", "clay", 30),
    ),
    vehicle=typed("Vehicle", struck_capacity=3, payload="3000 lb"),
)


def strip(length: float | str, width: float | str, thickness: float | str, base: float | str) -> tuple[Typed, ...]:
    """A strip on clay, whose sod is off: the finished top stands 2 in above the dirt that is left."""
    return (
        slab(length, width, thickness, base=base, height_above_grade=2),
        typed("Job", soil="clay", fiber="micro"),
    )


STRIP_SAYS: tuple[Says, ...] = (
    says("Slab.net_area", 120),
    printed("Concrete.in_place", "1.4815"),
    says("Order.quantity", 1.75),
    says("FiberTotal.weight", 2.625),
    says("Curing.need", 0.60),
    says("CuringChoice.small_packs", 1),
    says("Panel.spacing", 4.5),
    says("Panel.panels", 9),
    printed("Panel.panel_length", "4.444"),
    says("MatchedJoints.joints", 8),
    says("MatchedJoints.length_all", 24),
    printed("Spoil.bank", "2.2222"),
    printed("Spoil.loose", "2.8889"),
    says("Spoil.tons", 6666.7 / POUNDS, 0.05 / POUNDS),
    printed("Spoil.tons", "3.333"),
    says("Hauled.by_weight", 3, row=SOIL_PILE),
    says("Hauled.by_volume", 1, row=SOIL_PILE),
    says("Hauled.loads", 3, row=SOIL_PILE),
)

STRIP = Published(
    "a whole strip of 40 by 3 ft on clay",
    RULES,
    Known.CONSTRUCTED,
    strip(40, 3, 4, 4),
    STRIP_SAYS,
    STRIP_HOUSE,
)

METRIC_STRIP = Published(
    "the same strip in metres",
    f"{RULES}; 0.3048 m to the foot and 0.764554857984 m3 to the yard, NIST Handbook 44, from memory",
    Known.CONSTRUCTED,
    strip("12.192 m", "0.9144 m", "0.1016 m", "0.1016 m"),
    (*STRIP_SAYS, says("Concrete.in_place", 1.13267 / 0.764554857984, 5e-6 / 0.764554857984)),
    STRIP_HOUSE,
)

WHOLE = (
    STRIP,
    METRIC_STRIP,
    Published(
        "the same strip with its sod, which is two inches more of the dig",
        f"{RULES}; 0.7407 yd3 of sod and 2.2222 yd3 of clay below it",
        Known.CONSTRUCTED,
        (slab(40, 3, 4, base=4), typed("Job", soil="clay")),
        (says("Excavation.depth", 8), says("Spoil.bank", 0.7407 + 2.2222, 1e-4)),
        STRIP_HOUSE,
    ),
    Published(
        "a broken slab of ten by five feet",
        "4,050 lb/yd3 solid and 2,400 lb/yd3 loose, CalRecycle and a conversion sheet, both seen in print",
        Known.CONSTRUCTED,
        (slab(10, 5, 4, old_slab=50, old_slab_thickness=4),),
        (
            printed("ConcreteDebris.solid", "0.6173"),
            says("ConcreteDebris.tons", 2500 / POUNDS),
            printed("ConcreteDebris.loose", "1.0417"),
            says("ConcreteDebris.tons", 2400 / POUNDS, over="ConcreteDebris.loose"),
            says("Spoil.bank", 0),
        ),
        CompanyBook(factors=(("ConcreteDebris.swell", "", 68.75),)),
    ),
    Published(
        "one doweled edge of 40 ft",
        f"{DOWEL_RULES}, hole of UFC 3-270-04 section 4.7 (bar and 1/8 in), both seen in print",
        Known.CONSTRUCTED,
        (
            slab(40, 3),
            typed(
                "Edge",
                kind="existing",
                length=40,
                spacing=12,
                end_distance=6,
                embedment=6,
                projection=6,
                drill_diameter="1/2",
            ),
        ),
        (
            says("DoweledEdge.dowels", 40),
            says("DoweledEdge.dowel_length", 12),
            says("DowelNeeds.dowels", 40),
            says("DoweledEdge.epoxied", 40),
            printed("DoweledEdge.epoxy_volume", "20.62"),
        ),
    ),
    Published(
        "the same edge with its end dowels a foot in",
        f"{DOWEL_RULES}, seen in print",
        Known.CONSTRUCTED,
        (slab(40, 3), typed("Edge", kind="existing", length=40, spacing=12, end_distance=12, drill_diameter="1/2")),
        (says("DoweledEdge.dowels", 39),),
    ),
)
