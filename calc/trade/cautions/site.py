"""Cautions of the site: utilities, dust, fumes, skin, washout, licensed trades, permits."""

from __future__ import annotations

from calc.declare import *
from calc.trade.cautions.locate import LocateTicket, UtilityLocate
from calc.trade.inputs.job import Job
from calc.trade.inputs.money import Terms
from calc.trade.inputs.site import Permissions
from calc.trade.ordering.order import Order
from calc.trade.takeoff.geometry import Slab
from calc.trade.work.calendar import Calendar, CalendarMarks
from calc.trade.work.equipment import Tool
from calc.trade.work.labor import Task

_OSHA = "29 CFR 1926.1153 table 1, partly from memory; state law"


SAWING_BY_HAND = look_up(Task.hours, "demolition saw cut")
"""Hours with a hand-held saw."""


class DustHours(Section, title="Hours of silica dust", sheet="Costs"):
    """Cutting, drilling, chipping and breaking concrete make silica dust."""

    max_without_respirator = factor(
        "Chipping without a respirator, max",
        "h",
        4,
        low=1,
        high=4,
        source="29 CFR 1926.1153 table 1, from memory",
    )

    max_sawing = factor(
        "Hand-held saw without a respirator, max",
        "h",
        4,
        low=1,
        high=4,
        source="29 CFR 1926.1153 table 1, from memory",
    )

    chipping = line(
        "Hours of breaking and chipping",
        "h",
        look_up(Task.hours, "break out slab") + look_up(Task.hours, "chip footings"),
        source="labor",
    )
    loud = line(
        "Hours of breaker and saw",
        "h",
        chipping + SAWING_BY_HAND + look_up(Task.hours, "saw-cut joints"),
        source="labor",
    )
    all_tasks = line(
        "Hours of silica dust, total",
        "h",
        loud + look_up(Task.hours, "drill dowels"),
        source="labor",
    )


class SiteCautions(Section, title="Site cautions", sheet="Checks"):
    """What was found, the number, the usual practice with its source, and what to do. Local code governs."""

    utilities = caution(
        "Underground utilities",
        Severity.NOTE,
        UtilityLocate.ground_hours > 0,
        LocateTicket.found,
        LocateTicket.days_shown,
        "days",
        usual="utilities are marked before digging, and exposed by hand within 24 in of a mark",
        do="Have utilities marked by 811 (the one-call center); wait until each owner has answered.",
        brief="Call 811, and wait for every owner to answer.",
        source="29 CFR 1926.651(b)(1), seen in print; local law on notice",
    )
    locate_expired = caution(
        "Locate expires before the pour",
        Severity.CAUTION,
        UtilityLocate.days_expired > 0,
        "The locate ticket expires before the last day of digging; the number is how many days.",
        UtilityLocate.days_expired,
        "days",
        usual="a ticket is good for two to four weeks, by state",
        do="Renew the ticket.",
        source="local law on notice",
    )
    pour_on_day_off = caution(
        "Pour on a day off",
        Severity.CAUTION,
        equals(CalendarMarks.pour_works, 0),
        joined("The pour date is no working day of the company: ", Calendar.pour_words, "."),
        Calendar.days_off,
        "days",
        usual="Monday to Friday, Saturday where the company works on it, no holidays",
        do="Ask the crew and the plant, or choose another day.",
        source="company book",
    )
    silica = caution(
        "Silica dust",
        Severity.NOTE,
        DustHours.all_tasks > 0,
        "Concrete is sawn, drilled, chipped or broken; the number is the hours.",
        DustHours.all_tasks,
        "h",
        usual="water at the blade or point, or a shroud and dust collector; a vacuum for drilled holes",
        do="Use tools that have them, and have a dust control plan on site.",
        brief="Tools with water or vacuum; a dust control plan.",
        source=_OSHA,
    )
    respirator = caution(
        "Long hours of chipping",
        Severity.CAUTION,
        DustHours.chipping > DustHours.max_without_respirator,
        "Breaking and chipping take longer than the hours a shift allows without a respirator.",
        DustHours.chipping,
        "h",
        usual="outdoors with water or a shroud: none up to 4 h a shift, then a protection factor of 10",
        do="Provide respirators that fit, or share the work.",
        source=_OSHA,
    )
    generator_exhaust = caution(
        "Generator exhaust",
        Severity.NOTE,
        look_up(Tool.hours, "generator") > 0,
        "A generator runs on site; the number is the hours.",
        look_up(Tool.hours, "generator"),
        "h",
        usual="outdoors, far from doors and windows; carbon monoxide has no smell",
        do="Place it downwind and in the open.",
        source="OSHA and CDC guidance, from memory",
    )
    concrete_burns = caution(
        "Wet concrete burns skin",
        Severity.NOTE,
        Order.placed > 0,
        "Wet concrete has a pH of 12 to 13.",
        Order.placed,
        "yd3",
        usual="waterproof gloves and boots, eye protection, clean water at hand",
        do="Wash skin at once; see a doctor for eyes and burns.",
        source="OSHA and NIOSH guidance, from memory",
    )
    washout = caution(
        "Concrete washout",
        Severity.NOTE,
        Order.trucks > 0,
        "Trucks wash out on site; the number is how many.",
        Order.trucks,
        "truck",
        usual="contained; never to a gutter, a drain or near trees",
        do="Set up a lined washout before the truck arrives.",
        source="NPDES construction permit guidance, seen in print",
    )
    shutoffs = caution(
        "Water and power shutoff",
        Severity.NOTE,
        either(Job.lines_to_cap > 0, Permissions.cables.is_("yes")),
        "Irrigation lines are capped, or lights or cables are near.",
        Job.lines_to_cap,
        "",
        usual="a line is capped at its source valve, not at its head; a licensed trade shuts off power",
        do="Agree who shuts off what, and state it on the proposal.",
        source="common practice, no source; local law on trades",
    )
    licensed_trade = caution(
        "Licensed trade",
        Severity.STOP,
        Permissions.licensed.is_("yes"),
        "A load-bearing wall, wiring or pipes are affected.",
        Job.lines_to_cap,
        "",
        usual="a licensed trade or an engineer does that part",
        do="Have it done by a licensed trade, and leave it out of this bid.",
        brief="Leave it to a licensed trade, outside this bid.",
        source="local law",
    )
    permits = caution(
        "Permits and documents",
        Severity.NOTE,
        either(
            not_(is_given(Terms.permit)),
            Permissions.right_of_way.is_("yes"),
            Permissions.client.is_("association"),
            Permissions.client.is_("school"),
            Permissions.client.is_("city"),
        ),
        when(
            is_given(Terms.permit),
            "The client or the location requires documents.",
            "Whether a permit is needed is not known.",
        ),
        total(Slab.net_area),
        "ft2",
        usual="permit, certificate of insurance, an association's letter, a city's detail sheet",
        do="Ask which documents are wanted, and type what a permit costs; 0 when none is needed.",
        brief="Ask what is wanted; type what a permit costs, or 0.",
        source="local law",
    )
