"""Damaged and hostile files must be refused: else the run, the machine or a correct number is lost."""

from __future__ import annotations

import os
import random
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from zipfile import ZIP_BZIP2, ZIP_DEFLATED, ZIP_STORED

import pytest

from calc.errors import Unreadable
from calc.xlsx_read import limits as scan
from calc.xlsx_read.package import MAX_FILE
from calc.xlsx_read.read import read_book
from folders import ROOT
from hostile_packages import HOSTILE, SHARED
from raw_package import MAIN, ONE, Part, cells_xml, pack, package, sheet_xml, small_week


def refusal(path: Path) -> str:
    """The error message of a refused file."""
    with pytest.raises(Unreadable) as caught:
        read_book(path)
    line = str(caught.value)
    assert line.startswith(f"{path.name}: "), line
    assert line.isprintable(), line
    assert line.endswith("."), line
    assert len(line) < 600, line
    return line


@pytest.fixture
def week(tmp_path: Path) -> Path:
    """A small jobs book."""
    return small_week(tmp_path / "jobs.xlsx")


OLE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(600)
NO_WORKBOOK: dict[str, tuple[bytes, str]] = {
    "an empty file": (b"", "is empty"),
    "a text file": (b"job,area\n24-03,patio\n", "a text file"),
    "a web page": (b"<!DOCTYPE html>\n<html><table>", "a web page"),
    "a spreadsheet of 2003": (
        b'<?xml version="1.0"?><Workbook xmlns="urn:schemas-microsoft-com:office:spreadsheet">',
        "an XML spreadsheet of 2003",
    ),
    "a PDF": (b"%PDF-1.7", "a PDF"),
    "a picture": (b"\x89PNG\0\0", "another kind of file"),
    "an old workbook": (OLE, "an old workbook (.xls)"),
    "a workbook with a password": (OLE + "EncryptedPackage".encode("utf-16-le"), "has a password"),
    "a file of zeros": (bytes(MAX_FILE + 1), "larger than 10 MB"),
    "the beginning of a zip": (b"PK\x03\x04" + bytes(100), "incomplete"),
}


@pytest.mark.parametrize(("content", "message"), NO_WORKBOOK.values(), ids=NO_WORKBOOK)
def test_a_file_that_is_no_workbook_is_named_for_what_it_is(tmp_path: Path, content: bytes, message: str) -> None:
    path = tmp_path / "jobs.xlsx"
    path.write_bytes(content)
    assert message in refusal(path)


def test_a_path_that_is_no_file_is_named_for_what_it_is(tmp_path: Path) -> None:
    (tmp_path / "folder.xlsx").mkdir()
    (tmp_path / "~$jobs.xlsx").write_bytes(b"\x03Jo")
    (tmp_path / ".~lock.jobs.xlsx#").write_bytes(b",jo")
    assert "a folder" in refusal(tmp_path / "folder.xlsx")
    assert str(tmp_path) in refusal(tmp_path / "missing.xlsx")
    assert "lock file" in refusal(tmp_path / "~$jobs.xlsx")
    assert "lock file" in refusal(tmp_path / ".~lock.jobs.xlsx#")
    assert "cannot be read" in refusal(tmp_path / ("long" * 100))


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no pipes with a name")
def test_a_pipe_does_not_block_the_run(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "jobs.xlsx")
    assert "not a file on a disk" in refusal(tmp_path / "jobs.xlsx")


@pytest.mark.parametrize(
    ("error", "message"), [(PermissionError(13, "denied"), "another program"), (OSError(5, "bad disk"), "bad disk")]
)
def test_a_file_without_permission_is_reported(
    week: Path, monkeypatch: pytest.MonkeyPatch, error: OSError, message: str
) -> None:
    def refuse(*_: object) -> None:
        raise error

    monkeypatch.setattr(Path, "open", refuse)
    assert message in refusal(week)


OTHER_ZIPS = {
    "xl/workbook.bin": ".xlsb",
    "content.xml": ".ods",
    "word/document.xml": ".docx",
    "ppt/presentation.xml": ".pptx",
    "Index/Document.iwa": "Numbers",
    "jobs.xlsx": "a zip file, not a workbook",
}


@pytest.mark.parametrize(("part", "message"), OTHER_ZIPS.items(), ids=OTHER_ZIPS.values())
def test_another_kind_of_zip_is_named_for_what_it_is(tmp_path: Path, part: str, message: str) -> None:
    assert message in refusal(pack(tmp_path / "jobs.xlsx", {"mimetype": "x", part: "<x/>"}))


@pytest.mark.parametrize(("parts", "message"), HOSTILE.values(), ids=HOSTILE)
def test_a_damaged_or_hostile_book_is_refused_with_its_reason(
    tmp_path: Path, parts: dict[str, Part], message: str
) -> None:
    path = pack(tmp_path / "jobs.xlsx", parts, ZIP_STORED if sum(map(len, parts.values())) < MAX_FILE else ZIP_DEFLATED)
    assert message in refusal(path)


@pytest.mark.parametrize(
    ("limit", "message"),
    [("MAX_CELLS", "100 cells."), ("MAX_ELEMENTS", "100 XML elements."), ("MAX_CHARACTERS", "100 characters.")],
)
def test_a_book_over_a_limit_is_refused_with_what_to_clear(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, limit: str, message: str
) -> None:
    full = package({name: sheet_xml(f"<row>{'<c><v>1</v></c>' * 60}</row>") for name in ("Areas", "Jobs")})
    path = pack(tmp_path / "jobs.xlsx", full)
    assert len(read_book(path).sheets) == 2
    monkeypatch.setattr(scan, limit, 100)
    assert f"has more than {message}" in refusal(path)


def test_a_part_that_is_in_the_zip_twice_is_refused(tmp_path: Path) -> None:
    parts = package({"Areas": cells_xml(ONE)})
    with pytest.warns(UserWarning, match="Duplicate name"):
        path = pack(tmp_path / "jobs.xlsx", [*parts.items(), ("xl/workbook.xml", "<other/>")])
    assert "two parts with the name xl/workbook.xml" in refusal(path)


def test_a_zip_with_a_password_or_an_unknown_compression_is_refused(tmp_path: Path) -> None:
    parts = package({"Areas": cells_xml(ONE)})
    content = pack(tmp_path / "jobs.xlsx", parts).read_bytes()
    directory = content.index(b"PK\x01\x02")
    (tmp_path / "locked.xlsx").write_bytes(content[: directory + 8] + b"\x01" + content[directory + 9 :])
    assert "password" in refusal(tmp_path / "locked.xlsx")
    assert "compressed by a method" in refusal(pack(tmp_path / "odd.xlsx", parts, ZIP_BZIP2))


def test_a_part_with_a_false_declared_size_is_counted_as_it_unpacks(tmp_path: Path) -> None:
    parts = package({"Areas": cells_xml(ONE)}, more={"xl/big.bin": bytes(2_000_000)})
    content = pack(tmp_path / "jobs.xlsx", parts).read_bytes()
    lying = content.replace((2_000_000).to_bytes(4, "little"), (2_000_000_000).to_bytes(4, "little"))
    (tmp_path / "lying.xlsx").write_bytes(lying)
    assert "more than 100 times" in refusal(tmp_path / "lying.xlsx")


def test_a_file_cut_short_anywhere_is_refused(tmp_path: Path, week: Path) -> None:
    content = week.read_bytes()
    path = tmp_path / "cut.xlsx"
    for end in random.Random(20260304).sample(range(1, len(content)), 200):
        path.write_bytes(content[:end])
        refusal(path)


def test_a_flipped_byte_never_changes_the_cells(tmp_path: Path, week: Path) -> None:
    content, whole = bytearray(week.read_bytes()), read_book(week).sheets
    chance = random.Random(20260304)
    path = tmp_path / "flipped.xlsx"
    refused = 0
    for _ in range(300):
        place, mask = chance.randrange(len(content)), chance.randrange(1, 256)
        content[place] ^= mask
        path.write_bytes(content)
        content[place] ^= mask
        try:
            assert read_book(path).sheets == whole, (place, mask)
        except Unreadable as reason:
            refused += 1
            assert str(reason).startswith("flipped.xlsx: ")
    assert refused > 200


# --- the memory of hostile files --------------------------------------------------------------------------------------

Attack = Callable[[Path], Path]


def _book(path: Path, sheet: Part, **more: Part) -> Path:
    return pack(path, package({"Areas": sheet}, **more))


def _noise(letters: int) -> str:
    """Characters that do not compress, so that a part stays below the limit of the compression ratio."""
    return random.Random(letters).randbytes(letters // 2).hex()


ATTACKS: dict[str, Attack] = {
    "a bomb of 300 MB": lambda path: _book(path, sheet_xml(" " * 300_000_000)),
    "bombs side by side": lambda path: pack(
        path, package({"Areas": cells_xml(ONE)}, more={f"b{n}": bytes(990_000) for n in range(60)})
    ),
    "a far cell": lambda path: _book(path, sheet_xml('<row r="1048576"><c r="XFD1048576"><v>1</v></c></row>')),
    "a row of a million attributes": lambda path: _book(
        path, sheet_xml("<row " + " ".join(f'a{n}=""' for n in range(1_000_000)) + "/>")
    ),
    "a million names of tags": lambda path: _book(path, sheet_xml("", "".join(f"<n{n}/>" for n in range(1_000_000)))),
    "tags a hundred thousand deep": lambda path: _book(path, sheet_xml("", "<a>" * 100_000 + _noise(5000))),
    "a string of sixty thousand runs": lambda path: _book(
        path, cells_xml(ONE), strings=f'<sst xmlns="{MAIN}"><si>{"<r/>" * 60_000}</si></sst>'
    ),
    "letters of four bytes": lambda path: _book(
        path,
        cells_xml(ONE),
        strings=f'<sst xmlns="{MAIN}">' + "".join(f"<si><t>🙂{_noise(n)}</t></si>" for n in range(3000)) + "</sst>",
    ),
    "thirty thousand looks": lambda path: _book(
        path,
        cells_xml(ONE),
        styles=f'<styleSheet xmlns="{MAIN}"><cellXfs>{"<xf/>" * 30_000}</cellXfs></styleSheet>',
    ),
    "styles without end": lambda path: _book(
        path,
        cells_xml(ONE),
        styles=f'<styleSheet xmlns="{MAIN}">{"<a/>" * 400_000}<!--{_noise(70_000)}--></styleSheet>',
    ),
    "thirty thousand cells": lambda path: _book(
        path,
        sheet_xml("".join(f"<row>{f'<c><v>{row}.5</v></c>' * 10}</row>" for row in range(3000))),
    ),
    "a formula shared by a sheet": lambda path: _book(
        path,
        sheet_xml(SHARED),
    ),
    "merged over the whole sheet": lambda path: _book(
        path,
        sheet_xml(
            f'<row r="1">{ONE}</row>', "<mergeCells>" + '<mergeCell ref="A1:XFD1048576"/>' * 499 + "</mergeCells>"
        ),
    ),
}

COST = """
import re, sys
from pathlib import Path
from calc.errors import Unreadable
from calc.xlsx_read.read import read_book

for path in sorted(Path(sys.argv[1]).iterdir()):
    try:
        read_book(path)
    except Unreadable:
        pass
    peak = re.search(r"VmHWM:\\s+(\\d+)", Path("/proc/self/status").read_text())
    print(path.name, int(peak[1]) // 1024)
"""


@pytest.mark.skipif(not Path("/proc/self/status").exists(), reason="the peak of memory is read from /proc")
def test_no_hostile_file_takes_three_hundred_megabytes(tmp_path: Path) -> None:
    for name, attack in ATTACKS.items():
        attack(tmp_path / f"{name}.xlsx")
    process = subprocess.run(
        [sys.executable, "-c", COST, str(tmp_path)], cwd=ROOT, capture_output=True, text=True, check=False, timeout=120
    )
    assert process.returncode == 0, process.stderr
    peaks = [int(line.rpartition(" ")[2]) for line in process.stdout.splitlines()]
    assert len(peaks) == len(ATTACKS), process.stdout
    assert max(peaks) < 300, process.stdout
