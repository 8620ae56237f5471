"""Tools: own, borrow, hire by the day, or buy and sell again, whichever costs least, shared by the tasks using them."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray, IntArray
from econ.kernel.errors import OutOfRangeError

WAYS: Final = ("own", "hire", "buy", "borrow")
"""Tool codes: position in this tuple."""

OWN, HIRE, BUY, BORROW = range(len(WAYS))

_ROUNDING = 1e-9


@dataclass(frozen=True, slots=True)
class Tool:
    """One tool of own work.

    Attributes
    ----------
    key, label : str
        Stable name; the tool in plain words.
    tasks, conditions : tuple of str
        Tasks it serves; for each the name of the site fact that makes it needed there.
    buy, rent, resale, life : str
        Names of its price, its hire a day, the share got back and the depth it drills before it is worn out; empty
        where there is none.
    source : str
        Where its figures come from.
    """

    key: str
    label: str
    tasks: tuple[str, ...]
    conditions: tuple[str, ...]
    buy: str
    rent: str
    resale: str
    life: str
    source: str


@dataclass(frozen=True, slots=True, eq=False)
class ToolPrice:
    """What a tool costs.

    Attributes
    ----------
    buy_usd : ndarray, shape (B,)
        Price; infinite where it is only hired. [USD]
    rent_usd_per_d : ndarray, shape (B,)
        Hire; infinite where it is not hired out. [USD/day]
    resale_frac : ndarray, shape (B,)
        Share of the price got back; 0 where it is kept or used up. [dimensionless]
    minimum_hire_d : ndarray, shape (B,)
        Shortest hire. [day]
    sales_tax_frac : ndarray, shape (B,)
        Tax on price and hire. [dimensionless]
    """

    buy_usd: FloatArray
    rent_usd_per_d: FloatArray
    resale_frac: FloatArray
    minimum_hire_d: FloatArray
    sales_tax_frac: FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class ToolChoice:
    """The cheapest way to a tool.

    Attributes
    ----------
    way : ndarray, shape (B,)
        Position in WAYS. [dimensionless]
    cost_usd : ndarray, shape (B,)
        Net of resale, tax in. [USD]
    resale_usd : ndarray, shape (B,)
        What it fetches afterwards; paid before that is the sum of both. [USD]
    """

    way: IntArray
    cost_usd: FloatArray
    resale_usd: FloatArray


def use_d(elapsed_h: FloatArray, is_used: BoolArray, hours_per_day_h: FloatArray) -> FloatArray:
    """Return the days for which one hire of a tool serves all tasks that use it.

    Parameters
    ----------
    elapsed_h : ndarray, shape (B, T)
        Working hours of each task. [hour]
    is_used : ndarray, shape (B, T)
        Whether the user's side does the task and needs the tool for it.
    hours_per_day_h : ndarray, shape (B,)
        Hours in a working day. [hour]

    Returns
    -------
    use_d : ndarray, shape (B,)
        Parts of a day count as parts: tasks that share a tool are done one after the other. [day]
    """
    days: FloatArray = (elapsed_h * is_used).sum(axis=1) / hours_per_day_h
    return days


def worn_count(depth_m: FloatArray, life_m: FloatArray) -> FloatArray:
    """Return how many bits a depth of wall wears out.

    Parameters
    ----------
    depth_m : array_like, shape () or (B,)
        What is drilled in all, above 0. [m]
    life_m : array_like, shape () or (B,)
        Depth that one bit drills, above 0. [m]

    Returns
    -------
    bits_count : ndarray, shape () or (B,)
        Whole bits, at least one. [dimensionless]

    Raises
    ------
    OutOfRangeError
        If depth or life is not above 0.

    Examples
    --------
    >>> worn_count(np.array([0.2, 4.572, 4.6]), 4.572).tolist()
    [1.0, 1.0, 2.0]
    """
    depth, life = np.asarray(depth_m, dtype=np.float64), np.asarray(life_m, dtype=np.float64)
    for name, value in (("depth drilled", depth), ("life of a bit", life)):
        if not np.all(value > 0.0):
            raise OutOfRangeError(name, float(np.min(value)), "m", "above 0", "Measure the wall at a door or window.")
    bits: FloatArray = np.ceil(depth / life - _ROUNDING)
    return bits


def tool_choice(price: ToolPrice, hire_d: FloatArray) -> ToolChoice:
    """Return whether to hire a tool or to buy and resell it, and what that costs.

    Parameters
    ----------
    price : ToolPrice
        Prices.
    hire_d : ndarray, shape (B,)
        Days it is needed; hire is by whole days, at least the shortest hire. [day]

    Returns
    -------
    choice : ToolChoice
        Equal costs go to hire: nothing to sell afterwards.

    Raises
    ------
    OutOfRangeError
        If a tool can be neither bought nor hired.
    """
    hired = hire_usd(price, hire_d)
    bought = buy_usd(price)
    cost = np.minimum(hired, bought)
    if not np.all(np.isfinite(cost)):
        raise OutOfRangeError("price of a tool", float("inf"), "USD", "finite", "Give a price to buy or to hire it.")
    is_hired = hired <= bought
    resale = np.where(is_hired, 0.0, np.where(np.isfinite(price.buy_usd), price.buy_usd, 0.0) * price.resale_frac)
    return ToolChoice(np.where(is_hired, HIRE, BUY), cost, resale)


def charged_d(hire_d: FloatArray, minimum_hire_d: FloatArray) -> FloatArray:
    """Return the days that a hire is charged for.

    Parameters
    ----------
    hire_d : ndarray, shape (B,)
        Days it is needed. [day]
    minimum_hire_d : ndarray, shape (B,)
        Shortest hire. [day]

    Returns
    -------
    charged_d : ndarray, shape (B,)
        Whole days, at least the shortest hire. [day]
    """
    days: FloatArray = np.maximum(np.ceil(np.asarray(hire_d) - _ROUNDING), minimum_hire_d)
    return days


def hire_usd(price: ToolPrice, hire_d: FloatArray) -> FloatArray:
    """Return what hiring a tool costs.

    Parameters
    ----------
    price : ToolPrice
        Prices.
    hire_d : ndarray, shape (B,)
        Days it is needed. [day]

    Returns
    -------
    hire_usd : ndarray, shape (B,)
        Tax in; infinite where it is not hired out. [USD]
    """
    days = charged_d(hire_d, price.minimum_hire_d)
    hired: FloatArray = price.rent_usd_per_d * days * (1.0 + price.sales_tax_frac)
    return hired


def buy_usd(price: ToolPrice) -> FloatArray:
    """Return what buying a tool comes to in the end.

    Parameters
    ----------
    price : ToolPrice
        Prices.

    Returns
    -------
    buy_usd : ndarray, shape (B,)
        Tax in, what it fetches afterwards taken off; infinite where it is only hired. [USD]
    """
    bought: FloatArray = price.buy_usd * (1.0 + price.sales_tax_frac - price.resale_frac)
    return bought
