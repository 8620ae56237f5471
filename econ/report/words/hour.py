"""What the answer would be if an hour of the user's counted for nothing."""

from econ.evaluate.result import Result
from econ.kernel.alternative import ALTERNATIVES, Alternative
from econ.report.numbers import money
from econ.report.style import NAMES
from econ.report.words.standing import lifetime_usd
from econ.uncertainty.answer import Answer


def at_nothing(answer: Answer, then: Result) -> str:
    """Return which way would cost least with own hours at nothing, beside the present one.

    Parameters
    ----------
    answer : Answer
        The answer as it is.
    then : Result
        The same with an hour of the user's at nothing.

    Returns
    -------
    sentence : str
        Of the ways that pass every other test; empty where none does.
    """
    fitting = [name for name, fits in zip(ALTERNATIVES, answer.verdict.eligible, strict=True) if fits]
    if not fitting:
        return ""
    before, after = (_cheapest(result, fitting) for result in (answer.result, then))
    again = "still " if before is after else ""
    way = then.alternatives[ALTERNATIVES.index(after)]
    cost = money(float(then.measures.annualised_cost_usd_per_yr[ALTERNATIVES.index(after), 0]))
    return (
        f"If your hours counted for nothing, the cheapest way would {again}be “{NAMES[after]}”: {cost} a year all-in, "
        f"with {float(way.own_hours_h[0]):.0f} h of your time before it is cool."
    )


def _cheapest(result: Result, fitting: list[Alternative]) -> Alternative:
    return min(fitting, key=lambda name: lifetime_usd(result, name))
