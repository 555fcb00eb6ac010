"""Damaged and hostile workbook files, part by part, and a phrase of the error message of each."""

from __future__ import annotations

from raw_package import MAIN, ONE, Part, cells_xml, package, sheet_xml

DOCTYPE = '<!DOCTYPE x [<!ENTITY e SYSTEM "file:///etc/hostname">]>'


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
    "broken strings": (_with("xl/sharedStrings.xml", "<sst>"), "strings is not a part of a workbook"),
    "strings cut short": (_with("xl/sharedStrings.xml", f'<sst xmlns="{MAIN}"><si>'), "strings is damaged"),
    "an empty sheet part": (_with("xl/worksheets/sheet1.xml", ""), "sheet Areas is damaged"),
    "no rows in a sheet": (_with("xl/worksheets/sheet1.xml", f'<worksheet xmlns="{MAIN}"/>'), "it has no rows"),
    "a part that is no sheet": (_with("xl/worksheets/sheet1.xml", "<html/>"), "not a part of a workbook"),
    "a strict workbook": (
        _with("xl/workbook.xml", '<workbook xmlns="http://purl.oclc.org/ooxml/spreadsheetml/main"/>'),
        "Strict Open XML",
    ),
    "no sheets": (_with("xl/workbook.xml", f'<workbook xmlns="{MAIN}"><sheets/></workbook>'), "no sheet with cells"),
    "a sheet without a part": (
        _with("xl/workbook.xml", f'<workbook xmlns="{MAIN}"><sheets><sheet name="A"/></sheets></workbook>'),
        "its sheet A is missing",
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
        "there is a value in XFD1048576 of sheet Areas, far outside the table. Clear it",
    ),
    "a cell one row too low": (_one_sheet('<row r="20001"><c r="A20001"><f>1</f></c></row>'), "in A20001 of"),
    "a cell one column too far": (
        _one_sheet('<row r="1"><c r="GS1" t="inlineStr"><is><t>x</t></is></c></row>'),
        "in GS1 of",
    ),
    "rows out of order": (_one_sheet('<row r="2"/><row r="1"/>'), "row 1 is repeated, or follows row 2"),
    "a repeated cell": (_one_sheet(f'<row r="1">{ONE}{ONE}</row>'), "A1 is repeated"),
    "a cell in another row": (_one_sheet(f'<row r="2">{ONE}</row>'), "A1 is repeated or misplaced"),
    "two blocks of rows": (_one_sheet("", "<sheetData/>"), "two blocks of rows"),
    "an invalid merged range": (_one_sheet("", '<mergeCells><mergeCell ref="A"/></mergeCells>'), "merged"),
    "a text of 40,000 characters": (
        _one_sheet(f'<row r="1"><c r="A1" t="str"><v>{"x" * 40_000}</v></c></row>'),
        "the text in A1 of sheet Areas has more than 32,767 characters",
    ),
    "a formula of 9,000 characters": (_one_sheet(f'<row r="1"><c r="A1"><f>{"1+" * 4500}1</f></c></row>'), "8,192"),
    "a number that is too large": (_one_sheet('<row r="1"><c r="A1"><v>1e999</v></c></row>'), "too large"),
    "an invalid number": (_one_sheet('<row r="1"><c r="A1"><v>abc</v></c></row>'), "damaged"),
    "a missing string": (_one_sheet('<row r="1"><c r="A1" t="s"><v>7</v></c></row>'), "damaged"),
    "a missing style": (_one_sheet('<row r="1"><c r="A1" s="7"><v>7</v></c></row>'), "damaged"),
    "a formula shared too often": (_one_sheet(SHARED), "more than 5,000,000 characters"),
    "too many merged ranges": (
        _one_sheet("", "<mergeCells>" + '<mergeCell ref="A1:B1"/>' * 501 + "</mergeCells>"),
        "more than 500 merged ranges",
    ),
    "a row of more than 1 MB": (_one_sheet(f"<row>{'<c/>' * 300_000}</row>"), "takes more than 1 MB"),
    "tags with three thousand names": (
        _one_sheet("", "".join(f"<n{n}/>" for n in range(3000))),
        "no spreadsheet program writes its tags",
    ),
    "tags sixty deep": (_one_sheet("", "<a>" * 60 + " " * 70_000), "no spreadsheet program writes its tags"),
    "a structure part of 4 MB": (_with("xl/workbook.xml", " " * 4_000_001), "unpacks to more than 4 MB"),
    "more than 50 MB in all": (
        package({"Areas": cells_xml(ONE)}, more=dict.fromkeys((f"a{n}" for n in range(51)), bytes(1_000_000))),
        "more than 50 MB",
    ),
    "too many parts": (_with("a", "") | {f"a{n}": "" for n in range(1000)}, "1000 parts"),
    "a path outside the file": (_with("../x", "x"), "a path outside the file"),
    "a name that would break the line": (package({"A&#10;\u202eB": "<broken"}), "sheet A B is damaged"),
    "a name of 9,000 characters": (package({"A" * 9000: cells_xml(ONE)}), "too long"),
}
