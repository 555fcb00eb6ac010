"""Text of the proposal that follows from the terms of the job."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.money import Terms


class ProposalText(Section, title="Text of the proposal", sheet="Costs"):
    """For the client."""

    permit = line(
        "Permit text",
        "",
        when(is_given(Terms.permit), "included", "not included"),
        source="included where its cost was typed; a permit that was not typed is not in the price",
    )
