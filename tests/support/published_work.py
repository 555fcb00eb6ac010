"""What handbooks print of hours, gangs, forms and wash water. Old rates check the arithmetic; they are no default."""

from __future__ import annotations

from calc.trade.levels import BOARD, TASK
from published import CompanyBook, Known, Published, Usual, printed, says, slab, typed

METHODS_1908 = "Concrete Construction: Methods and Costs (1908)"
PLANT = "a handbook of estimating industrial process plants, p. 84"
PLACE, LOAD, DIG = (TASK.axis.words.index(word) for word in ("place concrete", "load by hand", "dig by hand"))
MIDDLE_BOARD = BOARD.axis.words.index("2x6")

GANGS = (
    Published(
        "sixteen men place 45 yards in ten hours",
        f"{METHODS_1908}: a hand gang of 16 at 4.5 yd3 an hour, which is 3.556 hours of a man for a yard",
        Known.SEEN,
        (
            slab(10, 4),
            typed("Ordering", rule="fixed", fixed=45, reason="as published"),
            typed("Access", method="chute", reason="as published"),
            typed("Crew", placing=16),
        ),
        (
            says("Pour.hours", 10),
            says("Task.hours", 160, row=PLACE),
            printed("Task.hours", "3.556", row=PLACE, over="Order.quantity"),
        ),
        CompanyBook(factors=(("PlacingRate.chute", "", 4.5),)),
    ),
    Published(
        "three people load a truck of sand in two hours and forty minutes",
        "estimating lecture text, chapter 6, example 1: 175 tons at 100 lb/ft3 by three people at 1.5 yd3 an hour; "
        "12 yards take 2.667 h of the three",
        Known.SEEN,
        (slab(100, 35, "1 ft"), typed("Job", soil="sand")),
        (
            printed("PrepWork.hand_loaded", "129.6"),
            says("Task.hours", 129.63 / 1.5, 0.01, row=LOAD),
            says("Task.hours", 2.667 * 3 / 12, 1e-4, row=LOAD, over="PrepWork.hand_loaded"),
        ),
        CompanyBook(
            factors=(
                ("Soil.density", "sand", 2700),
                ("Soil.swell", "sand", 0),
                ("TaskRates.usual", "load by hand", 2 / 3),
            )
        ),
    ),
    Published(
        "a hundred square feet of slab are dug by hand in three and a half hours",
        f"{PLANT}: 2.80 hours of a man for a yard dug by hand; 100 ft2 at 4 in are 1.235 yd3",
        Known.SEEN,
        (slab(10, 10),),
        (says("PrepWork.hand_excavated", 1.235, 0.0005), says("Task.hours", 2.8 * 1.235, 0.0015, row=DIG)),
        CompanyBook(factors=(("TaskRates.usual", "dig by hand", 2.8),)),
    ),
)

FORMS = (
    Published(
        "a walk of five inches is formed by a board that is not lower",
        "a city's code: five inch forms for a five inch walk, the form as deep as the slab",
        Known.SEEN,
        (slab(40, 4, 5), typed("Edge", kind="form", length=40)),
        (says("Board.length", 40, row=MIDDLE_BOARD),),
    ),
)

WORK = (*GANGS, *FORMS)

WORK_USUAL = (
    Usual(
        "TaskRates.usual",
        1.22,
        2.04,
        "ILO/ASIST Technical Brief 2 (1998): 5 m3 of soft soil to 3 m3 of hard a worker and day of 8 h",
        Known.MEMORY,
        "dig by hand",
    ),
    Usual(
        "TaskRates.usual",
        1,
        1.5,
        "Masonry Structures (1921): 1 to 1.5 h for a yard of sand, loaded by hand",
        Known.SEEN,
        "load by hand",
        departs="loading loose soil is faster",
    ),
    Usual(
        "TaskRates.usual",
        1 / 1.5 - 0.001,
        1 / 1.5 + 0.001,
        "a lecture on estimating hauling: three people load 4.5 loose yards an hour",
        Known.SEEN,
        "load by hand",
    ),
    Usual(
        "TaskRates.usual",
        0.1 * 3.5 / 12,
        0.1 * 8 / 12,
        f"{PLANT}: 0.10 h for a square foot of edge form, which is 3 1/2 to 8 in high",
        Known.SEEN,
        "set forms",
    ),
    Usual("Protection.gal_per_ft3", 7.475, 7.485, "NIST Handbook 44, appendix C: a gallon is 231 in3", Known.MEMORY),
)
