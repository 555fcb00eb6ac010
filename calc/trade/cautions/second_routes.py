"""Second routes: what the checks hold a number against, worked out from what is bought and paid, step by step."""

from __future__ import annotations

from dataclasses import dataclass

from calc.declare import *
from calc.trade.hauling.choice import Choice
from calc.trade.levels import AREA, FOOTING
from calc.trade.materials.base_rock import BaseHaul, BaseNeeds
from calc.trade.materials.fiber import FiberTotal
from calc.trade.materials.fiber_dose import FiberDose
from calc.trade.materials.liquids import BONDING_PACKS, CURING_PACKS, SEALER_PACKS, Bonding, Curing, Sealer
from calc.trade.materials.packs import Packs
from calc.trade.money.cost_rows import PLANT_AND_PUMP
from calc.trade.money.costs import COST, CostTable
from calc.trade.ordering.order import Order
from calc.trade.ordering.plant_fees import PlantFees
from calc.trade.ordering.pour import PourCost
from calc.trade.takeoff.dig import Excavation
from calc.trade.work.labor import Task
from calc.trade.work.paid_time import PREP, SEAL, STRIP, Visit
from calc.trade.work.pour_visit import POUR

_SHEET = "Order and placing"
_HALF = len(PLANT_AND_PUMP) // 2
"""A sum of all of them would be no formula that a person can read."""

ONE_PACK, ONE_BAG = exact(1, "pack"), exact(1, "bag") * FiberDose.bag


@dataclass(frozen=True)
class PailsBought:
    """What the pails of a liquid hold, held against the need."""

    section: type[Section]
    held: Line
    within: Line


def pails_bought(
    called: str, liquid: str, packs: Packs, need: Line, small: Price, large: Price, needs: Level = JOB
) -> PailsBought:
    """The pails to buy as they stand on the invoice, whatever way led to them."""

    class Bought(Section, title=f"Pails bought, {liquid}", sheet=_SHEET, needs=needs, called=f"{called}Bought"):
        """What they hold covers the need, and one pail less would not."""

        in_small = line("In small pails", "gal", packs.small * if_given(small.size, 0), source="pails times their size")
        in_large = line("In 5-gal pails", "gal", packs.large * if_given(large.size, 0), source="pails times their size")
        held = line("Volume in the pails", "gal", in_small + in_large, source="sum of both sizes")
        least_pail = line(
            "Least pail bought",
            "gal",
            ONE_PACK * when(packs.small > 0, in_small / packs.small, when(packs.large > 0, in_large / packs.large, 0)),
            source="a small pail, or a 5-gal pail when no small one is bought",
        )
        within = line(
            "Volume in the pails, neither too few nor too many",
            "gal",
            when(
                both(held > 0, held - least_pail >= need),
                held - least_pail,
                when(packs.can_win > 0, largest(held, need), held),
            ),
            source="at least the need; one pail less when the others hold enough",
        )

    return PailsBought(Bought, Bought.held, Bought.within)


CURING_BOUGHT = pails_bought("Curing", "curing compound", CURING_PACKS, Curing.need, Curing.small, Curing.large)
BONDING_BOUGHT = pails_bought(
    "Bonding", "bonding agent", BONDING_PACKS, Bonding.need, Bonding.small, Bonding.large, needs=FOOTING
)
SEALER_BOUGHT = pails_bought("Sealing", "sealer", SEALER_PACKS, Sealer.need, Sealer.small, Sealer.large)


class FiberBought(Section, title="Fiber bought", sheet=_SHEET):
    """Bags are whole for each truck, so each may leave a part of a bag."""

    over = line(
        "Fiber over the dose",
        "lb",
        FiberTotal.bags * FiberDose.bag
        - when(PlantFees.puts_in_fiber > 0, Order.placed - Order.quantity, Order.placed) * FiberDose.per_yard,
        source="weight of the bags, less the dose of all that is ordered or mixed, but for fiber put in at the plant",
    )
    most_over = line(
        "Fiber over the dose, at most",
        "lb",
        (when(PlantFees.puts_in_fiber > 0, 0, Order.trucks.count) + when(Order.bags > 0, 1, 0)) * ONE_BAG,
        source="a bag for each truck that takes bags; all that is mixed on the site counts as one",
    )
    within = line(
        "Fiber over the dose, neither short nor a bag too many",
        "lb",
        when(FiberTotal.bags.is_overridden, over, largest(0, smallest(over, most_over))),
        source="from 0 to the most; as it is where the bags are overridden",
    )


class DugOut(Section, title="Dug or broken out", each=AREA, sheet="Dig and haul"):
    """Old concrete that is thicker than its hole stands above the ground, and is broken out all the same."""

    volume = line(
        "Hole, or the old concrete if that is more",
        "yd3",
        largest(Excavation.volume, Excavation.old_concrete),
        source="the greater of the two, area by area",
        adds=True,
    )


class RockBrought(Section, title="Base rock brought", sheet=_SHEET):
    """Delivered in one load, or fetched by the trip."""

    weight = line(
        "Base rock brought, at most",
        "ton",
        when(BaseHaul.delivered > 0, BaseNeeds.buy, BaseHaul.trips.count * BaseHaul.payload),
        source="as delivered, or trips times payload",
    )
    one_less = line(
        "Base rock brought in one trip less",
        "ton",
        (BaseHaul.trips.count - 1) * BaseHaul.payload,
        source="trips less one, times payload",
    )
    within = line(
        "Base rock brought, neither too little nor too much",
        "ton",
        when(
            both(BaseHaul.trips.count > 0, one_less >= BaseNeeds.buy),
            one_less,
            largest(weight, largest(BaseNeeds.buy, BaseNeeds.tons)),
        ),
        source="at least what is needed and bought; one trip less when the others bring enough",
    )


class CrewTime(Section, title="Paid time by what it is paid for", sheet="Costs"):
    """Tasks, own driving and sorting, and time beyond the tasks."""

    on_tasks = line(
        "Hours of tasks, driving and sorting",
        "h",
        total(Task.composite_hours)
        + total(Task.laborer_hours)
        + total(Task.finisher_hours)
        + Choice.own_hours
        + Choice.sorting_hours
        + BaseHaul.hours,
        source="tasks by their rate, plus own drivers and sorting",
    )
    beyond = line(
        "Hours paid beyond them",
        "h",
        look_up(Visit.beyond, PREP)
        + POUR.beyond_laborer
        + POUR.beyond_finisher
        + look_up(Visit.beyond, STRIP)
        + look_up(Visit.beyond, SEAL),
        source="sum of the rows of Costs",
    )


def cost_of(rows: tuple[Cost, ...]) -> Expr:
    """The amount of some rows of the table of costs."""
    first, *rest = (at(CostTable.amount, row_called(COST, row.label)) for row in rows)
    return sum(rest, start=first)


class PlantInvoice(Section, title="Invoice of plant and pump", sheet="Costs"):
    """What the plant and the pump charge, from the way of placing and from the rows of costs."""

    charged = line(
        "Plant and pump, by placing",
        "$",
        PourCost.concrete
        + PourCost.fees
        + PourCost.delivery
        + PourCost.standby
        + when(PourCost.yards_pumped > 0, PourCost.pump, 0),
        source="sum of the charges of the way that is taken",
    )
    first_in_costs = line(
        "Plant and pump, first half of their cost rows",
        "$",
        cost_of(PLANT_AND_PUMP[:_HALF]),
        source="sum of the rows",
        words="Total of Amount for the mix, what is put into it, short loads and delivery",
        words_because="it names every row",
    )
    in_costs = line(
        "Plant and pump, by cost row",
        "$",
        first_in_costs + cost_of(PLANT_AND_PUMP[_HALF:]),
        source="the first half of their rows of costs and the rest",
        words="Plant and pump, first half of their cost rows + total of Amount for the other fees of the plant, "
        "truck standby and the pump",
        words_because="it names every row",
    )
