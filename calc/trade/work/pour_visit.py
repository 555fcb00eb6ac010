"""The pour visit of the order as it stands: its people, their hours, and whether they finish in time."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.pour import Crew
from calc.trade.ordering.bags import Bags
from calc.trade.ordering.finish_window import FinishWindow
from calc.trade.ordering.order import Balance, Order, TruckLoad
from calc.trade.ordering.pour import Pour
from calc.trade.ordering.pour_people import Placed, pour_people
from calc.trade.work.pour_work import CURING, PourHours
from calc.trade.work.tasks import Work
from calc.trade.work.visit_rules import VisitRules

_SHEET = "Order and placing"

POUR = pour_people(
    "PourVisit",
    "Pour visit",
    JOB,
    Placed(
        heads=when(Order.bags > 0, Bags.crew.count, Crew.placing.count),
        elapsed=Pour.hours,
        window=when(Order.bags > 0, FinishWindow.without_admixtures, FinishWindow.on_site),
        task_hours=Work.placing_hours + Work.mixing_hours,
        by_bags=when(Order.bags > 0, 1, 0),
    ),
)
"""The lines of the pour visit, whose ids begin with PourVisit."""


class FinishersNeeded(Section, title="Finishers needed", sheet=_SHEET):
    """As many as end in the day, and finish the last load in its window. They may be more than the crew."""

    last_share = line(
        "Share of the last load",
        "",
        when(Order.trucks > 0, at(TruckLoad.yards, Balance.last_truck) / Order.quantity, 1),
        source="load of the last truck over the order; 1 for bags",
    )
    last_load_time = line(
        "Place and finish the last load",
        "h",
        last_share * (POUR.elapsed + PourHours.finishing / POUR.finishers),
        source="its share of elapsed placing, and of finishing and tooling over the finishers",
    )
    placing_room = line(
        "Time left in the day after placing", "h", VisitRules.day - POUR.elapsed, source="working day less placing"
    )
    curing_room = line(
        "Time left in the day after the finishing window",
        "h",
        VisitRules.day - POUR.window,
        source="working day less finishing window on site",
    )
    last_room = line(
        "Finishing time for the whole pour, at the last load's pace",
        "h",
        POUR.window / last_share - POUR.elapsed,
        source="finishing window over the last load's share, less placing",
    )
    possible = line(
        "Any number of finishers is enough",
        "",
        when(both(placing_room > 0, curing_room > 0, last_room > 0), 1, 0),
        source="0 if the day or the window is over before they begin",
    )
    for_day = line(
        "People needed to end in the day",
        "",
        when(
            both(placing_room > 0, curing_room > 0, last_room > 0),
            largest(round_up(PourHours.shared / placing_room), round_up(CURING / curing_room)),
            0,
        ),
        source="shared hours and curing over the time left, rounded up",
    )
    for_last = line(
        "Finishers needed for the last load",
        "",
        when(possible > 0, round_up(PourHours.finishing / last_room), 0),
        source="finishing and tooling hours over the time for them, rounded up",
    )
    count = line(
        "Finishers needed",
        "",
        when(possible > 0, largest(1, for_day - POUR.heads, for_last), 0),
        source="the least number that passes both; 0 if none does",
    )
    day_over_by = line(
        "Finishers on site beyond the day",
        "h",
        largest(0, POUR.finishing_ends - VisitRules.day),
        source="finisher on site less working day; sawing is not counted",
    )
    window_over_by = line(
        "Last load finished after its window by",
        "h",
        largest(0, last_load_time - POUR.window),
        source="place and finish the last load, less finishing window on site",
    )
    visit_over_by = line(
        "Pour visit beyond its longest by",
        "h",
        largest(0, POUR.longest + VisitRules.fixed_hours - VisitRules.pour_stop),
        source="longest person on site with fixed hours, less the longest pour visit",
    )
