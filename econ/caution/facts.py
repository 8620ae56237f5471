"""Facts: what rules look at, one number or claim a decision row."""

from dataclasses import dataclass, fields

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray
from econ.kernel.errors import ShapeError


@dataclass(frozen=True, slots=True, eq=False)
class Facts:
    """Site, equipment and results of each row, shape (B,) each; numbers that are not known are NaN and raise nothing.

    Attributes
    ----------
    built_yr : ndarray
        Year the oldest room was built. [year]
    wall_thickness_m, bite_m : ndarray
        Wall to drill; depth of one bite of the core bit. [m] [m]
    is_masonry, is_veneer, is_frame : ndarray
        Wall to drill: block, concrete, brick or stone; brick over frame; wood frame.
    earth_depth_m : ndarray
        Deepest floor below grade among the rooms. [m]
    is_lower_level : ndarray
        Some room is one.
    closed_rooms_count : ndarray
        Rooms behind a closed door, where there is more than one room. [dimensionless]
    permit_needed, permit_unknown, electrical_licensed, is_let, is_tenant : ndarray
        Rules of the place: a permit is needed; it is not known; owners are not known to be allowed electrical work.
    consent_needed : ndarray
        An association must agree, or it is not known.
    is_flare : ndarray
        The lines are flared, not quick-connect.
    extension_allowed, is_old_stock : ndarray
        The maker allows an extension of the lines; the kit holds a refrigerant that is being phased down.
    extension_m : ndarray
        What one extension adds to the line in the box. [m]
    line_run_m, line_box_m, line_limit_m, line_rise_m, rise_limit_m : ndarray
        Line needed, line in the box, longest allowed, height difference and its limit. [m]
    charge_kg, lfl_kg_per_m3, floor_area_m2 : ndarray
        Refrigerant charge, its lower flammability limit, floor of the smallest room the indoor unit hangs in.
        [kg] [kg/m^3] [m^2]
    circuit_shared, circuit_unknown, panel_lacks, panel_unknown, outlet_shared, outlet_unknown : ndarray
        Circuit and panel of the kit, outlet of the window unit.
    outlet_other_volts : ndarray
        The window unit needs another voltage than its outlet has.
    window_a, window_limit_a : ndarray
        Current of one window unit; most that it may draw from its outlet, infinite where there is none. [A] [A]
    label_read, ground_fault_asked, ground_fault_unknown, receptacle_lacks : ndarray
        The kit's label was read; the code in force asks for ground-fault protection; which code is not known; no
        outdoor outlet for service is known.
    mca_a, mop_a, breaker_a, conductor_a : ndarray
        Minimum ampacity and largest breaker of the kit; breaker of its circuit; what its wire carries. [A] [A] [A] [A]
    voltage_drop_frac : ndarray
        Share of the supply lost on the way to the kit at its minimum ampacity. [dimensionless]
    service_load_a, service_a : ndarray
        Calculated current of the home with the kit; rating of its service. [A] [A]
    outdoor_kg, indoor_kg, window_kg : ndarray
        Weights. [kg]
    has_helper : ndarray
        A second person is there.
    has_handyman, finish_unasked : ndarray
        A handyman on wages does tasks; a contractor is to work on a kit bought elsewhere, and none was asked.
    outdoor_height_m : ndarray
        Height of the outdoor unit above ground. [m]
    on_bracket, on_roof, drain_pump : ndarray
        Where the outdoor unit goes; condensate is not known to run by gravity.
    is_escape, escape_unknown, is_casement : ndarray
        The window for a window unit.
    in_window, through_wall, is_portable, now_portable : ndarray
        Where new units stand: in a window, in the wall, or on wheels with a hose; a portable one is there now.
    over_walkway : ndarray
        New units stand in a window under which people walk, or may.
    cut_structural, heat_not_made : ndarray
        The wall to be cut is masonry or may carry something; heating units of the kind are not made.
    anchor_unknown, anchor_refused : ndarray
        What the outdoor bracket is fixed to is not known; it carries no outdoor unit.
    bracket_pull_n, anchor_ultimate_n : ndarray
        Pull on the top pair of the bracket's anchors; breaking load of one as its maker prints it. [N] [N]
    has_old_units : ndarray
        Old window units are there.
    heat_asked, dry_asked : ndarray
        Duties asked for.
    has_backup, window_heats : ndarray
        Other heat is there and stays; the window unit heats too.
    heat_design_c, kit_cutout_c, hired_cutout_c, window_cutout_c : ndarray
        Cold design night; outdoor temperature below which each does not heat. [degC]
    pan_heater_w : ndarray
        Base-pan heater of the ductless class; 0 for none. [W]
    mean_cool_w, window_least_w, kit_least_w, hired_least_w : ndarray
        Mean need of the hours of cooling; least output of each. [W]
    own_rooms_count, window_units_count, kit_heads_count, hired_heads_count : ndarray
        Rooms that get an indoor unit of their own; indoor units of each way. [dimensionless]
    window_cycling_h, kit_cycling_h, hired_cycling_h : ndarray
        Hours a year below the least output, likely values. [hour]
    window_cold_h, kit_cold_h, hired_cold_h : ndarray
        Hours a year in which heating falls short. [hour]
    moisture_share_frac : ndarray
        Latent part of the yearly cooling need. [dimensionless]
    design_cool_w, design_heat_w : ndarray
        Design loads of the served rooms. [W]
    window_cool_w, kit_cool_w, hired_cool_w : ndarray
        Cooling each gives on the design day. [W]
    kit_heat_w, hired_heat_w, window_heat_w : ndarray
        Heating each gives on the design day. [W]
    kit_short_h, hired_short_h, window_short_h : ndarray
        Hours a year in which cooling falls short. [hour]
    window_late_d, self_late_d, hired_late_d : ndarray
        Days by which service comes after the end of this year's hot season. [day]
    return_by_d, dry_fit_d : ndarray
        Days from the decision to the last day on which the kit may go back, and to the end of its dry-fit. [day] [day]
    quote_lacks_circuit : ndarray
        There is a quote, and it leaves out the circuit or does not mention it.
    house_poorly, house_well, house_unknown : ndarray
        The house's own system serves the room poorly, or well; it is not known.
    is_kept_closed : ndarray
        The house system serves the room, and its heat is said not to stay on.
    in_attic, seals_leaks, shades_outside, films_glass, hangs_fan : ndarray
        Measures on the room that are chosen.
    burns_fuel : ndarray
        What heats the room burns something, or is not known.
    head_above_m, head_beside_m, boundary_m, gas_meter_m, vents_m, bedroom_window_m : ndarray
        Measured about the units; the same with ``least`` is what is asked. [m] [m] [m] [m] [m] [m]
    outdoor_front_m, outdoor_back_m : ndarray
        Free before and behind the outdoor unit; likewise. [m] [m]
    drain_run_m, drain_fall_m, drain_drop_m, drain_reach_m : ndarray
        Drain by gravity: length, fall it wants, drop there is, length that drop allows. [m] [m] [m] [m]
    snow_m, snow_foot_m : ndarray
        Deepest usual snow; least height of the outdoor unit's foot for it. [m] [m]
    line_reach_m, line_short_m : ndarray
        What the box, and an extension where allowed, reach; by how much that falls short. [m] [m]
    bit_reach_m, longest_reach_m : ndarray
        Wall that the bit gets through without and with its extension. [m] [m]
    blows_at_bed, studs_missed, access_lacks, head_unknown, door_swings, door_unknown : ndarray
        Said of the places of the units; something of it is not known.
    hole_below, hole_unknown : ndarray
        The hole comes out below the ground; where it comes out is not known.
    permit_refused, association_refused, refrigerant_unknown : ndarray
        Refused by the permit office or the association; the kit's label was not read.
    on_pad, is_poured : ndarray
        The outdoor unit stands on the ground; the wall to drill is poured concrete.
    has_foam_stucco, has_cement_shingles, is_fire_wall, fire_wall_unknown : ndarray
        What covers that wall outside; it holds back fire; whether it does is not known.
    is_flooded, in_salt_air, weathering_unknown : ndarray
        Said of the place of the outdoor unit; something of it is not known.
    heritage_asked, room_unpermitted : ndarray
        A heritage rule may have a say; the room was converted, and no permit of that is known.
    contractor_on_kit : ndarray
        A contractor is to work on a kit bought elsewhere.
    boundary_db, boundary_most_db : ndarray
        Sound of the outdoor unit at the boundary, a wall behind it; most that is asked there. [dimensionless]
    pipes_exposed : ndarray
        Water pipes, or nobody knows of none, that only the heat there now keeps from freezing; that heat goes.
    """

    built_yr: FloatArray
    wall_thickness_m: FloatArray
    bite_m: FloatArray
    is_masonry: BoolArray
    is_veneer: BoolArray
    is_frame: BoolArray
    earth_depth_m: FloatArray
    is_lower_level: BoolArray
    closed_rooms_count: FloatArray
    permit_needed: BoolArray
    permit_unknown: BoolArray
    electrical_licensed: BoolArray
    is_let: BoolArray
    is_tenant: BoolArray
    consent_needed: BoolArray
    is_flare: BoolArray
    extension_allowed: BoolArray
    is_old_stock: BoolArray
    extension_m: FloatArray
    line_run_m: FloatArray
    line_box_m: FloatArray
    line_limit_m: FloatArray
    line_rise_m: FloatArray
    rise_limit_m: FloatArray
    charge_kg: FloatArray
    lfl_kg_per_m3: FloatArray
    floor_area_m2: FloatArray
    circuit_shared: BoolArray
    circuit_unknown: BoolArray
    panel_lacks: BoolArray
    panel_unknown: BoolArray
    outlet_shared: BoolArray
    outlet_unknown: BoolArray
    outlet_other_volts: BoolArray
    window_a: FloatArray
    window_limit_a: FloatArray
    label_read: BoolArray
    ground_fault_asked: BoolArray
    ground_fault_unknown: BoolArray
    receptacle_lacks: BoolArray
    mca_a: FloatArray
    mop_a: FloatArray
    breaker_a: FloatArray
    conductor_a: FloatArray
    voltage_drop_frac: FloatArray
    service_load_a: FloatArray
    service_a: FloatArray
    outdoor_kg: FloatArray
    indoor_kg: FloatArray
    window_kg: FloatArray
    has_helper: BoolArray
    has_handyman: BoolArray
    finish_unasked: BoolArray
    outdoor_height_m: FloatArray
    on_bracket: BoolArray
    on_roof: BoolArray
    drain_pump: BoolArray
    is_escape: BoolArray
    escape_unknown: BoolArray
    is_casement: BoolArray
    in_window: BoolArray
    over_walkway: BoolArray
    through_wall: BoolArray
    is_portable: BoolArray
    now_portable: BoolArray
    cut_structural: BoolArray
    heat_not_made: BoolArray
    anchor_unknown: BoolArray
    anchor_refused: BoolArray
    bracket_pull_n: FloatArray
    anchor_ultimate_n: FloatArray
    has_old_units: BoolArray
    heat_asked: BoolArray
    dry_asked: BoolArray
    has_backup: BoolArray
    window_heats: BoolArray
    heat_design_c: FloatArray
    kit_cutout_c: FloatArray
    hired_cutout_c: FloatArray
    window_cutout_c: FloatArray
    pan_heater_w: FloatArray
    mean_cool_w: FloatArray
    window_least_w: FloatArray
    kit_least_w: FloatArray
    hired_least_w: FloatArray
    own_rooms_count: FloatArray
    window_units_count: FloatArray
    kit_heads_count: FloatArray
    hired_heads_count: FloatArray
    window_cycling_h: FloatArray
    kit_cycling_h: FloatArray
    hired_cycling_h: FloatArray
    window_cold_h: FloatArray
    kit_cold_h: FloatArray
    hired_cold_h: FloatArray
    window_heat_w: FloatArray
    moisture_share_frac: FloatArray
    design_cool_w: FloatArray
    design_heat_w: FloatArray
    window_cool_w: FloatArray
    kit_cool_w: FloatArray
    hired_cool_w: FloatArray
    kit_heat_w: FloatArray
    hired_heat_w: FloatArray
    kit_short_h: FloatArray
    hired_short_h: FloatArray
    window_short_h: FloatArray
    window_late_d: FloatArray
    self_late_d: FloatArray
    hired_late_d: FloatArray
    return_by_d: FloatArray
    dry_fit_d: FloatArray
    head_above_m: FloatArray
    head_above_least_m: FloatArray
    head_beside_m: FloatArray
    head_beside_least_m: FloatArray
    drain_run_m: FloatArray
    drain_fall_m: FloatArray
    drain_drop_m: FloatArray
    drain_reach_m: FloatArray
    boundary_m: FloatArray
    boundary_least_m: FloatArray
    gas_meter_m: FloatArray
    gas_meter_least_m: FloatArray
    vents_m: FloatArray
    vents_least_m: FloatArray
    bedroom_window_m: FloatArray
    bedroom_window_least_m: FloatArray
    outdoor_front_m: FloatArray
    outdoor_front_least_m: FloatArray
    outdoor_back_m: FloatArray
    outdoor_back_least_m: FloatArray
    snow_m: FloatArray
    snow_foot_m: FloatArray
    line_reach_m: FloatArray
    line_short_m: FloatArray
    bit_reach_m: FloatArray
    longest_reach_m: FloatArray
    blows_at_bed: BoolArray
    studs_missed: BoolArray
    access_lacks: BoolArray
    head_unknown: BoolArray
    door_swings: BoolArray
    door_unknown: BoolArray
    hole_below: BoolArray
    hole_unknown: BoolArray
    permit_refused: BoolArray
    association_refused: BoolArray
    refrigerant_unknown: BoolArray
    on_pad: BoolArray
    is_poured: BoolArray
    has_foam_stucco: BoolArray
    has_cement_shingles: BoolArray
    is_fire_wall: BoolArray
    fire_wall_unknown: BoolArray
    is_flooded: BoolArray
    in_salt_air: BoolArray
    weathering_unknown: BoolArray
    heritage_asked: BoolArray
    room_unpermitted: BoolArray
    contractor_on_kit: BoolArray
    pipes_exposed: BoolArray
    boundary_db: FloatArray
    boundary_most_db: FloatArray
    quote_lacks_circuit: BoolArray
    house_poorly: BoolArray
    house_well: BoolArray
    house_unknown: BoolArray
    is_kept_closed: BoolArray
    in_attic: BoolArray
    seals_leaks: BoolArray
    shades_outside: BoolArray
    films_glass: BoolArray
    hangs_fan: BoolArray
    burns_fuel: BoolArray

    def __post_init__(self) -> None:
        shapes = {np.shape(getattr(self, field.name)) for field in fields(self)}
        if len(shapes) != 1 or len(next(iter(shapes))) != 1:
            raise ShapeError(f"facts have shapes {sorted(shapes)}; each must hold one entry a row.")

    @property
    def n_row(self) -> int:
        """Decision rows."""
        return len(self.built_yr)
