"""What was done about a finding: the mark that holds for it now, and all that were taken back."""

from datetime import date

from econ.case.schema import Case
from econ.case.sections.signed import SignOff, is_past
from econ.caution.sign import Kind, signers
from econ.evaluate.route_plan import figures_of
from econ.kernel.caution import Caution, Severity
from econ.tables.stops import stop_table


def mark_of(case: Case, caution: Caution, today: date) -> tuple[int, SignOff] | None:
    """Return the last mark on a finding that counts, with its line in the record; None where there is none."""
    held = marks_of(case, caution, today)
    return held[-1] if held else None


def marks_of(case: Case, caution: Caution, today: date) -> tuple[tuple[int, SignOff], ...]:
    """Return the marks on a finding that count, each with its line in the record.

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
    marks : tuple of (int, SignOff)
        Without those taken back, those given for other figures, and those by whom a stop does not ask for.
    """
    return tuple(
        (place, line)
        for place, line in enumerate(case.signed)
        if line.code == caution.code and line.taken_back is None and _counts(line, caution, today)
    )


def _counts(line: SignOff, caution: Caution, today: date) -> bool:
    is_now = line.date is None or is_past(line.date, today)
    is_same = line.figures is None or line.figures == figures_of(caution)
    is_whole = is_same or caution.severity is Severity.NOTE
    return is_now and is_whole and (line.kind != Kind.SIGNED or _may_sign(line.role or "", caution))


def _may_sign(role: str, caution: Caution) -> bool:
    row = stop_table().of(caution.code)
    by_step = row is not None and row.signer == "step"
    return by_step or any(role in group for group in signers(caution.party))
