"""Forms: boards by the thicker edge of their area, stakes, and hardboard where an edge bends."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.areas import Area, Edge
from calc.trade.levels import AREA, BOARD, EDGE
from calc.trade.takeoff.geometry import EdgeTakeoff, MeanThickness

_SHEET = "Order and placing"
ONE_EACH = exact(1, "each")


def has_price(costs: PriceLine, level: Level) -> Expr:
    """1 in each row whose price the house book gives, so that a thing that costs nothing is not taken for unknown."""
    return by_row(level, *(when(is_given(each), 1, 0) for each in costs.prices))


class Stakes(Section, title="Stakes by edge", each=EDGE, sheet=_SHEET):
    """A run starts with a stake and has one more for every full or part space, closer where the form bends."""

    straight_space = factor("Stakes apart", "ft", 3, low=2, high=4, source="common practice, no source")
    curved_space = factor("Stakes apart on a curve", "ft", 1.5, low=1, high=2, source="common practice, no source")

    curved = line(
        "Formed, curved",
        "ft",
        when(Edge.curved.is_("yes"), EdgeTakeoff.formed, 0),
        source="formed edges that bend",
        adds=True,
    )
    straight = line("Formed, straight", "ft", EdgeTakeoff.formed - curved, source="formed edges that do not", adds=True)
    spaces = line(
        "Spaces of one run",
        "",
        round_up(Edge.length / when(Edge.curved.is_("yes"), curved_space, straight_space)),
        source="length of one piece over the space, rounded up",
    )
    stakes = line(
        "Stakes",
        "each",
        when(EdgeTakeoff.formed > 0, (spaces + 1) * Edge.quantity * Area.quantity, 0),
        source="one more than the spaces for each run: an edge, its repeats and the copies",
        adds=True,
    )


class Form(Section, title="Boards by area", each=AREA, sheet=_SHEET):
    """The boards of an area go by its nominal thickness, at the thicker edge where the slab tapers."""

    low_board = factor("A 2x4 forms up to", "in", 4, low=3.5, high=4, source="common practice, no source")
    middle_board = factor("A 2x6 forms up to", "in", 6, low=5.5, high=6, source="common practice, no source")

    thicker = line(
        "Thicker edge", "in", largest(Area.thickness, MeanThickness.far), source="of the two nominal thicknesses"
    )
    straight = line("Board along the area", "ft", total(Stakes.straight, AREA), source="sum of its straight forms")
    low = line("2x4 along it", "ft", when(thicker <= low_board, straight, 0), source="up to its limit", adds=True)
    middle = line(
        "2x6 along it",
        "ft",
        when(both(thicker > low_board, thicker <= middle_board), straight, 0),
        source="up to its limit",
        adds=True,
    )
    high = line("2x8 along it", "ft", straight - low - middle, source="what is thicker", adds=True)


class Board(Section, title="Form boards", each=BOARD, sheet=_SHEET):
    """A board is pulled, cleaned and used again: each job pays a share of it."""

    cost = prices("Form board", "$/ft", BOARD, help="A foot of that board, new.")
    uses = factor("Uses of a form board", "", 4, low=1, high=10, source="common practice, no source")

    length = line(
        "Boards",
        "ft",
        by_row(BOARD, total(Form.low), total(Form.middle), total(Form.high)),
        source="sum of the areas",
        adds=True,
    )
    charge = line(
        "Boards, their share", "$", money(length * cost / uses), source="length times price over its uses", adds=True
    )
    known = line(
        "Price of the board is known",
        "",
        when(either(length <= 0, has_price(cost, BOARD) > 0), 1, 0),
        source="1 when the house book gives it, or none is used",
    )


class FormNeeds(Section, title="Stakes, hardboard and oil", sheet=_SHEET):
    """What else the forms take."""

    stake_price = price("Form stake", "$/each", help="A stake, new.")
    hardboard_price = price("Hardboard for curves", "$/ft", help="A foot of strip that bends, new.")
    oil_price = price("Form oil", "$/each", help="What the forms of a job take, once.")
    stake_uses = factor("Uses of a stake", "", 8, low=2, high=20, source="common practice, no source")
    hardboard_uses = factor(
        "Uses of hardboard", "", 4, low=1, high=6, source="common practice, no source: as a board where it is kept flat"
    )

    formed = line("Forms, in all", "ft", total(EdgeTakeoff.formed), source="sum of the edges that are formed")
    stakes = line("Stakes to load", "each", total(Stakes.stakes), source="sum of the edges")
    stake_charge = line(
        "Stakes, their share",
        "$",
        money(stakes * if_given(stake_price, 0) / stake_uses),
        source="stakes times price over their uses",
    )
    hardboard_charge = line(
        "Hardboard, its share",
        "$",
        money(total(Stakes.curved) * if_given(hardboard_price, 0) / hardboard_uses),
        source="curved forms times price over its uses",
    )
    oil = line("Form oil", "each", when(formed > 0, ONE_EACH, 0), source="once, where anything is formed")
    oil_charge = line("Form oil, cost", "$", money(oil * if_given(oil_price, 0)), source="once")
    charge = line(
        "Forms, cost",
        "$",
        total(Board.charge) + stake_charge + hardboard_charge + oil_charge,
        source="boards, stakes, hardboard and oil",
    )
    known = line(
        "Prices of stakes, hardboard and oil are known",
        "",
        when(
            both(
                either(formed <= 0, both(is_given(stake_price), is_given(oil_price))),
                either(total(Stakes.curved) <= 0, is_given(hardboard_price)),
            ),
            1,
            0,
        ),
        source="1 when the house book gives what is used",
    )
