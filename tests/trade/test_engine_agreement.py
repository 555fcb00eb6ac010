"""Three hundred drawn jobs come out as the engine has them: takeoff, joints, hauling, order, visits, and every cent."""

from __future__ import annotations

import pytest

from engine_agreement import Compared, close, compared
from engine_jobs import random_jobs

pytestmark = pytest.mark.slow
JOBS, SEED, SHOWN = 330, 7, 20


@pytest.fixture(scope="module")
def numbers() -> list[Compared]:
    """Every number of every job, ours and the engine's."""
    return list(compared(random_jobs(JOBS, SEED)))


def test_no_drawn_job_comes_out_otherwise_than_the_engine_has_it(numbers: list[Compared]) -> None:
    wrong = [each for each in numbers if not close(*each[1:])]
    shown = [
        f"seed {SEED} {job:8} {name:28} ours {ours!s:>14} engine {theirs!s:>14}" for job, name, ours, theirs in wrong
    ]
    assert not wrong, f"{len(wrong)} differ\n" + "\n".join(shown[:SHOWN])


def test_enough_jobs_are_compared_in_enough_numbers(numbers: list[Compared]) -> None:
    assert len({job for job, *_ in numbers}) >= 300
    assert len({name for _, name, *_ in numbers}) >= 150
