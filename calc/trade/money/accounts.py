"""Accounts: where each cost is booked, by its own row of the company book, else by its cost group."""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.choice import Choice
from calc.trade.hauling.loads import Hauled
from calc.trade.hauling.vehicles import SiteSpec, VehicleSpec
from calc.trade.inputs.job import Company, Disposal, Vehicle, Wage
from calc.trade.levels import GROUP, HAULED, TASK
from calc.trade.materials.base_rock import BaseHaul
from calc.trade.prices.wage_rates import CREW_MIX, DRIVER, FINISHER, LABORER
from calc.trade.work.task_rates import TaskRates

_SHEET = "Costs"
_NONE = "none"


LABORER_ACCOUNT, FINISHER_ACCOUNT = at(Wage.account, LABORER), at(Wage.account, FINISHER)


def _else_laborer(role: Expr) -> Expr:
    """The account of a role, that of the laborer where it has none."""
    return when(is_word(at(Wage.account, role), _NONE), LABORER_ACCOUNT, at(Wage.account, role))


class GroupAccount(Section, title="Accounts of the cost groups", each=GROUP, sheet=_SHEET):
    """The account of the costs of a group that have none of their own."""

    account = line(
        "Account of the group",
        "",
        by_row(
            GROUP,
            Company.concrete_account,
            Company.materials_account,
            Company.equipment_account,
            Company.disposal_account,
            Company.labor_account,
            Company.fees_account,
        ),
        source="Company; the name of the group where it gives none",
    )


class DumpAccount(Section, title="Accounts of the disposal sites", each=HAULED, sheet=_SHEET):
    """Dump fees of all piles are booked together, to the first site of the plan."""

    first_site = line(
        "Row of its disposal site, behind the last without one",
        "",
        when(Hauled.site_row > 0, row_number(HAULED), THREE + TWO),
        source="order of the piles that have a site",
    )


class OwnAccount(Section, title="Accounts of roles, vehicles and sites", sheet=_SHEET):
    """As the company book has them; the word none where it has none."""

    driver = line(
        "Account of the driver",
        "",
        _else_laborer(DRIVER),
        source="Wages; that of the laborer where it has none",
    )
    crew_mix = line(
        "Account of the crew mix",
        "",
        _else_laborer(CREW_MIX),
        source="Wages; that of the laborer where it has none",
    )
    vehicle = line(
        "Account of the haul vehicle",
        "",
        when(total(VehicleSpec.counted) > 0, at(Vehicle.account, largest(1, Choice.vehicle)), _NONE),
        source="Vehicles, of the vehicle that hauls",
    )
    rock_vehicle = line(
        "Account of the pick-up vehicle",
        "",
        when(total(VehicleSpec.counted) > 0, at(Vehicle.account, largest(1, BaseHaul.row)), _NONE),
        source="Vehicles, of the vehicle that picks up base rock",
    )
    site_row = line(
        "Row of the disposal site that dump fees are booked to",
        "",
        at(Hauled.site_row, argmin(DumpAccount.first_site)),
        source="site of the first pile that has one; 0 if none has",
    )
    site = line(
        "Account of the disposal site",
        "",
        when(both(total(SiteSpec.counted) > 0, site_row > 0), at(Disposal.account, largest(1, site_row)), _NONE),
        source="Disposal sites",
    )


class TaskAccount(Section, title="Accounts of the tasks", each=TASK, sheet=_SHEET):
    """By who is paid for a task."""

    account = line(
        "Account of the task",
        "",
        when(
            equals(TaskRates.labor_class, LABORER),
            LABORER_ACCOUNT,
            when(equals(TaskRates.labor_class, FINISHER), FINISHER_ACCOUNT, OwnAccount.crew_mix),
        ),
        source="of the laborer, of the finisher, else of the crew mix",
    )
