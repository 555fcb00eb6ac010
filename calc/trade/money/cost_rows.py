"""The rows of the table of costs, group by group: what there is of it, what one costs, and why there may be none.

A row that is added here is on Costs, in the price, in the ledger and in the job cost at once.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.choice import ELIGIBLE, Choice
from calc.trade.hauling.piles import Pile
from calc.trade.hauling.plans import Sorting
from calc.trade.inputs.job import Job
from calc.trade.inputs.money import Terms
from calc.trade.inputs.pour import ADDITIONS, Addition
from calc.trade.levels import BAR, BOARD, GROUP, TASK, TOOL
from calc.trade.materials.base_rock import BaseHaul, BaseNeeds
from calc.trade.materials.fiber import FiberTotal
from calc.trade.materials.liquids import BONDING_PACKS, CURING_PACKS, SEALER_PACKS, Bonding, Curing, Sealer
from calc.trade.materials.packs import Packs
from calc.trade.materials.piece_goods import PieceGoods
from calc.trade.materials.purchases import TruckFee
from calc.trade.money.accounts import FINISHER_ACCOUNT, LABORER_ACCOUNT, OwnAccount, TaskAccount
from calc.trade.ordering.bags import Bags
from calc.trade.ordering.method_cost import MethodCost, Pump
from calc.trade.ordering.order import Order
from calc.trade.ordering.plant import ChosenMix, Mix, MixAddition, PlantCharges
from calc.trade.ordering.plant_fees import PlantFees
from calc.trade.ordering.pour import PourCost, TruckTime
from calc.trade.prices.mobilization import Mobilization
from calc.trade.prices.price_age import last_day
from calc.trade.prices.rental import Rental
from calc.trade.prices.wage_rates import CrewRate
from calc.trade.takeoff.bond_breaker import BondBreaker
from calc.trade.takeoff.dowels import CuttingList, DowelNeeds
from calc.trade.takeoff.forms import Board, FormNeeds, Stakes
from calc.trade.takeoff.joints import JointNeeds
from calc.trade.takeoff.reinforcement import BarSize, BarsToBuy, Reinforcement, ReinforcementNeeds
from calc.trade.work.equipment import Equipment, RentalChoice
from calc.trade.work.labor import Task
from calc.trade.work.paid_time import PREP, SEAL, STRIP, PaidTime, Visit
from calc.trade.work.pour_visit import POUR
from calc.trade.work.protection import BARRICADE_DAYS, Protection

CONCRETE, MATERIALS, EQUIPMENT, DISPOSAL, LABOR, FEES = GROUP.axis.words
ONE_EACH = exact(1, "each")
NO_TRUCK = "no ready-mix"
NOT_IN_MIX = "not in the mix"
NO_PUMP = "no pump"
NO_BAGS = "no bagged concrete"


def priced(label: str, group: str, quantity: Expr, price: Price, none: str) -> Cost:
    """A cost whose rate is a price of the company book."""
    return Cost(label, group, quantity, if_given(price, 0), none, price, last_day=last_day(price))


def _in_mix(addition: Addition) -> Expr:
    """The yards that are billed, where the addition is in the mix."""
    return when(addition.is_("yes"), PourCost.yards_billed, 0)


def _fee(label: str, quantity: Expr, price: Price, none: str) -> Cost:
    """A fee that a plant may add: none where its price is blank."""
    return priced(label, CONCRETE, when(is_given(price), quantity, 0), price, none)


_PUMPED = PourCost.yards_pumped > 0
_NO_FEE = "no ready-mix, or no such fee"
_NO_SATURDAY = "not on a Saturday, or no such fee"

PLANT_AND_PUMP = (
    Cost(
        "Ready-mix concrete",
        CONCRETE,
        PourCost.yards_billed,
        ChosenMix.cost,
        NO_TRUCK,
        tax=at(Mix.taxed, ChosenMix.row),
        last_day=at(Mix.last_day, ChosenMix.row),
        books_to=at(Mix.account, ChosenMix.row),
    ),
    *(
        priced(each.cost, CONCRETE, _in_mix(each), price, NOT_IN_MIX)
        for each, price in zip(ADDITIONS, MixAddition.cost.prices, strict=True)
    ),
    priced("Pea-gravel pump mix", CONCRETE, PourCost.yards_pumped, PlantCharges.pump_mix_price, NO_PUMP),
    priced(
        "Short loads, tier 1",
        CONCRETE,
        total(TruckFee.in_tier_1),
        PlantCharges.first_fee,
        "no truck is in tier 1",
    ),
    priced(
        "Short loads, tier 2",
        CONCRETE,
        total(TruckFee.in_tier_2),
        PlantCharges.second_fee,
        "no truck is in tier 2",
    ),
    priced(
        "Short loads, tier 3",
        CONCRETE,
        total(TruckFee.in_tier_3),
        PlantCharges.third_fee,
        "no truck is in tier 3",
    ),
    priced("Concrete delivery, per truck", CONCRETE, Order.trucks, PlantCharges.delivery_price, NO_TRUCK),
    _fee("Environmental fee of the plant", Order.trucks, PlantFees.environmental_price, _NO_FEE),
    _fee("Fuel surcharge of the plant", Order.trucks, PlantFees.fuel_price, _NO_FEE),
    _fee(
        "After-hours fee of the plant",
        PlantFees.is_after_hours * Order.trucks,
        PlantFees.after_hours_price,
        "within the hours of the plant, or no such fee",
    ),
    _fee(
        "Saturday fee of the plant, per load",
        PlantFees.is_saturday * Order.trucks,
        PlantFees.saturday_load_price,
        _NO_SATURDAY,
    ),
    _fee(
        "Saturday fee of the plant, per yard",
        PlantFees.is_saturday * PourCost.yards_billed,
        PlantFees.saturday_yard_price,
        _NO_SATURDAY,
    ),
    _fee(
        "Fiber put in at the plant",
        PlantFees.puts_in_fiber * PourCost.yards_billed,
        PlantFees.fiber_price,
        "none; bags, or no fiber",
    ),
    priced(
        "Truck standby",
        CONCRETE,
        total(TruckTime.standby),
        MethodCost.standby_price,
        "every truck unloads within its allowance",
    ),
    priced("Pump set-up", CONCRETE, when(_PUMPED, ONE_EACH, 0), Pump.set_up_price, NO_PUMP),
    priced("Pump hours", CONCRETE, PourCost.pump_hours, Pump.hour_price, NO_PUMP),
    priced("Pump yardage", CONCRETE, when(_PUMPED, Order.quantity, 0), Pump.yard_price, NO_PUMP),
    priced("Pump priming", CONCRETE, when(_PUMPED, ONE_EACH, 0), Pump.primer_price, NO_PUMP),
)
"""What the plant charges, and the pump."""

_CONCRETE = (
    *PLANT_AND_PUMP,
    priced("Bagged concrete", CONCRETE, Order.bags, Bags.bag_price, NO_BAGS),
    priced("Clean-up, bagged concrete", CONCRETE, when(Order.bags > 0, ONE_EACH, 0), Bags.cleanup_price, NO_BAGS),
    priced(
        "Micro fiber bags",
        CONCRETE,
        when(Job.fiber.is_("micro"), FiberTotal.bags, 0),
        PieceGoods.micro_price,
        "no micro fiber in bags",
    ),
    priced(
        "Macro fiber bags",
        CONCRETE,
        when(Job.fiber.is_("macro"), FiberTotal.bags, 0),
        PieceGoods.macro_price,
        "no macro fiber in bags",
    ),
)


def _small_packs(packs: Packs, need: Line) -> Expr:
    """The small packs to buy; one, for want of a price, where a liquid is needed and no pack of it is known."""
    return when(both(packs.can_win <= 0, need > 0), 1, packs.small)


_PACKED = tuple(
    priced(f"{liquid}, {size} pails", MATERIALS, count, price, "none required")
    for liquid, packs, need, small, large in (
        ("Bonding agent", BONDING_PACKS, Bonding.need, Bonding.small, Bonding.large),
        ("Curing compound", CURING_PACKS, Curing.need, Curing.small, Curing.large),
        ("Sealer", SEALER_PACKS, Sealer.need, Sealer.small, Sealer.large),
    )
    for size, count, price in (("small", _small_packs(packs, need), small), ("5-gal", packs.large, large))
)

ROCK = (
    priced("Base rock, purchase", MATERIALS, BaseNeeds.buy, BaseHaul.rock_price, "no base"),
    priced(
        "Base rock, delivery",
        MATERIALS,
        BaseHaul.delivered,
        BaseHaul.delivery_price,
        "picked up, or none",
    ),
    Cost(
        "Base rock pick-up, truck",
        MATERIALS,
        when(BaseHaul.trips > 0, ONE_EACH, 0),
        BaseHaul.pick_up_truck / ONE_EACH,
        "delivered, or none",
        books_to=OwnAccount.rock_vehicle,
    ),
    Cost(
        "Base rock pick-up, driver",
        MATERIALS,
        when(BaseHaul.trips > 0, ONE_EACH, 0),
        BaseHaul.pick_up_driver / ONE_EACH,
        "delivered, or none",
        books_to=OwnAccount.driver,
    ),
)
"""The rock base, on the site."""

FORMS = (
    *(
        priced(
            f"Form lumber {word}, share of reuse",
            MATERIALS,
            look_up(Board.length, word) / Board.reuses,
            price,
            "no form lumber of that size",
        )
        for word, price in zip(BOARD.axis.words, Board.cost.prices, strict=True)
    ),
    priced(
        "Stakes, share of reuse",
        MATERIALS,
        total(Stakes.stakes) / FormNeeds.stake_reuses,
        FormNeeds.stake_price,
        "nothing is formed",
    ),
    priced(
        "Bender board for curves, share of reuse",
        MATERIALS,
        total(Stakes.curved) / FormNeeds.bender_board_reuses,
        FormNeeds.bender_board_price,
        "no curved forms",
    ),
    priced(
        "Form release agent, per job",
        MATERIALS,
        FormNeeds.release_agent,
        FormNeeds.release_agent_price,
        "nothing is formed",
    ),
)
"""What the forms of a job cost."""

PROTECTION = (
    priced(
        "Bond breaker for footings",
        MATERIALS,
        total(BondBreaker.area),
        Protection.sheet_price,
        "no footing has a bond breaker",
    ),
    priced("Concrete washout, per job", MATERIALS, Protection.washouts, MethodCost.washout_price, "no ready-mix truck"),
    priced("Caution tape and signs, per job", MATERIALS, ONE_EACH, Protection.caution_price, "none"),
    priced(
        "Barricades, days on site",
        MATERIALS,
        BARRICADE_DAYS,
        Protection.barricade_price,
        "no days closed to traffic",
    ),
)
"""What keeps the job clean and safe."""

_MATERIALS = (
    *ROCK,
    *FORMS,
    priced("Dowel stock bars", MATERIALS, total(CuttingList.bars), PieceGoods.bar_price, "no dowels"),
    *(
        priced(f"Reinforcing bars, {word}", MATERIALS, look_up(BarsToBuy.count, word), price, "no bars of that size")
        for word, price in zip(BAR.axis.words, BarSize.cost.prices, strict=True)
    ),
    priced(
        "Bar supports",
        MATERIALS,
        total(Reinforcement.supports),
        ReinforcementNeeds.support_price,
        "no reinforcing bars",
    ),
    priced(
        "Bar ties, hundreds",
        MATERIALS,
        ReinforcementNeeds.tie_hundreds,
        ReinforcementNeeds.ties_price,
        "no reinforcing bars",
    ),
    priced("Wire mesh sheets", MATERIALS, total(Reinforcement.sheets), ReinforcementNeeds.mesh_price, "no wire mesh"),
    priced(
        "Vapor retarder rolls",
        MATERIALS,
        ReinforcementNeeds.vapor_rolls,
        ReinforcementNeeds.vapor_price,
        "no vapor retarder",
    ),
    priced("Drill bits for dowels", MATERIALS, DowelNeeds.bits, PieceGoods.bit_price, "nothing is drilled"),
    priced(
        "Epoxy cartridges for dowels",
        MATERIALS,
        DowelNeeds.cartridges,
        PieceGoods.cartridge_price,
        "no dowel is epoxied",
    ),
    priced(
        "Isolation-joint filler strips, bought",
        MATERIALS,
        JointNeeds.filler_strips,
        PieceGoods.filler_price,
        "no isolation joint",
    ),
    priced(
        "Joint cap and sealant, per foot",
        MATERIALS,
        JointNeeds.isolation_length,
        PieceGoods.sealant_price,
        "no isolation joint",
    ),
    *_PACKED,
    *PROTECTION,
)

EQUIPMENT_ROWS = (
    *(
        Cost(
            f"Rental: {word}",
            EQUIPMENT,
            when(look_up(RentalChoice.no_price, word) > 0, ONE_EACH, look_up(RentalChoice.count, word)),
            look_up(RentalChoice.price_each, word),
            "not needed",
            tax=look_up(Rental.taxed, word),
            sure=when(look_up(RentalChoice.no_price, word) > 0, 0, 1),
            last_day=look_up(RentalChoice.last_day, word),
            books_to=look_up(RentalChoice.account, word),
        )
        for word in TOOL.axis.words
    ),
    priced(
        "Mini excavator delivery, per job",
        EQUIPMENT,
        Equipment.excavator_deliveries,
        Equipment.excavator_delivery_price,
        "hand excavation",
    ),
    priced(
        "Mobilization, crew visits",
        EQUIPMENT,
        count_of(PaidTime.crew_visits, "each"),
        Mobilization.crew_price,
        "none",
    ),
    priced(
        "Mobilization, one-person visits",
        EQUIPMENT,
        count_of(PaidTime.single_visits, "each"),
        Mobilization.single_price,
        "nothing to strip or to seal",
    ),
)
"""Machines that are rented, and the way there."""

_HAULED = when(Choice.loads > 0, ONE_EACH, 0)
_SORTED = when(both(Choice.loads > 0, at(Sorting.needed, Choice.plan) > 0), ONE_EACH, 0)
WITHOUT_VEHICLE = "Hauling, without a vehicle"
"""The cost of spoil that no vehicle takes: it has no price."""

_STRANDED = when(both(total(Pile.tons) > 0, Choice.loads <= 0), ONE_EACH, 0)
_DISPOSAL = (
    *(
        Cost(label, DISPOSAL, needed, amount / ONE_EACH, none, sure=when(ELIGIBLE > 0, 1, 0), books_to=account)
        for label, needed, amount, account, none in (
            ("Hauling, dump fees", _HAULED, Choice.dump_fees, OwnAccount.site, "nothing to haul"),
            ("Hauling, truck", _HAULED, Choice.truck, OwnAccount.vehicle, "nothing to haul"),
            ("Hauling, driver", _HAULED, Choice.driver, OwnAccount.driver, "hired with its driver, or nothing to haul"),
            ("Sorting out green waste", _SORTED, Choice.sorting, OwnAccount.crew_mix, "no green waste kept separate"),
        )
    ),
    Cost(
        WITHOUT_VEHICLE,
        DISPOSAL,
        _STRANDED,
        Choice.dump_fees / ONE_EACH,
        "hauled by a vehicle, or nothing to haul",
        sure=when(_STRANDED > 0, 0, 1),
    ),
)
"""What is hauled off; spoil that no vehicle takes is a cost without a price."""

AS_LABORER = (CrewRate.laborer, LABORER_ACCOUNT)
AS_FINISHER = (CrewRate.finisher, FINISHER_ACCOUNT)
"""Rate and account of time that no task is paid for."""

_LABOR = (
    *(
        Cost(
            f"Labor: {word}",
            LABOR,
            look_up(Task.hours, word),
            look_up(Task.rate, word),
            "no such task",
            books_to=look_up(TaskAccount.account, word),
        )
        for word in TASK.axis.words
    ),
    *(
        Cost(label, LABOR, hours, rate, none, books_to=account)
        for label, hours, rate, account, none in (
            ("Time beyond tasks, prep", look_up(Visit.beyond, PREP), *AS_LABORER, "no preparation visit of its own"),
            ("Time beyond tasks, pour, placers", POUR.beyond_laborer, *AS_LABORER, "none"),
            ("Time beyond tasks, pour, finishers", POUR.beyond_finisher, *AS_FINISHER, "none"),
            ("Time beyond tasks, strip", look_up(Visit.beyond, STRIP), *AS_LABORER, "no strip visit"),
            ("Time beyond tasks, seal", look_up(Visit.beyond, SEAL), *AS_LABORER, "no seal visit"),
            ("Overtime premium, laborers", PaidTime.laborer_premium, *AS_LABORER, "no paid day is too long"),
            ("Overtime premium, finishers", PaidTime.finisher_premium, *AS_FINISHER, "no paid day is too long"),
        )
    ),
)

_FEES = (
    Cost(
        "Permit",
        FEES,
        when(is_given(Terms.permit), ONE_EACH, 0),
        if_given(Terms.permit, 0) / ONE_EACH,
        "none, or not entered yet",
        sure=when(is_given(Terms.permit), 1, 0),
    ),
)

ROWS: tuple[Cost, ...] = (*_CONCRETE, *_MATERIALS, *EQUIPMENT_ROWS, *_DISPOSAL, *_LABOR, *_FEES)
"""Every cost, in the order of its group."""
