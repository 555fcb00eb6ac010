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
from raw_package import MAIN, ONE, Part, cells_xml, pack, package, sheet_xml, small_week
from folders import ROOT

DOCTYPE = '<!DOCTYPE x [<!ENTITY e SYSTEM "file:///etc/hostname">]>'


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


def _without(part: str) -> dict[str, Part]:
    parts = package({"Areas": cells_xml(ONE)}, strings=f'<sst xmlns="{MAIN}"/>', styles=f'<styleSheet xmlns="{MAIN}"/>')
    del parts[part]
    return parts


def _one_sheet(rows: str, rest: str = "") -> dict[str, Part]:
    return package({"Areas": sheet_xml(rows, rest)})


def _with(part: str, content: Part) -> dict[str, Part]:
    return package({"Areas": cells_xml(ONE)}, strings=f'<sst xmlns="{MAIN}"/>') | {part: content}


QUADRATIC = f'<!DOCTYPE x [<!ENTITY e "{"e" * 50_000}">]><sst xmlns="{MAIN}"><si><t>{"&e;" * 50_000}</t></si></sst>'
SHARED = f'<row r="1"><c r="A1"><f t="shared" si="0" ref="A1:A9999">{"A1+" * 2000}1</f></c></row>' + "".join(
    f'<row r="{n}"><c r="A{n}"><f t="shared" si="0"/></c></row>' for n in range(2, 9999)
)
HOSTILE: dict[str, tuple[dict[str, Part], str]] = {
    "no links": (_without("_rels/.rels"), "not a workbook"),
    "no workbook": (_without("xl/workbook.xml"), "xl/workbook.xml is missing"),
    "no sheet": (_without("xl/worksheets/sheet1.xml"), "sheet1.xml is missing"),
    "no strings": (_without("xl/sharedStrings.xml"), "sharedStrings.xml is missing"),
    "no styles": (_without("xl/styles.xml"), "styles.xml is missing"),
    "a broken workbook": (_with("xl/workbook.xml", "<workbook"), "workbook.xml is damaged"),
    "a broken sheet": (_with("xl/worksheets/sheet1.xml", cells_xml(ONE)[:-9]), "sheet Areas is damaged"),
    "broken strings": (_with("xl/sharedStrings.xml", "<sst>"), "strings is not what a workbook has"),
    "strings cut short": (_with("xl/sharedStrings.xml", f'<sst xmlns="{MAIN}"><si>'), "strings is damaged"),
    "an empty sheet part": (_with("xl/worksheets/sheet1.xml", ""), "sheet Areas is damaged"),
    "no rows in a sheet": (_with("xl/worksheets/sheet1.xml", f'<worksheet xmlns="{MAIN}"/>'), "no rows at all"),
    "a sheet that is none": (_with("xl/worksheets/sheet1.xml", "<html/>"), "not what a workbook has"),
    "a strict workbook": (
        _with("xl/workbook.xml", '<workbook xmlns="http://purl.oclc.org/ooxml/spreadsheetml/main"/>'),
        "Strict Open XML",
    ),
    "no sheets": (_with("xl/workbook.xml", f'<workbook xmlns="{MAIN}"><sheets/></workbook>'), "no sheet with cells"),
    "a sheet without a part": (
        _with("xl/workbook.xml", f'<workbook xmlns="{MAIN}"><sheets><sheet name="A"/></sheets></workbook>'),
        "a sheet A that is not in it",
    ),
    "one name for two sheets": (package({"Areas": cells_xml(ONE), "AREAS": cells_xml(ONE)}), "one name"),
    "500 sheets": (package({f"S{n}": cells_xml(ONE) for n in range(500)}), "500 sheets"),
    "a document type in the workbook": (_with("xl/workbook.xml", f"{DOCTYPE}<x/>"), "document type"),
    "a document type in the links": (_with("xl/_rels/workbook.xml.rels", f"{DOCTYPE}<x/>"), "document type"),
    "a document type in the strings": (_with("xl/sharedStrings.xml", f"{DOCTYPE}<x/>"), "document type"),
    "a document type in a sheet": (_with("xl/worksheets/sheet1.xml", f"{DOCTYPE}<x/>"), "document type"),
    "a document type in a UTF-16 sheet": (
        _with("xl/worksheets/sheet1.xml", f"{DOCTYPE}<x/>".encode("utf-16")),
        "document type",
    ),
    "a document type in a part that is not read": (
        _with("docProps/app.xml", "<!--" + " " * 65_528 + f"-->{DOCTYPE}<x/>"),
        "document type",
    ),
    "an entity that grows": (_with("xl/sharedStrings.xml", QUADRATIC), "document type"),
    "a far cell": (
        _one_sheet(f'<row r="1">{ONE}</row><row r="1048576"><c r="XFD1048576"><v>1</v></c></row>'),
        "there is something in XFD1048576 of sheet Areas, far outside the table. Clear it",
    ),
    "a cell one row too low": (_one_sheet('<row r="20001"><c r="A20001"><f>1</f></c></row>'), "in A20001 of"),
    "a cell one column too far": (
        _one_sheet('<row r="1"><c r="GS1" t="inlineStr"><is><t>x</t></is></c></row>'),
        "in GS1 of",
    ),
    "rows out of order": (_one_sheet('<row r="2"/><row r="1"/>'), "row 1 comes twice, or after row 2"),
    "a cell twice": (_one_sheet(f'<row r="1">{ONE}{ONE}</row>'), "A1 stands twice"),
    "a cell in another row": (_one_sheet(f'<row r="2">{ONE}</row>'), "A1 stands twice or in a wrong place"),
    "rows in two places": (_one_sheet("", "<sheetData/>"), "two places"),
    "a merged range that is none": (_one_sheet("", '<mergeCells><mergeCell ref="A"/></mergeCells>'), "merged"),
    "a text of 40,000 letters": (
        _one_sheet(f'<row r="1"><c r="A1" t="str"><v>{"x" * 40_000}</v></c></row>'),
        "the text in A1 of sheet Areas has more than 32,767 letters",
    ),
    "a formula of 9,000 letters": (_one_sheet(f'<row r="1"><c r="A1"><f>{"1+" * 4500}1</f></c></row>'), "8,192"),
    "a number beyond all numbers": (_one_sheet('<row r="1"><c r="A1"><v>1e999</v></c></row>'), "too large"),
    "a number that is none": (_one_sheet('<row r="1"><c r="A1"><v>abc</v></c></row>'), "damaged"),
    "a string that is not there": (_one_sheet('<row r="1"><c r="A1" t="s"><v>7</v></c></row>'), "damaged"),
    "a look that is not there": (_one_sheet('<row r="1"><c r="A1" s="7"><v>7</v></c></row>'), "damaged"),
    "a formula shared too often": (_one_sheet(SHARED), "more than 5,000,000 letters"),
    "merged ranges without end": (
        _one_sheet("", "<mergeCells>" + '<mergeCell ref="A1:B1"/>' * 501 + "</mergeCells>"),
        "more than 500 merged ranges",
    ),
    "a row of more than 1 MB": (_one_sheet(f"<row>{'<c/>' * 300_000}</row>"), "takes more than 1 MB"),
    "tags of three thousand names": (_one_sheet("", "".join(f"<n{n}/>" for n in range(3000))), "its tags are none"),
    "tags sixty deep": (_one_sheet("", "<a>" * 60 + " " * 70_000), "its tags are none"),
    "a part of the frame of 4 MB": (_with("xl/workbook.xml", " " * 4_000_001), "unpacks to more than 4 MB"),
    "more than 50 MB in all": (
        package({"Areas": cells_xml(ONE)}, more=dict.fromkeys((f"a{n}" for n in range(51)), bytes(1_000_000))),
        "more than 50 MB",
    ),
    "too many parts": (_with("a", "") | {f"a{n}": "" for n in range(1000)}, "1000 parts"),
    "a path that leads elsewhere": (_with("../x", "x"), "leads elsewhere"),
    "a name that would break the line": (package({"A&#10;\u202eB": "<broken"}), "sheet A B is damaged"),
    "a name of 9,000 letters": (package({"A" * 9000: cells_xml(ONE)}), "too long"),
}


@pytest.mark.parametrize(("parts", "said"), HOSTILE.values(), ids=HOSTILE)
def test_a_damaged_or_hostile_book_is_refused_with_its_reason(
    tmp_path: Path, parts: dict[str, Part], said: str
) -> None:
    path = pack(tmp_path / "week.xlsx", parts, ZIP_STORED if sum(map(len, parts.values())) < MAX_FILE else ZIP_DEFLATED)
    assert said in refusal(path)


@pytest.mark.parametrize(
    ("limit", "said"),
    [("MAX_CELLS", "100 cells."), ("MAX_ELEMENTS", "100 cells and marks."), ("MAX_LETTERS", "100 letters.")],
)
def test_a_book_that_holds_more_than_a_run_can_bear_says_what_to_clear(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, limit: str, said: str
) -> None:
    full = package({name: sheet_xml(f"<row>{'<c><v>1</v></c>' * 60}</row>") for name in ("Areas", "Jobs")})
    path = pack(tmp_path / "week.xlsx", full)
    assert len(read_book(path).sheets) == 2
    monkeypatch.setattr(scan, limit, 100)
    assert f"holds more than {said}" in refusal(path)


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
