"""Units: the algebra that checks formulas, parsing of typed dimensions, and the one module that imports pint."""
