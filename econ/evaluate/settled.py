"""What was done about a finding: the mark that holds for it now, and all that were taken back."""

from datetime import date

from econ.case.schema import Case
from econ.case.sections.signed import SignOff, is_past
from econ.evaluate.route_plan import figures_of
from econ.kernel.caution import Caution, Severity


def mark_of(case: Case, caution: Caution, today: date) -> tuple[int, SignOff] | None:
    """Return the last mark on a finding that was not taken back, with its line in the record.

    Parameters
    ----------
    case : Case
        What was marked.
    caution : Caution
        A finding as it is raised now.
    today : date
        A mark dated later does not count yet; one without a date does.

    Returns
    -------
    mark : tuple of (int, SignOff) or None
        None too where a caution or stop was settled for other figures: it has to be dealt with again.
    """
    held = [
        (place, line)
        for place, line in enumerate(case.signed)
        if line.code == caution.code and line.taken_back is None and _counts(line, caution, today)
    ]
    return held[-1] if held else None


def _counts(line: SignOff, caution: Caution, today: date) -> bool:
    is_now = line.date is None or is_past(line.date, today)
    is_same = line.figures is None or line.figures == figures_of(caution)
    return is_now and (is_same or caution.severity is Severity.NOTE)
