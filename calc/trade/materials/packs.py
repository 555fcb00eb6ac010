"""The pack rule: three ways of buying a liquid that comes in two sizes, side by side, and the cheapest of them."""

from __future__ import annotations

from dataclasses import dataclass

from calc.declare import *
from calc.trade.levels import PACKING

ONE_DOLLAR = exact(1, "$")
ONE_GALLON = exact(1, "gal")
SMALL, LARGE, _ = PACKING.axis.words


@dataclass(frozen=True)
class Packs:
    """What the pack rule gives for one liquid."""

    sections: tuple[type[Section], ...]
    small: Line
    large: Line
    cost: Line
    way: Line
    can_win: Line
    next_known: Line
    next_way: Line
    next_more: Line


def packs(called: str, liquid: str, need: Line, small: Price, large: Price, sheet: str) -> Packs:
    """The cheapest packs that hold ``need``: all small, all large, or full large ones and the rest small.

    Ties go to the least left over, then to the first way. It is the true optimum when the large pack is a whole
    number of small ones and no dearer per gallon; else it is the cheapest of the three. A way whose price or size
    the house book does not give cannot win.
    """
    sizes = _sizes(called, liquid, small, large, sheet)

    class Ways(Section, title=f"Ways of buying {liquid}", each=PACKING, sheet=sheet, called=f"{called}Ways"):
        """All three ways that are worth a look; a way that lacks a price or a size cannot win."""

        way = line("Way", "", row_word(PACKING), source="the three ways of the pack rule")
        large_packs = line(
            "Large packs",
            "pack",
            when(
                either(is_word(row_word(PACKING), SMALL), sizes.large <= 0),
                0,
                when(is_word(row_word(PACKING), LARGE), round_up(need / sizes.large), round_down(need / sizes.large)),
            ),
            source="all of the need, or as many full ones as it holds",
        )
        rest = line(
            "Left for small packs",
            "gal",
            when(is_word(row_word(PACKING), LARGE), 0, largest(0, need - large_packs * sizes.large)),
            source="what the large packs leave",
        )
        small_packs = line(
            "Small packs",
            "pack",
            when(sizes.small > 0, round_up(rest / sizes.small), 0),
            source="whole packs for the rest",
        )
        holds = line(
            "They hold",
            "gal",
            large_packs * sizes.large + small_packs * sizes.small,
            source="packs times what one holds",
        )
        cost = line(
            "Cost",
            "$",
            money(large_packs * if_given(large, 0)) + money(small_packs * if_given(small, 0)),
            source="packs times price, each to the cent",
        )
        competes = line(
            "Can win",
            "",
            when(
                both(
                    either(is_word(row_word(PACKING), LARGE), sizes.small_known > 0),
                    either(is_word(row_word(PACKING), SMALL), sizes.large_known > 0),
                ),
                1,
                0,
            ),
            source="1 when the house book gives the prices and sizes it needs",
        )
        compared = line(
            "Cost compared",
            "$",
            when(competes > 0, cost, greatest(cost) + ONE_DOLLAR),
            source="a way that cannot win is put behind the dearest",
        )
        over = line("Left over", "gal", rounded(largest(0, holds - need), 3), source="held less needed")
        tie = line(
            "Left over of the cheapest",
            "gal",
            when(equals(compared, least(compared)), over, greatest(over) + ONE_GALLON),
            source="ties go to the least left over",
        )

    class Choice(Section, title=f"Packs of {liquid}", sheet=sheet, called=f"{called}Choice"):
        """The cheapest way, ties to the least left over."""

        winner = line("Row of the cheapest way", "", argmin(Ways.tie), source="least, first row wins")
        small_packs = line("Small packs to buy", "pack", at(Ways.small_packs, winner), source="of the cheapest way")
        large_packs = line("Large packs to buy", "pack", at(Ways.large_packs, winner), source="of the cheapest way")
        cost = line("Cost of the packs", "$", at(Ways.cost, winner), source="of the cheapest way")
        way = line("Cheapest way", "", at(Ways.way, winner), source="of the cheapest way")

        known = line("Ways that can win", "", total(Ways.competes), source="0 when no price is given")

    class Others(Section, title=f"Other packs of {liquid}", each=PACKING, sheet=sheet, called=f"{called}Others"):
        """What would be bought otherwise; two ways that come to the same packs are one."""

        differs = line(
            "Buys other packs",
            "",
            when(
                both(
                    Ways.competes > 0,
                    either(
                        not_(equals(Ways.large_packs.count, Choice.large_packs.count)),
                        not_(equals(Ways.small_packs.count, Choice.small_packs.count)),
                    ),
                ),
                1,
                0,
            ),
            source="1 for a way that can win and is not the cheapest in other words",
            adds=True,
        )
        compared = line(
            "Cost among the others",
            "$",
            when(differs > 0, Ways.cost, greatest(Ways.cost) + ONE_DOLLAR),
            source="what is no other way is put behind the dearest",
        )

    class Next(Section, title=f"Next packs of {liquid}", sheet=sheet, called=f"{called}Next"):
        """The cheapest of the others."""

        known = line("Other packs can be compared", "", total(Others.differs), source="0 when there are none")
        row = line("Row of the next packs", "", argmin(Others.compared), source="least, first row wins")
        way = line("Next packs", "", at(Ways.way, row), source="of that row")
        more = line(
            "The next packs cost more by",
            "$",
            when(known > 0, at(Ways.cost, row) - Choice.cost, 0),
            source="cost of the next packs less cost of the cheapest",
        )

    return Packs(
        (sizes.small.section, Ways, Choice, Others, Next),
        Choice.small_packs,
        Choice.large_packs,
        Choice.cost,
        Choice.way,
        Choice.known,
        Next.known,
        Next.way,
        Next.more,
    )


@dataclass(frozen=True)
class _Sizes:
    """What the house book says of the two packs, with 0 for what it does not say."""

    small: Line
    large: Line
    small_known: Line
    large_known: Line


def _sizes(called: str, liquid: str, small: Price, large: Price, sheet: str) -> _Sizes:
    holds_small, holds_large = small.size, large.size

    class Sizes(Section, title=f"What a pack of {liquid} holds", sheet=sheet, called=f"{called}Sizes"):
        """From the house book; 0 where it does not say."""

        small_holds = line("Small pack holds", "gal/pack", if_given(holds_small, 0), source="house book")
        large_holds = line("Large pack holds", "gal/pack", if_given(holds_large, 0), source="house book")
        small_known = line(
            "Small pack is known",
            "",
            when(both(is_given(small), small_holds > 0), 1, 0),
            source="1 when its price and its size are given",
        )
        large_known = line(
            "Large pack is known",
            "",
            when(both(is_given(large), large_holds > 0), 1, 0),
            source="1 when its price and its size are given",
        )

    return _Sizes(Sizes.small_holds, Sizes.large_holds, Sizes.small_known, Sizes.large_known)
