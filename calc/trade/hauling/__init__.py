"""Hauling: piles, vehicles, disposal sites, and the haul plan that is taken."""
