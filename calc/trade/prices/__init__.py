"""Prices that depend on a date, a role or a rental period."""
