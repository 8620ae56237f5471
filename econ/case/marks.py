"""What may be ticked in the record of the work, by path: such marks have no usual value and move no number."""

from typing import Final

from econ.case import quantity
from econ.kernel.alternative import ALTERNATIVES, KEEP
from econ.kernel.errors import CaseError, Fault

YES_NO: Final = ("yes", "no")

MARKS: Final[dict[str, tuple[str, ...]]] = {
    "as_built.way": tuple(name.value for name in ALTERNATIVES if name is not ALTERNATIVES[KEEP]),
    "tests.joints": ("tight", "leaks", "not_tested"),
    "tests.leak_means": ("soap", "detector", "both"),
    "tests.running": ("cooling", "heating"),
    "tests.mode": ("test_mode", "full_fan", "not_known"),
    "tests.drain": ("ran_clear", "ran_slowly", "leaked", "not_tested"),
    "paper.size": ("letter", "a4"),
    "paper.large_print": YES_NO,
    "paper.leave_out": YES_NO,
}
"""Options in the order of a form."""


def mark(path: str, raw: object) -> str:
    """Return the option that was ticked.

    Parameters
    ----------
    path : str
        One of MARKS.
    raw : object
        As a case file holds it.

    Raises
    ------
    CaseError
        If it is none of the options.

    Examples
    --------
    >>> mark("paper.size", "a4")
    'a4'
    """
    options = MARKS[path]
    ticked = "not_known" if quantity.is_not_known(raw) else raw
    if not isinstance(ticked, str) or ticked not in options:
        problem = f"must be one of: {', '.join(options)}"
        raise CaseError([Fault("", problem, quantity.short(raw), "Write one of these in quotes, or leave it out.")])
    return ticked
