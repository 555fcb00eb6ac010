"""Forms: form lumber by the thicker edge of each area, stakes, and bender board on curves."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.areas import Area, Edge
from calc.trade.levels import AREA, BOARD, EDGE
from calc.trade.takeoff.geometry import EdgeTakeoff, MeanThickness

_SHEET = "Order and placing"


def has_price(costs: PriceLine, level: Level) -> Expr:
    """1 in each row whose price is in the company book, so that a price of $0 is not taken for unknown."""
    return by_row(level, *(when(is_given(each), 1, 0) for each in costs.prices))


class Stakes(Section, title="Form stakes by edge", each=EDGE, sheet=_SHEET):
    """A run of form has one stake more than it has spaces; stakes stand closer on a curve."""

    straight_spacing = factor("Stake spacing", "ft", 3, low=2, high=4, source="common practice, no source")
    curved_spacing = factor("Stake spacing on a curve", "ft", 1.5, low=1, high=2, source="common practice, no source")

    curved = line(
        "Curved forms",
        "ft",
        when(Edge.curved.is_("yes"), EdgeTakeoff.formed, 0),
        source="formed edges marked curved",
        adds=True,
    )
    straight = line(
        "Straight forms", "ft", EdgeTakeoff.formed - curved, source="formed edges less the curved ones", adds=True
    )
    spacing = line(
        "Stake spacing used",
        "ft",
        when(Edge.curved.is_("yes"), curved_spacing, straight_spacing),
        source="closer on a curve",
    )
    spaces = line(
        "Stake spaces per run",
        "",
        round_up(Edge.length / spacing),
        source="length of one piece over the stake spacing, rounded up",
    )
    stakes = line(
        "Form stakes",
        "each",
        when(EdgeTakeoff.formed > 0, (spaces + 1) * Edge.quantity * Area.quantity, 0),
        source="spaces plus one, for each run: edge times repeats times copies",
        adds=True,
    )


class Form(Section, title="Form lumber by area", each=AREA, sheet=_SHEET):
    """Form lumber is chosen by nominal thickness, at the thicker edge where the slab tapers."""

    max_for_2x4 = factor(
        "Maximum thickness formed by 2x4", "in", 4, low=3.5, high=4, source="common practice, no source"
    )
    max_for_2x6 = factor(
        "Maximum thickness formed by 2x6", "in", 6, low=5.5, high=6, source="common practice, no source"
    )

    thickness = line(
        "Thickness at the thicker edge",
        "in",
        largest(Area.thickness, MeanThickness.other_end),
        source="larger of the two nominal thicknesses",
    )
    straight = line("Form lumber of the area", "ft", total(Stakes.straight, AREA), source="sum of the straight forms")
    lumber_2x4 = line(
        "2x4 form lumber",
        "ft",
        when(thickness <= max_for_2x4, straight, 0),
        source="straight forms, where the thickness is within its limits",
        adds=True,
    )
    lumber_2x6 = line(
        "2x6 form lumber",
        "ft",
        when(both(thickness > max_for_2x4, thickness <= max_for_2x6), straight, 0),
        source="straight forms, where the thickness is within its limits",
        adds=True,
    )
    lumber_2x8 = line(
        "2x8 form lumber", "ft", straight - lumber_2x4 - lumber_2x6, source="straight forms that are thicker", adds=True
    )


class Board(Section, title="Form lumber", each=BOARD, sheet=_SHEET):
    """Form lumber is stripped, cleaned and reused: each job pays its share."""

    cost = prices("Form lumber", "$/ft", BOARD, help="Price per foot of that form lumber, new.")
    reuses = factor("Reuses of form lumber", "", 4, low=1, high=10, source="common practice, no source")

    length = line(
        "Form lumber length",
        "ft",
        by_row(BOARD, total(Form.lumber_2x4), total(Form.lumber_2x6), total(Form.lumber_2x8)),
        source="sum of the areas",
        adds=True,
    )
    charge = line(
        "Form lumber, share of reuse",
        "$",
        money(length * cost / reuses),
        source="length times price over reuses",
        adds=True,
    )


class FormNeeds(Section, title="Stakes, bender board and release agent", sheet=_SHEET):
    """The other materials of the forms."""

    stake_price = price("Form stake", "$/each", help="Price per stake, new.")
    bender_board_price = price("Bender board", "$/ft", help="Price per foot of bender board, new.")
    release_agent_price = price("Form release agent", "$/each", help="Price per job: what the forms of one job take.")
    stake_reuses = factor("Reuses of a form stake", "", 8, low=2, high=20, source="common practice, no source")
    bender_board_reuses = factor(
        "Reuses of bender board",
        "",
        4,
        low=1,
        high=6,
        source="common practice, no source: as often as lumber if it is stored flat",
    )

    stake_charge = line(
        "Form stakes, share of reuse",
        "$",
        money(total(Stakes.stakes) * if_given(stake_price, 0) / stake_reuses),
        source="stakes times price over reuses",
    )
    bender_board_charge = line(
        "Bender board, share of reuse",
        "$",
        money(total(Stakes.curved) * if_given(bender_board_price, 0) / bender_board_reuses),
        source="curved forms times price over reuses",
    )
    release_agent = line(
        "Form release agent, per job",
        "each",
        when(total(EdgeTakeoff.formed) > 0, 1, 0),
        source="1 if anything is formed",
    )
    release_agent_charge = line(
        "Form release agent, cost",
        "$",
        money(release_agent * if_given(release_agent_price, 0)),
        source="quantity times price",
    )
    charge = line(
        "Forms, total cost",
        "$",
        total(Board.charge) + stake_charge + bender_board_charge + release_agent_charge,
        source="form lumber, stakes, bender board and release agent",
    )
