"""What a person would lose if a damaged or hostile file were not refused: the run, the machine, or a right number."""

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
    """The plain line with which a file is refused."""
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
    """A small week's book."""
    return small_week(tmp_path / "week.xlsx")


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
    "a picture": (b"\x89PNG\0\0", "some other kind of file"),
    "an old workbook": (OLE, "an old workbook (.xls)"),
    "a workbook with a password": (OLE + "EncryptedPackage".encode("utf-16-le"), "has a password"),
    "a file of zeros": (bytes(MAX_FILE + 1), "larger than 10 MB"),
    "the beginning of a zip": (b"PK\x03\x04" + bytes(100), "cut short"),
}


@pytest.mark.parametrize(("content", "said"), NO_WORKBOOK.values(), ids=NO_WORKBOOK)
def test_a_file_that_is_something_else_is_named_for_what_it_is(tmp_path: Path, content: bytes, said: str) -> None:
    path = tmp_path / "week.xlsx"
    path.write_bytes(content)
    assert said in refusal(path)


def test_a_path_that_is_no_file_is_named_for_what_it_is(tmp_path: Path) -> None:
    (tmp_path / "folder.xlsx").mkdir()
    (tmp_path / "~$week.xlsx").write_bytes(b"\x03Jo")
    (tmp_path / ".~lock.week.xlsx#").write_bytes(b",jo")
    assert "a folder" in refusal(tmp_path / "folder.xlsx")
    assert str(tmp_path) in refusal(tmp_path / "missing.xlsx")
    assert "lock file" in refusal(tmp_path / "~$week.xlsx")
    assert "lock file" in refusal(tmp_path / ".~lock.week.xlsx#")
    assert "cannot be read" in refusal(tmp_path / ("long" * 100))


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no pipes with a name")
def test_a_pipe_does_not_make_the_run_wait_for_ever(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "week.xlsx")
    assert "not a file on a disk" in refusal(tmp_path / "week.xlsx")


@pytest.mark.parametrize(
    ("error", "said"), [(PermissionError(13, "denied"), "another program"), (OSError(5, "bad disk"), "bad disk")]
)
def test_a_file_that_may_not_be_read_says_so(
    week: Path, monkeypatch: pytest.MonkeyPatch, error: OSError, said: str
) -> None:
    def refuse(*_: object) -> None:
        raise error

    monkeypatch.setattr(Path, "open", refuse)
    assert said in refusal(week)


OTHER_ZIPS = {
    "xl/workbook.bin": ".xlsb",
    "content.xml": ".ods",
    "word/document.xml": ".docx",
    "ppt/presentation.xml": ".pptx",
    "Index/Document.iwa": "Numbers",
    "week.xlsx": "a zip file, not a workbook",
}


@pytest.mark.parametrize(("part", "said"), OTHER_ZIPS.items(), ids=OTHER_ZIPS.values())
def test_another_kind_of_zip_is_named_for_what_it_is(tmp_path: Path, part: str, said: str) -> None:
    assert said in refusal(pack(tmp_path / "week.xlsx", {"mimetype": "x", part: "<x/>"}))


@pytest.mark.parametrize(("parts", "said"), HOSTILE.values(), ids=HOSTILE)
def test_a_damaged_or_hostile_book_is_refused_with_its_reason(
    tmp_path: Path, parts: dict[str, Part], said: str
) -> None:
    path = pack(tmp_path / "week.xlsx", parts, ZIP_STORED if sum(map(len, parts.values())) < MAX_FILE else ZIP_DEFLATED)
    assert said in refusal(path)


@pytest.mark.parametrize(
    ("limit", "said"),
    [("MAX_CELLS", "100 cells."), ("MAX_ELEMENTS", "100 XML elements."), ("MAX_CHARACTERS", "100 characters.")],
)
def test_a_book_that_holds_more_than_a_run_can_bear_says_what_to_clear(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, limit: str, said: str
) -> None:
    full = package({name: sheet_xml(f"<row>{'<c><v>1</v></c>' * 60}</row>") for name in ("Areas", "Jobs")})
    path = pack(tmp_path / "week.xlsx", full)
    assert len(read_book(path).sheets) == 2
    monkeypatch.setattr(scan, limit, 100)
    assert f"has more than {said}" in refusal(path)


def test_a_part_that_stands_in_the_zip_twice_is_refused(tmp_path: Path) -> None:
    parts = package({"Areas": cells_xml(ONE)})
    with pytest.warns(UserWarning, match="Duplicate name"):
        path = pack(tmp_path / "week.xlsx", [*parts.items(), ("xl/workbook.xml", "<other/>")])
    assert "two parts of the name xl/workbook.xml" in refusal(path)


def test_a_zip_with_a_password_or_an_odd_packing_is_refused(tmp_path: Path) -> None:
    parts = package({"Areas": cells_xml(ONE)})
    content = pack(tmp_path / "week.xlsx", parts).read_bytes()
    directory = content.index(b"PK\x01\x02")
    (tmp_path / "locked.xlsx").write_bytes(content[: directory + 8] + b"\x01" + content[directory + 9 :])
    assert "password" in refusal(tmp_path / "locked.xlsx")
    assert "packed in a way" in refusal(pack(tmp_path / "odd.xlsx", parts, ZIP_BZIP2))


def test_a_part_that_lies_about_its_size_is_counted_as_it_unpacks(tmp_path: Path) -> None:
    parts = package({"Areas": cells_xml(ONE)}, more={"xl/big.bin": bytes(2_000_000)})
    content = pack(tmp_path / "week.xlsx", parts).read_bytes()
    lying = content.replace((2_000_000).to_bytes(4, "little"), (2_000_000_000).to_bytes(4, "little"))
    (tmp_path / "lying.xlsx").write_bytes(lying)
    assert "more than 100 times" in refusal(tmp_path / "lying.xlsx")


def test_a_file_cut_short_anywhere_is_refused(tmp_path: Path, week: Path) -> None:
    content = week.read_bytes()
    path = tmp_path / "cut.xlsx"
    for end in random.Random(20260304).sample(range(1, len(content)), 200):
        path.write_bytes(content[:end])
        refusal(path)


def test_a_flipped_byte_never_changes_what_is_read(tmp_path: Path, week: Path) -> None:
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


# --- what a hostile file costs --------------------------------------------------------------------------------------

Attack = Callable[[Path], Path]


def _book(path: Path, sheet: Part, **more: Part) -> Path:
    return pack(path, package({"Areas": sheet}, **more))


def _noise(letters: int) -> str:
    """Letters that do not pack, so that a part stays under the ratio that is refused first."""
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
    told = subprocess.run(
        [sys.executable, "-c", COST, str(tmp_path)], cwd=ROOT, capture_output=True, text=True, check=False, timeout=120
    )
    assert told.returncode == 0, told.stderr
    peaks = [int(line.rpartition(" ")[2]) for line in told.stdout.splitlines()]
    assert len(peaks) == len(ATTACKS), told.stdout
    assert max(peaks) < 300, told.stdout
