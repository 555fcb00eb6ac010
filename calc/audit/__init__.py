"""Workbooks that the program wrote, read again: what stands in them now, and what can be made of that."""
