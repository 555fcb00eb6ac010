"""Every section, in the order in which the rules follow from each other."""

from __future__ import annotations

from calc.declare import Section
from calc.trade.ordering.bags import Bags, Topped
from calc.trade.materials.base_rock import Base, BaseHaul, BaseNeeds, RockRide
from calc.trade.ordering.rule_comparison import BesideOrder, OnLadder
from calc.trade.money.bid import Decisions, Front
from calc.trade.cautions.general import Cautions
from calc.trade.cautions.checks import Integrity
from calc.trade.takeoff.concrete import Concrete
from calc.trade.money.costs import CostTable
from calc.trade.takeoff.dig import Dig, Green, Soil, Spoil, Wetness
from calc.trade.takeoff.dowels import Cut, Doweled, DowelNeeds
from calc.trade.work.equipment import Equipment, Hire, Rented, Tool
from calc.trade.materials.fiber import Dose, FiberKind, FiberTotal, TruckFiber
from calc.trade.takeoff.forms import Board, Form, FormNeeds, Stakes
from calc.trade.takeoff.geometry import Border, Depth, Hole, Outline, Slab, Walk
from calc.trade.hauling.choice import Choice, PlanWord, Rival, RunnerUp
from calc.trade.cautions.hauling import HaulCautions, Watched
from calc.trade.inputs.hauling import Fleet
from calc.trade.hauling.disposal_options import Carry, Leg, Tip
from calc.trade.hauling.piles import Bed, Gate, Heap, Pile, Purity
from calc.trade.hauling.plans import Offer, Parting, Sorting
from calc.trade.hauling.loads import Clock, Hauled, Hauler
from calc.trade.inputs.job import Company, Disposal, Job, Site, Vehicle, Wage, Wording
from calc.trade.takeoff.joint_list import Eighths, JointPlace, Slot
from calc.trade.takeoff.joints import HoleIsolation, JointDepth, JointNeeds, Matched, OldJoint, Panel
from calc.trade.work.labor import Labor, Task
from calc.trade.ordering.order_candidates import Best, Quick, Risk, Rung, Short
from calc.trade.money.price import Changed, Due, Invoice, Parts, Price, Subtotal
from calc.trade.cautions.money import MoneyCautions, Weight
from calc.trade.inputs.money import Change, Terms
from calc.trade.takeoff.old_concrete import OldFooting, OldSlab, Rubble
from calc.trade.ordering.order import Balance, Load, Order
from calc.trade.takeoff.drawing import EdgeDrawn, OutlinePoint, Plan, Round, Stop, Turn
from calc.trade.inputs.papers import OnPaper
from calc.trade.papers.area_text import AreaSize, AreaWord, Mark, ShapeWord
from calc.trade.papers.pour_text import (
    Arrival,
    ArrivalClock,
    BoardWord,
    HaulClock,
    HaulWord,
    MixSize,
    MixWord,
    PourWord,
    SiteHours,
)
from calc.trade.ordering.methods import Method, Pace, Ride, Ruled
from calc.trade.ordering.method_choice import Fitness, NextFitness, NextWay, Placing, PlacingWords
from calc.trade.ordering.method_cost import MethodCost, Pump
from calc.trade.inputs.placing import Access, BarrowWay, Forecast
from calc.trade.ordering.pour import Pour, PourCost, TruckTime
from calc.trade.ordering.finish_window import FinishWindow, Setting
from calc.trade.ordering.plant import Mix, Mixed, Poured, Supply, Tier
from calc.trade.inputs.pour import Crew, Mixture, Ordering
from calc.trade.prices.price_age import PriceAge
from calc.trade.work.protection import Protection, SlipSheet
from calc.trade.materials.purchases import Bought, TierStart, TruckFee
from calc.trade.prices.wage_rates import CrewRate, Rate
from calc.trade.inputs.removal import Footing, Plant
from calc.trade.prices.rental import Rental
from calc.trade.cautions.site import Dust, Locate, SiteCautions
from calc.trade.inputs.areas import Corner, Deduction, Edge, Measured, Station
from calc.trade.cautions.slab import SlabCautions
from calc.trade.takeoff.uncertainty import DepthSpread, PointMean, PointOff, VolumeSpread
from calc.trade.materials.liquids import BONDING_PACKS, CURING_PACKS, SEALER_PACKS, Bonding, Curing, Sealer
from calc.trade.work.tasks import Chipping, OldWalk, Roots, Work
from calc.trade.cautions.walks import WalkCautions
from calc.trade.inputs.site import Asked, Use
from calc.trade.cautions.conditions import Bars, Lie, Meets, Opening, Over, Restraint
from calc.trade.ordering.weather import Drying, Heat, TruckClock
from calc.trade.cautions.pour_day import WeatherCautions
from calc.trade.money.week import Beside
from calc.trade.cautions.work import WorkCautions, WorkIntegrity
from calc.trade.inputs.work import Digging, OnSite, Removal

HOUSE = (Company, Vehicle, Disposal, Wage, Wording)
INPUTS = (
    *HOUSE,
    Job,
    Digging,
    BarrowWay,
    Site,
    Fleet,
    Mixture,
    Crew,
    Ordering,
    Access,
    Forecast,
    Removal,
    OnSite,
    OnPaper,
    Terms,
    Asked,
    Measured,
    Use,
    Station,
    Corner,
    Deduction,
    Edge,
    Footing,
    Plant,
    Change,
)
TAKEOFF = (Walk, Outline, Hole, Slab, Depth, Border, OldFooting, OldSlab, Rubble, Concrete)
HAUL = (Soil, Wetness, Dig, Green, Spoil, Pile)
PLANS = (Bed, Gate, Purity, Heap, Carry, Tip, Sorting, Leg, Parting, Offer)
CHOICE = (PlanWord, Choice, Rival, RunnerUp, Hauler, Clock, Hauled, Watched)
RATES = (Rate, CrewRate, PriceAge)
LADDER = (
    PointMean,
    PointOff,
    DepthSpread,
    VolumeSpread,
    Supply,
    Tier,
    Mix,
    Mixed,
    Poured,
    Risk,
    Short,
    Rung,
    Best,
    Quick,
)
WAYS = (Rental, Bags, Topped, TruckClock, Drying, Heat, Ruled, Pace, Method, Ride, Pump, MethodCost)
PLACING = (Fitness, Placing, NextFitness, NextWay, PlacingWords)
ORDER = (
    Order,
    Load,
    Balance,
    OnLadder,
    BesideOrder,
    Pour,
    TruckTime,
    PourCost,
    Setting,
    FinishWindow,
    FiberKind,
    Dose,
    TruckFiber,
    FiberTotal,
    Doweled,
    Cut,
    DowelNeeds,
)
LIQUIDS: tuple[type[Section], ...] = (
    Bonding,
    *BONDING_PACKS.sections,
    Curing,
    *CURING_PACKS.sections,
    Sealer,
    *SEALER_PACKS.sections,
)
JOINTS = (Panel, OldJoint, Matched, Eighths, Slot, JointPlace, HoleIsolation, JointDepth, JointNeeds, Base, BaseNeeds)
WORK = (
    RockRide,
    BaseHaul,
    Stakes,
    Form,
    Board,
    FormNeeds,
    SlipSheet,
    Protection,
    Roots,
    Chipping,
    OldWalk,
    Work,
    Task,
    Labor,
    Tool,
    Hire,
    Rented,
    Equipment,
)
PAPERS = (
    Mark,
    AreaSize,
    ShapeWord,
    AreaWord,
    SiteHours,
    HaulClock,
    HaulWord,
    PourWord,
    MixSize,
    MixWord,
    Arrival,
    ArrivalClock,
    BoardWord,
)
PLANS_DRAWN = (Stop, Turn, EdgeDrawn, Plan, Round, OutlinePoint)
MONEY = (Bought, TierStart, TruckFee, CostTable, Subtotal, Price, Parts, Due, Changed, Invoice)
WATCHED = (Beside, Meets, Lie, Over, Bars, Restraint, Opening, Dust, Locate, Weight)
WATCH = (
    Integrity,
    WorkIntegrity,
    WorkCautions,
    Cautions,
    HaulCautions,
    SlabCautions,
    WalkCautions,
    SiteCautions,
    MoneyCautions,
    WeatherCautions,
    Front,
    Decisions,
)

SECTIONS: tuple[type[Section], ...] = (
    *INPUTS,
    *RATES,
    *TAKEOFF,
    *LADDER,
    *HAUL,
    *PLANS,
    *CHOICE,
    *WAYS,
    *PLACING,
    *ORDER,
    *LIQUIDS,
    *JOINTS,
    *WORK,
    *PAPERS,
    *PLANS_DRAWN,
    *MONEY,
    *WATCHED,
    *WATCH,
)
"""The catalog. A section may use only what stands before it."""
