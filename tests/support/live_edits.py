"""Values that a person may type over: what to type in the input book, and what to type in the written workbook.

They are found from the declarations: every column, every word of every choice, every factor of every kind, every
price, every line that may be forced. For each there are several ways, and the first that moves a number is taken.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date
from itertools import islice
from math import isnan

from calc.batch import evaluated
from calc.declared import Account, Declared, Factor, Input, Kind, Line, Override, Pack, Price, PriceDay, Taxed
from calc.errors import Severity
from calc.formula.functions import NONE
from calc.formula.levels import JOB, Level
from calc.intake.cross_checks import cross_checks
from calc.intake.records import NOT_GIVEN, Entry, JobInput
from calc.intake.schema import ACKNOWLEDGEABLE, FACTOR_LIST, INPUTS, OVERRIDABLE, PRICE_LIST, everything
from calc.intake.values import serial
from calc.model.results import JobValues
from calc.trade.levels import AREA
from live_context import beside
from whole_job import sample

DAY, LONG_AGO = date(2026, 5, 4), date(2026, 2, 2)
WAYS = 12
"""Ways of moving a number that are tried for one column before it is taken for still."""


@dataclass(frozen=True)
class Edit:
    """One value typed over, in one row of a declaration; ``typed`` is None where the input cell is cleared."""

    named: Declared
    index: int
    typed: object
    shown: float | str

    def __str__(self) -> str:
        return f"{self.named.id}[{self.index}] = {self.shown}"


Way = tuple[Edit, ...]
"""An edit, and others that are made with it so that it matters."""


@dataclass(frozen=True)
class Wish:
    """A value that is to be typed over once, and the ways of doing so."""

    named: Declared
    what: str
    ways: tuple[Way, ...]


LINES = tuple((each, each.level) for each in everything() if isinstance(each, Line))[::-1]
"""From the last to the first: most inputs move the price or a paper, which are worked out at the end."""
BY_ID = {each.id: each for each in everything()}


def wishes(job: JobValues) -> list[Wish]:
    """Everything that is to be typed over in the workbook of ``job``."""
    found = [
        *(wish for given in INPUTS for wish in _of_given(given, job)),
        *(wish for factor in FACTOR_LIST for wish in _of_factor(factor, job)),
        *(wish for price in PRICE_LIST for wish in _of_price(price, job)),
        *(wish for at in _a_few(len(PRICE_LIST)) for wish in _of_price_row(PRICE_LIST[at], job)),
        *(_of_force(line, job) for line in OVERRIDABLE.values()),
        *(_of_stop(label, job) for label in ACKNOWLEDGEABLE),
    ]
    return [wish for wish in found if wish.ways]


def let_go(job: JobValues) -> list[Edit]:
    """Every forced line and every accepted stop of ``job``, let go again."""
    return [Edit(override, index, None, NONE) for override, index in job.job.overrides]


def chosen(job: JobValues, wanted: Sequence[Wish]) -> tuple[list[Way], list[Wish]]:
    """For each wish the first way that moves a number, and the wishes that move none (their first way is taken)."""
    taken: dict[Wish, Way] = {}
    for turn in range(max(len(wish.ways) for wish in wanted)):
        tried = [wish for wish in wanted if wish not in taken and turn < len(wish.ways)]
        ways = [wish.ways[turn] for wish in tried]
        made = with_each(job.job, [*ways, *(way[1:] for way in ways if way[1:])])
        without = iter(made[len(ways) :])
        for wish, way, moved in zip(tried, ways, made, strict=False):
            if moves_a_number(next(without) if way[1:] else job, moved):
                taken[wish] = way
    return [taken.get(wish, wish.ways[0]) for wish in wanted], [wish for wish in wanted if wish not in taken]


def with_each(job: JobInput, ways: Sequence[Iterable[Edit]]) -> list[JobValues]:
    """The values of a job with each of several sets of edits."""
    return list(evaluated([edited(job, edits) for edits in ways]))


def moves_a_number(one: JobValues, another: JobValues) -> bool:
    """Whether any line differs between two jobs of one shape, or one needs more slots than the other."""
    if one.counts != another.counts:
        return True
    parts = {level: (_part(one, level), _part(another, level)) for level in one.counts}
    mine, theirs = one.frame.columns, another.frame.columns
    return any(mine[line][parts[level][0]].tolist() != theirs[line][parts[level][1]].tolist() for line, level in LINES)


def _part(job: JobValues, level: Level) -> slice:
    """The rows of a job among those of all jobs evaluated with it."""
    return slice(job.starts[level], job.starts[level] + job.counts[level])


def edited(job: JobInput, edits: Iterable[Edit]) -> JobInput:
    """A copy of a job with other values in it."""
    kept = job.company
    company = replace(
        kept,
        factors=dict(kept.factors),
        prices=dict(kept.prices),
        taxed=dict(kept.taxed),
        accounts=dict(kept.accounts),
        days=dict(kept.days),
    )
    copy = replace(job, company=company, entries=dict(job.entries), rows=dict(job.rows), overrides=dict(job.overrides))
    for edit in edits:
        _put(copy, edit, Entry(NOT_GIVEN if edit.shown == NONE and _is_number(edit.named) else edit.shown))
    return copy


def _put(job: JobInput, edit: Edit, entry: Entry) -> None:
    match edit.named:
        case Factor() as factor:
            job.company.factors[factor, edit.index] = entry
        case Price() | Pack() as price:
            job.company.prices[price] = entry
        case Taxed() as taxed:
            job.company.taxed[taxed] = str(entry.value)
        case Account() as account:
            job.company.accounts[account] = str(entry.value)
        case PriceDay() as day:
            job.company.days[day] = float(entry.value)
        case Override() as override:
            job.overrides[override, edit.index] = entry
        case Input() as given if given.level == JOB:
            job.entries[given] = entry
        case Input() as given:
            rows = list(job.rows[given.level])
            rows[edit.index] = replace(rows[edit.index], entries={**rows[edit.index].entries, given: entry})
            job.rows[given.level] = rows


def _is_number(named: Declared) -> bool:
    return not (isinstance(named, Input) and named.kind in (Kind.TEXT, Kind.CHOICE))


def complete(job: JobInput) -> bool:
    """Whether everything that is needed, for the words that were chosen, is there and can be meant."""
    for given in INPUTS:
        if given.needed_if is None:
            continue
        asker, *words = given.needed_if
        assert isinstance(asker, Input)
        for row in job.rows.get(given.level, []) if given.level != JOB else [None]:
            entries = job.entries if row is None else row.entries
            if asker not in entries and row is not None:
                asked = job.rows[AREA][row.within].entries[asker].value
            else:
                asked = entries[asker].value
            if asked in words and _is_blank(entries[given].value):
                return False
    return not any(each.severity is Severity.ERROR for each in cross_checks(job))


def _is_blank(value: float | str) -> bool:
    return value == NONE if isinstance(value, str) else isnan(value)


def rows_to_edit(given: Input, job: JobInput) -> list[tuple[int, Entry]]:
    """The rows in which a value of ``given`` stands or may be typed, those where it was typed first."""
    if given.level == JOB:
        return [(0, job.entries[given])]
    rows = [
        (index, row.entries[given])
        for index, row in enumerate(job.rows.get(given.level, []))
        if "!" in row.entries[given].origin or row.place.sheet == given.section.table
    ]
    return sorted(rows, key=lambda each: ("!" not in each[1].origin, each[1].value in (0, given.default), each[0]))


def _of_given(given: Input, job: JobValues) -> Iterator[Wish]:
    rows = rows_to_edit(given, job.job)
    if given.kind is Kind.CHOICE:
        for word in given.words_allowed:
            yield _wish(given, word, (Edit(given, at, word, word) for at, entry in rows if entry.value != word), job)
        return
    yield _wish(given, "another", (each for at, entry in rows for each in _others(given, at, entry, job.job)), job)
    if given.kind in (Kind.NUMBER, Kind.TEXT) and given.optional:
        clear = (Edit(given, at, None, NONE) for at, entry in rows if not _is_blank(entry.value))
        yield _wish(given, "cleared", clear, job)


def _wish(named: Declared, what: str, edits: Iterable[Edit], job: JobValues, *more: Edit) -> Wish:
    """The ways of a wish that leave the job complete: each edit, with what has to stand beside it."""
    companions = (*more, *_companions(named, what, job))
    ways = ((edit, *companions) for edit in edits)
    return Wish(named, what, tuple(islice((way for way in ways if complete(edited(job.job, way))), WAYS)))


def _companions(named: Declared, what: str, job: JobValues) -> list[Edit]:
    wanted = beside(f"{named.id}:{what}") or beside(named.id)
    return [
        Edit(BY_ID[id_], at, typed, _shown(typed))
        for id_, typed in wanted.items()
        for at in range(job.count(BY_ID[id_].level))
    ]


def _shown(typed: object) -> float | str:
    return float(typed) if isinstance(typed, int | float) else NONE if typed is None else str(typed)


def _a_few(count: int) -> Sequence[int]:
    """Three places among many of one kind: the first, the middle one and the last."""
    return range(count) if count <= 3 else (0, count // 2, count - 1)


def _others(given: Input, at: int, entry: Entry, job: JobInput) -> Iterator[Edit]:
    """Other values for a cell. A day is typed as words and shown as a number; so is the name of a row."""
    match given.kind:
        case Kind.TEXT:
            yield Edit(given, at, "other words", "other words")
        case Kind.DATE:
            yield Edit(given, at, DAY.isoformat(), serial(DAY))
        case Kind.ROW:
            assert given.rows is not None
            for number, row in enumerate(job.rows.get(given.rows, []), start=1):
                if number != entry.value:
                    yield Edit(given, at, row.word, float(number))
        case _:
            base = float(entry.value) if not _is_blank(entry.value) else float(str(sample(given)))
            for value in _near(base, given.whole):
                if _within(given, value) and value != entry.value:
                    yield Edit(given, at, value, value)


def _near(value: float, whole: bool = False) -> tuple[float, ...]:
    """Other numbers of the size of ``value``, exact in a few decimal places."""
    if whole:
        return (value + 1, value - 1, value + 3)
    if value == 0:
        return (2.0, 0.5, 20.0, 0.005)
    return tuple(float(f"{value * times:.6g}") for times in (1.25, 0.75, 2, 0.4, 3.5, 0.2, 20))


def _within(given: Input, value: float) -> bool:
    """Whether a number keeps the hard limits of its column."""
    return (
        (given.low is None or value >= given.low)
        and (given.high is None or value <= given.high)
        and (given.over is None or value > given.over)
        and (given.signed or value >= 0)
    )


def _of_factor(factor: Factor, job: JobValues) -> Iterator[Wish]:
    """A few kinds of a factor, each with the choice that asks for that kind if the job chose another."""
    words = factor.level.axis.words if factor.level.axes else ("",)
    for index in _a_few(len(words)):
        word = words[index]
        asked = [
            Edit(given, 0, word, word)
            for given in INPUTS
            if word in given.words_allowed and given.level == JOB and job.of(given) != word
        ]
        tries = [Edit(factor, index, value, value) for value in _near(float(job.of(factor, index)))]
        plain, chosen_too = _wish(factor, word, tries, job), _wish(factor, word, tries, job, *asked)
        yield replace(plain, ways=(*plain.ways, *chosen_too.ways) if asked else plain.ways)


def _of_price(price: Price, job: JobValues) -> Iterator[Wish]:
    for amount in (price, price.pack):
        if amount is not None and not _is_blank(job.of(amount)):
            tries = (Edit(amount, 0, value, value) for value in _near(float(job.of(amount))))
            yield _wish(amount, "another", tries, job)
            if amount is price:  # a price without its size is refused
                yield _wish(amount, "cleared", [Edit(amount, 0, None, NONE)], job)


def _of_price_row(price: Price, job: JobValues) -> Iterator[Wish]:
    """What the company book says beside a price: whether it is taxed, its day, its last day."""
    other = "no" if job.of(price.taxed) == "yes" else "yes"
    yield _wish(price.taxed, other, [Edit(price.taxed, 0, other, other)], job)
    yield _wish(price.account, "5199", [Edit(price.account, 0, "5199", "5199")], job)
    for day in (price.dated, price.valid):
        yield _wish(day, "another", [Edit(day, 0, LONG_AGO.isoformat(), serial(LONG_AGO))], job)
        if not _is_blank(job.of(day)):
            yield _wish(day, "cleared", [Edit(day, 0, None, NONE)], job)


def _of_force(line: Line, job: JobValues) -> Wish:
    """A line forced to some more than it is, in a row where it is not forced yet if there is one."""
    override = line.override
    assert override is not None
    rows = sorted(range(job.count(line.level)), key=lambda at: not _is_blank(job.of(override, at)))
    more = ((at, float(round(float(job.of(line, at)) * 1.3 + 2))) for at in rows)
    return _wish(override, "override", (Edit(override, at, value, value) for at, value in more), job)


def _of_stop(label: str, job: JobValues) -> Wish:
    """A stop accepted."""
    stop = ACKNOWLEDGEABLE[label]
    assert stop.acknowledged is not None
    return _wish(stop.acknowledged, "acknowledged", [Edit(stop.acknowledged, 0, "acknowledged", 1.0)], job)
