"""Visits and paid time: who is on the site how long, and what is paid beyond the tasks."""

import itertools
import math
from dataclasses import dataclass, field

from .facts import Factors, Job
from .labor import FINISHER_TASKS, Tasks
from .pay import job_rates
from .placing import Way
from .prep import prep_day, prep_people
from .rounding import at_most, less, millionths, up


@dataclass
class Prep:
    """Preparation: hours of one person, visits and people."""

    hours: float
    visits: int
    people: int


@dataclass
class Pour:
    """The pour visit: people, hours on the site, and whether bags share the preparation visit."""

    people: int
    placers: int
    finishers: int
    placer_time: float
    finisher_time: float
    saw_time: float
    window: float
    last_finish: float
    task_hours: float
    finishers_needed: int | None
    caution: bool
    shared: bool = False

    @property
    def longest(self) -> float:
        """Hours on the site of the person who stays longest."""
        return max(self.placer_time if self.placers else 0.0, self.finisher_time, self.saw_time)


def prep_of(job: Job, hours: float, visits: int, last_load_day: int) -> Prep:
    """Visits are those of the hours or of the hauling; with more days fewer people may do."""
    days = max(visits, last_load_day) if visits else 0
    return Prep(hours, days, prep_people(job, hours, days))


def finish_window(job: Job, with_additives: bool) -> float:
    """Hours from batching to the end of finishing, by concrete temperature; the table is held at its ends."""
    f = job.factors
    table = f.finish_window
    temperature = f.window_default_temperature if job.concrete_temperature is None else job.concrete_temperature
    hours = table[0][1] if temperature <= table[0][0] else table[-1][1]
    for (low, start), (high, end) in itertools.pairwise(table):
        if low <= temperature <= high:
            hours = start + (end - start) * (temperature - low) / (high - low)
    if with_additives and job.accelerator:
        hours *= f.accelerator_window
    if with_additives and job.retarder:
        hours += f.retarder_window
    return hours


def window_on_site(job: Job, way: Way) -> float:
    """The finish window less the truck's drive; bags have no drive and take no accelerator or retarder."""
    if way.method == "bags":
        return finish_window(job, False)
    return finish_window(job, True) - job.plant_drive / 60


def _pour_work(tasks: Tasks) -> float:
    """Hours of the pour that everybody shares: all but placing and sawing."""
    return math.fsum(h for name, h in tasks.pour.items() if name != "sawn_joints")


def _finishers(job: Job, placing: int, room: float, finish: float) -> int:
    """As many finishers as the window asks for, never more than typed or than the people there."""
    most = min(job.finishers, job.crew, placing + job.finishers)
    if millionths(room) <= 0:
        return most
    return max(1, min(most, up(finish / room)))


def _times(way: Way, tasks: Tasks, window: float, people: int) -> tuple[float, float]:
    """Hours on the site of a placer and of a finisher: everybody finishes, finishers stay out the window."""
    placer = way.elapsed + _pour_work(tasks) / people
    return placer, max(placer, window + tasks.pour["cure"] / people)


def _finish_from_last(way: Way, tasks: Tasks, finishers: int) -> float:
    """Hours from the last truck's arrival to the end of finishing its share."""
    share = way.trucks[-1] / way.order if way.trucks else 1.0
    return share * (way.elapsed + tasks.finish_and_tooled / finishers)


def _finishers_needed(job: Job, way: Way, tasks: Tasks, window: float, placing: int) -> int | None:
    """The least number of finishers that ends in the day and in the window; it may be more than the crew."""
    for count in range(1, 201):
        _, finisher = _times(way, tasks, window, placing + count)
        in_window = at_most(_finish_from_last(way, tasks, count), window)
        if at_most(finisher, job.factors.day_hours) and in_window:
            return count
    return None


def _saw_time(job: Job, tasks: Tasks, window: float) -> float:
    """When the finisher who saws the joints is done."""
    if millionths(tasks.saw_feet) == 0:
        return 0.0
    f = job.factors
    wait = f.saw_after_early if job.joints == "early entry" else f.saw_after
    return window + wait + tasks.pour["sawn_joints"]


def pour_of(job: Job, way: Way, tasks: Tasks, prep: Prep) -> Pour:
    """The pour visit of one way; bags share the one preparation visit when everything fits a stretched day."""
    placing = job.factors.bag_crew if way.method == "bags" else job.placers
    window = window_on_site(job, way)
    finishers = _finishers(job, placing, window - way.elapsed, tasks.finish_and_tooled)
    people = min(job.crew, placing + finishers)
    placer, finisher = _times(way, tasks, window, people)
    last = _finish_from_last(way, tasks, finishers)
    saw = _saw_time(job, tasks, window)
    pour = Pour(
        people=people,
        placers=people - finishers,
        finishers=finishers,
        placer_time=placer,
        finisher_time=finisher,
        saw_time=max(saw, finisher) if saw else 0.0,
        window=window,
        last_finish=last,
        task_hours=math.fsum(tasks.pour.values()) + way.task_hours,
        finishers_needed=_finishers_needed(job, way, tasks, window, placing),
        caution=not at_most(finisher, job.factors.day_hours) or not at_most(last, window),
    )
    return _share(job, way, prep, pour)


def _share(job: Job, way: Way, prep: Prep, pour: Pour) -> Pour:
    """Put a pour from bags into the preparation visit where the longest person still fits the day."""
    if way.method != "bags" or prep.visits != 1:
        return pour
    people = max(prep.people, pour.people)
    before = prep.hours / people
    if not at_most(before + pour.longest, prep_day(job.factors)):
        return pour
    pour.shared = True
    pour.people, pour.placers = people, people - pour.finishers
    pour.placer_time += before
    pour.finisher_time += before
    pour.saw_time += before if pour.saw_time else 0.0
    pour.task_hours += prep.hours
    return pour


@dataclass
class Paid:
    """Paid hours of one kind of visit, by rate, with the hours beyond tasks and beyond the day."""

    visits: int = 0
    clock_laborer: float = 0.0
    clock_finisher: float = 0.0
    task_hours: float = 0.0
    long_laborer: float = 0.0
    long_finisher: float = 0.0

    @property
    def clock(self) -> float:
        """All paid hours."""
        return self.clock_laborer + self.clock_finisher

    @property
    def beyond(self) -> float:
        """Paid hours beyond the tasks."""
        return max(0.0, self.clock - self.task_hours)

    def beyond_split(self) -> tuple[float, float]:
        """Hours beyond tasks of laborers and of finishers, in the ratio of their clock hours."""
        if self.clock == 0:
            return 0.0, 0.0
        return self.beyond * self.clock_laborer / self.clock, self.beyond * self.clock_finisher / self.clock


def paid_hours(time_on_site: float, factors: Factors) -> float:
    """Hours of a person a visit: time on the site and the fixed hours, never under the least paid hours."""
    return max(time_on_site + factors.visit_fixed, factors.visit_minimum)


def _over(hours: float, factors: Factors) -> float:
    """Hours beyond the day."""
    return max(0.0, hours - factors.day_hours)


def paid_prep(prep: Prep, factors: Factors) -> Paid:
    """Everybody at the laborer's rate."""
    if prep.visits == 0:
        return Paid()
    count = prep.people * prep.visits
    hours = paid_hours(prep.hours / count, factors)
    return Paid(prep.visits, count * hours, 0.0, prep.hours, count * _over(hours, factors), 0.0)


def paid_pour(pour: Pour, factors: Factors) -> Paid:
    """Placers at the laborer's rate, finishers and the one who saws at the finisher's."""
    placer = paid_hours(pour.placer_time, factors)
    finishers = [paid_hours(pour.finisher_time, factors)] * pour.finishers
    if pour.saw_time:
        finishers[0] = paid_hours(pour.saw_time, factors)
    return Paid(
        visits=1,
        clock_laborer=pour.placers * placer,
        clock_finisher=math.fsum(finishers),
        task_hours=pour.task_hours,
        long_laborer=pour.placers * _over(placer, factors),
        long_finisher=math.fsum(_over(h, factors) for h in finishers),
    )


def paid_single(hours: float, factors: Factors) -> Paid:
    """Strip or seal: one person, as many visits as the hours ask for."""
    if millionths(hours) == 0:
        return Paid()
    people = factors.one_person
    visits = up(hours / (people * (factors.day_hours - factors.visit_fixed)))
    each = paid_hours(hours / (people * visits), factors)
    count = people * visits
    return Paid(visits, count * each, 0.0, hours, count * _over(each, factors), 0.0)


@dataclass
class PaidTime:
    """Paid hours of the job by visit kind; a shared visit stands under the pour."""

    prep: Paid
    pour: Paid
    strip: Paid
    seal: Paid
    shared: bool = False
    kinds: tuple = field(default=("prep", "pour", "strip", "seal"))

    def each(self) -> list[tuple[str, Paid]]:
        """Kinds with their paid hours."""
        return [(kind, getattr(self, kind)) for kind in self.kinds]


def paid_time(job: Job, prep: Prep, pour: Pour | None, tasks: Tasks) -> PaidTime:
    """Paid hours of every visit; without a pour, what the other visits cost alone."""
    f = job.factors
    shared = pour is not None and pour.shared
    return PaidTime(
        prep=Paid() if shared else paid_prep(prep, f),
        pour=paid_pour(pour, f) if pour else Paid(),
        strip=paid_single(math.fsum(tasks.strip.values()), f),
        seal=paid_single(math.fsum(tasks.seal.values()), f),
        shared=shared,
    )


def beyond_lines(job: Job, time: PaidTime) -> dict[str, float]:
    """Time beyond tasks by visit kind, and the premium of long days by rate."""
    rates = job_rates(job)
    lines = {}
    for kind, paid in time.each():
        laborer, finisher = paid.beyond_split()
        name = "shared" if kind == "pour" and time.shared else kind
        lines[f"beyond_{name}"] = laborer * rates.laborer
        if kind == "pour":
            lines[f"beyond_{name}_finishers"] = finisher * rates.finisher
    extra = job.factors.overtime - 1
    lines["premium_laborer"] = extra * rates.laborer * math.fsum(p.long_laborer for _, p in time.each())
    lines["premium_finisher"] = extra * rates.finisher * math.fsum(p.long_finisher for _, p in time.each())
    return lines


def task_lines(job: Job, tasks: Tasks, way: Way | None) -> dict[str, float]:
    """Labor of the tasks: placing at the laborer's rate, finishing and joints at the finisher's, strip and seal at
    the laborer's, the rest at the crew rate."""
    rates = job_rates(job)
    lines = {f"labor_{n}": h * rates.crew_mix for n, h in tasks.prep.items()}
    for name, hours in tasks.pour.items():
        rate = rates.finisher if name in FINISHER_TASKS else rates.crew_mix
        lines[f"labor_{name}"] = hours * rate
    if way is not None:
        lines["labor_place"] = way.task_hours * rates.laborer
    for name, hours in (tasks.strip | tasks.seal).items():
        lines[f"labor_{name}"] = hours * rates.laborer
    return lines


def stop_over_long(job: Job, pour: Pour) -> bool:
    """The longest person of the pour visit, travel included, is past the limit of a day."""
    return less(job.factors.pour_stop_hours, pour.longest + job.factors.visit_fixed)
