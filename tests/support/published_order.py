"""Published figures: the normal distribution, and the rules by which an uncertain order is found.

Every pour here is 864 square feet at 4 1/2 in, twelve yards, and the house takes no loss. Such a pour is off by one
yard where its mean depth is off by 3/8 in and nothing else is, so a figure for one spread is a figure in yards.
"""

from __future__ import annotations

from math import sqrt

from published import CompanyBook, Known, Published, fixed, printed, says, slab, typed

NORMAL = "NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1, area under the normal curve from 0 to z"
SIGMAS = "textbooks on process capability: what lies beyond so many standard deviations, on one side"
LOSS_TABLE = "inventory textbooks, table of the unit normal loss function"
STUDENT = "statistics textbooks: Student's t with v degrees of freedom has the variance v / (v - 2)"
SAMPLE = "statistics textbooks: 2 4 4 4 5 5 7 9 has the mean 5 and the sum of squares 32, by seven"

NEED = 12.0
POUR = slab(48, 18, 4.5)
EXACT = (
    ("Risk.waste", "", 0.0),
    ("VolumeUncertainty.string_line_error", "", 0.0),
    ("VolumeUncertainty.area_error", "", 0.0),
    ("VolumeUncertainty.yield_error", "", 0.0),
)
"""A house that loses nothing, and is off by the depths only."""


def off_by(yards: float) -> CompanyBook:
    """A company book by which the twelve yards are off by so many."""
    return CompanyBook(factors=(*EXACT, ("DepthUncertainty.default_std_dev", "", 0.375 * yards)))


def lacking(z: float, lost: float) -> Published:
    """A yard above the need is ``z`` spreads when a spread is 1 / z yards; ``lost`` of a spread is lacking then."""
    above, spread = (1.0, 1 / z) if z else (0.0, 1.0)
    return Published(
        f"at {z:.2f} spreads above the need {lost:.4f} of one are lacking",
        LOSS_TABLE,
        Known.MEMORY,
        fixed(NEED + above, POUR),
        (says("Order.surplus", above + lost * spread, 0.00005 * spread * (1 + 1e-9)),),
        off_by(spread),
    )


CHANCES = (
    *(
        Published(
            f"{z} spreads above the need an order is short {tail} of the time",
            f"{NORMAL}: a half less what it prints",
            Known.MEMORY,
            fixed(NEED + 1, POUR),
            (printed("Order.z_score", z), printed("Order.risk", tail)),
            off_by(1 / float(z)),
        )
        for z, tail in (
            *(("0.50", "0.30854"), ("1.00", "0.15866"), ("1.28", "0.10027"), ("1.64", "0.05050"), ("1.65", "0.04947")),
            *(("1.96", "0.02500"), ("2.33", "0.00990"), ("2.58", "0.00494"), ("3.00", "0.00135")),
        )
    ),
    *(
        Published(
            f"{z} spreads below the need an order is short {share} of the time",
            f"{NORMAL}: a half more than it prints",
            Known.MEMORY,
            fixed(NEED - 1, POUR),
            (printed("Order.z_score", f"-{z}"), printed("Order.risk", share)),
            off_by(1 / float(z)),
        )
        for z, share in (("1.00", "0.84134"), ("1.28", "0.89973"), ("2.00", "0.97725"))
    ),
    *(
        Published(
            f"{sigmas} spreads above the need the chance still has its digits",
            SIGMAS,
            Known.MEMORY,
            fixed(NEED + 1, POUR),
            (says("Order.risk", chance, chance * 1e-3),),
            off_by(1 / sigmas),
        )
        for sigmas, chance in ((6, 9.866e-10), (7, 1.280e-12), (8, 6.221e-16))
    ),
)

LACKING = tuple(
    lacking(z, lost) for z, lost in ((0.0, 0.3989), (0.5, 0.1978), (1.0, 0.0833), (1.5, 0.0293), (2.0, 0.0085))
)

DEPTHS = (
    *(
        Published(
            f"{points} depths widen the spread of their mean as {points - 1} degrees of freedom do",
            STUDENT,
            Known.MEMORY,
            (POUR, *(typed("CrossSection", station=float(foot), depth=4.5) for foot in range(points))),
            (says("DepthUncertainty.small_sample_factor", sqrt(variance)),),
        )
        for points, variance in ((4, 3.0), (5, 2.0), (7, 1.5), (13, 1.2))
    ),
    Published(
        "eight depths have the spread of a sample",
        SAMPLE,
        Known.MEMORY,
        (
            POUR,
            *(
                typed("CrossSection", station=float(foot), depth=depth)
                for foot, depth in enumerate((2, 4, 4, 4, 5, 5, 7, 9))
            ),
        ),
        (
            says("PointMean.mean", 5.0),
            printed("DepthUncertainty.sample_std_dev", "2.1381"),
            says("DepthUncertainty.sample_std_dev", sqrt(32 / 7)),
            says("DepthUncertainty.mean_std_dev", sqrt(32 / 7) * sqrt(7 / 5) / sqrt(8)),
        ),
    ),
)

ORDER = (*CHANCES, *LACKING, *DEPTHS)
