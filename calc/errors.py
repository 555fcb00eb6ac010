"""Findings about an input: where, what kind, what was found, what to type instead.

Every stage takes values and returns values with findings; only the command prints them.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum, IntEnum, unique
from typing import Final

MAX_LINE: Final = 4_000
"""Characters of a line that is printed."""


def one_line(text: str, max_length: int = MAX_LINE) -> str:
    """The text as one printable line: a cell may contain any character, at any length."""
    printable = "".join(char if char.isprintable() else " " for char in text[:max_length])
    line = " ".join(printable.split())
    return line if len(text) <= max_length else f"{line}..."


class Severity(IntEnum):
    """How serious a finding is: only an error keeps a job from being written."""

    ERROR = 0
    QUESTION = 1
    NOTE = 2

    @property
    def word(self) -> str:
        """The word that is printed: ``error``, ``question`` or ``note``."""
        return self.name.lower()


@unique
class FindingKind(Enum):
    """Every kind of finding, with its severity and its meaning: the one list of finding codes.

    The code in ``--json`` is the name in lower case with hyphens (``UNKNOWN_COLUMN`` is ``unknown-column``). Codes are
    stable: renaming a member breaks the programs that read them.
    """

    # the files of a run
    LOCK_FILE = Severity.NOTE, "A named file is the lock file of a workbook that is open in another program."
    WORKBOOK_FEATURE = Severity.NOTE, "The workbook has macros, links, charts or dates that count from 1904."
    OLDER_WORKBOOK = Severity.NOTE, "A workbook of an earlier run has the name of one that this run did not write."
    WORKER_LOST = Severity.NOTE, "A worker process ended early; its jobs were done without it."
    # sheets and columns
    MISSING_JOBS_SHEET = Severity.ERROR, "The book has no sheet Jobs."
    MISSPELLED_SHEET = Severity.ERROR, "A sheet's name is almost that of an input table."
    UNKNOWN_SHEET = Severity.NOTE, "A sheet is not an input table and is ignored."
    UNREAD_TABLE = Severity.QUESTION, "A sheet that is ignored has a table like an input table that is there."
    HIDDEN_SHEET = Severity.NOTE, "A hidden sheet was read."
    DUPLICATE_TABLE = Severity.ERROR, "A sheet of the company book is in two books."
    MISSING_HEADER_ROW = Severity.ERROR, "A table has no header row."
    MISSPELLED_COLUMN = Severity.ERROR, "A header is almost that of a column of the table."
    DUPLICATE_COLUMN = Severity.ERROR, "A table has the same column twice."
    UNKNOWN_COLUMN = Severity.NOTE, "A column is not part of the table and is ignored."
    IGNORED_NUMBERS = Severity.QUESTION, "A column with numbers is not part of the table and is ignored."
    UNNAMED_COLUMN = Severity.QUESTION, "A column has values but no header and is ignored."
    HIDDEN_COLUMN = Severity.NOTE, "A hidden column was read."
    HIDDEN_ROW = Severity.NOTE, "A hidden or filtered row was read."
    STRUCK_THROUGH = Severity.QUESTION, "A cell is struck through, and was read."
    TOTALS_ROW = Severity.QUESTION, "A row of numbers without a job was taken for a total."
    MERGED_CELLS = Severity.ERROR, "A header or a value is in merged cells."
    # ids and names of rows
    INVALID_ID = Severity.ERROR, "An id or a name cannot be read."
    MISSING_JOB = Severity.ERROR, "The sheet Jobs has no job."
    MISSING_JOB_ID = Severity.ERROR, "A row does not say which job it is for."
    UNKNOWN_JOB = Severity.ERROR, "A row is for a job that is not in Jobs."
    DUPLICATE_JOB = Severity.ERROR, "Two rows of Jobs have the same id."
    DUPLICATE_FILE_NAME = Severity.ERROR, "The ids of two jobs give the same file name."
    EXAMPLE_ROW = Severity.NOTE, "Jobs has only the example row of the blank book."
    MISSING_AREA = Severity.ERROR, "A job has no area."
    MISSING_AREA_ID = Severity.ERROR, "A row does not say which area it is for."
    UNKNOWN_AREA = Severity.ERROR, "A row is for an area that the job does not have."
    DUPLICATE_AREA = Severity.ERROR, "Two areas of a job have the same id."
    MISSING_ROW_NAME = Severity.ERROR, "A row of the company book has no name."
    UNKNOWN_ROW_NAME = Severity.ERROR, "A name is not in its table of the company book."
    DUPLICATE_ROW_NAME = Severity.ERROR, "Two rows of the company book have the same name."
    # the value of a cell
    MISSING_INPUT = Severity.ERROR, "A required cell is blank."
    UNUSED_INPUT = Severity.NOTE, "A value was typed that another input makes unused."
    NOT_A_NUMBER = Severity.ERROR, "A number is required and the text is none."
    NOT_A_WHOLE_NUMBER = Severity.ERROR, "A whole number is required."
    NOT_A_DATE = Severity.ERROR, "A date is required."
    INVALID_CHOICE = Severity.ERROR, "The text is not one of the choices."
    WRONG_UNIT = Severity.ERROR, "A number has an unknown unit or a unit of another kind."
    OUT_OF_RANGE = Severity.ERROR, "A number or a date is outside its limits."
    BECAME_A_DATE = Severity.ERROR, "The spreadsheet program turned the value into a date."
    WRONG_CELL_TYPE = Severity.ERROR, "The cell has a logical value or a time."
    CELL_ERROR = Severity.ERROR, "The cell has an error such as #N/A."
    UNCOMPUTED_FORMULA = Severity.ERROR, "The cell has a formula without a stored value."
    TEXT_TOO_LONG = Severity.ERROR, "A text is longer than its limit."
    INVISIBLE_CHARACTER = Severity.ERROR, "A text has a control character."
    UNUSUAL_VALUE = Severity.QUESTION, "A number is outside the usual range."
    AMBIGUOUS_NUMBER = Severity.QUESTION, "A number can be read in two ways."
    NUMBER_READ_AS = Severity.NOTE, "How a number was read."
    FORMULA_READ = Severity.NOTE, "The stored value of a formula was read."
    # tables of facts, factors, prices and overrides
    MISSING_FACT = Severity.ERROR, "A row of facts does not name its fact."
    UNKNOWN_FACT = Severity.ERROR, "A fact is not in the list."
    DUPLICATE_FACT = Severity.ERROR, "A fact is typed twice."
    MISPLACED_FACT = Severity.ERROR, "A fact of one job is in the company book, or one of every job outside it."
    MISSING_FACTOR = Severity.ERROR, "A row of Factors does not name its factor."
    UNKNOWN_FACTOR = Severity.ERROR, "A factor is not in the list."
    DUPLICATE_FACTOR = Severity.ERROR, "A factor is typed twice."
    INVALID_FACTOR_KIND = Severity.ERROR, "The column for is missing, or not blank where the factor has no kinds."
    MISSING_ITEM = Severity.ERROR, "A row of Prices does not name its item."
    UNKNOWN_ITEM = Severity.NOTE, "No rule uses the price of an item, which is ignored."
    DUPLICATE_PRICE = Severity.ERROR, "A price is typed twice."
    WRONG_PRICE_UNIT = Severity.ERROR, "A price is per another unit than the rules use."
    INVALID_PACK_SIZE = Severity.ERROR, "The size of a pack is not more than 0."
    MISSING_PACK_SIZE = Severity.ERROR, "The price of a pack or a tier has no size."
    UNUSED_PACK_SIZE = Severity.NOTE, "An item that is not sold in packs has a size, which is ignored."
    MISSING_PRICE = Severity.NOTE, "The job needs a price that is not given: its total is not complete."
    MISSING_LINE = Severity.ERROR, "A row of Overrides does not name its line."
    UNKNOWN_LINE = Severity.ERROR, "A line cannot be overridden, or does not exist."
    DUPLICATE_OVERRIDE = Severity.ERROR, "A line is overridden twice, or a stop acknowledged twice."
    MISSING_REASON = Severity.ERROR, "An override has no reason or no initials."
    MISSING_OVERRIDE_VALUE = Severity.ERROR, "An override has no value."
    UNEXPECTED_VALUE = Severity.ERROR, "An acknowledged stop has a value."
    UNEXPECTED_AREA = Severity.ERROR, "An override of the whole job names an area."
    # inputs that contradict each other
    TOO_FEW_POINTS = Severity.ERROR, "An area has too few stations or corners for its shape."
    STATIONS_OUT_OF_ORDER = Severity.ERROR, "The stations of an area are not in order."
    OUTLINE_CROSSES_ITSELF = Severity.ERROR, "The outline of an area crosses itself."
    DEDUCTIONS_EXCEED_AREA = Severity.ERROR, "The deductions of an area are as large as the area."
    LARGE_DEDUCTIONS = Severity.QUESTION, "The deductions are a large part of the area."
    FOOTING_EXCEEDS_AREA = Severity.ERROR, "A footing is larger than the area above it."
    DUPLICATE_EDGES = Severity.ERROR, "An area has its edges both in Areas and in Edges."
    STRAIGHT_EDGE = Severity.QUESTION, "An edge of a round area is not marked as curved."
    PERIMETER_MISMATCH = Severity.QUESTION, "The edges of an area do not add up to its perimeter."
    NO_JOINT_LAYOUT = Severity.QUESTION, "An area gets no joints: its joint layout is not fully typed."
    LAYOUT_LENGTH_MISMATCH = Severity.QUESTION, "The length for joint layout is near neither side of its area."
    JOINT_BEYOND_END = Severity.QUESTION, "An old joint is just beyond the end of an area."
    JOINT_OUTSIDE_SLAB = Severity.QUESTION, "An old joint is outside its area, and no new joint meets it."
    OLD_CONCRETE_EXCEEDS_DIG = Severity.QUESTION, "An area has more old concrete than is dug out for it."
    # the results of the rules
    INFINITE_NUMBER = Severity.ERROR, "What was typed gives a number without an end. The job is not written."
    UNACKNOWLEDGED_STOP = Severity.ERROR, "A stop caution is open. The workbook is written and marked not ready."
    FAILED_CHECK = Severity.ERROR, "Two ways to the same number disagree. The workbook is written."

    def __init__(self, severity: Severity, meaning: str) -> None:
        self.severity = severity
        self.meaning = meaning

    @property
    def code(self) -> str:
        """The code in ``--json``, such as ``unknown-column``."""
        return self.name.lower().replace("_", "-")


@dataclass(frozen=True)
class Place:
    """A place in an input workbook: the book's file name, and the sheet and the cell where they are known."""

    book: str = ""
    sheet: str = ""
    cell: str = ""

    def __str__(self) -> str:
        inside = f"{self.sheet}!{self.cell}" if self.sheet and self.cell else self.sheet
        return " ".join(part for part in (self.book, inside) if part)


@dataclass(frozen=True)
class Finding:
    """One message about an input.

    ``found`` says what is wrong or unusual, ``remedy`` what to type instead; both are whole sentences. ``job`` is the
    id of the one job that it is about, or blank for the whole book (an error is then one of every job in the book).
    """

    kind: FindingKind
    place: Place
    found: str
    remedy: str = ""
    job: str = ""

    @property
    def severity(self) -> Severity:
        """Its severity, which follows from its kind."""
        return self.kind.severity

    def __str__(self) -> str:
        text = " ".join(part for part in (self.found, self.remedy) if part)
        place = f"{self.place}: " if str(self.place) else ""
        return one_line(f"{place}{self.severity.word}: {text}")


class InputRefused(Exception):
    """A typed value that cannot be used: the kind of error, what was found, and what to type instead."""

    def __init__(self, kind: FindingKind, found: str, remedy: str) -> None:
        super().__init__(f"{found} {remedy}")
        self.kind = kind
        self.found = found
        self.remedy = remedy


class Unreadable(Exception):
    """A file that cannot be read or written at all; the message is one plain line."""
