"""Prices and wages; which cost lines bear tax."""

from dataclasses import dataclass, field


@dataclass
class Pack:
    """A container of a liquid: gallons and price."""

    gallons: float
    price: float


@dataclass
class Rental:
    """Rental prices of a tool."""

    half_day: float = 0.0
    day: float = 0.0
    week: float | None = None


@dataclass
class Pay:
    """Loaded dollars an hour; a driver left blank is paid as a laborer, a blank crew rate is worked out."""

    laborer: float
    finisher: float
    driver: float | None = None
    crew_mix: float | None = None


@dataclass
class Wages:
    """The two wage tables."""

    private: Pay
    prevailing: Pay | None = None


TAXABLE = frozenset(
    [
        "concrete",
        "air",
        "pea_gravel",
        "accelerator",
        "retarder",
        "winter_heat",
        "fiber",
        "bags",
        "jackhammer",
        "chipping_hammer",
        "saw",
        "plate_compactor",
        "mixer",
        "mini_excavator",
        "generator",
        "base_rock",
        "board_2x4",
        "board_2x6",
        "board_2x8",
        "bender_board",
        "stakes",
        "form_release_agent",
        "dowel_bars",
        "drill_bits",
        "epoxy",
        "bonding_agent",
        "curing_compound",
        "sealer",
        "isolation_filler",
        "cap_and_sealant",
        "reinforcing_bars",
        "chairs",
        "ties",
        "mesh",
        "vapor_retarder",
        "bond_breaker",
        "washout",
        "bag_clean_up",
        "caution_set",
        "barricades",
    ]
)


@dataclass
class Prices:
    """Prices; nothing has a price until somebody types one. `taxable` names the cost lines that bear tax."""

    concrete: tuple[tuple[float, float], ...] = ()
    air: float = 0.0
    pea_gravel: float = 0.0
    accelerator: float = 0.0
    retarder: float = 0.0
    winter_heat: float = 0.0
    short_load_tiers: tuple[tuple[float, float], ...] = ()
    delivery: float = 0.0
    environmental: float = 0.0
    fuel: float = 0.0
    saturday: float = 0.0
    saturday_by: str = "load"
    after_hours: float = 0.0
    plant_fiber: float = 0.0
    standby_minute: float = 0.0
    micro_fiber: float = 0.0
    micro_fiber_pounds: float = 1.0
    macro_fiber: float = 0.0
    macro_fiber_pounds: float = 5.0
    pump_set_up: float = 0.0
    pump_hour: float = 0.0
    pump_yard: float = 0.0
    pump_prime: float = 0.0
    bag: float = 0.0
    bag_clean_up: float = 0.0
    washout: float = 0.0
    jackhammer: Rental = field(default_factory=Rental)
    chipping_hammer: Rental = field(default_factory=Rental)
    saw: Rental = field(default_factory=Rental)
    plate_compactor: Rental = field(default_factory=Rental)
    mixer: Rental = field(default_factory=Rental)
    mini_excavator: Rental = field(default_factory=Rental)
    mini_excavator_delivery: float = 0.0
    generator: Rental = field(default_factory=Rental)
    base_rock: float = 0.0
    base_delivery: float = 0.0
    board_2x4: float = 0.0
    board_2x6: float = 0.0
    board_2x8: float = 0.0
    bender_board: float = 0.0
    stake: float = 0.0
    form_release_agent: float = 0.0
    dowel_bar: dict = field(default_factory=dict)
    drill_bit: float = 0.0
    epoxy_tube: float = 0.0
    bonding_agent: tuple[Pack, ...] = ()
    curing_compound: tuple[Pack, ...] = ()
    sealer: tuple[Pack, ...] = ()
    isolation_strip: float = 0.0
    cap_and_sealant: float = 0.0
    reinforcing_bar: dict = field(default_factory=dict)
    chair: float = 0.0
    ties_hundred: float = 0.0
    mesh_sheet: float = 0.0
    vapor_roll: float = 0.0
    vapor_roll_size: float = 1000.0
    bond_breaker: float = 0.0
    caution_set: float = 0.0
    barricade_day: float = 0.0
    mobilization_crew: float = 0.0
    mobilization_one: float = 0.0
    taxable: frozenset = TAXABLE
