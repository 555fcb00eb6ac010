"""What each placing method costs: everything of the job that depends on it."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Job
from calc.trade.inputs.pour import Crew
from calc.trade.inputs.work import OnSite
from calc.trade.levels import METHOD
from calc.trade.materials.fiber_dose import FiberDose
from calc.trade.materials.piece_goods import PieceGoods
from calc.trade.ordering.bags import Bags
from calc.trade.ordering.methods import Method, OrderByRule, TruckSplit
from calc.trade.ordering.order_candidates import Risk
from calc.trade.ordering.plant import DischargePrice
from calc.trade.ordering.plant_fees import PlantFees
from calc.trade.ordering.pour_by_method import BY_METHOD
from calc.trade.ordering.trucks import ONE_TRUCK, plant_charge, split_fees
from calc.trade.prices.mobilization import Mobilization
from calc.trade.prices.short_hire import short_hire
from calc.trade.prices.wage_rates import CrewRate
from calc.trade.work.pour_work import SAWING, PourHours
from calc.trade.work.prep import PrepTask
from calc.trade.work.prep_visit import PrepVisit
from calc.trade.work.visit_rules import VisitRules

_SHEET = "Order and placing"
_ONE = exact(1, "each")


class Pump(Section, title="Pump charges", sheet=_SHEET):
    """A small line pump with operator, hired for a minimum number of hours."""

    set_up_price = price("Pump set-up charge", "$/each", taxed=False, help="Charge per job before the pump runs.")
    hour_price = price("Pump, per hour", "$/h", taxed=False, help="Charge per hour of the pump with its operator.")
    yard_price = price("Pump, per yard", "$/yd3", taxed=False, help="Added charge per yard pumped; blank for none.")
    primer_price = price("Pump primer", "$/each", taxed=False, help="Primer or slurry pack, per job; blank for none.")
    min_hours = factor("Pump minimum hours", "h", 3, low=2, high=4, source="common practice, no source")
    set_up_hours = factor(
        "Pump set-up and washout time", "h", 0.75, low=0.5, high=1.5, source="common practice, no source: charged time"
    )

    known = line(
        "Pump prices are known",
        "",
        when(both(is_given(set_up_price), is_given(hour_price)), 1, 0),
        source="1 if set-up and hour have a price; $0 is a price",
    )
    set_up = line("Pump set-up", "$", money(_ONE * if_given(set_up_price, 0)), source="Prices")
    hourly = line("Pump rate per hour", "$/h", if_given(hour_price, 0), source="Prices")
    by_yard = line("Pump rate per yard", "$/yd3", if_given(yard_price, 0), source="Prices")
    primer = line("Pump primer, per job", "$", money(_ONE * if_given(primer_price, 0)), source="Prices")


def charged_hours(hours: Expr) -> Expr:
    """The hours that a pump is charged which pumps for so long."""
    return largest(Pump.min_hours, hours + Pump.set_up_hours)


def pump_hire(hours: Expr, yards: Expr) -> Expr:
    """What a pump costs that pumps for so long, and so many yards."""
    return Pump.set_up + money(charged_hours(hours) * Pump.hourly) + money(yards * Pump.by_yard) + Pump.primer


_ELECTRIC = look_up(PrepTask.hours, "chip footings") + look_up(PrepTask.hours, "drill dowels")
_NO_POWER = OnSite.power.is_("no")
MIXER_HIRE = short_hire("MixerHire", "Mixer, if bags are mixed", "mixer", when(Bags.bags > 0, Bags.hours, 0))
GENERATOR_HIRE = short_hire("GeneratorHire", "Generator, with ready-mix", "generator", when(_NO_POWER, _ELECTRIC, 0))
GENERATOR_HIRE_WITH_BAGS = short_hire(
    "BagGeneratorHire", "Generator, if bags are mixed", "generator", when(_NO_POWER, _ELECTRIC + Bags.hours, 0)
)


class MethodFiber(Section, title="Fiber by placing method", each=METHOD, sheet=_SHEET):
    """Whole bags in each truck, or in the one batch that is mixed on site; none where the plant puts the fiber in."""

    dose = line(
        "Fiber added on site per yard",
        "lb/yd3",
        when(both(PlantFees.puts_in_fiber > 0, Method.is_bags <= 0), 0, FiberDose.per_yard),
        source="dosage; 0 where the plant puts the fiber in",
    )
    in_trucks = line(
        "Fiber bags in the trucks",
        "bag",
        (TruckSplit.trucks - TruckSplit.extra_trucks).count
        * round_up(TruckSplit.base_load * ONE_TRUCK * dose / FiberDose.bag)
        + TruckSplit.extra_trucks.count * round_up(TruckSplit.largest_load * ONE_TRUCK * dose / FiberDose.bag),
        source="whole bags in each truck",
    )
    bags = line(
        "Fiber bags of the method",
        "bag",
        when(Method.is_bags > 0, round_up(Bags.volume * dose / FiberDose.bag), in_trucks),
        source="in the trucks, or in the batch that is mixed on site",
    )
    cost = line(
        "Fiber cost of the method",
        "$",
        money(bags * when(Job.fiber.is_("micro"), PieceGoods.micro, PieceGoods.macro)),
        source="bags times price",
    )


class MethodLabor(Section, title="Labor cost of the pour, by placing method", each=METHOD, sheet=_SHEET):
    """What the pour visit is paid; a pour that shares the preparation visit brings only what it adds to it."""

    placing = line(
        "Placing labor of the method",
        "$",
        money(when(Method.is_bags > 0, Bags.task_hours, Crew.placing.count * Method.hours) * CrewRate.laborer),
        source="hours of placing or mixing at the laborer rate",
    )
    finishing = line(
        "Finishing and sawing labor",
        "$",
        money((PourHours.finishing + SAWING) * CrewRate.finisher),
        source="hours at the finisher rate",
    )
    other = line(
        "Other labor of the pour",
        "$",
        money((PourHours.shared - PourHours.finishing) * CrewRate.composite),
        source="bonding agent, protection, curing, clean-up where nothing is formed: at the composite crew rate",
    )
    beyond = line(
        "Time beyond tasks of the method",
        "$",
        money(BY_METHOD.beyond_laborer * CrewRate.laborer) + money(BY_METHOD.beyond_finisher * CrewRate.finisher),
        source="placers at the laborer rate, finishers at theirs",
    )
    premium = line(
        "Overtime premium of the method",
        "$",
        money((VisitRules.overtime - 1) * BY_METHOD.long_laborer * CrewRate.laborer)
        + money((VisitRules.overtime - 1) * BY_METHOD.long_finisher * CrewRate.finisher),
        source="hours beyond a day times what overtime adds to the rate",
    )
    saved = line(
        "Saved on the preparation visit",
        "$",
        BY_METHOD.is_shared
        * (
            money(PrepVisit.beyond * CrewRate.laborer)
            + money((VisitRules.overtime - 1) * PrepVisit.long_hours * CrewRate.laborer)
        ),
        source="its time beyond tasks and its overtime, where the pour shares it",
    )
    cost = line(
        "Labor cost of the method",
        "$",
        placing + finishing + other + beyond + premium - saved,
        source="tasks, time beyond tasks and overtime, less what sharing saves",
    )


class MethodCost(Section, title="Placing method costs", each=METHOD, sheet=_SHEET):
    """All of the direct cost that depends on the method. Tax is left out."""

    standby_price = price(
        "Truck standby (wait time)", "$/min", taxed=False, help="Charge per minute beyond the unloading allowance."
    )
    washout_price = price("Concrete washout", "$/each", help="Price per job: container, liner and disposal.")

    standby_rate = line("Truck standby rate", "$/min", if_given(standby_price, 0), source="Prices")
    fees = line(
        "Short-load fees",
        "$",
        split_fees(TruckSplit.trucks, TruckSplit.base_load, TruckSplit.extra_trucks, TruckSplit.largest_load),
        source="by the load of each truck, from the fee table",
    )
    charge = line(
        "Plant charges",
        "$",
        plant_charge(Method.order, at(DischargePrice.yard, Method.discharge), fees, TruckSplit.trucks),
        source="yards, not below the minimum order, plus short-load fees, delivery and added fees per truck",
    )
    concrete = line(
        "Concrete cost of the method",
        "$",
        by_row(METHOD, charge, charge, charge, Bags.cost),
        source="plant charges, or bags",
    )
    standby = line(
        "Truck standby cost",
        "$",
        money(TruckSplit.standby * standby_rate),
        source="standby minutes times standby rate",
    )
    pump = line(
        "Pump charge",
        "$",
        by_row(METHOD, 0, 0, pump_hire(Method.hours, Method.order), 0),
        source="set-up, hours, yards and primer",
    )
    machines = line(
        "Mixer and generator",
        "$",
        by_row(
            METHOD,
            GENERATOR_HIRE.cost,
            GENERATOR_HIRE.cost,
            GENERATOR_HIRE.cost,
            MIXER_HIRE.cost + GENERATOR_HIRE_WITH_BAGS.cost,
        ),
        source="hire for the hours of their tasks",
    )
    washout = money(_ONE * if_given(washout_price, 0))
    cleaning = line(
        "Washout, or clean-up after bags",
        "$",
        by_row(METHOD, washout, washout, washout, Bags.clean_up),
        source="Prices, once per job",
    )
    surplus = line(
        "Surplus concrete, expected",
        "$",
        when(
            Method.is_bags > 0,
            0,
            money(at(OrderByRule.surplus, Method.discharge) * Risk.surplus_disposal),
        ),
        source="expected surplus times disposal per yard; none from bags",
    )
    mobilization = line(
        "Mobilization of the pour",
        "$",
        (1 - BY_METHOD.is_shared) * Mobilization.crew_visit,
        source="a visit of the crew, unless the pour shares the preparation visit",
    )
    cost = line(
        "Cost of the method",
        "$",
        concrete + MethodFiber.cost + standby + pump + machines + cleaning + surplus + mobilization + MethodLabor.cost,
        source="concrete, fiber, standby, pump, machines, cleaning, surplus, mobilization and labor",
    )
