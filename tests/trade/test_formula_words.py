"""The words that say how a number is worked have one reading, and it gives the number.

Somebody checks a bid by its words, on paper and without the program: words that leave a bracket out, or say another
row, cost that person the afternoon, or the bid. Here a reader that knows the page of ``words_reader`` and no formula
reads the words of every line back and works them out on the numbers of real jobs.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from functools import cache
from itertools import islice
from math import pi

import pytest

import calc
from books import intake_from, jobs_of, value
from books import line as declared
from calc.batch import evaluated
from calc.declared import Line
from calc.declared.formula_words import DIFFERS, LONGEST
from calc.intake.schema import everything
from calc.layout.worked import FORMULA_WORDS
from calc.model.results import JobValues
from folders import ROOT
from random_bids import drawn_bids
from situation import situations
from whole_job import whole_company, whole_week
from words_of_jobs import NAMES, Job, agrees, chosen_rows, parser
from words_reader import Node, Unreadable, names_in

LINES: tuple[Line, ...] = tuple(each for each in everything() if isinstance(each, Line))
EVERY, DRAWN, ROWS = 16, 6, 3
"""Of the jobs worked by hand each sixteenth; so many drawn ones; so many rows of a line in each job."""

MOST_BY_HAND = 0.05
MOST_LONG = 0.025
CONSTANTS = {0, 1, 2, 3, 6, 7, 12, 27, 60, 100, 144, 1000, 2000}
"""The numbers that are exact by definition; any other has a name."""


@cache
def read(line: Line) -> Node:
    """The words of a line, read; those that follow from its formula, also where shorter ones are shown."""
    return parser().read(FORMULA_WORDS.in_full(line))


def names(line: Line) -> set[object]:
    """What the names in the words of a line mean to a reader."""
    return {NAMES.meaning(name, line.section, line.level) for name in names_in(read(line))}


def leaves(line: Line) -> set[object]:
    """The declarations that its formula is made of."""
    return {leaf.formula.part if leaf.sums_rows else leaf for leaf in line.formula.leaves()}


@pytest.fixture(scope="module")
def jobs(tmp_path_factory: pytest.TempPathFactory) -> list[Job]:
    """The job that fills every column, the demo, some of the jobs that are worked by hand, and some drawn ones."""
    folder = tmp_path_factory.mktemp("words")
    found = jobs_of(intake_from(folder, whole_week(), whole_company()))
    found += evaluated(calc.read(ROOT / "sample_inputs" / "jobs.xlsx").jobs)
    for each in situations()[::EVERY]:
        found += jobs_of(intake_from(folder, each.week, each.company))
    found += islice(drawn_bids(tmp_path_factory.mktemp("drawn")), DRAWN)
    return [Job(each) for each in found]


def test_every_name_in_the_words_of_a_line_means_what_its_formula_has() -> None:
    wrong = [f"{line.id}: {FORMULA_WORDS.in_full(line)}" for line in LINES if names(line) != leaves(line)]
    assert not wrong, "\n".join(wrong)


@pytest.mark.slow
def test_the_words_of_every_line_come_to_its_number_on_real_jobs(jobs: list[Job]) -> None:
    wrong, tried = list[str](), Counter[str]()
    for line in LINES:
        for number, job in enumerate(jobs):
            if not job.has(line):
                continue
            column = job.column(line)
            for row in chosen_rows(len(column.rows), most=ROWS):
                tried[line.id] += 1
                got = job.calculated(line, read(line), row)
                if not agrees(got, column.values[row]):
                    wrong.append(f"{line.id} job {number} row {row + 1}: {got!r}, not {column.values[row]!r}")
    print(f"{len(tried)} lines, {sum(tried.values())} numbers, {len(jobs)} jobs")
    assert not wrong, f"{len(wrong)} in all\n" + "\n".join(wrong[:20])
    assert {line.id for line in LINES} == set(tried), "every line has a row in some job"


def test_a_bracket_that_is_lost_is_noticed() -> None:
    """The reader would be no witness if it took any words for right."""
    line = declared("PourByMethod.long_finisher")
    assert isinstance(line, Line)
    words = FORMULA_WORDS.in_full(line)
    unbracketed = words.replace("(Finishers on the pour − 1) × ", "Finishers on the pour − 1 × ")
    assert words != unbracketed
    assert parser().read(words) != parser().read(unbracketed)


@pytest.mark.parametrize(
    "words",
    [
        "Trucks + total of Loads hauled",
        "1 if Trucks > 0 and Loads hauled > 0 or Trips > 0",
        "square root of 2 × pi",
        "Trucks, rounded",
        "Trucks [No such section] + 1",
        "No name that there is",
    ],
)
def test_words_that_leave_something_open_are_not_read(words: str) -> None:
    line = declared("PourCost.pump")
    with pytest.raises(Unreadable):
        for name in names_in(parser().read(words)):
            NAMES.meaning(name, line.section, line.level)


def numbers(node: object) -> Iterator[float]:
    """The numbers that words say."""
    if isinstance(node, Node):
        if node.kind == "constant":
            yield node.parts[0]
        for part in node.parts:
            yield from numbers(part)
    elif isinstance(node, Mapping):
        for part in node.values():
            yield from numbers(part)


def test_words_name_a_factor_and_never_say_its_value() -> None:
    """A value in words would go stale when somebody edits the factor."""
    said = {line.id: {each for each in numbers(read(line)) if each != pi} - CONSTANTS for line in LINES}
    assert not {line: each for line, each in said.items() if each}


# Words by hand: what they say, worked with the numbers of the demo by somebody who reads them. The plans of 26-044, by
# row: 4 hauls green waste separately and mixes the rest, 10 mixes nothing, 13 mixes only soil; all by the dump trailer.

BY_HAND: Mapping[str, tuple[tuple[str, int, float], ...]] = {
    "PlanHours.loads": (("26-044", 4, 1 + 1), ("26-044", 10, 1 + 1 + 1 + 0), ("26-044", 13, 1 + 1 + 1)),
    "PlanHours.trips": (("26-044", 4, (43 + 59) / 60), ("26-044", 13, (43 + 53 + 59) / 60)),
    "PlanCost.dump_fees": (("26-044", 4, 20 + 116.8105375505719), ("26-044", 10, 20 + 30 + 0)),
    "PlanCost.trucking": (("26-044", 4, 71 + 102.40), ("26-044", 13, 71 + 90.40 + 102.40)),
    "PlanCost.piles_without_site": (("26-044", 10, 0 + 0 + 1), ("26-044", 4, 0)),
    "PlanCost.days": (("26-044", 10, 1 + (1 - 1) + (1 - 1) + 0), ("26-042", 1, 2)),
    # a walk of 12.5 ft by 2.875 ft is laid out along its length
    "Panel.shape_width": (("26-041", 1, 2.875), ("26-047", 1, 24)),
    # 256.50 for the mix, 155 for a short load, 28 for delivery; then 12 and 9.50 of the plant's other fees
    "PlantInvoice.first_in_costs": (("26-041", 1, 256.50 + 155 + 28),),
    "PlantInvoice.in_costs": (("26-041", 1, 439.50 + 12 + 9.50),),
}
"""Lines with words of their own: job, row, and what their words come to."""


@pytest.fixture(scope="module")
def demo() -> Mapping[str, JobValues]:
    """The jobs of the demo."""
    return {each.job.id: each for each in evaluated(calc.read(ROOT / "sample_inputs" / "jobs.xlsx").jobs)}


@pytest.mark.parametrize("line", BY_HAND)
def test_words_by_hand_come_to_the_number_of_their_line(line: str, demo: Mapping[str, JobValues]) -> None:
    for job, row, worked in BY_HAND[line]:
        assert value(demo[job], line, row - 1) == pytest.approx(worked, rel=1e-9), (job, row)


def test_few_lines_have_words_of_their_own_and_those_are_worked_here() -> None:
    by_hand = [line.id for line in LINES if line.own_words]
    print(f"{len(by_hand)} of {len(LINES)} lines have words by hand: {', '.join(by_hand)}")
    assert len(by_hand) <= MOST_BY_HAND * len(LINES)
    assert set(by_hand) == set(BY_HAND)


def test_words_are_short_enough_to_read() -> None:
    lengths = sorted(len(FORMULA_WORDS.of(line)) for line in LINES)
    tables = [line.id for line in LINES if FORMULA_WORDS.of(line) == DIFFERS]
    spread = {share: lengths[int(share * (len(lengths) - 1))] for share in (0.5, 0.9, 0.99, 1)}
    print(f"characters: {spread}; {len(tables)} tables that differ by row: {', '.join(tables)}")
    assert sum(each > LONGEST for each in lengths) <= MOST_LONG * len(LINES)
    assert all(len(line.own_words) <= LONGEST for line in LINES)
