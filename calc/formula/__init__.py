"""Formulas as trees: one tree gives the spreadsheet formula, its words, its values by column, and its unit."""
