"""What is bought by the piece and has no rule of its own."""

from __future__ import annotations

from calc.declare import *


class PieceGoods(Section, title="Piece goods", sheet="Costs"):
    """Prices of small items; their quantities are computed where they are used."""

    micro_price = price("Micro fiber", "$/bag", help="Price per bag of the size on Factors.")
    macro_price = price("Macro fiber", "$/bag", help="Price per bag of the size on Factors.")
    bar_price = price("Dowel bar", "$/bar", help="Price per stock bar, uncut.")
    bit_price = price("Drill bit", "$/each", help="Price per bit of the drill diameter.")
    cartridge_price = price("Epoxy cartridge", "$/each", help="Price per cartridge, with its nozzle.")
    filler_price = price("Isolation-joint filler", "$/each", help="Price per strip of the length on Factors.")
    sealant_price = price("Joint cap and sealant", "$/ft", help="Price per foot of joint cap and sealant.")

    micro = line("Micro fiber, a bag", "$/bag", if_given(micro_price, 0), source="Prices")
    macro = line("Macro fiber, a bag", "$/bag", if_given(macro_price, 0), source="Prices")
