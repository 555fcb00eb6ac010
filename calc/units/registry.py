"""The one door to pint: it words a refused unit, and stands witness to the algebra in the tests.

pint is imported on first use only, since its registry costs more than a whole bid.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from typing import Any

from calc.units.algebra import COUNTS, Unit

_OURS = {"$": "our_dollar", "%": "our_percent", "F": "our_fahrenheit", "yd": "yard", "h": "hour", "min": "minute"}
_OURS |= {"ton": "short_ton", "lb": "pound", "gal": "gallon", "in": "inch", "ft": "foot", "mph": "mile_per_hour"}
_OURS |= {name: f"our_{name}" for name in COUNTS}


@cache
def _registry() -> Any:
    import pint  # a bid that finds nothing wrong never pays for it

    registry: Any = pint.UnitRegistry(non_int_type=Fraction)
    for own in sorted({name for name in _OURS.values() if name.startswith("our_")}):
        registry.define(f"{own} = [{own}]")
    return registry


def _quantity(unit: Unit) -> Any:
    registry = _registry()
    result = registry.Quantity(Fraction(1))
    for name, power in unit.powers:
        result = result * registry.Quantity(Fraction(1), _OURS.get(name, name)) ** power
    return result


def factor_between(unit: Unit, wanted: Unit) -> Fraction | None:
    """How many ``wanted`` are in one ``unit``, exactly; None when they measure different things.

    Temperatures are a dimension of their own here: a difference in F is never converted.
    """
    found, target = _quantity(unit), _quantity(wanted)
    if found.dimensionality != target.dimensionality:
        return None
    return Fraction((found / target).to_base_units().magnitude)
