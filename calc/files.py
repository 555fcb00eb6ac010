"""Safe writing of files: atomic, never over a workbook that was changed by hand, never over one that is open."""

from __future__ import annotations

import errno
import hashlib
import json
import os
import re
import stat
import time
import unicodedata
from collections.abc import Collection, Iterator
from contextlib import suppress
from dataclasses import dataclass, field
from enum import Enum
from itertools import count, islice
from pathlib import Path

from calc.errors import Unreadable

RECORD = ".flatwork-written.jsonl"
"""The record in a folder of results, by which the program recognizes its own files. It has one JSON line per workbook:
the file name, the sha256 of the file, the fingerprint of the input that it was made from, and for a numbered copy the
name that it was to have."""

_PART = ".part"
_STALE_AFTER = 60
"""Seconds after which a temporary file was left behind by a killed run: writing one takes a few milliseconds."""

_MAX_NAME = 80
_MAX_BYTES = 200
"""Bytes of a file name without its extension: file systems take 255, of which a temporary or a lock file needs some."""
_RESERVED = {"con", "prn", "aux", "nul", "week", *(f"{name}{n}" for name in ("com", "lpt") for n in range(10))}
"""Names that a job's file may not have: some systems reserve them for devices, and ``week`` is the run's workbook."""


class Saved(Enum):
    """How a workbook was saved."""

    WRITTEN = "written"
    UNCHANGED = "unchanged"
    NUMBERED_COPY = "written as a numbered copy"
    """What has that name was changed by hand, or is none of the program's workbooks for it, and is kept."""


def safe_name(job: str) -> str:
    """The file name of a job without its extension: its id without characters that file systems reject. Not blank."""
    name = unicodedata.normalize("NFC", job)
    name = re.sub(r'[\x00-\x1f<>:"/\\|?*]', "-", name).strip(" .")[:_MAX_NAME]
    name = name.encode("utf-8", "replace")[:_MAX_BYTES].decode("utf-8", "ignore").strip(" .")
    first, dot, rest = name.partition(".")
    return f"{first}_{dot}{rest}" if not name or first.casefold() in _RESERVED else name


def same_file(name: str) -> str:
    """A file name normalized as file systems compare it: without regard to case, to how accents are encoded, or to dots
    and spaces at its end."""
    folded = unicodedata.normalize("NFD", unicodedata.normalize("NFD", name).casefold())
    return unicodedata.normalize("NFC", folded).rstrip(" .")


def shipped(folder: str) -> Path:
    """A folder that is shipped with the program: in the wheel, else beside the package in a checkout."""
    package = Path(__file__).parent
    inside = package / "_shipped" / folder
    return inside if inside.is_dir() else package.parent / folder


def sha256(data: bytes) -> str:
    """The sha256 of a file, in hexadecimal."""
    return hashlib.sha256(data).hexdigest()


@dataclass(frozen=True, slots=True)
class _Own:
    """A file that the program wrote: the fingerprint of its input, and the name that it was to have."""

    made_from: str
    name: str


@dataclass
class Results:
    """A folder of results, with the record of the files that the program wrote there.

    ``names`` are the file names of all jobs of the run: a numbered copy of another file has none of them.
    """

    folder: Path
    names: Collection[str] = ()
    _own: dict[str, dict[str, _Own]] = field(default_factory=dict)
    """What the program wrote, by file name as file systems compare it and sha256."""
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
        self.names = {same_file(each) for each in self.names}
        self._unterminated = record != "" and not record.endswith("\n")
        for name, digest, own in _lines(record):
            self._own.setdefault(same_file(name), {})[digest] = own

    @staticmethod
    def names_in(folder: Path) -> set[str]:
        """The names of the files that the program wrote in a folder, as file systems compare them; none when its record
        cannot be read."""
        try:
            return {same_file(name) for name, _, _ in _lines(_record_of(folder))}
        except OSError:
            return set()  # used to ignore such files only: one that is no input is refused when it is read

    def current(self, name: str, made_from: str) -> Path | None:
        """The workbook of that name that the program wrote from the same input, if it is there and unchanged.

        Where the file of that name was changed by hand, it is the numbered copy.
        """
        for path in self._numbered(name):
            if not os.path.lexists(path):
                return None
            try:
                own = self._own_of(path, name)
            except OSError:
                return None  # not readable: reported when it is saved again
            if own is not None:
                return path if own.made_from == made_from else None
        return None

    def save(self, name: str, data: bytes, made_from: str = "") -> tuple[Path, Saved]:
        """Saves a workbook under ``name`` atomically, and records the fingerprint of its input, ``made_from``.

        What has that name and is not a workbook of the program for it, unchanged, is kept, and the workbook is saved as
        a numbered copy. Raises Unreadable with one plain line when the file is open elsewhere or cannot be written.
        """
        path = self.folder / name
        saved, new = Saved.WRITTEN, sha256(data)
        try:
            if is_open(path):
                raise Unreadable(f"{path}: it is open in another program. Close it and run again.")
            if os.path.lexists(path):
                if is_plain(path) and sha256(path.read_bytes()) == new:
                    saved = Saved.UNCHANGED
                elif self._own_of(path, name) is None:
                    path, saved = self._numbered_copy(name, new), Saved.NUMBERED_COPY
            self._add_to_record(path.name, new, _Own(made_from, name))
            if saved is not Saved.UNCHANGED:
                write_whole(path, data)
        except OSError as reason:
            raise Unreadable(f"{path}: it cannot be written: {_plain(reason)}.") from reason
        return path, saved

    def sync(self) -> None:
        """Makes the disk keep the record and the names of the files that were saved, once at the end of a run."""
        for path in (self.folder / RECORD, self.folder):
            with suppress(OSError):  # some systems do not open folders: then the names are kept when they are kept
                _sync(path)

    def _own_of(self, path: Path, name: str) -> _Own | None:
        """What is recorded of a file that the program wrote for ``name`` and nobody changed; None for any other."""
        if not is_plain(path):
            return None
        own = self._own.get(same_file(path.name), {}).get(sha256(path.read_bytes()))
        return own if own is not None and same_file(own.name) == same_file(name) else None

    def _numbered(self, name: str) -> Iterator[Path]:
        """A file name and the names of its copies: ``24-031.xlsx``, ``24-031 (2).xlsx``, ... without those that are
        names of other jobs of the run."""
        path = self.folder / name
        yield path
        for number in count(2):
            copy = path.with_name(f"{path.stem} ({number}){path.suffix}")
            if same_file(copy.name) not in self.names:
                yield copy

    def _numbered_copy(self, name: str, new: str) -> Path:
        """The first numbered name that nothing has, or whose file the program wrote as this copy."""
        return next(
            copy
            for copy in islice(self._numbered(name), 1, None)
            if not os.path.lexists(copy)
            or self._own_of(copy, name) is not None
            or (is_plain(copy) and sha256(copy.read_bytes()) == new)
        )

    def _add_to_record(self, file: str, data_sha256: str, own: _Own) -> None:
        """Records a workbook before it is put in place, so that a run that is killed in between still recognizes it."""
        if self._own.get(same_file(file), {}).get(data_sha256) == own:
            return
        line_break, self._unterminated = "\n" * self._unterminated, True
        entry = {"file": file, "sha256": data_sha256, "made_from": own.made_from}
        line = json.dumps(entry | ({"copy_of": own.name} if own.name != file else {}), ensure_ascii=False)
        with (self.folder / RECORD).open("a", encoding="utf-8", errors="replace") as record:
            record.write(f"{line_break}{line}\n")
        self._unterminated = False
        self._own.setdefault(same_file(file), {})[data_sha256] = own


def write_whole(path: Path, data: bytes) -> None:
    """Writes a file atomically: it appears whole or not at all, also after a power failure."""
    part = path.with_name(f".{path.name}.{os.getpid()}{_PART}")
    try:
        part.unlink(missing_ok=True)
        with part.open("xb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        os.replace(part, path)
    finally:
        part.unlink(missing_ok=True)


def _sync(path: Path) -> None:
    handle = os.open(path, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def is_plain(path: Path) -> bool:
    """Whether a path is a file, and no link, pipe, device or folder."""
    return stat.S_ISREG(path.lstat().st_mode)


def write_new(path: Path, data: bytes) -> None:
    """Writes a new file atomically. Raises Unreadable with one plain line, also when the file exists."""
    try:
        if os.path.lexists(path) or is_open(path):
            raise Unreadable(f"{path}: the file exists already. Name another file, or move it.")
        write_whole(path, data)
    except OSError as reason:
        raise Unreadable(f"{path}: it cannot be written: {_plain(reason)}.") from reason


def _record_of(folder: Path) -> str:
    """The record of a folder. Raises OSError for one that is no file: reading a pipe would wait for ever."""
    record = folder / RECORD
    if not os.path.lexists(record):
        return ""
    if not is_plain(record):
        raise OSError(errno.EINVAL, "it is a link, a folder or a pipe, and not a file")
    return record.read_text(encoding="utf-8", errors="replace")


def _lines(record: str) -> Iterator[tuple[str, str, _Own]]:
    """The file name, the sha256 and what else is known of every complete line.

    A line cut short by a power failure is ignored: that workbook then counts as changed by hand.
    """
    for line in record.split("\n"):
        try:
            entry = json.loads(line)
            file = str(entry["file"])
            own = _Own(str(entry.get("made_from", "")), str(entry.get("copy_of", file)))
            yield file, str(entry["sha256"]), own
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
