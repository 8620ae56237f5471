"""Room rows: everything the hourly method needs to know about rooms, as arrays."""

from dataclasses import dataclass

from econ.kernel.arrays import BoolArray, FloatArray, IntArray


@dataclass(frozen=True, slots=True, eq=False)
class RoomRows:
    """Rooms as rows (R,); one decision row may own several.

    Attributes
    ----------
    floor_area_m2 : ndarray, shape (R,)
        Floor area. [m^2]
    volume_m3 : ndarray, shape (R,)
        Air volume. [m^3]
    ua_opaque_w_per_k : ndarray, shape (R,)
        Conductance of walls, roof and floor to outdoor air, neighbours' temperature factors folded in. [W/K]
    ua_window_w_per_k : ndarray, shape (R,)
        Conductance of windows. [W/K]
    ua_ground_w_per_k : ndarray, shape (R,)
        Conductance to the ground. [W/K]
    ground_c : ndarray, shape (R, 12)
        Ground temperature that the conductance works against, by month. [degC]
    air_flow_m3_per_s : ndarray, shape (R,)
        Outdoor air entering. [m^3/s]
    mass_j_per_k : ndarray, shape (R,)
        Internal heat capacity Cm. [J/K]
    mass_area_m2 : ndarray, shape (R,)
        Effective mass area Am. [m^2]
    window_aperture_m2 : ndarray, shape (R, 9)
        Area of full sun that windows let in, per face: SHGC x frame x shade x area. [m^2]
    window_sun_frac : ndarray, shape (R, 12)
        What of that area counts in each month: 1, but where shade comes and goes with the seasons. [dimensionless]
    opaque_aperture_m2 : ndarray, shape (R, 9)
        Area of full sun that opaque parts let in, per face: absorptance x outer film resistance x U x area. [m^2]
    sky_loss_w : ndarray, shape (R,)
        Extra long-wave loss to the sky. [W]
    gain_w : ndarray, shape (R, 24)
        Sensible heat of people, light and things, by hour. [W]
    moisture_gain_kg_per_s : ndarray, shape (R, 24)
        Water vapour set free indoors, by hour. [kg/s]
    heat_setpoint_c, cool_setpoint_c : ndarray, shape (R, 24)
        Set-points by hour. [degC]
    is_heated, is_cooled : ndarray of bool, shape (R, 24)
        Hours in which the room is kept warm or cool.
    is_dried : ndarray of bool, shape (R, 24)
        Hours in which moisture is taken out even where nothing is cooled.
    cool_day_above_c : ndarray, shape (R,)
        Cooling runs only on days whose mean dry bulb is above this; -99 means every day. [degC]
    warming_k : ndarray, shape (R,)
        Added to every outdoor dry bulb. [K]
    owner : ndarray of int, shape (R,)
        Decision row that the room belongs to. [dimensionless]
    """

    floor_area_m2: FloatArray
    volume_m3: FloatArray
    ua_opaque_w_per_k: FloatArray
    ua_window_w_per_k: FloatArray
    ua_ground_w_per_k: FloatArray
    ground_c: FloatArray
    air_flow_m3_per_s: FloatArray
    mass_j_per_k: FloatArray
    mass_area_m2: FloatArray
    window_aperture_m2: FloatArray
    window_sun_frac: FloatArray
    opaque_aperture_m2: FloatArray
    sky_loss_w: FloatArray
    gain_w: FloatArray
    moisture_gain_kg_per_s: FloatArray
    heat_setpoint_c: FloatArray
    cool_setpoint_c: FloatArray
    is_heated: BoolArray
    is_cooled: BoolArray
    is_dried: BoolArray
    cool_day_above_c: FloatArray
    warming_k: FloatArray
    owner: IntArray
