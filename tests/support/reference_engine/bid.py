"""Cost lines of a job, and the way from direct cost to the bid."""

from .bars import Dowels, Reinforcement
from .facts import Job, Pack
from .hauling import BaseHaul, HaulPlan
from .labor import Tasks
from .rentals import cheapest_packs, rental_money
from .rounding import add_money, money, up
from .takeoff import Takeoff


def _packs(gallons: float, packs: tuple[Pack, ...]) -> float:
    """Money for the cheapest whole packs."""
    return cheapest_packs(gallons, packs)[1]


def gallons(job: Job, t: Takeoff) -> dict[str, float]:
    """Gallons of bonding agent, curing compound and sealer."""
    f = job.factors
    return {
        "bonding_agent": t.bond_area * job.bond_coats / f.bond_coverage,
        "curing_compound": t.slab_area / f.cure_coverage,
        "sealer": t.slab_area * job.sealer_coats / f.sealer_coverage,
    }


def form_lines(job: Job, t: Takeoff) -> dict[str, float]:
    """Boards by class and stakes over their uses, bender board on curves, form release agent once with forms."""
    p, f = job.prices, job.factors
    lines = {f"board_{c}": feet * getattr(p, f"board_{c}") / f.board_uses for c, feet in t.boards.items()}
    lines["bender_board"] = sum(a.bender_feet for a in t.areas) * p.bender_board
    lines["stakes"] = sum(a.stakes for a in t.areas) * p.stake / f.stake_uses
    lines["form_release_agent"] = p.form_release_agent if t.form_feet > 0 else 0.0
    return lines


def material_lines(job: Job, t: Takeoff, dowels: Dowels, mats: Reinforcement) -> dict[str, float]:
    """Materials that do not depend on the way of placing."""
    p, f = job.prices, job.factors
    lines = {"base_rock": t.base_bought * p.base_rock} | form_lines(job, t)
    lines |= {
        "dowel_bars": sum(n * p.dowel_bar.get(size, 0.0) for size, n in dowels.bars.items()),
        "drill_bits": dowels.bits * p.drill_bit,
        "epoxy": dowels.epoxy_tubes * p.epoxy_tube,
        "isolation_filler": up(t.isolation_feet / f.isolation_piece) * p.isolation_strip,
        "cap_and_sealant": t.isolation_feet * p.cap_and_sealant,
        "reinforcing_bars": sum(n * p.reinforcing_bar.get(size, 0.0) for size, n in mats.stock_bars.items()),
        "chairs": mats.chairs * p.chair,
        "ties": mats.tie_hundreds * p.ties_hundred,
        "mesh": mats.sheets * p.mesh_sheet,
        "vapor_retarder": mats.vapor_rolls * p.vapor_roll,
        "bond_breaker": t.bond_breaker_area * p.bond_breaker,
        "caution_set": p.caution_set,
        "barricades": job.close_days * p.barricade_day,
    }
    return lines | {name: _packs(need, getattr(p, name)) for name, need in gallons(job, t).items()}


def rental_lines(job: Job, tasks: Tasks, last_load_day: int) -> dict[str, float]:
    """Tools by the hours of their own tasks; a machine that loads stays to the day of the last load."""
    p, f, prep = job.prices, job.factors, tasks.prep
    saw = prep["saw_cut"] + tasks.pour["sawn_joints"]
    machine = prep["dig"] + prep["load_out"] if job.machine_digging else 0.0
    return {
        "jackhammer": rental_money(prep["break_slab"], p.jackhammer, f),
        "chipping_hammer": rental_money(prep["chip"], p.chipping_hammer, f),
        "saw": rental_money(saw, p.saw, f),
        "plate_compactor": rental_money(prep["base"], p.plate_compactor, f),
        "mini_excavator": rental_money(machine, p.mini_excavator, f, last_load_day),
        "mini_excavator_delivery": p.mini_excavator_delivery if machine > 0 else 0.0,
    }


def haul_lines(job: Job, plan: HaulPlan | None, base: BaseHaul) -> dict[str, float]:
    """Dump fees, truck, driver and separating of the spoil; truck and driver, or delivery, of the rock."""
    lines = {
        "base_truck": base.truck,
        "base_driver": base.driver,
        "base_delivery": job.prices.base_delivery if base.delivered else 0.0,
    }
    if plan is not None:
        lines |= {
            "dump_fees": plan.tip,
            "haul_truck": plan.truck,
            "haul_driver": plan.driver,
            "separating": plan.separating,
        }
    return lines


def visit_lines(job: Job, crew_visits: int, single_visits: int) -> dict[str, float]:
    """Vehicle and fuel of coming to the job, and the permit."""
    return {
        "mobilization_crew": crew_visits * job.prices.mobilization_crew,
        "mobilization_one": single_visits * job.prices.mobilization_one,
        "permit": job.permit or 0.0,
    }


def payments(job: Job, bid: float) -> list[float]:
    """Deposit, then the draws by their shares of the rest; the last takes the odd cent."""
    f = job.factors
    deposit = f.deposit_share * bid
    deposit = money(deposit if f.deposit_cap is None else min(deposit, f.deposit_cap))
    rest = add_money([bid, -deposit])
    shares = job.draws or (1.0,)
    draws = [money(rest * s) for s in shares[:-1]]
    return [deposit, *draws, add_money([rest, *[-d for d in draws]])]


def from_cost_to_bid(job: Job, lines: dict[str, float], area: float) -> dict[str, object]:
    """Tax on purchases, contingency, overhead, margin, and the bid rounded up to the job's step."""
    f = job.factors
    subtotal = add_money(lines.values())
    taxable = add_money(v for name, v in lines.items() if name in job.prices.taxable)
    tax = money(taxable * f.tax)
    direct = add_money([subtotal, tax])
    contingency = money(direct * f.contingency)
    overhead = money((direct + contingency) * f.overhead)
    full = add_money([direct, contingency, overhead])
    price = money(full / (1 - f.margin))
    bid = money(up(max(price, f.minimum_job), f.price_step))
    return {
        "lines_total": subtotal,
        "taxable_total": taxable,
        "sales_tax": tax,
        "direct_cost": direct,
        "contingency": contingency,
        "overhead": overhead,
        "break_even_cost": full,
        "price_before_rounding": price,
        "bid": bid,
        "bid_per_foot2": bid / area,
        "margin_kept": (bid - full) / bid if bid else 0.0,
        "equivalent_markup": bid / full - 1 if full else 0.0,
        "minimum_applied": price <= f.minimum_job,
        "payments": payments(job, bid),
        "retainage": money(job.retainage * bid),
    }
