"""The facts of a bid. Prices and factors stand in files of their own and are offered from here too."""

from dataclasses import dataclass, field
from datetime import date

from .factors import SOILS, Factors
from .prices import TAXABLE, Pack, Pay, Prices, Rental, Wages

__all__ = [
    "SOILS",
    "TAXABLE",
    "Area",
    "Deduction",
    "Edge",
    "Factors",
    "Footing",
    "Job",
    "Pack",
    "Pay",
    "Plant",
    "Prices",
    "Rental",
    "Shape",
    "Site",
    "Station",
    "Vehicle",
    "Wages",
]


@dataclass
class Station:
    """A width of the slab at a distance along the tape, both in feet."""

    at: float
    width: float


@dataclass
class Shape:
    """A plan shape. Kinds: rectangle, trapezoid, triangle, circle, quarter circle, stations, polygon, area given.

    Trapezoid: `width` and `width_2` are the two ends. Triangle: `length` is a side, `width` the height on it.
    Circle: `length` is the diameter. Quarter circle: `length` is the radius.
    """

    kind: str = "rectangle"
    length: float = 0.0
    width: float = 0.0
    width_2: float = 0.0
    stations: tuple[Station, ...] = ()
    points: tuple[tuple[float, float], ...] = ()
    area: float = 0.0


@dataclass
class Deduction:
    """A hole in the slab (post, box, tree well), with its count."""

    shape: Shape
    count: int = 1
    isolation: bool = True
    perimeter: float = 0.0


@dataclass
class Edge:
    """One edge. Kinds: form, existing, wall, building, open. Lengths in feet; dowel facts in inches."""

    kind: str
    length: float
    repeats: int = 1
    dowel_spacing: float | None = None
    end_distance: float = 6.0
    embedment: float = 6.0
    projection: float = 6.0
    bar_diameter: float = 0.375
    drill_diameter: float | None = None
    isolation: bool | None = None
    curved: bool = False


@dataclass
class Footing:
    """An old footing under the new slab. Plan in feet; depth to its top and required cover in inches."""

    length: float
    width: float
    top_below: float
    cover: float = 2.0
    exposed_sides: int = 0
    reinforced: str = "no"
    bond_breaker: bool = False


@dataclass
class Plant:
    """Plants of one kind: count, brush size and root ball, in feet."""

    count: int
    width: float = 0.0
    depth: float = 0.0
    height: float = 0.0
    ball_diameter: float = 0.0
    ball_height: float = 0.0


@dataclass
class Area:
    """One piece of new slab. Feet in plan, inches in depth; everything of it is multiplied by `copies`."""

    shape: Shape
    name: str = "A1"
    copies: int = 1
    thickness: float = 4.0
    edge_1: float | None = None
    edge_2: float | None = None
    depths: tuple[float, ...] = ()
    base: float = 0.0
    height_above_grade: float = 0.0
    run: float | None = None
    panel_width: float | None = None
    run_slope: float | None = None
    old_slab_area: float = 0.0
    old_slab_thickness: float = 0.0
    saw_cut: float = 0.0
    edges: tuple[Edge, ...] = ()
    footings: tuple[Footing, ...] = ()
    deductions: tuple[Deduction, ...] = ()
    old_joints: tuple[float, ...] = ()
    forced_cross_joints: int | None = None
    forced_long_joints: int | None = None
    reinforcement: str = "none"
    bar_number: int = 4
    bar_spacing: float = 18.0
    vapor_retarder: bool = False


@dataclass
class Vehicle:
    """A truck or trailer. `hired` means that it comes with its driver."""

    name: str
    bed: float
    payload: float
    heaped: float = 1.0
    per_hour: float = 0.0
    per_mile: float = 0.0
    hired: bool = False
    minimum_hours: float = 0.0


@dataclass
class Site:
    """A disposal site. Kinds: mixed, green, soil, concrete."""

    name: str
    kind: str
    per_ton: float = 0.0
    per_yard: float = 0.0
    per_load: float = 0.0
    minimum: float = 0.0
    contamination: float = 0.0
    minutes: float = 0.0
    miles: float = 0.0
    turnaround: float = 0.0
    closes: float | None = None
    takes_wet: bool = True
    takes_roots: bool = True


@dataclass
class Job:
    """One bid: areas, what is removed, the crew, the ways allowed, and what things cost."""

    areas: tuple[Area, ...]
    prices: Prices
    wages: Wages
    name: str = "job"
    factors: Factors = field(default_factory=Factors)
    plants: tuple[Plant, ...] = ()
    fleet: tuple[Vehicle, ...] = ()
    sites: tuple[Site, ...] = ()
    plant_drive: float = 25.0
    soil: str = "loam"
    moisture: str = "damp"
    turf: bool = False
    mix_psi: float = 3500.0
    air: bool = False
    fiber: str = "none"
    fiber_dose: float = 0.0
    accelerator: bool = False
    retarder: bool = False
    winter_heat: bool = False
    crew: int = 3
    placers: int = 2
    finishers: int = 1
    methods: tuple[str, ...] = ("chute", "barrow")
    barrow_distance: float | None = None
    barrows: int = 2
    spoil_way: float | None = None
    wet_way: bool | None = None
    way_slope: float | None = None
    machine_digging: bool = False
    power: bool = False
    caps: int = 0
    close_days: float = 3.0
    permit: float | None = None
    air_temperature: float | None = None
    concrete_temperature: float | None = None
    bond_coats: int = 1
    sealer_coats: int = 0
    joints: str = "tooled"
    order_rule: str = "risk"
    fixed_order: float = 0.0
    wage_table: str = "private"
    unforeseen_hours: float = 0.0
    keep_backfill: bool = False
    after_hours: bool = False
    pour_date: date | None = None
    retainage: float = 0.0
    draws: tuple[float, ...] = ()
