"""Books with one mistake each, as people make them: the tables that differ from a correct book."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime
from typing import Any

Table = list[list[Any]]

CORRECT: dict[str, Table] = {
    "Jobs": [["job", "client", "bid date"], ["24-031", "Tamarack Row", "2026-04-13"], ["24-055", "", "2026-04-13"]],
    "Areas": [
        ["job", "area", "shape", "length ft", "width ft", "thickness in"],
        ["24-031", "A1", "", "12' 6\"", "3", "4"],
        ["24-031", "A2", "rectangle", "10", "4", "4"],
        ["24-055", "", "", "20", "5", "4"],
    ],
}
"""A book without findings."""


def areas(*rows: list[Any], header: list[Any] | None = None) -> Table:
    """The table Areas with these rows for job 24-031, and the other job as it was."""
    return [header or CORRECT["Areas"][0], *rows, ["24-055", "", "", "20", "5", "4"]]


STRIP = ["24-031", "A1", "", "12", "3", "4"]

WRONG: dict[str, Mapping[str, Table]] = {
    "text in a length": {"Areas": areas(["24-031", "A1", "", "about ten", "3", "4"])},
    "three foot and inch marks in a length": {"Areas": areas(["24-031", "A1", "", "10' 6' 2\"", "3", "4"])},
    "a decimal comma": {"Areas": areas(["24-031", "A1", "", "10,5", "3", "4"])},
    "a volume in a length": {"Areas": areas(["24-031", "A1", "", "3 yd3", "3", "4"])},
    "a length that became a date": {"Areas": areas(["24-031", "A1", "", datetime(2026, 4, 1), "3", "4"])},
    "a negative length": {"Areas": areas(["24-031", "A1", "", -12, "3", "4"])},
    "a misspelled shape": {"Areas": areas(["24-031", "A1", "cirle", "12", "3", "4"])},
    "too thick": {"Areas": areas(["24-031", "A1", "", "12", "3", "40"])},
    "more than 12 in after feet": {"Areas": areas(["24-031", "A1", "", "10'-14\"", "3", "4"])},
    "a dash of feet and inches": {"Areas": areas(["24-031", "A1", "", "10-6", "3", "4"])},
    "a missing width": {"Areas": areas(["24-031", "A1", "", "12", None, "4"])},
    "a haul plan of what the job does not have": {
        "Site conditions": [
            ["job", "fact", "value"],
            ["24-031", "Haul plan", "green waste separated"],
            ["24-031", "Haul reason", "the client's wish"],
        ]
    },
    "a misspelled header": {
        "Areas": areas(STRIP, header=["job", "area", "shape", "lenght ft", "width ft", "thickness in"])
    },
    "a duplicate column": {
        "Areas": areas(STRIP, header=["job", "area", "shape", "width ft", "Width (ft)", "thickness in"])
    },
    "an unknown column": {"Areas": areas([*STRIP, "x"], header=[*CORRECT["Areas"][0], "color of the door"])},
    "a row of a misspelled job": {"Areas": areas(STRIP, ["24-030", "A2", "", "10", "4", "4"])},
    "a row of an unknown job": {"Areas": areas(STRIP, ["99-999", "A2", "", "10", "4", "4"])},
    "a duplicate area": {"Areas": areas(STRIP, ["24-031", "a1", "", "10", "4", "4"])},
    "a duplicate job": {"Jobs": [*CORRECT["Jobs"], ["24-031", "again", "2026-04-13"]]},
    "a job without a date": {
        "Jobs": [["job", "client", "bid date"], ["24-031", "", None], ["24-055", "", "2026-04-13"]]
    },
    "an id that became a date": {
        "Jobs": [
            ["job", "client", "bid date"],
            ["24-031", "", "2026-04-13"],
            [datetime(2024, 3, 1), "", "2026-04-13"],
            ["24-055", "", "2026-04-13"],
        ],
    },
    "a job without areas": {"Areas": areas()},
    "an outline that crosses itself": {
        "Areas": areas(["24-031", "A1", "outline points", None, None, "4"]),
        "Outline points": [
            ["job", "area", "x ft", "y ft"],
            *(["24-031", "A1", x, y] for x, y in ((0, 0), (4, 4), (4, 0), (0, 4))),
        ],
    },
    "more old concrete than its hole": {
        "Areas": areas([*STRIP, 36, 3], header=[*CORRECT["Areas"][0], "old slab ft2", "old slab thickness in"]),
        "Footings": [
            ["job", "area", "length ft", "width ft", "depth to top of footing in"],
            ["24-031", "A1", 10, 1, 0],
        ],
    },
    "stations out of order": {
        "Areas": areas(["24-031", "A1", "cross-sections", None, None, "4"]),
        "Cross-sections": [
            ["job", "area", "station ft", "width ft"],
            ["24-031", "A1", 0, 3],
            ["24-031", "A1", 9, 3],
            ["24-031", "A1", 5, 3],
        ],
    },
    "an old joint just beyond the end": {
        "Areas": areas(
            [*STRIP, "11' 6\"", "3"], header=[*CORRECT["Areas"][0], "length for joint layout ft", "panel width ft"]
        ),
        "Cross-sections": [
            ["job", "area", "station ft", "old joint"],
            ["24-031", "A1", 0, "no"],
            ["24-031", "A1", 12, "yes"],
        ],
    },
    "an old joint outside the slab": {
        "Areas": areas(STRIP),
        "Cross-sections": [
            ["job", "area", "station ft", "old joint"],
            ["24-031", "A1", 5, "yes"],
            ["24-031", "A1", 12, "yes"],
            ["24-031", "A1", 14, "yes"],
        ],
    },
    "a length for joint layout near no side": {
        "Areas": areas([*STRIP, "10"], header=[*CORRECT["Areas"][0], "length for joint layout ft"]),
    },
    "a deduction larger than its area": {
        "Areas": areas(STRIP),
        "Deductions": [["job", "area", "shape", "length ft", "width ft"], ["24-031", "A1", "rectangle", 12, 4]],
    },
    "a footing wider than its area": {
        "Areas": areas(STRIP),
        "Footings": [["job", "area", "length ft", "width ft", "depth to top of footing in"], ["24-031", "A1", 8, 4, 1]],
    },
    "edges in two places": {
        "Areas": areas([*STRIP, "12"], header=[*CORRECT["Areas"][0], "formed ft"]),
        "Edges": [["job", "area", "kind", "length ft"], ["24-031", "A1", "form", 12]],
    },
    "a misspelled fact": {"Site conditions": [["job", "fact", "value"], ["24-031", "Moistur", "wet"]]},
    "a fixed order without a reason": {
        "Site conditions": [
            ["job", "fact", "value"],
            ["24-031", "Order rule", "fixed"],
            ["24-031", "Fixed order", "2.5"],
        ],
    },
    "a line that cannot be overridden": {
        "Overrides": [["job", "line", "value", "reason", "who"], ["24-031", "Concrete required", "2", "so", "MK"]],
    },
    "an override without a reason": {
        "Overrides": [["job", "line", "value", "reason", "who"], ["24-031", "Concrete to order", "2", None, "MK"]],
    },
    "an override of an area that the job does not have": {
        "Overrides": [
            ["job", "area", "line", "value", "reason", "who"],
            ["24-031", "A9", "Net area", "30", "taped", "MK"],
        ],
    },
    "a price for another unit": {"Prices": [["item", "price", "unit"], ["Sealer, small pail", 36, "gal"]]},
    "a duplicate price": {
        "Prices": [["item", "price", "size"], ["Sealer, small pail", 36, 1], ["Sealer, small pail", 38, 1]],
    },
    "a factor of an unknown kind": {"Factors": [["factor", "for", "value"], ["Soil swell, bank to loose", "peat", 40]]},
    "a misspelled sheet": {"Cross-section": [["job", "area", "station ft"], ["24-031", "A1", 0]]},
}
"""The sheets with a mistake, by what is wrong."""
