"""Packing of jobs for another process or for later, and fingerprints that tell whether anything changed.

Declarations and levels are packed by name: the process that unpacks them has the same rules.
"""

from __future__ import annotations

import hashlib
import pickle
import zlib
from collections.abc import Callable, Mapping
from dataclasses import fields, replace
from functools import cache
from io import BytesIO
from operator import attrgetter
from pathlib import Path
from typing import Any

from calc._version import __version__
from calc.cells import Cell
from calc.declared import Declared, Input
from calc.formula.levels import Level
from calc.intake.records import DEFAULT, CompanyBook, Entry, JobInput
from calc.intake.schema import TABLES, everything

_COMPRESSION = 1
"""The zlib level: a tenth of the size, for a hundredth of the time that the workbooks take."""


class _Packer(pickle.Pickler):
    """Pickles declarations and levels by name, everything else by value."""

    def reducer_override(self, obj: Any) -> Any:
        """How an object is pickled; NotImplemented for the usual way."""
        if isinstance(obj, Entry | Cell):
            return type(obj), _FIELDS[type(obj)](obj)
        if isinstance(obj, Declared):
            return declaration, (obj.id,)
        if isinstance(obj, Level):
            return level, (str(obj),)
        return NotImplemented


_FIELDS: dict[type, Callable[[Any], tuple[Any, ...]]] = {
    each: attrgetter(*(field.name for field in fields(each))) for each in (Entry, Cell)
}
"""The classes with thousands of objects: the usual way takes three times as long."""


def pack(value: object) -> bytes:
    """Jobs with the company data that they share, or a whole book, as bytes."""
    buffer = BytesIO()
    _Packer(buffer, pickle.HIGHEST_PROTOCOL).dump(value)
    return zlib.compress(buffer.getbuffer(), _COMPRESSION)


def unpack(data: bytes) -> Any:
    """The value that :func:`pack` packed in this run of the program: never data from elsewhere."""
    return pickle.loads(zlib.decompress(data))


def declaration(name: str) -> Declared:
    """The declaration with the id ``name``."""
    return _by_name()[name]


def level(name: str) -> Level:
    """The level with the name ``name``."""
    return _levels()[name]


@cache
def _by_name() -> dict[str, Declared]:
    return {each.id: each for each in everything()}


@cache
def _levels() -> dict[str, Level]:
    return {str(table.level): table.level for table in TABLES.values()}


def fingerprint(*values: object) -> str:
    """The sha256 of values: equal for equal values in every process."""
    buffer = BytesIO()
    packer = _Packer(buffer, pickle.HIGHEST_PROTOCOL)
    packer.fast = True  # no references to earlier objects: equal values must give equal bytes
    packer.dump(values)
    return hashlib.sha256(buffer.getbuffer()).hexdigest()


def job_fingerprint(job: JobInput) -> str:
    """The fingerprint of what was typed for a job and where; defaults follow from it.

    The rest of its book is left out, so that a change of another job does not write this one again.
    """
    rows = {
        level_: [replace(row, entries=_typed(row.entries)) for row in rows] for level_, rows in job.rows.items() if rows
    }
    return fingerprint(
        replace(job, sha256="", company=CompanyBook(), findings=[], entries=_typed(job.entries), rows=rows)
    )


def _typed(entries: Mapping[Input, Entry]) -> dict[Input, Entry]:
    return {given: entry for given, entry in entries.items() if entry.origin != DEFAULT}


def company_fingerprint(company: CompanyBook) -> str:
    """The fingerprint of a company book, without the facts that each job already has among its entries."""
    return fingerprint(replace(company, sha256="", books=set(), facts={}, site={}, rows={}))


@cache
def program_fingerprint() -> str:
    """The version and the sha256 of the source code, so that a changed rule writes every job again."""
    folder = Path(__file__).parent.parent
    texts = hashlib.sha256()
    for path in sorted(folder.rglob("*.py")):
        texts.update(path.relative_to(folder).as_posix().encode())
        texts.update(path.read_bytes())
    return f"{__version__} {texts.hexdigest()}"
