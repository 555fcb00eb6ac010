"""What a run says of itself at its end: one line, or the same as data."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from calc.batch.run import Run
from calc.errors import Finding, Severity
from calc.files import Saved


def summary(run: Run, folder: str) -> str:
    """The line that sums up a run."""
    company = f"house book {run.company}" if run.company else "no house book"
    stops = len({each.job for each in run.findings if each.severity is Severity.STOP and each.job})
    counts = f"{run.jobs} {'job' if run.jobs == 1 else 'jobs'}"
    if not folder:
        return f"{counts} checked, {stops} with a stop; {company}; nothing was written"
    beside = [path.name for path in run.beside_others]
    told = f"; changed by hand, so written beside it: {', '.join(beside)}" if beside else ""
    failed = f", {len(run.failures)} failed" if run.failures else ""
    normalize = sum(1 for job, _, saved in run.written if job and saved is Saved.UNCHANGED)
    unchanged = f", {normalize} unchanged" if normalize else ""
    written = sum(1 for job, _, _ in run.written if job) - normalize
    return f"{counts}: {written} written to {folder}{unchanged}, {len(run.held)} held back{failed}; {company}{told}"


def as_data(run: Run, findings: Sequence[Finding], folder: str) -> dict[str, Any]:
    """The findings and the summary as data."""
    return {
        "jobs": run.jobs,
        "house_book": run.company,
        "folder": folder,
        "written": [{"job": job, "file": path.name, "how": saved.value} for job, path, saved in run.written],
        "held": run.held,
        "failures": run.failures,
        "findings": [
            {
                "severity": each.severity.word,
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
