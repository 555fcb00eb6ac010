"""What a file must be before anything reads it: a zip of a few parts, each unpacked once, counted, and not hostile.

What a zip says of itself may be a lie, so nothing here believes a declared size: what comes out is counted as it comes.
Every refusal is one plain line without the name of the file; :func:`calc.xlsx_read.read.read_book` puts that in front.
"""

from __future__ import annotations

import posixpath
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path
from typing import Final
from zipfile import ZIP_DEFLATED, ZIP_STORED, BadZipFile, ZipFile, ZipInfo

from calc.errors import Unreadable

MAX_FILE: Final = 10_000_000
"""Bytes of the file as it lies on the disk. A week of a hundred jobs takes about a hundredth of it."""

MAX_UNPACKED: Final = 50_000_000
"""Bytes that all parts together may unpack to."""

MAX_RATIO: Final = 100
"""How many times its packed size a part over :data:`RATIO_FROM` may unpack to; ordinary sheets stay under 30."""

RATIO_FROM: Final = 1_000_000
"""Bytes from which :data:`MAX_RATIO` holds: a small part of a thousand equal rows may pack better than that."""

MAX_PARTS: Final = 1000
"""Parts in the zip: sheets, strings, styles, pictures and what else a spreadsheet program puts there."""

PIECE: Final = 1 << 16
"""Bytes that are unpacked, or parsed, at one time."""

SAVE_AGAIN: Final = "Open it in a spreadsheet program, save it again as .xlsx, and use that file."
"""The remedy for everything that a spreadsheet program can put right."""

NOT_OURS: Final = "Name a workbook that was saved as .xlsx."
"""The remedy for a file that is something else."""

ZIP_MARK: Final = b"PK\x03\x04"
ENTRY_MARK: Final = b"PK\x01\x02"
OLE_MARK: Final = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"
LOCK_MARKS: Final = ("~$", ".~lock.")
DOCTYPES: Final = tuple("<!DOCTYPE".encode(code) for code in ("utf-8", "utf-16-le", "utf-16-be"))
PARSED_ENDINGS: Final = (".xml", ".rels")
LOCKED_FLAG: Final = 0x1

OTHER_PACKAGES: Final = {
    "xl/workbook.bin": "a binary workbook (.xlsb)",
    "content.xml": "an OpenDocument file (.ods)",
    "word/document.xml": "a text document (.docx)",
    "ppt/presentation.xml": "a slide show (.pptx)",
    "index/document.iwa": "a Numbers document",
}
"""Other zips that people take for a workbook, by a part that only they have."""


def load(path: Path) -> bytes:
    """The bytes of the file.

    :raises Unreadable: no such file, a folder, a lock file, no permission, empty, over :data:`MAX_FILE`, or a device.
    """
    if path.name.startswith(LOCK_MARKS):
        raise Unreadable("this is the lock file of an open workbook. Name the workbook itself.")
    try:
        if path.is_dir():
            raise Unreadable("this is a folder. Name a workbook in it.")
        if not path.exists():
            raise Unreadable(f"there is no such file in {path.parent.absolute()}. Check the name and the folder.")
        if not path.is_file():
            raise Unreadable(f"this is not a file on a disk. {NOT_OURS}")
        with path.open("rb") as file:
            content = file.read(MAX_FILE + 1)
    except PermissionError as reason:
        raise Unreadable(
            "it may not be read: another program has it open, or you have no permission. Close it there, or copy it."
        ) from reason
    except OSError as reason:
        raise Unreadable(
            f"it cannot be read ({reason.strerror}). Copy it to another place and use the copy."
        ) from reason
    if not content:
        raise Unreadable(f"the file is empty. {NOT_OURS}")
    if len(content) > MAX_FILE:
        raise Unreadable(
            f"the file is larger than {MAX_FILE // 1_000_000} MB. Take out pictures and sheets that are not needed."
        )
    return content


class BoundedZip:
    """The parts of a workbook file by name, without regard to case; each is unpacked once, and counted.

    :raises Unreadable: on making it, when the file is no zip, holds a password, holds too many parts, or is some
        other kind of document; on taking a part, when the part is missing, damaged, or unpacks to too much.
    """

    def __init__(self, content: bytes) -> None:
        if not content.startswith(ZIP_MARK):
            raise Unreadable(_no_zip(content))
        # Counted before the list is read: two hundred thousand entries fit in 10 MB and would each become an object.
        if content.count(ENTRY_MARK) > MAX_PARTS:
            raise Unreadable(f"the file holds more than {MAX_PARTS} parts. Take out sheets and pictures not needed.")
        try:
            self._zip = ZipFile(BytesIO(content))
        except BadZipFile as reason:
            raise Unreadable(
                "the file is cut short or damaged, perhaps by a copy that was not finished. Copy or save it again."
            ) from reason
        self._left: dict[str, ZipInfo] = {}
        self._unpacked = 0
        for entry in self._zip.infolist():
            if not entry.is_dir():
                self._add(entry)
        self.names = frozenset(self._left)
        """The names of all parts, with ``/`` between folders, in lower case."""
        for name, kind in OTHER_PACKAGES.items():
            if name in self.names:
                raise Unreadable(f"this is {kind}, not an .xlsx workbook. {SAVE_AGAIN}")

    def take(self, name: str, largest: int = MAX_UNPACKED) -> bytes:
        """Unpack the part, which may be taken once and have at most ``largest`` bytes."""
        entry = self._left.pop(name.casefold(), None)
        if entry is None:
            raise Unreadable(f"its part {name} is missing. {SAVE_AGAIN}")
        content = bytearray()
        for piece in self._pieces(entry):
            content += piece
            if len(content) > largest:
                raise Unreadable(f"its part {name} unpacks to more than {largest // 1_000_000} MB. {SAVE_AGAIN}")
        return bytes(content)

    def close(self) -> None:
        """Unpack what nobody took, count it, and look for a document type in it: no part may carry one."""
        for name, entry in self._left.items():
            tail = b""
            for piece in self._pieces(entry):
                window = tail + piece
                if name.endswith(PARSED_ENDINGS) and any(mark in window for mark in DOCTYPES):
                    raise Unreadable(doctype_in(name))
                tail = window[-max(map(len, DOCTYPES)) :]
        self._left.clear()
        self._zip.close()

    def _add(self, entry: ZipInfo) -> None:
        # Some writers use \ between folders or put / in front; OPC compares names without regard to case.
        name = entry.filename.replace("\\", "/").lstrip("/").casefold()
        if ".." in name.split("/") or posixpath.normpath(name) != name:
            raise Unreadable(f"its part {entry.filename} has a path that leads elsewhere. {SAVE_AGAIN}")
        if name in self._left:
            raise Unreadable(f"it holds two parts of the name {entry.filename}. {SAVE_AGAIN}")
        if entry.flag_bits & LOCKED_FLAG:
            raise Unreadable("the file has a password. Save it without one.")
        if entry.compress_type not in (ZIP_STORED, ZIP_DEFLATED):
            raise Unreadable(f"its part {entry.filename} is packed in a way that no workbook uses. {SAVE_AGAIN}")
        self._left[name] = entry

    def _pieces(self, entry: ZipInfo) -> Iterator[bytes]:
        unpacked = 0
        try:
            with self._zip.open(entry) as part:
                while piece := part.read(PIECE):
                    unpacked += len(piece)
                    self._unpacked += len(piece)
                    if self._unpacked > MAX_UNPACKED:
                        raise Unreadable(f"it unpacks to more than {MAX_UNPACKED // 1_000_000} MB. {SAVE_AGAIN}")
                    if unpacked > max(RATIO_FROM, MAX_RATIO * entry.compress_size):
                        raise Unreadable(
                            f"its part {entry.filename} unpacks to more than {MAX_RATIO} times its size. {SAVE_AGAIN}"
                        )
                    yield piece
        except Unreadable:
            raise
        except Exception as reason:  # zipfile meets damage with BadZipFile, zlib.error, EOFError, struct.error, ...
            raise Unreadable(f"its part {entry.filename} is damaged. {SAVE_AGAIN}") from reason


def doctype_in(part: str) -> str:
    """The refusal of a part with a document type, which no spreadsheet program writes and an attack needs."""
    return f"its part {part} carries a document type, which no workbook has. Do not trust this file."


def _no_zip(content: bytes) -> str:
    """The refusal of a file that is no zip, by what it looks like."""
    if content.startswith(OLE_MARK):
        if "EncryptedPackage".encode("utf-16-le") in content:
            return "the workbook has a password. Open it, save it without one, and use that file."
        return f"this is an old workbook (.xls) or another old office file. {SAVE_AGAIN}"
    head = content[:4096].lower()
    if b"urn:schemas-microsoft-com:office:spreadsheet" in head:
        kind = "an XML spreadsheet of 2003"
    elif any(mark in head for mark in (b"<html", b"<table", b"<!doctype html")):
        kind = "a web page"
    elif head.startswith(b"%pdf"):
        kind = "a PDF"
    elif b"\0" in head:
        kind = "some other kind of file, or a damaged one"
    else:
        kind = "a text file, such as .csv"
    return f"this is {kind}, not a workbook. {SAVE_AGAIN}"
