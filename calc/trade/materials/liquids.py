"""Liquids on the concrete: bonding agent under it, curing compound and sealer over it."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Site
from calc.trade.materials.packs import packs
from calc.trade.takeoff.geometry import Slab
from calc.trade.takeoff.old_concrete import OldFooting

_SHEET = "Order and placing"


class Bonding(Section, title="Bonding agent", sheet=_SHEET):
    """On every face of a footing that is bonded, just before the pour: mind its open time."""

    coverage = factor(
        "Coverage of bonding agent",
        "ft2/gal",
        200,
        low=80,
        high=300,
        source="common practice, from memory: latex 200 to 300, epoxy 80 to 100; the label wins",
    )
    small = price("Bonding agent, small pack", "$/pack", pack="gal/pack", help="One small can.")
    large = price("Bonding agent, large pack", "$/pack", pack="gal/pack", help="One large pail.")

    need = line(
        "Bonding agent needed",
        "gal",
        total(OldFooting.bonded) * Site.bond_coats.count / coverage,
        source="bonded faces times coats over coverage",
    )


class Curing(Section, title="Curing compound", sheet=_SHEET):
    """A membrane over the whole new surface, sprayed as soon as the bleed water is gone."""

    coverage = factor(
        "Coverage of curing compound",
        "ft2/gal",
        200,
        low=150,
        high=300,
        source="UFGS 03300N and 03311, at most 200 ft2/gal in all, seen in print",
    )
    small = price("Curing compound, small pack", "$/pack", pack="gal/pack", help="One small can.")
    large = price("Curing compound, large pack", "$/pack", pack="gal/pack", help="One large pail.")

    need = line("Curing compound needed", "gal", total(Slab.net_area) / coverage, source="area over coverage")


class Sealer(Section, title="Sealer", sheet=_SHEET):
    """Never before 28 days, unless the product cures and seals."""

    coverage = factor(
        "Coverage of sealer", "ft2/gal", 250, low=150, high=400, source="common practice, no source; the label wins"
    )
    small = price("Sealer, small pack", "$/pack", pack="gal/pack", help="One small can.")
    large = price("Sealer, large pack", "$/pack", pack="gal/pack", help="One large pail.")

    need = line(
        "Sealer needed",
        "gal",
        total(Slab.net_area) * Site.sealer_coats.count / coverage,
        source="area times coats over coverage",
    )


BONDING_PACKS = packs("Bonding", "bonding agent", Bonding.need, Bonding.small, Bonding.large, _SHEET)
CURING_PACKS = packs("Curing", "curing compound", Curing.need, Curing.small, Curing.large, _SHEET)
SEALER_PACKS = packs("Sealing", "sealer", Sealer.need, Sealer.small, Sealer.large, _SHEET)
