"""The commands: the only module that prints and sets exit codes.

Heavy libraries are imported inside the commands, so that ``flatwork --help`` starts at once.
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

_GC_THRESHOLD = 20_000
"""New objects between garbage collections: nearly all objects of a bid live to its end, and the default of 700 costs a
twentieth of its time."""

_MAX_FAILURES = 10
"""Failures that are printed one by one: a full disk gives one for every job."""


class Commands(click.Group):
    """A group in which ``flatwork INPUT`` means ``flatwork bid INPUT``, so that a file can be dropped on a shortcut."""

    def parse_args(self, ctx: click.Context, args: list[str]) -> list[str]:
        first = next((each for each in args if not each.startswith("-")), None)
        if first is not None and first not in self.commands and args[0] == first:
            if not _names_a_file(first):
                raise click.UsageError(_no_such_command(first, list(self.commands)), ctx)
            args = ["bid", *args]
        return super().parse_args(ctx, args)


def _names_a_file(word: str) -> bool:
    """Whether a word can be meant as an input: a file or a folder, a pattern, or a name with an ending."""
    path = Path(word)
    return bool(path.suffix) or path.exists() or path.name != word or any(char in word for char in "*?[")


def _no_such_command(word: str, commands: list[str]) -> str:
    from difflib import get_close_matches

    near = get_close_matches(word.lower(), commands, 1)
    meant = f"Did you mean {near[0]}?" if near else f"The commands are {', '.join(sorted(commands))}."
    return f"There is no command {word}, and no file of that name. {meant}"


@click.group(cls=Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="flatwork")
def commands() -> None:
    """Bids for small concrete flatwork: reads a jobs book and writes one workbook per job, with live formulas.

    Check local code. This is not engineering. Use licensed trades where the law requires them.
    """


_INPUTS = click.argument("inputs", nargs=-1, required=True, type=click.Path(path_type=Path))
_COMPANY = click.option(
    "--company",
    type=click.Path(path_type=Path),
    help="The company book (default: company.xlsx in the folder of INPUT).",
)
_JOB = click.option("--job", default="", help="Bid only the job with this id.")
_DATE = click.option("--bid-date", default="", help="The bid date of jobs without one, as 2026-04-13.")
_OUTPUT = click.option("-o", "--output", type=click.Path(path_type=Path), help="The folder for the results.")
_WORKERS = click.option("--workers", type=click.IntRange(min=1), help="Number of processes (default: one per core).")
_JSON = click.option(
    "--json", "as_json", is_flag=True, help="Print the findings and the summary as JSON on standard output."
)


@commands.command()
@_INPUTS
@_COMPANY
@_JOB
@_DATE
@_OUTPUT
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
    """Write one workbook per job of the INPUT workbooks: files, folders or patterns.

    A workbook that was written before from the same input by the same version is left unchanged, so that an
    interrupted run continues when the same command is given again.
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
    """Print the findings of bid without writing anything."""
    from calc import api

    day = _day(bid_date)
    with _usage_errors():
        run = api.check(inputs, company, job=job, bid_date=day, progress=_progress())
    _report(run, as_json)


@commands.command()
@click.argument("file", type=click.Path(path_type=Path))
@click.option("--company", "is_company", is_flag=True, help="Write the company book instead of the jobs book.")
@click.option("--filled", is_flag=True, help="Write the filled book of the demo instead of a blank one.")
@click.option("--measure", is_flag=True, help="Write the measure sheet, to print and take to the site.")
@click.option("--full", is_flag=True, help="Write the jobs book with every sheet and column.")
def blank(file: Path, is_company: bool, filled: bool, measure: bool, full: bool) -> None:
    """Write a blank input workbook to FILE: the jobs book with what usual jobs need, unless told otherwise."""
    from calc.files import shipped

    if file.suffix.lower() != ".xlsx":
        raise click.UsageError(f"{file} does not end in .xlsx")
    if measure and (is_company or filled):
        raise click.UsageError("--measure cannot be combined with --company or --filled")
    if full and (is_company or filled or measure):
        raise click.UsageError("--full is for the blank jobs book: the other books have every sheet and column already")
    jobs = "jobs-full.xlsx" if full else "jobs.xlsx"
    name = "measure.xlsx" if measure else "company.xlsx" if is_company else jobs
    _write_new(file, (shipped("sample_inputs" if filled else "templates") / name).read_bytes)


@commands.command()
@click.argument("workbooks", nargs=-1, required=True, type=click.Path(path_type=Path))
@click.option(
    "-o",
    "--output",
    type=click.Path(path_type=Path),
    help="The jobs book to write (default: rebid.xlsx in the folder of the first of WORKBOOKS).",
)
@click.option("--bid-date", default="", help="The bid date of all the jobs, as 2026-04-13 (default: as it was).")
def rebid(workbooks: tuple[Path, ...], output: Path | None, bid_date: str) -> None:
    """Write a jobs book with the inputs of job WORKBOOKS, to bid them again at current prices."""
    from calc.audit.rebid import jobs_book_from

    file = output if output is not None else workbooks[0].parent / "rebid.xlsx"
    result = jobs_book_from(workbooks, file, _day(bid_date))
    for message in (*result.failures, *result.notes):
        click.echo(message, err=True)
    wrote = f"wrote {result.file}" if result.written else "nothing was written"
    workbook = "workbook" if len(workbooks) == 1 else "workbooks"
    click.echo(f"{len(result.jobs)} of {len(workbooks)} {workbook} read; {wrote}; the company book is not copied")
    sys.exit(result.code)


@commands.command()
@click.argument("workbook", type=click.Path(path_type=Path))
@click.option(
    "-o",
    "--output",
    type=click.Path(path_type=Path),
    help="The file to write (default: WORKBOOK-proposal.xlsx, or .pdf, in the same folder).",
)
@click.option("--pdf", is_flag=True, help="Write a PDF instead of a workbook; needs LibreOffice on this machine.")
def proposal(workbook: Path, output: Path | None, pdf: bool) -> None:
    """Write the Proposal of a job WORKBOOK as a file of its own, values only, to send to the client.

    A bid that is NOT READY is refused.
    """
    from calc.audit.pdf import pdf_of
    from calc.audit.proposal import proposal_workbook

    ending = "pdf" if pdf else "xlsx"
    file = output if output is not None else workbook.with_name(f"{workbook.stem}-proposal.{ending}")
    if file.suffix.lower() != f".{ending}":
        raise click.UsageError(f"{file} does not end in .{ending}")
    if pdf:
        _write_new(file, lambda: pdf_of(workbook.name, proposal_workbook(workbook)))
    else:
        _write_new(file, lambda: proposal_workbook(workbook))


@commands.command()
@_OUTPUT
@_JSON
def demo(output: Path | None, as_json: bool) -> None:
    """Bid the demo jobs that come with the program. One of them is not ready, to show what that looks like."""
    from calc import api
    from calc.files import shipped

    folder = output if output is not None else Path("outputs")
    run = api.bid(shipped("sample_inputs") / "jobs.xlsx", folder=folder)
    _report(run, as_json, code=run.code if run.failures else 0)


def _progress() -> Progress | None:
    """A progress bar on a terminal, and none in a pipe or a file."""
    if not sys.stderr.isatty():
        return None
    from time import monotonic

    from calc.batch import Progress

    class Bar(Progress):
        def begin(self, label: str, steps: int) -> None:
            self.start, self.done = monotonic(), 0
            self.bar: Any = click.progressbar(
                length=steps, label=label, show_pos=True, file=sys.stderr, item_show_func=self._rate
            )
            self.bar.render_progress()

        def step(self, name: str = "") -> None:
            self.done += 1
            self.bar.update(1, name)

        def end(self) -> None:
            self.bar.render_finish()

        def _rate(self, name: str | None) -> str:
            rate = f"{self.done / max(monotonic() - self.start, 1e-3):.1f} a second"
            return f"{rate}, {name}" if name else rate

    return Bar()


def _day(bid_date: str) -> date | None:
    """The bid date of the run."""
    from datetime import date

    if not bid_date:
        return None
    try:
        return date.fromisoformat(bid_date)
    except ValueError:
        raise click.UsageError(f"--bid-date {bid_date} is not a date; type it as 2026-04-13") from None


@contextmanager
def _usage_errors() -> Iterator[None]:
    """A job that is not in the input is a mistake in the command."""
    from calc.api import UnknownJob

    try:
        yield
    except UnknownJob as unknown:
        raise click.UsageError(str(unknown)) from None


def _report(run: Run, as_json: bool, code: int | None = None) -> None:
    """Findings to standard error, place first, then a table with a row a job and one line that sums up the run; then
    the exit code, of the run unless another is given."""
    from calc.batch.outcome import table
    from calc.batch.summary import as_data, summary

    findings, folder = list(dict.fromkeys(run.findings)), str(run.folder or "")
    if as_json:
        click.echo(json.dumps(as_data(run, findings, folder), ensure_ascii=True, indent=1))
    else:
        for failure in run.failures[:_MAX_FAILURES]:
            click.echo(failure, err=True)
        more = len(run.failures) - _MAX_FAILURES
        if more > 0:
            click.echo(f"{more} more {'failure' if more == 1 else 'failures'}. --json lists all of them.", err=True)
        for line in dict.fromkeys(str(finding) for finding in findings):
            click.echo(line, err=True)
        for line in table(run.outcomes) if run.outcomes else ():
            click.echo(line)
        click.echo(summary(run, folder))
    sys.exit(run.code if code is None else code)


def _write_new(file: Path, content: Callable[[], bytes]) -> None:
    """Writes a new file and prints its name; prints the reason and exits with 3 when it cannot be written."""
    from calc.errors import Unreadable
    from calc.files import write_new

    try:
        write_new(file, content())
    except Unreadable as reason:
        _fail(str(reason))
    click.echo(f"wrote {file}")


def _fail(text: str) -> None:
    click.echo(text, err=True)
    sys.exit(3)


def main() -> None:
    """The command ``flatwork``. Unexpected errors and characters that the console lacks end in no stack trace."""
    gc.set_threshold(_GC_THRESHOLD)
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")
    try:
        commands.main()
    except Exception as reason:
        if os.environ.get("FLATWORK_TRACE"):
            raise
        _fail(
            f"Unexpected error: {type(reason).__name__}: {reason}. Files that were written before are complete. "
            "Set FLATWORK_TRACE=1 to see the stack trace, and report it to whoever maintains the program."
        )
    finally:
        gc.freeze()  # a last garbage collection when the process ends would take a tenth of the time of a bid


if __name__ == "__main__":
    main()
