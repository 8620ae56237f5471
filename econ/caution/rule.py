"""A rule: one predicate over facts, and the words of what it finds."""

from collections.abc import Callable
from dataclasses import dataclass, fields
from typing import Final

import numpy as np

from econ.caution.facts import Facts
from econ.kernel.alternative import Alternative
from econ.kernel.arrays import BoolArray
from econ.kernel.caution import Caution, Severity, Topic
from econ.kernel.units import suffix_of

PRACTICE: Final = "common practice, no source"

WINDOW: Final = (Alternative.WINDOW_UNITS.value,)
SELF: Final = (Alternative.SELF_INSTALL.value,)
HIRED: Final = (Alternative.CONTRACTED_INSTALL.value,)
DUCTLESS: Final = (*SELF, *HIRED)


@dataclass(frozen=True, slots=True)
class Rule:
    """One rule.

    Attributes
    ----------
    code : str
        Stable dotted code.
    topic : Topic
        Page.
    severity : Severity
        How hard the finding is.
    holds : callable
        Facts in, whether it is raised out, shape (B,).
    message, action, party, source : str
        The finding's words; numbers are in the evidence.
    evidence : tuple of str
        Fields of Facts that caused it.
    alternatives : tuple of str
        Routes it concerns; empty means all.
    """

    code: str
    topic: Topic
    severity: Severity
    holds: Callable[[Facts], BoolArray]
    message: str
    action: str
    party: str
    source: str = PRACTICE
    evidence: tuple[str, ...] = ()
    alternatives: tuple[str, ...] = ()


def finding(rule: Rule, facts: Facts, rows: BoolArray) -> Caution:
    """Return a raised rule as a finding, with the numbers of the first row it holds for.

    Parameters
    ----------
    rule : Rule
        What was raised.
    facts : Facts
        What raised it.
    rows : ndarray, shape (B,)
        Rows it holds for; at least one.

    Returns
    -------
    caution : Caution
        Ready to be shown.
    """
    first = int(np.argmax(rows))
    evidence = tuple(
        (field, float(getattr(facts, field)[first]), suffix_of(field) or "dimensionless") for field in rule.evidence
    )
    return Caution(
        code=rule.code,
        topic=rule.topic,
        severity=rule.severity,
        message=rule.message,
        action=rule.action,
        party=rule.party,
        source=rule.source,
        evidence=evidence,
        alternatives=rule.alternatives,
        rows=rows,
    )


def always(facts: Facts) -> BoolArray:
    """Return True for every row: what holds wherever its route is taken."""
    return np.ones(facts.n_row, dtype=np.bool_)


FACT_NAMES: Final = tuple(field.name for field in fields(Facts))
"""Names that evidence may use."""
