"""Loads, dowels and packs of some hundred jobs come out as a plain calculation in exact fractions has them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cache
from math import isclose
from random import Random

import pytest

import reference_haul as plain
from books import intake_from, line
from calc.intake.read_run import has_error
from calc.model.evaluate import evaluate
from calc.model.results import JobValues, each_job
from calc.trade.levels import EDGE
from random_jobs import company_tables, drawn_job, random_company, week_tables

HOUSES, JOBS_OF_A_HOUSE, SEED = 12, 27, 4173
known = cache(line)
"""A declaration by its id."""


@dataclass(frozen=True)
class Drawn:
    """A job that was drawn, and what the program makes of it."""

    company: plain.CompanyBook
    job: plain.Job
    values: JobValues = field(repr=False)

    def number(self, name: str, row: int = 0) -> float:
        """What the program gives for a line."""
        return float(self.values.of(known(name), row))

    def rows(self, name: str) -> list[float]:
        """What the program gives for a line by edge."""
        return [self.number(name, row) for row in range(self.values.count(EDGE))]


@pytest.fixture(scope="module")
def drawn(tmp_path_factory: pytest.TempPathFactory) -> list[Drawn]:
    """All jobs, each under the company book that it was drawn with, evaluated in one go."""
    chance = Random(SEED)
    given: list[tuple[plain.CompanyBook, plain.Job]] = []
    inputs = []
    for _ in range(HOUSES):
        company = random_company(chance)
        jobs = [(f"job {number}", drawn_job(chance, company)) for number in range(JOBS_OF_A_HOUSE)]
        intake = intake_from(tmp_path_factory.mktemp("house"), week_tables(jobs), company_tables(company))
        assert not [each for each in intake.jobs if has_error(each, intake.findings)], intake.findings
        inputs += intake.jobs
        given += [(company, job) for _, job in jobs]
    values = each_job(evaluate(inputs), inputs)
    return [Drawn(company, job, each) for (company, job), each in zip(given, values, strict=True)]


def same(got: float, want: Fraction | int) -> bool:
    """Whether a number is wrong in its last digits only."""
    return isclose(got, want, rel_tol=1e-9, abs_tol=1e-9)


def all_same(got: Sequence[float], want: Iterable[Fraction | int]) -> bool:
    """The same, number by number."""
    return all(same(*pair) for pair in zip(got, want, strict=True))


def test_no_pile_is_loaded_otherwise_than_room_and_weight_ask(drawn: list[Drawn]) -> None:
    for each in drawn:
        for row, pile in enumerate(plain.piles(each.job)):
            by_room, by_weight = plain.loads(pile, each.job.vehicle)
            loads = max(by_room, by_weight)
            assert same(each.number("Pile.loose", row), pile.loose)
            assert same(each.number("Pile.tons", row), pile.tons)
            assert each.number("Hauled.by_volume", row) == by_room
            assert each.number("Hauled.by_weight", row) == by_weight
            assert each.number("Hauled.loads", row) == loads
            governs = "no load" if not loads else "weight" if by_weight > by_room else "volume"
            assert each.values.of(known("Hauled.limited_by"), row) == governs


def test_no_box_is_filled_beyond_what_it_may_carry(drawn: list[Drawn]) -> None:
    for each in drawn:
        vehicle = each.job.vehicle
        for row, pile in enumerate(plain.piles(each.job)):
            fill = plain.fill_line(pile, vehicle)
            assert same(each.number("Hauled.fill_limit", row), fill)
            inches = fill * 27 * 12 / (vehicle.bed[0] * vehicle.bed[1]) if vehicle.bed else Fraction(0)
            assert same(each.number("Hauled.fill_height", row), inches)


def test_no_edge_gets_a_dowel_too_many_or_too_few(drawn: list[Drawn]) -> None:
    for each in drawn:
        edges = each.job.edges
        assert each.rows("DoweledEdge.per_piece") == [plain.on_one_piece(edge) for edge in edges]
        assert each.rows("DoweledEdge.dowels") == [plain.dowels(edge, each.job) for edge in edges]
        assert all_same(each.rows("DoweledEdge.spacing_as_laid_out"), map(plain.real_spacing, edges))
        assert all_same(each.rows("DoweledEdge.dowel_length"), [edge.embed + edge.projection for edge in edges])
        spaced = zip(edges, each.rows("DoweledEdge.spacing_as_laid_out"), strict=True)
        assert not [edge for edge, real in spaced if edge.spacing and real > float(edge.spacing) + 1e-6]


def test_every_length_of_dowel_is_cut_from_bars_of_its_own(drawn: list[Drawn]) -> None:
    for each in drawn:
        cut = plain.cutting_list(each.job, each.company)
        assert sum(each.rows("CuttingList.dowels_to_cut")) == sum(pieces for pieces, _ in cut.values())
        assert sum(each.rows("CuttingList.bars")) == sum(bars for _, bars in cut.values())
        kinds = [(edge.embed + edge.projection, edge.bar) for edge in each.job.edges]
        firsts = [kinds.index(kind) == row for row, kind in enumerate(kinds)]
        assert each.rows("CuttingList.is_first") == firsts
        assert each.rows("CuttingList.bars") == [
            cut[kind][1] * first for kind, first in zip(kinds, firsts, strict=True)
        ]


def test_bits_and_epoxy_go_by_the_holes(drawn: list[Drawn]) -> None:
    for each in drawn:
        job, company = each.job, each.company
        holes = sum(plain.dowels(edge, job) for edge in job.edges)
        glued = [edge for edge in job.edges if plain.glued(edge)]
        assert each.number("DowelNeeds.bits") == plain.up(holes / company.holes_a_bit)
        tubes = plain.up(sum(plain.dowels(edge, job) for edge in glued) / company.dowels_a_tube)
        assert each.number("DowelNeeds.cartridges") == tubes
        epoxy = sum((plain.ring(edge) * plain.dowels(edge, job) for edge in glued), Fraction(0))
        assert same(sum(each.rows("DoweledEdge.epoxy_volume")), epoxy)


@pytest.mark.parametrize("liquid", ["Bonding", "Curing", "Sealing"])
def test_the_packs_bought_are_the_cheapest_that_hold_the_need(liquid: str, drawn: list[Drawn]) -> None:
    need_line = {"Sealing": "Sealer.need"}.get(liquid, f"{liquid}.need")
    for each in drawn:
        small, large = each.company.packs[liquid]
        need = plain.needs(each.job, each.company)[liquid]
        ways = plain.candidates(need, small, large)
        assert same(each.number(need_line), need)
        assert each.number(f"{liquid}Choice.known") == len(ways)
        if not ways:
            continue
        bought = plain.cheapest(ways, small, large)
        chosen = each.number(f"{liquid}Choice.small_packs"), each.number(f"{liquid}Choice.large_packs")
        assert chosen == bought
        assert same(each.number(f"{liquid}Choice.cost"), plain.cost(bought, small, large))
        best = min(plain.cost(way, small, large) for way in plain.every_way(need, small, large))
        assert plain.cost(bought, small, large) >= best
        if len(ways) == 1 or plain.is_true_optimum(small, large):
            assert plain.cost(bought, small, large) == best


LIMITS_MET = (
    *("no pile", "whole loads by room", "whole loads by weight", "room and weight alike", "weight decides"),
    *("whole spaces", "just two dowels", "just one dowel", "two lengths of dowel"),
    *("no way to buy", "whole packs", "equal cost of other packs", "cheaper than the three ways"),
)
"""What must be met by some of the drawn jobs, or a comparison that is off by one has nothing to show itself in."""


def haul_limits(job: plain.Job) -> Iterator[str]:
    """The limits of loads that a job meets exactly."""
    box, payload = job.vehicle.box, job.vehicle.payload
    for pile in plain.piles(job):
        by_room, by_weight = plain.loads(pile, job.vehicle)
        yield from ["no pile"] * (not pile.tons)
        yield from ["whole loads by room"] * bool(by_room and box and pile.loose == by_room * box * job.vehicle.heap)
        yield from ["whole loads by weight"] * bool(
            by_weight and payload and pile.tons == by_weight * payload * plain.PLANNED
        )
        yield from ["room and weight alike"] * (by_room == by_weight > 0)
        yield from ["weight decides"] * (by_weight > by_room > 0)


def dowel_limits(company: plain.CompanyBook, job: plain.Job) -> Iterator[str]:
    """The limits of dowels that a job meets exactly."""
    for edge in job.edges:
        if edge.spacing is not None:
            usable = edge.length - 2 * edge.clearance / 12
            yield from ["whole spaces"] * (usable > 0 and (usable * 12 / edge.spacing).denominator == 1)
            yield from ["just two dowels"] * (usable == Fraction(1, 2))
            yield from ["just one dowel"] * (edge.length == 1)
    lengths = {length for (length, _), (pieces, _) in plain.cutting_list(job, company).items() if pieces}
    yield from ["two lengths of dowel"] * (len(lengths) > 1)


def pack_limits(company: plain.CompanyBook, job: plain.Job) -> Iterator[str]:
    """The limits of packs that a job meets exactly."""
    for liquid, (small, large) in company.packs.items():
        need = plain.needs(job, company)[liquid]
        ways = set(plain.candidates(need, small, large))
        yield from ["no way to buy"] * (not ways)
        if not ways or not need:
            continue
        yield from ["whole packs"] * bool(large.known and large.holds and (need / large.holds).denominator == 1)
        costs = sorted(plain.cost(way, small, large) for way in ways)
        yield from ["equal cost of other packs"] * (costs[:1] == costs[1:2])
        best = min(plain.cost(way, small, large) for way in plain.every_way(need, small, large))
        yield from ["cheaper than the three ways"] * (best < costs[0])


def test_the_drawn_jobs_meet_every_limit_exactly(drawn: list[Drawn]) -> None:
    met: Counter[str] = Counter()
    for each in drawn:
        met.update(
            [*haul_limits(each.job), *dowel_limits(each.company, each.job), *pack_limits(each.company, each.job)]
        )
    assert len(drawn) >= 300
    assert {limit: met[limit] for limit in LIMITS_MET if met[limit] < 5} == {}
