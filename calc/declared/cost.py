"""A cost: a row of the table of costs, in which every amount is a quantity times a rate."""

from __future__ import annotations

from dataclasses import dataclass

from calc.declared.inputs import Price
from calc.formula.build import correlation, is_given, when
from calc.formula.tree import Expr, expression
from calc.formula.value_types import FormulaError
from calc.units.algebra import unit


@dataclass(frozen=True)
class Cost:
    """A row of the table: its label and group, its quantity, its rate, and the reason why there may be none.

    ``price`` is the row of Prices for the rate, where there is one; ``tax`` is whether it is taxed where the rate is
    taken from one of several rows, ``sure`` whether a rate that is not a price is known, and ``last_day`` the last day
    on which the rate is valid, where that is known. ``books_to`` is the account of a rate that is not a price.
    Raises FormulaError unless quantity times rate is money, so that the table may show both without their units.
    """

    label: str
    group: str
    quantity: Expr
    rate: Expr
    none: str
    price: Price | None = None
    tax: Expr | None = None
    sure: Expr | None = None
    last_day: Expr | None = None
    books_to: Expr | None = None

    def __post_init__(self) -> None:
        if self.quantity.unit * self.rate.unit != unit("$"):
            raise FormulaError(f"{self.label!r}: {self.quantity.unit} times {self.rate.unit} is not money")

    @property
    def unit_text(self) -> str:
        """The unit of the quantity."""
        return str(self.quantity.unit) if self.quantity.unit.powers else ""

    @property
    def bare_quantity(self) -> Expr:
        """The quantity without its unit."""
        return _bare(self.quantity)

    @property
    def bare_rate(self) -> Expr:
        """The rate without its unit."""
        return _bare(self.rate)

    @property
    def known(self) -> Expr:
        """1 where the rate is known, else 0: a price of $0 is known, a missing price is not."""
        if self.sure is not None:
            return self.sure
        return when(is_given(self.price), 1, 0) if self.price is not None else when(self.rate > 0, 1, 0)

    @property
    def own_account(self) -> Expr | None:
        """Its own account: ``books_to``, else that of the row of Prices; None for a cost that never has one."""
        if self.books_to is not None:
            return self.books_to
        return self.price.account if self.price is not None else None

    @property
    def taxed(self) -> Expr:
        """Whether it is taxed: by ``tax``, else by the row of Prices, else no."""
        if self.tax is not None:
            return self.tax
        return self.price.taxed if self.price is not None else expression("no")


def _bare(value: Expr) -> Expr:
    return correlation("", lambda plain: plain, value, source="a table of money: its unit stands beside it")
