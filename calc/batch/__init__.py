"""A run: input books are read, jobs are evaluated in chunks over several processes, and workbooks are written."""

from calc.batch.bidding import bid, check
from calc.batch.load import load_run, ready_jobs
from calc.batch.run import CHUNK, COMPANY_BOOK, WEEK_FILE, Progress, Run
from calc.batch.worker import Slice, SliceResult, evaluated, job_findings, work

__all__ = [
    "CHUNK",
    "COMPANY_BOOK",
    "WEEK_FILE",
    "Progress",
    "Run",
    "Slice",
    "SliceResult",
    "bid",
    "check",
    "evaluated",
    "job_findings",
    "load_run",
    "ready_jobs",
    "work",
]
