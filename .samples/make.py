"""Writes the workbooks that ship with the program: those of the demo in sample_inputs, the blank ones in templates.

Run it from the checkout, with the package installed: ``python .samples/make.py``. The same tables give the same bytes.
Everybody and everything in the demo is invented. To add a job, add its rows to the tables below.
"""

from __future__ import annotations

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))

from calc.blanks.blank import Rows, blank_company_book, blank_jobs_book, company_book, jobs_book
from calc.blanks.measure_sheet import measure_sheet
from calc.blanks.rows import Typed

CHECKOUT = Path(__file__).resolve().parent.parent

Table = tuple[tuple[Typed, ...], ...]
"""A header, then the rows under it; cells that a row leaves out at its end are blank."""

# The company, its prices and its usual factors.

COMPANY: dict[str, Table] = {
    "Company": (
        ("fact", "value"),
        ("company", "Gravelly Bend Flatwork"),
        ("company address", "3 Kiln Lane, Alder Fork"),
        ("phone", "555-0142"),
        ("license", "FW-0000"),
        ("crews", "1"),
        ("people", "4"),
        ("saturday work", "no"),
        ("account, concrete", "5110"),
        ("account, materials", "5120"),
        ("account, equipment", "5310"),
        ("account, disposal", "5210"),
        ("account, labor", "6010"),
        ("account, fees", "5410"),
        ("account, sales tax", "2310"),
        ("paper", "letter"),
    ),
    "Holidays": (
        ("holiday", "date"),
        ("Memorial Day", "2026-05-25"),
        ("Independence Day, observed", "2026-07-03"),
        ("Labor Day", "2026-09-07"),
        ("Thanksgiving", "2026-11-26"),
        ("Christmas Day", "2026-12-25"),
    ),
    "Vehicles": (
        ("vehicle", "struck bed capacity yd3", "heaped factor", "payload ton", "bed length ft", "bed width ft",
         "hourly rate $/h",
         "mileage rate $/mile", "hired", "minimum hours h", "account", "notes"),
        ("dump trailer", "5", "1", "4.5", "10'", "6'", "38", "0.90", "", "", "5220", "towed by the crew truck only"),
        ("flatbed", "3", "1.1", "1.75", "9'", "6'", "26", "0.70", "", "", "5220", "when the trailer is in use"),
        ("Marl's dumper", "10", "1", "11", "14'", "7'", "118", "0", "yes", "3", "5220", "needs a day's notice"),
    ),
    "Disposal sites": (
        ("site", "kind", "per ton $/ton", "minimum charge $/load", "contamination surcharge $/load", "one-way time min",
         "one-way distance mile", "opens h", "closes h", "accepts roots and turf", "account", "notes"),
        ("Sedge Hollow transfer", "mixed", "92", "45", "", "22", "11", "7", "16", "yes", "5210", "weighs in and out"),
        ("Brush yard", "green waste", "31", "20", "60", "14", "6", "8", "15", "yes", "5210", "no soil on the roots"),
        ("Lower Quarry fill", "soil", "14", "25", "150", "26", "14", "7", "15.5", "no", "5210", "clean soil only"),
        ("Crusher lane", "concrete debris", "22", "30", "120", "19", "9", "7", "16", "no", "5210",
         "pieces under 24 in"),
    ),
    "Wages": (
        ("role", "private $/h", "prevailing $/h", "account", "notes"),
        ("laborer", "46", "68", "6010", "with burden"),
        ("finisher", "58", "81", "6020", "with burden"),
        ("driver", "", "", "5230", "paid as a laborer"),
    ),
    "Wording": (
        ("place", "text"),
        ("scope", "Form, place, finish and cure the concrete listed here."),
        ("exclusions", "Hidden footings, pipes and roots; matching the color of existing concrete."),
        ("payment", "Payment is due on receipt of invoice."),
        ("validity", "This bid is valid for 30 days; ready-mix prices may change before then."),
        ("warranty", "Control joints control where concrete cracks; they do not prevent cracking."),
        ("notices", "Keep off the concrete until the barricades are removed."),
    ),
    "Prices": (
        ("item", "price", "size", "dated", "valid until", "supplier", "taxable", "account"),
        ("Ready-mix, 2500 psi", 158.00, "", "2026-03-30", "2026-06-30", "Alder Fork Ready-Mix", "yes", "5110"),
        ("Ready-mix, 3000 psi", 164.00, "", "2026-03-30", "2026-06-30", "Alder Fork Ready-Mix", "yes", "5110"),
        ("Ready-mix, 3500 psi", 171.00, "", "2026-03-30", "2026-06-30", "Alder Fork Ready-Mix", "yes", "5110"),
        ("Ready-mix, 4000 psi", 179.00, "", "2026-03-30", "2026-06-30", "Alder Fork Ready-Mix", "yes", "5110"),
        ("Ready-mix, 4500 psi", 188.00, "", "2026-03-30", "2026-06-30", "Alder Fork Ready-Mix", "yes", "5110"),
        ("Ready-mix, 5000 psi", 198.00, "", "2026-03-30", "2026-06-30", "Alder Fork Ready-Mix", "yes", "5110"),
        ("Entrained air", 4.50, "", "2026-03-30", "2026-06-30", "Alder Fork Ready-Mix", "yes", "5110"),
        ("Accelerator", 11.00, "", "2026-03-30", "2026-06-30", "Alder Fork Ready-Mix", "yes", "5110"),
        ("Retarder", 7.50, "", "2026-03-30", "2026-06-30", "Alder Fork Ready-Mix", "yes", "5110"),
        ("Winter heat", 6.00, "", "2026-03-30", "2026-06-30", "Alder Fork Ready-Mix", "yes", "5110"),
        ("Pea-gravel pump mix, added cost", 9.00, "", "2026-03-30", "2026-06-30", "Alder Fork Ready-Mix", "yes",
         "5110"),
        ("Concrete delivery", 28.00, "", "2026-03-30", "2026-06-30", "Alder Fork Ready-Mix", "no", "5115"),
        ("Short-load fee, tier 1", 155.00, "2 yd3", "2026-03-30", "2026-06-30", "Alder Fork Ready-Mix", "no", "5115"),
        ("Short-load fee, tier 2", 105.00, "4 yd3", "2026-03-30", "2026-06-30", "Alder Fork Ready-Mix", "no", "5115"),
        ("Short-load fee, tier 3", 55.00, "6 yd3", "2026-03-30", "2026-06-30", "Alder Fork Ready-Mix", "no", "5115"),
        ("Environmental fee", 12.00, "", "2026-03-30", "2026-06-30", "Alder Fork Ready-Mix", "no", "5115"),
        ("Fuel surcharge", 9.50, "", "2026-03-30", "2026-06-30", "Alder Fork Ready-Mix", "no", "5115"),
        ("Saturday fee, per load", 150.00, "", "2026-03-30", "2026-06-30", "Alder Fork Ready-Mix", "no", "5115"),
        ("After-hours fee", 175.00, "", "2026-03-30", "2026-06-30", "Alder Fork Ready-Mix", "no", "5115"),
        ("Truck standby (wait time)", 2.25, "", "2026-03-30", "2026-06-30", "Alder Fork Ready-Mix", "no", "5115"),
        ("Pump set-up charge", 240.00, "", "2026-03-30", "2026-06-30", "Pike Line Pumps", "no", "5310"),
        ("Pump, per hour", 135.00, "", "2026-03-30", "2026-06-30", "Pike Line Pumps", "no", "5310"),
        ("Pump, per yard", 3.50, "", "2026-03-30", "2026-06-30", "Pike Line Pumps", "no", "5310"),
        ("Pump primer", 32.00, "", "2026-03-30", "2026-06-30", "Pike Line Pumps", "yes", "5310"),
        ("Concrete bag", 7.40, "0.6 ft3", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5110"),
        ("Clean-up after bagged concrete", 25.00, "", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Micro fiber", 9.80, "", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Macro fiber", 31.00, "", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Reinforcing bar, #3", 8.60, "", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Reinforcing bar, #4", 13.20, "", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Reinforcing bar, #5", 19.80, "", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Bar support", 0.45, "", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Bar ties, per hundred", 6.20, "", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Wire mesh sheet", 14.75, "", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Vapor retarder roll", 118.00, "1000 ft2", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Dowel bar", 11.60, "", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Drill bit", 14.50, "", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Epoxy cartridge", 27.00, "", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Isolation-joint filler", 8.90, "", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Joint cap and sealant", 1.35, "", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Base rock", 24.00, "", "2026-03-30", "2026-06-30", "Lower Quarry", "yes", "5120"),
        ("Base rock delivery", 95.00, "", "2026-03-30", "2026-06-30", "Lower Quarry", "no", "5120"),
        ("Form lumber, 2x4", 0.92, "", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Bonding agent, small pail", 34.50, "1 gal", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Bonding agent, 5-gal pail", 152.00, "5 gal", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Curing compound, small pail", 38.00, "1 gal", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Curing compound, 5-gal pail", 96.00, "5 gal", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Sealer, small pail", 44.00, "1 gal", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Sealer, 5-gal pail", 189.00, "5 gal", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Form lumber, 2x6", 1.38, "", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Form lumber, 2x8", 1.95, "", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Form stake", 3.40, "", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Bender board", 1.10, "", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Form release agent", 12.00, "", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Bond breaker", 0.18, "", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5120"),
        ("Barricades, per day", 9.00, "", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5320"),
        ("Caution tape and signs", 6.50, "", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5320"),
        ("Concrete washout", 38.00, "", "2026-03-30", "2026-06-30", "Saltbox Supply", "yes", "5320"),
        ("Rental for half a day, demolition hammer", 58.00, "", "2026-03-30", "2026-06-30", "Tinker Rental", "yes",
         "5310"),
        ("Rental for a day, demolition hammer", 82.00, "", "2026-03-30", "2026-06-30", "Tinker Rental", "yes", "5310"),
        ("Rental for a week, demolition hammer", 295.00, "", "2026-03-30", "2026-06-30", "Tinker Rental", "yes",
         "5310"),
        ("Rental for half a day, chipping hammer", 42.00, "", "2026-03-30", "2026-06-30", "Tinker Rental", "yes",
         "5310"),
        ("Rental for a day, chipping hammer", 60.00, "", "2026-03-30", "2026-06-30", "Tinker Rental", "yes", "5310"),
        ("Rental for a week, chipping hammer", 215.00, "", "2026-03-30", "2026-06-30", "Tinker Rental", "yes", "5310"),
        ("Rental for half a day, concrete saw", 66.00, "", "2026-03-30", "2026-06-30", "Tinker Rental", "yes", "5310"),
        ("Rental for a day, concrete saw", 95.00, "", "2026-03-30", "2026-06-30", "Tinker Rental", "yes", "5310"),
        ("Rental for a week, concrete saw", 330.00, "", "2026-03-30", "2026-06-30", "Tinker Rental", "yes", "5310"),
        ("Rental for half a day, plate compactor", 48.00, "", "2026-03-30", "2026-06-30", "Tinker Rental", "yes",
         "5310"),
        ("Rental for a day, plate compactor", 68.00, "", "2026-03-30", "2026-06-30", "Tinker Rental", "yes", "5310"),
        ("Rental for a week, plate compactor", 240.00, "", "2026-03-30", "2026-06-30", "Tinker Rental", "yes", "5310"),
        ("Rental for half a day, mixer", 45.00, "", "2026-03-30", "2026-06-30", "Tinker Rental", "yes", "5310"),
        ("Rental for a day, mixer", 62.00, "", "2026-03-30", "2026-06-30", "Tinker Rental", "yes", "5310"),
        ("Rental for a week, mixer", 220.00, "", "2026-03-30", "2026-06-30", "Tinker Rental", "yes", "5310"),
        ("Rental for half a day, generator", 40.00, "", "2026-03-30", "2026-06-30", "Tinker Rental", "yes", "5310"),
        ("Rental for a day, generator", 56.00, "", "2026-03-30", "2026-06-30", "Tinker Rental", "yes", "5310"),
        ("Rental for a week, generator", 200.00, "", "2026-03-30", "2026-06-30", "Tinker Rental", "yes", "5310"),
        ("Rental for half a day, mini excavator", 185.00, "", "2026-03-30", "2026-06-30", "Tinker Rental", "yes",
         "5310"),
        ("Rental for a day, mini excavator", 265.00, "", "2026-03-30", "2026-06-30", "Tinker Rental", "yes", "5310"),
        ("Rental for a week, mini excavator", 1050.00, "", "2026-03-30", "2026-06-30", "Tinker Rental", "yes", "5310"),
        ("Mini excavator delivery", 110.00, "", "2026-03-30", "2026-06-30", "Tinker Rental", "no", "5310"),
        ("Mobilization, crew visit", 85.00, "", "2026-03-30", "2026-06-30", "own", "no", "5330"),
        ("Mobilization, one-person visit", 35.00, "", "2026-03-30", "2026-06-30", "own", "no", "5330"),
    ),
    "Factors": (
        ("factor", "value", "notes"),
        ("Waste factor", "3.5", "average of last year's tickets against measured volume"),
        ("Sales tax", "6.5", "on what is bought; ask the accountant when it changes"),
        ("Minimum job charge", "650", "smaller jobs do not pay for the truck"),
    ),
    "Site conditions": (
        ("job", "fact", "value", "notes"),
        ("all", "power on site", "no", "a generator is rented unless a job says otherwise"),
    ),
}  # fmt: skip

# The week: 26-041 is a strip beside the walk of an owners' association, 26-042 three equal pads for a school, 26-043 a
# garden landing of odd shapes, 26-044 a narrow strip over an old footing with plants in the way and dowels on both
# sides, 26-045 a ramp landing that was measured in meters, 26-046 an apron where an old walk is sawn and broken out,
# 26-047 a driveway of two trucks that is dug by machine, 26-048 a patio that would drain to the wall behind it. 26-042
# and 26-046 are at prevailing wages. In 26-044 a count is overridden and a stop is accepted; 26-048 waits for its
# owner, and its bid is not ready. The pour dates leave one crew the days to prepare each of them.

WEEK: dict[str, Table] = {
    "Jobs": (
        ("job", "client", "address", "bid date", "pour date", "soil", "fiber", "irrigation lines to cap", "photos",
         "notes", "dug by"),
        ("26-041", "Tamarack Row Owners", "41 Orchard Spur, Alder Fork", "2026-04-13", "2026-04-27", "", "micro", "",
         "roll 7, 12-19", "gate is 34 in wide"),
        ("26-042", "Alder Fork Grade School", "200 Millrace Road, Alder Fork", "2026-04-15", "2026-06-15", "", "macro",
         "",
         "roll 8, 1-6", "after the last day of school"),
        ("26-043", "Ottilie Varga", "9 Fern Court, Alder Fork", "2026-04-15", "2026-04-29", "topsoil", "", "2",
         "roll 9, 1-8", "round landing by the pond"),
        ("26-044", "Heron Row Owners", "70 Canal Walk, Alder Fork", "2026-04-16", "2026-04-30", "clay", "micro", "3",
         "roll 9, 9-20", "old porch footing under the strip"),
        ("26-045", "Mill Creek Clinic", "12 Mill Creek Road, Alder Fork", "2026-04-16", "2026-05-01", "gravelly", "",
         "", "roll 10, 1-4", "drawings are metric"),
        ("26-046", "Town of Alder Fork", "Depot Street, Alder Fork", "2026-04-17", "2026-05-07", "loam", "macro", "",
         "roll 10, 5-12", "apron at the depot"),
        ("26-047", "Idris Calloway", "18 Larkspur Rise, Alder Fork", "2026-04-17", "2026-05-13", "clay", "", "",
         "roll 11, 1-7", "the old gravel drive is dug out", "machine"),
        ("26-048", "Juniper Court Bakery", "5 Juniper Court, Alder Fork", "2026-04-17", "2026-05-15", "", "micro", "",
         "roll 11, 8-15", "the owner decides: a drain at the wall, or a slope away from it"),
    ),
    "Areas": (
        ("job", "area", "shape", "length ft", "width ft", "other width ft", "thickness in", "other thickness in",
         "height above grade in", "base in", "quantity", "area ft2", "length for joint layout ft", "panel width ft",
         "old slab ft2",
         "old slab thickness in", "formed ft", "wall ft", "doweled edge ft", "doweled edges", "dowel spacing in",
         "notes", "vehicles", "slopes toward a building", "vertical change in level in", "reinforcement", "bar size",
         "bar spacing in", "vapor retarder", "street grade %"),
        ("26-041", "A1", "", "12' 6\"", "3'", "2' 9\"", "4\"", "", "", "", "", "", "", "", "", "", "12' 6\"", "",
         "12' 6\"", "1", "24", "narrows toward the lamp post"),
        ("26-041", "A2", "rectangle", "18'", "3'", "", "4 in", "5 in", "", "", "", "", "", "", "", "", "18'", "",
         "18'", "1",
         "24", "thickens to the drive"),
        ("26-042", "pad", "area given", "", "", "", "100 mm", "", "", "4", "3", "14.5 m2", "16'", "9' 9\"", "", "",
         "52'", "", "", "", "", "under the bicycle racks"),
        ("26-043", "landing", "circle", "7'", "", "", "4", "", "", "", "", "", "7'", "7'", "", "", "", "", "", "", "",
         ""),
        ("26-043", "corner", "quarter circle", "4'", "", "", "4", "", "", "", "", "", "4'", "4'", "", "", "", "", "",
         "",
         "", ""),
        ("26-043", "wedge", "triangle", "6'", "3' 6\"", "", "4", "", "-1", "", "", "", "6'", "3' 6\"", "", "", "6'", "",
         "", "", "", ""),
        ("26-043", "bed", "outline points", "", "", "", "4", "", "", "2", "", "", "9'", "4' 9\"", "", "", "", "", "",
         "", "",
         "corners taped from the gate post"),
        ("26-044", "strip", "cross-sections", "", "", "", "4", "", "", "", "", "", "", "", "", "", "", "", "", "", "",
         "between the old walk and the wall", "", "", "5/8"),
        ("26-045", "landing", "rectangle", "3.2 m", "1.8 m", "", "120 mm", "", "20 mm", "100 mm", "", "", "", "", "",
         "",
         "5 m", "3.2 m", "", "", "", "flush at the door"),
        ("26-046", "apron", "rectangle", "24'", "10'", "9'", "6", "7", "", "4", "", "", "", "", "120", "4", "24'", "",
         "24'",
         "1", "18", "thickens to the street", "heavy", "", "", "bars", "#4", "16", "", "6%"),
        ("26-046", "walk", "rectangle", "16'", "4'", "", "4", "", "", "2", "2", "", "", "", "", "", "16'", "", "", "",
         "",
         "both sides of the apron"),
        ("26-047", "drive", "rectangle", "28'", "24'", "", "5", "", "", "4", "", "", "", "", "", "", "80'", "24'", "",
         "", "", "meets the garage slab with a joint", "light", "no", "", "mesh", "", "", "yes"),
        ("26-048", "patio", "rectangle", "14'", "11' 6\"", "", "4", "", "", "3", "", "", "", "", "", "", "37'", "14'",
         "", "", "", "the yard falls to the wall", "", "yes"),
    ),
    "Cross-sections": (
        ("job", "area", "station ft", "width ft", "depth in", "old joint", "notes"),
        ("26-044", "strip", "0", "2' 4\"", "4 1/8", "", "at the steps"),
        ("26-044", "strip", "5' 1\"", "2' 6\"", "4 1/4", "yes", ""),
        ("26-044", "strip", "10' 2\"", "2' 9 1/2\"", "4", "yes", ""),
        ("26-044", "strip", "15' 3\"", "2' 7\"", "4 3/8", "yes", ""),
        ("26-044", "strip", "27'", "2' 2\"", "4 1/4", "", "at the hydrant"),
    ),
    "Outline points": (
        ("job", "area", "x ft", "y ft"),
        ("26-043", "bed", "0", "0"),
        ("26-043", "bed", "7' 6\"", "0"),
        ("26-043", "bed", "9'", "3'"),
        ("26-043", "bed", "4'", "5' 6\""),
        ("26-043", "bed", "0", "4'"),
    ),
    "Deductions": (
        ("job", "area", "shape", "length ft", "width ft", "area ft2", "quantity", "isolation", "perimeter ft", "notes"),
        ("26-043", "landing", "circle", "8\"", "", "", "1", "yes", "", "lamp post"),
        ("26-043", "bed", "rectangle", "1' 6\"", "1'", "", "2", "yes", "", "valve boxes"),
        ("26-044", "strip", "area given", "", "", "1.2", "1", "no", "", "old stoop"),
    ),
    "Edges": (
        ("job", "area", "kind", "length ft", "quantity", "dowel spacing in", "drill diameter in", "bar surface",
         "curved", "notes"),
        ("26-043", "landing", "form", "22'", "1", "", "", "", "yes", "bender board"),
        ("26-043", "corner", "form", "6' 3\"", "1", "", "", "", "yes", "bender board"),
        ("26-043", "corner", "wall", "4'", "2", "", "", "", "no", "the two straight sides"),
        ("26-043", "bed", "existing", "7' 6\"", "1", "18", "", "", "", "along the patio"),
        ("26-044", "strip", "existing", "27'", "1", "24", "1/2", "deformed", "", "along the old walk"),
        ("26-044", "strip", "existing", "2' 2\"", "1", "12", "", "", "", "at the hydrant pad"),
        ("26-044", "strip", "wall", "27'", "1", "", "", "", "", "garden wall"),
        ("26-044", "strip", "form", "2' 4\"", "1", "", "", "", "", "at the steps"),
    ),
    "Footings": (
        ("job", "area", "length ft", "width ft", "depth to top of footing in", "required cover in", "exposed sides",
         "reinforced"),
        ("26-044", "strip", "9'", "10\"", "1", "2", "1", "no"),
    ),
    "Plants": (
        ("job", "what", "quantity", "width ft", "depth ft", "height ft", "root ball ft", "ball height ft", "trunk in"),
        ("26-044", "boxwood", "3", "2' 6\"", "2'", "3'", "1' 3\"", "1'", "1"),
        ("26-044", "rose", "2", "1' 6\"", "1' 6\"", "4'", "10\"", "8\"", "3/4"),
    ),
    "Site conditions": (
        ("job", "fact", "value", "notes"),
        ("26-042", "client kind", "school"),
        ("26-042", "wage table", "prevailing"),
        ("26-042", "order rule", "fixed"),
        ("26-042", "fixed order yd3", "6.5"),
        ("26-042", "order reason", "one truck; the surplus goes under the gate posts"),
        ("26-042", "fiber dose lb/yd3", "2.4 kg/m3", "the data sheet is metric"),
        ("26-044", "moisture", "wet"),
        ("26-044", "allowed vehicle 1", "flatbed"),
        ("26-045", "sealer coats", "1", "28 days after"),
        ("26-046", "control joints", "saw-cut"),
        ("26-046", "client kind", "city"),
        ("26-046", "wage table", "prevailing"),
        ("26-046", "right of way", "yes"),
        ("26-046", "demolition saw cut ft", "34'", "both ends and one side of the old walk"),
        ("26-046", "walk or lane closed", "yes"),
        ("26-047", "client kind", "owner"),
        ("26-047", "placing crew", "3"),
        ("26-047", "finishers", "2"),
        ("26-047", "crew", "4", "one more from the second truck on"),
    ),
    "Overrides": (
        ("job", "area", "line", "value", "reason", "who"),
        ("26-044", "", "Dowels, total", "18", "one more at the hydrant pad, asked for on site", "BQ"),
        ("26-044", "", "High vertical change in level", "", "the owners have the old walk ground down in May", "BQ"),
    ),
}  # fmt: skip


def rows_of(tables: dict[str, Table]) -> Rows:
    """The rows of each sheet by header; a blank cell is left out."""
    return {
        name: [{str(header): cell for header, cell in zip(headers, row, strict=False) if cell != ""} for row in rows]
        for name, (headers, *rows) in tables.items()
    }


def books() -> dict[str, bytes]:
    """Every workbook that travels with the program, by where it stands in the checkout."""
    return {
        "templates/jobs.xlsx": blank_jobs_book(),
        "templates/jobs-full.xlsx": blank_jobs_book(full=True),
        "templates/company.xlsx": blank_company_book(),
        "templates/measure.xlsx": measure_sheet(),
        "sample_inputs/jobs.xlsx": jobs_book(rows_of(WEEK)),
        "sample_inputs/company.xlsx": company_book(rows_of(COMPANY)),
    }


if __name__ == "__main__":
    for name, content in books().items():
        (CHECKOUT / name).write_bytes(content)
