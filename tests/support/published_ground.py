"""Published figures: soil in the bank, loose and by weight, old concrete, plants, and loads."""

from __future__ import annotations

from calc.trade.levels import STREAM
from published import CompanyBook, Known, Published, Says, Typed, between, printed, says, slab, typed

ARMY = "US Army FM 5-434 (2000), table 1-1"
PLANNING = "construction planning textbook, table 4-1"
METHODS = "construction methods textbook, typical soil weight and volume change"
ESTIMATING = "estimating textbook, example 9-2"
LECTURE = "estimating lecture text, chapter 6, example 1"
CALRECYCLE = "CalRecycle construction and demolition field tool (about 2004)"

GREEN_PILE, SOIL_PILE, CONCRETE_PILE = (
    STREAM.axis.words.index(word) for word in ("green waste", "soil", "concrete debris")
)

POUNDS = 2000
"""Pounds in a ton: publications weigh in one, the program in the other."""


def ten_yards(soil: str, **facts: str) -> tuple[Typed, ...]:
    """A dig of ten yards in the bank: 270 ft2, a foot deep, without forms."""
    job = (slab(27, 10, 12), typed("Job", soil=soil))
    return (*job, typed("Site", **facts)) if facts else job


def swelling(soil: str, percent: float) -> CompanyBook:
    """A company book with another swell of one soil."""
    return CompanyBook(factors=(("Soil.swell", soil, percent),))


def loose_weight(pounds: float, off: float) -> Says:
    """A loose yard of soil weighs so many pounds, give or take a share of it."""
    return says("Spoil.tons", pounds / POUNDS, off * pounds / POUNDS, over="Spoil.loose")


SWELL = (
    Published(
        "ten bank yards of common earth are 12.5 loose",
        ARMY,
        Known.MEMORY,
        ten_yards("loam"),
        (says("Spoil.bank", 10), says("Spoil.loose", 12.5), printed("Spoil.bank", "0.80", over="Spoil.loose")),
    ),
    Published(
        "ten bank yards of sand are 11.1 loose",
        f"{ARMY}: bank to loose 1.11, loose to bank 0.90",
        Known.PARTLY,
        ten_yards("sand"),
        (says("Spoil.loose", 11.1), printed("Spoil.bank", "0.90", over="Spoil.loose")),
        swelling("sand", 11),
    ),
    Published(
        "ten bank yards of clay are 14.3 loose by the army table",
        f"{ARMY}: bank to loose 1.43, loose to bank 0.70",
        Known.MEMORY,
        ten_yards("clay"),
        (says("Spoil.loose", 14.3), printed("Spoil.bank", "0.70", over="Spoil.loose")),
        swelling("clay", 43),
    ),
    Published(
        "a mixture of sand and clay from its two weights",
        "published question and answer: 3,400 lb/yd3 in the bank and 2,700 loose; a ton is 0.59 yd3 and 0.74 yd3",
        Known.SEEN,
        ten_yards("clay"),
        (
            says("Spoil.loose", 1.2593, 5e-5, over="Spoil.bank"),
            printed("Spoil.bank", "0.588", over="Spoil.tons"),
            printed("Spoil.loose", "0.741", over="Spoil.tons"),
            loose_weight(2700, 1e-6),
        ),
        CompanyBook(factors=(("Soil.density", "clay", 3400), ("Soil.swell", "clay", 100 * (3400 / 2700 - 1)))),
    ),
    *(
        Published(
            f"the swell of {soil} lies in the published range",
            f"{PLANNING}, {named}: {low} to {high} %",
            Known.SEEN,
            ten_yards(soil),
            (between("Spoil.loose", 1 + low / 100, 1 + high / 100, over="Spoil.bank"),),
        )
        for soil, named, low, high in (
            ("topsoil", "topsoil", 10, 25),
            ("loam", "loamy soil", 10, 35),
            ("clay", "clay", 30, 60),
            ("sand", "clean sand", 5, 15),
            ("gravelly", "clean gravel", 5, 15),
        )
    ),
)

_PRINTED_SWELL = 0.01
"""The table rounds swell to whole percents, so its loose weights and its swell agree to one percent."""

TEXTBOOK = CompanyBook(
    factors=(
        ("Soil.density", "clay", 3000),
        ("Soil.swell", "clay", 30),
        ("Soil.density", "loam", 3100),
        ("Soil.swell", "loam", 25),
        ("Soil.density", "gravelly", 3200),
        ("Soil.swell", "gravelly", 12),
    )
)

WEIGHTS = (
    *(
        Published(
            f"ten bank yards of {named} weigh {bank * 10:,} lb and keep it when loose",
            f"{METHODS}: bank {bank:,}, loose {loose:,} lb/yd3, load factor {factor}",
            known,
            ten_yards(soil),
            (
                says("Spoil.tons", bank * 10 / POUNDS),
                says("Spoil.loose", 10 * bank / loose, 10 * bank / loose * _PRINTED_SWELL),
                loose_weight(loose, _PRINTED_SWELL),
                printed("Spoil.bank", factor, over="Spoil.loose"),
            ),
            TEXTBOOK,
        )
        for named, soil, bank, loose, factor, known in (
            ("clay", "clay", 3000, 2310, "0.77", Known.PARTLY),
            ("common earth", "loam", 3100, 2480, "0.80", Known.MEMORY),
            ("sand and gravel", "gravelly", 3200, 2860, "0.89", Known.MEMORY),
        )
    ),
    *(
        Published(
            f"a loose yard of {moisture} {soil} weighs near {pounds:,} lb",
            f"{CALRECYCLE}: {said}; piles are measured to 10 to 15 %",
            Known.SEEN,
            ten_yards(soil, moisture=moisture),
            (loose_weight(pounds, 0.15),),
        )
        for soil, moisture, pounds, said in (
            ("loam", "dry", 2100, "earth, loose and dry"),
            ("loam", "wet", 3000, "earth, excavated and wet"),
            ("sand", "dry", 2400, "sand, loose and dry"),
            ("sand", "wet", 3120, "sand, 30 % more when wet"),
            ("gravelly", "dry", 2600, "gravel, loose and dry"),
            ("gravelly", "wet", 3120, "gravel, 20 % more when wet"),
        )
    ),
)

OLD_CONCRETE = (
    Published(
        "a solid yard of concrete weighs 4,050 lb",
        "150 lb/ft3, ACI 318 and ASCE convention; 4,050 lb/yd3 on a construction and demolition conversion sheet",
        Known.PARTLY,
        (typed("Area", shape="area given", given_area=81, old_slab=81, old_slab_thickness=4),),
        (says("ConcreteDebris.solid", 1), says("ConcreteDebris.tons", 4050 / POUNDS)),
    ),
    Published(
        "broken concrete weighs near 2,400 lb a loose yard",
        f"{CALRECYCLE}: 2,400 lb/yd3 loose; piles are measured to 10 to 15 %",
        Known.SEEN,
        (slab(10, 5, 4, old_slab=50, old_slab_thickness=4),),
        (says("ConcreteDebris.tons", 2400 / POUNDS, 0.15 * 2400 / POUNDS, over="ConcreteDebris.loose"),),
    ),
    Published(
        "solid rock swells by 50 to 80 percent, and concrete with it",
        f"{PLANNING}, solid rock: 50 to 80 %",
        Known.SEEN,
        (slab(10, 5, 4, old_slab=50, old_slab_thickness=4),),
        (
            between("ConcreteDebris.loose", 1.5, 1.8, over="ConcreteDebris.solid"),
            between("ConcreteDebris.loose", 0.926, 1.111),
        ),
    ),
    Published(
        "stone of up to eight inches weighs 2,700 lb a loose yard",
        f"{CALRECYCLE}: 2,700 lb/yd3, which is 4,050 over 1.5",
        Known.SEEN,
        (slab(10, 5, 4, old_slab=50, old_slab_thickness=4),),
        (says("ConcreteDebris.tons", 2700 / POUNDS, over="ConcreteDebris.loose"),),
        CompanyBook(factors=(("ConcreteDebris.swell", "", 50),)),
    ),
)

LOADS = (
    Published(
        "a thousand bank yards of clay are 186 loads of seven yards",
        f"{ESTIMATING}: swell 30 %, 1,300 LCY, 185.7 loads",
        Known.SEEN,
        (slab(270, 100, "1 ft"), typed("Job", soil="clay")),
        (
            says("Spoil.bank", 1000),
            says("Spoil.loose", 1300),
            says("Hauled.by_volume", 186, row=SOIL_PILE),
            says("Hauled.loads", 186, row=SOIL_PILE),
        ),
        CompanyBook(factors=(("Soil.swell", "clay", 30),), vehicle=typed("Vehicle", struck_capacity=7)),
    ),
    Published(
        "175 tons of sand are eleven loads of twelve yards",
        f"{LECTURE}: 100 lb/ft3, so 129.6 yd3, printed as 130, and 11 trips",
        Known.SEEN,
        (slab(100, 35, "1 ft"), typed("Job", soil="sand")),
        (
            says("Spoil.tons", 175),
            says("Spoil.loose", 130, 0.5),
            printed("Spoil.loose", "129.6"),
            says("Hauled.loads", 11, row=SOIL_PILE),
        ),
        CompanyBook(
            factors=(("Soil.density", "sand", 2700), ("Soil.swell", "sand", 0)),
            vehicle=typed("Vehicle", struck_capacity=12),
        ),
    ),
    Published(
        "wet clay fills a five yard box by weight, not by room",
        "gross rating 9,990 lb less own weight 2,990 lb; five loose yards of clay at 2,310 lb would be 11,550 lb",
        Known.ARITHMETIC,
        ten_yards("clay"),
        (
            says("HaulVehicle.payload", 7000 / POUNDS),
            says("Hauled.fill_limit", 7000 / 2310, 7000 / 2310 * _PRINTED_SWELL, row=SOIL_PILE),
            says("Hauled.by_volume", 3, row=SOIL_PILE),
            says("Hauled.loads", 5, row=SOIL_PILE),
        ),
        CompanyBook(
            (*TEXTBOOK.factors, ("VehicleSpec.planned_share", "", 100)),
            typed("Vehicle", struck_capacity=5, payload="7000 lb"),
        ),
    ),
    Published(
        "loose brush weighs what two agencies say, 250 to 600 lb a yard",
        "US EPA (2016) and Oregon DEQ 250 lb/yd3; CalRecycle 600 lb/yd3",
        Known.SEEN,
        (slab(10, 4), typed("Plant", what="boxwood", quantity=6, width=3, depth=3, height=4)),
        (between("Pile.tons", 250 / POUNDS, 600 / POUNDS, row=GREEN_PILE, over="Pile.loose"),),
    ),
)

GROUND = (*SWELL, *WEIGHTS, *OLD_CONCRETE, *LOADS)
