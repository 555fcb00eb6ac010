"""Bidding a run: what is not there yet is made, saved as it comes, and the week is written last."""

from __future__ import annotations

from collections.abc import Iterator
from concurrent.futures import Executor
from dataclasses import dataclass
from itertools import islice
from pathlib import Path

from calc.batch.load import ready
from calc.batch.pool import executor_of, map_slices, workers_for
from calc.batch.run import CHUNK, WEEK_FILE, FindingIndex, Progress, Run
from calc.batch.serialize import fingerprint, program_fingerprint
from calc.batch.worker import JobRequest, Slice, SliceResult, evaluated, job_findings, work
from calc.errors import Finding, Place, Severity, Unreadable
from calc.files import Results, Saved
from calc.layout.week import WeekRow, week_sheets
from calc.model.outliers import outliers
from calc.model.truck_sharing import shared_trucks
from calc.xlsx_write.write import Identity, workbook_bytes

MOST = 20
"""Workbooks that are made in one go: what is lost when a run is stopped is no more than this for each worker."""

_ROUNDS = 4
"""Slices that each worker gets at least, so that all of them finish together."""


@dataclass(frozen=True, slots=True)
class _Order:
    """A ready job: the print of all that its workbook is made from, and where that lies already if it does."""

    card: int
    notes: tuple[Finding, ...]
    made_from: str
    there: Path | None


def bid(
    run: Run, folder: Path, workers: int | None = None, progress: Progress | None = None, pool: Executor | None = None
) -> None:
    """Writes the workbook of every job that is ready; a file that cannot be written does not stop the others.

    A workbook that the program made from the very same before is left as it is, so a run that was stopped goes on from
    there. ``workers`` is how many processes may be used, all cores when None; ``pool`` does the work instead of them.
    """
    try:
        bidding = _Bidding(run, Results(folder))
    except Unreadable as reason:
        run.failures.append(str(reason))
        return
    progress = progress or Progress()
    count = workers_for(bidding.to_make, workers)
    executor = pool or executor_of(count)
    progress.begin("Bidding", len(bidding.orders))
    try:
        for done in map_slices(bidding.slices(count), work, executor, count, bidding.worker_lost):
            bidding.keep(done, progress)
        bidding.save_week()
    except KeyboardInterrupt:
        run.failures.append(
            f"Stopped after {len(bidding.rows)} of {len(bidding.orders)} jobs: the same command goes on from there."
        )
    finally:
        progress.end()
        if pool is None:
            executor.shutdown(wait=bidding.whole, cancel_futures=True)


def check(run: Run) -> None:
    """Finds what the rules find in every job that is ready, and writes nothing."""
    for each in evaluated(ready(run)):
        run.findings += job_findings(each)


class _Bidding:
    """A run while it is bid: what is to be done, and what the week's workbook will need of what was done."""

    def __init__(self, run: Run, results: Results) -> None:
        self.run, self.results = run, results
        self.orders = list(self._orders())
        self.to_make = sum(each.there is None for each in self.orders)
        self.rows: list[WeekRow] = []
        self.identity: Identity | None = None

    @property
    def whole(self) -> bool:
        """Whether every job was met."""
        return len(self.rows) == len(self.orders)

    def _orders(self) -> Iterator[_Order]:
        concerns = FindingIndex(self.run.findings)
        same_for_all = fingerprint(self.run.company_print, program_fingerprint())
        for _, cards in self.run.ready():
            for place in cards:
                card = self.run.cards[place]
                notes = concerns.of(card, self.run.company_books)
                made_from = fingerprint(same_for_all, card.typed, notes)
                yield _Order(place, notes, made_from, self.results.current(card.file, made_from))

    def slices(self, workers: int) -> Iterator[Slice]:
        """The jobs of each chunk in order, in slices with no more than so many workbooks to make."""
        most = min(MOST, max(1, self.to_make // (_ROUNDS * workers)))
        orders = iter(self.orders)
        for number, cards in self.run.ready():
            ready_jobs = tuple(card - number * CHUNK for card in cards)
            asked: list[JobRequest] = []
            for place, order in enumerate(islice(orders, len(cards))):
                asked.append(JobRequest(place, self.run.cards[order.card].file, order.notes, order.there is None))
                if sum(each.make for each in asked) == most:
                    yield Slice(self.run.chunks[number], ready_jobs, tuple(asked))
                    asked = []
            if asked:
                yield Slice(self.run.chunks[number], ready_jobs, tuple(asked))

    def keep(self, done: SliceResult, progress: Progress) -> None:
        """Saves what came of the next slice."""
        self.identity = self.identity or done.identity
        for made in done.made:
            order = self.orders[len(self.rows)]
            self.rows.append(made.row)
            self.run.findings += made.findings
            job = self.run.cards[order.card].id
            if order.there is not None:
                self.run.written.append((job, order.there, Saved.UNCHANGED))
            elif made.data is None:
                self.run.failures.append(made.failure)
            else:
                self._save(job, made.file, made.data, order.made_from)
            progress.step()

    def save_week(self) -> None:
        """Writes the week, unless it was made from these very jobs before."""
        if self.identity is None:
            return
        made_from = fingerprint("week", [each.made_from for each in self.orders])
        there = self.results.current(WEEK_FILE, made_from)
        if there is not None:
            self.run.written.append(("", there, Saved.UNCHANGED))
        else:
            try:
                shared = shared_trucks([row.pour for row in self.rows])
                data = workbook_bytes(week_sheets(self.rows, outliers(self.rows), shared), None, self.identity)
            except (OSError, Unreadable) as reason:
                self.run.failures.append(f"{WEEK_FILE}: it could not be made: {reason}")
            else:
                self._save("", WEEK_FILE, data, made_from)

    def _save(self, job: str, name: str, data: bytes, made_from: str) -> None:
        """Saves one workbook; one that cannot be saved is a failure of its own."""
        try:
            path, saved = self.results.save(name, data, made_from)
        except Unreadable as reason:
            self.run.failures.append(str(reason))
            return
        self.run.written.append((job, path, saved))

    def worker_lost(self) -> None:
        """Notes that a process ended before its work was done."""
        found = "A worker process was ended from outside, perhaps for want of memory; its jobs were done without it."
        self.run.findings.append(Finding(Severity.NOTE, Place(), found, "Try again with fewer --workers."))
