"""Hours of placing and mixing, as ordered."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.pour import Crew
from calc.trade.ordering.bags import Bags
from calc.trade.ordering.order import Order
from calc.trade.ordering.pour import Pour


class Work(Section, title="Placing and mixing", sheet="Costs"):
    """The mixing crew also places the bagged concrete."""

    placing_hours = line(
        "Placing crew hours",
        "h",
        when(Order.bags > 0, 0, Pour.hours * Crew.placing.count),
        source="placing time times placing crew",
    )
    mix_time = line("Mixing time, as ordered", "h", when(Order.bags > 0, Pour.hours, 0), source="elapsed, with bags")
    mixing_hours = line(
        "Mixing crew hours", "h", when(Order.bags > 0, Bags.task_hours, 0), source="mixing labor hours, with bags"
    )
