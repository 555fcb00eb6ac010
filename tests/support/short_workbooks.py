"""A short workbook in place of that of a job, for tests of files: quick to write, and different for every job, client,
price and factor.

Run as a program it is the command itself with short workbooks, as long as it writes them in its own process.
"""

from __future__ import annotations

from calc import cli
from calc.batch import worker
from calc.layout.addresses import CellMap
from calc.layout.log_sheet import log_page
from calc.layout.workbook import resolve
from calc.model.results import JobValues
from calc.xlsx_write.write import identity_of, workbook_bytes


def short_workbook(job: JobValues) -> bytes:
    """The Log of a job, and no other sheet."""
    return workbook_bytes([resolve(log_page(job.job), CellMap())], job, identity_of(job, job.job.id))


if __name__ == "__main__":
    worker.job_workbook = short_workbook
    cli.main()
