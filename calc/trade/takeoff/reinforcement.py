"""Reinforcement: bars both ways or wire mesh, what holds it up, and the vapor retarder under it.

It holds cracks together and does not replace joints. Macro fiber in the mix is not counted here.
"""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.areas import Area
from calc.trade.levels import AREA, BAR, BAR_WAY
from calc.trade.takeoff.geometry import Slab
from calc.trade.takeoff.joints import Panel

_SHEET = "Order and placing"
HUNDRED, ONE_ROLL = exact(100), exact(1, "pack")


class BarSize(Section, title="Bar sizes", each=BAR, sheet=_SHEET):
    """Nominal diameter and weight by size; the size number is the diameter in eighths of an inch."""

    diameter = factors("Bar diameter, nominal", "in", 0.375, 0.5, 0.625, source="ASTM A615, table of bar sizes")
    weight = factors("Bar weight", "lb/ft", 0.376, 0.668, 1.043, source="ASTM A615, table of bar sizes")
    cost = prices("Reinforcing bar", "$/bar", BAR, help="Price per stock bar of that size, uncut.")


class SlabSides(Section, title="Sides for reinforcement", each=AREA, sheet=_SHEET):
    """An area without two sides is taken for a square of the same size."""

    edge_clearance = factor(
        "Reinforcement, clear of the edge",
        "in",
        3,
        low=2,
        high=6,
        source="ACI 318, cover of 3 in to earth at the edge of a slab on ground, from memory",
    )

    each = line("Net area of one", "ft2", Slab.net_area / Area.quantity, source="net area over the quantity")
    square_side = line("Side of a square as large", "ft", square_root(each), source="root of the net area of one")
    first = line(
        "First side", "ft", when(Panel.two_sides > 0, Panel.first_side, square_side), source="of the shape, or a square"
    )
    second = line(
        "Second side",
        "ft",
        when(Panel.two_sides > 0, Panel.second_side, square_side),
        source="of the shape, or a square",
    )
    longer = line("Longer side", "ft", largest(first, second), source="of the two")
    shorter = line("Shorter side", "ft", smallest(first, second), source="of the two")
    has_bars = line("Has bars", "", when(Area.reinforcement.is_("bars"), 1, 0), source="input")
    has_mesh = line("Has wire mesh", "", when(Area.reinforcement.is_("mesh"), 1, 0), source="input")


class BarMat(Section, title="Bars by direction", each=AREA * BAR_WAY, sheet=_SHEET):
    """Bars side by side along one side, each as long as the other side; longer than a stock bar, they lap."""

    stock_length = factor("Stock length of a reinforcing bar", "ft", 20, low=20, high=60, source="common practice")
    lap_diameters = factor(
        "Lap, times the bar diameter",
        "",
        40,
        low=30,
        high=60,
        source="common practice, no source; ACI 318 and the drawings govern",
    )

    spread = line(
        "Width that the bars are spread over",
        "ft",
        largest(0, by_row(BAR_WAY, SlabSides.first, SlabSides.second) - TWO * SlabSides.edge_clearance / IN_PER_FT),
        source="side less the clearance at both ends",
    )
    length = line(
        "Bar length",
        "ft",
        largest(0, by_row(BAR_WAY, SlabSides.second, SlabSides.first) - TWO * SlabSides.edge_clearance / IN_PER_FT),
        source="other side less the clearance at both ends",
    )
    bars = line(
        "Bars of one area",
        "bar",
        when(
            both(SlabSides.has_bars > 0, length > 0),
            count_of(round_up(spread * IN_PER_FT / Area.bar_spacing) + 1, "bar"),
            0,
        ),
        source="width over spacing, rounded up, plus one",
    )
    laps = line(
        "Laps in a bar",
        "",
        largest(0, round_up(length / stock_length) - 1),
        source="length over a stock bar, rounded up, less one",
    )
    length_with_laps = line(
        "Bar length with laps",
        "ft",
        length + laps * lap_diameters * look_up(BarSize.diameter, Area.bar_size) / IN_PER_FT,
        source="each lap is so many bar diameters long",
    )
    pieces = line(
        "Pieces in a stock bar",
        "",
        when(length > 0, largest(1, round_down(stock_length / length)), 1),
        source="stock length over bar length, rounded down",
    )
    of_pieces = line(
        "Stock bars, cut to pieces",
        "bar",
        count_of(round_up(bars.count * Area.quantity / pieces), "bar"),
        source="bars of all copies over pieces in a stock bar, rounded up",
    )
    stock_bars = line(
        "Stock bars to buy",
        "bar",
        when(laps > 0, bars * Area.quantity * round_up(length_with_laps / stock_length), of_pieces),
        source="cut to pieces; a lapped bar takes whole stock bars",
        adds=True,
    )
    weight = line(
        "Weight of the bars",
        "lb",
        bars.count * length_with_laps * look_up(BarSize.weight, Area.bar_size) * Area.quantity,
        source="bars times length with laps times weight, all copies",
        adds=True,
    )


class Reinforcement(Section, title="Reinforcement", each=AREA, sheet=_SHEET):
    """Bars both ways, or sheets of mesh that lap both ways; of all copies together."""

    support_area = factor(
        "Slab area per bar support", "ft2", 16, low=9, high=25, source="common practice, no source: every 4 ft"
    )
    tied_share = factor(
        "Crossings tied", "%", 50, low=25, high=100, source="common practice, no source: every other crossing"
    )
    sheet_length = factor("Mesh sheet length", "ft", 10, low=8, high=20, source="common practice: sheets of 5 by 10 ft")
    sheet_width = factor("Mesh sheet width", "ft", 5, low=5, high=8, source="common practice: sheets of 5 by 10 ft")
    sheet_lap = factor("Mesh lap", "ft", 0.5, low=0.5, high=1, source="WRI: one square and 2 in, at least 6 in; memory")
    sheet_waste = factor(
        "Mesh waste, shapes without two sides", "%", 15, low=10, high=25, source="common practice, no source"
    )

    crossings = line(
        "Crossings of one area",
        "",
        at(BarMat.bars, exact(1), of=AREA).count * at(BarMat.bars, TWO, of=AREA).count,
        source="bars one way times bars the other way",
    )
    supports = line(
        "Bar supports",
        "each",
        when(SlabSides.has_bars > 0, count_of(round_up(Slab.net_area / support_area), "each"), 0),
        source="area over the area of one, rounded up",
        adds=True,
    )
    ties = line(
        "Bar ties",
        "each",
        count_of(crossings * Area.quantity * tied_share / PERCENT, "each"),
        source="crossings of all copies times the share that is tied",
        adds=True,
    )
    rows_along = line(
        "Mesh sheets along the longer side",
        "",
        when(
            sheet_length > sheet_lap,
            largest(0, round_up((SlabSides.longer - sheet_lap) / (sheet_length - sheet_lap))),
            0,
        ),
        source="side less a lap, over a sheet less a lap, rounded up",
    )
    rows_across = line(
        "Mesh sheets along the shorter side",
        "",
        when(
            sheet_width > sheet_lap,
            largest(0, round_up((SlabSides.shorter - sheet_lap) / (sheet_width - sheet_lap))),
            0,
        ),
        source="side less a lap, over a sheet less a lap, rounded up",
    )
    by_sides = line(
        "Mesh sheets, by sides",
        "each",
        count_of(largest(1, rows_along * rows_across) * Area.quantity, "each"),
        source="sheets both ways, at least one, times the copies",
    )
    by_area = line(
        "Mesh sheets, by area",
        "each",
        count_of(round_up(Slab.net_area * (1 + sheet_waste / PERCENT) / (sheet_length * sheet_width)), "each"),
        source="area with waste over a sheet, rounded up",
    )
    sheets = line(
        "Mesh sheets",
        "each",
        when(SlabSides.has_mesh > 0, when(Panel.two_sides > 0, by_sides, by_area), 0),
        source="by sides, else by area",
        adds=True,
    )
    mesh_area = line(
        "Slab with mesh", "ft2", SlabSides.has_mesh * Slab.net_area, source="area, if it has mesh", adds=True
    )
    vapor_area = line(
        "Slab on a vapor retarder",
        "ft2",
        when(Area.vapor_retarder.is_("yes"), Slab.net_area, 0),
        source="area, if it has one",
        adds=True,
    )


class AreaBars(Section, title="Stock bars by area", each=AREA, sheet=_SHEET):
    """With the size of its bars."""

    size = line("Size of its bars", "", joined(Area.bar_size), source="input")
    stock_bars = line("Stock bars of the area", "bar", total(BarMat.stock_bars, AREA), source="both ways")


class BarsToBuy(Section, title="Stock bars by size", each=BAR, sheet=_SHEET):
    """Of all areas with bars of that size."""

    count = line(
        "Stock bars to buy, by size",
        "bar",
        total_where(AreaBars.stock_bars, AreaBars.size, row_word(BAR)),
        source="sum of the areas with bars of that size",
        adds=True,
    )


class ReinforcementNeeds(Section, title="Reinforcement to buy", sheet=_SHEET):
    """Ties by the hundred, vapor retarder by the roll, both for the job."""

    support_price = price("Bar support", "$/each", help="Price per chair or block.")
    ties_price = price("Bar ties, per hundred", "$/pack", help="Price per hundred ties.")
    mesh_price = price("Wire mesh sheet", "$/each", help="Price per sheet of the size on Factors.")
    vapor_price = price(
        "Vapor retarder roll", "$/pack", pack="ft2/pack", help="Price per roll, and the area that it covers."
    )
    vapor_lap = factor("Vapor retarder laps", "%", 10, low=5, high=20, source="ASTM E1643: laps of 6 in, from memory")

    tie_hundreds = line(
        "Bar ties to buy, hundreds",
        "pack",
        count_of(round_up(total(Reinforcement.ties).count / HUNDRED), "pack"),
        source="sum of the areas, rounded up to a hundred",
    )
    vapor_area = line(
        "Vapor retarder with laps",
        "ft2",
        total(Reinforcement.vapor_area) * (1 + vapor_lap / PERCENT),
        source="area plus laps",
    )
    roll = line("Area of a roll", "ft2/pack", if_given(vapor_price.size, 0), source="Prices")
    vapor_rolls = line(
        "Vapor retarder rolls",
        "pack",
        when(roll > 0, round_up(vapor_area / roll), when(vapor_area > 0, ONE_ROLL, 0)),
        source="area with laps over a roll, rounded up; one where a roll has no size",
    )
