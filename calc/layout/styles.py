"""Cell styles by role: typed inputs, formulas, factors, overrides, values fixed at issue, checks.

Each role has a mark that survives a black-and-white print: a border, italics or bold, never color alone.
"""

from __future__ import annotations

from typing import Any

from calc.units.algebra import COUNTS, DATE

FONT = "Arial"
"""A font that every spreadsheet program has, or has a substitute of the same widths for."""

BODY = 9
"""Points of the body text."""

LINE_HEIGHT = 12.75
"""Points of a line of body text."""

INK, QUIET, BAND, INPUT_FILL, RULE = "#1A1A1A", "#595959", "#E4E9EC", "#FBF6E3", "#9AA5AB"

ACCENT, FAINT, HAIR = "#1F4E79", "#7F7F7F", "#A6A6A6"
"""The one accent, which marks what can be followed; the number of a row; the line below a head."""

_TOP = {"valign": "top"}
_WRAP = {"text_wrap": True, **_TOP}
_FIXED_AT_ISSUE = {"italic": True, "font_color": QUIET, "left": 3, "left_color": RULE}

ROLES: dict[str, dict[str, Any]] = {
    "title": {"bold": True, "font_size": 15},
    "subtitle": {"font_color": QUIET, "font_size": 9},
    "section": {"bold": True, "font_size": 11, "bottom": 1, "bottom_color": INK},
    "heading": {"italic": True, "font_color": QUIET},
    "head": {"bold": True, "bg_color": BAND, "top": 1, "bottom": 1, "text_wrap": True, "valign": "vcenter"},
    "word": {"bold": True, "align": "right", "text_wrap": True, "valign": "bottom", "bottom": 1},
    "number": {"align": "right", "font_color": QUIET, **_TOP},
    "label": _WRAP,
    "unit": {"font_color": QUIET, "indent": 1, **_WRAP},
    "words": _WRAP,
    "code": {"font_color": QUIET, "font_size": 8, **_WRAP},
    "note": {"font_color": QUIET, **_WRAP},
    "sentence": {"align": "left", **_WRAP},
    "input": {"border": 1, "border_color": INK, "bg_color": INPUT_FILL, **_WRAP},
    "formula": _TOP,
    "factor": {"italic": True, "bottom": 4, "bottom_color": INK, **_TOP},
    "override": {"bold": True, "border": 6, "border_color": INK, **_TOP},
    "issue": {**_FIXED_AT_ISSUE, **_WRAP},
    "check": {"bold": True, "left": 5, "left_color": INK, **_WRAP},
    "line": {"align": "left", **_TOP},
    "large": {"bold": True, "font_size": 12, "align": "left", **_TOP},
    "blank": {"border": 1, "border_color": RULE},
    "signature": {"bottom": 1, "bottom_color": INK},
    "dotted": {"border": 4, "border_color": RULE},
    "signaturelabel": {"valign": "bottom"},
    "small": {"font_size": 8, **_TOP},
    "issueline": {"italic": True, "font_color": QUIET, "align": "left", **_TOP},
    "issuefigure": {"italic": True, "font_color": QUIET, "align": "right", **_TOP},
    "sheettitle": {"bold": True, "font_size": 16, "valign": "top"},
    "sheetnote": {"font_color": QUIET, "align": "right", "valign": "top"},
    "here": {"bold": True},
    "barjump": {"font_color": ACCENT, "underline": 1},
    "jump": {"font_color": ACCENT, "underline": 1, "align": "right"},
    "storysection": {"bold": True, "font_size": 11, "bottom": 1, "bottom_color": INK},
    "sectionnote": {"font_color": QUIET, "bottom": 1, "bottom_color": INK},
    "sectionjump": {"font_color": ACCENT, "underline": 1, "align": "right", "bottom": 1, "bottom_color": INK},
    "group": {"bold": True},
    "rowno": {"font_color": FAINT},
    "item": {},
    "itemstrong": {"bold": True},
    "told": {},
    "quiet": {"font_color": QUIET},
    "origin": {"font_color": QUIET, "italic": True},
    "step": {"align": "right"},
    "stepwords": {"align": "left", "indent": 1},
    "stepstrong": {"align": "right", "bold": True},
    "stepstrongwords": {"align": "left", "bold": True},
    "stepsum": {"align": "right", "bold": True},
    "stepsumwords": {"align": "left", "bold": True},
    "steptotal": {"align": "right", "bold": True, "top": 1, "top_color": INK},
    "steptotalwords": {"align": "left", "bold": True, "top": 1, "top_color": INK},
    "stepunit": {"font_color": QUIET, "indent": 1},
    "pairhead": {"bold": True, "align": "right"},
    "stephead": {"bold": True, "align": "right", "text_wrap": True, "valign": "bottom"},
    "stepheadleft": {"bold": True, "align": "left", "indent": 1, "text_wrap": True, "valign": "bottom"},
    "itemhead": {"bold": True, "text_wrap": True, "valign": "bottom"},
    "stepheadname": {
        "bold": True,
        "align": "right",
        "text_wrap": True,
        "valign": "bottom",
        "bottom": 1,
        "bottom_color": HAIR,
    },
    "headunit": {"font_color": QUIET, "align": "right", "bottom": 1, "bottom_color": HAIR},
    "quiethead": {"font_color": QUIET, "align": "left", "bottom": 1, "bottom_color": HAIR},
    "quietheadright": {"font_color": QUIET, "align": "right", "bottom": 1, "bottom_color": HAIR},
    "quietheadindent": {"font_color": QUIET, "align": "left", "indent": 1, "bottom": 1, "bottom_color": HAIR},
    "stepquiet": {"font_color": QUIET, "align": "right"},
    "shrunkunit": {"font_color": QUIET, "indent": 1, "shrink": True},
    "issueshrunk": {"italic": True, "font_color": QUIET, "align": "left", "shrink": True, **_TOP},
    "issueindent": {"italic": True, "font_color": QUIET, "align": "left", "indent": 1, "shrink": True, **_TOP},
    "signaturequiet": {"font_color": QUIET, "bottom": 1, "bottom_color": HAIR, "valign": "bottom"},
    "linehead": {"bold": True, "align": "left", "bottom": 1, "bottom_color": HAIR},
    "lineheadright": {"bold": True, "align": "right", "bottom": 1, "bottom_color": HAIR},
    "lineheadindent": {"bold": True, "align": "left", "indent": 1, "bottom": 1, "bottom_color": HAIR},
    "itemsmall": {"font_size": 8},
    "changed": {"bold": True, "align": "right"},
    "issued": {"italic": True, "font_color": QUIET},
    "sinceissue": {"align": "right"},
    "sinceissueall": {"align": "right", "bold": True},
    "sinceissuewords": {"align": "left", "bold": True},
    "issuedcount": {"italic": True, "font_color": QUIET, "align": "right"},
    "box": {"border": 4, "border_color": ACCENT, "align": "right"},
    "boxwords": {"border": 4, "border_color": ACCENT, "align": "left", "shrink": True},
    "boxtext": {"bottom": 4, "bottom_color": ACCENT, "align": "left"},
    "boxline": {"bottom": 4, "bottom_color": ACCENT},
    "logvalue": {"align": "left"},
    "boxforced": {"border": 4, "border_color": ACCENT, "align": "right", "bold": True},
    "itemname": {"align": "left", "shrink": True},
    "typedname": {"italic": True, "font_color": QUIET, "align": "left", "shrink": True},
    "typed": {"italic": True, "font_color": QUIET, "align": "right", "shrink": True},
    "typedwords": {"italic": True, "font_color": QUIET, "align": "left", "indent": 1},
    "typedhead": {"italic": True, "font_color": QUIET, "align": "right", "bottom": 1, "bottom_color": HAIR},
    "typedheadleft": {"italic": True, "font_color": QUIET, "align": "left", "bottom": 1, "bottom_color": HAIR},
    "rowkey": {"font_color": FAINT, "align": "right"},
}
"""What each role adds to the body style."""

ACCENT, FAINT = "#1F4E79", "#A6A6A6"

_LEFT, _RIGHT, _INDENTED = {"align": "left"}, {"align": "right"}, {"align": "left", "indent": 1}
_GREY = {"font_color": QUIET}
_COLUMN_HEAD = {"bold": True, "text_wrap": True, "valign": "bottom", "bottom": 1, "bottom_color": INK}
_BAND_RULES = {"top": 2, "bottom": 1, "valign": "vcenter"}
_SUM = {"bold": True, "top": 1, "top_color": INK}

ROLES |= {
    "plain": _LEFT,
    "plainright": _RIGHT,
    "plainindent": _INDENTED,
    "plainstrong": {"bold": True, **_LEFT},
    "plainstrongright": {"bold": True, **_RIGHT},
    "plainstrongindent": {"bold": True, **_INDENTED},
    "quiet": {**_GREY, **_LEFT},
    "quietright": {**_GREY, **_RIGHT},
    "quietindent": {**_GREY, **_INDENTED},
    "quietitalic": {"italic": True, **_GREY, **_LEFT},
    "faintright": {"font_color": FAINT, **_RIGHT},
    "shrunk": {"shrink": True, **_LEFT},
    "shrunkstrong": {"shrink": True, "bold": True, **_LEFT},
    "shrunkright": {"shrink": True, **_RIGHT},
    "shrunkindent": {"shrink": True, **_INDENTED},
    "shrunkhead": {**_COLUMN_HEAD, "text_wrap": False, "shrink": True, **_RIGHT},
    "columnhead": {**_COLUMN_HEAD, **_LEFT},
    "columnheadright": {**_COLUMN_HEAD, **_RIGHT},
    "columnheadindent": {**_COLUMN_HEAD, **_INDENTED},
    "columnheadline": {**_COLUMN_HEAD, "text_wrap": False, **_LEFT},
    "columnheadrightline": {**_COLUMN_HEAD, "text_wrap": False, **_RIGHT},
    "columnheadindentline": {**_COLUMN_HEAD, "text_wrap": False, **_INDENTED},
    "sectionhead": {"bold": True, "font_size": 11, "bottom": 1, "bottom_color": INK, **_LEFT},
    "sectionnote": {**_GREY, "bottom": 1, "bottom_color": INK, **_LEFT},
    "pagetitle": {"bold": True, "font_size": 16, **_LEFT},
    "pagenote": {**_GREY, **_RIGHT, "valign": "bottom"},
    "joblink": {"font_color": ACCENT, "underline": 1, **_LEFT},
    "heroprice": {"bold": True, "shrink": True, "font_size": 24, **_LEFT, "valign": "vcenter"},
    "band": {**_BAND_RULES, **_LEFT},
    "bandstrong": {"bold": True, "font_size": 11, **_BAND_RULES, **_LEFT},
    "bandready": {"bold": True, "font_size": 10, **_BAND_RULES, **_LEFT},
    "bandjump": {"font_color": ACCENT, "underline": 1, **_BAND_RULES, **_LEFT},
    "sumwords": {**_SUM, **_LEFT},
    "sumright": {**_SUM, **_RIGHT},
    "jump": {"font_color": ACCENT, "underline": 1, **_RIGHT},
    "jumpbar": {"underline": 1, **_GREY, **_LEFT},
    "rownumber": {"font_color": "#8C8C8C", **_LEFT},
    "weekrule": {"bottom": 4, "bottom_color": FAINT},
}
"""Roles of sheets that print at full size: words are never wrapped, and there are rules instead of fills."""

_PAPER, _SMALL = {"font_size": 10}, {"font_size": 9}
_ROW_RULE = {"bottom": 7, "bottom_color": HAIR}
_HEAD_RULE = {"bottom": 1, "bottom_color": HAIR}

ROLES |= {
    "papertitle": {"bold": True, "font_size": 16, "align": "left", "valign": "top"},
    "paperstamp": {"font_color": QUIET, "align": "right", "valign": "top"},
    "papersection": {"bold": True, "font_size": 11, "bottom": 1, "bottom_color": INK, "align": "left"},
    "papernote": {"font_color": QUIET, "bottom": 1, "bottom_color": INK, "align": "left"},
    "paperlabel": {**_PAPER, "font_color": QUIET, **_WRAP},
    "paperlabelline": {**_PAPER, "font_color": QUIET, "align": "left", **_TOP},
    "paperline": {**_PAPER, "align": "left", **_TOP},
    "paperstrong": {**_PAPER, "bold": True, "align": "left", **_TOP},
    "papercaution": {**_SMALL, "bold": True, "align": "left", "shrink": True, **_TOP},
    "papersmall": {**_SMALL, "align": "left", **_TOP},
    "paperfigure": {**_PAPER, "align": "right", "shrink": True, **_TOP},
    "paperfigureleft": {**_PAPER, "align": "left", "shrink": True, **_TOP},
    "paperlargefigureleft": {"bold": True, "font_size": 14, "align": "left", "shrink": True, **_TOP},
    "paperunit": {**_PAPER, "font_color": QUIET, "indent": 1, **_TOP},
    "paperlarge": {"bold": True, "font_size": 14, "align": "left", **_TOP},
    "paperlargefigure": {"bold": True, "font_size": 14, "align": "right", "shrink": True, **_TOP},
    "papersentence": {**_PAPER, "align": "left", **_WRAP},
    "paperhead": {**_SMALL, "bold": True, "align": "left", "text_wrap": True, "valign": "bottom", **_HEAD_RULE},
    "paperheadline": {**_SMALL, "bold": True, "align": "left", "valign": "bottom", **_HEAD_RULE},
    "paperheadindent": {**_SMALL, "bold": True, "align": "left", "indent": 1, "valign": "bottom", **_HEAD_RULE},
    "paperheadright": {**_SMALL, "bold": True, "align": "right", "text_wrap": True, "valign": "bottom", **_HEAD_RULE},
    "papername": {**_PAPER, "align": "left", **_WRAP, **_ROW_RULE},
    "papernameline": {**_PAPER, "align": "left", "shrink": True, **_TOP, **_ROW_RULE},
    "paperwords": {**_PAPER, "align": "left", **_WRAP, **_ROW_RULE},
    "paperwordsindent": {**_PAPER, "align": "left", "indent": 1, "shrink": True, **_TOP, **_ROW_RULE},
    "papernumber": {**_PAPER, "align": "right", "shrink": True, **_TOP, **_ROW_RULE},
    "papersum": {**_PAPER, "bold": True, "align": "right", "shrink": True, "top": 1, "top_color": INK, **_TOP},
    "papertotal": {**_PAPER, "bold": True, "align": "left", "top": 1, "top_color": INK, **_TOP},
    "paperblank": {**_PAPER, **_HEAD_RULE},
    "paperbox": {"border": 1, "border_color": HAIR},
    "papersigner": {**_PAPER, "font_color": QUIET, "valign": "bottom"},
    "papersignature": {**_PAPER, "bottom": 1, "bottom_color": INK},
}
"""Roles of the papers, which are in larger type. A number shrinks before it would show ###."""

LEGEND = (
    ("box", "box", "edit it: all follows"),
    ("boxforced", "override", "a number, or none"),
    ("issuefigure", "fixed at issue", ""),
)
"""The marks of cells, shown on the sheet Bid: the style, the mark, and what may be done."""

DATE_FORMAT = "yyyy-mm-dd"
_FORMATS = {
    "$": '"$"#,##0.00',
    "yd3": "#,##0.000",
    "ft2": "#,##0.00",
    "ft": "#,##0.00",
    "in": "#,##0.00",
    "gal": "#,##0.00",
    "lb": "#,##0.0",
    "ton": "#,##0.00",
    "%": "#,##0.0#",
    "h": "#,##0.00",
    DATE: f'{DATE_FORMAT};-;"-"',
}

COUNT_FORMAT = "#,##0"
PLAIN_FORMAT = "General"
RATE_FORMAT = "#,##0.00##"
ID_FORMAT = "@"


def number_format(unit_text: str) -> str:
    """The number format of a unit: money to the cent, counts whole, never fewer digits than are rounded."""
    if unit_text.startswith("$"):
        return _FORMATS["$"]
    if unit_text in _FORMATS:
        return _FORMATS[unit_text]
    if unit_text in COUNTS:
        return COUNT_FORMAT
    return RATE_FORMAT if unit_text else PLAIN_FORMAT


def dashed(format_text: str) -> str:
    """The same format with a dash for zero, for rows that are not in use.

    A day has its dash already, and a plain number in a format of several parts shows ### where its digits do not fit.
    """
    return (
        format_text
        if format_text in (DATE_FORMAT, _FORMATS[DATE], PLAIN_FORMAT)
        else f'{format_text};-{format_text};"-"'
    )


def properties(role: str, format_text: str) -> dict[str, Any]:
    """The properties of a cell format, for the writer."""
    style: dict[str, Any] = {"font_name": FONT, "font_size": BODY, "font_color": INK, **ROLES[role]}
    if format_text:
        style["num_format"] = format_text
    return style
