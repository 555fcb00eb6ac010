"""Bids for small concrete flatwork, worked out in spreadsheets."""

__version__ = "0.2.0"
"""Stands in every workbook; the distribution takes it from here."""
