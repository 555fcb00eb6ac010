"""Pail rule: three ways to buy a liquid that comes in two sizes, and the cheapest of them."""

from __future__ import annotations

from dataclasses import dataclass

from calc.declare import *
from calc.trade.levels import PACKING

_ONE_DOLLAR = exact(1, "$")
_ONE_GALLON = exact(1, "gal")
SMALL, LARGE, _ = PACKING.axis.words


@dataclass(frozen=True)
class Packs:
    """The lines of the pail rule for one liquid."""

    sections: tuple[type[Section], ...]
    small: Line
    large: Line
    cost: Line
    way: Line
    can_win: Line
    next_known: Expr
    next_way: Line
    next_more: Line


def packs(called: str, liquid: str, need: Line, small: Price, large: Price, sheet: str, needs: Level = JOB) -> Packs:
    """The cheapest pails that hold ``need``, in gal: all small, all large, or full large ones and the rest small.

    Ties go to the smallest surplus, then to the first way. It is the true optimum if the large size is a whole
    multiple of the small one and no more expensive per gallon; else it is the cheapest of the three. A way whose
    price or size is not in the company book is not eligible.
    """
    sizes = _sizes(called, liquid, need, small, large, sheet, needs)

    class Ways(
        Section, title=f"Pail options, {liquid}", each=PACKING, sheet=sheet, needs=needs, called=f"{called}Ways"
    ):
        """Small pails only, 5-gal pails only, or both; a way without price or size is not eligible."""

        way = line("Pails", "", row_word(PACKING), source="the three ways to buy")
        large_packs = line(
            "5-gal pails",
            "pack",
            when(
                is_word(row_word(PACKING), SMALL),
                0,
                when(is_word(row_word(PACKING), LARGE), round_up(sizes.filled), round_down(sizes.filled)),
            ),
            source="for all of it, or as many as are filled completely",
        )
        rest = line(
            "Remainder for small pails",
            "gal",
            when(is_word(row_word(PACKING), LARGE), 0, largest(0, need - large_packs * sizes.large)),
            source="required volume less 5-gal pails times their size",
        )
        small_packs = line(
            "Small pails",
            "pack",
            when(sizes.small > 0, round_up(rest / sizes.small), 0),
            source="remainder over pail size, rounded up",
        )
        holds = line(
            "Volume bought",
            "gal",
            large_packs * sizes.large + small_packs * sizes.small,
            source="pails times their size",
        )
        cost = line(
            "Pail cost",
            "$",
            money(large_packs * if_given(large, 0)) + money(small_packs * if_given(small, 0)),
            source="pails times price, each size to the cent",
        )
        competes = line(
            "Eligible",
            "each",
            when(
                both(
                    either(is_word(row_word(PACKING), LARGE), sizes.small_known),
                    either(is_word(row_word(PACKING), SMALL), sizes.large_known),
                ),
                1,
                0,
            ),
            source="1 if the company book has the prices and sizes",
        )
        compared = line(
            "Pail cost compared",
            "$",
            when(competes > 0, cost, greatest(cost) + _ONE_DOLLAR),
            source="a way that is not eligible is ranked behind the highest cost",
        )
        over = line("Surplus volume", "gal", rounded(largest(0, holds - need), 3), source="volume bought less required")
        tie = line(
            "Surplus volume, as tie-breaker",
            "gal",
            when(equals(compared, least(compared)), over, greatest(over) + _ONE_GALLON),
            source="ties go to the smallest surplus",
        )

    class Choice(Section, title=f"Pails to buy, {liquid}", sheet=sheet, needs=needs, called=f"{called}Choice"):
        """The cheapest way; ties go to the smallest surplus."""

        winner = line("Row of the cheapest pails", "", argmin(Ways.tie), source="lowest, first row on a tie")
        small_packs = line("Small pails to buy", "pack", at(Ways.small_packs, winner), source="looked up by row")
        large_packs = line("5-gal pails to buy", "pack", at(Ways.large_packs, winner), source="looked up by row")
        cost = line("Cost of the pails", "$", at(Ways.cost, winner), source="looked up by row")
        way = line("Cheapest pails", "", at(Ways.way, winner), source="looked up by row")

        known = line("Eligible pail options", "each", total(Ways.competes), source="0 if no price is given")

    class Others(
        Section, title=f"Other pails, {liquid}", each=PACKING, sheet=sheet, needs=needs, called=f"{called}Others"
    ):
        """The other ways to buy; ways that come to the same pails count as one."""

        differs = line(
            "Different pails",
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
            source="1 for an eligible way that buys other pails than the cheapest",
            adds=True,
        )
        compared = line(
            "Pail cost, among the others",
            "$",
            when(differs > 0, Ways.cost, greatest(Ways.cost) + _ONE_DOLLAR),
            source="a way with the same pails is ranked behind the highest cost",
        )

    class Next(Section, title=f"Runner-up pails, {liquid}", sheet=sheet, needs=needs, called=f"{called}Next"):
        """The cheapest of the other ways."""

        row = line("Row of the runner-up pails", "", argmin(Others.compared), source="lowest cost, first row on a tie")
        way = line("Runner-up pails", "", at(Ways.way, row), source="looked up by row")
        more = line(
            "Runner-up pails cost more by",
            "$",
            when(total(Others.differs) > 0, at(Ways.cost, row) - Choice.cost, 0),
            source="cost of the runner-up less cost of the cheapest",
        )

    return Packs(
        (sizes.small.section, Ways, Choice, Others, Next),
        Choice.small_packs,
        Choice.large_packs,
        Choice.cost,
        Choice.way,
        Choice.known,
        total(Others.differs),
        Next.way,
        Next.more,
    )


@dataclass(frozen=True)
class _Sizes:
    """Sizes of the two pails in the company book, 0 if not given, and whether it has price and size of each."""

    small: Line
    large: Line
    filled: Line
    """5-gal pails that the volume required would fill, with a part of one; 0 where one has no size."""
    small_known: Expr
    large_known: Expr


def _sizes(called: str, liquid: str, need: Line, small: Price, large: Price, sheet: str, needs: Level) -> _Sizes:
    holds_small, holds_large = small.size, large.size

    class Sizes(Section, title=f"Pail sizes, {liquid}", sheet=sheet, needs=needs, called=f"{called}Sizes"):
        """From the company book; 0 if not given."""

        small_holds = line("Small pail size", "gal/pack", if_given(holds_small, 0), source="company book")
        large_holds = line("5-gal pail size", "gal/pack", if_given(holds_large, 0), source="company book")
        filled = line(
            "5-gal pails filled",
            "pack",
            when(large_holds > 0, need / large_holds, 0),
            source="volume required over the size, 0 without a size",
        )

    return _Sizes(
        Sizes.small_holds,
        Sizes.large_holds,
        Sizes.filled,
        both(is_given(small), Sizes.small_holds > 0),
        both(is_given(large), Sizes.large_holds > 0),
    )
