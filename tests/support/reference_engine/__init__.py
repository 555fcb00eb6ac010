"""A plain recomputation of a small flatwork bid: quantities, hours, loads, visits and money."""

from .engine import hand_or_machine, work_out

__all__ = ["hand_or_machine", "work_out"]
