"""Whether a machine can get to the work: the narrowest place on the way, and what a small machine needs."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.placing import Access

_ONE_INCH = exact(1, "in")


class MachineAccess(Section, title="Machine access", sheet="Dig and haul"):
    """Digging by hand or by machine is the contractor's choice: the price of the other way stands beside it."""

    needed = factor(
        "Access width that a mini excavator needs",
        "in",
        42,
        low=30,
        high=60,
        source="common practice, no source: a one-ton machine with its tracks drawn in needs 36 to 42 in",
    )

    gate = line("Gate width, if typed", "in", if_given(Access.gate_width, 0), source="input; 0 if not typed")
    found = line(
        "Gate and machine",
        "",
        when(gate > 0, when(gate < needed, "too narrow for a machine", "a machine fits"), "gate width not typed"),
        source="gate width against what a mini excavator needs",
    )
    words = line(
        "Machine access",
        "",
        joined(
            found,
            when(gate > 0, joined(": gate ", count_of(round_down(gate / _ONE_INCH), "each"), " in,"), ":"),
            " a mini excavator needs ",
            count_of(round_up(needed / _ONE_INCH), "each"),
            " in",
        ),
        source="in whole inches",
    )
