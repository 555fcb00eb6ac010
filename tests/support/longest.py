"""The order in which the files of tests are begun."""

from __future__ import annotations

LONGEST = (
    "test_live_recalc", "test_typed_numbers", "test_witnesses", "test_rebid", "test_rebid_edited", "test_commands",
    "test_row_templates", "test_fuzz", "test_papers", "test_kill", "test_situations", "test_cautions", "test_bad_cells",
    "test_batch", "test_formula_words", "test_charts", "test_read_dialects", "test_bid_sheet",
)  # fmt: skip
"""The files that take longest, the longest first: begun first, so that all workers have something to do to the end.

The second is a quick one of many tests: whoever looks on sees at once that something happens, and how far it is.
"""
