"""Safe writing of files: atomic, never over a workbook that was changed by hand, never over one that is open."""

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
"""The record in a folder of results, by which the program recognizes its own files. It has one JSON line per workbook:
the file name, the sha256 of the file, and the fingerprint of the input that it was made from."""

_PART = ".part"
_STALE_AFTER = 60
"""Seconds after which a temporary file was left behind by a killed run: writing one takes a few milliseconds."""

_MAX_NAME = 80
_RESERVED = {"con", "prn", "aux", "nul", "week", *(f"{name}{n}" for name in ("com", "lpt") for n in range(10))}
"""Names that a job's file may not have: some systems reserve them for devices, and ``week`` is the run's workbook."""


class Saved(Enum):
    """How a workbook was saved."""

    WRITTEN = "written"
    UNCHANGED = "unchanged"
    NUMBERED_COPY = "written as a numbered copy"
    """The file of that name was changed by hand and is kept."""


def safe_name(job: str) -> str:
    """The file name of a job without its extension: its id without characters that file systems reject. Not blank."""
    name = unicodedata.normalize("NFC", job)
    name = re.sub(r'[\x00-\x1f<>:"/\\|?*]', "-", name).strip(" .")[:_MAX_NAME].strip(" .")
    first, dot, rest = name.partition(".")
    return f"{first}_{dot}{rest}" if not name or first.casefold() in _RESERVED else name


def same_file(name: str) -> str:
    """A file name normalized as file systems compare it."""
    return unicodedata.normalize("NFC", name).casefold()


def shipped(folder: str) -> Path:
    """A folder that is shipped with the program: in the wheel, else beside the package in a checkout."""
    package = Path(__file__).parent
    inside = package / "_shipped" / folder
    return inside if inside.is_dir() else package.parent / folder


def sha256(data: bytes) -> str:
    """The sha256 of a file, in hexadecimal."""
    return hashlib.sha256(data).hexdigest()


@dataclass
class Results:
    """A folder of results, with the record of the files that the program wrote there."""

    folder: Path
    _own: dict[str, dict[str, str]] = field(default_factory=dict)
    """The fingerprint of the input of each workbook, by file name and sha256."""
    _unterminated: bool = False
    """Whether the last line of the record may lack its line break."""

    def __post_init__(self) -> None:
        try:
            self.folder.mkdir(parents=True, exist_ok=True)
        except OSError as reason:
            raise Unreadable(f"{self.folder}: the folder cannot be created: {_plain(reason)}.") from reason
        try:
            record = _record_of(self.folder)
        except OSError as reason:
            raise Unreadable(f"{self.folder / RECORD}: it cannot be read: {_plain(reason)}.") from reason
        _remove_stale_parts(self.folder)
        self._unterminated = record != "" and not record.endswith("\n")
        for name, digest, made_from in _lines(record):
            self._own.setdefault(name, {})[digest] = made_from

    @staticmethod
    def names_in(folder: Path) -> set[str]:
        """The names of the files that the program wrote in a folder; none when its record cannot be read."""
        try:
            return {name for name, _, _ in _lines(_record_of(folder))}
        except OSError:
            return set()  # used to ignore such files only: one that is no input is refused when it is read

    def current(self, name: str, made_from: str) -> Path | None:
        """The workbook of that name that the program wrote from the same input, if it is there and unchanged.

        Where the file of that name was changed by hand, it is the numbered copy.
        """
        for path in _numbered(self.folder / name):
            try:
                digest = sha256(path.read_bytes())
            except OSError:
                return None  # missing or not readable: reported when it is saved again
            own = self._own.get(path.name, {})
            if digest in own:
                return path if own[digest] == made_from else None
        return None

    def save(self, name: str, data: bytes, made_from: str = "") -> tuple[Path, Saved]:
        """Saves a workbook under ``name`` atomically, and records the fingerprint of its input, ``made_from``.

        A file of that name that was changed by hand is kept, and the workbook is saved as a numbered copy. Raises
        Unreadable with one plain line when the file is open elsewhere or cannot be written.
        """
        path = self.folder / name
        if is_open(path):
            raise Unreadable(f"{path}: it is open in another program. Close it and run again.")
        saved, new = Saved.WRITTEN, sha256(data)
        try:
            if path.exists():
                digest = sha256(path.read_bytes())
                if digest == new:
                    saved = Saved.UNCHANGED
                elif digest not in self._own.get(name, {}):
                    path, saved = self._numbered_copy(path, new), Saved.NUMBERED_COPY
            self._add_to_record(path.name, new, made_from)
            if saved is not Saved.UNCHANGED:
                write_whole(path, data)
        except OSError as reason:
            raise Unreadable(f"{path}: it cannot be written: {_plain(reason)}.") from reason
        return path, saved

    def _numbered_copy(self, path: Path, new: str) -> Path:
        """The first numbered name that is free, or whose file the program wrote."""
        return next(
            copy
            for copy in islice(_numbered(path), 1, None)
            if not copy.exists() or sha256(copy.read_bytes()) in {new, *self._own.get(copy.name, {})}
        )

    def _add_to_record(self, name: str, data_sha256: str, made_from: str) -> None:
        """Records a workbook before it is put in place, so that a run that is killed in between still recognizes it."""
        if self._own.get(name, {}).get(data_sha256) == made_from:
            return
        line_break, self._unterminated = "\n" * self._unterminated, True
        line = json.dumps({"file": name, "sha256": data_sha256, "made_from": made_from}, ensure_ascii=False)
        with (self.folder / RECORD).open("a", encoding="utf-8") as record:
            record.write(f"{line_break}{line}\n")
        self._unterminated = False
        self._own.setdefault(name, {})[data_sha256] = made_from


def write_whole(path: Path, data: bytes) -> None:
    """Writes a file atomically: it appears whole or not at all."""
    part = path.with_name(f".{path.name}.{os.getpid()}{_PART}")
    try:
        part.write_bytes(data)
        os.replace(part, path)
    finally:
        part.unlink(missing_ok=True)


def write_new(path: Path, data: bytes) -> None:
    """Writes a new file atomically. Raises Unreadable with one plain line, also when the file exists."""
    if path.exists() or is_open(path):
        raise Unreadable(f"{path}: the file exists already. Name another file, or move it.")
    try:
        write_whole(path, data)
    except OSError as reason:
        raise Unreadable(f"{path}: it cannot be written: {_plain(reason)}.") from reason


def _numbered(path: Path) -> Iterator[Path]:
    """A file name and the names of its copies: ``24-031.xlsx``, ``24-031 (2).xlsx``, ..."""
    yield path
    for number in count(2):
        yield path.with_name(f"{path.stem} ({number}){path.suffix}")


def _record_of(folder: Path) -> str:
    record = folder / RECORD
    return record.read_text(encoding="utf-8", errors="replace") if record.exists() else ""


def _lines(record: str) -> Iterator[tuple[str, str, str]]:
    """The file name, the sha256 and the input fingerprint of every complete line.

    A line cut short by a power failure is ignored: that workbook then counts as changed by hand.
    """
    for line in record.split("\n"):
        try:
            entry = json.loads(line)
            yield str(entry["file"]), str(entry["sha256"]), str(entry.get("made_from", ""))
        except (ValueError, KeyError, TypeError, AttributeError):
            continue


def _remove_stale_parts(folder: Path) -> None:
    """Deletes temporary files that a killed run left behind."""
    now = time.time()
    for part in folder.glob(f".*.xlsx.*{_PART}"):
        with suppress(OSError):  # already gone, or still being written by another run
            if now - part.stat().st_mtime > _STALE_AFTER:
                part.unlink()


def lock_of(path: Path) -> str:
    """The workbook that ``path`` is the lock file of; blank when it is not a lock file."""
    if path.name.startswith(".~lock.") and path.name.endswith("#"):
        return path.name.removeprefix(".~lock.").removesuffix("#")
    return path.name.removeprefix("~$") if path.name.startswith("~$") else ""


def is_open(path: Path) -> bool:
    """Whether ``path`` has the lock file of a spreadsheet program."""
    return path.with_name(f".~lock.{path.name}#").exists() or path.with_name(f"~${path.name}").exists()


def _plain(reason: OSError) -> str:
    """The reason of the system, in a few words."""
    if isinstance(reason, PermissionError):
        return "it is open elsewhere or write-protected. Close it and run again"
    return (reason.strerror or type(reason).__name__).lower()
