"""The zip package of a workbook, checked before anything reads it: size, parts, compression ratio, document types.

Declared sizes are not trusted: bytes are counted as they are unpacked. Every error message is one plain line without
the name of the file, which :func:`calc.xlsx_read.read.read_book` puts in front.
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
"""Bytes of the file on disk. A jobs book of a hundred jobs takes about a hundredth of it."""

MAX_UNPACKED: Final = 50_000_000
"""Bytes of all parts, unpacked."""

MAX_RATIO: Final = 100
"""Compression ratio of a part larger than :data:`RATIO_FROM`; ordinary sheets are below 30."""

RATIO_FROM: Final = 1_000_000
"""Unpacked bytes from which :data:`MAX_RATIO` applies: a small part of a thousand equal rows may exceed it."""

MAX_PARTS: Final = 1000
"""Parts in the zip: sheets, strings, styles, pictures and others."""

CHUNK_SIZE: Final = 1 << 16
"""Bytes that are unpacked, or parsed, at one time."""

SAVE_AGAIN: Final = "Open it in a spreadsheet program, save it again as .xlsx, and use that file."
"""The remedy for a file that a spreadsheet program can repair."""

NAME_A_WORKBOOK: Final = "Name a workbook that was saved as .xlsx."
"""The remedy for a file that is not a workbook."""

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
"""Other zip-based documents, by a part that only they have."""


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
            raise Unreadable(f"this is not a file on a disk. {NAME_A_WORKBOOK}")
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
        raise Unreadable(f"the file is empty. {NAME_A_WORKBOOK}")
    if len(content) > MAX_FILE:
        raise Unreadable(
            f"the file is larger than {MAX_FILE // 1_000_000} MB. Delete pictures and sheets that are not needed."
        )
    return content


class BoundedZip:
    """The parts of a workbook file by name, ignoring case; each can be unpacked once, within the limits.

    :raises Unreadable: from the constructor, when the file is not a zip, has a password or too many parts, or is
        another kind of document; from :meth:`take`, when the part is missing, damaged or too large.
    """

    def __init__(self, content: bytes) -> None:
        if not content.startswith(ZIP_MARK):
            raise Unreadable(_not_a_zip_error(content))
        # Counted before the list is read: two hundred thousand entries fit in 10 MB and would each become an object.
        if content.count(ENTRY_MARK) > MAX_PARTS:
            raise Unreadable(
                f"the file has more than {MAX_PARTS} parts. Delete sheets and pictures that are not needed."
            )
        try:
            self._zip = ZipFile(BytesIO(content))
        except BadZipFile as reason:
            raise Unreadable(
                "the file is incomplete or damaged, perhaps by a copy that was interrupted. Copy or save it again."
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
        """Unpack a part, which can be done once, to at most ``largest`` bytes."""
        entry = self._left.pop(name.casefold(), None)
        if entry is None:
            raise Unreadable(f"its part {name} is missing. {SAVE_AGAIN}")
        content = bytearray()
        for chunk in self._chunks(entry):
            content += chunk
            if len(content) > largest:
                raise Unreadable(f"its part {name} unpacks to more than {largest // 1_000_000} MB. {SAVE_AGAIN}")
        return bytes(content)

    def close(self) -> None:
        """Unpack and count the parts that were not taken, and refuse a document type in any of them."""
        for name, entry in self._left.items():
            tail = b""
            for chunk in self._chunks(entry):
                window = tail + chunk
                if name.endswith(PARSED_ENDINGS) and any(mark in window for mark in DOCTYPES):
                    raise Unreadable(doctype_error(name))
                tail = window[-max(map(len, DOCTYPES)) :]
        self._left.clear()
        self._zip.close()

    def _add(self, entry: ZipInfo) -> None:
        # Some writers use \ between folders or put / in front; OPC compares names without regard to case.
        name = entry.filename.replace("\\", "/").lstrip("/").casefold()
        if ".." in name.split("/") or posixpath.normpath(name) != name:
            raise Unreadable(f"its part {entry.filename} has a path outside the file. {SAVE_AGAIN}")
        if name in self._left:
            raise Unreadable(f"it has two parts with the name {entry.filename}. {SAVE_AGAIN}")
        if entry.flag_bits & LOCKED_FLAG:
            raise Unreadable("the file has a password. Save it without one.")
        if entry.compress_type not in (ZIP_STORED, ZIP_DEFLATED):
            raise Unreadable(f"its part {entry.filename} is compressed by a method that no workbook uses. {SAVE_AGAIN}")
        self._left[name] = entry

    def _chunks(self, entry: ZipInfo) -> Iterator[bytes]:
        unpacked = 0
        try:
            with self._zip.open(entry) as part:
                while chunk := part.read(CHUNK_SIZE):
                    unpacked += len(chunk)
                    self._unpacked += len(chunk)
                    if self._unpacked > MAX_UNPACKED:
                        raise Unreadable(f"it unpacks to more than {MAX_UNPACKED // 1_000_000} MB. {SAVE_AGAIN}")
                    if unpacked > max(RATIO_FROM, MAX_RATIO * entry.compress_size):
                        raise Unreadable(
                            f"its part {entry.filename} unpacks to more than {MAX_RATIO} times its size. {SAVE_AGAIN}"
                        )
                    yield chunk
        except Unreadable:
            raise
        except Exception as reason:  # zipfile reports damage as BadZipFile, zlib.error, EOFError, struct.error, ...
            raise Unreadable(f"its part {entry.filename} is damaged. {SAVE_AGAIN}") from reason


def doctype_error(part: str) -> str:
    """The error message for a part with a document type, which attacks use and no spreadsheet program writes."""
    return f"its part {part} has a document type, which no workbook has. Do not trust this file."


def _not_a_zip_error(content: bytes) -> str:
    """The error message for a file that is not a zip, with what it looks like."""
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
        kind = "another kind of file, or a damaged one"
    else:
        kind = "a text file, such as .csv"
    return f"this is {kind}, not a workbook. {SAVE_AGAIN}"
