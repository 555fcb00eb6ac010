"""Cautions and checks."""
