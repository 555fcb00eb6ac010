"""A check says so when an edit or a paste over a number in the middle of a workbook makes two routes part."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from books import given, line, only_job
from calc.declared import Declared, Line
from calc.formula.compute import Batch
from calc.intake.schema import OVERRIDES
from calc.model.results import JobValues
from calc.trade.catalog import SECTIONS
from whole_job import Tables, whole_company, whole_week


def changed(week: Tables) -> Tables:
    """The week of the whole job with nothing overridden, fewer people on the site and half the rock."""
    crew, base = given("OnSite.crew"), given("Area.base")
    heads, *areas = week[base.section.table]
    halved = [
        [said / 2 if head == base.header and said else said for head, said in zip(heads, row, strict=True)]
        for row in areas
    ]
    few = [[*row[:2], 3, *row[3:]] if row[1] == crew.label else row for row in week[crew.section.table]]
    kept = {name: rows for name, rows in week.items() if name != OVERRIDES}
    return {**kept, base.section.table: [heads, *halved], crew.section.table: few}


@pytest.fixture(scope="module")
def job(tmp_path_factory: pytest.TempPathFactory) -> JobValues:
    """A job that has some of everything, as it was issued: more days than a pour takes, and rock that is fetched."""
    return only_job(tmp_path_factory.mktemp("whole"), changed(whole_week()), whole_company())


def after_a_paste(job: JobValues, pasted: Declared, change: Callable[[float], float], row: int) -> Batch:
    """The numbers of a workbook once a value was pasted over one cell and all formulas were worked out again."""
    frame = Batch(job.frame.jobs, dict(job.frame.rows), dict(job.frame.columns))
    column = frame.columns[pasted].copy()
    column[row] = change(float(column[row]))
    frame.columns[pasted] = column
    members = [member for section in SECTIONS for member in section.members]
    with np.errstate(all="ignore"):
        for member in members[members.index(pasted) + 1 :]:
            if isinstance(member, Line):
                frame.columns[member] = frame.value(member.formula, member.level)
    return frame


def more(value: float) -> float:
    """One too many."""
    return value + 1


def less(value: float) -> float:
    """One too few."""
    return value - 1


def dearer(value: float) -> float:
    """Some dollars more."""
    return value + 7


def cheaper(value: float) -> float:
    """Some dollars less."""
    return value - 7


PASTES = (
    ("Integrity.fiber", "TruckFiber.bags", (less,)),
    ("Integrity.fiber_over", "TruckFiber.bags", (more,)),
    ("Integrity.fiber_bought", "TruckFiber.bags", (less,)),
    ("Integrity.fiber_bought", "FiberTotal.bags", (less,)),
    ("Integrity.fiber_bought", "Order.placed", (more, less)),
    ("Integrity.curing", "CuringChoice.small_packs", (more, less)),
    ("Integrity.bonding", "BondingChoice.small_packs", (more,)),
    ("Integrity.sealer", "SealingChoice.small_packs", (more,)),
    ("Integrity.excavation", "Excavation.bank", (more, less)),
    ("Integrity.dug_deep_enough", "Excavation.below_top", (less,)),
    ("Integrity.dug_deep_enough", "Excavation.slab_and_base", (more,)),
    ("Integrity.overweight", "Hauled.tons", (lambda value: value + 5,)),
    ("WorkIntegrity.paid", "Task.hours", (more, less)),
    ("WorkIntegrity.paid", "Visit.task_hours", (more, less)),
    ("WorkIntegrity.paid", "PourVisit.beyond_laborer", (more, less)),
    ("WorkIntegrity.by_visit", "Visit.task_hours", (more, less)),
    ("WorkIntegrity.by_visit", "Task.composite_hours", (more,)),
    ("WorkIntegrity.money", "Task.cost", (dearer,)),
    ("WorkIntegrity.rock", "BaseHaul.trips", (more, less)),
    ("WorkIntegrity.rock", "BaseNeeds.buy", (less,)),
    ("WorkIntegrity.rock_cost", "BaseHaul.rock", (dearer,)),
    ("WorkIntegrity.forms_cost", "FormNeeds.stake_charge", (dearer,)),
    ("WorkIntegrity.forms_cost", "Board.charge", (dearer,)),
    ("WorkIntegrity.protection_cost", "Protection.washout_cost", (dearer,)),
    ("WorkIntegrity.equipment_cost", "RentalChoice.cost", (dearer,)),
    ("WorkIntegrity.equipment_cost", "Equipment.mobilization", (dearer,)),
    ("WorkIntegrity.plant_cost", "PourCost.fees", (dearer,)),
    ("WorkIntegrity.plant_cost", "CostTable.amount", (dearer,)),
    ("WorkIntegrity.plant_cost", "PourCost.concrete", (dearer,)),
    ("MoneyIntegrity.pack_sizes", "PackSizes.sized", (lambda value: value - 1,)),
    ("MoneyIntegrity.groups", "Subtotal.amount", (dearer,)),
    ("MoneyIntegrity.tax", "BidPrice.tax", (dearer,)),
    ("MoneyIntegrity.tax", "BidPrice.taxed", (dearer,)),
    ("MoneyIntegrity.direct", "BidPrice.direct", (dearer,)),
    ("MoneyIntegrity.break_even", "BidPrice.contingency", (dearer,)),
    ("MoneyIntegrity.break_even", "BidPrice.overhead", (dearer,)),
    ("MoneyIntegrity.break_even", "BidPrice.break_even", (dearer,)),
    ("MoneyIntegrity.price", "BidPrice.to_cent", (dearer,)),
    ("MoneyIntegrity.price", "BidPrice.price", (dearer, cheaper)),
    ("MoneyIntegrity.parts", "PriceSummary.margin", (dearer,)),
    ("MoneyIntegrity.payments", "PriceParts.on_completion", (dearer,)),
    ("MoneyIntegrity.payments", "PaymentSchedule.amount", (dearer,)),
)
"""A check, a line that stands between what was typed and it, and how its first row is pasted over."""


@pytest.mark.parametrize(
    ("check", "pasted", "change"),
    [(check, pasted, change) for check, pasted, changes in PASTES for change in changes],
    ids=[f"{check} {pasted} {place}" for check, pasted, changes in PASTES for place, _ in enumerate(changes)],
)
def test_a_number_that_was_pasted_over_is_found(
    job: JobValues, check: str, pasted: str, change: Callable[[float], float]
) -> None:
    failed = line(f"{check}_failed")
    assert job.of(failed) == 0
    assert after_a_paste(job, line(pasted), change, 0).columns[failed].tolist() == [1]
