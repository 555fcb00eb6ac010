"""The bids that the tests of this folder make again."""

from __future__ import annotations

import pytest

from awkward_jobs import AWKWARD
from calc.files import shipped
from rebids import Bid, bid_of, written_bid
from whole_job import whole_company, whole_week


@pytest.fixture(scope="session")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Bid:
    """The demo week."""
    folder = tmp_path_factory.mktemp("demo")
    (folder / "company.xlsx").write_bytes((shipped("sample_inputs") / "company.xlsx").read_bytes())
    return bid_of(folder, shipped("sample_inputs") / "jobs.xlsx")


@pytest.fixture(scope="session")
def whole(tmp_path_factory: pytest.TempPathFactory) -> Bid:
    """The job that fills every column."""
    return written_bid(tmp_path_factory.mktemp("whole"), whole_week(), whole_company())


@pytest.fixture(scope="session")
def awkward(tmp_path_factory: pytest.TempPathFactory) -> Bid:
    """Jobs and areas whose ids match wrongly as text, and a job with eight areas."""
    return written_bid(tmp_path_factory.mktemp("awkward"), AWKWARD)
