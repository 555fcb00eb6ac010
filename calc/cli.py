"""The commands: the only printer and the only exit codes of the program.

Whatever is heavy is imported inside a command, so that ``flatwork --help`` answers at once.
"""

from __future__ import annotations

import gc
import json
import os
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from calc._version import __version__

if TYPE_CHECKING:
    from datetime import date

    from calc.batch import Progress, Run

_LIVING = 20_000
"""New objects between two searches for garbage: nearly all that a bid makes lives to its end, and the usual 700 cost it
a twentieth of its time."""

_FAILURES = 10
"""Failures that are printed one by one: when a disk is full there is one for every job."""


class Commands(click.Group):
    """A group in which ``flatwork INPUT`` means ``flatwork bid INPUT``: a file may be dropped on a shortcut."""

    def parse_args(self, ctx: click.Context, args: list[str]) -> list[str]:
        first = next((each for each in args if not each.startswith("-")), None)
        if first is not None and first not in self.commands and args[0] == first:
            args = ["bid", *args]
        return super().parse_args(ctx, args)


@click.group(cls=Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="flatwork")
def commands() -> None:
    """Bids for small concrete flatwork: an input workbook goes in, a workbook of live formulas comes out a job.

    Check local code. This is not engineering. Licensed trades where the law asks.
    """


_INPUTS = click.argument("inputs", nargs=-1, required=True, type=click.Path(path_type=Path))
_COMPANY = click.option(
    "--company", type=click.Path(path_type=Path), help="The company book; else company.xlsx beside INPUT."
)
_JOB = click.option("--job", default="", help="Only this job.")
_DATE = click.option("--bid-date", default="", help="The bid date of jobs that have none, as 2026-04-13.")
_INTO = click.option("-o", "--output", type=click.Path(path_type=Path), help="The folder of the results.")
_WORKERS = click.option("--workers", type=click.IntRange(min=1), help="Processes to use; else one for each core.")
_JSON = click.option("--json", "as_json", is_flag=True, help="Say the same as JSON, on standard output.")


@commands.command()
@_INPUTS
@_COMPANY
@_JOB
@_DATE
@_INTO
@_WORKERS
@_JSON
def bid(
    inputs: tuple[Path, ...],
    company: Path | None,
    job: str,
    bid_date: str,
    output: Path | None,
    workers: int | None,
    as_json: bool,
) -> None:
    """Write a workbook for every job of the INPUT workbooks: files, folders of them, or patterns.

    A workbook that is there already, made from the same input by the same program, is left as it is: a run that was
    stopped goes on from there when the same command is given again.
    """
    from calc import api

    day, progress = _day(bid_date), _progress()
    with _usage_errors():
        run = api.bid(inputs, company, output, job=job, bid_date=day, workers=workers, progress=progress)
    _report(run, as_json)


@commands.command()
@_INPUTS
@_COMPANY
@_JOB
@_DATE
@_JSON
def check(inputs: tuple[Path, ...], company: Path | None, job: str, bid_date: str, as_json: bool) -> None:
    """Find everything that bid would find, and write nothing."""
    from calc import api

    day = _day(bid_date)
    with _usage_errors():
        run = api.check(inputs, company, job=job, bid_date=day, progress=_progress())
    _report(run, as_json)


@commands.command()
@click.argument("file", type=click.Path(path_type=Path))
@click.option("--company", "is_company", is_flag=True, help="The blank company book instead of the jobs book.")
@click.option("--filled", is_flag=True, help="The demo's own book instead of an empty one.")
@click.option("--measure", is_flag=True, help="The measure sheet instead, to print and take to the site.")
def blank(file: Path, is_company: bool, filled: bool, measure: bool) -> None:
    """Write a blank input workbook to FILE."""
    from calc.files import shipped

    if file.suffix.lower() != ".xlsx":
        raise click.UsageError(f"{file} does not end in .xlsx")
    if measure and (is_company or filled):
        raise click.UsageError("--measure goes with neither --company nor --filled")
    name = "measure.xlsx" if measure else "company.xlsx" if is_company else "jobs.xlsx"
    _write_new(file, (shipped("sample_inputs" if filled else "templates") / name).read_bytes)


@commands.command()
@click.argument("workbooks", nargs=-1, required=True, type=click.Path(path_type=Path))
@click.option(
    "-o", "--output", type=click.Path(path_type=Path), help="The jobs book; else rebid.xlsx beside WORKBOOKS."
)
def rebid(workbooks: tuple[Path, ...], output: Path | None) -> None:
    """Write a jobs book from job WORKBOOKS, as typed, to bid them again at today's prices."""
    from calc.audit.rebid import jobs_book_from

    made = jobs_book_from(workbooks, output if output is not None else workbooks[0].parent / "rebid.xlsx")
    for told in (*made.failures, *made.notes):
        click.echo(told, err=True)
    wrote = f"wrote {made.file}" if made.written else "nothing was written"
    click.echo(f"{len(made.jobs)} of {len(workbooks)} workbooks taken; {wrote}; the company book is not copied")
    sys.exit(made.code)


@commands.command()
@click.argument("workbook", type=click.Path(path_type=Path))
@click.option(
    "-o", "--output", type=click.Path(path_type=Path), help="The file; else WORKBOOK-proposal.xlsx beside it."
)
def proposal(workbook: Path, output: Path | None) -> None:
    """Write the Proposal of a job WORKBOOK alone, values only: what may be sent to the client."""
    from calc.audit.proposal import proposal_workbook

    file = output if output is not None else workbook.with_name(f"{workbook.stem}-proposal.xlsx")
    _write_new(file, lambda: proposal_workbook(workbook))


@commands.command()
@_INTO
@_JSON
def demo(output: Path | None, as_json: bool) -> None:
    """Bid the demo week that comes with the program."""
    from calc import api
    from calc.files import shipped

    folder = output if output is not None else Path("outputs")
    _report(api.bid(shipped("sample_inputs") / "jobs.xlsx", folder=folder), as_json)


def _progress() -> Progress | None:
    """A bar on a terminal, and nothing in a pipe or a file."""
    if not sys.stderr.isatty():
        return None
    from time import monotonic

    from calc.batch import Progress

    class Bar(Progress):
        def begin(self, what: str, steps: int) -> None:
            self.start, self.done = monotonic(), 0
            self.bar: Any = click.progressbar(
                length=steps, label=what, show_pos=True, file=sys.stderr, item_show_func=self._rate
            )
            self.bar.render_progress()

        def step(self) -> None:
            self.done += 1
            self.bar.update(1, self.done)

        def end(self) -> None:
            self.bar.render_finish()

        def _rate(self, _: object) -> str:
            return f"{self.done / max(monotonic() - self.start, 1e-3):.1f} a second"

    return Bar()


def _day(bid_date: str) -> date | None:
    """The bid date of the run."""
    from datetime import date

    if not bid_date:
        return None
    try:
        return date.fromisoformat(bid_date)
    except ValueError:
        raise click.UsageError(f"--bid-date {bid_date} is not a date; give it as 2026-04-13") from None


@contextmanager
def _usage_errors() -> Iterator[None]:
    """A job that is not in the input is a mistake in the command."""
    from calc.api import UnknownJob

    try:
        yield
    except UnknownJob as unknown:
        raise click.UsageError(str(unknown)) from None


def _report(run: Run, as_json: bool) -> None:
    """Findings to standard error, place first, then one line that sums up the run; then the exit code."""
    from calc.batch.summary import as_data, summary

    findings, folder = list(dict.fromkeys(run.findings)), str(run.folder or "")
    if as_json:
        click.echo(json.dumps(as_data(run, findings, folder), ensure_ascii=True, indent=1))
    else:
        for failure in run.failures[:_FAILURES]:
            click.echo(failure, err=True)
        if len(run.failures) > _FAILURES:
            click.echo(f"{len(run.failures) - _FAILURES} more failed in the same run; --json names them all.", err=True)
        for said in dict.fromkeys(str(finding) for finding in findings):
            click.echo(said, err=True)
        click.echo(summary(run, folder))
    sys.exit(run.code)


def _write_new(file: Path, made: Callable[[], bytes]) -> None:
    """Makes a file and writes it where there is none, and says so; or the reason in a line and exit code 3."""
    from calc.errors import Unreadable
    from calc.files import write_new

    try:
        write_new(file, made())
    except Unreadable as reason:
        _fail(str(reason))
    click.echo(f"wrote {file}")


def _fail(text: str) -> None:
    click.echo(text, err=True)
    sys.exit(3)


def main() -> None:
    """The command ``flatwork``. No user's input ends in a stack trace, and no character that the console lacks does."""
    gc.set_threshold(_LIVING)
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")
    try:
        commands.main()
    except Exception as reason:
        if os.environ.get("FLATWORK_TRACE"):
            raise
        _fail(
            f"Something went wrong that should not have: {type(reason).__name__}: {reason}. Nothing was lost. "
            "Set FLATWORK_TRACE=1 to see where, and tell whoever looks after the program."
        )
    finally:
        gc.freeze()  # all of it goes with the process: looking through it for garbage first would take a tenth of a bid


if __name__ == "__main__":
    main()
