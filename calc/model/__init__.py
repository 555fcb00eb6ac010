"""Results: the rules evaluated over jobs, and what is made of the values."""
