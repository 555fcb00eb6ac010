"""Money: the cost lines, the price and the bid."""
