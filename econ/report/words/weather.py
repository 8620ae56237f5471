"""What the weather of a result was made from, and how far to trust it."""

from typing import Final

from econ.evaluate.result import ClimateSummary

MADE_FROM: Final = {
    "record": "Made from the monthly record of a weather station: degree-days within 2 % (heating) and 5 % (cooling).",
    "means": "Made from monthly mean temperatures alone: heating degree-days within 7 %, cooling within 18 %; "
    "design temperatures are estimates, about 2 °C (4 °F).",
    "typed": "Made from monthly figures typed in.",
    "hourly": "Made from the hours of one year; design temperatures come from that year alone.",
}
"""By what the days were made from."""


def weather_sentences(climate: ClimateSummary) -> tuple[str, ...]:
    """Return what the weather was made from, what was estimated, and what was left out or taken for granted.

    Parameters
    ----------
    climate : ClimateSummary
        The weather behind a result.
    """
    sentences = [MADE_FROM[climate.basis]]
    if climate.estimated:
        sentences.append(f"Estimated, not known: {'; '.join(climate.estimated)}.")
    return (*sentences, *climate.notes)
