"""The sheets of the story that are worked out, in their order."""

from __future__ import annotations

from calc.declare import *
from calc.trade.story.costs import COSTS
from calc.trade.story.hauling import DIG_AND_HAUL
from calc.trade.story.ordering import ORDER_AND_PLACING
from calc.trade.story.takeoff import TAKEOFF

STORY: tuple[story.StorySheet, ...] = (TAKEOFF, DIG_AND_HAUL, ORDER_AND_PLACING, COSTS)
"""Every sheet of the story with lines of its own."""
