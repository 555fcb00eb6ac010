"""Units: the algebra that checks formulas, the reading of typed dimensions, and the one door to pint."""
