"""Change-point models of utility bills: how energy follows outdoor temperature, and how well that fits."""

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.errors import OutOfRangeError, ShapeError

MONTHLY_CVRMSE_FRAC: Final = 0.15
"""Highest CV(RMSE) of a monthly fit. ASHRAE Guideline 14-2014, 5.3 (from memory)."""
MONTHLY_NMBE_FRAC: Final = 0.05
"""Highest NMBE of a monthly fit. Same guideline (from memory)."""
LEAST_BILLS: Final = 12
"""Bills below which a year is not seen whole."""
MOST_BILLS: Final = 36
"""Bills beyond which a house has changed more often than not. Assumption."""
_GRID_COUNT: Final = 81
"""Change points tried between the coldest and the hottest bill, then once more around the best."""
_REFINED: Final = 3
"""Times the grid is laid anew around the best point: the step is then below a thousandth of the range."""


class ChangePointKind(StrEnum):
    """Which side of the change point uses energy."""

    HEATING = "heating"
    COOLING = "cooling"
    BOTH = "both"


PARAMETERS: Final = {ChangePointKind.HEATING: 3, ChangePointKind.COOLING: 3, ChangePointKind.BOTH: 5}


@dataclass(frozen=True, slots=True, eq=False)
class ChangePointFit:
    """A fitted model of daily energy.

    Attributes
    ----------
    kind : ChangePointKind
        Three parameters (one slope) or five (two).
    baseload_kwh_per_d : float
        Use that does not follow the weather. [kWh/day]
    heating_kwh_per_kd, cooling_kwh_per_kd : float
        Slopes below and above the change points; 0 where the kind has none. [kWh/(K*day)]
    heating_point_c, cooling_point_c : float
        Outdoor temperature below which heating, above which cooling begins; NaN where the kind has none. [degC]
    cvrmse_frac, nmbe_frac, r2 : float
        Coefficient of variation of the error, net bias, and coefficient of determination. [dimensionless]
    """

    kind: ChangePointKind
    baseload_kwh_per_d: float
    heating_kwh_per_kd: float
    cooling_kwh_per_kd: float
    heating_point_c: float
    cooling_point_c: float
    cvrmse_frac: float
    nmbe_frac: float
    r2: float

    @property
    def is_good(self) -> bool:
        """Return whether it keeps the limits of ASHRAE Guideline 14 for monthly data."""
        return self.cvrmse_frac <= MONTHLY_CVRMSE_FRAC and abs(self.nmbe_frac) <= MONTHLY_NMBE_FRAC


@dataclass(frozen=True, slots=True, eq=False)
class Bills:
    """Utility bills.

    Attributes
    ----------
    energy_kwh : ndarray, shape (n_bill,)
        Energy of each bill. [kWh]
    days_d : ndarray, shape (n_bill,)
        Days it covers. [day]
    mean_c : ndarray, shape (n_bill,)
        Mean outdoor temperature over those days. [degC]
    """

    energy_kwh: FloatArray
    days_d: FloatArray
    mean_c: FloatArray

    def __post_init__(self) -> None:
        shapes = {np.shape(column) for column in (self.energy_kwh, self.days_d, self.mean_c)}
        if len(shapes) != 1 or len(next(iter(shapes))) != 1:
            raise ShapeError(f"bills have columns of shapes {sorted(shapes)}; each must hold one entry a bill.")
        count = len(self.energy_kwh)
        if not LEAST_BILLS <= count <= MOST_BILLS:
            raise OutOfRangeError("bills", float(count), "", "12 to 36", "Paste at least a whole year of bills.")
        if np.any(self.days_d <= 0.0):
            least = float(np.min(self.days_d))
            raise OutOfRangeError("days of a bill", least, "d", "above 0", "Give the days from reading to reading.")
        if np.any(self.energy_kwh < 0.0):
            least = float(np.min(self.energy_kwh))
            raise OutOfRangeError("energy of a bill", least, "kWh", "at least 0", "Give what was used, not the change.")


def cvrmse_frac(measured: FloatArray, modelled: FloatArray, parameter_count: int) -> float:
    """Return the coefficient of variation of the root mean square error.

    Parameters
    ----------
    measured, modelled : ndarray, shape (n,)
        Two series. [any]
    parameter_count : int
        Parameters of the model. [dimensionless]

    Returns
    -------
    cvrmse_frac : float
        sqrt(sum of squares / (n - p)) over the mean measured. [dimensionless]

    References
    ----------
    .. [1] ASHRAE Guideline 14-2014, 5.2.11.3 (from memory).
    """
    freedom = len(measured) - parameter_count
    return float(np.sqrt(np.sum((measured - modelled) ** 2) / freedom) / np.mean(measured))


def nmbe_frac(measured: FloatArray, modelled: FloatArray, parameter_count: int) -> float:
    """Return the net mean bias error; positive where the model is low.

    Parameters
    ----------
    measured, modelled : ndarray, shape (n,)
        Two series. [any]
    parameter_count : int
        Parameters of the model. [dimensionless]

    Returns
    -------
    nmbe_frac : float
        Sum of differences over ((n - p) times the mean measured). [dimensionless]

    References
    ----------
    .. [1] ASHRAE Guideline 14-2014, 5.2.11.3 (from memory).
    """
    freedom = len(measured) - parameter_count
    return float(np.sum(measured - modelled) / (freedom * np.mean(measured)))


def change_point_fit(bills: Bills, kind: ChangePointKind) -> ChangePointFit:
    """Return the least-squares change-point model of a kind.

    Parameters
    ----------
    bills : Bills
        12 to 36 bills.
    kind : ChangePointKind
        Heating, cooling, or both.

    Returns
    -------
    fit : ChangePointFit
        Slopes are never negative: a change point whose slope would be is not taken.

    Notes
    -----
    E / d = baseload + h max(Th - T, 0) + c max(T - Tc, 0), each bill weighted by its days; change points by a grid that
    is laid anew around the best point, the rest linear least squares.

    References
    ----------
    .. [1] ASHRAE Guideline 14-2014, annex C; Kissock, Haberl and Claridge (2003), Inverse Modeling Toolkit, ASHRAE
       Transactions 109(2).
    """
    low, high = float(bills.mean_c.min()), float(bills.mean_c.max())
    grids = np.linspace(low, high, _GRID_COUNT), np.linspace(low, high, _GRID_COUNT)
    best = _best(bills, kind, *grids)
    step = (high - low) / (_GRID_COUNT - 1)
    for _ in range(_REFINED):
        around = [np.linspace(point - 2.0 * step, point + 2.0 * step, _GRID_COUNT) for point in best[:2]]
        best = _best(bills, kind, *around)
        step = 4.0 * step / (_GRID_COUNT - 1)
    return _fit(bills, kind, *best)


def _pairs(kind: ChangePointKind, heating_c: FloatArray, cooling_c: FloatArray) -> FloatArray:
    """Return the change points to try, shape (n, 2): of both, those in which cooling begins above heating."""
    if kind != ChangePointKind.BOTH:
        return np.stack([heating_c, cooling_c], axis=1)
    pairs = np.stack(np.meshgrid(heating_c, cooling_c, indexing="ij"), axis=-1).reshape(-1, 2)
    return pairs[pairs[:, 0] <= pairs[:, 1]]


def _columns(bills: Bills, kind: ChangePointKind, pairs: FloatArray) -> FloatArray:
    """Return the columns of the linear model, shape (n, n_bill, p)."""
    below = np.maximum(pairs[:, :1] - bills.mean_c, 0.0)
    above = np.maximum(bills.mean_c - pairs[:, 1:], 0.0)
    slopes = {ChangePointKind.HEATING: [below], ChangePointKind.COOLING: [above], ChangePointKind.BOTH: [below, above]}
    return np.stack([np.ones_like(below), *slopes[kind]], axis=-1)


def _solved(bills: Bills, columns: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Return coefficients (n, p) and weighted squared error (n,); infinite where a slope is negative."""
    daily, weight = bills.energy_kwh / bills.days_d, bills.days_d / bills.days_d.mean()
    weighted = columns * weight[:, None]
    normal = np.einsum("nbi,nbj->nij", weighted, columns)
    right = np.einsum("nbi,b->ni", weighted, daily)
    coefficients = np.einsum("nij,nj->ni", np.linalg.pinv(normal, hermitian=True), right)
    error = (weight * (daily - np.einsum("nbi,ni->nb", columns, coefficients)) ** 2).sum(axis=1)
    return coefficients, np.where((coefficients[:, 1:] < 0.0).any(axis=1), np.inf, error)


def _best(bills: Bills, kind: ChangePointKind, heating_c: FloatArray, cooling_c: FloatArray) -> tuple[float, float]:
    pairs = _pairs(kind, heating_c, cooling_c)
    _, error = _solved(bills, _columns(bills, kind, pairs))
    at = int(np.argmin(error))
    return float(pairs[at, 0]), float(pairs[at, 1])


def _fit(bills: Bills, kind: ChangePointKind, heating_c: float, cooling_c: float) -> ChangePointFit:
    pair = np.array([[heating_c, cooling_c]])
    columns = _columns(bills, kind, pair)
    coefficients = _solved(bills, columns)[0][0]
    modelled = columns[0] @ coefficients * bills.days_d
    count = PARAMETERS[kind]
    spread = np.sum((bills.energy_kwh - bills.energy_kwh.mean()) ** 2)
    missed = np.sum((bills.energy_kwh - modelled) ** 2)
    has_heating, has_cooling = kind != ChangePointKind.COOLING, kind != ChangePointKind.HEATING
    return ChangePointFit(
        kind=kind,
        baseload_kwh_per_d=float(coefficients[0]),
        heating_kwh_per_kd=float(coefficients[1]) if has_heating else 0.0,
        cooling_kwh_per_kd=float(coefficients[-1]) if has_cooling else 0.0,
        heating_point_c=heating_c if has_heating else float("nan"),
        cooling_point_c=cooling_c if has_cooling else float("nan"),
        cvrmse_frac=cvrmse_frac(bills.energy_kwh, modelled, count),
        nmbe_frac=nmbe_frac(bills.energy_kwh, modelled, count),
        r2=float(1.0 - missed / spread) if spread > 0.0 else 0.0,
    )


def best_fit(bills: Bills) -> ChangePointFit:
    """Return the kind of model that fits best for the number of its parameters.

    Parameters
    ----------
    bills : Bills
        12 to 36 bills.

    Returns
    -------
    fit : ChangePointFit
        Of the three kinds, the one with the lowest CV(RMSE), which counts parameters.
    """
    return min((change_point_fit(bills, kind) for kind in ChangePointKind), key=lambda fit: fit.cvrmse_frac)
