"""Finishing window: how long the concrete can be finished at its temperature."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.placing import Access, Forecast
from calc.trade.inputs.pour import Mixture
from calc.trade.levels import COOLING
from calc.trade.takeoff.geometry import Slab

_SHEET = "Order and placing"
_FIRST = exact(1)


class WorkingTime(Section, title="Working time by concrete temperature", each=COOLING, sheet=_SHEET):
    """A table of temperatures with linear interpolation, constant beyond its ends."""

    temperature = factors("Concrete temperature", "F", 50, 60, 70, 80, 90, source="steps of the table")
    window = factors(
        "Finishing window at that temperature",
        "h",
        5.5,
        4.5,
        3.5,
        2.75,
        2,
        source="common practice, no source: ask the plant",
    )

    usual_temperature = factor(
        "Concrete temperature, if not typed",
        "F",
        70,
        low=50,
        high=90,
        source="common practice, no source: for the hours only; papers say that it is not known",
    )

    previous = line(
        "Previous row", "", largest(_FIRST, row_number(COOLING) - 1), source="row number less 1, not below 1"
    )
    step = line(
        "Temperature step",
        "F",
        temperature - at(temperature, previous),
        source="temperature less that of the previous row; 0 in the first row",
    )
    reached = line(
        "Part of the step reached",
        "F",
        largest(0, smallest(step, if_given(Forecast.concrete, usual_temperature) - at(temperature, previous))),
        source="concrete temperature less that of the previous row, from 0 to the step",
    )
    lost = line(
        "Time lost in this step",
        "h",
        when(step > 0, (at(window, previous) - window) * reached / step, 0),
        source="linear interpolation between rows",
        adds=True,
    )


class FinishWindow(Section, title="Finishing window", sheet=_SHEET):
    """From batching until the surface is too stiff to finish. Bags have no drive and no admixture."""

    accelerated_share = factor(
        "Finishing window with an accelerator", "%", 75, low=50, high=100, source="common practice, no source"
    )
    retarder_hours = factor("Time added by a retarder", "h", 1, low=0.5, high=3, source="common practice, no source")
    rate = factor("Finishing rate", "ft2/h/person", 80, low=40, high=120, source="common practice, no source")

    known = line(
        "Concrete temperature is known", "", when(is_given(Forecast.concrete), 1, 0), source="1 if it was typed"
    )
    without_admixtures = line(
        "Finishing window, without admixtures",
        "h",
        at(WorkingTime.window, _FIRST) - total(WorkingTime.lost),
        source="window of the coolest row less the time lost in each step",
    )
    with_admixtures = line(
        "Finishing window, with admixtures",
        "h",
        when(Mixture.accelerator.is_("yes"), without_admixtures * accelerated_share / PERCENT, without_admixtures)
        + when(Mixture.retarder.is_("yes"), retarder_hours, 0),
        source="shorter with an accelerator, longer with a retarder",
    )
    on_site = line(
        "Finishing window on site",
        "h",
        with_admixtures - Access.drive / MIN_PER_H,
        source="finishing window less the drive from the plant",
    )
    finish_hours = line(
        "Finishing hours of the slab",
        "h",
        total(Slab.net_area) / rate / exact(1, "person"),
        source="net area over finishing rate: hours of one finisher",
    )
