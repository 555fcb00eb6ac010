"""Three hundred drawn jobs come out as the engine has them, in whatever no coming rule changes."""

from __future__ import annotations

import pytest

from engine_agreement import Compared, agree, compared
from engine_jobs import random_jobs

pytestmark = pytest.mark.slow
JOBS, SEED, SHOWN = 300, 7, 20
SETTLED = (
    "is not held back", "slab_area", "net_yards", "green_loose", "green_tons", "form_feet", "stakes", "dowels",
    "drill_bits", "epoxy_tubes", "hours_layout", "hours_cut_brush", "hours_grub", "hours_set_forms", "hours_dowels",
    "hours_isolation", "hours_cure", "hours_seal",
)  # fmt: skip
"""What both have alike; a name joins when its rule stands in the program."""


@pytest.fixture(scope="module")
def numbers(tmp_path_factory: pytest.TempPathFactory) -> list[Compared]:
    """Every number of every job, ours and the engine's."""
    return list(compared(random_jobs(JOBS, SEED), tmp_path_factory.mktemp("drawn")))


@pytest.mark.parametrize("name", SETTLED)
def test_a_drawn_job_comes_out_as_the_engine_has_it(numbers: list[Compared], name: str) -> None:
    wrong = [each for each in numbers if each[1] == name and not agree(*each[2:])]
    shown = [f"seed {SEED} {job:8} {name:20} ours {ours:12.4f} engine {theirs:12.4f}" for job, _, ours, theirs in wrong]
    assert not wrong, f"{len(wrong)} differ\n" + "\n".join(shown[:SHOWN])
