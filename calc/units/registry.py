"""The one module that imports pint: conversion factors for messages about units, and a check of the unit algebra.

pint is imported on first use only, since loading its registry takes longer than a whole bid.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from typing import Any

from calc.units.algebra import COUNTS, Unit

_PINT_NAMES = {"$": "our_dollar", "%": "our_percent", "F": "our_fahrenheit", "yd": "yard", "h": "hour", "min": "minute"}
_PINT_NAMES |= {"ton": "short_ton", "lb": "pound", "gal": "gallon", "in": "inch", "ft": "foot", "mph": "mile_per_hour"}
_PINT_NAMES |= {name: f"our_{name}" for name in COUNTS}


@cache
def _registry() -> Any:
    import pint  # a bid without a unit error never loads it

    registry: Any = pint.UnitRegistry(non_int_type=Fraction)
    for new_unit in sorted({name for name in _PINT_NAMES.values() if name.startswith("our_")}):
        registry.define(f"{new_unit} = [{new_unit}]")
    return registry


def _quantity(unit: Unit) -> Any:
    registry = _registry()
    result = registry.Quantity(Fraction(1))
    for name, power in unit.powers:
        result = result * registry.Quantity(Fraction(1), _PINT_NAMES.get(name, name)) ** power
    return result


def factor_between(unit: Unit, wanted: Unit) -> Fraction | None:
    """How many ``wanted`` are in one ``unit``, exactly; None when they measure different things.

    Temperatures are a dimension of their own here: a difference in F is never converted.
    """
    source, target = _quantity(unit), _quantity(wanted)
    if source.dimensionality != target.dimensionality:
        return None
    return Fraction((source / target).to_base_units().magnitude)
