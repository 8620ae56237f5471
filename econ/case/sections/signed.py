"""Who signed, what was dealt with, which steps are done; a later line never erases an earlier one."""

from datetime import date
from typing import ClassVar, Final

from pydantic import ValidationInfo, field_validator, model_validator

from econ.case.field import words
from econ.case.nearest import nearest
from econ.case.quantity import short
from econ.case.section import Known, Section, Text, day
from econ.caution.registry import RULES
from econ.caution.sign import KIND_OF, Kind, Role
from econ.kernel.alternative import ALTERNATIVES
from econ.kernel.caution import Severity
from econ.kernel.errors import CaseError, Fault

STEP: Final = "step."
"""How the code of a stop begins that a step brings itself, no rule: ``step.outlet``."""

STEP_STATES: Final = ("begun", "done", "skipped", "open")
"""What may be said of a step; the last line said of it holds, and ``open`` takes the others back."""

_SEVERITY: Final = {rule.code: rule.severity for rule in RULES}
_ASKED: Final = {
    Kind.READ: (),
    Kind.DEALT: ("note",),
    Kind.SIGNED: ("who", "role", "date"),
}
_HOW: Final = {
    Severity.NOTE: "A note is marked read.",
    Severity.CAUTION: "A caution is marked dealt with, and the note says how.",
    Severity.HOLD_POINT: "A stop is opened by a signature alone.",
}
_WHY: Final = {
    "note": "Write how it was dealt with.",
    "who": "Write the name of the person who signed.",
    "role": f"Write as what that person signed: {', '.join(Role)}.",
    "date": "Write the day of signing, year-month-day.",
}


class SignOff(Section):
    """One finding settled: read, dealt with, or signed; the finding stays."""

    path: ClassVar[str] = "signed[]"

    code: Text = words("Finding", "Its code, as the plan and the report list it.")
    kind: Text = words("How it is settled", "A note is read, a caution dealt with, a stop signed.")
    who: Text = words("Signed by", "First and last name.")
    role: Text = words("As", "Electrician, contractor, owner and so on.")
    licence: Text = words("Licence or permit number", "If there is one.")
    date: Text = words("Date", "Year-month-day.")
    note: Text = words("Note", "How it was dealt with, or what was seen.")
    route: Text = words("Way", "The way it was signed for; left out: every way.")
    figures: Text = words(
        "Figures", "Those that raised the stop when it was signed; other figures want a new signature."
    )
    taken_back: Text = words("Taken back on", "The mark no longer counts from this day; it stays on record.")
    why_back: Text = words("Why it was taken back", "In your own words.")

    @field_validator("date", "taken_back", mode="after")
    @classmethod
    def is_a_day(cls, written: str | None) -> str | None:
        """Return the date; it must be year-month-day."""
        return None if written is None else day(written)

    @model_validator(mode="after")
    def settles(self) -> "SignOff":
        """Return the mark; it must fit how hard its finding is, and say who, as what and when where that is asked."""
        faults = _code_faults(self.code) or _kind_faults(self.code or "", self.kind)
        faults = faults or _lacking(self, _ASKED[Kind(self.kind or "")])
        faults += _not_among("role", self.role, tuple(Role)) + _not_among("route", self.route, tuple(ALTERNATIVES))
        if faults:
            raise CaseError(faults)
        return self


class StepSaid(Section):
    """What was said of one step of a way's work."""

    path: ClassVar[str] = "steps[]"

    route: Text = words("Way", "The way whose work it is.")
    task: Text = words("Step", "Its name in the list of tasks.")
    state: Text = words("State", "Begun, done, skipped, or open again.")
    reason: Text = words("Reason", "Why it was skipped.")
    date: Text = words("Date", "Year-month-day.")

    @field_validator("date", mode="after")
    @classmethod
    def is_a_day(cls, written: str | None) -> str | None:
        """Return the date; it must be year-month-day."""
        return None if written is None else day(written)

    @model_validator(mode="after")
    def tells(self, info: ValidationInfo) -> "StepSaid":
        """Return the line; it names a way, a step of it, what holds and since when, and why where it was skipped."""
        asked = ("route", "task", "state", "date", *(("reason",) if self.state == "skipped" else ()))
        faults = [Fault(name, "is missing", "nothing", _STEP_WHY[name]) for name in asked if not _said(self, name)]
        faults += _not_among("route", self.route, tuple(ALTERNATIVES)) + _not_among("state", self.state, STEP_STATES)
        known = info.context.tasks if isinstance(info.context, Known) else ()
        if self.task and known and self.task not in known:
            close = ", ".join(nearest(self.task, known))
            faults.append(Fault("task", "is not a task", short(self.task), f"Nearest: {close}."))
        if faults:
            raise CaseError(faults)
        return self


_STEP_WHY: Final = {
    "route": f"Write one of: {', '.join(ALTERNATIVES)}.",
    "task": "Name the step.",
    "state": f"Write one of: {', '.join(STEP_STATES)}.",
    "date": "Write the day, year-month-day.",
    "reason": "Write why the step was skipped.",
}


def _said(section: Section, name: str) -> bool:
    return bool((getattr(section, name) or "").strip())


def _code_faults(code: str | None) -> list[Fault]:
    if not code:
        return [Fault("code", "is missing", "nothing", "Write the code of the finding.")]
    if code in _SEVERITY or code.startswith(STEP):
        return []
    close = ", ".join(nearest(code, tuple(_SEVERITY)))
    return [Fault("code", "is not the code of a finding", short(code), f"Nearest: {close}.")]


def _kind_faults(code: str, kind: str | None) -> list[Fault]:
    severity = _SEVERITY.get(code, Severity.HOLD_POINT)
    if kind == KIND_OF[severity]:
        return []
    got = short(kind) if kind else "nothing"
    return [Fault("kind", f'must be "{KIND_OF[severity]}" for {code}', got, _HOW[severity])]


def _lacking(mark: SignOff, asked: tuple[str, ...]) -> list[Fault]:
    return [Fault(name, "is missing", "nothing", _WHY[name]) for name in asked if not _said(mark, name)]


def _not_among(name: str, got: str | None, allowed: tuple[str, ...]) -> list[Fault]:
    if got is None or got in allowed:
        return []
    return [Fault(name, f"must be one of: {', '.join(allowed)}", short(got), "Write one of these in quotes.")]


def is_past(written: str | None, today: date) -> bool:
    """Return whether a day written year-month-day is today or before it; a day not said is not."""
    return written is not None and date.fromisoformat(written) <= today
