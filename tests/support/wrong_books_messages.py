"""The findings of each wrong book, word for word, and the jobs that are not written. Read it as the office would."""

from __future__ import annotations

EXPECTED: dict[str, tuple[list[str], list[str]]] = {
    "correct": (
        [],
        [],
    ),
    "text in a length": (
        ["24-031"],
        [
            'Areas!D2: error: Length: "about ten" has no number in it. Type a number of ft, or feet and '
            "inches, for example 10.5 or 10'-6\".",
        ],
    ),
    "three foot and inch marks in a length": (
        ["24-031"],
        [
            'Areas!D2: error: Length: "10\' 6\' 2"" cannot be read as a length in ft. Type a number of ft, or '
            "feet and inches, for example 10.5 or 10'-6\".",
        ],
    ),
    "a decimal comma": (
        ["24-031"],
        [
            'Areas!D2: error: Length: "10,5" has a comma in it that parts no thousands. Type a decimal '
            "point, as in 10.5; between thousands a comma may stand, as in 1,200.",
        ],
    ),
    "a volume in a length": (
        ["24-031"],
        [
            'Areas!D2: error: Length: "3 yd3" is a volume, and a length in ft is wanted. Type a number of '
            "ft, or feet and inches, for example 10.5 or 10'-6\".",
        ],
    ),
    "a length that became a date": (
        ["24-031"],
        [
            "Areas!D2: error: Length became the date 2026-04-01: was something like 1/2 or 4-1/2 typed? "
            "Format the cell as text, then type a number of ft, for example 12' 6\".",
        ],
    ),
    "a negative length": (
        ["24-031"],
        [
            "Areas!D2: error: Length: -12 is negative. Type a number that is not below 0.",
        ],
    ),
    "a misspelled shape": (
        ["24-031"],
        [
            'Areas!C2: error: Shape: "cirle" is not a valid choice. Did you mean "circle"?',
        ],
    ),
    "too thick": (
        ["24-031"],
        [
            "Areas!F2: error: Thickness: 40 is above 24 in. Type 24 or less.",
        ],
    ),
    "more than 12 in after feet": (
        [],
        [
            "Areas!D2: question: Length: Is 10 ft 14 in meant, which is 11 ft 2 in?",
        ],
    ),
    "a dash of feet and inches": (
        [],
        [
            "Areas!D2: note: Length: read as 10 ft 6 in",
        ],
    ),
    "a missing width": (
        ["24-031"],
        [
            "Areas!E2: error: Width is blank, and required when shape is rectangle. Type width (ft).",
        ],
    ),
    "a haul plan of what the job does not have": (
        ["24-031"],
        [
            'Site conditions!C2: error: Haul plan: "green waste separated" is for a job with rows in Plants, and it '
            "has none. Type one of: cheapest, all mixed, concrete debris separated, all separated, soil separated.",
        ],
    ),
    "a misspelled header": (
        ["24-031", "24-055"],
        [
            'Areas!D1: error: The header "lenght ft" is not known. Did you mean "length ft"? Correct it, '
            "or give a column of your own another name.",
            "Areas!A2: error: Length is blank, and required when shape is rectangle. Type length (ft).",
            "Areas!A3: error: Length is blank, and required when shape is rectangle. Type length (ft).",
        ],
    ),
    "a duplicate column": (
        ["24-031", "24-055"],
        [
            'Areas!E1: error: The column "Width (ft)" is in the table twice. Delete one of the two columns.',
            "Areas!A2: error: Length is blank, and required when shape is rectangle. Type length (ft).",
            "Areas!A3: error: Length is blank, and required when shape is rectangle. Type length (ft).",
        ],
    ),
    "an unknown column": (
        [],
        [
            'Areas!G1: note: The column "color of the door" is not known. It is ignored.',
        ],
    ),
    "a row of a misspelled job": (
        ["24-031", "24-055"],
        [
            'Areas!A3: error: There is no job "24-030" in Jobs. Did you mean "24-031"?',
        ],
    ),
    "a row of an unknown job": (
        [],
        [
            'Areas!A3: error: There is no job "99-999" in Jobs. Type the id as it is in Jobs.',
        ],
    ),
    "a duplicate area": (
        ["24-031"],
        [
            'Areas!B3: error: The area id "a1" is used twice in job 24-031. Give one of the two another id.',
        ],
    ),
    "a duplicate job": (
        ["24-031"],
        [
            'Jobs!A4: error: The job id "24-031" is used twice. The other row is jobs.xlsx Jobs!A2. Give '
            "one of the two another id.",
        ],
    ),
    "a job without a date": (
        ["24-031"],
        [
            "Jobs!C2: error: Bid date is blank. Type it as year-month-day, or give --bid-date for the whole run.",
        ],
    ),
    "an id that became a date": (
        [],
        [
            "Jobs!A3: error: The job id became the date 2024-03-01. Format the cell as text, then type the id again.",
        ],
    ),
    "a job without areas": (
        ["24-031"],
        [
            "Jobs!A2: error: Job 24-031 has no area. Type a row for it in Areas.",
        ],
    ),
    "an outline that crosses itself": (
        ["24-031"],
        [
            "Outline points!A2: error: The outline of area A1 crosses itself: the side that starts at this point "
            "crosses another. Type the points in order around the outline.",
            "Areas!A2: question: Area A1 gets no joints: its length for joint layout and its panel width are not "
            "both typed.",
        ],
    ),
    # 36 ft2, 3 in, and 10 ft2, 4 in, are 148 of the 324 in a yard; the hole of 36 ft2, 4 in, is 144
    "more old concrete than its hole": (
        [],
        [
            "Areas!A2: question: The old slab and footings of area A1 are 0.46 yd3, and its dig is 0.44 yd3. Is that "
            "correct?",
        ],
    ),
    "stations out of order": (
        ["24-031"],
        [
            "Cross-sections!A4: error: The station at 5 ft is not beyond the station before it. Type the stations "
            "in order, from one end.",
        ],
    ),
    "an old joint just beyond the end": (
        [],
        [
            "Cross-sections!A3: question: An old joint is 0.50 ft beyond the end of area A1. Should the slab end "
            "there?",
        ],
    ),
    "an old joint outside the slab": (
        [],
        [
            "Cross-sections!A4: question: An old joint is 2.00 ft beyond the end of area A1, where no new joint meets "
            "it. Measure old joints from where the slab begins.",
        ],
    ),
    "a length for joint layout near no side": (
        [],
        [
            "Areas!A2: question: The length for joint layout of area A1 is 10 ft, and its sides are 12.0 and 3.0 ft. "
            "Is that correct?",
        ],
    ),
    "a deduction larger than its area": (
        ["24-031"],
        [
            "Deductions!A2: error: The deductions of area A1 total 48.00 ft2, and the area is 36.00 ft2. "
            "Correct the deductions or the area.",
        ],
    ),
    "a footing wider than its area": (
        ["24-031"],
        [
            "Footings!A2: error: The footing is 4 ft wide, and area A1 is 3 ft wide. Type only the part of "
            "the footing that is under the area.",
        ],
    ),
    "edges in two places": (
        ["24-031"],
        [
            "Areas!G2: error: The edges of area A1 are typed both in Edges and in a column of Areas. Keep "
            "one of the two.",
            "Edges!A2: question: The edges of area A1 total 12.0 ft, and its perimeter is 30.0 ft. Is that correct?",
        ],
    ),
    "a misspelled fact": (
        ["24-031"],
        [
            'Site conditions!B2: error: There is no fact "Moistur". Did you mean "Moisture"?',
        ],
    ),
    "a fixed order without a reason": (
        ["24-031"],
        [
            "Site conditions!C2: error: Order reason is blank, and required when order rule is fixed. Type "
            "order reason.",
        ],
    ),
    "a line that cannot be overridden": (
        ["24-031"],
        [
            'Overrides!B2: error: There is no line "Concrete required" that can be overridden. Did you mean '
            '"Concrete to order"?',
        ],
    ),
    "an override without a reason": (
        ["24-031"],
        [
            'Overrides!B2: error: The override of "Concrete to order" has no reason. Type why it is overridden.',
        ],
    ),
    "an override of an area that the job does not have": (
        ["24-031"],
        [
            'Overrides!B2: error: Job 24-031 has no area "A9". Type one of: A1, A2.',
        ],
    ),
    "a price for another unit": (
        ["24-031", "24-055"],
        [
            'Prices!B2: error: Sealer, small pail: The price is per "gal", and the rules use the price per '
            "pack. Type the price per pack, and pack as its unit.",
        ],
    ),
    "a duplicate price": (
        ["24-031", "24-055"],
        [
            'Prices!A3: error: The price of "Sealer, small pail" is typed twice. Delete one of the two rows.',
        ],
    ),
    "a factor of an unknown kind": (
        ["24-031", "24-055"],
        [
            'Factors!C2: error: Soil swell, bank to loose: "peat" is not a valid choice. Type one of: topsoil, loam, '
            "clay, sand, gravelly.",
        ],
    ),
    "a misspelled sheet": (
        ["24-031", "24-055"],
        [
            'Cross-section: error: The sheet "Cross-section" is not known. Did you mean "Cross-sections"? Rename the '
            "sheet.",
        ],
    ),
}
"""The ids of the jobs with errors, and the findings in order without the name of the book."""
