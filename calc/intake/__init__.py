"""Cells to columns and findings, from the declarations."""
