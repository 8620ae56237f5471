"""Tools: own, hire, or buy and sell again, whichever costs least."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray, IntArray
from econ.kernel.errors import OutOfRangeError

WAYS: Final = ("own", "hire", "buy")
"""Tool codes: position in this tuple."""

OWN, HIRE, BUY = range(len(WAYS))


@dataclass(frozen=True, slots=True)
class Tool:
    """One tool of own work.

    Attributes
    ----------
    key, label : str
        Stable name; the tool in plain words.
    condition : str
        Name of the site fact that makes it needed.
    task : str
        Task it serves.
    buy, rent, resale : str
        Names of its price, its hire a day and the share got back; empty where there is none.
    source : str
        Where its figures come from.
    """

    key: str
    label: str
    condition: str
    task: str
    buy: str
    rent: str
    resale: str
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
    """

    way: IntArray
    cost_usd: FloatArray


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
    days = np.maximum(np.ceil(np.asarray(hire_d) - 1e-9), price.minimum_hire_d)
    hired = price.rent_usd_per_d * days * (1.0 + price.sales_tax_frac)
    bought = price.buy_usd * (1.0 + price.sales_tax_frac - price.resale_frac)
    cost = np.minimum(hired, bought)
    if not np.all(np.isfinite(cost)):
        raise OutOfRangeError("price of a tool", float("inf"), "USD", "finite", "Give a price to buy or to hire it.")
    return ToolChoice(np.where(hired <= bought, HIRE, BUY), cost)
