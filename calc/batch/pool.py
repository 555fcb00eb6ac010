"""Executors: this process or several, and a bounded queue of slices so that memory use does not grow."""

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

MIN_WORKBOOKS = 12
"""The fewest workbooks for which worker processes are started: starting one takes as long as writing a few."""

GC_THRESHOLD = 20_000
"""New objects between garbage collections: nearly all objects of a job live until its workbook is written, and the
default of 700 costs a twentieth of the time."""

_MAX_PROCESSES = 61
"""The most processes that a pool can have on every system."""

_QUEUED_PER_WORKER = 2
"""Slices that are submitted for each worker, so that none is idle."""

_T = TypeVar("_T")
_R = TypeVar("_R")


class InlineExecutor(Executor):
    """An executor that runs each call at once in this process."""

    def submit(self, fn: Callable[..., Any], /, *args: Any, **kwargs: Any) -> Future[Any]:
        """Runs the call and returns its result as a future that is done."""
        future: Future[Any] = Future()
        try:
            future.set_result(fn(*args, **kwargs))
        except Exception as reason:
            future.set_exception(reason)
        return future


def core_count() -> int:
    """The number of cores that this process may use."""
    count = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count()
    return max(1, count or 1)


def worker_count(workbooks: int, workers: int | None) -> int:
    """The number of processes to use for so many workbooks, at most ``workers``; 1 is this process."""
    allowed = min(workers or core_count(), _MAX_PROCESSES)
    return 1 if workbooks < MIN_WORKBOOKS else max(1, min(allowed, workbooks))


def make_executor(workers: int) -> Executor:
    """An executor with so many processes, or this one. Processes are spawned, not forked, on every system."""
    if workers == 1:
        return InlineExecutor()
    return ProcessPoolExecutor(workers, mp_context=get_context("spawn"), initializer=_initialize_worker)


def _initialize_worker() -> None:
    """Makes a worker end with the run: on Ctrl-C, and when its parent process is gone."""
    signal.signal(signal.SIGINT, signal.SIG_DFL)
    gc.set_threshold(GC_THRESHOLD)
    threading.Thread(target=_exit_with_parent, daemon=True).start()


def _exit_with_parent() -> None:
    parent = parent_process()
    if parent is not None:
        parent.join()
        os._exit(1)


def map_slices(
    slices: Iterable[_T], work: Callable[[_T], _R], executor: Executor, workers: int, on_lost: Callable[[], None]
) -> Iterator[_R]:
    """The result of each slice, in order; only a few slices per worker are submitted at a time.

    The system may end a worker that takes too much memory: then ``on_lost`` is called, and its slice is done in this
    process.
    """
    pending: deque[tuple[_T, Future[_R]]] = deque()
    limit = 0 if isinstance(executor, InlineExecutor) else _QUEUED_PER_WORKER * workers
    for each in slices:
        pending.append((each, _submit(executor, work, each)))
        if len(pending) > limit:
            yield _result(*pending.popleft(), work, on_lost)
    while pending:
        yield _result(*pending.popleft(), work, on_lost)


def _submit(executor: Executor, work: Callable[[_T], _R], each: _T) -> Future[_R]:
    try:
        return executor.submit(work, each)
    except BrokenExecutor as reason:
        broken: Future[_R] = Future()
        broken.set_exception(reason)
        return broken


def _result(each: _T, future: Future[_R], work: Callable[[_T], _R], on_lost: Callable[[], None]) -> _R:
    try:
        return future.result()
    except BrokenExecutor:
        on_lost()
        return work(each)
