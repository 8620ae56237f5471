"""Why the set in a quote costs other than the kit: size and class, warranty, trade price and markup."""

from econ.kernel.alternative import SELF
from econ.kernel.constants import BTU_PER_WH
from econ.report.numbers import first_cost_money, percent, years
from econ.tables.loaders import Tables
from econ.uncertainty.answer import Answer
from econ.uncertainty.quotes import hired_set


def sentences(answer: Answer, tables: Tables) -> tuple[str, ...]:
    """Return what stands behind the equipment difference.

    Parameters
    ----------
    answer : Answer
        The answer to a case.
    tables : Tables
        Usual prices and warranties.
    """
    return tuple(said for said in (_size(answer, tables), _warranty(tables), _trade(answer)) if said)


def _size(answer: Answer, tables: Tables) -> str:
    size, grade = hired_set(answer)
    own = f"{answer.result.alternatives[SELF].capability.nominal_w * BTU_PER_WH / 1000.0:.0f}"
    words = f"{size},000 Btu/h, {grade.replace('_', '-')} class"
    seen = answer.sheet.entry("kit.price_usd").likely
    key = f"kit_{size}_{grade}"
    if key not in tables.ductless_sets:
        return f"Size and class: the hired set is {words}. No kit of that size and class is listed."
    usual = tables.ductless_sets[key].spread("price_usd")
    same = "The kit has that size" if own == size else f"The kit has {own},000 Btu/h"
    return (
        f"Size and class: the hired set is {words}. {same}. Kits of the hired size and class usually cost "
        f"{first_cost_money(usual.low)} to {first_cost_money(usual.high)}; yours stands at {first_cost_money(seen)}."
    )


def _warranty(tables: Tables) -> str:
    kit, trade, labour = (
        years(tables.costs[key].spread().likely)
        for key in ("kit_parts_warranty_yr", "trade_parts_warranty_yr", "trade_labour_warranty_yr")
    )
    return (
        f"Warranty: parts of a trade set are usually covered {trade} once registered, those of a kit {kit}. Labour is "
        f"usually covered {labour}; on a kit nobody pays for it (assumption)."
    )


def _trade(answer: Answer) -> str:
    trade = answer.sheet.entry("hired.equipment_usd").likely
    markup = answer.sheet.entry("costs.equipment_markup_frac").likely - 1.0
    return (
        f"Trade price and markup: such a set costs the contractor about {first_cost_money(trade)}. The markup of about "
        f"{percent(markup)} pays for buying, storing and answering for it."
    )
