"""A run: the books that were named become workbooks, many jobs at a time, and a word about each that is not."""

from calc.batch.bidding import bid, check
from calc.batch.load import ready, take
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
    "ready",
    "take",
    "work",
]
