"""The people of the pour and their hours, by each placing method."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.pour import Crew
from calc.trade.levels import METHOD
from calc.trade.ordering.bags import Bags
from calc.trade.ordering.finish_window import FinishWindow
from calc.trade.ordering.methods import Method
from calc.trade.ordering.pour_people import Placed, pour_people

BY_METHOD = pour_people(
    "PourByMethod",
    "People on the pour, by placing method",
    METHOD,
    Placed(
        heads=when(Method.is_bags > 0, Bags.crew.count, Crew.placing.count),
        elapsed=Method.hours,
        window=when(Method.is_bags > 0, FinishWindow.without_admixtures, FinishWindow.on_site),
        task_hours=when(Method.is_bags > 0, Bags.task_hours, Crew.placing.count * Method.hours),
        by_bags=Method.is_bags,
    ),
)
"""What each method would take of the crew, with the order that it needs."""
