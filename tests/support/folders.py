"""Where the checkout, its tests and what they share stand."""

from __future__ import annotations

from pathlib import Path

SUPPORT = Path(__file__).parent
TESTS = SUPPORT.parent
ROOT = TESTS.parent
