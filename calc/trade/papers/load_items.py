"""What a job may have loaded, each item with the quantity that it takes: materials, machines, tools, protection.

An item that is delivered, or that no task of the job uses, has a quantity of 0 and stays off the load list.
"""

from __future__ import annotations

from dataclasses import dataclass

from calc.declare import *
from calc.trade.cautions.site import DustHours
from calc.trade.hauling.loads import Hauled
from calc.trade.inputs.placing import Access
from calc.trade.inputs.pour import Crew
from calc.trade.inputs.site import Permissions
from calc.trade.inputs.work import OnSite
from calc.trade.levels import BOARD, TOOL
from calc.trade.materials.base_rock import BaseHaul, BaseNeeds
from calc.trade.materials.fiber import FiberTotal
from calc.trade.materials.liquids import BONDING_PACKS, CURING_PACKS, SEALER_PACKS
from calc.trade.ordering.order import Order
from calc.trade.ordering.pour import Pour
from calc.trade.papers.pour_text import BoardText
from calc.trade.takeoff.bond_breaker import BondBreaker
from calc.trade.takeoff.dowels import CuttingList, DowelNeeds
from calc.trade.takeoff.forms import FormNeeds, Stakes
from calc.trade.takeoff.geometry import EdgeTakeoff
from calc.trade.takeoff.joints import JointNeeds
from calc.trade.takeoff.reinforcement import BarMat, Reinforcement, ReinforcementNeeds
from calc.trade.work.equipment import Tool
from calc.trade.work.labor import Task
from calc.trade.work.protection import BARRICADE_DAYS, Protection


@dataclass(frozen=True)
class Item:
    """Something to load: what for, its name, its unit, how much. A machine has its row of the rental equipment."""

    use: str
    name: str
    unit: str
    quantity: Expr
    machine: str = ""

    @property
    def bare(self) -> Expr:
        """The quantity in whole units, rounded up, without its unit, which stands beside it."""
        return correlation("", round_up, self.quantity, source="a list: its unit stands beside it")


def _hours(task: str, *others: str) -> Expr:
    """The hours of some tasks together."""
    together: Expr = look_up(Task.hours, task)
    for other in others:
        together = together + look_up(Task.hours, other)
    return together


def _where(needed: Expr, quantity: Expr | float = 1) -> Expr:
    """A quantity where it is needed."""
    return when(needed, quantity, 0)


def _machine(name: str) -> Item:
    """A machine of the rental equipment, one of it where it has hours."""
    return Item("Machines", name, "each", _where(look_up(Tool.hours, name) > 0), machine=name)


_ONE = exact(1)
_HEADS = OnSite.crew.count
_BY_HAND = _hours("dig by hand", "load by hand", "place base rock")
_LOUD = (
    _hours("demolition saw cut", "break out slab", "chip footings", "drill dowels", "saw-cut joints")
    + look_up(Tool.hours, "plate compactor")
    + look_up(Tool.hours, "mixer")
)
_BARROWED = either(is_word(Pour.method, "wheelbarrow"), _BY_HAND > 0)
_DOWELED = DowelNeeds.dowels > 0
_CURED = _hours("apply curing compound", "apply sealer")

MATERIALS = (
    *(
        Item("Forms", f"Form lumber {word}", "ft", at(BoardText.feet, row_called(BOARD, word)))
        for word in BOARD.axis.words
    ),
    Item("Forms", "Bender board", "ft", round_up(total(Stakes.curved), to=exact(1, "ft"))),
    Item("Forms", "Form stakes", "each", total(Stakes.stakes)),
    Item("Forms", "Form release agent", "job", FormNeeds.release_agent),
    Item("Dowels", "Dowel stock, full length", "bar", total(CuttingList.bars)),
    Item("Dowels", "Dowels to cut from it", "bar", total(CuttingList.dowels_to_cut)),
    Item("Dowels", "Epoxy tubes", "each", DowelNeeds.cartridges),
    Item("Reinforcement", "Reinforcing bars, full length", "bar", total(BarMat.stock_bars)),
    Item("Reinforcement", "Wire mesh sheets", "each", total(Reinforcement.sheets)),
    Item("Reinforcement", "Bar supports (chairs)", "each", total(Reinforcement.supports)),
    Item("Reinforcement", "Bar ties, hundreds", "pack", ReinforcementNeeds.tie_hundreds),
    Item("Reinforcement", "Vapor retarder rolls", "roll", ReinforcementNeeds.vapor_rolls.count),
    Item("Joints", "Isolation-joint filler strips", "each", JointNeeds.filler_strips),
    Item("Joints", "Bond breaker", "ft2", total(BondBreaker.area)),
    Item("Base", "Base rock, picked up on the way", "ton", _where(BaseHaul.delivered <= 0, BaseNeeds.buy)),
    Item("Concrete", "Bagged concrete", "bag", Order.bags),
    Item("Concrete", "Fiber", "bag", FiberTotal.bags),
    *(
        Item("Concrete", f"{liquid}, {size} containers", "each", count)
        for liquid, packs in (
            ("Bonding agent", BONDING_PACKS),
            ("Curing compound", CURING_PACKS),
            ("Sealer", SEALER_PACKS),
        )
        for size, count in (("small", packs.small), ("large", packs.large))
    ),
    Item("Concrete", "Concrete washout", "each", Protection.washouts),
    Item("Closing off", "Barricades, for so many days", "day", BARRICADE_DAYS),
    Item("Closing off", "Caution tape and signs", "set", _ONE),
    Item("Closing off", "Traffic cones", "set", _where(Permissions.right_of_way.is_("yes"))),
)
"""What the job uses up, or leaves on the site for days."""

TOOLS = (
    *(_machine(name) for name in TOOL.axis.words),
    Item("Layout", "Tape, string, stakes, level, marking paint", "set", _ONE),
    Item("Layout", "Hose and nozzle", "each", _ONE),
    Item("Dig and base", "Shovels", "each", _where(_BY_HAND > 0, _HEADS)),
    Item("Dig and base", "Pick or mattock", "each", _where(_hours("dig by hand", "grub roots") > 0)),
    Item("Dig and base", "Loppers and brush saw", "set", _where(_hours("cut brush", "grub roots") > 0)),
    Item("Dig and base", "Rake and hand tamper", "set", _where(_hours("place base rock") > 0)),
    Item("Dig and base", "Tarp to cover the load", "each", _where(total(Hauled.loads) > 0)),
    Item("Dig and base", "Pipe caps and fittings", "set", _where(_hours("cap lines") > 0)),
    Item("Forms", "Form hammer, circular saw, screws", "set", _where(total(EdgeTakeoff.formed) > 0)),
    Item("Dowels", "Rotary hammer drill", "each", _where(_DOWELED)),
    Item("Dowels", "Drill bits", "each", DowelNeeds.bits),
    Item("Dowels", "Vacuum with dust filter, hole brush", "set", _where(_DOWELED)),
    Item("Dowels", "Bar cutter", "each", _where(either(_DOWELED, total(BarMat.weight) > 0))),
    Item("Reinforcement", "Bar bender and tie pliers", "set", _where(total(BarMat.weight) > 0)),
    Item("Reinforcement", "Bolt cutter for mesh", "each", _where(total(Reinforcement.sheets) > 0)),
    Item("Placing", "Wheelbarrows", "each", _where(_BARROWED, Access.wheelbarrows)),
    Item("Placing", "Buckets for mixing water", "set", _where(Order.bags > 0)),
    Item("Placing", "Concrete rakes", "each", Crew.placing.count),
    Item("Placing", "Screed", "each", _ONE),
    Item("Finishing", "Bull float", "each", _ONE),
    Item("Finishing", "Hand floats, trowels, kneeling boards", "set", Crew.finishing.count),
    Item("Finishing", "Edger", "each", _ONE),
    Item("Finishing", "Groover for the joints", "each", _where(_hours("tool joints") > 0)),
    Item("Finishing", "Broom", "each", _ONE),
    Item("Finishing", "Sprayer", "each", _where(_CURED > 0)),
)
"""Machines and tools, by the tasks that use them."""

PROTECTION = (
    Item("Protection", "Gloves, waterproof", "pair", _HEADS),
    Item("Protection", "Eye protection", "each", _HEADS),
    Item("Protection", "Rubber boots", "pair", _HEADS),
    Item("Protection", "Ear protection", "each", _where(_LOUD > 0, _HEADS)),
    Item("Protection", "Respirators that fit, for dust", "each", _where(DustHours.all_tasks > 0, _HEADS)),
    Item("Protection", "Clean water for skin and eyes", "set", _ONE),
)
"""What a person wears or has at hand: for wet concrete always, for noise and dust by task."""

ITEMS = (*MATERIALS, *TOOLS, *PROTECTION)
"""Everything that a job may have loaded, in the order of the list."""

ITEM = named_rows("item to load", *(item.name for item in ITEMS))
"""An item that a job may have loaded."""

LOAD_ROW = slot_rows("row of the load list", shown=True)
"""A row of the load list."""


def _name_of(item: Item) -> Expr | str:
    """Its name, and for a machine how long it works and is rented."""
    if not item.machine:
        return item.name
    hours = correlation(
        "", lambda plain: plain, look_up(Tool.hours, item.machine), source="hours, shown as whole hours"
    )
    return joined(
        item.name.capitalize(),
        ": ",
        count_of(round_up(hours), "each"),
        " h of work, rental days ",
        count_of(look_up(Tool.days, item.machine).count, "each"),
    )


class LoadItem(Section, title="Items to load", each=ITEM, sheet="Costs"):
    """Every item that a job may take, with what this job takes of it."""

    quantity = line(
        "Quantity to load", "", by_row(ITEM, *(item.bare for item in ITEMS)), source="by task; 0 if it is not needed"
    )
    name = line("Name on the list", "", by_row(ITEM, *map(_name_of, ITEMS)), source="by item")
    unit_of_measure = fixed("Unit on the list", ITEM, *(item.unit for item in ITEMS), source="by item")
    use = fixed("What it is for", ITEM, *(item.use for item in ITEMS), source="by item")
    needed = line("Is loaded", "", when(quantity > 0, 1, 0), source="1 if the job takes any", adds=True)
    row = line(
        "Row on the list",
        "",
        when(needed > 0, running(needed, JOB), 0),
        source="in the order of the items, those that are loaded only; 0 if it is not",
    )


def _listed(value: Line, otherwise: float | str) -> Expr:
    """A value of the item of a row; ``otherwise`` in the rows that are not used."""
    number = row_number(LOAD_ROW)
    return when(number <= LoadNeed.rows, lookup_by_key(value, LoadItem.row, number), otherwise)


class LoadNeed(Section, title="Length of the load list", sheet="Costs"):
    """A row for each item that is loaded."""

    rows = line("Rows of the load list needed", "", total(LoadItem.needed), source="items that are loaded")


class LoadRow(Section, title="Rows of the load list", each=LOAD_ROW, sheet="Costs", slots_for=LoadNeed.rows):
    """The items that are loaded, one below another without gaps."""

    use = line("For", "", _listed(LoadItem.use, "-"), source="items to load")
    name = line("Item", "", _listed(LoadItem.name, "-"), source="items to load")
    quantity = line("Quantity of the item", "", _listed(LoadItem.quantity, 0), source="items to load")
    unit_of_measure = line("Unit of the item", "", _listed(LoadItem.unit_of_measure, "-"), source="items to load")
