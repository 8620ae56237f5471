"""Synthetic results for tests of what is drawn and said: invented numbers that add up."""

from dataclasses import replace

import numpy as np

from econ.evaluate.meanwhile import FirstCoolDays, WaitingYear
from econ.evaluate.result import (
    AlternativeResult,
    Block,
    Capability,
    ClimateSummary,
    Result,
    RoomLoads,
)
from econ.installation.delivery import KitReturn
from econ.installation.first_cost import LineItems, cash_first_cost_usd, first_cost_usd
from econ.installation.schedule import Schedule
from econ.installation.waiting import InterimNeed
from econ.installation.warranty import no_warranty
from econ.kernel.alternative import ALTERNATIVES, HIRED, KEEP, SELF, WINDOW, Alternative, Standing
from econ.kernel.arrays import FloatArray
from econ.kernel.caution import Caution, Severity, Topic
from econ.lifecycle.measures import Measures
from econ.lifecycle.streams import Streams
from econ.uncertainty.drawn import kept
from econ.uncertainty.verdict import Verdict

N_YEAR = 15
DISCOUNT = 0.03

FIRST_LINES: dict[Alternative, tuple[tuple[str, str, str, bool, float], ...]] = {
    Alternative.KEEP_AS_IS: (),
    Alternative.WINDOW_UNITS: (
        ("window_units", "Two window units", "equipment", True, 760.0),
        ("brackets", "Support brackets", "materials", True, 110.0),
        ("sales_tax", "Sales tax", "tax", True, 60.0),
        ("own_time", "Your hours", "own_time", False, 75.0),
    ),
    Alternative.SELF_INSTALL: (
        ("kit", "Kit, 18,000 Btu/h", "equipment", True, 1890.0),
        ("pad", "Pad, sleeve and cover", "materials", True, 310.0),
        ("tools", "Core drill hire and bits", "tools", True, 190.0),
        ("electrician", "Electrician, circuit", "labour", True, 850.0),
        ("permit", "Permit", "permit", True, 140.0),
        ("sales_tax", "Sales tax", "tax", True, 150.0),
        ("mishap", "Mishap allowance", "allowance", True, 240.0),
        ("incentive", "Incentive you confirmed", "incentive", False, -100.0),
        ("own_time", "Your hours", "own_time", False, 650.0),
    ),
    Alternative.CONTRACTED_INSTALL: (
        ("quote", "Quote", "labour", True, 6300.0),
        ("circuit", "Circuit the quote leaves out", "labour", True, 850.0),
        ("removal", "Removal of the old units", "disposal", True, 60.0),
    ),
}
OWN_HOURS = (0.0, 3.0, 26.0, 0.0)
HOUR_USD = 25.0
BY_WARRANTY_USD = (0.0, 40.0, 210.0, 330.0)
YEARLY_ENERGY_USD = (1450.0, 1390.0, 720.0, 700.0)
YEARLY_OM_USD = (40.0, 45.0, 60.0, 90.0)
LATER_USD = ((6, 820.0), (9, 870.0), (None, 0.0), (None, 0.0))
RESIDUAL_USD = (0.0, 250.0, 300.0, 350.0)
SERVICE_D = (np.nan, 11.0, 37.0, 96.0)
MEAN_C = np.array([-12.0, -8.5, -1.8, 7.2, 14.0, 19.2, 21.6, 20.4, 15.5, 8.2, -0.6, -9.0])
COOL_KWH = np.array([0.0, 0.0, 0.0, 5.0, 60.0, 240.0, 420.0, 330.0, 95.0, 5.0, 0.0, 0.0])
LATENT_KWH = np.array([0.0, 0.0, 0.0, 0.0, 40.0, 160.0, 260.0, 230.0, 70.0, 0.0, 0.0, 0.0])
HEAT_KWH = np.array([1900.0, 1500.0, 1150.0, 520.0, 140.0, 0.0, 0.0, 0.0, 60.0, 480.0, 1100.0, 1650.0])


def _rows(value: float, n_row: int) -> FloatArray:
    """Return a likely value first and doubt of 5 % around it in the rows that follow."""
    spread = np.linspace(-0.1, 0.1, max(n_row - 1, 1))[: n_row - 1]
    return value * np.concatenate([[1.0], 1.0 + spread])


def line_items(name: Alternative, n_row: int = 1) -> LineItems:
    """Return invented first-cost lines."""
    lines = FIRST_LINES[name]
    amount = np.stack([_rows(line[4], n_row) for line in lines], axis=1) if lines else np.zeros((n_row, 0))
    party = tuple("self" if line[2] == "own_time" else "contractor" for line in lines)
    return LineItems(
        key=tuple(line[0] for line in lines),
        label=tuple(line[1] for line in lines),
        category=tuple(line[2] for line in lines),
        party=party,
        unit=("each",) * len(lines),
        source=("assumption",) * len(lines),
        is_cash=np.array([line[3] for line in lines], dtype=np.bool_),
        quantity=np.ones((n_row, len(lines))),
        unit_price_usd=amount,
        amount_usd=amount,
    )


def schedule(position: int, n_row: int = 1) -> Schedule:
    """Return three tasks in a row that end at the alternative's day of service; none for keep_as_is."""
    end = SERVICE_D[position]
    wait, start, finish = np.array([0.0, 0.3, 0.8]), np.array([0.25, 0.7, 0.95]), np.array([0.3, 0.8, 1.0])
    spread = np.ones((n_row, 1))
    return Schedule(
        task=("order", "circuit", "fit"),
        label=("Order and wait for delivery", "Electrician fits the circuit", "Hang, drill and connect"),
        party=np.tile(np.array([0, 2, 0], dtype=np.int64), (n_row, 1)),
        is_active=np.full((n_row, 3), position != KEEP),
        wait_start_d=spread * wait * end,
        wait_d=spread * (start - wait) * end,
        start_d=spread * start * end,
        finish_d=spread * finish * end,
        is_critical=np.full((n_row, 3), position != KEEP),
        in_service_d=np.full(n_row, end),
    )


def kit_return(position: int, n_row: int = 1) -> KitReturn:
    """Return the last day and fee of an invented kit: day 40 and $378, dry-fitted on day 12; nothing without a kit."""
    day, fitted, fee = (40.0, 12.5, 378.0) if position == SELF else (np.nan,) * 3
    return KitReturn(np.full(n_row, day), np.full(n_row, fitted), np.full(n_row, fee))


def capability(position: int) -> Capability:
    """Return an invented capacity line; heating stops at its cut-out, and window units give none."""
    at = np.arange(-34.0, 46.0, 2.0)
    cool = np.where(at > 15.0, 5275.0 - 28.0 * (at - 35.0), np.nan)
    heat = np.where((at >= -26.0) & (at <= 18.0), 5100.0 + 85.0 * (at - 8.3), np.nan)
    if position == KEEP:
        return Capability(at, cool * 0.6, np.full_like(at, np.nan), "what you have", 3000.0, 120.0)
    if position == WINDOW:
        return Capability(at, cool * 0.9, np.full_like(at, np.nan), "two 8,000 Btu/h window units", 4700.0, 120.0)
    return Capability(at, cool, heat, "18,000 Btu/h cold-climate class", 5275.0, 240.0)


def _by_use(month_kwh: FloatArray, *, pumps: bool) -> FloatArray:
    """Return a month's electricity cut into cooling, heating, standby, make-up heat and drying."""
    cooling = 0.3 * (COOL_KWH + LATENT_KWH)
    heat, none = month_kwh - cooling, np.zeros(12)
    return np.stack([cooling, 0.9 * heat if pumps else none, none, 0.1 * heat if pumps else heat, none])


def alternative(position: int, n_row: int = 1) -> AlternativeResult:
    """Return one invented way to go; only self-install needs a licensed party."""
    name = ALTERNATIVES[position]
    items = line_items(name, n_row)
    pumps = position in {SELF, HIRED}
    yes = np.ones(n_row, dtype=np.bool_)
    month = _rows(1.0, n_row)[:, None] * (0.3 * (COOL_KWH + LATENT_KWH) + HEAT_KWH / (2.9 if pumps else 1.0))
    return AlternativeResult(
        name=name,
        standing=Standing.WITH_HELP if position == SELF else Standing.OPEN,
        reasons=("An electrician must do the circuit.",) if position == SELF else (),
        meets_cooling=yes if position != KEEP else ~yes,
        meets_heating=yes,
        meets_drying=yes,
        meets_need=yes if position != KEEP else ~yes,
        is_in_time=yes if position != HIRED else ~yes,
        is_within_cash=yes,
        line_items=items,
        first_cost_usd=first_cost_usd(items),
        cash_first_cost_usd=cash_first_cost_usd(items),
        own_hours_h=np.full(n_row, OWN_HOURS[position]),
        upkeep_own_h_per_yr=np.full(n_row, 2.5 * (position == WINDOW)),
        electricity_kwh=month,
        fuel_kwh=np.zeros((n_row, 12)),
        energy_cost_usd_per_yr=_rows(YEARLY_ENERGY_USD[position], n_row),
        emitted_kg_co2e_per_yr=0.4 * month.sum(axis=1),
        make_up_heat_kwh=np.tile(HEAT_KWH * (0.04 if pumps else 1.0), (n_row, 1)),
        unmet_cooling_kwh_per_yr=np.full(n_row, 410.0 if position == KEEP else 0.0),
        unmet_heating_kwh_per_yr=np.full(n_row, 0.04 * HEAT_KWH.sum() if pumps else HEAT_KWH.sum()),
        unmet_cooling_h=np.full(n_row, 380.0 if position == KEEP else 0.0),
        unmet_heating_h=np.full(n_row, 70.0 if pumps else 4100.0),
        unmet_cooling_kh=np.zeros(1),
        hours_above_humidity_limit_h=np.zeros(n_row),
        electricity_by_use_kwh=_by_use(month[0], pumps=pumps),
        use_label=("cooling", "heating", "standby and small heaters", "make-up heat", "drying"),
        unmet_moisture_kg_per_yr=np.full(n_row, 0.0),
        schedule=schedule(position, n_row),
        in_service_d=np.full(n_row, SERVICE_D[position]),
        in_service_exists=position != KEEP,
        waiting_cdd_kd=np.full(n_row, 0.0 if position == KEEP else SERVICE_D[position]),
        waiting_h=np.full(n_row, 0.0 if position == KEEP else 2.0 * SERVICE_D[position]),
        waiting_kh=np.full(n_row, 0.0 if position == KEEP else 4.0 * SERVICE_D[position]),
        waiting_day_kd=np.full(n_row, 0.0 if position == KEEP else 4.5),
        waiting_day_h=np.full(n_row, 0.0 if position == KEEP else 9.0),
        waiting_day_usd=np.full(n_row, 0.0 if position == KEEP else 6.0),
        interim_cost_usd=np.zeros(n_row),
        until_service_usd=np.full(n_row, 0.0 if position == KEEP else 1.5 * SERVICE_D[position]),
        spare_d=np.full(n_row, np.nan if position == KEEP else 60.0 - SERVICE_D[position]),
        kit_return=kit_return(position, n_row),
        warranty=no_warranty(n_row),
        doubts=(),
        capability=capability(position),
    )


def streams(ways: tuple[AlternativeResult, ...], n_row: int = 1) -> Streams:
    """Return the yearly costs that follow from the ways' first costs and the yearly figures above."""
    year = np.arange(N_YEAR + 1)
    flat = (year > 0).astype(np.float64)
    energy = np.stack([way.energy_cost_usd_per_yr[:, None] * flat for way in ways])
    om = np.stack([_rows(cost, n_row)[:, None] * flat for cost in YEARLY_OM_USD])
    later = np.stack([_rows(cost, n_row)[:, None] * (year == when) for when, cost in LATER_USD])
    residual = np.stack([_rows(worth, n_row)[:, None] * (year == N_YEAR) for worth in RESIDUAL_USD])
    return Streams(np.stack([way.line_items.amount_usd.sum(axis=1) for way in ways]), energy, om, later, residual)


def components(flows: Streams) -> dict[str, FloatArray]:
    """Return present values by piece."""
    factor = (1.0 + DISCOUNT) ** -np.arange(N_YEAR + 1)
    return {
        "first_cost": flows.first_usd,
        "energy": flows.energy_usd @ factor,
        "upkeep": flows.om_usd @ factor,
        "replacement": flows.replacement_usd @ factor,
        "residual": -(flows.residual_usd @ factor),
    }


def measures(pieces: dict[str, FloatArray], flows: Streams, base: int = WINDOW) -> Measures:
    """Return measures by plain arithmetic; those against the base case do not exist for the base case itself."""
    lcc = np.sum(list(pieces.values()), axis=0)
    running = flows.energy_usd[..., 1] + flows.om_usd[..., 1]
    exists = (flows.first_usd > flows.first_usd[base]) & (running < running[base])
    with np.errstate(divide="ignore", invalid="ignore"):
        payback = np.where(exists, (flows.first_usd - flows.first_usd[base]) / (running[base] - running), np.nan)
        sir = np.where(exists, 1.0 + (lcc[base] - lcc) / (flows.first_usd - flows.first_usd[base]), np.nan)
    airr = (1.0 + DISCOUNT) * np.maximum(sir, 0.0) ** (1.0 / N_YEAR) - 1.0
    no = np.zeros_like(exists)
    return Measures(
        lcc_usd=lcc,
        annualised_cost_usd_per_yr=lcc * DISCOUNT / (1.0 - (1.0 + DISCOUNT) ** -N_YEAR),
        net_savings_usd=lcc[base] - lcc,
        sir=sir,
        airr=airr,
        irr=airr,
        simple_payback_yr=payback,
        discounted_payback_yr=payback * 1.15,
        sir_exists=exists,
        airr_exists=exists,
        irr_exists=exists,
        irr_is_multiple=no,
        simple_payback_exists=exists,
        discounted_payback_exists=exists,
        simple_payback_is_undone=no,
        discounted_payback_is_undone=no,
    )


def climate() -> ClimateSummary:
    """Return a cold invented place."""
    bins = np.arange(-30.0, 38.0, 2.0)
    hours = np.exp(-0.5 * ((bins - 7.0) / 13.0) ** 2)
    return ClimateSummary(
        station="Anywhere Field, MN",
        hdd18_3_kd=4800.0,
        cdd18_3_kd=290.0,
        heat_design_c=-26.0,
        cool_design_c=30.5,
        mean_c=MEAN_C,
        bin_c=bins,
        bin_h=8760.0 * hours / hours.sum(),
        bin_cool_w=np.maximum(0.0, 210.0 * (bins - 15.0)),
        bin_heat_w=np.maximum(0.0, 105.0 * (14.0 - bins)),
        bin_cool_high_w=np.maximum(0.0, 250.0 * (bins - 13.0)),
        bin_heat_high_w=np.maximum(0.0, 125.0 * (16.0 - bins)),
        period="1991-2020",
    )


def rooms() -> RoomLoads:
    """Return a den that is served and a bedroom behind a closed door."""
    return RoomLoads(
        name=("Den", "Bedroom"),
        is_served=np.array([True, False]),
        design_cooling_sensible_w=np.array([2900.0, 700.0]),
        design_cooling_latent_w=np.array([800.0, 150.0]),
        design_heating_w=np.array([4300.0, 1100.0]),
        annual_cooling_sensible_kwh=np.array([1155.0, 210.0]),
        annual_cooling_latent_kwh=np.array([760.0, 90.0]),
        annual_heating_kwh=np.array([8500.0, 1900.0]),
        design_cooling_method=("load_factors", "hourly"),
        hourly_cooling_w=np.array([2500.0, 700.0]),
        load_factor_cooling_w=np.array([2900.0, 640.0]),
        monthly_cooling_sensible_kwh=np.outer([1155.0, 210.0], np.full(12, 1.0 / 12.0)),
        monthly_cooling_latent_kwh=np.outer([760.0, 90.0], np.full(12, 1.0 / 12.0)),
        monthly_heating_kwh=np.outer([8500.0, 1900.0], np.full(12, 1.0 / 12.0)),
        degree_day_heating_kwh=np.array([9000.0, np.nan]),
        hand_part_label=("the set-back", "sun on walls"),
        hand_part_kwh=np.array([[-400.0, -100.0], [0.0, 0.0]]),
        moisture_share_frac=np.array([0.4, 0.3]),
        block=Block(3700.0, 800.0, 4300.0, "load_factors", 17),
        balance_point_c=np.array([14.0, 15.0]),
        piece_label=("walls", "roof", "west windows", "outdoor air", "people and things"),
        loss_label=("walls, roof and floor", "windows", "ground", "outdoor air"),
        loss_w=np.array([[1700.0, 900.0, 600.0, 1100.0], [450.0, 250.0, 0.0, 400.0]]),
        piece_w=np.array([[420.0, 300.0, 1620.0, 760.0, 600.0], [180.0, 120.0, 150.0, 250.0, 150.0]]),
    )


CAUTIONS = (
    Caution(
        code="electrical.prove_dead",
        topic=Topic.WORK,
        severity=Severity.HOLD_POINT,
        message="Mains power is worked on.",
        action="Switch off at the panel and prove it dead before anyone touches a wire.",
        party="electrician",
        source="common practice, no source",
        alternatives=("self_install",),
    ),
)


def result(n_row: int = 1, base: int = WINDOW) -> Result:
    """Return an invented result whose numbers add up; rows after the first are draws around it."""
    ways = tuple(alternative(position, n_row) for position in range(len(ALTERNATIVES)))
    flows = streams(ways, n_row)
    pieces = components(flows)
    return Result(
        results_version=1,
        base_case=ALTERNATIVES[base],
        study_period_yr=N_YEAR,
        climate=climate(),
        rooms=rooms(),
        need_cool_kwh=np.tile(COOL_KWH, (n_row, 1)),
        need_latent_kwh=np.tile(LATENT_KWH, (n_row, 1)),
        need_heat_kwh=np.tile(HEAT_KWH, (n_row, 1)),
        mean_cooling_w=np.array([500.0]),
        unmet_cooling_allowed_frac=0.03,
        alternatives=ways,
        streams=flows,
        measures=measures(pieces, flows, base),
        component_usd=pieces,
        lcc_at_zero_hour_usd=sum(pieces.values()) - np.stack([way.own_hours_h * HOUR_USD for way in ways]),
        by_warranty_usd=np.stack([_rows(paid, n_row) for paid in BY_WARRANTY_USD]),
        terms=(None,) * len(ALTERNATIVES),
        waiting=waiting_year(),
        cautions=CAUTIONS,
        first_cool_days=FirstCoolDays(
            np.array([np.nan, 11.0, 30.0, 60.0]), np.array([np.nan, 14.0, 58.0, 140.0]), np.zeros(4), np.zeros(4), 512
        ),
    )


def waiting_year() -> WaitingYear:
    """Return months of an invented place that is too warm from May to September."""
    warm_h = np.array([0.0, 0.0, 0.0, 0.0, 31.0, 180.0, 310.0, 248.0, 30.0, 0.0, 0.0, 0.0])
    need = InterimNeed(*(factor * warm_h[None, :] for factor in (1.0, 2.0, 0.1, 0.5, 0.2)))
    return WaitingYear(need, warm_h / 2.0, warm_h / 2.0, 20.0, 110.0)


def with_way(whole: Result, position: int, **changes: object) -> Result:
    """Return a result in which one way to go is changed."""
    ways = list(whole.alternatives)
    ways[position] = replace(ways[position], **changes)  # type: ignore[arg-type]
    return replace(whole, alternatives=tuple(ways))


def verdict(whole: Result, kind: str = "clear", chance: tuple[float, ...] = (np.nan, 0.04, 0.95, 0.01)) -> Verdict:
    """Return the verdict that the likely lifetime costs give, of a chosen kind."""
    eligible = tuple(bool(way.meets_need[0]) and way.standing != Standing.NOT_ALLOWED for way in whole.alternatives)
    cost = np.where(eligible, whole.measures.lcc_usd[:, 0], np.inf)
    order = np.argsort(cost)
    n_eligible = sum(eligible)
    return Verdict(
        kind=kind,
        winner=ALTERNATIVES[order[0]] if n_eligible else None,
        runner_up=ALTERNATIVES[order[1]] if n_eligible > 1 else None,
        gap_usd=float(cost[order[1]] - cost[order[0]]) if n_eligible > 1 else np.nan,
        chance=tuple(c if fits else np.nan for c, fits in zip(chance, eligible, strict=True)),
        chance_error=tuple(0.01 if fits else np.nan for fits in eligible),
        reasons=tuple(() if fits else ("short_of_need",) for fits in eligible),
        eligible=eligible,
    )


def drawn(n_row):
    """Return what would be kept of so many draws of the invented result."""
    return kept(result(n_row), np.asarray(0.3))
