"""What can be declared: inputs, factors, prices, lines, checks, cautions, and the sections they belong to."""

from calc.declared.checks import Caution, Check, Severity
from calc.declared.inputs import (
    LEAST,
    MOST,
    Account,
    Factor,
    Input,
    Kind,
    Limits,
    Override,
    Pack,
    Price,
    PriceDay,
    Taxed,
)
from calc.declared.line import Fixed, Line, PriceLine
from calc.declared.section import Declared, Section

__all__ = [
    "LEAST",
    "MOST",
    "Account",
    "Caution",
    "Check",
    "Declared",
    "Factor",
    "Fixed",
    "Input",
    "Kind",
    "Limits",
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
