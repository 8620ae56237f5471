"""The work as it was done, task by task, each figure by its name: entered, or estimated; none is called measured."""

from collections.abc import Callable
from typing import Final

from econ.case.quantity import Amount
from econ.case.schema import Case
from econ.evaluate.result import AlternativeResult
from econ.kernel.alternative import Alternative
from econ.report.numbers import NONE_TEXT, money, tenths
from econ.report.pictures.frame import Columns

CELL: Final = 60
"""Letters of a user's text in a table; the whole of it stands at the end of the report."""


def done_table(case: Case, way: AlternativeResult) -> Columns:
    """Return the tasks of which something was entered: who, licence, when, hours and cost; empty where nothing was.

    Parameters
    ----------
    case : Case
        With its record.
    way : AlternativeResult
        Its tasks.
    """
    built, plan = case.as_built, way.schedule
    texts = [dict(built.done_by or ()), dict(built.licence or ()), days_done(case, way.name)]
    hours, paid = dict(built.hours_h or ()), dict(built.cost_usd or ())
    told = {*hours, *paid, *(task for table in texts for task in table)}
    tasks = [(task, label) for task, label in zip(plan.task, plan.label, strict=True) if task in told]
    if not tasks:
        return {}
    done_by, licence, done_on = ([_brief(table.get(task, "")) for task, _ in tasks] for table in texts)
    return {
        "Task": [label for _, label in tasks],
        "Done by": done_by,
        "Licence": licence,
        "On": done_on,
        "Hours entered": [_told(hours.get(task), tenths) for task, _ in tasks],
        "Paid, entered": [_told(paid.get(task), money) for task, _ in tasks],
    }


def days_done(case: Case, name: Alternative) -> dict[str, str]:
    """Return on which day each task of a way was done: as entered in the record, else as its step was marked.

    Parameters
    ----------
    case : Case
        With its record and what was said of steps.
    name : Alternative
        The way.
    """
    last = {line.task: line for line in case.steps if line.route == name.value}
    marked = {task: line.date for task, line in last.items() if task and line.state == "done" and line.date}
    return marked | dict(case.as_built.done_on or ())


def entered_sentence(case: Case, way: AlternativeResult) -> str:
    """Return hours and cash entered so far beside the estimate of the whole way, each by its name.

    Parameters
    ----------
    case : Case
        With its record.
    way : AlternativeResult
        Its estimate.
    """
    built = case.as_built
    hours = sum(amount.likely for _, amount in built.hours_h or () if not amount.is_unknown)
    paid = sum(amount.likely for _, amount in built.cost_usd or () if not amount.is_unknown)
    own, cash = tenths(float(way.own_hours_h[0])), money(float(way.cash_first_cost_usd[0]))
    return (
        f"Entered so far: {tenths(hours)} hours and {money(paid)}. Estimated before the work, for all of it: "
        f"{own} hours of your own and {cash} of cash."
    )


def _told(amount: Amount | None, words: Callable[[float], str]) -> str:
    return NONE_TEXT if amount is None or amount.is_unknown else words(amount.likely)


def _brief(text: str) -> str:
    line = " ".join(text.split())
    return line if len(line) <= CELL else f"{line[: CELL - 1]}…"
