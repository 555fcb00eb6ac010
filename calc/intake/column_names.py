"""What a header that is in no table may mean: the trade's other names of a column, its beginning, a misspelling."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import TYPE_CHECKING, Final

from calc.intake.spelling import is_similar, normalize
from calc.units.typed_units import measure

if TYPE_CHECKING:
    from calc.intake.schema import Heading

_SHORTEST: Final = 4
"""Letters of a word that may be the beginning of a label."""

OTHER_NAMES: Final = {
    "thickness": ("depth", "slab", "slab thickness", "slab depth", "concrete", "concrete depth", "t"),
    "base": ("gravel", "rock", "base rock", "subbase", "sub-base", "road base", "aggregate base", "stone", "agg"),
    "length": ("l", "len", "long", "lf", "run"),
    "width": ("w", "wide", "wid", "breadth"),
    "other width": ("width 2", "w2", "width2", "second width", "end width"),
    "area": ("section", "part"),
    "area ft2": ("sf", "sqft", "sq ft", "square feet", "area sf", "sf area", "footage"),
    "quantity": ("qty", "count", "number", "no", "how many", "pcs", "ea"),
    "formed": ("form", "forms", "formed edge", "form edge", "forming", "edge form", "forms lf", "formed edges"),
    "doweled edge": ("dowel", "dowels", "dowel edge", "doweled", "doweled length"),
    "wall": ("against wall", "wall edge", "house", "foundation", "isolation edge", "isolation", "expansion joint"),
    "reinforcement": ("rebar", "steel", "mesh", "wire"),
    "bar spacing": ("rebar spacing", "spacing"),
    "old slab": ("demo", "demolition", "removal", "remove", "tear out", "breakout", "existing slab"),
    "height above grade": ("height", "above grade", "elevation"),
    "bid date": ("date", "bid", "bid day"),
    "pour date": ("pour", "pour day", "pouring date"),
    "client": ("customer", "owner", "name"),
    "address": ("site", "location", "site address", "where"),
    "wheelbarrow distance": ("wheelbarrow", "distance", "haul distance"),
    "price": ("cost", "rate", "amount", "unit price"),
    "size": ("pack", "pack size", "bag size", "package"),
    "item": ("material", "description"),
    "private": ("rate", "wage", "hourly", "pay"),
    "hourly rate": ("rate", "hourly", "per hour"),
    "payload": ("tons", "capacity", "load"),
}
"""Other names of the columns, as people of the trade head them."""


def misspelling(typed: str, absent: Sequence[Heading]) -> Heading | None:
    """The column of those that are not there whose header is almost the typed one; None for none."""
    for heading in absent:
        in_other_unit = bool(heading.unit) and is_similar(without_unit(typed), heading.label)
        if is_similar(typed, heading.label) or is_similar(typed, heading.header) or in_other_unit:
            return heading
    return None


def meant(typed: str, absent: Sequence[Heading]) -> Heading | None:
    """The column that an unknown header means by another name or by its beginning, of those that are not there."""
    names = {normalize(typed), normalize(without_unit(typed))}
    for heading in absent:
        if names & {*OTHER_NAMES.get(heading.label, ()), *OTHER_NAMES.get(heading.header, ())}:
            return heading
    begun = [each for each in absent if any(_begins(name, each.label) for name in names)]
    return min(begun, key=lambda each: len(each.label), default=None)


def _begins(name: str, label: str) -> bool:
    """Whether a word is the beginning of a label, as ``thick`` is of ``thickness``."""
    return len(name) >= _SHORTEST and label.startswith(name)


def without_unit(header: str) -> str:
    """A header without the unit at its end, as in ``lenght (m)``; unchanged when there is none."""
    label, _, last = header.rpartition(" ")
    try:
        measure(re.sub(r"[()\[\],.]", "", last), ())
    except KeyError:
        return header
    return label or header
