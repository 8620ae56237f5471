"""One machine a row: what it gives and draws at every outdoor temperature."""

from dataclasses import dataclass

from econ.equipment.auxiliary import AuxiliaryRows
from econ.equipment.points import CoolingPoints, HeatingPoints
from econ.kernel.arrays import BoolArray, FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class RatingRows:
    """Published ratings of a variable-speed split heat pump, one a row.

    Attributes
    ----------
    capacity_w : ndarray, shape (B,)
        Net cooling capacity at 95 degF, full speed. [W]
    seer2, eer2, hspf2 : ndarray, shape (B,)
        Seasonal cooling, full-speed 95 degF cooling, seasonal heating (region IV). [Btu/(W*hour)]
    heat_47f_w : ndarray, shape (B,)
        Rated heating capacity at 47 degF. [W]
    heat_5f_ratio_frac : ndarray, shape (B,)
        Greatest heating capacity at 5 degF over the rated one at 47 degF. [dimensionless]
    cutout_c : ndarray, shape (B,)
        No heating at or below this outdoor temperature. [degC]
    min_ratio_frac : ndarray, shape (B,)
        Least over rated cooling capacity at 95 degF. [dimensionless]
    shr : ndarray, shape (B,)
        Sensible share of the cooling, wet coil. [dimensionless]
    standby_w : ndarray, shape (B,)
        Drawn in hours without cooling or heating. [W]
    cd_frac : ndarray, shape (B,)
        Cycling degradation coefficient. [dimensionless]
    """

    capacity_w: FloatArray
    seer2: FloatArray
    eer2: FloatArray
    hspf2: FloatArray
    heat_47f_w: FloatArray
    heat_5f_ratio_frac: FloatArray
    cutout_c: FloatArray
    min_ratio_frac: FloatArray
    shr: FloatArray
    standby_w: FloatArray
    cd_frac: FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class WindowRows:
    """Published ratings of window units, one a row; several alike are entered as one of their total size.

    Attributes
    ----------
    capacity_w : ndarray, shape (B,)
        Cooling capacity at 95 degF; 0 means that no unit is there. [W]
    ceer : ndarray, shape (B,)
        Combined energy efficiency ratio. [Btu/(W*hour)]
    shr : ndarray, shape (B,)
        Sensible share of the cooling, wet coil. [dimensionless]
    standby_w : ndarray, shape (B,)
        Drawn in hours without cooling or heating. [W]
    cd_frac : ndarray, shape (B,)
        Cycling degradation coefficient. [dimensionless]
    min_ratio_frac : ndarray, shape (B,)
        Least over greatest output; not read where the speed is fixed. [dimensionless]
    """

    capacity_w: FloatArray
    ceer: FloatArray
    shr: FloatArray
    standby_w: FloatArray
    cd_frac: FloatArray
    min_ratio_frac: FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class ReverseCycleRows:
    """What a window unit that also heats says beside its cooling ratings, one a row.

    Attributes
    ----------
    heat_cop : ndarray, shape (B,)
        Seasonal efficiency in heating above the cut-out. [dimensionless]
    heat_ratio_frac : ndarray, shape (B,)
        Heating output at 47 degF over cooling output at 95 degF. [dimensionless]
    cutout_c : ndarray, shape (B,)
        No heating at or below this outdoor temperature. [degC]
    is_variable : ndarray, shape (B,)
        Whether the speed varies.
    """

    heat_cop: FloatArray
    heat_ratio_frac: FloatArray
    cutout_c: FloatArray
    is_variable: BoolArray


@dataclass(frozen=True, slots=True, eq=False)
class MachineRows:
    """A machine a row, of any technology; a single-speed one has the same low, intermediate and full speed.

    Attributes
    ----------
    cooling : CoolingPoints
        Cooling tests; meaningless placeholders where can_cool is False.
    heating : HeatingPoints
        Heating tests; meaningless placeholders where can_heat is False.
    can_cool, can_heat : ndarray, shape (B,)
        Whether it cools, whether it heats.
    cutout_c : ndarray, shape (B,)
        No heating at or below this outdoor temperature. [degC]
    shr : ndarray, shape (B,)
        Sensible share of the cooling, wet coil. [dimensionless]
    standby_w : ndarray, shape (B,)
        Drawn in hours without cooling or heating. [W]
    cd_frac : ndarray, shape (B,)
        Cycling degradation coefficient. [dimensionless]
    auxiliary : AuxiliaryRows or None
        Heaters and pump beside compressor and fans; None where there are none.
    is_single_speed : bool
        Whether every row cools at one speed only, so that its three speeds need no telling apart.
    """

    cooling: CoolingPoints
    heating: HeatingPoints
    can_cool: BoolArray
    can_heat: BoolArray
    cutout_c: FloatArray
    shr: FloatArray
    standby_w: FloatArray
    cd_frac: FloatArray
    auxiliary: AuxiliaryRows | None = None
    is_single_speed: bool = False
