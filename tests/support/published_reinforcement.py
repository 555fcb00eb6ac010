"""Published figures: sizes and weights of bars, laps, sheets of wire mesh, supports, vapor retarder, placing."""

from __future__ import annotations

from math import pi

from calc.trade.levels import BAR, PREP_TASK
from published import CompanyBook, Known, Published, Usual, between, printed, says, slab

A615 = "ASTM A615/A615M, table 1, nominal dimensions and weights of deformed bars; ACI 318, appendix of bars"
WRI = "Wire Reinforcement Institute, WWR-500: 6x6-W1.4xW1.4 in sheets of 5 by 10 ft, lapped one space and 2 in"
CRSI = "CRSI, Manual of Standard Practice: individual high chairs at 4 ft both ways"
E1643 = "ASTM E1643: joints of a vapor retarder lap at least 6 in"
HANDBOOK = "estimators' handbooks: 8 to 15 h for a thousand pounds of light bars in slabs on ground"
PLACE_BARS = PREP_TASK.axis.words.index("place reinforcing bars")


def _mat(name: str, source: str, known: Known, size: str, weight: float) -> Published:
    """A mat of twenty bars of 19 ft each way, whose weight is that of a foot of its bar, 760 times."""
    return Published(
        name,
        source,
        known,
        (slab(19.5, 19.5, 5, reinforcement="bars", bar_size=size, bar_spacing=12),),
        # 19 ft and 20 bars each way.
        (says("BarMat.weight_all", 2 * 20 * 19 * weight, 2 * 20 * 19 * 0.0005),),
    )


BARS = (
    _mat("a foot of #3 bar weighs 0.376 lb", A615, Known.MEMORY, "#3", 0.376),
    _mat("a foot of #4 bar weighs 0.668 lb", A615, Known.MEMORY, "#4", 0.668),
    _mat("a foot of #5 bar weighs 1.043 lb", A615, Known.MEMORY, "#5", 1.043),
    Published(
        "a #5 bar weighs what its steel weighs",
        f"{A615}: 0.625 in across; steel of 3.4 lb for a square inch and a foot",
        Known.CONSTRUCTED,
        (slab(19.5, 19.5, 5, reinforcement="bars", bar_size="#5", bar_spacing=12),),
        (says("BarMat.weight_all", 760 * pi / 4 * 0.625**2 * 3.4, 760 * 0.0005),),
    ),
    Published(
        "#4 bars lap twenty inches",
        "common practice: 40 diameters; ACI 318 class B laps of small bars in 3,000 psi concrete are of that order",
        Known.MEMORY,
        (slab(30, 4, 5, reinforcement="bars", bar_size="#4"),),
        (says("BarMat.length_with_laps", 29.5 + 20 / 12, row=1),),
    ),
    Published(
        "bars at eighteen inches over ten feet clear are eight",
        "fence-post rule of every estimating text: spaces plus one; 120 in are 6.7 spaces, so 7, and 8 bars",
        Known.ARITHMETIC,
        (slab(10.5, 10.5, 5, reinforcement="bars", bar_spacing=18),),
        (says("BarMat.bars", 8), says("Reinforcement.crossings", 64)),
    ),
    Published(
        "a patio of twenty by twenty feet takes twenty-five chairs",
        f"{CRSI}; 400 ft2 at 16 ft2 each",
        Known.MEMORY,
        (slab(20, 20, 5, reinforcement="bars"),),
        (says("Reinforcement.supports_all", 25),),
    ),
    Published(
        "a thousand pounds of bars take eight to fifteen hours",
        HANDBOOK,
        Known.MEMORY,
        (slab(19.5, 19.5, 5, reinforcement="bars", bar_size="#4", bar_spacing=12),),
        (between("PrepTask.hours", 0.008, 0.015, row=PLACE_BARS, over="BarMat.weight_all"),),
    ),
)

SHEETS = (
    Published(
        "two sheets lap half a foot and cover nineteen and a half feet",
        WRI,
        Known.MEMORY,
        (slab(19.5, 5, 4, reinforcement="mesh"),),
        (says("Reinforcement.sheets_all", 2),),
    ),
    Published(
        "a sheet more is bought where two are an inch too short",
        WRI,
        Known.MEMORY,
        (slab(19 + 7 / 12, 5, 4, reinforcement="mesh"),),
        (says("Reinforcement.sheets_all", 3),),
    ),
    Published(
        "a garage of twenty-four by twenty-four feet takes eighteen sheets",
        f"{WRI}: three in its length and six across",
        Known.CONSTRUCTED,
        (slab(24, 24, 5, reinforcement="mesh"),),
        (says("Reinforcement.sheets_all", 18), says("Reinforcement.mesh_area_all", 576)),
    ),
    Published(
        "a roll of two thousand square feet covers eighteen hundred with its laps",
        f"{E1643}; 10 % for laps and waste is common practice",
        Known.MEMORY,
        (slab(90, 20, 6, vapor_retarder="yes", reinforcement="none"),),
        (says("ReinforcementNeeds.vapor_rolls", 1), says("ReinforcementNeeds.vapor_area", 1980)),
        CompanyBook(packs=(("ReinforcementNeeds.vapor_price", 120, 2000),)),
    ),
)

DIG = (
    Published(
        "an apron that goes from six inches to four is dug as deep as one of five",
        "geometry: the volume of a wedge is that of its mean",
        Known.ARITHMETIC,
        (slab(12, 10, 6, other_thickness=4, base=4),),
        (says("Excavation.depth", 9), printed("Excavation.volume", "3.333")),
    ),
)

REINFORCEMENT = (*BARS, *SHEETS, *DIG)

REINFORCEMENT_USUAL = (
    *(
        Usual("BarSize.diameter", eighths / 8, eighths / 8, A615, Known.MEMORY, size)
        for size, eighths in zip(BAR.axis.words, (3, 4, 5), strict=True)
    ),
    *(
        Usual("BarSize.weight", pounds, pounds, A615, Known.MEMORY, size)
        for size, pounds in zip(BAR.axis.words, (0.376, 0.668, 1.043), strict=True)
    ),
    Usual("BarMat.lap_diameters", 30, 48, "common practice for small bars; drawings govern", Known.MEMORY),
    Usual(
        "SlabSides.edge_clearance", 3, 3, "ACI 318: 3 in of cover where concrete is cast against earth", Known.MEMORY
    ),
    Usual("Reinforcement.support_area", 9, 16, CRSI, Known.MEMORY),
    Usual("Reinforcement.sheet_lap", 0.5, 8 / 12, WRI, Known.MEMORY),
    Usual("ReinforcementNeeds.vapor_lap", 5, 15, f"{E1643}, with waste", Known.MEMORY),
)
