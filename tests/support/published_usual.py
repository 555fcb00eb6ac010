"""What publications say of the factors that the program takes when nobody says otherwise."""

from __future__ import annotations

from published import RANGE, Known, Usual
from published_ground import ARMY, CALRECYCLE, METHODS, PLANNING

_SWELL = (
    ("topsoil", "topsoil", 10, 25),
    ("loam", "loamy soil", 10, 35),
    ("loam", "common earth", 20, 45),
    ("clay", "clay", 30, 60),
    ("sand", "clean sand or gravel", 5, 15),
    ("gravelly", "clean sand or gravel", 5, 15),
)

USUAL = (
    # order
    Usual("Risk.waste", 2, 3, "two estimating textbooks: 3 % on ground, 2 % above", Known.QUOTED),
    Usual("Risk.waste", 5, 5, "an estimating textbook: 5 % for foundations", Known.QUOTED, departs=RANGE),
    Usual("Risk.waste", 2, 2, "NRMCA CIP 8: about 2 % less in place than fresh", Known.SEEN, departs=RANGE),
    Usual("OtherOrderRules.allowance", 4, 10, "NRMCA CIP 8: 4 to 10 % over plan dimensions", Known.MEMORY),
    Usual("OtherOrderRules.allowance", 10, 10, "Navy course after NAVFAC P-405: 10 %", Known.SEEN, departs=RANGE),
    Usual("OtherOrderRules.allowance", 5, 5, "US Army FM 5-428: 5 % above 200 yd3", Known.MEMORY, departs=RANGE),
    Usual("Risk.increment", 0.25, 0.5, "practice of US plants: the quarter or half yard", Known.MEMORY),
    Usual("Risk.truck_capacity", 10, 10, "TMMB 100: a mixer rated at 10 yd3", Known.SEEN, departs=RANGE),
    # fiber
    Usual("FiberKind.dose", 1.0, 1.5, "NRMCA CIP 24 and ACI 544.3R", Known.MEMORY, "micro"),
    Usual("FiberKind.dose", 1.5, 1.5, "UFGS 03300N: at least 1.5 lb/yd3", Known.SEEN, "micro"),
    Usual("FiberKind.dose", 3, 7, "ACI 544.3R-08: 3 to 7 lb/yd3 and more", Known.PARTLY, "macro"),
    # liquids
    Usual("Curing.coverage", 200, 200, "UFGS 03311 and 03300N, ASTM C309", Known.SEEN),
    Usual("Curing.coverage", 150, 150, "Caltrans 90-1.03B(3)", Known.MEMORY, departs=RANGE),
    Usual("Curing.coverage", 300, 300, "ASTM C1315, cure and seal", Known.MEMORY, departs=RANGE),
    Usual("Bonding.coverage", 200, 300, "data sheets of latex, practice of ACI 503 and 546", Known.MEMORY),
    Usual("Bonding.coverage", 80, 100, "data sheets of epoxy on rough concrete", Known.MEMORY, departs=RANGE),
    # joints
    Usual("Panel.by_thickness", 24, 36, "ACI 302.1R-96 and NRMCA CIP 6", Known.SEEN),
    Usual("Panel.by_thickness", 24, 24, "PCA: slump 4 to 6 in, aggregate under 3/4 in", Known.SEEN, departs=RANGE),
    Usual("Panel.by_thickness", 36, 36, "PCA: slump under 4 in", Known.SEEN, departs=RANGE),
    Usual("Panel.by_width", 1.5, 1.5, "PCA, ACI 302 and ACI 360: at most 1.5", Known.SEEN),
    Usual("Panel.by_width", 1.25, 1.25, "copy of a city standard", Known.SEEN, departs=RANGE),
    Usual("Panel.by_width", 1, 1, "masonry textbook (2016): tooled panels", Known.SEEN, departs="square tooled panels"),
    Usual("Panel.max_spacing", 15, 15, "NRMCA CIP 6", Known.SEEN),
    Usual("Panel.max_spacing", 18, 18, "ACI 302.1R-96", Known.SEEN, departs=RANGE),
    Usual("Panel.max_spacing", 10, 10, "NRMCA CIP 6: 10 ft preferred", Known.SEEN, departs=RANGE),
    Usual("Panel.max_spacing", 5, 5, "UFGS 03300N section 3.8.3, walks", Known.SEEN, departs="a federal walk has 5 ft"),
    Usual("JointDepth.depth_share", 25, 25, "ACI 302.1R and NRMCA CIP 6", Known.PARTLY),
    Usual("JointDepth.depth_share", 33, 33.4, "city code: a third at 5 ft", Known.SEEN, departs=RANGE),
    Usual("JointDepth.min_depth", 1, 1, "ACI 302.1R, UFGS 03300N walks", Known.PARTLY),
    Usual("JointDepth.min_depth", 0.75, 0.75, "UFGS 03300N curbs: 3/4 in", Known.SEEN, departs=RANGE),
    Usual("JointDepth.min_depth", 0.625, 0.625, "city code: 5/8 in", Known.SEEN, departs="one city takes 5/8 in"),
    # soil
    *(Usual("Soil.swell", low, high, f"{PLANNING}, {named}", Known.SEEN, soil) for soil, named, low, high in _SWELL),
    Usual("Soil.swell", 11, 11, f"{ARMY}, sand", Known.PARTLY, "sand", "army table has sand 11, clay 43"),
    Usual("Soil.swell", 25, 25, f"{ARMY} and {METHODS}, common earth", Known.MEMORY, "loam"),
    Usual("Soil.swell", 43, 43, f"{ARMY}, clay", Known.MEMORY, "clay", "army table has sand 11, clay 43"),
    Usual("Soil.swell", 30, 30, f"{METHODS}, clay", Known.PARTLY, "clay", "clay 30 to 60"),
    Usual("Soil.swell", 12, 12, f"{METHODS}, sand and gravel", Known.MEMORY, "gravelly"),
    Usual("Soil.density", 3000, 3000, f"{METHODS}, clay", Known.PARTLY, "clay", "clay 3,000"),
    Usual("Soil.density", 3100, 3100, f"{METHODS}, common earth", Known.MEMORY, "loam", "earth 3,100"),
    Usual("Soil.density", 3200, 3200, f"{METHODS}, sand and gravel", Known.MEMORY, "gravelly"),
    Usual("BaseNeeds.density", 1.825, 1.825, f"{METHODS}, compacted", Known.MEMORY, departs="3,650 lb/yd3"),
    # old concrete and plants
    Usual("ConcreteDebris.density", 4050, 4050, "150 lb/ft3; construction and demolition sheet", Known.PARTLY),
    Usual("ConcreteDebris.density", 3915, 3915, "145 lb/ft3, plain concrete, ACI 318", Known.MEMORY, departs=RANGE),
    Usual(
        "ConcreteDebris.density", 860, 860, "US EPA (2016), concrete in a bin", Known.SEEN, departs="860 (US EPA 2016)"
    ),
    Usual("ConcreteDebris.density", 1400, 1400, "USGBC (2009), rubble", Known.SEEN, departs="1,400 (USGBC 2009)"),
    Usual("ConcreteDebris.swell", 50, 80, f"{PLANNING}, solid rock", Known.SEEN),
    Usual(
        "ConcreteDebris.swell", 68.75, 68.75, f"{CALRECYCLE}: 2,400 loose for 4,050 solid", Known.SEEN, departs=RANGE
    ),
    Usual("GreenSpoil.brush_density", 250, 600, "US EPA, Oregon DEQ and CalRecycle, loose yard waste", Known.SEEN),
    Usual("GreenSpoil.brush_density", 500, 500, "Massachusetts, brush", Known.SEEN, departs=RANGE),
    Usual(
        "GreenSpoil.brush_density", 640, 640, "Oregon DEQ, compacted", Known.SEEN, departs="640 compacted (Oregon DEQ)"
    ),
    # thin slabs
    Usual("SlabCautions.min_thickness", 4, 4, "UFGS 03300N section 3.8.3: walks are 4 in", Known.SEEN, departs=RANGE),
)
