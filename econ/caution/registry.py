"""All rules, and what they find."""

from typing import Final, cast

import numpy as np

from econ.caution.anchor import ANCHOR_RULES
from econ.caution.circuit import CIRCUIT_RULES
from econ.caution.delivery import DELIVERY_RULES
from econ.caution.facts import Facts
from econ.caution.lifting import LIFTING_RULES
from econ.caution.measure import MEASURE_RULES
from econ.caution.outside import OUTSIDE_RULES
from econ.caution.part_load import PART_LOAD_RULES
from econ.caution.permit import PERMIT_RULES
from econ.caution.placement import PLACEMENT_RULES
from econ.caution.power import POWER_RULES
from econ.caution.refrigerant import REFRIGERANT_RULES
from econ.caution.room import ROOM_RULES
from econ.caution.rule import FACT_NAMES, Rule, finding
from econ.caution.sizing import SIZING_RULES
from econ.caution.wall import WALL_RULES
from econ.caution.window import WINDOW_RULES
from econ.kernel.caution import Caution, Severity

RULES: Final[tuple[Rule, ...]] = (
    *POWER_RULES,
    *CIRCUIT_RULES,
    *REFRIGERANT_RULES,
    *WALL_RULES,
    *OUTSIDE_RULES,
    *PERMIT_RULES,
    *LIFTING_RULES,
    *ANCHOR_RULES,
    *DELIVERY_RULES,
    *PLACEMENT_RULES,
    *ROOM_RULES,
    *WINDOW_RULES,
    *MEASURE_RULES,
    *SIZING_RULES,
    *PART_LOAD_RULES,
)
"""Every rule once."""

_ORDER: Final = (Severity.HOLD_POINT, Severity.CAUTION, Severity.NOTE)


def found(facts: Facts) -> tuple[Caution, ...]:
    """Return what the rules find, hold points first.

    Parameters
    ----------
    facts : Facts
        The case and its results.

    Returns
    -------
    cautions : tuple of Caution
        One for each rule that holds in at least one row.
    """
    raised = [(rule, np.asarray(rule.holds(facts), dtype=np.bool_)) for rule in RULES]
    cautions = [finding(rule, facts, rows) for rule, rows in raised if rows.any()]
    return tuple(sorted(cautions, key=lambda caution: _ORDER.index(caution.severity)))


def looked_at(rule: Rule, facts: Facts) -> tuple[str, ...]:
    """Return the facts that a rule looks at.

    Parameters
    ----------
    rule : Rule
        A rule.
    facts : Facts
        The case and its results.

    Returns
    -------
    names : tuple of str
        Names of facts: those the predicate read, then those of the rule's evidence that it did not.
    """
    watched = _Watched(facts)
    rule.holds(cast("Facts", watched))
    return tuple(dict.fromkeys((*watched.names, *rule.evidence)))


class _Watched:
    """Facts that note what is read of them."""

    def __init__(self, facts: Facts) -> None:
        self.facts = facts
        self.names: list[str] = []

    def __getattr__(self, name: str) -> object:
        if name in FACT_NAMES:
            self.names.append(name)
        return getattr(self.facts, name)


def not_raised(facts: Facts) -> tuple[Rule, ...]:
    """Return the rules that were checked and hold in no row.

    Parameters
    ----------
    facts : Facts
        The case and its results.

    Returns
    -------
    rules : tuple of Rule
        In the order of RULES.
    """
    return tuple(rule for rule in RULES if not np.any(rule.holds(facts)))
