"""The sheet Dig and haul: what leaves, how, and at what cost."""

from __future__ import annotations

from calc.declare import *
from calc.trade.hauling.choice import Choice, RunnerUp
from calc.trade.hauling.loads import Hauled
from calc.trade.levels import AREA, HAULED
from calc.trade.takeoff.dig import Excavation, Spoil
from calc.trade.work.carrying import Carrying

DIG_AND_HAUL = story.StorySheet(
    "Dig and haul",
    "Haul",
    "what leaves, how, and at what cost",
    "Haul workings",
    (
        story.Table(
            "Dug, by area",
            AREA,
            "Area",
            (
                story.Step(Excavation.depth, "Dig depth"),
                story.Step(Excavation.formed, "Formed"),
                story.Step(Excavation.area, "Area dug"),
                story.Step(Excavation.volume, "Hole"),
                story.Step(Excavation.old_concrete, "Old concrete"),
                story.Step(Excavation.bank, "Soil, bank"),
                story.Step(Excavation.backfill, "Backfill"),
            ),
            total="All areas",
        ),
        story.Lines(
            "Soil",
            (Spoil.bank, Spoil.loose, Spoil.tons),
            note="swell changes the room that it takes, never its weight",
            strong=(Spoil.tons,),
        ),
        story.Lines("The way out", (Carrying.distance, Carrying.spoil_distance, Carrying.hours_per_yard)),
        story.Pair(
            "How it leaves: the choice and the runner-up",
            (
                story.Beside("Haul plan", Choice.plan_name, RunnerUp.plan_name),
                story.Beside("Vehicle", Choice.vehicle_name, RunnerUp.vehicle_name),
                story.Beside("Loads", Choice.loads),
                story.Beside("Trip hours", Choice.hours),
                story.Beside("Wait while loaded", Choice.waiting),
                story.Beside("Dump fees", Choice.dump_fees),
                story.Beside("Driver", Choice.driver),
                story.Beside("Truck", Choice.truck),
                story.Beside("Sorting", Choice.sorting),
                story.Beside("Cost of the haul", Choice.cost, None, RunnerUp.difference, strong=True),
            ),
            note="every plan with every vehicle is compared on Haul workings",
        ),
        story.Table(
            "The chosen haul, pile by pile",
            HAULED,
            "Pile",
            (
                story.Step(Hauled.loose, "Loose"),
                story.Step(Hauled.tons, "Weight"),
                story.Step(Hauled.loads, "Loads"),
                story.Step(Hauled.limited_by, "Limited by"),
                story.Step(Hauled.tons_per_load, "Per load"),
                story.Step(Hauled.fill_limit, "Fill limit"),
                story.Step(Hauled.fill_height, "Fill height"),
                story.Step(Hauled.round_trip, "Round trip"),
                story.Step(Hauled.first_departure, "First leaves"),
                story.Step(Hauled.last_arrival, "Last arrives"),
                story.Step(Hauled.closes, "Site closes"),
                story.Step(Hauled.site_name, "Site"),
            ),
            total="All piles",
        ),
    ),
)
