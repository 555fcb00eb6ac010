"""Files with care: whole or not at all, never over a workbook that somebody changed, never over one that is open."""

from __future__ import annotations

import hashlib
import json
import os
import re
import unicodedata
from dataclasses import dataclass, field
from enum import Enum
from pathlib import Path

from calc.errors import Unreadable

RECORD = ".flatwork-written.jsonl"
"""In a folder of results: what the program wrote there, a line a workbook, so that it knows its own work again."""

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
    _own: dict[str, set[str]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        try:
            self.folder.mkdir(parents=True, exist_ok=True)
        except OSError as reason:
            raise Unreadable(f"{self.folder}: the folder cannot be made: {_plain(reason)}.") from reason
        record = self.folder / RECORD
        if record.is_file():
            for line in record.read_text(encoding="utf-8", errors="replace").splitlines():
                self._remember(line)

    def _remember(self, line: str) -> None:
        try:
            entry = json.loads(line)
            self._own.setdefault(str(entry["file"]), set()).add(str(entry["sha256"]))
        except (ValueError, KeyError, TypeError):
            return  # a line cut short by a power failure: that workbook is then treated as somebody's own

    def save(self, name: str, data: bytes) -> tuple[Path, Saved]:
        """Saves a workbook under ``name``, whole or not at all.

        One that somebody changed stays as it is, and the new one goes beside it, numbered. Raises Unreadable with one
        plain line when the file is open elsewhere or cannot be written.
        """
        path = self.folder / name
        if is_open(path):
            raise Unreadable(f"{path}: it is open in another program; close it and run again.")
        try:
            saved = Saved.WRITTEN
            if path.exists():
                there = sha256(path.read_bytes())
                if there == sha256(data):
                    return path, Saved.UNCHANGED
                if there not in self._own.get(name, set()):
                    path, saved = self._beside(path, data), Saved.BESIDE
            self._note(path.name, data)
            write_whole(path, data)
        except OSError as reason:
            raise Unreadable(f"{path}: it cannot be written: {_plain(reason)}.") from reason
        return path, saved

    def _beside(self, path: Path, data: bytes) -> Path:
        """The first numbered name that is free, or that holds what the program wrote."""
        number = 2
        while True:
            other = path.with_name(f"{path.stem} ({number}){path.suffix}")
            if not other.exists() or sha256(other.read_bytes()) in {sha256(data), *self._own.get(other.name, set())}:
                return other
            number += 1

    def _note(self, name: str, data: bytes) -> None:
        """Remembers a workbook before it is put in place: killed in between, the next run still knows its own work."""
        entry = {"file": name, "sha256": sha256(data)}
        with (self.folder / RECORD).open("a", encoding="utf-8") as record:
            record.write(json.dumps(entry, ensure_ascii=False) + "\n")
        self._own.setdefault(name, set()).add(entry["sha256"])


def write_whole(path: Path, data: bytes) -> None:
    """Writes a file so that it appears whole or not at all."""
    part = path.with_name(f".{path.name}.{os.getpid()}.part")
    try:
        part.write_bytes(data)
        os.replace(part, path)
    finally:
        part.unlink(missing_ok=True)


def is_open(path: Path) -> bool:
    """Whether a spreadsheet program left its lock file beside ``path``."""
    return path.with_name(f".~lock.{path.name}#").exists() or path.with_name(f"~${path.name}").exists()


def _plain(reason: OSError) -> str:
    """What the system says, in a few words."""
    if isinstance(reason, PermissionError):
        return "it is open elsewhere or write-protected; close it and run again"
    return (reason.strerror or type(reason).__name__).lower()
