"""Writes the workbooks that travel with the program: the demo's in sample_inputs, the blank ones in templates.

Run it from the checkout, with the package installed: ``python .samples/make.py``. The same tables give the same bytes.
Everybody and everything in the demo is invented. To add a job, add its rows to the tables below.
"""

from __future__ import annotations

from pathlib import Path

from calc.workbook.blank import Rows, blank_house, blank_week, house_book, week_book
from calc.workbook.blank_rows import Typed

CHECKOUT = Path(__file__).resolve().parent.parent

Table = tuple[tuple[Typed, ...], ...]
"""A header, then the rows under it; what a row leaves out at its end is blank."""

# The firm, and what it pays and takes as usual.

HOUSE: dict[str, Table] = {
    "Company": (
        ("fact", "value"),
        ("company", "Gravelly Bend Flatwork"),
        ("company address", "3 Kiln Lane, Alder Fork"),
        ("phone", "555-0142"),
        ("licence", "FW-0000"),
        ("paper", "letter"),
    ),
    "Vehicles": (
        ("vehicle", "box yd3", "heap", "payload ton", "bed length ft", "bed width ft", "hourly rate $/h",
         "mile rate $/mile", "notes"),
        ("dump trailer", "5", "1", "4.5", "10'", "6'", "38", "0.90", "tow with the crew truck only"),
    ),
    "Prices": (
        ("item", "price", "size", "dated", "valid until", "supplier", "taxable", "account"),
        ("Bonding agent, small pack", 34.50, "1 gal", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Bonding agent, large pack", 152.00, "5 gal", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Curing compound, small pack", 38.00, "1 gal", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Curing compound, large pack", 96.00, "5 gal", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Sealer, small pack", 44.00, "1 gal", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Sealer, large pack", 189.00, "5 gal", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
    ),
    "Factors": (
        ("factor", "value", "notes"),
        ("Loss", "3.5", "mean of last year's tickets against tape"),
    ),
    "Site conditions": (
        ("job", "fact", "value", "notes"),
        ("all", "order rule", "percent", "the house rule, unless a job says otherwise"),
    ),
}  # fmt: skip

# The week: 26-041 is a strip beside the walk of an owners' association, 26-042 three equal pads for a school.

WEEK: dict[str, Table] = {
    "Jobs": (
        ("job", "client", "address", "bid date", "pour date", "fiber", "photos", "notes"),
        ("26-041", "Tamarack Row Owners", "41 Orchard Spur, Alder Fork", "2026-04-13", "2026-04-27", "micro",
         "roll 7, 12-19", "gate is 34 in wide"),
        ("26-042", "Alder Fork Grade School", "200 Millrace Road, Alder Fork", "2026-04-15", "2026-06-15", "macro",
         "roll 8, 1-6", "after the last day of school"),
    ),
    "Areas": (
        ("job", "area", "shape", "length ft", "width ft", "other width ft", "thickness in", "other thickness in",
         "copies", "area ft2", "notes"),
        ("26-041", "A1", "", "12' 6\"", "3'", "2' 9\"", "4\"", "", "", "", "narrows toward the lamp post"),
        ("26-041", "A2", "strip", "18'", "3'", "", "4 in", "5 in", "", "", "thickens to the drive"),
        ("26-042", "pad", "known area", "", "", "", "100 mm", "", "3", "14.5 m2", "under the bicycle racks"),
    ),
    "Site conditions": (
        ("job", "fact", "value", "notes"),
        ("26-042", "order rule", "fixed"),
        ("26-042", "fixed order yd3", "6.5"),
        ("26-042", "order reason", "one truck; the rest goes under the gate posts"),
        ("26-042", "fiber dose lb/yd3", "2.4 kg/m3", "the maker's sheet is metric"),
    ),
}  # fmt: skip


def rows_of(tables: dict[str, Table]) -> Rows:
    """The rows of each sheet by header; a blank cell is left out."""
    return {
        name: [{str(header): cell for header, cell in zip(headers, row, strict=False) if cell != ""} for row in rows]
        for name, (headers, *rows) in tables.items()
    }


def books() -> dict[str, bytes]:
    """Every workbook that travels with the program, by where it stands in the checkout."""
    return {
        "templates/week.xlsx": blank_week(),
        "templates/house.xlsx": blank_house(),
        "sample_inputs/week.xlsx": week_book(rows_of(WEEK)),
        "sample_inputs/house.xlsx": house_book(rows_of(HOUSE)),
    }


if __name__ == "__main__":
    for name, content in books().items():
        (CHECKOUT / name).write_bytes(content)
