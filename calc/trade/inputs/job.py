"""What a person types about the firm, the job and its site."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import DISPOSAL, ROLE, VEHICLE, WORDING


class Company(Section, title="Company", table="Company"):
    """Who bids."""

    name = text("Company", help="The firm's name, as it stands on the bid.", example="Gravelly Bend Flatwork")
    address = text("Company address", help="Street and town.", example="3 Kiln Lane, Alder Fork")
    phone = text("Phone", help="The number a client calls.", example="555-0142")
    licence = text("Licence", help="The contractor's licence number, where the law asks for one.", example="FW-0000")
    deposit_cap = given(
        "Deposit cap", "$", low=0, example="1000", help="The most that may be asked on signing, where the law says so."
    )
    paper = choice("Paper", "letter", "A4", default="letter", help="The paper that the workbooks print on.")


class Vehicle(Section, title="Vehicles", each=VEHICLE, table="Vehicles"):
    """What the house hauls with, or hires; the payload is as weighed, not as advertised."""

    box = given("Box", "yd3", over=0, ask_high=20, example="5", help="What the box holds, level with its sides.")
    heap = given("Heap", "", default=1, low=0.5, high=1.15, example="1", help="Times the box when heaped; 1 is level.")
    payload = given(
        "Payload", "ton", over=0, ask_high=15, example="4.5", help="Gross rating less its own weight with the driver."
    )
    bed_length = given("Bed length", "ft", over=0, ask_high=25, example="10", help="Length of the bed, inside.")
    bed_width = given("Bed width", "ft", over=0, ask_high=9, example="6", help="Width of the bed, inside.")
    hourly = given("Hourly rate", "$/h", low=0, example="38", help="What an hour of it costs, without a driver.")
    per_mile = given("Mile rate", "$/mile", default=0, low=0, example="0.9", help="What a mile of it costs.")
    hired = yes_no("Hired", help="Hired with its driver, so that the driver costs nothing more.")
    least_hours = given("Least hours", "h", default=0, low=0, example="3", help="The fewest hours a hire is charged.")
    notes = text("Notes", help="Anything else.", example="tow only with the pickup")


class Disposal(Section, title="Disposal sites", each=DISPOSAL, table="Disposal sites"):
    """Where piles go, and what the gate takes for them."""

    kind = choice(
        "Kind",
        "mixed",
        "green",
        "soil",
        "concrete",
        default="mixed",
        help="What it takes: one pile by itself, or what is hauled mixed.",
    )
    per_ton = given("Per ton", "$/ton", low=0, example="48", help="What the gate charges for a ton.")
    per_yard = given("Per yard", "$/yd3", low=0, example="0", help="What it charges for a loose yard.")
    per_load = given("Per load", "$/load", low=0, example="0", help="What it charges for a load.")
    least = given("Least charge", "$/load", default=0, low=0, example="25", help="The least it charges for a load.")
    dirty = given(
        "Dirty surcharge", "$/load", default=0, low=0, example="150", help="More for a load that is not clean."
    )
    minutes = given("One way", "min", low=0, ask_high=120, example="18", help="Minutes to get there.")
    miles = given("Miles one way", "mile", low=0, ask_high=60, example="9", help="Miles to get there.")
    dwell = given(
        "Dwell", "min", default=15, low=0, ask_high=90, example="15", help="Minutes at the gate and the pile."
    )
    opens = given("Opens", "h", low=0, high=24, example="7", help="Hour of the day it opens, as 7 or 7.5.")
    closes = given("Closes", "h", low=0, high=24, example="15.5", help="Hour of the day it closes.")
    piece = given("Largest piece", "in", over=0, example="24", help="The largest piece of concrete it takes.")
    wet = yes_no("Takes wet soil", default="yes", help="Whether it takes wet soil.")
    roots = yes_no("Takes roots and turf", default="yes", help="Whether it takes roots and turf.")
    notes = text("Notes", help="Anything else.", example="closed on Saturdays")


class Wage(Section, title="Wages", each=ROLE, table="Wages"):
    """What an hour of each role costs, with its burden."""

    private = given("Private", "$/h", low=0, example="46", help="On private work.")
    prevailing = given("Prevailing", "$/h", low=0, example="71", help="On work that pays prevailing wages.")
    notes = text("Notes", help="Anything else.", example="burden 32 %")


class Wording(Section, title="Wording", each=WORDING, table="Wording"):
    """Words of the contractor's own for the papers: have your lawyer read this."""

    words = text("Text", help="The words. Have your lawyer read them.", example="This bid is good for 30 days.")


class Job(Section, title="Job", table="Jobs"):
    """One site and one bid."""

    client = text("Client", help="Who asked for the bid.", example="Tamarack Row Owners")
    address = text("Address", help="Where the work is.", example="41 Orchard Spur")
    bid_date = date(
        "Bid date", required=True, help="The day of the bid; ages are measured from it.", example="2026-04-13"
    )
    pour_date = date("Pour date", help="The day of the pour, when it is known.", example="2026-04-27")
    soil = choice("Soil", "topsoil", "loam", "clay", "sand", "gravelly", default="loam", help="What is dug.")
    fiber = choice("Fiber", "none", "micro", "macro", default="none", help="The fiber that goes in each truck.")
    caps = given(
        "Caps",
        "",
        default=0,
        low=0,
        high=100,
        ask_high=10,
        whole=True,
        example="2",
        help="Irrigation lines that are capped, at their source.",
    )
    photos = text("Photos", help="Where the photographs of the site are.", example="roll 7, 12-19")
    notes = text("Notes", help="Anything else.", example="gate is 34 in wide")


class Site(Section, title="Site conditions", table="Site conditions"):
    """Facts of a job that differ from the house's usual ones."""

    fiber_dose = given(
        "Fiber dose",
        "lb/yd3",
        low=0,
        high=20,
        example="1.5",
        help="Pounds of fiber per yard ordered; blank takes the usual dose of the fiber.",
    )
    moisture = choice("Moisture", "dry", "damp", "wet", default="damp", help="How wet the soil is when it is hauled.")
    turf = yes_no("Turf in the dig", help="Whether turf is dug, which makes the soil unclean.")
    keep_backfill = yes_no(
        "Keep backfill on site", help="Whether the soil that goes back along the forms stays on the site."
    )
    bond_coats = given(
        "Bond coats",
        "coat",
        default=1,
        low=0,
        high=3,
        whole=True,
        example="1",
        help="Coats of bonding agent on an old footing.",
    )
    sealer_coats = given(
        "Sealer coats",
        "coat",
        default=0,
        low=0,
        high=3,
        whole=True,
        example="1",
        help="Coats of sealer, never before 28 days unless it cures and seals.",
    )
    joint_making = choice("Joints are", "tooled", "sawn", default="tooled", help="How the joints are made.")
    joint_depth = given(
        "Joint depth",
        "in",
        over=0,
        high=12,
        example="1",
        help="Depth of the joints as they are made; blank is a quarter of the slab, 1 in at least.",
    )
    vehicle = row_of(
        "First vehicle", VEHICLE, help="The vehicle that hauls first; blank lets every vehicle of the house compete."
    )
