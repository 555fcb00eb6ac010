"""What some jobs come to under the rules as they stand: a print of every line, to see whether a change moves anything.

``planted_defects`` runs it in each copy of the checkout. The jobs are the demo, the job that fills every column, those
of the situations, and jobs drawn by chance. Their books are read once, and kept in a folder for every further look.
"""

from __future__ import annotations

import hashlib
import pickle
import sys
import tempfile
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from random import Random

import random_jobs
import random_orders
import random_plans
import random_pours
import random_work
from books import write_book
from calc.cells import Book
from calc.intake.read_run import has_error, read_run
from calc.intake.records import JobInput
from calc.model.evaluate import evaluate
from calc.trade.catalog import SECTIONS
from calc.xlsx_read.read import read_book
from situation import situations
from whole_job import whole_company, whole_week

JOBS_OF_A_DRAW = 12
BOOKS, PRINTS = "books.pickle", "prints.pickle"
NO_VALUES = 4
"""The exit code when the rules can be imported, and cannot be computed."""

Tables = Mapping[str, Sequence[Sequence[object]]]
Books = tuple[Book, Book]


def tables() -> Iterator[tuple[Tables, Tables]]:
    """The sheets of jobs books, each with those of its company book."""
    yield whole_week(), whole_company()
    for each in situations():
        yield each.week, each.company
    for draws in (random_orders, random_pours, random_work):
        chance = Random(draws.__name__)
        company = draws.random_company(chance)
        jobs = [(f"job {number}", draws.drawn_job(chance)) for number in range(JOBS_OF_A_DRAW)]
        yield draws.week_tables(jobs), draws.company_tables(company)
    yield from _hauled()


def _hauled() -> Iterator[tuple[Tables, Tables]]:
    """Jobs whose draws ask for the company that they are drawn for."""
    chance = Random("hauled")
    company = random_jobs.random_company(chance)
    jobs = [(f"job {number}", random_jobs.drawn_job(chance, company)) for number in range(JOBS_OF_A_DRAW)]
    yield random_jobs.week_tables(jobs), random_jobs.company_tables(company)
    for roads in dict.fromkeys(random_plans.ROADS):
        others = random_plans.random_company(chance, roads)
        tasks = [(f"job {number}", random_plans.drawn_task(chance, others)) for number in range(JOBS_OF_A_DRAW)]
        yield random_plans.week_tables(tasks), random_plans.company_tables(others)


def made_books(checkout: Path) -> list[Books]:
    """The books as they are read: the demo, and all that stand in ``tables``."""
    demo = checkout / "sample_inputs"
    found = [(read_book(demo / "jobs.xlsx"), read_book(demo / "company.xlsx"))]
    with tempfile.TemporaryDirectory() as folder:
        jobs, company = Path(folder) / "jobs.xlsx", Path(folder) / "company.xlsx"
        found += [(read_book(write_book(jobs, one)), read_book(write_book(company, two))) for one, two in tables()]
    return found


def jobs_of(books: Sequence[Books]) -> list[JobInput]:
    """The jobs of the books, less those that a stop holds back."""
    jobs = []
    for book, company in books:
        intake = read_run([book], company)
        jobs += [job for job in intake.jobs if not has_error(job, intake.findings)]
    return jobs


def prints(jobs: Sequence[JobInput]) -> dict[str, str]:
    """A print of the values of every line over all the jobs, and of which jobs there are."""
    batch = evaluate(jobs)
    found = {"jobs": repr([job.id for job in jobs])}
    for member in (each for section in SECTIONS for each in section.members):
        column = batch.columns[member]
        held = "\0".join(map(str, column)).encode() if column.dtype == object else (column + 0.0).tobytes()
        found[member.id] = hashlib.sha256(held).hexdigest()
    return found


def look(checkout: Path, folder: Path) -> None:
    """Writes the prints of a checkout into a folder, which keeps the books too."""
    books = folder / BOOKS
    if not books.exists():
        books.write_bytes(pickle.dumps(made_books(checkout)))
    found = prints(jobs_of(pickle.loads(books.read_bytes())))
    (folder / PRINTS).write_bytes(pickle.dumps(found))


if __name__ == "__main__":
    try:
        look(Path(sys.argv[1]), Path(sys.argv[2]))
    except Exception as reason:
        print(f"{type(reason).__name__}: {reason}", file=sys.stderr)
        sys.exit(NO_VALUES)
