"""Bids for small concrete flatwork, worked out in spreadsheets.

What a notebook or another program needs, each described where it is defined, in :mod:`calc.api`:

- :func:`bid` writes a workbook for every job of some jobs books, as the command ``flatwork bid`` does;
- :func:`check` finds everything that ``bid`` would find, and writes nothing;
- :func:`read` gives the jobs of some jobs books, and the findings;
- :func:`evaluate` gives every number of a job, with its label, unit, source and formula in words;
- :func:`lines` is the catalog of everything that is declared: inputs, factors, prices and lines.

``import calc`` alone loads nothing: each name is imported when it is first used.
"""

from typing import TYPE_CHECKING, Any

from calc._version import __version__

if TYPE_CHECKING:
    from calc.api import Catalog, Declaration, Inputs, UnknownJob, Value, Values, bid, check, evaluate, lines, read

__all__ = [
    "Catalog",
    "Declaration",
    "Inputs",
    "UnknownJob",
    "Value",
    "Values",
    "__version__",
    "bid",
    "check",
    "evaluate",
    "lines",
    "read",
]


def __getattr__(name: str) -> Any:
    if name not in __all__:
        raise AttributeError(f"module 'calc' has no attribute {name!r}")
    from calc import api

    return getattr(api, name)


def __dir__() -> list[str]:
    return sorted({*globals(), *__all__})
