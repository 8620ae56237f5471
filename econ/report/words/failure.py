"""When a unit fails in July of its fifth year: who comes, how long that takes, what it costs, what a warranty pays."""

from typing import Final

from econ.evaluate.failure import Failure
from econ.installation.warranty import PROOF
from econ.kernel.alternative import Alternative
from econ.kernel.arrays import FloatArray
from econ.report.look import Look
from econ.report.numbers import money, percent, plain_number, plural, tenths

TITLE: Final = "If it fails in July of year 5"
LEAD: Final = (
    "One unit fails on a July day in the fifth year. Figures are likely ones; in brackets all of them at their low, "
    "then all at their high end. Each can be changed among the figures."
)

_CALLED: Final = {
    Alternative.KEEP_AS_IS: "A shop: window units are not mended, a new one is bought.",
    Alternative.WINDOW_UNITS: "A shop: window units are not mended; within its warranty it is exchanged.",
    Alternative.SELF_INSTALL: "First the maker, for the part. Then a service firm that comes to a set it did not sell.",
    Alternative.CONTRACTED_INSTALL: "The firm that put it in. If it is gone, a firm that the maker names.",
}


def rows(failure: Failure, look: Look) -> dict[str, str]:
    """Return what is to be known of a failure, by question.

    Parameters
    ----------
    failure : Failure
        What happens.
    look : Look
        Calendar of the reader.
    """
    return {
        "When": f"{look.day(failure.at_d)}; the unit is then {tenths(failure.age_yr)} years old.",
        "How likely": f"{_shares(failure.chance_frac)} of such units fail in a year at that age.",
        "Who is called": _CALLED[failure.way],
        "Will they come": _come(failure),
        "How long it takes": _wait(failure),
        "What cools until then": f"A hired portable unit and its electricity: {_money(failure.stop_gap_usd)}.",
        "What it costs": _cost(failure),
        "What the warranty pays": _pays(failure),
        "What you pay": f"{_money(failure.own_usd)}, and the cooling until then.",
        "Which proof it wants": _list(PROOF[failure.way]) or "None: there is no warranty.",
        "What ends the warranty": _list(failure.warranty.voided_by) or "There is none.",
        "Register it by": _register(failure, look),
    }


def _money(three: FloatArray) -> str:
    low, likely, high = (money(float(usd)) for usd in three)
    return f"{likely} ({low} to {high})" if low != high else likely


def _shares(three: FloatArray) -> str:
    low, likely, high = (percent(float(share), 1 if share < 0.1 else 0) for share in three)
    return f"{likely} ({low} to {high})" if low != high else likely


def _days(three: FloatArray) -> str:
    low, likely, high = (plain_number(float(days)) for days in three)
    span = f" ({low} to {high})" if low != high else ""
    return f"{likely} {plural('day', round(float(three[1])))}{span}"


def _come(failure: Failure) -> str:
    if failure.way is Alternative.CONTRACTED_INSTALL:
        return "Yes, for pay once its labour warranty is over; in a hot July they are busy."
    if not failure.is_mended:
        return "Nobody needs to: you carry it in, or buy another."
    return (
        f"Not surely. The chance that none of those asked comes is {_shares(failure.nobody_frac)}; then a new set is "
        f"bought, {_money(failure.new_set_usd)} for the goods."
    )


def _wait(failure: Failure) -> str:
    whole = _days(failure.wait_d)
    if not failure.is_mended:
        return f"{whole}: shops run out in the heat."
    return f"{whole}: {_days(failure.visit_d)} for the visit, then {_days(failure.part_d)} for the part."


def _cost(failure: Failure) -> str:
    if not failure.is_mended:
        return f"A new unit: {_money(failure.cost_usd)}, the goods alone."
    return f"A common repair {_money(failure.cost_usd)}; a compressor {_money(failure.compressor_usd)}."


def _pays(failure: Failure) -> str:
    terms = failure.warranty
    parts, labour = float(terms.parts_yr[0]), float(terms.labour_yr[0])
    if parts <= 0.0 and labour <= 0.0:
        return "Nothing: what is there now has none."
    work = f"labour for {_years(labour)}" if labour > 0.0 else "no labour"
    told = f"Usual terms: parts for {_years(parts)}, {work}. "
    if float(failure.pays_usd[1]) <= 0.0:
        return f"{told}So it pays nothing then."
    left = f" Of a compressor {_money(failure.compressor_own_usd)} is left to you." if failure.is_mended else ""
    return f"{told}So it pays {_money(failure.pays_usd)}, as not every claim is paid.{left}"


def _years(years: float) -> str:
    return f"{plain_number(years)} {plural('year', round(years))}"


def _register(failure: Failure, look: Look) -> str:
    if not failure.register_by_d >= 0.0:
        return "Nothing to register: keep the receipt."
    within = plain_number(float(failure.warranty.register_within_d[0]))
    return f"{look.day(failure.register_by_d)}: makers usually ask for it within {within} days of service."


def _list(texts: tuple[str, ...]) -> str:
    joined = "; ".join(texts)
    return f"{joined[:1].upper()}{joined[1:]}." if texts else ""
