"""The sheet Order and placing: what is ordered, how it comes, and what goes with it."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import POURING, TRUCK
from calc.trade.materials.base_rock import BaseNeeds
from calc.trade.materials.fiber import FiberTotal, TruckFiber
from calc.trade.ordering.finish_window import FinishWindow
from calc.trade.ordering.method_choice import Placing, PlacingWords, RunnerUpMethod
from calc.trade.ordering.order import Order, TruckLoad
from calc.trade.ordering.order_candidates import BestOrder, Shortage
from calc.trade.ordering.plant import ChosenMix
from calc.trade.ordering.pour import Pour, TruckTime
from calc.trade.work.protection import Protection

ORDER_AND_PLACING = story.StorySheet(
    "Order and placing",
    "Order",
    "what is ordered, how it comes, what goes with it",
    "Order workings",
    (
        story.Lines(
            "Mix and requirement",
            (ChosenMix.psi, ChosenMix.cost, Order.required),
            strong=(Order.required,),
        ),
        story.Lines(
            "How much to order",
            (Order.quantity, Order.overage, Order.z_score, Order.risk, Order.surplus, Order.trucks),
            note="order sizes from the least up in plant increments; the lowest expected cost wins",
            strong=(Order.quantity,),
        ),
        story.Table(
            "The cheapest order, by way of discharge",
            POURING,
            "Discharge",
            (
                story.Step(Shortage.pump_residue, "Pump residue"),
                story.Step(Shortage.required, "Required"),
                story.Step(Shortage.shortage_cost, "Running short"),
                story.Step(Shortage.surplus_cost, "Surplus, a yard"),
                story.Step(BestOrder.order, "Order"),
                story.Step(BestOrder.expected_cost, "Expected cost"),
            ),
        ),
        story.Table(
            "Trucks",
            TRUCK,
            "Truck",
            (
                story.Step(TruckLoad.yards, "Load"),
                story.Step(TruckTime.unloading, "Unload"),
                story.Step(TruckTime.allowance, "Free time"),
                story.Step(TruckTime.standby, "Standby"),
                story.Step(TruckTime.fee, "Short-load fee"),
                story.Step(TruckFiber.bags, "Fiber bags"),
            ),
            total="All trucks",
            note="the order split as evenly as the plant's increment allows; spare rows fill when the order grows",
        ),
        story.Pair(
            "How it is placed: the choice and the runner-up",
            (
                story.Beside("Placing method", Placing.name),
                story.Beside("Placing rate", Pour.rate),
                story.Beside("Placing time", Pour.hours),
                story.Beside("Runner-up", PlacingWords.runner_up, None, RunnerUpMethod.costs_more, strong=True),
            ),
            note="every method is compared on Order workings by all that it brings",
        ),
        story.Lines(
            "Finishing window",
            (FinishWindow.on_site, FinishWindow.finish_hours),
            note="the slab has to be placed and finished before the concrete is too stiff",
        ),
        story.Lines(
            "What goes with it",
            (
                FiberTotal.weight,
                FiberTotal.bags,
                BaseNeeds.tons,
                BaseNeeds.buy,
                Protection.water,
                Protection.washouts,
            ),
            note="every product that is bought has its line on Costs",
        ),
    ),
)
