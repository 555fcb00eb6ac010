"""The papers of a job, in the order of their sheets."""

from __future__ import annotations

from calc.declare import *
from calc.trade.papers.change_order import CHANGE_ORDER
from calc.trade.papers.haul_off_sheet import HAUL_OFF_SHEET
from calc.trade.papers.invoice import INVOICE
from calc.trade.papers.job_cost import JOB_COST
from calc.trade.papers.load_list import LOAD_LIST
from calc.trade.papers.plant_order import PLANT_ORDER
from calc.trade.papers.pour_day import POUR_DAY
from calc.trade.papers.proposal import PROPOSAL

PAPERS: tuple[paper.Paper, ...] = (
    PROPOSAL,
    PLANT_ORDER,
    LOAD_LIST,
    HAUL_OFF_SHEET,
    POUR_DAY,
    CHANGE_ORDER,
    INVOICE,
    JOB_COST,
)
"""Every paper, in the order of their sheets."""
