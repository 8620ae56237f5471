"""Which of several quotes the comparison counts: the one counted and another change places."""

from collections.abc import Mapping
from typing import Any, Final

from econ.case.schema import Case, case_from, plain
from econ.case.sections.equipment import Quote
from econ.case.sections.quote import Offer
from econ.kernel.errors import CaseError, Fault

_COUNTED: Final = tuple(Quote.model_fields)
"""Fields that both a counted quote and another one have, in their sections."""

_TOLD: Final = tuple(Offer.model_fields)
_SET: Final = ("size", "grade")
"""Size and class: of the hired way for the quote that is counted, of its own for another."""


def with_counted(case: Case, index: int) -> Case:
    """Return the case with another of its quotes counted; the one counted so far takes its place.

    Parameters
    ----------
    case : Case
        The case; it stays as it is.
    index : int
        Which of the other quotes.

    Raises
    ------
    CaseError
        If there is no such quote.
    """
    if not 0 <= index < len(case.quotes):
        remedy = "Name one of them, from 0."
        raise CaseError([Fault(f"quotes[{index}]", f"has {len(case.quotes)} other quotes", repr(index), remedy)])
    tables = plain(case)
    other = tables["quotes"][index]
    hired = dict(tables.get("hired", {}))
    left = {name: value for name, value in hired.items() if name in _SET and value not in ("same_as_kit", "not known")}
    former = {**tables.get("quote", {}), **tables.get("offer", {}), **left}
    tables["quote"], tables["offer"] = _picked(other, _COUNTED), _picked(other, _TOLD)
    tables["hired"] = {name: value for name, value in hired.items() if name not in _SET} | _picked(other, _SET)
    rest = [quote for at, quote in enumerate(tables["quotes"]) if at != index]
    tables["quotes"] = [*rest[:index], former, *rest[index:]]
    return case_from({name: part for name, part in tables.items() if part})


def _picked(fields: Mapping[str, Any], names: tuple[str, ...]) -> dict[str, Any]:
    return {name: fields[name] for name in names if name in fields}
