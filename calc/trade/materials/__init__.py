"""Materials other than concrete: fiber, liquids, base rock, what is bought by the piece."""
