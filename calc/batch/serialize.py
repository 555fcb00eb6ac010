"""Jobs on their way: packed small for another process or for later; and prints, which tell whether anything changed.

A declaration goes by its name and a level by its own: the process that unpacks them has the same rules.
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

_QUICK = 1
"""How hard the jobs are pressed: a tenth of their size for a hundredth of the time that their workbooks take."""


class _Packer(pickle.Pickler):
    """Packs by value, but for what is declared, which goes by name."""

    def reducer_override(self, obj: Any) -> Any:
        """How one object is packed; NotImplemented for the usual way."""
        if isinstance(obj, Entry | Cell):
            return type(obj), _FIELDS[type(obj)](obj)
        if isinstance(obj, Declared):
            return declared, (obj.id,)
        if isinstance(obj, Level):
            return level, (str(obj),)
        return NotImplemented


_FIELDS: dict[type, Callable[[Any], tuple[Any, ...]]] = {
    each: attrgetter(*(field.name for field in fields(each))) for each in (Entry, Cell)
}
"""Those of which there are thousands: the usual way takes three times as long."""


def packed(things: object) -> bytes:
    """Jobs with the house that they share, or a whole book, as bytes."""
    buffer = BytesIO()
    _Packer(buffer, pickle.HIGHEST_PROTOCOL).dump(things)
    return zlib.compress(buffer.getbuffer(), _QUICK)


def unpacked(data: bytes) -> Any:
    """What :func:`packed` packed in this run of the program: never what came from elsewhere."""
    return pickle.loads(zlib.decompress(data))


def declared(name: str) -> Declared:
    """The declaration that goes by ``name``."""
    return _by_name()[name]


def level(name: str) -> Level:
    """The level that goes by ``name``."""
    return _levels()[name]


@cache
def _by_name() -> dict[str, Declared]:
    return {each.id: each for each in everything()}


@cache
def _levels() -> dict[str, Level]:
    return {str(table.level): table.level for table in TABLES.values()}


def fingerprint(*things: object) -> str:
    """A print of values: the same for the same values, in whichever process, and another for any other."""
    buffer = BytesIO()
    packer = _Packer(buffer, pickle.HIGHEST_PROTOCOL)
    packer.fast = True  # every value in full, wherever it was met before: what is equal must be packed alike
    packer.dump(things)
    return hashlib.sha256(buffer.getbuffer()).hexdigest()


def job_fingerprint(job: JobInput) -> str:
    """The print of what was typed for a job and where it stood: what nobody typed follows from that.

    Not of the rest of its book: another job may change there, and this one's workbook still be the one to have.
    """
    rows = {
        level_: [replace(row, entries=_typed(row.entries)) for row in rows] for level_, rows in job.rows.items() if rows
    }
    return fingerprint(replace(job, sha256="", company=CompanyBook(), notes=[], entries=_typed(job.entries), rows=rows))


def _typed(entries: Mapping[Input, Entry]) -> dict[Input, Entry]:
    return {given: entry for given, entry in entries.items() if entry.origin != DEFAULT}


def company_fingerprint(company: CompanyBook) -> str:
    """The print of what a house book says, less what every job took over from it."""
    return fingerprint(replace(company, sha256="", books=set(), facts={}, site={}, rows={}))


@cache
def program_fingerprint() -> str:
    """The print of the program itself: its version and its own text, so that a changed rule writes every job again."""
    folder = Path(__file__).parent.parent
    texts = hashlib.sha256()
    for path in sorted(folder.rglob("*.py")):
        texts.update(path.relative_to(folder).as_posix().encode())
        texts.update(path.read_bytes())
    return f"{__version__} {texts.hexdigest()}"
