"""Yearly cost streams: constant dollars, year 0 the decision date, flows at year end."""

from dataclasses import dataclass, field

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.lifecycle.discount import single_compound_amount_factor


def no_flow() -> FloatArray:
    """Return nothing in every year, of a shape that goes with any other, shape (1, 1, 1)."""
    return np.zeros((1, 1, 1))


@dataclass(frozen=True, slots=True, eq=False)
class Streams:
    """What each alternative costs in each year; costs positive, residual a positive number that is subtracted.

    Attributes
    ----------
    first_usd : ndarray, shape (A, B)
        Paid at year 0. [USD]
    energy_usd, om_usd, replacement_usd : ndarray, shape (A, B, n_year + 1)
        Energy, upkeep and like-for-like replacement of year t, at its end; year 0 first. [USD]
    residual_usd : ndarray, shape (A, B, n_year + 1)
        Worth of what is left, in the last year; tools sold again, in year 1. [USD]
    repair_usd, disposal_usd : ndarray, shape (A, B, n_year + 1)
        Expected repairs; recovery and disposal of worn-out units. [USD]
    financing_usd : ndarray, shape (A, B, n_year + 1)
        Borrowed money and its repayment: negative in year 0, what is still owed in the last year. [USD]
    letting_usd : ndarray, shape (A, B, n_year + 1)
        Taxes of letting less what they save, less rent: an option, nothing unless asked for. [USD]
    """

    first_usd: FloatArray
    energy_usd: FloatArray
    om_usd: FloatArray
    replacement_usd: FloatArray
    residual_usd: FloatArray
    repair_usd: FloatArray = field(default_factory=no_flow)
    disposal_usd: FloatArray = field(default_factory=no_flow)
    financing_usd: FloatArray = field(default_factory=no_flow)
    letting_usd: FloatArray = field(default_factory=no_flow)

    @property
    def investment_usd(self) -> FloatArray:
        """First cost, financing, replacement and disposal less residual, by year, shape (A, B, n_year + 1)."""
        investment: FloatArray = self.replacement_usd + self.disposal_usd + self.financing_usd - self.residual_usd
        investment[..., 0] += self.first_usd
        return investment

    @property
    def operation_usd(self) -> FloatArray:
        """Energy, upkeep, repairs and what letting adds, by year, shape (A, B, n_year + 1)."""
        operation: FloatArray = self.energy_usd + self.om_usd + self.repair_usd + self.letting_usd
        return operation

    @property
    def total_usd(self) -> FloatArray:
        """All costs less residual, by year, shape (A, B, n_year + 1)."""
        total: FloatArray = self.investment_usd + self.operation_usd
        return total

    @property
    def running_total_usd(self) -> FloatArray:
        """Spent by the end of each year, what is left at the end not taken off, shape (A, B, n_year + 1)."""
        yearly = self.operation_usd + self.replacement_usd + self.disposal_usd + self.financing_usd
        running: FloatArray = self.first_usd[..., None] + np.cumsum(yearly, axis=-1)
        return running


def escalated_stream(yearly_usd: FloatArray, escalation_frac: FloatArray) -> FloatArray:
    """Return yearly costs at today's prices as a stream at the prices of their years.

    Parameters
    ----------
    yearly_usd : array_like, shape (..., n_year)
        Cost of year 1, 2, ... at today's prices. [USD]
    escalation_frac : array_like, shape () or (...)
        Yearly real price growth; the price of year 1 has grown once. [dimensionless]

    Returns
    -------
    stream_usd : ndarray, shape (..., n_year + 1)
        Year t times (1 + e)**t, nothing in year 0. [USD]

    Raises
    ------
    OutOfRangeError
        If the growth is at or below -1.

    References
    ----------
    .. [1] ASTM E917, modified uniform present value: today's price escalated to the year of payment.

    Examples
    --------
    >>> escalated_stream(np.array([100.0, 100.0]), np.array(0.5)).round(9).tolist()
    [0.0, 150.0, 225.0]
    """
    yearly = np.asarray(yearly_usd, dtype=np.float64)
    years = np.arange(1, yearly.shape[-1] + 1, dtype=np.float64)
    growth = single_compound_amount_factor(np.asarray(escalation_frac)[..., None], years)
    stream = np.zeros((*np.broadcast_shapes(yearly.shape, growth.shape)[:-1], yearly.shape[-1] + 1))
    np.multiply(yearly, growth, out=stream[..., 1:])
    return stream
