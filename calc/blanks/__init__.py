"""Blank input books and the measure sheet."""
