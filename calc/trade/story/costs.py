"""The sheet Costs: the price, the visits, a row a cost, and labor."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import GROUP, TOOL, VISIT
from calc.trade.money.cost_list import CostRow, TaskRow
from calc.trade.money.costs import CostTable
from calc.trade.money.price import BidPrice, PriceParts, Subtotal
from calc.trade.prices.wage_rates import CrewRate
from calc.trade.work.equipment import RentalChoice, Tool
from calc.trade.work.labor import Labor, Task
from calc.trade.work.paid_time import PaidTime, Visit

COSTS = story.StorySheet(
    "Costs",
    "Costs",
    "the price, the visits, one row a cost, labor",
    "Cost workings",
    (
        story.Lines(
            "From cost to price",
            (
                BidPrice.tax,
                BidPrice.direct,
                BidPrice.contingency,
                BidPrice.overhead,
                BidPrice.break_even,
                BidPrice.unrounded,
                BidPrice.price,
                BidPrice.per_ft2,
            ),
            note="every amount is rounded to the cent where it stands; totals add rounded amounts",
            strong=(BidPrice.direct, BidPrice.break_even, BidPrice.price),
        ),
        story.Table(
            "By group",
            GROUP,
            "Group",
            (story.Step(Subtotal.amount, "Amount"),),
            total="All groups",
        ),
        story.Table(
            "Visits",
            VISIT,
            "Visit",
            (
                story.Step(Visit.visits, "Visits"),
                story.Step(Visit.people, "People"),
                story.Step(Visit.time_on_site, "On site, longest"),
                story.Step(Visit.laborer_hours, "Paid, laborer"),
                story.Step(Visit.finisher_hours, "Paid, finisher"),
                story.Step(Visit.clock_hours, "Paid hours"),
                story.Step(Visit.task_hours, "On tasks"),
                story.Step(Visit.beyond, "Beyond tasks"),
                story.Step(Visit.long_laborer, "Long day, laborer"),
                story.Step(Visit.long_finisher, "Long day, finisher"),
            ),
            total="All visits",
            note="who comes, and for how long they are paid",
        ),
        story.Lines("Paid time", (PaidTime.clock_hours, PaidTime.share, PaidTime.cost), strong=(PaidTime.clock_hours,)),
        story.Found(
            "Cost lines",
            CostRow.row,
            "Cost",
            (
                story.Step(CostTable.quantity, "Quantity", like="yd3"),
                story.Step(CostTable.rate, "Rate", like="yd3"),
                story.Step(CostTable.amount, "Amount"),
                story.Step(CostTable.taxed, "Taxed"),
                story.Step(CostTable.group, "Group"),
                story.Step(CostTable.account, "Account"),
                story.Step(CostTable.unpriced, "No price"),
            ),
            total="All but labor",
            note="only those with an amount, by their running number; every cost line stands on Cost workings",
        ),
        story.Found(
            "Labor by task",
            TaskRow.row,
            "Task",
            (
                story.Step(Task.quantity, "Quantity", like="yd3"),
                story.Step(Task.quantity_unit, "Unit"),
                story.Step(Task.hours, "Hours"),
                story.Step(Task.low_hours, "Low"),
                story.Step(Task.high_hours, "High"),
                story.Step(Task.rate, "Rate"),
                story.Step(Task.cost, "Amount"),
            ),
            total="All tasks",
            note="quantity times hours for one, not below the least time of a task",
        ),
        story.Table(
            "Rentals",
            TOOL,
            "Machine",
            (
                story.Step(Tool.hours, "Hours"),
                story.Step(Tool.days, "Days"),
                story.Step(RentalChoice.way, "Rented by"),
                story.Step(RentalChoice.count, "Periods"),
                story.Step(RentalChoice.price_each, "Price"),
                story.Step(RentalChoice.cost, "Cost"),
            ),
            total="All machines",
        ),
        story.Lines(
            "Labor and crew",
            (Labor.hours_per_ft2, CrewRate.composite),
        ),
        story.Lines(
            "How it falls due",
            (PriceParts.deposit, PriceParts.on_pour_day, PriceParts.on_completion, PriceParts.retainage),
        ),
    ),
)
