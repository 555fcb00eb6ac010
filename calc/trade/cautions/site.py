"""What to watch at work: dust, gas, lines in the ground, and who has to be asked first."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Job
from calc.trade.inputs.money import Terms
from calc.trade.inputs.pour import Crew
from calc.trade.inputs.site import Permissions
from calc.trade.takeoff.geometry import Slab
from calc.trade.work.equipment import Tool
from calc.trade.work.labor import Labor, Task

_OSHA = "29 CFR 1926.1153 table 1, partly from memory; OSHA and the state decide"


class DustHours(Section, title="Hours of dust", sheet="Costs"):
    """Cutting, drilling, chipping and breaking concrete make silica dust."""

    long_shift = factor(
        "Hours of chipping with no respirator, most",
        "h",
        4,
        low=1,
        high=4,
        source="29 CFR 1926.1153 table 1, from memory",
    )

    hammered = line(
        "Hours of breaking and chipping",
        "h",
        look_up(Task.hours, "break out slab") + look_up(Task.hours, "chip footings"),
        source="labor",
    )
    all_of_it = line(
        "Hours of dust, in all",
        "h",
        hammered
        + look_up(Task.hours, "demolition saw cut")
        + look_up(Task.hours, "saw-cut joints")
        + look_up(Task.hours, "drill dowels"),
        source="labor",
    )


class Locate(Section, title="Marks of buried lines", sheet="Costs"):
    """They hold for so long, by the state."""

    late = line(
        "Days that the locate is too short",
        "days",
        when(
            both(is_given(Job.pour_date), is_given(Permissions.locate_ends)),
            largest(0, days_between(Permissions.locate_ends, Job.pour_date)),
            0,
        ),
        source="pour date less the last day of the ticket; 0 where either is not known",
    )


class SiteCautions(Section, title="Cautions of the work", sheet="Checks"):
    """What was found, the number, the usual practice and who says so, and what to do. Local code always wins."""

    silica = caution(
        "Silica dust",
        Severity.NOTE,
        DustHours.all_of_it > 0,
        "Concrete is sawn, drilled, chipped or broken; the number is for how many hours.",
        DustHours.all_of_it,
        "h",
        usual="water fed to the blade or the point, or a shroud with a dust collector; a vacuum for drilled holes",
        do="Take the tools that have them, and have a plan for dust on the site.",
        source=_OSHA,
    )
    respirator = caution(
        "Long hours of chipping",
        Severity.CAUTION,
        DustHours.hammered > DustHours.long_shift,
        "Breaking and chipping take longer than a shift may without a respirator.",
        DustHours.hammered,
        "h",
        usual="outdoors with water or a shroud: none up to 4 h a shift, beyond that a protection factor of 10",
        do="Have respirators that fit, or share the work.",
        source=_OSHA,
    )
    exhaust = caution(
        "Exhaust of a generator",
        Severity.NOTE,
        look_up(Tool.hours, "generator") > 0,
        "A generator runs on the site; the number is for how many hours.",
        look_up(Tool.hours, "generator"),
        "h",
        usual="outdoors, far from doors and windows; carbon monoxide has no smell",
        do="Set it downwind and in the open.",
        source="OSHA and CDC guidance, from memory",
    )
    shut_off = caution(
        "Water and power shut off",
        Severity.NOTE,
        either(Job.lines_to_cap > 0, Permissions.cables.is_("yes")),
        "Irrigation lines are capped, or lamps or cables are near.",
        Job.lines_to_cap,
        "",
        usual="a line is capped at its source valve, not at its head; power by a licensed person",
        do="Agree who shuts off what, and say so on the proposal.",
        source="common practice, no source; local law on trades",
    )
    licensed = caution(
        "Licensed trade",
        Severity.STOP,
        Permissions.licensed.is_("yes"),
        "A wall that carries, wiring or pipes are touched.",
        Job.lines_to_cap,
        "",
        usual="a licensed trade or an engineer does that part",
        do="Have it done by who may, and leave it out of this bid.",
        source="local law",
    )
    locate_late = caution(
        "Locate expires before the pour",
        Severity.CAUTION,
        Locate.late > 0,
        "The marks of the buried lines are no longer good on the day of the pour; the number is by how many days.",
        Locate.late,
        "days",
        usual="a ticket holds two to four weeks, by the state",
        do="Have it renewed.",
        source="local law on notice",
    )
    permit = caution(
        "Papers to ask for",
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
            "The client or the place wants papers.",
            "Nobody said whether a permit is needed.",
        ),
        total(Slab.net_area),
        "ft2",
        usual="permit, insurance certificate, an association's letter, a city's detail sheet",
        do="Ask, and type what the permit costs; 0 when none is needed.",
        source="local law",
    )
    private_wages = caution(
        "Private wages for a public client",
        Severity.CAUTION,
        both(Crew.wages.is_("private"), either(Permissions.client.is_("school"), Permissions.client.is_("city"))),
        "A school or a city often has to pay prevailing wages.",
        Labor.hours,
        "h",
        usual="prevailing wages, certified payroll, a bid bond",
        do="Ask, and take the table of prevailing wages.",
        source="Davis-Bacon and state laws, from memory",
    )
    no_wage = caution(
        "Prevailing wage has no rate",
        Severity.STOP,
        both(Crew.wages.is_("prevailing"), Labor.known <= 0),
        "The job pays prevailing wages, and the house book has no rate for them.",
        Labor.hours,
        "h",
        usual="a rate for each role",
        do="Fill the column prevailing of Wages.",
        source="house rule",
    )
