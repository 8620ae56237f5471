"""Usual prices: from a bill, from the state's figure and the years since, and what a tariff adds to them."""

import math
from typing import Final

from econ.energy.tariff import MONTHS
from econ.evaluate.bill_fit import carrier_fits
from econ.evaluate.draft import Draft
from econ.kernel.constants import DAYS_PER_YEAR
from econ.kernel.spread import Spread

ABROAD_FACTOR: Final = (1.0 / 3.0, 3.0)
"""Range about the US price where the state is not known, as abroad. Assumption: widest that homes pay."""

BILL_DOUBT_FRAC: Final = 0.03
"""Doubt of a price worked out from one bill: taxes and riders differ by month. Assumption."""

SUMMER_FACTOR: Final = (1.05, 1.2, 1.5)
PEAK_FACTOR: Final = (1.3, 1.8, 3.0)
UPPER_FACTOR: Final = (1.05, 1.25, 1.6)
"""Usual price over the ordinary one: in summer, in dear hours, beyond a tier's limit. Assumption: no source."""

ASKED_FOR: Final[dict[str, tuple[str, ...]]] = {
    "seasonal": ("summer_usd_per_kwh",),
    "tiered": ("first_limit_kwh", "upper_usd_per_kwh", "other_use_kwh"),
    "time_of_use": (
        *("summer_usd_per_kwh", "peak_from_h", "peak_to_h", "peak_usd_per_kwh"),
        *("cheap_from_h", "cheap_to_h"),
    ),
}
"""What a kind of tariff needs a usual value of; what it does not read has no line, and so no draws."""

_FACTORS: Final = {
    "summer_usd_per_kwh": SUMMER_FACTOR,
    "peak_usd_per_kwh": PEAK_FACTOR,
    "upper_usd_per_kwh": UPPER_FACTOR,
}
_NO_CLOCK_CHANGE: Final = ("AZ", "HI")
"""States that keep standard time all year."""

GRID: Final = "prices.grid_kg_co2e_per_kwh"
GRID_LOST_FRAC: Final = 0.05
"""Part of generated electricity lost on the way. US EIA, frequently asked questions: about 5 % (from memory)."""

GRID_FACTOR: Final = (0.7, 1.2)
"""Range about the state's mean: grids get cleaner, and the next kWh may be dirtier than the mean. Assumption."""

OTHER_USE: Final = "tariff.other_use_kwh"
USUAL_FUEL: Final = "gas"
ORDINARY: Final = "prices.electricity_usd_per_kwh"

BASELOAD_DOUBT_FRAC: Final = 0.15
"""Doubt of what the rest of the home takes, from the base load of its bills. Assumption."""

_BILLS: Final = {ORDINARY: ("electricity", "kwh", "kWh"), "prices.gas_usd_per_therm": ("gas", "therms", "therms")}
"""Prices that may be worked out from a bill: beginning of its fields' names, its amount, its unit."""


def price_spread(draft: Draft, path: str) -> Spread:
    """Return the usual price of a source of energy: from the user's bill, else the state's figure brought to today.

    Parameters
    ----------
    draft : Draft
        Lines so far; bills and the factor since the figure among them.
    path : str
        Of the price.

    Returns
    -------
    spread : Spread
        In the unit of the path.
    """
    if path == GRID:
        return _grid_spread(draft)
    return _bill_price(draft, path) or _state_price(draft, path)


def fuel_spread(draft: Draft, column: str) -> Spread:
    """Return a range of the fuel that heats the room now; gas where none does.

    Parameters
    ----------
    draft : Draft
        Choices so far.
    column : str
        Of the table of fuels.
    """
    heat = draft.taken("now.heat")
    return draft.tables.fuels[heat if heat in draft.tables.fuels else USUAL_FUEL].spread(column)


def is_read(draft: Draft, path: str) -> bool:
    """Return whether a usual value is read in this case: what a tariff or a bill does not ask for has no line.

    Parameters
    ----------
    draft : Draft
        Choices and plain values so far.
    path : str
        Of the field.
    """
    section, _, name = path.rpartition(".")
    if name.endswith("_bill_fixed_usd"):
        return draft.said(path.replace("_fixed", "")) is not None
    if section != "tariff":
        return True
    return name in ASKED_FOR.get(draft.taken("tariff.kind"), ())


def tariff_spread(draft: Draft, path: str) -> Spread:
    """Return a tariff's usual price in season, hour or tier, about the ordinary price.

    Parameters
    ----------
    draft : Draft
        Lines so far; the kind and the ordinary price among them.
    path : str
        Of the price.

    Returns
    -------
    spread : Spread
        In summer the ordinary price itself, unless the tariff goes by the season. [USD/kWh]
    """
    price, name = draft.likely(ORDINARY), path.rpartition(".")[2]
    if name == "summer_usd_per_kwh" and draft.taken("tariff.kind") != "seasonal":
        return Spread(price, price, price, "as in other months")
    low, likely, high = _FACTORS[name]
    return Spread(price * low, price * likely, price * high, f"assumption: {likely:g} times the ordinary price")


def other_use_spread(draft: Draft) -> Spread | None:
    """Return what the rest of the home takes in a month, from the base load of its bills; None where none tell.

    Parameters
    ----------
    draft : Draft
        Lines so far; the warming among them.
    """
    if not draft.case.bills.electricity:
        return None
    warmed_c = draft.station.mean_c + draft.likely("place.warming_offset_k")
    found = {fit.carrier: fit for fit in carrier_fits(draft.case, warmed_c)}["electricity"]
    if found.fit is None or not found.fit.is_good:
        return None
    base = max(found.fit.baseload_kwh_per_d, 0.0) * DAYS_PER_YEAR / MONTHS
    text = f"base load of your {len(found.text.rows)} electricity bills; range assumption"
    return Spread(base * (1.0 - BASELOAD_DOUBT_FRAC), base, base * (1.0 + BASELOAD_DOUBT_FRAC), text)


def clock_change(draft: Draft) -> str:
    """Return whether clocks go an hour ahead in summer where the case stands: "yes" or "no"; abroad they do not."""
    return "no" if draft.state in _NO_CLOCK_CHANGE or not draft.state else "yes"


def _bill_price(draft: Draft, path: str) -> Spread | None:
    """Return the price of the next unit on the user's bill; None where no bill is given."""
    name, amount, unit = _BILLS.get(path, ("", "", ""))
    total, used = f"prices.{name}_bill_usd", f"prices.{name}_bill_{amount}"
    if total not in draft.entries or used not in draft.entries:
        return None
    fixed = draft.entries[f"prices.{name}_bill_fixed_usd"].spread
    paid, units = draft.likely(total), draft.likely(used)
    low, likely, high = ((paid - part) / units for part in (fixed.high, fixed.likely, fixed.low))
    text = f"your bill: {paid:,.2f} USD less {fixed.likely:g} that does not hang on use, over {units:,g} {unit}"
    return Spread(max(low * (1.0 - BILL_DOUBT_FRAC), 0.0), likely, high * (1.0 + BILL_DOUBT_FRAC), text)


def _grid_spread(draft: Draft) -> Spread:
    """Return carbon dioxide of a kWh delivered; in doubt only where it is priced, as nothing else hangs on it."""
    row = draft.tables.prices[draft.state if draft.state in draft.tables.prices else "US"]
    mean = row.number("grid_kg_co2e_per_kwh") / (1.0 - GRID_LOST_FRAC)
    low, high = GRID_FACTOR if draft.said("prices.carbon_usd_per_t") is not None else (1.0, 1.0)
    named = f"{row.text('state')} {row.number('year'):.0f}"
    text = f"US EIA, {named}, per kWh generated, and {GRID_LOST_FRAC:.0%} lost on the way"
    return Spread(mean * low, mean, mean * high, text)


def _state_price(draft: Draft, path: str) -> Spread:
    state = draft.state
    column = path.rpartition(".")[2]
    rows = [draft.tables.prices[name] for name in (state, "US") if name in draft.tables.prices]
    price, row = next((row.number(column), row) for row in rows if not math.isnan(row.number(column)))
    since = draft.entries["prices.since_2023_frac"].spread
    named = f"{row.text('state')} {row.number('year'):.0f}"
    text = f"US EIA, {named}, times {since.likely:g} since (assumption {since.low:g} to {since.high:g})"
    if state:
        return Spread(price * since.low, price * since.likely, price * since.high, text)
    low, high = (price * since.likely * factor for factor in ABROAD_FACTOR)
    return Spread(low, price * since.likely, high, f"no price is known here, type yours; assumption: {text}")
