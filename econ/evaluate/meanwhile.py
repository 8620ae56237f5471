"""What a result says of the time until service: its months, the summer, and how far dates may move."""

from dataclasses import dataclass

from econ.installation.waiting import InterimNeed
from econ.kernel.arrays import FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class WaitingYear:
    """The months through which one may have to wait, likely row.

    Attributes
    ----------
    need : InterimNeed
        What the room lacks each month with what is there now, shape (1, 12).
    cooling_kd : ndarray, shape (12,)
        Cooling degree-days of each month at 65 degF. [K*day]
    makeshift_usd : ndarray, shape (12,)
        What a hired portable unit and its electricity would cost each month. [USD]
    summer_from_d, summer_to_d : float
        First and last day of the hot season at hand, or of the coming one, from the decision; both NaN where there
        is none. [day]
    """

    need: InterimNeed
    cooling_kd: FloatArray
    makeshift_usd: FloatArray
    summer_from_d: float
    summer_to_d: float


@dataclass(frozen=True, slots=True, eq=False)
class FirstCoolDays:
    """How far the first cool day of each way may lie from the likely one.

    Attributes
    ----------
    low_d, high_d : ndarray, shape (A,)
        In one try of ten it comes before the first, in one of ten after the second; the likely day lies within. NaN
        where nothing new comes. [day]
    interim_low_usd, interim_high_usd : ndarray, shape (A,)
        The same of what cooling until then costs. [USD]
    n_try : int
        Tries in which waits, hours and prices were drawn from their ranges. [dimensionless]
    """

    low_d: FloatArray
    high_d: FloatArray
    interim_low_usd: FloatArray
    interim_high_usd: FloatArray
    n_try: int
