"""The clock of the loads: when each pile's first load leaves, and when the vehicle is back from the last.

One vehicle hauls pile after pile while the crew fills the next load. Hours count from the start of work on the first
day; a day ends after the hours on site of a preparation day. A limit: own driving takes nobody from the crew.
"""

from __future__ import annotations

from dataclasses import dataclass

from calc.declare import *
from calc.trade.hauling.disposal_options import BestDisposal, LoadCount
from calc.trade.hauling.piles import LoadMix
from calc.trade.hauling.plan_hours import PlanHours
from calc.trade.hauling.plans import GreenInOrder, PilesInOrder
from calc.trade.levels import PLAN, PLANT, VEHICLE
from calc.trade.work.visit_rules import VisitRules

_ONE_LOAD = exact(1, "load")


@dataclass(frozen=True)
class Clock:
    """The lines of the clock of the pile in one place of the order."""

    section: type[Section]
    ready: Line
    first_leaves: Line
    back: Line
    last_day: Line
    days: Line


def day_of(hours: Expr) -> Expr:
    """The workday that an hour of work falls on; the last moment of a day belongs to it."""
    return largest(1, round_up(hours / VisitRules.prep_day))


def _shared_day(first_day: Expr, day_before: Expr | int) -> Expr | int:
    """1 where the last load of the pile before has the same workday; nothing is before the first pile."""
    return when(equals(first_day, day_before), 1, 0) if isinstance(day_before, Expr) else 0


def _clock(called: str, word: str, pile: Line, before_it: Clock | None, needs: Level = JOB) -> Clock:
    """The clock of the pile in this place of the order, after the pile of the place before it.

    ``pile`` is its number in each plan. Of a job without rows of ``needs`` no pile ever has this place.
    """
    ready_before: Expr | int = before_it.ready if before_it else 0
    back_before: Expr | int = before_it.back if before_it else 0
    day_before: Expr | int = before_it.last_day if before_it else 0

    class PileClock(
        Section,
        title=f"Clock of the loads, {word}",
        each=PLAN * VEHICLE,
        sheet="Dig and haul",
        needs=needs,
        called=called,
    ):
        """A load leaves when it is filled and the vehicle is back."""

        loads = line(
            "Loads",
            "load",
            when(pile > 0, at(LoadCount.loads, largest(1, pile), of=VEHICLE), 0),
            source="looked up by row",
        )
        trip = line(
            "Round trip",
            "h",
            when(pile > 0, at(BestDisposal.trip, largest(1, pile), of=VEHICLE), 0),
            source="looked up by row",
        )
        filling = line(
            "Time to loosen and load",
            "h",
            when(
                loads > 0,
                at(LoadMix.by_hand, largest(1, pile)) / largest(1, PlanHours.people)
                + at(LoadMix.by_machine, largest(1, pile)),
                0,
            ),
            source="hours by hand over the people, plus hours by machine",
        )
        ready = line(
            "Last load is filled",
            "h",
            filling + ready_before,
            source="after the pile before it",
        )
        first_leaves = line(
            "First load leaves",
            "h",
            when(loads > 0, largest(ready - filling + filling / largest(1, loads.count), back_before), 0),
            source="when it is filled, and the vehicle is back from the pile before it",
        )
        back = line(
            "Back from the last load",
            "h",
            when(
                loads > 0,
                largest(ready, first_leaves + (loads - _ONE_LOAD).count * trip) + trip,
                back_before,
            ),
            source="when the last load is filled and the vehicle is back from those before it, plus a round trip",
        )
        first_day = line(
            "Workday of the first load", "", when(loads > 0, day_of(first_leaves + trip), 0), source="when it is back"
        )
        last_day = line(
            "Workday of the last load", "", when(loads > 0, day_of(back), day_before), source="when it is back"
        )
        days = line(
            "Workdays added",
            "",
            when(loads > 0, smallest(loads.count, last_day - first_day + 1) - _shared_day(first_day, day_before), 0),
            source="from the first to the last, at most one for each load; not one that the pile before it shares",
        )

    return Clock(
        PileClock,
        PileClock.ready,
        PileClock.first_leaves,
        PileClock.back,
        PileClock.last_day,
        PileClock.days,
    )


GREEN_CLOCK = _clock("GreenClock", "green waste", GreenInOrder.pile, None, PLANT)
CONCRETE_CLOCK = _clock("ConcreteClock", "concrete debris", PilesInOrder.concrete, GREEN_CLOCK)
SOIL_CLOCK = _clock("SoilClock", "soil", PilesInOrder.soil, CONCRETE_CLOCK)
MIXED_CLOCK = _clock("MixedClock", "mixed", PilesInOrder.mixed, SOIL_CLOCK)
CLOCKS = (GREEN_CLOCK, CONCRETE_CLOCK, SOIL_CLOCK, MIXED_CLOCK)
"""In the order in which the piles are hauled."""
