"""What may go wrong in the work, plan B, who would finish it, incentive and warranty, in words."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Final

from econ.case.choices import option_at
from econ.evaluate.finish import BothWays, Finished, both_ways
from econ.evaluate.plan_b import PlanB, plans_b
from econ.evaluate.result import AlternativeResult
from econ.evaluate.wiring.installation_own import INCENTIVE_OF
from econ.installation.mishap import BY_USER
from econ.kernel.alternative import HIRED, SELF
from econ.kernel.spread import Spread
from econ.report.numbers import day_after, day_text, first_cost_money, hours, money, percent, plain_number
from econ.report.pictures.frame import Columns
from econ.tables.loaders import Tables
from econ.uncertainty.answer import Answer

TERM_WORDS: Final = {
    "none": "whoever does the work",
    "permit": "if a permit is taken out",
    "licensed_commissioning": "if a licensed contractor connects and starts it",
    "licensed_installation": "if licensed parties do all the licensed work",
    "not_known": "on terms that nobody has asked for yet",
}

_WHO: Final = {"self": "you"}


def _range(spread: Spread, words: Callable[[float], str]) -> str:
    return f"{words(spread.likely)} ({words(spread.low)} to {words(spread.high)})"


def doubt_sentence(way: AlternativeResult) -> str:
    """Return what is set aside for what may go wrong with a way, in own hands and in a contractor's."""
    parts = {
        "in your own work": [doubt for doubt in way.doubts if doubt.mishap.by == BY_USER],
        "with the contractor": [doubt for doubt in way.doubts if doubt.mishap.by != BY_USER],
    }
    said = []
    for where, doubts in parts.items():
        usd = sum(float(doubt.chance_frac[0] * doubt.cost_usd[0]) for doubt in doubts)
        own_h = sum(float(doubt.chance_frac[0] * doubt.own_h[0]) for doubt in doubts)
        if usd > 0.0 or own_h > 0.0:
            said.append(f"{money(usd)} and {hours(own_h)} of yours for what may go wrong {where}")
    return f"Set aside, chance times cost: {'; '.join(said)}. Chances are assumptions." if said else ""


def finish_sentences(both: BothWays) -> tuple[str, ...]:
    """Return what hangs on whether a contractor takes on a kit bought elsewhere; both prices where it is not known."""
    if not both.if_yes.is_open:
        return ("Whether a contractor takes on a kit bought elsewhere does not matter here: the way is closed anyway.",)
    if not both.matters:
        return ("No task of yours waits for a contractor who would finish a kit bought elsewhere.",)
    listed = "; ".join(both.if_yes.tasks)
    answers = {"yes": (both.if_yes,), "no": (both.if_no,)}.get(both.answer, (both.if_yes, both.if_no))
    heads = {id(both.if_yes): "If a contractor takes on your kit", id(both.if_no): "If none does"}
    chance = _range(both.takes_on_frac, percent)
    phone = f"Phone two or three before you buy: one takes it on with a chance of {chance}, an assumption."
    asked = (f"{phone} It decides who does: {listed}.",) if both.answer == "not_known" else ()
    return (*asked, *(f"{heads[id(each)]}: {_finished_words(each)}" for each in answers))


def _finished_words(each: Finished) -> str:
    figures = f"{first_cost_money(each.cash_usd)} cash, {hours(each.own_h)} of yours, {each.in_service_d:.0f} days"
    if not each.is_open:
        return f"it cannot be finished, and the whole is hired: {figures}."
    return f"{figures}." if each.tasks else f"those tasks are yours again: {figures}."


def incentive_sentence(answer: Answer, way: int) -> str:
    """Return what an incentive counts for and on what terms; nothing where there is none."""
    name = INCENTIVE_OF.get(answer.result.alternatives[way].name)
    path = f"money.incentive_{name}"
    amount = answer.sheet.entry(f"{path}_usd").likely if name else 0.0
    if amount <= 0.0:
        return ""
    chance = answer.sheet.entry(f"{path}_frac").likely
    terms = TERM_WORDS[option_at(f"{path}_terms", answer.sheet.entry(f"{path}_terms").likely)]
    counted = -line_usd(answer.result.alternatives[way], "incentive")
    if counted <= 0.0:
        return f"The incentive of {money(amount)} is paid {terms}: not so here, and nothing is counted."
    return (
        f"The incentive of {money(amount)} is paid {terms}: {money(counted)} counted, at a chance of {percent(chance)}."
    )


def warranty_sentence(way: AlternativeResult) -> str:
    """Return what is covered for how long, and what would void it; nothing where nothing is bought."""
    found = way.warranty
    if not found.voided_by:
        return ""
    parts, sealed, labour = (float(years[0]) for years in (found.parts_yr, found.compressor_yr, found.labour_yr))
    paid = percent(float(found.claims_paid_frac[0]))
    return (
        f"Warranty, usual terms: parts {parts:g} years, compressor {sealed:g}, labour {labour:g}; "
        f"{paid} of claims paid. Voided by: {'; '.join(found.voided_by)}."
    )


@dataclass(frozen=True, slots=True)
class WayRisk:
    """What may go wrong with one way, in words.

    Attributes
    ----------
    title : str
        Which way.
    sentences : tuple of str
        What is set aside, who would finish it, incentive, warranty.
    plan_b : dict of str to list
        What to do then, a row a kind.
    """

    title: str
    sentences: tuple[str, ...]
    plan_b: Columns


def way_risks(answer: Answer, tables: Tables) -> tuple[WayRisk, ...]:
    """Return all of it for own work and for hiring."""
    both = both_ways(answer.structure, answer.sheet, tables)
    own = _way_risk("If you put it in yourself", answer, tables, SELF, finish_sentences(both))
    return own, _way_risk("If you hire it out", answer, tables, HIRED, ())


def _way_risk(title: str, answer: Answer, tables: Tables, place: int, more: tuple[str, ...]) -> WayRisk:
    way = answer.result.alternatives[place]
    told = (doubt_sentence(way), *more, incentive_sentence(answer, place), warranty_sentence(way))
    plans = plans_b(way, answer.sheet, tables)
    decision = answer.decision_date
    dates = [day_text(day_after(decision, running_d(way, plan)), decision.year) for plan in plans]
    return WayRisk(title, tuple(text for text in told if text), plan_table(plans) | {"Then running by about": dates})


def running_d(way: AlternativeResult, plan: PlanB) -> float:
    """Return when the room is served if one thing goes wrong at the start, likely days from the decision. [day]"""
    return float(way.in_service_d[0]) + plan.days_d.likely


def plan_table(plans: Sequence[PlanB]) -> Columns:
    """Return plan B as a table: what goes wrong, how likely, what to do, who, what it costs, how much later."""
    return {
        "If this happens": [plan.label for plan in plans],
        "Chance": [percent(plan.chance_frac, 1) for plan in plans],
        "Then": [plan.action for plan in plans],
        "Who": [_WHO.get(plan.party, plan.party) for plan in plans],
        "Cost": [_range(plan.cost_usd, money) for plan in plans],
        "Days later": [_range(plan.days_d, plain_number) for plan in plans],
    }


def line_usd(way: AlternativeResult, key: str) -> float:
    """Return what one line of first cost comes to, likely row. [USD]"""
    return float(way.line_items.amount_usd[0, way.line_items.key.index(key)])
