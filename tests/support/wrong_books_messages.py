"""What is said of each wrong book, word for word, and which jobs it holds back. Read it as the office would."""

from __future__ import annotations

SAID: dict[str, tuple[list[str], list[str]]] = {
    "right": (
        [],
        [],
    ),
    "words in a length": (
        ["24-031"],
        [
            'Areas!D2: stop: Length: "about ten" has no number in it. Type a number of ft, or feet '
            "and inches, for example 10.5 or 10'-6\".",
        ],
    ),
    "three marks in a length": (
        ["24-031"],
        [
            'Areas!D2: stop: Length: "10\' 6\' 2"" cannot be read as a length in ft. Type a number of '
            "ft, or feet and inches, for example 10.5 or 10'-6\".",
        ],
    ),
    "a decimal comma": (
        ["24-031"],
        [
            'Areas!D2: stop: Length: "10,5" has a comma in it: a decimal point is wanted. Type a '
            "decimal point, as in 10.5, and nothing between thousands, as in 1000.",
        ],
    ),
    "a volume in a length": (
        ["24-031"],
        [
            'Areas!D2: stop: Length: "3 yd3" is a volume, and a length in ft is wanted. Type a number '
            "of ft, or feet and inches, for example 10.5 or 10'-6\".",
        ],
    ),
    "a length that became a date": (
        ["24-031"],
        [
            "Areas!D2: stop: Length became the date 2026-04-01: was something like 1/2 or 4-1/2 "
            "typed? Format the cell as text, then type a number of ft, for example 12' 6\".",
        ],
    ),
    "a negative length": (
        ["24-031"],
        [
            "Areas!D2: stop: Length: -12 is negative. Type a number that is not below 0.",
        ],
    ),
    "a shape with a slip": (
        ["24-031"],
        [
            'Areas!C2: stop: Shape: "cirle" is not one of its words. Did you mean "circle"?',
        ],
    ),
    "too thick": (
        ["24-031"],
        [
            "Areas!F2: stop: Thickness: 40 is above 24 in. Type 24 or less.",
        ],
    ),
    "inches for feet": (
        [],
        [
            "Areas!D2: ask: Length: Is 10 ft 14 in meant, which is 11 ft 2 in?",
        ],
    ),
    "a dash of feet and inches": (
        [],
        [
            "Areas!D2: note: Length: read as 10 ft 6 in",
        ],
    ),
    "a width that is missing": (
        ["24-031"],
        [
            "Areas!E2: stop: Width is needed where shape is rectangle, and it is blank. Type width in ft.",
        ],
    ),
    "a trapezoid without its other width": (
        ["24-031"],
        [
            "Areas!A2: stop: Other width is needed where shape is trapezoid, and it is blank. Type other width in ft.",
        ],
    ),
    "a header two letters off": (
        ["24-031", "24-055"],
        [
            'Areas!D1: stop: The header "lenght ft" is not known. Did you mean "length ft"? Type it '
            "so, or rename the column.",
            "Areas!A2: stop: Length is needed where shape is rectangle, and it is blank. Type length in ft.",
            "Areas!A3: stop: Length is needed where shape is rectangle, and it is blank. Type length in ft.",
        ],
    ),
    "a header twice": (
        ["24-031", "24-055"],
        [
            'Areas!E1: stop: The header "Width (ft)" stands twice. Leave one of the two columns.',
            "Areas!A2: stop: Length is needed where shape is rectangle, and it is blank. Type length in ft.",
            "Areas!A3: stop: Length is needed where shape is rectangle, and it is blank. Type length in ft.",
        ],
    ),
    "a column nobody knows": (
        [],
        [
            'Areas!G1: note: The column "colour of the door" is not known, so it is passed over.',
        ],
    ),
    "a row of a job that is nearly one": (
        ["24-031", "24-055"],
        [
            'Areas!A3: stop: There is no job "24-030" in Jobs. Did you mean "24-031"?',
        ],
    ),
    "a row of no job": (
        [],
        [
            'Areas!A3: stop: There is no job "99-999" in Jobs. Type the id as it stands in Jobs.',
        ],
    ),
    "an area twice": (
        ["24-031"],
        [
            'Areas!B3: stop: The area id "a1" stands twice in job 24-031. Give one of them another id.',
        ],
    ),
    "a job twice": (
        ["24-031"],
        [
            'Jobs!A4: stop: The job id "24-031" stands twice: week.xlsx Jobs!A2 has it too. Give one '
            "of them another id.",
        ],
    ),
    "a job without a date": (
        ["24-031"],
        [
            "Jobs!C2: stop: Bid date is blank. Type it as year-month-day, or give --bid-date for the whole run.",
        ],
    ),
    "an id that became a date": (
        [],
        [
            "Jobs!A3: stop: The job id became the date 2024-03-01. Format the cell as text, then type the id again.",
        ],
    ),
    "no areas": (
        ["24-031"],
        [
            "Jobs!A2: stop: Job 24-031 has no area. Type a row for it in Areas.",
        ],
    ),
    "a crossed outline": (
        ["24-031"],
        [
            "Outline points!A2: stop: The outline of area A1 crosses itself: the side from this point "
            "crosses another. Type the points in order around the outline.",
            "Areas!A2: ask: Area A1 gets no joints: its length for joint layout and its panel width are not "
            "both typed.",
        ],
    ),
    "stops out of order": (
        ["24-031"],
        [
            "Cross-sections!A4: stop: Station 5 ft is not beyond the station before it. Type the "
            "stations in order, from one end.",
        ],
    ),
    "an old joint just off the end": (
        [],
        [
            "Cross-sections!A3: ask: An old joint lies 0.50 ft beyond the end of area A1; should the slab end there?",
        ],
    ),
    "a deduction larger than its area": (
        ["24-031"],
        [
            "Deductions!A2: stop: The deductions of area A1 come to 48.00 ft2, and the area itself "
            "has 36.00 ft2. Mend the deductions or the area.",
        ],
    ),
    "a footing wider than its area": (
        ["24-031"],
        [
            "Footings!A2: stop: The footing is 4 ft wide, and area A1 3 ft. Type what lies under the area only.",
        ],
    ),
    "edges in two places": (
        ["24-031"],
        [
            "Areas!G2: stop: Area A1 has rows in Edges, and an edge column of Areas too. Leave one of the two.",
            "Edges!A2: ask: The edges of area A1 come to 12.0 ft, and its perimeter is 30.0 ft; is that meant?",
        ],
    ),
    "a fact nobody knows": (
        ["24-031"],
        [
            'Site conditions!B2: stop: There is no fact "Moistur". Did you mean "Moisture"?',
        ],
    ),
    "a fixed order without a reason": (
        ["24-031"],
        [
            "Site conditions!C2: stop: Order reason is needed where order rule is fixed, and it is "
            "blank. Type order reason.",
        ],
    ),
    "a line that cannot be forced": (
        ["24-031"],
        [
            'Overrides!B2: stop: There is no line "Concrete required" that may be forced. Did you mean '
            '"Concrete to order"?',
        ],
    ),
    "forced without a reason": (
        ["24-031"],
        [
            'Overrides!B2: stop: The override of "Concrete to order" has no reason. Type why it is forced.',
        ],
    ),
    "forced for an area that is not there": (
        ["24-031"],
        [
            'Overrides!B2: stop: Job 24-031 has no area "A9". Type one of: A1, A2.',
        ],
    ),
    "a price for another unit": (
        ["24-031", "24-055"],
        [
            'Prices!B2: stop: Sealer, small pail: The price is for one "gal", and the rules take it '
            "for one pack. Give the price of one pack, and type pack as its unit.",
        ],
    ),
    "a price twice": (
        ["24-031", "24-055"],
        [
            'Prices!A3: stop: The price of "Sealer, small pail" stands twice. Leave one of the two rows.',
        ],
    ),
    "a factor of an unknown kind": (
        ["24-031", "24-055"],
        [
            'Factors!C2: stop: Soil swell, bank to loose: "peat" is not one of its words. Type one of: topsoil, '
            "loam, clay, sand, gravelly.",
        ],
    ),
    "a sheet that is nearly one": (
        ["24-031", "24-055"],
        [
            'Cross-section: stop: The sheet "Cross-section" is not known. Did you mean "Cross-sections"? '
            "Rename the sheet.",
        ],
    ),
}
"""The findings of each book, without its name, in order."""
