"""Who is on a pour and for how long: for each placing method that is compared, and for the order as it stands.

Placers leave when the slab is finished; finishers stay until the concrete can no longer be finished; one of them stays
to saw joints. Everybody finishes.
"""

from __future__ import annotations

from dataclasses import dataclass, fields

from calc.declare import *
from calc.trade.inputs.job import Site
from calc.trade.inputs.pour import Crew
from calc.trade.inputs.work import OnSite
from calc.trade.takeoff.joints import JointNeeds
from calc.trade.work.pour_work import CURING, SAWING, PourHours
from calc.trade.work.prep_visit import PrepVisit
from calc.trade.work.visit_rules import VisitRules, beyond_day, paid_hours

_SHEET = "Order and placing"


class SawDelay(Section, title="When joints are sawn", sheet=_SHEET):
    """Sawn too early the edges ravel, too late the slab has cracked."""

    usual = factor(
        "Sawing begins after finishing",
        "h",
        4,
        low=4,
        high=12,
        source="NRMCA CIP 6: 4 to 12 h after finishing with a conventional saw, from memory",
    )
    early = factor(
        "Early-entry sawing begins after finishing",
        "h",
        1,
        low=1,
        high=4,
        source="ACI 302.1R: 1 to 4 h after finishing with an early-entry saw, from memory",
    )

    after = line(
        "Sawing begins, after the finishing window",
        "h",
        when(Site.joint_method.is_("early-entry"), early, usual),
        source="by the kind of saw",
    )


@dataclass(frozen=True)
class Placed:
    """How the concrete is placed: heads, elapsed time, finishing window on site, hours of the task, whether by bags."""

    heads: Expr
    elapsed: Expr
    window: Expr
    task_hours: Expr
    by_bags: Expr


@dataclass(frozen=True)
class PourLines:
    """The lines of a pour that other rules read."""

    section: type[Section]
    heads: Line
    elapsed: Line
    people: Line
    placers: Line
    finishers: Line
    placer_time: Line
    finisher_time: Line
    finishing_ends: Line
    saw_time: Line
    longest: Line
    is_shared: Line
    window: Line
    laborer_paid: Line
    finisher_paid: Line
    task_hours: Line
    beyond_laborer: Line
    beyond_finisher: Line
    long_laborer: Line
    long_finisher: Line


def pour_people(called: str, title: str, level: Level, how: Placed) -> PourLines:
    """The people of a pour and their hours; one from bags shares the only preparation visit where it fits the day."""

    class People(Section, title=title, each=level, sheet=_SHEET, called=called):
        """Hours of one person unless said; never more people than the crew."""

        heads = line("People who place or mix", "", how.heads, source="placing crew, or the mixing crew of bags")
        elapsed = line("Elapsed placing", "h", how.elapsed, source="placing method")
        window = line("Finishing window on site, pour", "h", how.window, source="less the drive; bags have none")
        most_finishers = line(
            "Finishers, at most", "", smallest(Crew.finishing.count, OnSite.crew.count), source="as typed, and the crew"
        )
        finishers = line(
            "Finishers on the pour",
            "",
            when(
                window > elapsed,
                largest(1, smallest(most_finishers, round_up(PourHours.finishing / (window - elapsed)))),
                most_finishers,
            ),
            source="finishing and tooling hours over the window left after placing, rounded up, as far as typed",
        )
        own_people = line(
            "People on the pour alone", "", smallest(OnSite.crew.count, heads + finishers), source="at most the crew"
        )
        own_placer_time = line(
            "Placer on site, pour alone",
            "h",
            elapsed + PourHours.shared / own_people,
            source="placing, then the shared hours over all people",
        )
        finishing_ends = line(
            "Finisher on site, pour alone",
            "h",
            largest(own_placer_time, window + CURING / own_people),
            source="not before the finishing window ends, then curing",
        )
        own_saw_time = line(
            "Sawyer on site, pour alone",
            "h",
            when(
                JointNeeds.saw_cut > 0,
                largest(finishing_ends, window + SawDelay.after + SAWING),
                0,
            ),
            source="sawing begins after the finishing window; 0 if nothing is sawn",
        )
        own_longest = line(
            "Longest person, pour alone",
            "h",
            largest(when(own_people > finishers, own_placer_time, 0), finishing_ends, own_saw_time),
            source="placer, finisher or sawyer",
        )
        people_together = line(
            "People, with preparation",
            "",
            largest(own_people, PrepVisit.people),
            source="the greater of the two visits",
        )
        prep_time = line(
            "Preparation time of a person",
            "h",
            PrepVisit.hours / largest(1, people_together),
            source="preparation hours over the people of both visits",
        )
        is_shared = line(
            "Pour shares the preparation visit",
            "",
            when(
                both(how.by_bags > 0, equals(PrepVisit.visits, 1), prep_time + own_longest <= VisitRules.prep_day),
                1,
                0,
            ),
            source="1 for bags, with one preparation visit, if the longest person's hours fit a preparation day",
        )
        people = line(
            "People on the pour visit", "", when(is_shared > 0, people_together, own_people), source="shared or alone"
        )
        placers = line("Placers on the pour visit", "", people - finishers, source="people less finishers")
        placer_time = line(
            "Placer on site", "h", own_placer_time + is_shared * prep_time, source="with preparation where it is shared"
        )
        finisher_time = line(
            "Finisher on site",
            "h",
            finishing_ends + is_shared * prep_time,
            source="with preparation where it is shared",
        )
        saw_time = line(
            "Sawyer on site",
            "h",
            when(own_saw_time > 0, own_saw_time + is_shared * prep_time, 0),
            source="with preparation where it is shared; 0 if nothing is sawn",
        )
        longest = line(
            "Longest person on site",
            "h",
            largest(when(placers > 0, placer_time, 0), finisher_time, saw_time),
            source="placer, finisher or sawyer",
        )
        placer_paid = line("Paid hours of a placer", "h", paid_hours(placer_time), source="visit rules")
        a_finisher_paid = line("Paid hours of a finisher", "h", paid_hours(finisher_time), source="visit rules")
        sawyer_paid = line(
            "Paid hours of the finisher who saws",
            "h",
            when(saw_time > 0, paid_hours(saw_time), a_finisher_paid),
            source="visit rules; as the others if nothing is sawn",
        )
        laborer_paid = line("Paid hours, placers", "h", placers * placer_paid, source="placers times their hours")
        finisher_paid = line(
            "Paid hours, finishers",
            "h",
            (finishers - 1) * a_finisher_paid + sawyer_paid,
            source="finishers times their hours, one of them sawing",
        )
        task_hours = line(
            "Hours on tasks of the visit",
            "h",
            PourHours.shared + SAWING + how.task_hours + is_shared * PrepVisit.hours,
            source="placing or mixing, shared hours and sawing; with preparation where it is shared",
        )
        beyond = line(
            "Time beyond tasks of the visit",
            "h",
            largest(0, laborer_paid + finisher_paid - task_hours),
            source="paid hours less hours on tasks",
        )
        beyond_laborer = line(
            "Time beyond tasks, placers",
            "h",
            beyond * laborer_paid / (laborer_paid + finisher_paid),
            source="in the ratio of their paid hours",
        )
        beyond_finisher = line(
            "Time beyond tasks, finishers",
            "h",
            beyond * finisher_paid / (laborer_paid + finisher_paid),
            source="in the ratio of their paid hours",
        )
        long_laborer = line(
            "Hours beyond a day, placers", "h", placers * beyond_day(placer_paid), source="paid hours beyond a day"
        )
        long_finisher = line(
            "Hours beyond a day, finishers",
            "h",
            (finishers - 1) * beyond_day(a_finisher_paid) + beyond_day(sawyer_paid),
            source="paid hours beyond a day",
        )

    lines = {each.name: getattr(People, each.name) for each in fields(PourLines) if each.name != "section"}
    return PourLines(section=People, **lines)
