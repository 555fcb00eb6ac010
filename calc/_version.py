"""The version of the program; the distribution takes it from here, and every workbook shows it."""

__version__ = "0.4.0"
