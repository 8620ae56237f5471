"""What could hurt someone or undo the work: every finding, stops first, with what to do and who must."""

from econ.kernel.caution import Caution, Severity
from econ.report.document.block import Block, Finding, Findings, Heading, Sentence
from econ.report.document.content.basis import Basis
from econ.report.numbers import listed, plural
from econ.report.style import NAMES

_PARTY = {"self": "you", "user": "you"}


def minding_blocks(basis: Basis) -> list[Block]:
    """Return stops and cautions, stops first."""
    found = _found(basis, Severity.HOLD_POINT) + _found(basis, Severity.CAUTION)
    notes = len(_found(basis, Severity.NOTE))
    if not found:
        return []
    stops = sum(each.severity is Severity.HOLD_POINT for each in found)
    said = (
        f"{stops} {plural('stop', stops)}: work there rests until the named person has signed. "
        f"Nobody works around one. The appendix holds {notes} {plural('note', notes)}."
    )
    return [Heading("What could hurt someone or undo the work"), Sentence(said), Findings(found)]


def note_blocks(basis: Basis) -> list[Block]:
    """Return the notes."""
    found = _found(basis, Severity.NOTE)
    return [Heading("Appendix: notes"), Findings(found)] if found else []


def _found(basis: Basis, severity: Severity) -> tuple[Finding, ...]:
    return tuple(finding_of(each) for each in basis.result.cautions if each.severity is severity)


def finding_of(caution: Caution) -> Finding:
    """Return a finding as it is printed; a sign-off kept with the case will fill its last field."""
    concerns = [words for name, words in NAMES.items() if name.value in caution.alternatives]
    return Finding(
        severity=caution.severity,
        message=caution.message,
        action=caution.action,
        party=_PARTY.get(caution.party, caution.party),
        source=caution.source,
        concerns=listed(concerns) if len(concerns) < len(NAMES) else "",
    )
