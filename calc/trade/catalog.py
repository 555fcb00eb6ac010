"""Every section, in the order in which the rules follow from each other: over 450 lines because it names them all."""

from __future__ import annotations

from collections import Counter
from importlib import import_module
from pathlib import Path
from pkgutil import walk_packages

from calc.declare import *
from calc.trade.cautions.checks import Integrity, WorkIntegrity
from calc.trade.cautions.conditions import (
    AreaSlopes,
    BuildingEdges,
    DowelCover,
    FootingCover,
    OpeningToTraffic,
    Restraint,
)
from calc.trade.cautions.crew import CrewCautions
from calc.trade.cautions.hauling import BackHaul, EmptyReturn, HaulCautions, PileConditions, RockSeller, SpoilPerArea
from calc.trade.cautions.locate import LocateTicket, UtilityLocate
from calc.trade.cautions.money_checks import MoneyIntegrity, PackSizes, PriceSteps
from calc.trade.cautions.order import OrderCautions
from calc.trade.cautions.pour_day import PourCautions
from calc.trade.cautions.price import PriceCautions
from calc.trade.cautions.safety import CommercialLicense, CrewHealth, EpoxyUsed, RootsCut, SafetyCautions
from calc.trade.cautions.second_routes import (
    BONDING_BOUGHT,
    CURING_BOUGHT,
    SEALER_BOUGHT,
    CrewTime,
    DugOut,
    FiberBought,
    PlantInvoice,
    RockBrought,
)
from calc.trade.cautions.site import DustHours, SiteCautions
from calc.trade.cautions.slab import SlabCautions
from calc.trade.cautions.surface import SurfaceCautions
from calc.trade.hauling.choice import Choice, PlanDifference, PlanWord, RunnerUp
from calc.trade.hauling.clock import CLOCKS
from calc.trade.hauling.disposal_options import BestDisposal, DisposalOption, LoadCount
from calc.trade.hauling.loads import Hauled, HaulTimes, HaulVehicle, Workday
from calc.trade.hauling.piles import GreenMix, LoadMix, Pile, SoilContamination
from calc.trade.hauling.plan_cost import PlanCost
from calc.trade.hauling.plan_hours import PlanHours
from calc.trade.hauling.plans import GreenInOrder, GreenPlan, HaulOrder, PilesInOrder, PlanSplit, Sorting
from calc.trade.hauling.vehicles import SiteSpec, VehicleSpec
from calc.trade.inputs.areas import Area, CrossSection, Deduction, Edge, OutlineCorner
from calc.trade.inputs.hauling import Fleet
from calc.trade.inputs.job import Company, Disposal, Holiday, Job, Site, Vehicle, Wage, Wording
from calc.trade.inputs.money import Billing, Change, Terms
from calc.trade.inputs.papers import PaperFacts
from calc.trade.inputs.placing import Access, Forecast, WheelbarrowRoute
from calc.trade.inputs.pour import Crew, Mixture, Ordering
from calc.trade.inputs.removal import Footing, Plant
from calc.trade.inputs.site import AreaUse, Permissions
from calc.trade.inputs.work import Digging, OnSite, Removal
from calc.trade.materials.base_rock import Base, BaseHaul, BaseNeeds, BaseOverFooting, RockVehicle
from calc.trade.materials.fiber import FiberTotal, TruckFiber
from calc.trade.materials.fiber_dose import FiberDose
from calc.trade.materials.liquids import BONDING_PACKS, CURING_PACKS, SEALER_PACKS, Bonding, Curing, Sealer
from calc.trade.materials.piece_goods import PieceGoods
from calc.trade.materials.purchases import TierStart, TruckFee
from calc.trade.money.accounts import DumpAccount, GroupAccount, OwnAccount, TaskAccount
from calc.trade.money.bid import Decisions, PriceSummary
from calc.trade.money.cost_list import CostOfJob, CostRow, ListedCosts, ListedTasks, TaskOfJob, TaskRow
from calc.trade.money.costs import CostTable
from calc.trade.money.invoice import INVOICING
from calc.trade.money.price import BidPrice, ChangeAmount, Invoice, PaymentSchedule, PriceParts, Subtotal
from calc.trade.money.week import WeekComparison
from calc.trade.ordering.bags import Bags
from calc.trade.ordering.finish_window import FinishWindow, WorkingTime
from calc.trade.ordering.method_choice import MethodFit, Placing, PlacingWords, RunnerUpFit, RunnerUpMethod
from calc.trade.ordering.method_cost import (
    GENERATOR_HIRE,
    GENERATOR_HIRE_WITH_BAGS,
    MIXER_HIRE,
    MethodCost,
    MethodFiber,
    MethodLabor,
    Pump,
)
from calc.trade.ordering.methods import Method, OrderByRule, TruckSplit
from calc.trade.ordering.order import Balance, Order, TruckLoad
from calc.trade.ordering.order_candidates import BestOrder, OrderCandidate, OtherOrderRules, Risk, Shortage
from calc.trade.ordering.placing_rates import PlacingRate
from calc.trade.ordering.plant import ChosenMix, DischargePrice, Mix, MixAddition, PlantCharges, ShortLoadTier
from calc.trade.ordering.plant_fees import FiberKind, PlantFees
from calc.trade.ordering.pour import Pour, PourCost, TruckTime
from calc.trade.ordering.pour_by_method import BY_METHOD
from calc.trade.ordering.pour_people import SawDelay
from calc.trade.ordering.rule_comparison import CandidateCosts, RuleComparison
from calc.trade.ordering.weather import DischargeLimit, Evaporation, TemperatureLimits
from calc.trade.papers.area_text import AreaSize, AreaText, EighthText, ShapeText
from calc.trade.papers.load_items import LoadItem, LoadNeed, LoadRow
from calc.trade.papers.pour_text import (
    Arrival,
    ArrivalTime,
    BoardText,
    FinishingTime,
    MixSize,
    MixText,
    PileText,
    PileTime,
    PourText,
    SiteHours,
)
from calc.trade.papers.proposal_text import ProposalText
from calc.trade.prices.mobilization import Mobilization
from calc.trade.prices.price_age import PriceAge
from calc.trade.prices.rental import Rental
from calc.trade.prices.wage_rates import CrewRate, Rate
from calc.trade.takeoff.bond_breaker import BondBreaker
from calc.trade.takeoff.concrete import Concrete
from calc.trade.takeoff.corners import OpeningCorners, OutlinePointNumber, OutlineTurn
from calc.trade.takeoff.dig import Excavation, GreenSpoil, GreenWaste, Moisture, Soil, Spoil
from calc.trade.takeoff.dowels import CuttingList, DoweledEdge, DowelNeeds
from calc.trade.takeoff.drawing import AreaOutlinePoint, DowelsDrawn, EdgeDrawn, OutlinePoint, Plan, StationPoint
from calc.trade.takeoff.forms import Board, Form, FormNeeds, Stakes
from calc.trade.takeoff.geometry import DeductionArea, EdgeTakeoff, MeanThickness, OutlineSegment, Slab, StationStrip
from calc.trade.takeoff.joint_list import Eighths, JointLayout, JointPlace, Slot
from calc.trade.takeoff.joints import JointDepth, JointNeeds, MatchedJoints, OldJoint, OpeningIsolation, Panel
from calc.trade.takeoff.old_concrete import ConcreteDebris, OldFooting, OldSlab
from calc.trade.takeoff.reinforcement import (
    AreaBars,
    BarMat,
    BarSize,
    BarsToBuy,
    Reinforcement,
    ReinforcementNeeds,
    SlabSides,
)
from calc.trade.takeoff.uncertainty import DepthDeviation, DepthUncertainty, PointMean, VolumeUncertainty
from calc.trade.work.calendar import Calendar, CalendarDay, CalendarMarks, DayWork
from calc.trade.work.calendar_length import CalendarReach, CalendarRows, CalendarRules, DayOff, HolidayNear
from calc.trade.work.carrying import Carrying, RouteSlope
from calc.trade.work.equipment import Equipment, RentalChoice, RentalOption, Tool
from calc.trade.work.labor import Labor, Task
from calc.trade.work.machine_access import MachineAccess
from calc.trade.work.paid_time import PaidTime, SingleVisit, Visit
from calc.trade.work.pour_visit import POUR, FinishersNeeded
from calc.trade.work.pour_work import LaterTask, OldWalk, PourHours, PourWork
from calc.trade.work.prep import Chipping, PrepTask, PrepWork, Roots, StreamHours
from calc.trade.work.prep_visit import PrepVisit
from calc.trade.work.protection import Protection
from calc.trade.work.task_rates import TaskRates
from calc.trade.work.tasks import Work
from calc.trade.work.visit_rules import VisitRules

COMPANY = (Company, Vehicle, Disposal, Wage, Wording, Holiday)
INPUTS = (
    *COMPANY,
    Job,
    Digging,
    WheelbarrowRoute,
    Site,
    Fleet,
    Mixture,
    Crew,
    Ordering,
    Access,
    Forecast,
    Removal,
    OnSite,
    PaperFacts,
    Terms,
    Billing,
    Permissions,
    Area,
    AreaUse,
    CrossSection,
    OutlineCorner,
    Deduction,
    Edge,
    Footing,
    Plant,
    Change,
)
TAKEOFF = (
    StationStrip,
    OutlineSegment,
    DeductionArea,
    Slab,
    MeanThickness,
    EdgeTakeoff,
    OldFooting,
    OldSlab,
    ConcreteDebris,
    Concrete,
    Soil,
    Moisture,
    Excavation,
    GreenWaste,
    Spoil,
    GreenSpoil,
)
JOINTS = (
    OutlinePointNumber,
    OutlineTurn,
    OpeningCorners,
    Panel,
    OldJoint,
    MatchedJoints,
    Eighths,
    Slot,
    JointPlace,
    JointLayout,
    OpeningIsolation,
    JointDepth,
    JointNeeds,
)
DOWELS = (DoweledEdge, CuttingList, DowelNeeds)
FORMS = (Stakes, Form, Board, FormNeeds, BondBreaker)
LADDER = (
    PointMean,
    DepthDeviation,
    DepthUncertainty,
    VolumeUncertainty,
    FiberKind,
    PlantFees,
    MixAddition,
    PlantCharges,
    ShortLoadTier,
    Mix,
    ChosenMix,
    DischargePrice,
    Risk,
    Shortage,
    OrderCandidate,
    BestOrder,
    OtherOrderRules,
)
VEHICLES = (VehicleSpec, SiteSpec)
REINFORCEMENT = (BarSize, SlabSides, BarMat, Reinforcement, AreaBars, BarsToBuy, ReinforcementNeeds)
BASE = (BaseOverFooting, Base, BaseNeeds, RockVehicle, BaseHaul)
PREP = (
    VisitRules,
    TaskRates,
    RouteSlope,
    Carrying,
    Roots,
    Chipping,
    PrepWork,
    PrepTask,
    StreamHours,
)
PLANS: tuple[type[Section], ...] = (
    Pile,
    SoilContamination,
    GreenMix,
    LoadMix,
    LoadCount,
    DisposalOption,
    BestDisposal,
    HaulOrder,
    GreenPlan,
    PlanSplit,
    Sorting,
    GreenInOrder,
    PilesInOrder,
    PlanHours,
    *(each.section for each in CLOCKS),
    PlanCost,
)
CHOICE = (
    PlanWord,
    Choice,
    PlanDifference,
    RunnerUp,
    HaulVehicle,
    Workday,
    HaulTimes,
    Hauled,
    PrepVisit,
    PileConditions,
)
RATES = (Rate, CrewRate, PriceAge, Rental, Mobilization)
LATER = (WorkingTime, FinishWindow, OldWalk, PourWork, LaterTask, PourHours)
WAYS: tuple[type[Section], ...] = (
    PlacingRate,
    Bags,
    DischargeLimit,
    Evaporation,
    TemperatureLimits,
    OrderByRule,
    Method,
    TruckSplit,
    SawDelay,
    BY_METHOD.section,
    FiberDose,
    PieceGoods,
    MIXER_HIRE.section,
    GENERATOR_HIRE.section,
    GENERATOR_HIRE_WITH_BAGS.section,
    Pump,
    MethodFiber,
    MethodLabor,
    MethodCost,
)
PLACING = (MethodFit, Placing, RunnerUpFit, RunnerUpMethod, PlacingWords)
ORDER = (
    Order,
    TruckLoad,
    Balance,
    CandidateCosts,
    RuleComparison,
    Pour,
    TruckTime,
    PourCost,
    TruckFiber,
    FiberTotal,
)
LIQUIDS: tuple[type[Section], ...] = (
    Bonding,
    *BONDING_PACKS.sections,
    Curing,
    *CURING_PACKS.sections,
    Sealer,
    *SEALER_PACKS.sections,
)
WORK = (
    Protection,
    Work,
    POUR.section,
    FinishersNeeded,
    SingleVisit,
    Visit,
    PaidTime,
    CalendarRules,
    DayOff,
    CalendarReach,
    HolidayNear,
    CalendarRows,
    CalendarDay,
    CalendarMarks,
    DayWork,
    Calendar,
    Task,
    Labor,
    Tool,
    RentalOption,
    RentalChoice,
    Equipment,
)
PAPERS = (
    EighthText,
    AreaSize,
    ShapeText,
    AreaText,
    SiteHours,
    PileTime,
    PileText,
    FinishingTime,
    PourText,
    MixSize,
    MixText,
    Arrival,
    ArrivalTime,
    BoardText,
    ProposalText,
)
LOADS = (LoadItem, LoadNeed, LoadRow)
PLANS_DRAWN = (StationPoint, EdgeDrawn, Plan, DowelsDrawn, AreaOutlinePoint, OutlinePoint)
MONEY = (
    TierStart,
    TruckFee,
    GroupAccount,
    DumpAccount,
    OwnAccount,
    TaskAccount,
    CostTable,
    CostOfJob,
    ListedCosts,
    CostRow,
    TaskOfJob,
    ListedTasks,
    TaskRow,
    Subtotal,
    BidPrice,
    PriceParts,
    PaymentSchedule,
    ChangeAmount,
    Invoice,
    *INVOICING,
)
CONDITIONS = (
    WeekComparison,
    BuildingEdges,
    AreaSlopes,
    FootingCover,
    DowelCover,
    Restraint,
    OpeningToTraffic,
    UtilityLocate,
    LocateTicket,
    DustHours,
    CommercialLicense,
    EpoxyUsed,
    RootsCut,
    CrewHealth,
    SpoilPerArea,
    RockSeller,
    EmptyReturn,
    BackHaul,
)
SECOND_ROUTES = (
    CURING_BOUGHT.section,
    BONDING_BOUGHT.section,
    SEALER_BOUGHT.section,
    FiberBought,
    DugOut,
    RockBrought,
    CrewTime,
    PlantInvoice,
)
CAUTIONS = (
    Integrity,
    WorkIntegrity,
    SlabCautions,
    SurfaceCautions,
    OrderCautions,
    PourCautions,
    HaulCautions,
    SiteCautions,
    SafetyCautions,
    CrewCautions,
    PriceCautions,
    MachineAccess,
    PriceSummary,
    PackSizes,
    PriceSteps,
    MoneyIntegrity,
    Decisions,
)


def complete(*listed: type[Section]) -> tuple[type[Section], ...]:
    """The sections as they are listed. Raises FormulaError, with the names, unless all of ``calc.trade`` is in it once.

    Every module of the trade is imported for that: one that nobody imports would be missed in silence.
    """
    for module in walk_packages([str(Path(__file__).parent)], f"{__package__}."):
        import_module(module.name)
    made = [each for each in Section.registry if each.__module__.startswith(f"{__package__}.")]
    missing = [repr(each) for each in made if each not in set(listed)]
    twice = [repr(each) for each, times in Counter(listed).items() if times > 1]
    if missing or twice:
        raise FormulaError(
            "; ".join(
                [f"{each} is not in the catalog: list it in calc/trade/catalog.py" for each in missing]
                + [f"{each} is in the catalog more than once" for each in twice]
            )
        )
    return listed


SECTIONS = complete(
    *INPUTS,
    *RATES,
    *TAKEOFF,
    *JOINTS,
    *DOWELS,
    *FORMS,
    *REINFORCEMENT,
    *LADDER,
    *VEHICLES,
    *BASE,
    *PREP,
    *PLANS,
    *CHOICE,
    *LATER,
    *WAYS,
    *PLACING,
    *ORDER,
    *LIQUIDS,
    *WORK,
    *PAPERS,
    *PLANS_DRAWN,
    *MONEY,
    *CONDITIONS,
    *LOADS,
    *SECOND_ROUTES,
    *CAUTIONS,
)
"""The catalog. A section may use only what stands before it."""
