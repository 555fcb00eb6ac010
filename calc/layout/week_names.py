"""The sheets of the week's workbook, in order."""

from __future__ import annotations

JOBS, CALENDAR, DAYS, SHARED_LOADS, VISITS_SHEET, LEDGER_SHEET, CHECKS = SHEETS = (
    "Week",
    "Calendar",
    "By day",
    "Shared loads",
    "Visits",
    "Ledger",
    "Checks",
)
