"""Findings: what a person should know although the computation went through."""

from dataclasses import dataclass, field
from enum import StrEnum

import numpy as np

from econ.kernel.arrays import BoolArray


class Severity(StrEnum):
    """How hard a finding is: read it, deal with it, or stop until a named person signs."""

    NOTE = "note"
    CAUTION = "caution"
    HOLD_POINT = "hold_point"


class Topic(StrEnum):
    """The page a finding belongs to."""

    ROOM = "room"
    PLACE = "place"
    EQUIPMENT = "equipment"
    WORK = "work"
    ANSWER = "answer"


@dataclass(frozen=True, slots=True, eq=False)
class Caution:
    """One finding, with what caused it, what to do and who must do it.

    Attributes
    ----------
    code : str
        Stable dotted code, such as ``electrical.breaker_above_maximum``.
    topic : Topic
        The page it belongs to.
    severity : Severity
        NOTE, CAUTION or HOLD_POINT.
    message : str
        What was found, in plain words.
    action : str
        What to do.
    party : str
        Who must do it.
    evidence : tuple of (str, float, str)
        Name, number and unit of what caused it.
    source : str
        The rule's source, or "common practice, no source".
    alternatives : tuple of str
        The alternatives it concerns; empty means all.
    rows : ndarray, shape (B,)
        The decision rows it holds for.
    """

    code: str
    topic: Topic
    severity: Severity
    message: str
    action: str
    party: str
    source: str
    evidence: tuple[tuple[str, float, str], ...] = ()
    alternatives: tuple[str, ...] = ()
    rows: BoolArray = field(default_factory=lambda: np.ones(1, dtype=np.bool_))
