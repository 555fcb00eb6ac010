"""Liquids: bonding agent under the concrete, curing compound and sealer on it."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Site
from calc.trade.levels import FOOTING
from calc.trade.materials.packs import packs
from calc.trade.takeoff.geometry import Slab
from calc.trade.takeoff.old_concrete import OldFooting

_SHEET = "Order and placing"


class Bonding(Section, title="Bonding agent", sheet=_SHEET, needs=FOOTING):
    """On every bonded face of a footing, just before placing; observe its open time."""

    coverage = factor(
        "Bonding agent coverage",
        "ft2/gal",
        200,
        low=80,
        high=300,
        source="common practice, from memory: latex 200 to 300, epoxy 80 to 100; the product label governs",
    )
    small = price("Bonding agent, small pail", "$/pack", pack="gal/pack", help="Price per small pail.")
    large = price("Bonding agent, 5-gal pail", "$/pack", pack="gal/pack", help="Price per large pail.")

    need = line(
        "Bonding agent required",
        "gal",
        total(OldFooting.bonded_area) * Site.bond_coats.count / coverage,
        source="bonded face times coats over coverage",
    )


class Curing(Section, title="Curing compound", sheet=_SHEET):
    """A membrane over the whole surface, sprayed as soon as the bleed water is gone."""

    coverage = factor(
        "Curing compound coverage",
        "ft2/gal",
        200,
        low=150,
        high=300,
        source="UFGS 03300N and 03311: at most 200 ft2/gal in total, seen in print",
    )
    small = price("Curing compound, small pail", "$/pack", pack="gal/pack", help="Price per small pail.")
    large = price("Curing compound, 5-gal pail", "$/pack", pack="gal/pack", help="Price per large pail.")

    need = line("Curing compound required", "gal", total(Slab.net_area) / coverage, source="net area over coverage")


class Sealer(Section, title="Sealer", sheet=_SHEET):
    """Not before 28 days, unless the product is a cure-and-seal."""

    coverage = factor(
        "Sealer coverage", "ft2/gal", 250, low=150, high=400, source="common practice, no source; the label governs"
    )
    small = price("Sealer, small pail", "$/pack", pack="gal/pack", help="Price per small pail.")
    large = price("Sealer, 5-gal pail", "$/pack", pack="gal/pack", help="Price per large pail.")

    need = line(
        "Sealer required",
        "gal",
        total(Slab.net_area) * Site.sealer_coats.count / coverage,
        source="net area times coats over coverage",
    )


BONDING_PACKS = packs("Bonding", "bonding agent", Bonding.need, Bonding.small, Bonding.large, _SHEET, needs=FOOTING)
CURING_PACKS = packs("Curing", "curing compound", Curing.need, Curing.small, Curing.large, _SHEET)
SEALER_PACKS = packs("Sealing", "sealer", Sealer.need, Sealer.small, Sealer.large, _SHEET)
