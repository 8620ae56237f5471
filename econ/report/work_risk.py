"""What may go wrong in the work, plan B, who would finish it, incentive and warranty, as plain values."""

from typing import Any

from econ.case.choices import option_at
from econ.evaluate.finish import Finished, both_ways
from econ.evaluate.plan_b import PlanB, plans_b
from econ.evaluate.result import AlternativeResult
from econ.evaluate.wiring.installation_own import INCENTIVE_OF
from econ.kernel.alternative import Alternative
from econ.kernel.spread import Spread
from econ.report import first_cost_lines
from econ.report.numbers import day_after
from econ.report.words.work_risk import line_usd, running_d
from econ.tables.loaders import Tables
from econ.uncertainty.answer import Answer

Document = dict[str, Any]


def document(answer: Answer, tables: Tables) -> Document:
    """Return the same as plain values for JSON: plans, both prices, incentive and warranty by way."""
    both = both_ways(answer.structure, answer.sheet, tables)
    return {
        "contractor_finishes": {
            "answer": both.answer, "if_yes": _finished_document(both.if_yes), "if_no": _finished_document(both.if_no),
            "takes_on_frac": _range_document(both.takes_on_frac),
        },
        "work_risk": [_way_document(way, answer, tables) for way in answer.result.alternatives],
        "first_cost_lines": {
            way.name.value: first_cost_lines.document(answer.result, at, answer.drawn)
            for at, way in enumerate(answer.result.alternatives)
        },
    }  # fmt: skip


def _finished_document(each: Finished) -> Document:
    return {
        "is_open": each.is_open,
        "cash_first_cost_usd": each.cash_usd,
        "first_cost_usd": each.first_usd,
        "own_hours_h": each.own_h,
        "in_service_d": each.in_service_d,
        "contractor_tasks": list(each.tasks),
    }


def _way_document(way: AlternativeResult, answer: Answer, tables: Tables) -> Document:
    found = way.warranty
    names = ("parts_yr", "compressor_yr", "labour_yr", "claims_paid_frac")
    return {
        "name": way.name.value,
        "allowance_usd": sum((float(doubt.chance_frac[0] * doubt.cost_usd[0]) for doubt in way.doubts), 0.0),
        "incentive": _incentive_document(way, answer),
        "warranty": {name: float(getattr(found, name)[0]) for name in names} | {"voided_by": list(found.voided_by)},
        "plan_b": [_plan_document(plan, way, answer) for plan in plans_b(way, answer.sheet, tables)],
    }


def _incentive_document(way: AlternativeResult, answer: Answer) -> Document | None:
    if way.name not in INCENTIVE_OF:
        return None
    path = f"money.incentive_{INCENTIVE_OF[Alternative(way.name)]}"
    return {
        "amount_usd": answer.sheet.entry(f"{path}_usd").likely,
        "chance_frac": answer.sheet.entry(f"{path}_frac").likely,
        "terms": option_at(f"{path}_terms", answer.sheet.entry(f"{path}_terms").likely),
        "counted_usd": 0.0 - line_usd(way, "incentive"),
    }


def _plan_document(plan: PlanB, way: AlternativeResult, answer: Answer) -> Document:
    ranges = {"cost_usd": plan.cost_usd, "own_h": plan.own_h, "days_later_d": plan.days_d}
    return {
        "key": plan.key,
        "label": plan.label,
        "chance_frac": None if plan.chance_frac != plan.chance_frac else plan.chance_frac,
        "party": plan.party,
        "action": plan.action,
        "running_by_date": day_after(answer.decision_date, running_d(way, plan)).isoformat(),
        **{name: _range_document(each) for name, each in ranges.items()},
    }


def _range_document(spread: Spread) -> Document:
    return {"low": spread.low, "likely": spread.likely, "high": spread.high}
