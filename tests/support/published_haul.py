"""Published figures: the cycle of a truck, the hours of a fleet, and what a truck may carry by law."""

from __future__ import annotations

from calc.trade.levels import HAULED
from published import CompanyBook, Known, Published, Typed, between, printed, says, slab, typed
from published_ground import LECTURE, POUNDS

MAN_HOURS = "a man-hour manual for piping, p. 194, hours of a driver for 100 yd3 with a 3 yd3 truck"
CLASSES = "FHWA classes by gross weight, 49 CFR 565"
BRIDGE = "23 CFR 658.17, 500 (L N / (N - 1) + 12 N + 36) lb for N axles over L feet, to the next 500"
MIXED = HAULED.axis.words.index("mixed")


def truck(room: float, payload: float | str) -> Typed:
    """A hired truck: with its driver, so that wages do not matter."""
    return typed("Vehicle", struck_capacity=room, payload=payload, hourly=90, hired="yes")


def dump(minutes: float, dwell: float) -> Typed:
    """A place that takes everything: minutes one way, and minutes in which the truck stands."""
    return typed("Disposal", kind="mixed", per_ton=1, minutes=minutes, miles=0, turnaround=dwell)


FULL = ("VehicleSpec.planned_share", "", 100.0)
"""Loads are planned to the whole payload, as the source counts them."""


def of_a_yard(pounds: float) -> tuple[tuple[str, str, float], ...]:
    """Sand that weighs so much in the bank and does not swell."""
    return ("Soil.density", "sand", pounds), ("Soil.swell", "sand", 0)


CYCLES = (
    Published(
        "a truck that three people load by hand is back after 3.125 hours",
        f"{LECTURE}: 12 yd3 at 4.5 yd3/h are 2.667 h; 7 miles out at 30 and back at 40 mph; 3 min to dump; 3.84 yd3/h. "
        "The truck stands while it is loaded and dumped, and half of both ways is one way",
        Known.SEEN,
        (slab(100, 35, "1 ft"), typed("Job", soil="sand")),
        (
            says("Hauled.round_trip", 2 + 2 / 3 + 7 / 30 + 7 / 40 + 3 / 60, row=MIXED),
            printed("Hauled.round_trip", "3.125", row=MIXED),
            printed("HaulVehicle.heaped_capacity", "3.84", over="SiteSpec.round_trip"),
            says("Hauled.loads", 11, row=MIXED),
            # eleven whole trips, where the lecture's 33.8 h are of 10.8
            says("Choice.hours", 33.8 * 11 / 10.8, 0.06),
        ),
        CompanyBook(of_a_yard(2700), truck(12, 20), site=dump((7 / 30 + 7 / 40) * 30, 160 + 3)),
    ),
    Published(
        "twenty loads of 0.6444 hours are 13 hours of a truck",
        "the same lecture, on handling: 2,000 a load, 9,000 an hour each to load and to unload, a round of 4 miles at "
        "20 mph, 40,000 in all; 1.55 trips an hour; three trucks for 4.44 h are 13.32 h, idle minutes among them",
        Known.SEEN,
        (slab(54, 10, "1 ft"), typed("Job", soil="sand")),
        (
            printed("Hauled.round_trip", "0.6444", row=MIXED),
            says("Hauled.loads", 20, row=MIXED),
            says("Choice.loads", 1.55, 0.005, over="Choice.hours"),
            between("Choice.hours", 20 * 0.6444, 13.32),
        ),
        CompanyBook((*of_a_yard(2000), FULL), truck(20, "2000 lb"), site=dump(6, 2 * 60 * 2000 / 9000)),
    ),
    *(
        Published(
            f"a hundred yards go {miles} mile{'s' if miles > 1 else ''} in {hours} hours of a truck of three yards",
            f"{MAN_HOURS}, at 10 mph; whole loads are 34 where it counts 33.3",
            Known.SEEN,
            (slab(54, 40, "1 ft"),),
            (
                says("Hauled.loose", 100, row=MIXED),
                says("Hauled.by_volume", 34, row=MIXED),
                says("Choice.hours", hours * 34 / (100 / 3), 0.03 * hours),
            ),
            CompanyBook(vehicle=truck(3, 4), site=dump(6 * miles, 15)),
        )
        for miles, hours in ((1, 15.0), (2, 21.8))
    ),
)

BY_LAW = (
    *(
        Published(
            f"a truck on {axles} axles over {feet} ft may weigh {gross:,} lb",
            f"{BRIDGE}; its own weight is ours, half of it",
            Known.CONSTRUCTED,
            (slab(100, 35, "1 ft"), typed("Job", soil="sand")),
            (
                says(
                    "HaulVehicle.payload", 250 * (feet * axles / (axles - 1) + 12 * axles + 36) / POUNDS, 125 / POUNDS
                ),
                says("Hauled.by_weight", loads, row=MIXED),
            ),
            CompanyBook((*of_a_yard(2700), FULL), truck(40, f"{gross / 2:g} lb"), site=dump(10, 10)),
        )
        # 175 tons in loads of 12 3/4 and of 20 tons
        for axles, feet, gross, loads in ((3, 20, 51_000, 14), (5, 51, 80_000, 9))
    ),
    *(
        Published(
            f"the heaviest truck of class {number}, {gross:,} lb, takes four bank yards of earth in {loads}",
            f"{CLASSES}; its own weight is ours, half of it",
            Known.CONSTRUCTED,
            (slab(27, 12, 4),),
            (says("HaulVehicle.payload", gross / 2 / POUNDS), says("Hauled.by_weight", loads, row=MIXED)),
            CompanyBook((FULL,), vehicle=truck(8, f"{gross / 2:g} lb"), site=dump(10, 10)),
        )
        # four bank yards of loam are 11,600 lb
        for number, gross, loads in ((1, 6_000, 4), (2, 10_000, 3), (3, 14_000, 2), (6, 26_000, 1))
    ),
)

HAUL = (*CYCLES, *BY_LAW)
