"""What a unit draws beside its compressor and fans, in the hours in which it draws it."""

from dataclasses import dataclass

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class AuxiliaryRows:
    """Heaters and pump of a machine, one a row; none of them is in its ratings.

    Attributes
    ----------
    pan_heater_w : ndarray, shape (B,)
        Keeps the outdoor unit's base pan free of ice; 0 where there is none. [W]
    pan_heater_below_c : ndarray, shape (B,)
        On while heating below this outdoor temperature. [degC]
    crankcase_heater_w : ndarray, shape (B,)
        Keeps the compressor's oil warm while it stands; 0 where there is none. [W]
    crankcase_heater_below_c : ndarray, shape (B,)
        On while the compressor stands below this outdoor temperature. [degC]
    drain_pump_w : ndarray, shape (B,)
        Mean power of the condensate pump through an hour of cooling; 0 where water runs off by itself. [W]
    """

    pan_heater_w: FloatArray
    pan_heater_below_c: FloatArray
    crankcase_heater_w: FloatArray
    crankcase_heater_below_c: FloatArray
    drain_pump_w: FloatArray


def auxiliary_w(
    auxiliary: AuxiliaryRows, is_cooling: BoolArray, is_heating: BoolArray, dry_bulb_c: FloatArray
) -> FloatArray:
    """Return the power of heaters and pump in each hour.

    Parameters
    ----------
    auxiliary : AuxiliaryRows
        B machines' heaters and pumps.
    is_cooling, is_heating : ndarray, shape (B, n)
        Whether the machine does.
    dry_bulb_c : ndarray, shape (B, n) or (1, n)
        Outdoor dry bulb. [degC]

    Returns
    -------
    power_w : ndarray, shape (B, n)
        Each heater is on for the whole hour or off. [W]
    """
    rows = {name: getattr(auxiliary, name)[:, None] for name in auxiliary.__slots__}
    is_pan_on = is_heating & (dry_bulb_c < rows["pan_heater_below_c"])
    is_oil_on = ~is_heating & ~is_cooling & (dry_bulb_c < rows["crankcase_heater_below_c"])
    power: FloatArray = np.where(is_pan_on, rows["pan_heater_w"], 0.0)
    power += np.where(is_oil_on, rows["crankcase_heater_w"], 0.0)
    power += np.where(is_cooling, rows["drain_pump_w"], 0.0)
    return power
