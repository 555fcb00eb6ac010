"""What a person types about the site for the checks: slopes, changes in level, use, and permissions."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import AREA

_TABLE = "Site conditions"
NOT_ASKED = "not asked"


class Permissions(Section, title="Permissions", table=_TABLE):
    """Facts that decide about permits, utilities and licensed work."""

    client = choice(
        "Client kind", NOT_ASKED, "owner", "association", "school", "city", default=NOT_ASKED, help="Kind of client."
    )
    right_of_way = yes_no("Right of way", help="Whether the work is in a public right of way.")
    lane_closed = choice(
        "Walk or lane closed",
        NOT_ASKED,
        "no",
        "yes",
        default=NOT_ASKED,
        help="Whether the work closes a public walk or a traffic lane.",
    )
    freezes = yes_no("Freeze-thaw site", help="Whether the slab will freeze while wet.")
    locate = text(
        "Locate ticket", help="Number of the 811 ticket for marking the underground utilities.", example="2604-1187"
    )
    locate_ends = date("Locate expires", help="Last day that the ticket is valid.", example="2026-05-11")
    cables = yes_no("Lights or cables near", help="Whether lights or cables are in or near the work.")
    licensed = yes_no(
        "Wall or wiring touched", help="Whether the work affects a load-bearing wall, wiring or plumbing."
    )
    outlet = yes_no("Drain outlet covered", help="Whether the new slab covers a drain outlet.")


class AreaUse(Section, title="Areas: use and slopes", each=AREA, table="Areas"):
    """The slopes of each area and what uses it. A blank slope is not checked."""

    cross_slope = slope(
        "Cross slope",
        low=0,
        high=20,
        ask_high=5,
        example="1.5%",
        help="Slope across the walk; not checked if blank.",
    )
    running_slope = slope(
        "Running slope", low=0, high=30, ask_high=10, example="3%", help="Slope along the walk; not checked if blank."
    )
    street_grade = slope(
        "Street grade",
        low=0,
        high=30,
        ask_high=10,
        example="4%",
        needs=(
            (Permissions.right_of_way, "yes"),
            "running_slope",
        ),
        help="Grade of the street beside a walk in a right of way, which the walk may follow; blank is 5 %.",
    )
    slopes_to_building = choice(
        "Slopes toward a building",
        NOT_ASKED,
        "no",
        "yes",
        default=NOT_ASKED,
        help="Whether water on the slab drains toward a building.",
    )
    vehicles = choice(
        "Vehicles",
        "none",
        "light",
        "heavy",
        default="none",
        help="Vehicles on the slab: light is cars, heavy is trucks.",
    )
    accessible_route = choice(
        "Accessible route",
        "auto",
        "yes",
        "no",
        default="auto",
        help="Whether it is part of an accessible route; auto is yes unless vehicles use it.",
    )
    clear_width = given(
        "Clear width",
        "ft",
        over=0,
        high=2000,
        ask_high=20,
        example="4",
        help="Minimum clear width of the walk; not checked if blank.",
    )
    level_change = given(
        "Vertical change in level",
        "in",
        default=0,
        low=0,
        high=6,
        ask_high=0.25,
        example="1/8",
        help="Change in level where it meets an existing slab.",
    )
