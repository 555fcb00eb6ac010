"""Ordering and placing: the plant, the order quantity, the placing method, the pour and its weather."""
