"""The summary of a run: one line, or all of it as data for ``--json``."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from calc.batch.outcome import as_records
from calc.batch.run import Run
from calc.errors import Finding, Severity
from calc.files import Saved

SCHEMA = 1
"""The version of the data in ``--json``. It stays the same as long as fields are only added."""


def summary(run: Run, folder: str) -> str:
    """The line that sums up a run."""
    company = f"company book {run.company}" if run.company else "no company book"
    jobs = f"{len(run.jobs)} {'job' if len(run.jobs) == 1 else 'jobs'}"
    if not folder:
        with_errors = {each.job for each in run.findings if each.severity is Severity.ERROR and each.job}
        with_errors |= set(run.not_written)  # by an error of the company book, which names no job
        return f"{jobs} checked, {len(with_errors)} with errors; {company}; nothing was written"
    unchanged = sum(1 for job, _, saved in run.written if job and saved is Saved.UNCHANGED)
    written = sum(1 for job, _, _ in run.written if job) - unchanged
    parts = [f"{written} written to {folder}"]
    parts += [f"{unchanged} unchanged"] if unchanged else []
    parts += [f"{len(run.not_written)} not written"]
    parts += [f"{len(run.failures)} failed"] if run.failures else []
    copies = ", ".join(path.name for path in run.numbered_copies)
    copied = f"; what has the name is kept, so written as a numbered copy: {copies}" if copies else ""
    return f"{jobs}: {', '.join(parts)}; {company}{copied}{_what_next(run)}"


def _what_next(run: Run) -> str:
    """The workbook to open first: that of the only job, else that of the week."""
    jobs = [path for job, path, _ in run.written if job]
    weeks = [path for job, path, _ in run.written if not job]
    paths = [*jobs, *weeks] if len(run.jobs) == 1 else [*weeks, *jobs]
    return f". Open {paths[0]}" if paths else ""


def as_data(run: Run, findings: Sequence[Finding], folder: str) -> dict[str, Any]:
    """The findings and the summary as data."""
    return {
        "schema": SCHEMA,
        "jobs": len(run.jobs),
        "company_book": run.company,
        "folder": folder,
        "written": [{"job": job, "file": path.name, "how": saved.value} for job, path, saved in run.written],
        "results": as_records(run.outcomes),
        "not_written": run.not_written,
        "failures": run.failures,
        "findings": [
            {
                "severity": each.severity.word,
                "code": each.kind.code,
                "book": each.place.book,
                "sheet": each.place.sheet,
                "cell": each.place.cell,
                "job": each.job,
                "found": each.found,
                "remedy": each.remedy,
            }
            for each in findings
        ],
        "exit": run.code,
    }
