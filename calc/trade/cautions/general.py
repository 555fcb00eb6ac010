"""What to watch. A caution stands here only when the job earned it, and defers to local code and licensed people."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.areas import Area
from calc.trade.materials.liquids import CURING_PACKS, Curing
from calc.trade.ordering.order import Order
from calc.trade.takeoff.geometry import Slab
from calc.trade.takeoff.joints import JointDepth


class Cautions(Section, title="Cautions", sheet="Checks"):
    """What was found, the number, the usual practice and who says so, and what to do. Local code always wins."""

    thin_limit = factor(
        "Thin slab, caution below",
        "in",
        3.5,
        low=3,
        high=4,
        source="common practice, no source: the usual walk is 4 in",
    )
    thin_stop = factor("Thin slab, stop below", "in", 2, low=2, high=3, source="common practice, no source")

    too_thin = caution(
        "Slab too thin",
        Severity.STOP,
        least(Area.thickness) < thin_stop,
        "The thinnest slab is thinner than usual.",
        least(Area.thickness),
        "in",
        usual="4 in for a walk, 5 in under cars, 6 in under trucks",
        do="Thicken it, or accept it by name with a reason; ask an engineer where it carries load.",
        source="common practice, no source; local code wins",
    )
    thin = caution(
        "Thin slab",
        Severity.CAUTION,
        both(least(Area.thickness) < thin_limit, least(Area.thickness) >= thin_stop),
        "The thinnest slab is thinner than usual.",
        least(Area.thickness),
        "in",
        usual="4 in for a walk, 5 in under cars, 6 in under trucks",
        do="Thicken it, or say on the bid that it is thinner than usual.",
        source="common practice, no source; local code wins",
    )
    short = caution(
        "Order below the need",
        Severity.CAUTION,
        Order.overage < 0,
        "The order is less than the need; the number is what is lacking.",
        largest(0, Order.required - Order.quantity),
        "yd3",
        usual="the volume in place and 2 to 5 % that is always lost",
        do="Order more, or have bags on the site.",
        source="NRMCA CIP 8, from memory: 4 to 10 % over plan dimensions",
    )
    shallow = caution(
        "Joints too shallow",
        Severity.CAUTION,
        greatest(JointDepth.short_by) > 0,
        "The joints are not as deep as the slab needs; the number is what is lacking.",
        greatest(JointDepth.short_by),
        "in",
        usual="a quarter of the thickness, and 1 in at least",
        do="Use a deeper bit or saw deeper.",
        source="ACI 302.1R and NRMCA CIP 6, partly from memory",
    )
    no_price = caution(
        "Curing compound has no price",
        Severity.CAUTION,
        both(CURING_PACKS.can_win <= 0, Curing.need > 0),
        "The house book gives no price and size of a pack; the number is what is needed.",
        Curing.need,
        "gal",
        usual="a price for each pack that is bought",
        do="Fill the rows of curing compound on Prices.",
        source="house rule",
    )
    utilities = caution(
        "Buried lines",
        Severity.NOTE,
        Order.quantity > 0,
        "The ground is opened for the slab.",
        total(Slab.net_area),
        "ft2",
        usual="lines are located before the ground is opened; expose them by hand",
        do="Call the one-call centre (811 in the US) in time, and have lines marked; licensed people shut them off.",
        source="29 CFR 1926.651(b)(1), seen in print; local law on notice",
    )
    burns = caution(
        "Wet concrete burns",
        Severity.NOTE,
        Order.quantity > 0,
        "Wet concrete has a pH of 12 to 13.",
        Order.quantity,
        "yd3",
        usual="waterproof gloves and boots, eyes covered, clean water at hand",
        do="Wash skin at once; a doctor for eyes and burns.",
        source="OSHA and NIOSH guidance, from memory",
    )
    wash = caution(
        "Wash water",
        Severity.NOTE,
        Order.trucks > 0,
        "Trucks will wash out on the site.",
        Order.trucks,
        "truck",
        usual="contained, and never to a gutter, a drain or near trees",
        do="Set up a lined wash-out place before the truck comes.",
        source="NPDES construction permit guidance, seen in print",
    )
