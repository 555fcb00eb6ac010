"""Joints of some hundred areas come out as an independent engine lays them out, joint by joint."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import cache, cached_property
from math import isclose
from random import Random

import pytest

from books import COMPANY, intake_from, line
from calc.intake.read_run import has_error
from calc.model.evaluate import evaluate
from calc.model.results import JobValues, each_job
from calc.trade.levels import AREA, JOINT
from random_joints import OTHER_HOUSE, drawn_area, factor_table, tables
from reference_engine.factors import Factors
from reference_engine.facts import Area
from reference_engine.joints import JointPlan, joint_plan, old_joints_inside

JOBS, AREAS_OF_A_JOB, SEED = 50, 5, 6120
known = cache(line)
"""A declaration by its id."""


@dataclass(frozen=True)
class Drawn:
    """An area that was drawn, its house, and what the program makes of it."""

    factors: Factors
    area: Area
    row: int
    values: JobValues = field(repr=False)

    def number(self, name: str) -> float:
        """What the program gives for a line of the area."""
        return float(self.values.of(known(name), self.row))

    def slots(self, name: str) -> list[object]:
        """What the program gives for a line of the joint list, for the joints in use."""
        room = self.values.count(JOINT) // self.values.count(AREA)
        used = int(self.number("MatchedJoints.joints"))
        assert used <= room
        return [self.values.of(known(name), self.row * room + each) for each in range(used)]

    @cached_property
    def plan(self) -> JointPlan | None:
        """The engine's joints."""
        return joint_plan(self.area, self.factors)


@pytest.fixture(scope="module")
def drawn(tmp_path_factory: pytest.TempPathFactory) -> list[Drawn]:
    """All areas, half of them under a house with its own factors, evaluated in one go."""
    chance = Random(SEED)
    given: list[tuple[Factors, list[Area]]] = []
    inputs = []
    for factors in (Factors(), OTHER_HOUSE):
        jobs = [[drawn_area(chance, f"A{n}") for n in range(1, AREAS_OF_A_JOB + 1)] for _ in range(JOBS)]
        company = COMPANY | {"Factors": factor_table(factors)}
        intake = intake_from(tmp_path_factory.mktemp("house"), tables(jobs), company)
        assert not [each for each in intake.jobs if has_error(each, intake.findings)], intake.findings
        inputs += intake.jobs
        given += [(factors, job) for job in jobs]
    every = zip(given, each_job(evaluate(inputs), inputs), strict=True)
    return [Drawn(factors, area, row, values) for (factors, job), values in every for row, area in enumerate(job)]


def laid_out(drawn: list[Drawn]) -> Iterator[tuple[Drawn, JointPlan]]:
    """The areas whose length and width are known, with the engine's joints."""
    for each in drawn:
        if each.plan is not None:
            yield each, each.plan


def same(got: float, want: float) -> bool:
    """Whether a number is wrong in its last digits only."""
    return isclose(got, want, rel_tol=1e-9, abs_tol=1e-9)


def test_no_panel_is_laid_out_along_the_wrong_side(drawn: list[Drawn]) -> None:
    for each, plan in laid_out(drawn):
        assert same(each.number("Panel.run"), plan.run), each.area
        assert same(each.number("Panel.width"), plan.width), each.area
        assert same(each.number("Panel.limit"), plan.limit), each.area


def test_no_joint_is_missing_or_too_many_either_way(drawn: list[Drawn]) -> None:
    for each, plan in laid_out(drawn):
        assert each.number("Panel.joints_along") == plan.along, each.area
        assert each.number("MatchedJoints.joints") == plan.across, each.area
        assert same(each.number("Panel.panel_width"), plan.panel_width), each.area
        assert same(each.number("Panel.spacing"), plan.spacing), each.area


def test_every_joint_stands_where_the_engine_has_it(drawn: list[Drawn]) -> None:
    for each, plan in laid_out(drawn):
        places = [float(str(place)) for place in each.slots("JointPlace.place")]
        assert all(same(*pair) for pair in zip(places, plan.positions, strict=True)), each.area


def test_no_old_joint_inside_the_slab_is_lost_or_moved(drawn: list[Drawn]) -> None:
    for each, plan in laid_out(drawn):
        if each.area.forced_cross_joints is None:
            why = zip(each.slots("JointPlace.why"), each.slots("JointPlace.place"), strict=True)
            met = [float(str(place)) for reason, place in why if reason == "old joint"]
            inside = old_joints_inside(each.area, plan.run)
            assert all(same(*pair) for pair in zip(met, inside, strict=True)), each.area


def test_the_longest_panel_and_the_feet_of_joint_are_those_of_the_layout(drawn: list[Drawn]) -> None:
    for each, plan in laid_out(drawn):
        assert same(each.number("JointLayout.longest_panel"), plan.longest_panel), each.area
        assert same(each.number("MatchedJoints.length"), plan.feet * each.area.copies), each.area


def test_an_area_whose_layout_is_not_known_gets_no_joints(drawn: list[Drawn]) -> None:
    unknown = [each for each in drawn if each.plan is None]
    assert unknown
    for each in unknown:
        assert each.number("Panel.known") == 0
        assert each.number("MatchedJoints.joints") == each.number("Panel.joints_along") == 0


LIMITS_MET = (
    *(
        "old joint at the end",
        "old joint outside",
        "old joints that keep their places",
        "joints added between old ones",
    ),
    *("old joints and a forced count", "forced along", "joints along", "a panel width that is narrower"),
    *("a panel width that is hardly narrower", "a length near no side", "a length near the short side", "taper"),
    *("a run along the second side", "no side known", "stations from past the zero of the tape"),
)
"""What must be met by some of the drawn areas, or a comparison that is off by one has nothing to show itself in."""


def old_joint_limits(each: Drawn, plan: JointPlan) -> Iterator[str]:
    """The limits of old joints that an area meets."""
    inside = old_joints_inside(each.area, plan.run)
    begin = each.area.shape.stations[0].at if each.area.shape.stations else 0.0
    yield from ["old joint at the end"] * any(same(old - begin, plan.run) for old in each.area.old_joints)
    yield from ["old joint outside"] * any(old - begin > plan.run + 1 for old in each.area.old_joints)
    if each.area.forced_cross_joints is not None:
        yield from ["old joints and a forced count"] * bool(inside)
        return
    yield from ["old joints that keep their places"] * (0 < len(inside) == plan.across)
    yield from ["joints added between old ones"] * (0 < len(inside) < plan.across)
    yield from ["stations from past the zero of the tape"] * (bool(inside) and begin > 0)


def layout_limits(each: Drawn, plan: JointPlan) -> Iterator[str]:
    """The limits of length and width that an area meets."""
    area = each.area
    yield from ["forced along"] * (area.forced_long_joints is not None)
    yield from ["joints along"] * (area.forced_long_joints is None and plan.along > 0)
    if area.panel_width is not None and area.shape.kind not in ("circle", "area given"):
        narrower = plan.width / area.panel_width
        yield from ["a panel width that is narrower"] * (narrower > 1.2)
        yield from ["a panel width that is hardly narrower"] * (1 < narrower < 1.12)
    yield from ["a length near no side"] * plan.asked
    yield from ["a length near the short side"] * (plan.width > plan.run)
    yield from ["taper"] * (area.edge_1 is not None)
    yield from ["a run along the second side"] * (area.run is None and area.shape.length == plan.width < plan.run)


def test_the_drawn_areas_meet_every_limit(drawn: list[Drawn]) -> None:
    met: Counter[str] = Counter()
    for each in drawn:
        met.update(["no side known"] if each.plan is None else old_joint_limits(each, each.plan))
        met.update([] if each.plan is None else layout_limits(each, each.plan))
    assert len(drawn) >= 300
    assert {limit: met[limit] for limit in LIMITS_MET if met[limit] < 3} == {}
