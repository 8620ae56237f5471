"""Which inputs stand behind which figures: groups of inputs by path, and the figures that each group moves.

A test perturbs every input of many cases and holds that what moves is what stands here; a new input needs a place here.
"""

from dataclasses import dataclass
from fnmatch import fnmatchcase
from functools import cache
from typing import Final

from econ.case.choices import table_path
from econ.kernel.errors import UnknownChoiceError

_NEED: Final = "need_cool_kwh need_latent_kwh need_heat_kwh"
_SHORT: Final = "unmet_cooling_kwh_per_yr unmet_heating_kwh_per_yr"
_ENERGY: Final = "electricity_kwh_per_yr fuel_kwh_per_yr emitted_kg_co2e_per_yr energy_cost_usd_per_yr"
_CASH: Final = "cash_first_cost_usd first_cost_usd"
_RUN: Final = f"{_SHORT} {_ENERGY} lcc_usd"
_HIRED_MEANWHILE: Final = f"{_NEED} {_RUN} {_CASH}"
"""Need moves cash too: the electricity of a portable unit hired until service is in the first cost."""

_WORK: Final = f"{_CASH} own_hours_h in_service_d lcc_usd"


@dataclass(frozen=True, slots=True)
class Strand:
    """Inputs that go the same way through the pipeline.

    Attributes
    ----------
    label : str
        What they are, in plain words.
    reaches : tuple of str
        Keys of the figures that they move, of those not worked out from other figures; none for what rules, drawings
        and words alone look at.
    paths : tuple of str
        Patterns of paths as tables write them, brackets left out; the first strand that fits a path is its own.
    is_chosen : bool
        Whether they pick usual values or formulas before any number is worked out.
    """

    label: str
    reaches: tuple[str, ...]
    paths: tuple[str, ...]
    is_chosen: bool = False


def _strand(label: str, reaches: str, paths: str) -> Strand:
    return Strand(label, tuple(dict.fromkeys(reaches.split())), tuple(paths.split()))


def _choice(label: str, reaches: str, paths: str) -> Strand:
    return Strand(label, tuple(dict.fromkeys(reaches.split())), tuple(paths.split()), is_chosen=True)


_CHOSEN: Final = (
    _choice(
        "what kind of room it is and how it is built",
        _HIRED_MEANWHILE,
        "rooms.kind rooms.year_built rooms.wall rooms.wall_insulated rooms.glazing rooms.shade rooms.draughts "
        "rooms.ground_cover rooms.mass_class",
    ),
    _choice(
        "size and class of the units",
        f"{_CASH} {_RUN} own_hours_h upkeep_own_h_per_yr in_service_d",
        "kit.size kit.grade hired.size hired.grade window.size window.cycle",
    ),
    _choice("what the quote holds", f"{_CASH} lcc_usd", "quote.equipment quote.electrical quote.permit quote.removal"),
    _choice("how electricity is priced", "energy_cost_usd_per_yr lcc_usd", "tariff.kind prices.since_2023_frac"),
    _choice(
        "for how long, and with whose money",
        "lcc_usd",
        "money.study_period_yr money.otherwise finance.pays_for finance.kind later.replaced_by later.sale_after_yr "
        "letting.counted letting.split_class letting.window_class letting.bonus_frac prices.pays_bill "
        "place.decision_doy",
    ),
    _choice("what the others are compared with", "", "money.base_case"),
    _choice("length of the lines in the box", _WORK, "kit.line_set_m kit.extension_allowed kit.extension_m"),
    _choice("the fit to your bills", _RUN, "bills.use_fit bills.cooling_share_frac bills.heating_share_frac"),
)

_ROOM: Final = (
    _strand(
        "weather and what the room is used for",
        _HIRED_MEANWHILE,
        "place.warming_offset_k use.cooling_setpoint_c use.heating_setpoint_c use.cool use.heat use.when",
    ),
    _strand(
        "size, sides and windows of the rooms",
        f"{_HIRED_MEANWHILE} own_hours_h",
        "rooms.floor_area_m2 rooms.window_*_m2 rooms.east rooms.south rooms.west rooms.north rooms.above rooms.below "
        "rooms.door rooms.own_unit now.house_system",
    ),
    _strand(
        "how the rooms are built and lived in",
        _HIRED_MEANWHILE,
        "rooms.north_faces rooms.kitchen rooms.ceiling_height_m rooms.length_m rooms.*_count rooms.shade_frac "
        "rooms.window_*_per_m2k rooms.window_shgc_frac rooms.wall_u_* rooms.roof_u_* rooms.floor_u_* "
        "rooms.absorptance_frac rooms.mass_j_per_m2k rooms.infiltration_per_h rooms.leakage_area_m2 "
        "rooms.air_50pa_m3_per_h rooms.appliances_w rooms.lighting_w rooms.unheated_frac",
    ),
    _strand(
        "wind, soil and rooms in the earth",
        f"{_NEED} {_RUN}",
        "place.wind_m_per_s place.soil_* earth.wall_thickness_m rooms.earth_* rooms.ground_*_frac",
    ),
    _strand(
        "what measures on the room do",
        f"{_NEED} {_RUN}",
        "measures.*.left_frac measures.*.from_c measures.*.added_m2k_per_w measures.*.raise_k measures.*.carried_frac",
    ),
    _strand("drying", f"need_latent_kwh {_RUN} {_CASH}", "use.dry use.humidity_limit_frac now.dehumidifier_kg_per_kwh"),
    _strand(
        "the heat that is there now",
        f"need_cool_kwh need_latent_kwh {_ENERGY} lcc_usd",
        "now.heat now.heat_efficiency_frac use.present_heat_stays",
    ),
)

_RULES: Final = (
    _strand(
        "what cautions, drawings and words look at",
        "",
        "place.*_design_c rooms.own_*_w now.dehumidifier money.cash_limit_usd finance.deposit_frac placement.* panel.* "
        "rules.interim_day_h rules.season_missed_frac rules.unmet_cooling_allowed_frac drilling.extension_m "
        "costs.core_bite_m costs.final_connection_usd costs.inspection_d costs.utility_location_d work.run_in_d "
        "work.start_doing work.contractor_finishes mishaps.*.days_d "
        "kit.*_kg kit.*_kg_per_m3 kit.*sound_db kit.mca_a kit.mop_a kit.label_read_frac kit.refrigerant kit.re*_d "
        "kit.restocking_frac kit.line_max_m kit.rise_max_m hired.line_max_m hired.rise_max_m hired.run_loss_per_m "
        "site.outdoor_height_m site.bracket_*_m site.hole site.anchor_* site.head_* site.door_swing site.drain_*_m "
        "site.boundary_m site.gas_meter_m site.vents_m site.bedroom_window_m site.snow_m site.outdoor_front_m "
        "costs.registration_deadline_d costs.technician_peak_d costs.*_part_d costs.window_stock_out_d "
        "site.heritage site.room_permitted site.cladding site.fire_wall site.flood site.salt_air site.pipes "
        "site.outdoor_back_m site.conductor site.breaker_a window.opening window.escape window.over_walkway "
        "window.clear_*_m window.outlet_breaker_a window.weight_kg window.sound_db window.current_a window.width_* "
        "window.height_* window.depth_* window.is_variable_frac",
    ),
)
"""The kit's own limits and the site's distances; before `_UNITS`, whose patterns are wider."""

_UNITS: Final = (
    _strand(
        "what is there now, and window units",
        f"{_CASH} own_hours_h upkeep_own_h_per_yr {_RUN} in_service_d",
        "now.cooling now.units_count window.count window.kind window.in_months",
    ),
    _strand(
        "how many sets and indoor units, and how far apart",
        f"{_CASH} own_hours_h {_RUN} in_service_d",
        "kit.count kit.heads hired.count hired.heads site.drain site.line_run_m",
    ),
    _strand(
        "what the units give and draw",
        _RUN,
        "kit.capacity_w kit.cd_frac kit.crankcase_* kit.pan_* kit.seer2 kit.eer2 kit.hspf2 kit.cutout_c kit.heat_* "
        "kit.min_ratio_frac kit.shr kit.standby_w kit.*_loss_per_m hired.capacity_w hired.cd_frac hired.crankcase_* "
        "hired.pan_* hired.seer2 hired.eer2 hired.hspf2 hired.cutout_c hired.heat_* hired.min_ratio_frac hired.shr "
        "hired.standby_w hired.*_loss_per_m window.capacity_w window.ceer window.cd_frac window.cutout_c window.heat_* "
        "window.min_ratio_frac window.shr window.standby_w window.exhaust_* window.blocked_m2 window.hose_panel_m2 "
        "window.seal now.ceer now.cd_frac now.shr now.standby_w now.unit_capacity_w costs.window_leakage_*_m2 "
        "site.line_rise_m site.drain_pump_w",
    ),
)

_MONEY: Final = (
    _strand("the price of electricity", f"{_CASH} energy_cost_usd_per_yr lcc_usd", "prices.electricity_usd_per_kwh"),
    _strand(
        "the tariff and the prices of fuels",
        "energy_cost_usd_per_yr lcc_usd",
        "tariff.* prices.carbon_usd_per_t prices.*_usd_per_therm prices.*_usd_per_gal prices.*_usd_per_cord",
    ),
    _strand(
        "what a kWh from the grid emits",
        "emitted_kg_co2e_per_yr energy_cost_usd_per_yr lcc_usd",
        "prices.grid_kg_co2e_per_kwh",
    ),
    _strand("what your hour is worth", "first_cost_usd lcc_usd", "work.hour_value_usd_per_h"),
    _strand(
        "what later years cost",
        "lcc_usd",
        "prices.*_escalation_frac money.discount_rate_real_frac money.inflation_frac money.incentive_* finance.* "
        "later.* letting.* now.unit_*_yr now.unit_worth_usd *.life_yr *.upkeep_usd_per_yr hired.extra_head_usd "
        "quote.warranty quote.labour_warranty_yr warranty.* repairs.* measures.balanced_duct.house_cop "
        "measures.fan.electric_kwh_per_yr costs.*_fitted_usd costs.diagnostic_call_usd costs.drain_clog_usd "
        "costs.circuit_pad_life_yr costs.haul_away_split_usd costs.kit_claims_paid_frac costs.*_warranty_yr "
        "costs.*_failures_age_*_per_yr costs.recover_refrigerant_usd costs.replacement_installation_frac",
    ),
)

_INSTALLING: Final = (
    _strand(
        "who may and does what, and the site",
        _WORK,
        "site.* work.helper work.skill_* work.*_hours_frac window.wall_bears kit.connection work.dry_fit_self_h "
        "work.check_parts_self_h costs.*_electrician_h",
    ),
    _strand(
        "units put away and put in again",
        "upkeep_own_h_per_yr lcc_usd",
        "costs.portable_store_self_h costs.wall_cover_self_h costs.window_refit_self_h costs.window_take_out_self_h",
    ),
    _strand("hours of each task done by yourself", _WORK, "costs.*_self_h measures.*.own_h"),
    _strand(
        "hours and waits of the trades",
        f"{_CASH} in_service_d lcc_usd",
        "costs.permit_application_contractor_h costs.*_contractor_h costs.*_d work.*_wait_d quote.wait_d work.days "
        "work.hours_per_day_h place.decision_weekday kit.volts window.outlet window.outlet_volts window.supply_v",
    ),
    _strand(
        "what can go wrong",
        f"{_CASH} own_hours_h lcc_usd",
        "mishaps.*.chance_frac mishaps.*.own_h mishaps.*.cost_usd work.mishap_* work.handyman_mishap_frac",
    ),
    _strand(
        "prices of units, parts, tools, trades and permits",
        f"{_CASH} lcc_usd",
        "costs.* kit.price_usd kit.extra_head_usd hired.equipment_usd window.price_usd quote.total_usd "
        "money.sales_tax_frac work.helper_usd_per_h work.handyman_* work.interim rules.interim_least_d "
        "interim.cooling_cop drilling.bit_reach_m",
    ),
)

STRANDS: Final[tuple[Strand, ...]] = (*_CHOSEN, *_ROOM, *_RULES, *_UNITS, *_MONEY, *_INSTALLING)
"""In the order in which a path is looked for."""


@cache
def strand_of(path: str) -> Strand:
    """Return the strand of an input.

    Parameters
    ----------
    path : str
        As the sheet writes it.

    Raises
    ------
    UnknownChoiceError
        If no strand has a pattern that fits.

    Examples
    --------
    >>> strand_of("rooms[2].floor_area_m2").label
    'size, sides and windows of the rooms'
    """
    plain = table_path(path).replace("[]", "")
    for strand in STRANDS:
        if any(fnmatchcase(plain, pattern) for pattern in strand.paths):
            return strand
    raise UnknownChoiceError("input among the strands", path, [strand.label for strand in STRANDS[:3]])
