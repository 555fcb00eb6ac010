"""Who does the work: this process, or several; and how it is handed out, so that memory stays flat."""

from __future__ import annotations

import gc
import os
import signal
import threading
from collections import deque
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import BrokenExecutor, Executor, Future, ProcessPoolExecutor
from multiprocessing import get_context, parent_process
from typing import Any, TypeVar

FEW = 12
"""Workbooks below which no process is started: by the time it is up, they would be made."""

LIVING = 20_000
"""New objects between two searches for garbage: nearly all that a job makes lives until its workbook is made, and the
usual 700 cost a twentieth of the time."""

_MOST = 61
"""Processes that every system can wait for."""

_AHEAD = 2
"""Pieces of work that are handed out for each worker, so that none waits for the next."""

_T = TypeVar("_T")
_R = TypeVar("_R")


class InlineExecutor(Executor):
    """An executor that does the work in this very process, at once."""

    def submit(self, fn: Callable[..., Any], /, *args: Any, **kwargs: Any) -> Future[Any]:
        """Does it, and gives what came of it."""
        future: Future[Any] = Future()
        try:
            future.set_result(fn(*args, **kwargs))
        except Exception as reason:
            future.set_exception(reason)
        return future


def cores() -> int:
    """The cores that this process may use."""
    mine = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count()
    return max(1, mine or 1)


def workers_for(workbooks: int, workers: int | None) -> int:
    """How many processes are worth their start for so many workbooks, of those that are allowed; 1 is this one."""
    allowed = min(workers or cores(), _MOST)
    return 1 if workbooks < FEW else max(1, min(allowed, workbooks))


def executor_of(workers: int) -> Executor:
    """So many processes, or this one. They start afresh on every system: nothing of ours is copied half done."""
    if workers == 1:
        return InlineExecutor()
    return ProcessPoolExecutor(workers, mp_context=get_context("spawn"), initializer=_begin)


def _begin() -> None:
    """A worker goes with the run: at once when a person stops it, and when whoever started it is gone."""
    signal.signal(signal.SIGINT, signal.SIG_DFL)
    gc.set_threshold(LIVING)
    threading.Thread(target=_go_with_parent, daemon=True).start()


def _go_with_parent() -> None:
    parent = parent_process()
    if parent is not None:
        parent.join()
        os._exit(1)


def map_slices(
    pieces: Iterable[_T], work: Callable[[_T], _R], executor: Executor, workers: int, lost: Callable[[], None]
) -> Iterator[_R]:
    """What comes of each piece, in order. Only so many are under way as keep the workers busy.

    The system may end a worker that takes too much memory: then ``lost`` is told, and its work is done in this process.
    """
    under_way: deque[tuple[_T, Future[_R]]] = deque()
    most = 0 if isinstance(executor, InlineExecutor) else _AHEAD * workers
    for piece in pieces:
        under_way.append((piece, _submitted(executor, work, piece)))
        if len(under_way) > most:
            yield _result(*under_way.popleft(), work, lost)
    while under_way:
        yield _result(*under_way.popleft(), work, lost)


def _submitted(executor: Executor, work: Callable[[_T], _R], piece: _T) -> Future[_R]:
    try:
        return executor.submit(work, piece)
    except BrokenExecutor as reason:
        broken: Future[_R] = Future()
        broken.set_exception(reason)
        return broken


def _result(piece: _T, future: Future[_R], work: Callable[[_T], _R], lost: Callable[[], None]) -> _R:
    try:
        return future.result()
    except BrokenExecutor:
        lost()
        return work(piece)
