"""Plan B: for each thing that can go wrong in the work, who puts it right, at what cost, how many days later."""

from dataclasses import dataclass
from typing import Final

from econ.case.choices import option_at
from econ.evaluate.result import AlternativeResult
from econ.evaluate.sheet import Sheet
from econ.installation.mishap import Doubt
from econ.kernel.alternative import Alternative
from econ.kernel.constants import BTU_PER_WH
from econ.kernel.spread import Spread
from econ.tables.loaders import Tables

FINISHES: Final = "work.contractor_finishes"
"""The field that asks whether a contractor takes on a kit bought elsewhere."""

_QUOTE_SIZES: Final = {"whole_quote_9_12_usd": 12.0, "whole_quote_18_usd": 18.0, "whole_quote_24_usd": 24.0}
_LARGEST_QUOTE: Final = "whole_quote_36_usd"
"""Rows of whole quotes, and the largest nominal size each holds for. [kBtu/hour]"""


@dataclass(frozen=True, slots=True)
class PlanB:
    """What to do when one thing goes wrong.

    Attributes
    ----------
    key, label : str
        Stable name; what goes wrong, in plain words.
    chance_frac : float
        How likely, for who does what; NaN where it is the user's own choice. [dimensionless]
    party, action : str
        Who puts it right; what to do, in a sentence's part.
    cost_usd, own_h, days_d : Spread
        Money, own hours and days later: low, likely, high. [USD] [hour] [day]
    """

    key: str
    label: str
    chance_frac: float
    party: str
    action: str
    cost_usd: Spread
    own_h: Spread
    days_d: Spread


def plans_b(way: AlternativeResult, sheet: Sheet, tables: Tables) -> tuple[PlanB, ...]:
    """Return the plan B of one way, dearest expected cost first; handing the whole over comes last.

    Parameters
    ----------
    way : AlternativeResult
        The way, likely row first.
    sheet : Sheet
        Ranges.
    tables : Tables
        Prices of whole jobs.

    Returns
    -------
    plans : tuple of PlanB
        Only what can happen with who does what.
    """
    found = [_plan(doubt, sheet) for doubt in way.doubts if doubt.chance_frac[0] > 0.0]
    found.sort(key=lambda plan: plan.chance_frac * plan.cost_usd.likely, reverse=True)
    return (*found, *(_handed_over(sheet, tables) if way.name == Alternative.SELF_INSTALL else ()))


def _plan(doubt: Doubt, sheet: Sheet) -> PlanB:
    mishap = doubt.mishap
    ranges = (sheet.entry(path).spread for path in (mishap.cost, mishap.own, mishap.later))
    chance = float(doubt.chance_frac[0])
    return PlanB(mishap.key, mishap.label, chance, mishap.plan_b_party, mishap.plan_b, *ranges)


def _handed_over(sheet: Sheet, tables: Tables) -> tuple[PlanB, ...]:
    """Return what it takes to hand the whole over: to one who takes on the kit, or, where none may, with a new set."""
    answer = option_at(FINISHES, sheet.entry(FINISHES).likely)
    wait, visits = sheet.entry("work.contractor_wait_d").spread, tables.costs["compare_quotes_self_h"].spread()
    size = sheet.entry("kit.capacity_w").likely * BTU_PER_WH / 1000.0
    quote = next((key for key, largest in _QUOTE_SIZES.items() if size <= largest + 1.0), _LARGEST_QUOTE)
    label, nan = "You cannot finish it yourself", float("nan")
    ways = {
        "no": (
            "hand_over_new_set",
            "hire the whole job with the contractor's own set; the kit goes back or is sold",
            quote,
        ),
        "yes": ("hand_over_kit", "a contractor finishes with the kit you bought", "install_owner_set_usd"),
    }
    return tuple(
        PlanB(key, label, nan, "contractor", action, tables.costs[price].spread(), visits, wait)
        for word, (key, action, price) in ways.items()
        if answer not in {"yes", "no"} - {word}
    )
