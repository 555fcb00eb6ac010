"""What a person says of the site so that the program can watch: slopes, lips, use, and who has to be asked."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import AREA

_TABLE = "Site conditions"
NOT_ASKED = "not asked"


class AreaUse(Section, title="Areas: use and slopes", each=AREA, table="Areas"):
    """How each area lies and what goes over it. A blank slope is not checked."""

    cross = slope(
        "Cross slope",
        low=0,
        high=20,
        ask_high=5,
        example="1.5%",
        help="Across the walk; blank is not checked.",
    )
    along = slope("Run slope", low=0, high=30, ask_high=10, example="3%", help="Along the walk; blank is not checked.")
    falls = choice(
        "Falls to a building",
        NOT_ASKED,
        "no",
        "yes",
        default=NOT_ASKED,
        help="Whether water on the slab runs toward a building.",
    )
    vehicles = choice("Vehicles", "none", "light", "heavy", default="none", help="What drives on it: cars, or trucks.")
    accessible = choice(
        "Accessible walk",
        "by use",
        "yes",
        "no",
        default="by use",
        help="Whether people in wheelchairs go over it; by use is yes, unless vehicles drive on it.",
    )
    clear = given(
        "Clear width",
        "ft",
        over=0,
        ask_high=20,
        example="4",
        help="Least clear width of the walk; blank is not checked.",
    )
    lip = given(
        "Lip", "in", default=0, low=0, high=6, ask_high=0.25, example="1/8", help="Step where it joins an old slab."
    )


class Permissions(Section, title="Who and what was asked", table=_TABLE):
    """Facts that cost nothing to ask, and much not to."""

    client = choice(
        "Client kind", NOT_ASKED, "owner", "association", "school", "city", default=NOT_ASKED, help="Who the client is."
    )
    right_of_way = yes_no("Right of way", help="Whether it lies in a public right of way.")
    freezes = yes_no("Freeze-thaw site", help="Whether the slab freezes while it is wet.")
    locate = text("Locate ticket", help="Number of the ticket that had the buried lines marked.", example="2604-1187")
    locate_ends = date("Locate expires", help="The last day of the ticket.", example="2026-05-11")
    cables = yes_no("Lights or cables near", help="Whether lamps or cables stand in or beside the work.")
    licensed = yes_no("Wall or wiring touched", help="Whether a wall that carries, or wiring or pipes, are touched.")
    outlet = yes_no("Outlet covered", help="Whether the new slab covers an outlet of a drain.")
