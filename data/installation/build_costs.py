"""Build costs.csv from the compiled list of generic figures: ``python build_costs.py RAW.csv OUT.csv``.

Adds a stable key to each row, in the order of the raw file; spells units so that a unit library reads them; turns
US customary units into SI; marks rows without a source as assumptions. The same raw file gives the same bytes.
"""

import csv
import hashlib
import io
import sys
from pathlib import Path

RAW_SHA256 = "eb2e0c44e1fbb7cc551683dfacd24ed78e5996847643042cfec63248778a248f"

KEYS = {
    "equipment_kit": """
        kit_6_economy_usd kit_6_standard_usd kit_9_economy_usd kit_9_standard_usd kit_9_cold_climate_usd
        kit_12_economy_usd kit_12_standard_usd kit_12_cold_climate_usd kit_18_economy_usd kit_18_standard_usd
        kit_18_cold_climate_usd kit_24_economy_usd kit_24_standard_usd kit_24_cold_climate_usd kit_30_economy_usd
        kit_30_standard_usd kit_36_economy_usd kit_36_standard_usd kit_36_cold_climate_usd""",
    "equipment_trade": """
        trade_6_standard_usd trade_9_economy_usd trade_9_standard_usd trade_9_cold_climate_usd trade_12_economy_usd
        trade_12_standard_usd trade_12_cold_climate_usd trade_18_economy_usd trade_18_standard_usd
        trade_18_cold_climate_usd trade_24_economy_usd trade_24_standard_usd trade_24_cold_climate_usd
        trade_30_standard_usd trade_30_cold_climate_usd trade_36_economy_usd trade_36_standard_usd
        trade_36_cold_climate_usd""",
    "equipment_window": """
        window_5_usd window_6_old_stock_usd window_6_minimum_2026_usd window_8_old_stock_usd
        window_8_minimum_2026_usd window_10_old_stock_usd window_10_minimum_2026_usd window_12_old_stock_usd
        window_12_minimum_2026_usd window_14_old_stock_usd window_14_minimum_2026_usd window_18_old_stock_usd
        window_18_minimum_2026_usd window_24_minimum_2026_usd window_28_minimum_2026_usd window_8_reverse_cycle_usd
        window_12_reverse_cycle_usd window_18_reverse_cycle_usd window_24_reverse_cycle_usd
        window_9_saddle_cold_climate_usd window_saddle_cooling_usd portable_two_hose_usd""",
    "materials_window": "window_bracket_usd window_panels_foam_usd window_lock_usd window_winter_cover_usd",
    "installation_tasks": """
        survey_self_h survey_contractor_h permit_application_self_h permit_application_contractor_h
        compare_quotes_self_h be_home_self_h receive_self_h receive_contractor_h
        hang_indoor_wood_frame_self_h hang_indoor_wood_frame_contractor_h
        hang_indoor_brick_on_frame_self_h hang_indoor_brick_on_frame_contractor_h
        hang_indoor_block_self_h hang_indoor_block_contractor_h
        hang_indoor_poured_concrete_self_h hang_indoor_poured_concrete_contractor_h
        wall_hole_wood_frame_self_h wall_hole_wood_frame_contractor_h
        wall_hole_brick_on_frame_self_h wall_hole_brick_on_frame_contractor_h
        wall_hole_block_self_h wall_hole_block_contractor_h
        wall_hole_grouted_block_self_h wall_hole_grouted_block_contractor_h
        wall_hole_concrete_8in_self_h wall_hole_concrete_8in_contractor_h
        wall_hole_concrete_10in_self_h wall_hole_concrete_10in_contractor_h
        wall_hole_stone_self_h wall_hole_stone_contractor_h sleeve_seal_self_h sleeve_seal_contractor_h
        set_outdoor_pad_self_h set_outdoor_pad_contractor_h
        bracket_wood_frame_self_h bracket_wood_frame_contractor_h
        bracket_brick_on_frame_self_h bracket_brick_on_frame_contractor_h
        bracket_block_self_h bracket_block_contractor_h
        bracket_poured_concrete_self_h bracket_poured_concrete_contractor_h roof_stand_contractor_h
        line_set_self_h line_set_contractor_h couplings_self_h flare_evacuate_contractor_h
        cable_self_h cable_electrician_h drain_gravity_self_h drain_pump_self_h drain_contractor_h
        circuit_10m_exposed_electrician_h circuit_10m_fished_electrician_h final_connection_electrician_h
        leak_check_run_self_h commissioning_contractor_h clean_up_self_h inspection_self_h register_self_h
        window_fit_small_self_h window_fit_large_self_h window_take_out_self_h window_refit_self_h
        window_remove_old_self_h self_install_elapsed_wood_frame_h self_install_elapsed_concrete_10in_h
        contractor_job_whole_h second_installation_hours_frac""",
    "tools": """
        sds_plus_buy_usd sds_plus_rent_usd_per_d sds_plus_resale_frac
        sds_max_buy_usd sds_max_rent_usd_per_d sds_max_resale_frac core_rig_rent_usd_per_d
        dust_extractor_buy_usd dust_extractor_rent_usd_per_d dust_extractor_resale_frac
        wall_scanner_buy_usd wall_scanner_rent_usd_per_d wall_scanner_resale_frac
        extension_ladder_buy_usd extension_ladder_rent_usd_per_d extension_ladder_resale_frac
        scaffold_rent_usd_per_d material_lift_rent_usd_per_d
        vacuum_pump_buy_usd vacuum_pump_rent_usd_per_d vacuum_pump_resale_frac
        hand_truck_buy_usd hand_truck_rent_usd_per_d hand_truck_resale_frac
        core_bit_carbide_buy_usd core_bit_diamond_buy_usd core_bit_wear_usd core_bit_extension_usd hole_saw_buy_usd
        torque_wrenches_buy_usd level_stud_finder_buy_usd multimeter_buy_usd clamp_meter_buy_usd
        thermometer_buy_usd leak_detector_buy_usd leak_soap_usd respirator_buy_usd fish_tape_buy_usd
        flaring_tool_buy_usd micron_gauge_buy_usd nitrogen_set_buy_usd minimum_hire_d hire_deposit_usd
        core_bit_life_m core_bite_m concrete_scan_usd""",
    "materials": """
        ground_pad_usd raised_stand_usd snow_stand_usd wall_bracket_usd roof_stand_usd vibration_isolators_usd
        anchors_outdoor_usd anchors_indoor_usd line_cover_kit_usd line_cover_extra_usd_per_m line_set_trade_usd_per_m
        precharged_extension_usd wall_sleeve_usd sealant_usd firestop_usd disconnect_usd gfci_breaker_usd
        ground_fault_disconnect_usd whip_usd cable_12_2_usd_per_m cable_10_2_usd_per_m conduit_usd_per_m
        standard_breaker_usd cable_14_4_usd_per_m condensate_pump_usd drain_pipe_usd_per_m surge_protector_usd
        house_surge_protector_usd service_receptacle_usd snow_hood_usd locking_caps_usd paint_patch_usd
        wired_controller_usd""",
    "permits": """
        mechanical_permit_usd electrical_permit_usd plan_review_usd reinspection_usd association_review_usd
        historic_review_usd engineer_letter_usd no_permit_penalty_frac utility_location_usd outlet_permit_usd""",
    "electrician": """
        electrician_call_out_usd electrician_hourly_usd_per_h
        circuit_5m_exposed_usd circuit_10m_exposed_usd circuit_20m_exposed_usd circuit_30m_exposed_usd
        circuit_5m_fished_usd circuit_10m_fished_usd circuit_20m_fished_usd circuit_30m_fished_usd
        circuit_120v_frac trench_usd_per_m outlet_120v_usd outlet_240v_usd final_connection_usd panel_spaces_usd
        subpanel_usd panel_replacement_usd service_upgrade_usd load_management_usd ground_fault_adder_usd""",
    "contractor": """
        contractor_billed_usd_per_h contractor_wage_usd_per_h contractor_helper_billed_usd_per_h
        equipment_markup_frac materials_markup_frac overhead_share_frac profit_share_frac callback_reserve_frac
        sales_cost_usd travel_usd peak_season_factor_frac off_season_factor_frac regional_factor_frac
        whole_quote_9_12_usd whole_quote_18_usd whole_quote_24_usd whole_quote_36_usd second_set_share_frac
        install_owner_set_usd owner_set_acceptance_frac commission_owner_kit_usd core_drilling_sub_usd""",
    "service": """
        diagnostic_call_usd leak_search_usd refrigerant_top_up_usd_per_kg recharge_usd deep_clean_usd
        self_clean_kit_usd self_clean_h filter_wash_h yearly_visit_usd board_part_usd board_fitted_usd
        fan_motor_fitted_usd sensor_fitted_usd compressor_fitted_usd drain_clog_usd joint_remade_usd line_part_usd
        return_shipping_usd recover_refrigerant_usd haul_away_split_usd window_drop_off_usd interim_rental_usd_per_d
        owner_kit_service_frac""",
    "waits": """
        survey_visit_off_d survey_visit_shoulder_d survey_visit_peak_d
        contractor_start_off_d contractor_start_shoulder_d contractor_start_peak_d
        delivery_parcel_d delivery_freight_d delivery_peak_d electrician_off_d electrician_peak_d
        permit_online_d permit_usual_d permit_slow_d inspection_d association_d landlord_consent_d
        utility_location_d window_store_d window_stock_out_d rebate_approval_d panel_upgrade_d
        kit_part_d trade_part_d technician_peak_d""",
    "repair_rates": """
        kit_dead_on_arrival_frac kit_rescue_frac kit_coupling_leak_frac contractor_flare_leak_frac
        kit_failures_age_1_per_yr kit_failures_age_2_5_per_yr kit_failures_age_6_10_per_yr
        kit_failures_age_11_15_per_yr trade_failures_age_1_per_yr trade_failures_age_2_5_per_yr
        trade_failures_age_6_10_per_yr trade_failures_age_11_15_per_yr window_failures_age_1_per_yr
        window_failures_age_2_5_per_yr window_failures_age_6_10_per_yr window_failures_age_11_15_per_yr
        overflow_per_yr overflow_damage_usd surge_loss_per_yr""",
    "warranty": """
        kit_parts_warranty_yr kit_compressor_warranty_yr kit_labour_warranty_yr kit_claims_paid_frac
        trade_parts_warranty_yr trade_parts_unregistered_yr trade_compressor_warranty_yr trade_labour_warranty_yr
        labour_plan_usd window_parts_warranty_yr window_sealed_warranty_yr registration_deadline_d
        window_exchange_d kit_restocking_frac""",
    "lives": "ductless_life_yr window_life_yr circuit_pad_life_yr replacement_installation_frac",
    "soft": """
        own_time_usd_per_h paid_helper_usd_per_h sales_tax_frac freight_usd window_resale_frac ductless_resale_frac
        house_value_contractor_frac house_value_self_permit_frac house_value_no_permit_frac written_quote_frac""",
    "physical": """
        window_leakage_loose_m2 window_leakage_taped_m2 ductless_standby_w window_standby_w pan_heater_w
        crankcase_heater_w outdoor_9_12_kg outdoor_18_kg outdoor_24_kg outdoor_36_kg indoor_9_12_kg indoor_18_36_kg
        window_5_6_kg window_8_10_kg window_12_15_kg window_18_24_kg charge_9_12_kg charge_18_kg charge_24_kg
        charge_36_kg ductless_sound_db window_single_speed_sound_db window_variable_sound_db hdd_variation_frac
        cdd_variation_frac""",
    "equipment_class": """
        small_economy_seer2 small_standard_seer2 small_cold_climate_seer2
        medium_economy_seer2 medium_standard_seer2 medium_cold_climate_seer2
        large_economy_seer2 large_standard_seer2 large_cold_climate_seer2
        small_economy_eer2 small_standard_eer2 small_cold_climate_eer2
        large_economy_eer2 large_standard_eer2 large_cold_climate_eer2
        economy_hspf2 standard_hspf2 cold_climate_hspf2
        economy_heat_5f_ratio_frac standard_heat_5f_ratio_frac cold_climate_heat_5f_ratio_frac
        economy_cutout_c standard_cutout_c cold_climate_cutout_c
        economy_min_ratio_frac standard_min_ratio_frac cold_climate_min_ratio_frac
        ductless_shr window_single_speed_shr window_variable_shr window_old_stock_ceer window_variable_ceer
        reverse_cycle_cop reverse_cycle_cutout_c saddle_cutout_c""",
    "load_measures": """
        awning_usd solar_film_usd_per_m2 ceiling_fan_usd attic_insulation_usd_per_m2 air_sealing_usd
        duct_repair_usd dehumidifier_usd""",
}

ADDED = {
    "materials_window": """
through_wall_sleeve_usd|sleeve with outside grille for a through-the-wall unit|USD|60|110|180
opening_framing_usd|header, framing, flashing and trim for an opening of 26 x 16 in in a frame wall|USD|40|80|150
opening_lintel_usd|steel lintel, mortar and flashing for an opening of 26 x 16 in in masonry|USD|80|160|320
hose_panel_usd|foam and a lock for the hose panel of a portable unit|USD|8|20|40""",
    "installation_tasks": """
opening_review_contractor_h|task=look at a wall before an opening is cut; wall=any; party=contractor|hour|0.5|1|2.5
opening_frame_self_h|task=cut and frame a wall opening; wall=wood frame; party=self|hour|4|7|12
opening_frame_contractor_h|task=cut and frame a wall opening; wall=wood frame; party=contractor|hour|3|5|8
opening_masonry_contractor_h|task=cut a wall opening, set a lintel; wall=masonry; party=contractor|hour|6|10|18
through_wall_fit_self_h|task=set sleeve, slide in unit, seal, two people; wall=any; party=self+helper|hour|1.5|2.5|4.5
through_wall_fit_contractor_h|task=set sleeve, slide in unit, seal; wall=any; party=contractor|hour|1|1.75|3
portable_fit_self_h|task=portable unit first set-up with hose panel; wall=any; party=self|hour|0.3|0.6|1.25
portable_store_self_h|task=portable unit stored and set up again, each a year; wall=any; party=self|hour|0.3|0.6|1.2
wall_cover_self_h|task=winter cover of a wall unit on and off, each a year; wall=any; party=self|hour|0.15|0.3|0.75""",
    "permits": """
opening_permit_usd|building permit for an opening in an outside wall|USD|60|150|400""",
}
"""Rows that the raw file lacks, by topic: key, item, unit, low, likely, high. Common practice, no source."""

SI = {
    "F": ("degC", lambda x: (x - 32.0) / 1.8),
    "in2/unit": ("m^2", lambda x: x * 0.0254**2),
    "in": ("m", lambda x: x * 0.0254),
    "ft drilled": ("m", lambda x: x * 0.3048),
    "lb": ("kg", lambda x: x * 0.45359237),
    "USD/lb": ("USD/kg", lambda x: x / 0.45359237),
    "USD/month": ("USD/day", lambda x: x * 12.0 / 365.0),
}
"""Exact factors: NIST SP 811 (2008), App. B.8; a month is a twelfth of 365 days."""

UNITS = {
    "USD/h": "USD/hour", "USD/person-hour": "USD/hour", "USD/day": "USD/day", "USD/m": "USD/m",
    "USD/m trench": "USD/m", "USD/m2": "USD/m^2", "person-hour": "hour", "hour elapsed": "hour", "h": "hour",
    "h/event": "hour", "day": "day", "yr": "year", "failures/yr": "1/year", "events/yr": "1/year",
    "Btu/Wh": "Btu/(W*hour)", "W": "W", "kg": "kg",
}  # fmt: skip


def unit_of(raw_unit: str) -> str:
    """Return the unit in the spelling a unit library reads; per-piece prices are plain dollars, shares have none."""
    if raw_unit in SI:
        return SI[raw_unit][0]
    if raw_unit in UNITS:
        return UNITS[raw_unit]
    return "USD" if raw_unit.startswith("USD") else "dimensionless"


def amount(text: str, raw_unit: str) -> str:
    """Return the number in SI, to five figures where it was converted, as printed where it was not."""
    return f"{SI[raw_unit][1](float(text)):.5g}" if raw_unit in SI else f"{float(text):g}"


def source(basis: str) -> str:
    """Return the citation, with the word assumption where there is none."""
    basis = basis.replace("reference/economics/checks.md", "compiled economics references")
    basis = basis.replace("reference/engineering/checks.md", "compiled engineering references")
    is_weak = "no source" in basis or "weak" in basis or "judgement" in basis
    return f"assumption: {basis}" if is_weak else basis


def built(raw: str) -> str:
    """Return the text of costs.csv."""
    keys = {topic: iter(names.split()) for topic, names in KEYS.items()}
    lines = [["key", "topic", "item", "unit", "low", "likely", "high", "source"]]
    for row in csv.DictReader(raw.splitlines()):
        unit = row["unit"]
        numbers = [amount(row[column], unit) for column in ("low", "likely", "high")]
        note = f" (given in {unit})" if unit in SI else ""
        head = [next(keys[row["topic"]]), row["topic"], row["item"] + note, unit_of(unit)]
        lines.append([*head, *numbers, source(row["basis"])])
    left = [key for names in keys.values() for key in names]
    if left:
        raise SystemExit(f"keys without a row: {left}")
    return as_csv(lines + added_lines())


def added_lines() -> list[list[str]]:
    """Return the rows that stand here and not in the raw file."""
    rows = [(topic, line.split("|")) for topic, text in ADDED.items() for line in text.strip().split("\n")]
    return [[key, topic, *rest, source("common practice, no source")] for topic, (key, *rest) in rows]


def as_csv(lines: list[list[str]]) -> str:
    """Return comma-separated lines, each ended by one line feed."""
    out = io.StringIO()
    csv.writer(out, lineterminator="\n").writerows(lines)
    return out.getvalue()


def main() -> None:
    """Read the raw file, refuse another than the reviewed one, write the table."""
    raw_path, out_path = map(Path, sys.argv[1:3])
    content = raw_path.read_bytes()
    if hashlib.sha256(content).hexdigest() != RAW_SHA256:
        raise SystemExit("the raw file is not the reviewed one")
    out_path.write_text(built(content.decode("utf-8")), encoding="utf-8", newline="\n")


if __name__ == "__main__":
    main()
