"""Why a size is what it is: the size chosen held against the need, sentence by sentence."""

from typing import Final

import numpy as np

from econ.evaluate.result import AlternativeResult, Result
from econ.kernel.alternative import SELF
from econ.report.look import Look
from econ.report.numbers import Quantity, measure, percent
from econ.report.words.load import MOIST_SHARE
from econ.uncertainty.answer import Answer

CLOSE_SHARE: Final = 1.15
"""A unit up to this much above the design load is called a fit. Common practice, no source."""


def size_sentences(answer: Answer, look: Look) -> tuple[str, ...]:
    """Return what the kit's size does and does not do for the rooms it serves.

    Parameters
    ----------
    answer : Answer
        The answer to a case.
    look : Look
        Units to show.

    Returns
    -------
    sentences : tuple of str
        Moisture first where it is most of the need; then cooling against the design load, heat at the design
        temperature and least output, each only where it bears on the size.
    """
    result = answer.result
    way = result.alternatives[SELF]
    least_w = way.capability.nominal_w * answer.sheet.entry("kit.min_ratio_frac").likely
    found = [_against_cooling(result, way, look), _against_heating(result, way, look), _least(result, least_w, look)]
    return tuple(sentence for sentence in (_moisture(result), *found) if sentence)


def design_w(result: Result) -> tuple[float, float]:
    """Return total cooling and heating of the served rooms on the design days. [W] [W]"""
    return result.rooms.block.cooling_w, result.rooms.block.heating_w


def at_w(
    capacity_w: "np.ndarray[tuple[int, ...], np.dtype[np.float64]]", way: AlternativeResult, outdoor_c: float
) -> float:
    """Return a capacity at an outdoor temperature; 0 where the unit cannot run. [W]"""
    return float(np.interp(outdoor_c, way.capability.at_c, np.nan_to_num(capacity_w, nan=0.0)))


def _against_cooling(result: Result, way: AlternativeResult, look: Look) -> str:
    need_w, _ = design_w(result)
    if need_w <= 0.0:
        return ""
    gives_w = at_w(way.capability.cool_w, way, result.climate.cool_design_c)
    need, gives = (measure(value, Quantity.POWER, look.units) for value in (need_w, gives_w))
    asks = f"On the hot design day the rooms it serves need about {need} of cooling, moisture included"
    if gives_w < need_w:
        return f"{asks}; this unit gives {gives}, which is too little."
    if gives_w <= CLOSE_SHARE * need_w:
        return f"{asks}; this unit gives {gives}: it fits."
    return f"{asks}; this unit gives {gives}, {gives_w / need_w:.1f} times as much."


def _against_heating(result: Result, way: AlternativeResult, look: Look) -> str:
    _, need_w = design_w(result)
    if need_w <= 0.0:
        return ""
    gives_w = at_w(way.capability.heat_w, way, result.climate.heat_design_c)
    need, gives = (measure(value, Quantity.POWER, look.units) for value in (need_w, gives_w))
    at = measure(result.climate.heat_design_c, Quantity.TEMPERATURE, look.units)
    served = result.need_heat_kwh[0].sum() - way.unmet_heating_kwh_per_yr[0]
    share = percent(served / result.need_heat_kwh[0].sum()) if result.need_heat_kwh[0].sum() > 0.0 else "none"
    asks = f"On the cold design night, {at}, they need about {need} of heat"
    if gives_w >= need_w:
        return f"{asks}, and it gives {gives}, which is enough.{_heat_asks_more(result, way, gives_w)}"
    return (
        f"{asks}, and it gives {gives}; over the year it gives {share} of the heat, the rest comes from what you have."
    )


def _heat_asks_more(result: Result, way: AlternativeResult, gives_w: float) -> str:
    """Return the sentence that heat is why the unit is larger, where one sized for cooling alone would fall short."""
    cooling_w, heating_w = design_w(result)
    cools_w = at_w(way.capability.cool_w, way, result.climate.cool_design_c)
    by_cooling_w = gives_w * min(1.0, CLOSE_SHARE * cooling_w / cools_w) if cools_w > 0.0 else gives_w
    return " A unit sized for cooling alone would not be." if by_cooling_w < heating_w else ""


def _least(result: Result, least_w: float, look: Look) -> str:
    mean_w = float(result.mean_cooling_w[0])
    if mean_w <= 0.0 or least_w <= mean_w:
        return ""
    least, mean = (measure(value, Quantity.POWER, look.units) for value in (least_w, mean_w))
    return (
        f"It cannot run below about {least}, and in the hours that want cooling the rooms need {mean} on average: "
        "it will switch on and off, and dry the air less than a smaller one."
    )


def _moisture(result: Result) -> str:
    latent, sensible = float(result.need_latent_kwh[0].sum()), float(result.need_cool_kwh[0].sum())
    total = latent + sensible
    if total <= 0.0 or latent < MOIST_SHARE * total:
        return ""
    return (
        f"{percent(latent / total)} of the rooms' summer need is moisture: they want drying more than cooling, "
        "and a larger unit does not dry better."
    )
