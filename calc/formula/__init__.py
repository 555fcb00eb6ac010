"""Formulas as trees: one tree has a sheet text, words, numbers over whole columns, and a unit."""
