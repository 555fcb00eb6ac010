"""Loads: by room and by weight, whichever is more, and how high to fill the box."""

from __future__ import annotations

from calc.declare import (
    FT3_PER_YD3,
    IN_PER_FT,
    Section,
    at,
    count_of,
    if_given,
    is_word,
    largest,
    line,
    round_up,
    row_word,
    smallest,
    when,
)
from calc.trade.dig import Spoil
from calc.trade.inputs import Site, Vehicle
from calc.trade.levels import STREAM, VEHICLE
from calc.trade.old_concrete import Rubble

GREEN, SOIL, CONCRETE = STREAM.axis.words


class Bed(Section, title="What each vehicle holds", each=VEHICLE, sheet="Dig and haul"):
    """0 for what the house book does not say."""

    name = line("Vehicle", "", row_word(VEHICLE), source="house book")
    room = line("Room when heaped", "yd3", if_given(Vehicle.box, 0) * Vehicle.heap, source="box times heap")
    payload = line("Payload", "ton", if_given(Vehicle.payload, 0), source="house book, as weighed")
    floor = line(
        "Floor of the bed",
        "ft2",
        if_given(Vehicle.bed_length, 0) * if_given(Vehicle.bed_width, 0),
        source="length times width of the bed",
    )


class First(Section, title="The vehicle that hauls first", sheet="Dig and haul"):
    """0 where the house book has no vehicle: the piles then stand in yd3 and tons, and loads say so."""

    room = line("Its room", "yd3", at(Bed.room, Site.vehicle), source="of that vehicle")
    payload = line("Its payload", "ton", at(Bed.payload, Site.vehicle), source="of that vehicle")
    floor = line("Its floor", "ft2", at(Bed.floor, Site.vehicle), source="of that vehicle")


class Pile(Section, title="Piles and loads", each=STREAM, sheet="Dig and haul"):
    """Each pile on the vehicle that hauls first. Overweight is never planned."""

    loose = line(
        "Spoil, loose",
        "yd3",
        when(
            is_word(row_word(STREAM), GREEN),
            Spoil.green_loose,
            when(is_word(row_word(STREAM), SOIL), Spoil.loose, Rubble.loose),
        ),
        source="of the pile",
        adds=True,
    )
    tons = line(
        "Spoil, weight",
        "ton",
        when(
            is_word(row_word(STREAM), GREEN),
            Spoil.green_tons,
            when(is_word(row_word(STREAM), SOIL), Spoil.tons, Rubble.tons),
        ),
        source="of the pile",
        adds=True,
    )
    by_room = line(
        "Loads by room",
        "load",
        when(First.room > 0, count_of(round_up(loose / First.room), "load"), 0),
        source="loose volume over the room of the heaped box",
    )
    by_weight = line(
        "Loads by weight",
        "load",
        when(First.payload > 0, count_of(round_up(tons / First.payload), "load"), 0),
        source="weight over the payload",
    )
    loads = line("Loads", "load", largest(by_room, by_weight), source="whichever is more; no pile, no load", adds=True)
    governs = line(
        "Governed by",
        "",
        when(loads > 0, when(by_weight > by_room, "weight", "room"), "no load"),
        source="weight where it asks for more loads than room does",
    )
    fill = line(
        "Fill line",
        "yd3",
        when(
            tons > 0,
            when(
                First.room > 0,
                smallest(First.room, First.payload * loose / tons),
                First.payload * loose / tons,
            ),
            First.room,
        ),
        source="the loose volume that weighs as much as the payload, or the full box of a vehicle that has one",
    )
    inches = line(
        "Fill line in the box",
        "in",
        when(First.floor > 0, fill * FT3_PER_YD3 * IN_PER_FT / First.floor, 0),
        source="the height of the load over the floor of the bed, level",
    )
