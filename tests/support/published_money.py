"""What handbooks and standards print of price, and the limits behind cautions: how far they go, and not a hair further.

Old sums of money check the adding up; they are no default.
"""

from __future__ import annotations

from published import CompanyBook, Known, Published, Says, Typed, printed, says, slab, typed

HANDOUT = "contractor's handout on markup and margin: margin is m / (1 + m)"
REFERENCE = "an engineering reference site on markup and margin"
METHODS_1908 = "Concrete Construction: Methods and Costs (1908), what a job came to"
ADA, ADA_MEMORY, PROWAG = "2010 ADA Standards", "2010 ADA Standards", "PROWAG R302"
SILICA = "29 CFR 1926.1153 table 1"
PERMIT = 100_000
"""A cost in dollars beside which what a small slab costs is less than a printed digit."""

MARKUPS = ((15, "13.0"), (20, "16.7"), (25, "20.0"), (35, "25.9"), (40, "28.6"), (50, "33.3"), (100, "50.0"))
"""Markup and the margin that the handout prints beside it, in percent; 33.3 is printed as 33.0."""


def at_rates(**rates: float | str) -> tuple[Typed, ...]:
    """A job that costs a round sum, with these percents of its own; all others are zero."""
    none = {"margin": 0, "overhead": 0, "contingency": 0, "tax": 0, "permit": PERMIT}
    return slab(10, 4), typed("Terms", **none | rates)


PRICES = (
    *(
        Published(
            f"a markup of {markup} % is a margin of {margin} %",
            HANDOUT,
            Known.SEEN,
            at_rates(margin=100 * markup / (100 + markup)),
            (
                printed("BidPrice.margin", margin),
                says("BidPrice.unrounded", 1 + markup / 100, 1e-6, over="BidPrice.break_even"),
                says("BidPrice.markup", markup, 0.02),
            ),
        )
        for markup, margin in MARKUPS
    ),
    Published(
        "a markup of 30 % is a margin of 23.08 %, which the handout cuts to 23.0",
        HANDOUT,
        Known.SEEN,
        at_rates(margin=23.0769),
        (printed("BidPrice.margin", "23.08"), says("BidPrice.unrounded", 1.3, 1e-4, over="BidPrice.break_even")),
    ),
    Published(
        "a margin of 20 % is the cost times 1.25, and never times 1.20",
        f"{REFERENCE}: price is cost over one less the margin, 80 is sold for 100",
        Known.SEEN,
        at_rates(margin=20),
        (says("BidPrice.unrounded", 1.25, 1e-6, over="BidPrice.break_even"),),
    ),
    Published(
        "what costs 200,000 is sold for 250,000 at a margin of 20 %",
        f"{REFERENCE}: 200,000 at a markup of 25 %",
        Known.SEEN,
        at_rates(margin=20, permit=200_000),
        (says("BidPrice.unrounded", 250_000, 100), says("BidPrice.break_even", 200_000, 80)),
    ),
    Published(
        "ten percent and ten percent are 1.21, not 1.20",
        "arithmetic of overhead and profit in series, (1 + a)(1 + b)",
        Known.ARITHMETIC,
        at_rates(contingency=10, overhead=10),
        (says("BidPrice.break_even", 1.21, 1e-6, over="BidPrice.direct"),),
    ),
    *(
        Published(
            f"{first} percent and then {second} are 15.5, whichever goes first",
            "arithmetic of percents in series, as of series discounts: 10 % and 5 % are not 15 %",
            Known.ARITHMETIC,
            at_rates(contingency=first, overhead=second),
            (says("BidPrice.break_even", 1.155, 1e-6, over="BidPrice.direct"),),
        )
        for first, second in ((10, 5), (5, 10))
    ),
)

LAID_1908 = (862.67, 437.10, 205.33, 224.33, 71.00, 15.75, 35.00)
"""Materials, laying, lumber, forms, handling, barrows, superintendence, in dollars."""


def signed(*amounts: float) -> tuple[Typed, ...]:
    """A job with signed changes of these amounts."""
    return slab(10, 4), *(typed("Change", what="as published", quantity=1, rate=each, signed="yes") for each in amounts)


ROLL_UPS = (
    Published(
        "seven costs of a job in 1908 come to 1,851.18",
        METHODS_1908,
        Known.SEEN,
        signed(*LAID_1908),
        (says("Invoice.changes", 1851.18), says("ChangeAmount.amount", 862.67 / 1851.18, over="Invoice.changes")),
    ),
    Published(
        "with the bridge and the digging they come to 2,937.13",
        METHODS_1908,
        Known.SEEN,
        signed(*LAID_1908, 190.65, 895.30),
        (says("Invoice.changes", 2937.13),),
    ),
)


PLAIN = CompanyBook()


def limit(
    name: str,
    source: str,
    known: Known,
    jobs: tuple[Typed, ...],
    caution: str,
    warned: bool,
    company: CompanyBook = PLAIN,
) -> Published:
    """A job at a limit, or a hair past it, and whether the caution is earned."""
    return Published(name, source, known, jobs, (Says(f"{caution}_fires", warned, warned),), company)


def lying(**use: float | str) -> tuple[Typed, ...]:
    """A walk that lies so."""
    return (Typed("Area", (("length", 40), ("width", 5), *((f"AreaUse.{name}", each) for name, each in use.items()))),)


SLOPES = (
    ("a walk of 1 in 20 is a walk", ADA + " 403.3: at most 1:20", Known.SEEN, {"running_slope": "5%"},
     "running_slope", False),
    ("a walk of 5.01 % is a ramp", ADA + " 403.3: at most 1:20", Known.SEEN, {"running_slope": "5.01%"},
     "running_slope", True),
    ("a ramp of 1 in 12 is a ramp", ADA + " 405: at most 1:12", Known.MEMORY, {"running_slope": "8.33%"}, "ramp_slope",
     False),
    ("and so it is when it is typed as 1:12", ADA + " 405: 1:12", Known.MEMORY, {"running_slope": "1:12"}, "ramp_slope",
     False),
    ("8.34 % is no ramp any more", ADA + " 405: at most 1:12", Known.MEMORY, {"running_slope": "8.34%"}, "ramp_slope",
     True),
    ("a cross slope of 2.08 % is 1 in 48", ADA + " 403.3: 1:48", Known.SEEN, {"cross_slope": "2.08%"}, "cross_slope",
     False),
    ("a quarter inch in a foot is 1 in 48", "identity; a federal walk and a city's code", Known.SEEN,
     {"cross_slope": "1:48"}, "cross_slope", False),
    ("a cross slope of 2.1 % is over it", ADA + " 403.3; PROWAG lets it pass", Known.SEEN, {"cross_slope": "2.1%"},
     "cross_slope",
     True),
    ("2 percent, the older 1 in 50, is within 1 in 48", "ADAAG (1991)", Known.SEEN, {"cross_slope": "2%"},
     "cross_slope",
     False),
    ("a change in level of a quarter inch may stand", ADA + " 303.2", Known.SEEN, {"level_change": 0.25},
     "level_change",
     False),
    ("a hair more than a quarter is beveled", ADA + " 303.3", Known.SEEN, {"level_change": 0.26}, "level_change", True),
    ("half an inch may still be beveled", ADA + " 303.3", Known.SEEN, {"level_change": 0.5}, "high_level_change",
     False),
    ("a hair more than a half is a ramp", ADA + " 303.4", Known.PARTLY, {"level_change": 0.51}, "high_level_change",
     True),
    ("a walk is clear for 36 inches", ADA + " 403.5", Known.MEMORY, {"clear_width": 3}, "narrow_walk", False),
    ("and a tenth less is too narrow", ADA + " 403.5", Known.MEMORY, {"clear_width": 35.9 / 12}, "narrow_walk", True),
)  # fmt: skip

IN_PUBLIC = typed("Permissions", right_of_way="yes")

ACCESSIBLE = (
    *(
        limit(name, source, known, lying(**use), f"SurfaceCautions.{caution}", warned)
        for name, source, known, use, caution, warned in SLOPES
    ),
    limit("in a right of way it is clear for 48 inches", f"{PROWAG}: 48 in", Known.MEMORY,
          (*lying(clear_width=4), IN_PUBLIC), "SurfaceCautions.narrow_walk", False),
    limit("and there 47.9 are too narrow", f"{PROWAG}: 48 in", Known.MEMORY,
          (*lying(clear_width=47.9 / 12), IN_PUBLIC), "SurfaceCautions.narrow_walk", True),
)  # fmt: skip


def hours_of(task: str, for_one: float) -> CompanyBook:
    """A house whose task takes so many hours for one of what it counts."""
    return CompanyBook(factors=(("TaskRates.usual", task, for_one),))


A_YARD = (slab(9, 9, 4, old_slab=81, old_slab_thickness=4, base=4),)
"""An old slab of one solid yard, which is broken out."""

SHIFTS = (
    limit("four hours of a jackhammer outdoors ask no respirator", f"{SILICA}: jackhammers, at most 4 h: none",
          Known.MEMORY, A_YARD, "SiteCautions.respirator", False, hours_of("break out slab", 4)),
    limit("4.01 hours of it ask one", f"{SILICA}: jackhammers, more than 4 h: APF 10",
          Known.MEMORY, A_YARD, "SiteCautions.respirator", True, hours_of("break out slab", 4.01)),
    limit("ten hours of a drill with a shroud ask none", f"{SILICA}: handheld drills, any hours: none", Known.MEMORY,
          (slab(40, 4), typed("Edge", kind="form", length=40, spacing=12)), "SiteCautions.respirator", False,
          hours_of("drill dowels", 0.25)),
    limit("drilling is dust all the same", f"{SILICA}: a shroud and a dust collector, and a vacuum for the holes",
          Known.MEMORY, (slab(40, 4), typed("Edge", kind="form", length=40, spacing=24)), "SiteCautions.silica", True),
    limit("a day behind a saw with water on its blade asks none", f"{SILICA}: walk-behind saws outdoors: none",
          Known.MEMORY, (slab(80, 4), typed("Site", joint_method="saw-cut")), "SiteCautions.respirator", False,
          hours_of("saw-cut joints", 0.2)),
    limit("and it is dust all the same", f"{SILICA}: water fed to the blade", Known.MEMORY,
          (slab(80, 5), typed("Site", joint_method="saw-cut")), "SiteCautions.silica", True),
    limit("a tooled slab with no dowel makes no dust", f"{SILICA}: cutting, drilling, grinding, breaking", Known.MEMORY,
          (slab(80, 5),), "SiteCautions.silica", False),
)  # fmt: skip

MONEY = (*PRICES, *ROLL_UPS, *ACCESSIBLE, *SHIFTS)
