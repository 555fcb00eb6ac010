"""Every section, in the order in which the rules follow from each other."""

from __future__ import annotations

from calc.declare import Section
from calc.trade.bags import Bags, Topped
from calc.trade.base import Base, BaseHaul, BaseNeeds, RockRide
from calc.trade.beside import BesideOrder, OnLadder
from calc.trade.bid import Decisions, Front
from calc.trade.cautions import Cautions
from calc.trade.checks import Integrity
from calc.trade.concrete import Concrete
from calc.trade.costs import CostTable
from calc.trade.dig import Dig, Green, Soil, Spoil, Wetness
from calc.trade.dowels import Cut, Doweled, DowelNeeds
from calc.trade.equipment import Equipment, Hire, Rented, Tool
from calc.trade.fiber import Dose, FiberKind, FiberTotal, TruckFiber
from calc.trade.forms import Board, Form, FormNeeds, Stakes
from calc.trade.geometry import Border, Depth, Hole, Outline, Slab, Walk
from calc.trade.haul import Choice, PlanWord, Rival, RunnerUp
from calc.trade.haul_cautions import HaulCautions, Watched
from calc.trade.haul_inputs import Fleet
from calc.trade.haul_legs import Carry, Leg, Tip
from calc.trade.haul_piles import Bed, Gate, Heap, Pile, Purity
from calc.trade.haul_plans import Offer, Parting, Sorting
from calc.trade.hauled import Clock, Hauled, Hauler
from calc.trade.inputs import Company, Disposal, Job, Site, Vehicle, Wage, Wording
from calc.trade.joint_list import Eighths, JointPlace, Slot
from calc.trade.joints import HoleIsolation, JointDepth, JointNeeds, Matched, OldJoint, Panel
from calc.trade.labor import Labor, Task
from calc.trade.ladder import Best, Quick, Risk, Rung, Short
from calc.trade.money import Changed, Due, Invoice, Parts, Price, Subtotal
from calc.trade.money_cautions import MoneyCautions, Weight
from calc.trade.money_inputs import Change, Terms
from calc.trade.old_concrete import OldFooting, OldSlab, Rubble
from calc.trade.order import Balance, Load, Order
from calc.trade.outline_points import EdgeDrawn, OutlinePoint, Plan, Round, Stop, Turn
from calc.trade.paper_inputs import OnPaper
from calc.trade.paper_lines import AreaSize, AreaWord, Mark, ShapeWord
from calc.trade.paper_words import (
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
from calc.trade.placing import Method, Pace, Ride, Ruled
from calc.trade.placing_choice import Fitness, NextFitness, NextWay, Placing, PlacingWords
from calc.trade.placing_cost import MethodCost, Pump
from calc.trade.placing_inputs import Access, BarrowWay, Forecast
from calc.trade.placing_pour import Pour, PourCost, TruckTime
from calc.trade.placing_window import FinishWindow, Setting
from calc.trade.plant import Mix, Mixed, Poured, Supply, Tier
from calc.trade.pour_inputs import Crew, Mixture, Ordering
from calc.trade.price_age import PriceAge
from calc.trade.protect import Protection, SlipSheet
from calc.trade.purchases import Bought, TierStart, TruckFee
from calc.trade.rates import CrewRate, Rate
from calc.trade.removal_inputs import Footing, Plant
from calc.trade.rental import Rental
from calc.trade.site_cautions import Dust, Locate, SiteCautions
from calc.trade.site_inputs import Corner, Deduction, Edge, Measured, Station
from calc.trade.slab_cautions import SlabCautions
from calc.trade.spread import DepthSpread, PointMean, PointOff, VolumeSpread
from calc.trade.surface import BONDING_PACKS, CURING_PACKS, SEALER_PACKS, Bonding, Curing, Sealer
from calc.trade.tasks import Chipping, OldWalk, Roots, Work
from calc.trade.walk_cautions import WalkCautions
from calc.trade.watch_inputs import Asked, Use
from calc.trade.watched import Bars, Lie, Meets, Opening, Over, Restraint
from calc.trade.weather import Drying, Heat, TruckClock
from calc.trade.weather_cautions import WeatherCautions
from calc.trade.week import Beside
from calc.trade.work_checks import WorkCautions, WorkIntegrity
from calc.trade.work_inputs import Digging, OnSite, Removal

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
