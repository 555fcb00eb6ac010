"""Bids whose workbooks are turned back into a jobs book, and what of them is held against each other."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

import openpyxl

from books import COMPANY, Rows, write_book
from calc import batch
from calc.audit.rebid import Rebid, jobs_book_from
from calc.intake.records import JobInput
from calc.intake.schema import OVERRIDES, everything
from calc.model.results import JobValues

Typed = dict[tuple[str, int], str]


@dataclass
class Bid:
    """The workbooks of a bid, with the jobs they were written for; the company book stands beside the week's."""

    folder: Path
    run: batch.Run
    jobs: list[JobValues]

    @property
    def workbooks(self) -> list[Path]:
        """The workbooks of the jobs, in their order."""
        return [path for job, path, _ in self.run.written if job]

    @property
    def company(self) -> Path:
        """Its company book."""
        return self.folder / "company.xlsx"


def bid_of(folder: Path, week: Path, company: Path | None = None, write: bool = True) -> Bid:
    """Bids a jobs book, and holds that no job was left out; without ``write`` it only works the jobs out."""
    run = batch.load_run([week], company, None)
    if write:
        batch.bid(run, folder / "outputs")
    assert not run.not_written and not run.failures, [str(each) for each in run.findings]
    return Bid(folder, run, list(batch.evaluated(batch.ready_jobs(run))))


def written_bid(folder: Path, week: Mapping[str, Rows], company: Mapping[str, Rows] = COMPANY) -> Bid:
    """The bid of a jobs book and a company book of these tables."""
    write_book(folder / "company.xlsx", company)
    return bid_of(folder, write_book(folder / "input.xlsx", week))


def made(workbooks: Sequence[Path], file: Path) -> Rebid:
    """The book made again, which nothing kept from being written."""
    result = jobs_book_from(workbooks, file)
    assert result.written and not result.failures, result.failures
    return result


def bid_again(bid: Bid, folder: Path, write: bool = False) -> Bid:
    """What is bid from a book that is made again, with the same company book."""
    folder.mkdir()
    assert made(bid.workbooks, folder / "rebid.xlsx").notes == []
    return bid_of(folder, folder / "rebid.xlsx", bid.company, write)


def numbers(job: JobValues) -> dict[str, float | str]:
    """Every number and word of a job by its declaration and row."""
    found = {f"{each.id}[{row}]": job.of(each, row) for each in everything() for row in range(job.count(each.level))}
    return {name: "none" if isinstance(value, float) and math.isnan(value) else value for name, value in found.items()}


def typed(job: JobInput) -> Typed:
    """What was typed for every input of the job itself, by declaration and row."""
    company = {id(entry) for entry in (*job.company.facts.values(), *job.company.site.values())}
    of_job = {(given.id, 0): entry for given, entry in job.entries.items() if id(entry) not in company}
    of_rows = {
        (given.id, at): entry
        for level, rows in job.rows.items()
        if rows is not job.company.rows.get(level)
        for at, row in enumerate(rows)
        for given, entry in row.entries.items()
    }
    override = {(named.id, at): entry for (named, at), entry in job.overrides.items()}
    return {key: entry.typed for key, entry in (of_job | of_rows | override).items() if entry.typed}


def overrides(path: Path) -> list[dict[str, object]]:
    """The rows of Overrides of a book, by header."""
    rows = list(openpyxl.load_workbook(path)[OVERRIDES].iter_rows(values_only=True))
    return [dict(zip(map(str, rows[0]), row, strict=True)) for row in rows[1:] if row[0] is not None]
