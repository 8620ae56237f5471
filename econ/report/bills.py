"""What bills say, in sentences and tables: the fit, its limits, bill by bill, and the factor for the room."""

import math
from typing import Any, Final

from econ.energy.change_point import MONTHLY_CVRMSE_FRAC, MONTHLY_NMBE_FRAC, ChangePointFit
from econ.evaluate.bill_fit import CarrierFit, Scale, seen_sides
from econ.evaluate.bill_scale import BillFindings
from econ.evaluate.wiring.bills import FACTORS
from econ.report.look import Look
from econ.report.numbers import NONE_TEXT, Quantity, percent, plain_number
from econ.report.pictures.frame import Columns
from econ.uncertainty.answer import Answer

NAMES: Final = {"electricity": "Electricity bills", "gas": "Gas bills"}
_MORE: Final = {
    (): "hardly follow the weather",
    ("heating",): "rise the colder it is",
    ("cooling",): "rise the warmer it is",
    ("cooling", "heating"): "rise both the colder and the warmer it is",
}


def statement(found: CarrierFit, look: Look) -> str:
    """Return the sentence that says what a year of bills shows, or why nothing can be told."""
    if found.fit is None or found.year is None:
        return found.problem
    fit, year, seen = found.fit, found.year, seen_sides(found)
    parts = [f"a base of {plain_number(fit.baseload_kwh_per_d, 1)} kWh a day"]
    for side, way in (("heating", "below"), ("cooling", "above")):
        if side in seen:
            at = look.measure(getattr(fit, f"{side}_point_c"), Quantity.TEMPERATURE)
            parts.append(f"{side} {way} {at}, {plain_number(getattr(year, f'{side}_kwh'), -1)} kWh in a typical year")
    return f"{len(found.text.rows)} bills {_MORE[seen]}: {'; '.join(parts)}."


def quality(fit: ChangePointFit) -> str:
    """Return how well a fit keeps the limits for monthly bills."""
    verdict = "The fit is good enough to use" if fit.is_good else "The fit is too loose to use"
    return (
        f"{verdict}: scatter CV(RMSE) {percent(fit.cvrmse_frac, 1)} (at most {percent(MONTHLY_CVRMSE_FRAC)}), "
        f"bias NMBE {percent(fit.nmbe_frac, 1)} (at most {percent(MONTHLY_NMBE_FRAC)} either way), "
        f"R² {plain_number(fit.r2, 2)}. Limits: ASHRAE Guideline 14 for monthly data."
    )


def scale_sentence(scale: Scale) -> str:
    """Return what the bills say of the room's cooling or heating."""
    if scale.factor is None:
        return f"{scale.side.capitalize()}: {scale.refusal}"
    factor = scale.factor
    billed, modelled = (plain_number(kwh, -1) for kwh in (scale.billed_kwh, scale.modelled_kwh))
    return (
        f"{scale.side.capitalize()}: this room's part of what follows the weather is {billed} kWh a year, and the "
        f"model gives {modelled} kWh: what the room needs would be "
        f"multiplied by {plain_number(factor.likely, 2)} ({plain_number(factor.low, 2)} to "
        f"{plain_number(factor.high, 2)}). The size chosen by the design load stays."
    )


def used_sentence(answer: Answer) -> str:
    """Return by how much bills scale the need of an answer's rooms; empty where they do not."""
    used = {side: answer.sheet.entry(path).spread for side, path in FACTORS.items() if path in answer.sheet.place}
    told = [
        f"{side} by {plain_number(factor.likely, 2)} ({plain_number(factor.low, 2)} to {plain_number(factor.high, 2)})"
        for side, factor in used.items()
    ]
    return f"Need through the year is multiplied as your bills show: {', '.join(told)}; sizes are not." if told else ""


def table(found: CarrierFit, look: Look) -> Columns:
    """Return the bills one by one: dates, warmth, billed beside fitted."""
    rows = found.text.rows
    columns: Columns = {
        "From": [row.first.isoformat() for row in rows],
        "To": [row.past.isoformat() for row in rows],
        "Days": [str(row.days_d) for row in rows],
        "Billed, kWh": [plain_number(float(kwh)) for kwh in found.billed_kwh],
        "Fit, kWh": [_number(float(kwh)) for kwh in found.modelled_kwh],
        "Outdoors": [look.measure(float(mean), Quantity.TEMPERATURE) for mean in found.mean_c],
    }
    if any(row.paid_usd is not None for row in rows):
        columns["Paid"] = [NONE_TEXT if row.paid_usd is None else f"${row.paid_usd:,.2f}" for row in rows]
    return columns


def _number(value: float) -> str:
    return NONE_TEXT if math.isnan(value) else plain_number(value)


def text(findings: BillFindings, look: Look) -> list[str]:
    """Return all that bills say, line by line, without the tables."""
    lines = []
    for found in findings.fits:
        lines += [f"{NAMES[found.carrier]}:", *(f"  not used: {fault}" for fault in found.text.faults)]
        lines += [f"  {note}" for note in (*found.text.notes, statement(found, look))]
        lines += [f"  {quality(found.fit)}"] if found.fit else []
    return [*lines, *map(scale_sentence, findings.scales)]


def document(findings: BillFindings) -> dict[str, Any]:
    """Return what bills say as one object of plain values; what does not exist is null."""
    return {
        "bills": {found.carrier: _carrier(found) for found in findings.fits},
        "scales": {scale.side: _scaled(scale) for scale in findings.scales},
    }


def _carrier(found: CarrierFit) -> dict[str, Any]:
    fit = found.fit
    names = ("baseload_kwh_per_d", "heating_kwh_per_kd", "cooling_kwh_per_kd", "heating_point_c", "cooling_point_c")
    errors = ("cvrmse_frac", "nmbe_frac", "r2")
    return {
        "kind": fit.kind.value if fit else None,
        **{name: _plain(getattr(fit, name)) if fit else None for name in (*names, *errors)},
        "is_good": fit.is_good if fit else False,
        "problem": found.problem or None,
        "rows_refused": [str(fault) for fault in found.text.faults],
        "rows": [
            {
                "from": row.first.isoformat(), "to": row.past.isoformat(), "mean_c": _plain(float(mean)),
                "billed_kwh": _plain(float(billed)), "modelled_kwh": _plain(float(fitted)), "paid_usd": row.paid_usd,
            }
            for row, mean, billed, fitted in zip(
                found.text.rows, found.mean_c, found.billed_kwh, found.modelled_kwh, strict=True
            )
        ],
    }  # fmt: skip


def _scaled(scale: Scale) -> dict[str, Any]:
    factor = scale.factor
    spread = {"low": factor.low, "likely": factor.likely, "high": factor.high} if factor else None
    return {
        "billed_kwh": _plain(scale.billed_kwh),
        "modelled_kwh": _plain(scale.modelled_kwh),
        "factor": spread,
        "refusal": scale.refusal or None,
    }


def _plain(value: float) -> float | None:
    return value if math.isfinite(value) else None
