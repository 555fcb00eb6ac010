"""What a person types about the company, the job and its site."""

from __future__ import annotations

from calc.declare import *
from calc.trade.levels import DISPOSAL, FOOTING, HOLIDAY, ROLE, VEHICLE, WORDING


def _account_of(group: str, example: str) -> Input:
    """The account of a cost group, for costs that have none of their own: its name until a number is given."""
    return Input(
        f"Account, {group}",
        "",
        Kind.TEXT,
        default=group.capitalize(),
        help=f"Account for costs of the group {group} that have none of their own; blank is the name of the group.",
        example=example,
    )


def _own_account(example: str, what: str) -> Input:
    """The account of a row of the company book."""
    return text("Account", help=f"Account that {what} is booked to; blank is that of its cost group.", example=example)


class Company(Section, title="Company", table="Company"):
    """The company that bids."""

    name = text("Company", help="Name of the company as shown on the bid.", example="Gravelly Bend Flatwork")
    address = text("Company address", help="Street and city.", example="3 Kiln Lane, Alder Fork")
    phone = text("Phone", help="Phone number for clients.", example="555-0142")
    license = text("License", help="Contractor's license number, where the law requires one.", example="FW-0000")
    deposit_cap = given(
        "Deposit cap", "$", low=0, example="1000", help="Maximum deposit on signing, where the law limits it."
    )
    crews = given(
        "Crews",
        "",
        default=1,
        low=1,
        high=50,
        ask_high=10,
        whole=True,
        example="2",
        help="Number of crews that can work on the same day.",
    )
    people = given(
        "People",
        "",
        low=1,
        high=200,
        ask_high=40,
        whole=True,
        example="6",
        help="Number of people who can work on the same day; blank compares crews only.",
    )
    saturday_work = yes_no("Saturday work", help="Whether Saturday is a working day.")
    concrete_account = _account_of("concrete", "5100")
    materials_account = _account_of("materials", "5200")
    equipment_account = _account_of("equipment", "5300")
    disposal_account = _account_of("disposal", "5400")
    labor_account = _account_of("labor", "5500")
    fees_account = _account_of("fees", "5600")
    tax_account = Input(
        "Account, sales tax",
        "",
        Kind.TEXT,
        default="Sales tax",
        help="Account that the sales tax on purchases is booked to.",
        example="2310",
    )
    dates = choice(
        "Dates",
        "words",
        "numbers",
        "year first",
        default="words",
        help="How dates are written: Apr 13, 2026; 4/13/2026; or 2026-04-13.",
    )
    paper = choice("Paper", "letter", "A4", default="letter", help="Paper size of the printed workbooks.")


class Vehicle(Section, title="Vehicles", each=VEHICLE, table="Vehicles"):
    """Vehicles that the company owns or hires; take the payload from a scale, not from an advertisement."""

    struck_capacity = given(
        "Struck bed capacity",
        "yd3",
        over=0,
        high=100,
        ask_high=20,
        example="5",
        help="Volume of the bed, level with its sides.",
    )
    heaped_factor = given(
        "Heaped factor",
        "",
        default=1,
        low=0.5,
        high=1.15,
        example="1",
        help="Heaped over struck capacity; 1 is struck.",
    )
    payload = given(
        "Payload",
        "ton",
        over=0,
        high=100,
        ask_high=15,
        example="4.5",
        help="GVWR minus curb weight and driver, in tons.",
    )
    bed_length = given("Bed length", "ft", over=0, high=60, ask_high=25, example="10", help="Inside length of the bed.")
    bed_width = given("Bed width", "ft", over=0, high=20, ask_high=9, example="6", help="Inside width of the bed.")
    combined_rating = given(
        "Combined rating",
        "lb",
        over=0,
        high=200000,
        ask_high=80000,
        example="24000",
        help="GCWR of the truck with its trailer, or the two GVWR added up; not checked if blank.",
    )
    trailer_rating = given(
        "Trailer rating",
        "lb",
        over=0,
        high=200000,
        ask_high=60000,
        example="14000",
        help="GVWR on the plate of the trailer; not checked if blank.",
    )
    hourly = given("Hourly rate", "$/h", low=0, example="38", help="Cost per hour, without a driver unless hired.")
    per_mile = given("Mileage rate", "$/mile", default=0, low=0, example="0.9", help="Cost per mile.")
    hired = yes_no("Hired", help="Whether it is hired with its driver, who then costs nothing more.")
    minimum_hours = given(
        "Minimum hours", "h", default=0, low=0, high=24, example="3", help="Minimum hours charged for a hired vehicle."
    )
    account = _own_account("5410", "the vehicle")
    notes = text("Notes", help="Anything else.", example="tow only with the pickup")


class Disposal(Section, title="Disposal sites", each=DISPOSAL, table="Disposal sites"):
    """Disposal sites: what each one accepts, and what it charges at the scale house."""

    kind = choice(
        "Kind",
        "mixed",
        "green waste",
        "soil",
        "concrete debris",
        default="mixed",
        help="What it accepts: mixed loads, or one material only.",
    )
    per_ton = given("Per ton", "$/ton", low=0, example="48", help="Dump fee per ton.")
    per_yard = given("Per yard", "$/yd3", low=0, example="0", help="Dump fee per loose cubic yard.")
    per_load = given("Per load", "$/load", low=0, example="0", help="Dump fee per load.")
    minimum_charge = given("Minimum charge", "$/load", default=0, low=0, example="25", help="Minimum charge per load.")
    contamination = given(
        "Contamination surcharge", "$/load", default=0, low=0, example="150", help="Added for a load that is not clean."
    )
    minutes = given(
        "One-way time", "min", low=0, high=600, ask_high=120, example="18", help="Driving time to the site."
    )
    miles = given(
        "One-way distance", "mile", low=0, high=500, ask_high=60, example="9", help="Driving distance to the site."
    )
    turnaround = given(
        "Turnaround time",
        "min",
        default=15,
        low=0,
        high=600,
        ask_high=90,
        example="15",
        help="Time at the site, from the scale house to the way out.",
    )
    opens = given("Opens", "h", low=0, high=24, example="7", help="Time of day it opens, as 7 or 7.5.")
    closes = given("Closes", "h", low=0, high=24, example="15.5", help="Time of day it closes, as 15.5.")
    piece = given(
        "Largest piece", "in", over=0, high=240, example="24", help="Largest piece of concrete that it accepts."
    )
    wet = yes_no("Accepts wet soil", default="yes", help="Whether it accepts wet soil.")
    roots = yes_no("Accepts roots and turf", default="yes", help="Whether it accepts soil with roots and turf.")
    sells_rock = yes_no(
        "Sells base rock", help="Whether it sells base rock, which a vehicle that dumps there could bring back."
    )
    account = _own_account("5420", "a dump fee")
    notes = text("Notes", help="Anything else.", example="closed on Saturdays")


class Wage(Section, title="Wages", each=ROLE, table="Wages"):
    """Labor cost per hour by role, with burden."""

    private = given("Private", "$/h", low=0, example="46", help="Rate on private work.")
    prevailing = given("Prevailing", "$/h", low=0, example="71", help="Rate on prevailing-wage work.")
    account = _own_account("5510", "the role")
    notes = text("Notes", help="Anything else.", example="burden 32%")


class Wording(Section, title="Wording", each=WORDING, table="Wording"):
    """Your own wording for the documents. Have your lawyer review it."""

    words = text("Text", help="The wording. Have your lawyer review it.", example="This bid is good for 30 days.")


class Holiday(Section, title="Holidays", each=HOLIDAY, table="Holidays"):
    """Days on which the company does not work, one row each, for this year and the next."""

    day = date("Date", required=True, help="The day off.", example="2026-07-03")


class Job(Section, title="Job", table="Jobs"):
    """One site and one bid."""

    client = text("Client", help="Client who asked for the bid.", example="Tamarack Row Owners")
    address = text("Address", help="Address of the work.", example="41 Orchard Spur")
    bid_date = date(
        "Bid date", required=True, help="Date of the bid; the age of a price is counted to it.", example="2026-04-13"
    )
    pour_date = date("Pour date", help="Date of the pour, if known.", example="2026-04-27")
    soil = choice("Soil", "topsoil", "loam", "clay", "sand", "gravelly", default="loam", help="Soil that is dug.")
    fiber = choice("Fiber", "none", "micro", "macro", default="none", help="Fiber added to each truck.")
    lines_to_cap = given(
        "Irrigation lines to cap",
        "",
        default=0,
        low=0,
        high=100,
        ask_high=10,
        whole=True,
        example="2",
        help="Number of irrigation lines to cap at their source.",
    )
    photos = text("Photos", help="Where the site photos are.", example="roll 7, 12-19")
    notes = text("Notes", help="Anything else.", example="gate is 34 in wide")


class Site(Section, title="Site conditions", table="Site conditions"):
    """Facts of a job that differ from the company's usual ones."""

    fiber_dose = given(
        "Fiber dose",
        "lb/yd3",
        low=0,
        high=20,
        example="1.5",
        needs=((Job.fiber, "micro", "macro"),),
        help="Fiber per cubic yard ordered; blank is the usual dose of that fiber.",
    )
    moisture = choice("Moisture", "dry", "damp", "wet", default="damp", help="Moisture of the soil when it is hauled.")
    turf = yes_no("Turf in the dig", help="Whether turf is dug with the soil, so that the soil is not clean.")
    keep_backfill = yes_no("Keep backfill on site", help="Whether the soil for backfill along the forms stays on site.")
    bond_coats = given(
        "Bonding coats",
        "coat",
        default=1,
        low=0,
        high=3,
        whole=True,
        example="1",
        needs=(FOOTING,),
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
        help="Coats of sealer, not before 28 days unless it is a cure-and-seal.",
    )
    joint_method = choice(
        "Control joints",
        "tooled",
        "saw-cut",
        "early-entry",
        default="tooled",
        help="How the control joints are made; early-entry is cut with an early-entry saw.",
    )
    joint_depth = given(
        "Joint depth",
        "in",
        over=0,
        high=12,
        example="1",
        help="Depth of the joints; blank is a quarter of the slab thickness, at least 1 in.",
    )
    vehicle_1 = row_of(
        "Allowed vehicle 1", VEHICLE, help="A vehicle that may haul; blank compares every vehicle of the company."
    )


SAWN = either(Site.joint_method.is_("saw-cut"), Site.joint_method.is_("early-entry"))
"""Whether the control joints are sawn, early or not."""
