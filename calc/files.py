"""Files with care: whole or not at all, never over a workbook that somebody changed, never over one that is open."""

from __future__ import annotations

import hashlib
import json
import os
import re
import time
import unicodedata
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass, field
from enum import Enum
from itertools import count, islice
from pathlib import Path

from calc.errors import Unreadable

RECORD = ".flatwork-written.jsonl"
"""In a folder of results: what the program wrote there and from what, a line a workbook, so that it knows its own work
again. A line is its file name, the sha256 of the file, and the print of what it was made from."""

_PART = ".part"
_LEFT_OVER = 60
"""Seconds after which a part of a file is what a killed run left behind: writing one takes a few thousandths."""

_MAX_NAME = 80
_RESERVED = {"con", "prn", "aux", "nul", "week", *(f"{name}{n}" for name in ("com", "lpt") for n in range(10))}
"""Names that a file may not have: some systems keep them for devices, and the week's own workbook has one."""


class Saved(Enum):
    """How a workbook was saved."""

    WRITTEN = "written"
    UNCHANGED = "unchanged"
    BESIDE = "written beside the one that was changed by hand"


def safe_name(job: str) -> str:
    """The file name of a job, without its ending: the id, less what no file system takes. Never blank."""
    name = unicodedata.normalize("NFC", job)
    name = re.sub(r'[\x00-\x1f<>:"/\\|?*]', "-", name).strip(" .")[:_MAX_NAME].strip(" .")
    first, dot, rest = name.partition(".")
    return f"{first}_{dot}{rest}" if not name or first.casefold() in _RESERVED else name


def same_file(name: str) -> str:
    """A file name as file systems compare it."""
    return unicodedata.normalize("NFC", name).casefold()


def shipped(folder: str) -> Path:
    """A folder that travels with the program: in the wheel, else beside the package in a checkout."""
    package = Path(__file__).parent
    inside = package / "_shipped" / folder
    return inside if inside.is_dir() else package.parent / folder


def sha256(data: bytes) -> str:
    """The fingerprint of a file."""
    return hashlib.sha256(data).hexdigest()


@dataclass
class Results:
    """A folder of results, and what the program remembers of what it wrote there."""

    folder: Path
    _own: dict[str, dict[str, str]] = field(default_factory=dict)
    """What each workbook was made from, by its file name and its sha256."""
    _cut_short: bool = False
    """Whether the last line of the record may have no end."""

    def __post_init__(self) -> None:
        try:
            self.folder.mkdir(parents=True, exist_ok=True)
        except OSError as reason:
            raise Unreadable(f"{self.folder}: the folder cannot be made: {_plain(reason)}.") from reason
        try:
            record = _record_of(self.folder)
        except OSError as reason:
            raise Unreadable(f"{self.folder / RECORD}: it cannot be read: {_plain(reason)}.") from reason
        _sweep(self.folder)
        self._cut_short = record != "" and not record.endswith("\n")
        for name, found, made_from in _lines(record):
            self._own.setdefault(name, {})[found] = made_from

    @staticmethod
    def names_in(folder: Path) -> set[str]:
        """The names of the files that the program wrote in a folder; none when that cannot be told."""
        try:
            return {name for name, _, _ in _lines(_record_of(folder))}
        except OSError:
            return set()  # whoever asks only wants to pass them over: what is none is refused when it is read

    def current(self, name: str, made_from: str) -> Path | None:
        """The workbook of that name that the program made from the very same before, as it left it, if it is there.

        Where somebody changed one, it is the one beside it.
        """
        for path in _numbered(self.folder / name):
            try:
                there = sha256(path.read_bytes())
            except OSError:
                return None  # none there, or none that can be read: saving it again says which
            own = self._own.get(path.name, {})
            if there in own:
                return path if own[there] == made_from else None
        return None

    def save(self, name: str, data: bytes, made_from: str = "") -> tuple[Path, Saved]:
        """Saves a workbook under ``name``, whole or not at all, and remembers what it was made from.

        One that somebody changed stays as it is, and the new one goes beside it, numbered. Raises Unreadable with one
        plain line when the file is open elsewhere or cannot be written.
        """
        path = self.folder / name
        if is_open(path):
            raise Unreadable(f"{path}: it is open in another program; close it and run again.")
        saved, new = Saved.WRITTEN, sha256(data)
        try:
            if path.exists():
                there = sha256(path.read_bytes())
                if there == new:
                    saved = Saved.UNCHANGED
                elif there not in self._own.get(name, {}):
                    path, saved = self._beside(path, new), Saved.BESIDE
            self._note(path.name, new, made_from)
            if saved is not Saved.UNCHANGED:
                write_whole(path, data)
        except OSError as reason:
            raise Unreadable(f"{path}: it cannot be written: {_plain(reason)}.") from reason
        return path, saved

    def _beside(self, path: Path, new: str) -> Path:
        """The first numbered name that is free, or that holds what the program wrote."""
        return next(
            other
            for other in islice(_numbered(path), 1, None)
            if not other.exists() or sha256(other.read_bytes()) in {new, *self._own.get(other.name, {})}
        )

    def _note(self, name: str, data_sha256: str, made_from: str) -> None:
        """Remembers a workbook before it is put in place: killed in between, the next run still knows its own work."""
        if self._own.get(name, {}).get(data_sha256) == made_from:
            return
        ended, self._cut_short = "\n" * self._cut_short, True
        line = json.dumps({"file": name, "sha256": data_sha256, "made_from": made_from}, ensure_ascii=False)
        with (self.folder / RECORD).open("a", encoding="utf-8") as record:
            record.write(f"{ended}{line}\n")
        self._cut_short = False
        self._own.setdefault(name, {})[data_sha256] = made_from


def write_whole(path: Path, data: bytes) -> None:
    """Writes a file so that it appears whole or not at all."""
    part = path.with_name(f".{path.name}.{os.getpid()}{_PART}")
    try:
        part.write_bytes(data)
        os.replace(part, path)
    finally:
        part.unlink(missing_ok=True)


def write_new(path: Path, data: bytes) -> None:
    """Writes a file where there is none, whole or not at all. Raises Unreadable with one plain line."""
    if path.exists() or is_open(path):
        raise Unreadable(f"{path}: it exists already; name another file, or move it away.")
    try:
        write_whole(path, data)
    except OSError as reason:
        raise Unreadable(f"{path}: it cannot be written: {_plain(reason)}.") from reason


def _numbered(path: Path) -> Iterator[Path]:
    """A file name, and those that its workbook has when it goes beside: ``24-031.xlsx``, ``24-031 (2).xlsx``, ..."""
    yield path
    for number in count(2):
        yield path.with_name(f"{path.stem} ({number}){path.suffix}")


def _record_of(folder: Path) -> str:
    record = folder / RECORD
    return record.read_text(encoding="utf-8", errors="replace") if record.exists() else ""


def _lines(record: str) -> Iterator[tuple[str, str, str]]:
    """The file name, the sha256 and what it was made from, of every line that is whole.

    A line cut short by a power failure is passed over: that workbook is then treated as somebody's own.
    """
    for line in record.split("\n"):
        try:
            entry = json.loads(line)
            yield str(entry["file"]), str(entry["sha256"]), str(entry.get("made_from", ""))
        except (ValueError, KeyError, TypeError, AttributeError):
            continue


def _sweep(folder: Path) -> None:
    """Takes away the parts of files that a run left when it was killed."""
    now = time.time()
    for part in folder.glob(f".*.xlsx.*{_PART}"):
        with suppress(OSError):  # gone by itself, or still being written: either way it is not ours to take
            if now - part.stat().st_mtime > _LEFT_OVER:
                part.unlink()


def lock_of(path: Path) -> str:
    """The workbook that ``path`` is the lock file of; blank when it is none."""
    if path.name.startswith(".~lock.") and path.name.endswith("#"):
        return path.name.removeprefix(".~lock.").removesuffix("#")
    return path.name.removeprefix("~$") if path.name.startswith("~$") else ""


def is_open(path: Path) -> bool:
    """Whether a spreadsheet program left its lock file beside ``path``."""
    return path.with_name(f".~lock.{path.name}#").exists() or path.with_name(f"~${path.name}").exists()


def _plain(reason: OSError) -> str:
    """What the system says, in a few words."""
    if isinstance(reason, PermissionError):
        return "it is open elsewhere or write-protected; close it and run again"
    return (reason.strerror or type(reason).__name__).lower()
