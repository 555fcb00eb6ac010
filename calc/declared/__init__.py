"""What can be declared: inputs, factors, prices, lines, checks, cautions, and the sections they belong to."""

from calc.declared.checks import Caution, Check, Severity
from calc.declared.inputs import Account, Factor, Input, Kind, Override, Pack, Price, PriceDay, Taxed
from calc.declared.line import Fixed, Line, PriceLine
from calc.declared.section import Declared, Section

__all__ = [
    "Account",
    "Caution",
    "Check",
    "Declared",
    "Factor",
    "Fixed",
    "Input",
    "Kind",
    "Line",
    "Override",
    "Pack",
    "Price",
    "PriceDay",
    "PriceLine",
    "Section",
    "Severity",
    "Taxed",
]
