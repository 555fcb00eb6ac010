"""Whether a machine can get to the work: the narrowest place on the way, and what a small machine needs."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.placing import Access

_ONE_INCH = exact(1, "in")


class MachineAccess(Section, title="Machine access", sheet="Bid"):
    """Digging by hand or by machine is the contractor's choice: the price of the other way stands beside it."""

    needed = factor(
        "Access width that a mini excavator needs",
        "in",
        42,
        low=30,
        high=60,
        source="common practice, no source: a one-ton machine with its tracks drawn in needs 36 to 42 in",
    )

    words = line(
        "Machine access",
        "",
        when(
            is_given(Access.gate_width),
            joined(
                when(
                    if_given(Access.gate_width, 0) < needed, "too narrow for a machine: gate ", "a machine fits: gate "
                ),
                count_of(round_down(if_given(Access.gate_width, 0) / _ONE_INCH), "each"),
                " in, it needs ",
                count_of(round_up(needed / _ONE_INCH), "each"),
                " in",
            ),
            joined("gate width not typed: a machine needs ", count_of(round_up(needed / _ONE_INCH), "each"), " in"),
        ),
        source="gate width, against what a mini excavator needs",
    )
