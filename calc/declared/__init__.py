"""What can be declared: givens, factors, prices, lines, checks, cautions, and the sections that hold them."""

from calc.declared.inputs import Factor, Forced, Given, Kind, Pack, Price, PriceDay, Taxed
from calc.declared.line import Line, PriceLine
from calc.declared.section import Declared, Section
from calc.declared.checks import Caution, Check, Severity

__all__ = [
    "Caution",
    "Check",
    "Declared",
    "Factor",
    "Forced",
    "Given",
    "Kind",
    "Line",
    "Pack",
    "Price",
    "PriceDay",
    "PriceLine",
    "Section",
    "Severity",
    "Taxed",
]
