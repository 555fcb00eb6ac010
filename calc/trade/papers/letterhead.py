"""What every paper for the client says of the firm and of the site."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.job import Company, Job

FIRM_CONTACT = (
    paper.Fact(Company.address, "Address"),
    paper.Fact(Company.phone, "Phone"),
    paper.Fact(Company.license, "License"),
)
"""Below the name of the firm."""

CLIENT_AND_SITE = (paper.Fact(Job.client), paper.Fact(Job.address, "Job address"))
"""Whom the paper is for, and where the work is."""
