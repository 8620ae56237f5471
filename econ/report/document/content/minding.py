"""What could hurt someone or undo the work: every finding, stops first, with what to do and who must."""

from collections.abc import Callable

from econ.kernel.alternative import Alternative
from econ.kernel.caution import Caution, Severity
from econ.report.document.block import Block, Finding, Findings, Heading, Sentence
from econ.report.document.content.basis import Basis
from econ.report.document.content.signing import mark_words
from econ.report.numbers import listed, plural
from econ.report.style import NAMES

_PARTY = {"self": "you", "user": "you"}


def minding_blocks(basis: Basis, aside: tuple[Alternative, ...] = ()) -> list[Block]:
    """Return all stops, then cautions; those of ways that are told in the appendix stand there.

    Parameters
    ----------
    basis : Basis
        What it is written from.
    aside : tuple of Alternative
        Ways that are told in the appendix.
    """
    found = _found(basis, Severity.HOLD_POINT) + _found(
        basis, Severity.CAUTION, lambda each: not _concerns_only(each, aside)
    )
    notes = len(_found(basis, Severity.NOTE))
    if not found:
        return []
    also = f" and the cautions of {listed([f'“{NAMES[way]}”' for way in aside])}" if aside else ""
    stops = sum(each.severity is Severity.HOLD_POINT for each in found)
    signed = sum(each.severity is Severity.HOLD_POINT and bool(each.signed) for each in found)
    done = f", {signed} of them signed" if signed else ""
    said = (
        f"{stops} {plural('stop', stops)}{done}: work there rests until the named person has signed. "
        f"Nobody works around one. The appendix holds {notes} {plural('note', notes)}{also}."
    )
    return [Heading("What could hurt someone or undo the work"), Sentence(said), Findings(found)]


def note_blocks(basis: Basis, aside: tuple[Alternative, ...] = ()) -> list[Block]:
    """Return the cautions that concern no other ways than these, and the notes."""
    found = _found(basis, Severity.CAUTION, lambda each: _concerns_only(each, aside))
    found += _found(basis, Severity.NOTE)
    title = "Appendix: cautions of the other ways, and notes" if aside else "Appendix: notes"
    return [Heading(title), Findings(found)] if found else []


def _concerns_only(caution: Caution, ways: tuple[Alternative, ...]) -> bool:
    """Return whether a finding concerns some of these ways and no other."""
    return bool(caution.alternatives) and set(caution.alternatives) <= {way.value for way in ways}


def _found(basis: Basis, severity: Severity, is_told: Callable[[Caution], bool] | None = None) -> tuple[Finding, ...]:
    found = [each for each in basis.result.cautions if each.severity is severity]
    return tuple(finding_of(basis, each) for each in found if is_told is None or is_told(each))


def finding_of(basis: Basis, caution: Caution) -> Finding:
    """Return a finding as it is printed, with what was signed or marked about it."""
    concerns = [words for name, words in NAMES.items() if name.value in caution.alternatives]
    return Finding(
        severity=caution.severity,
        message=caution.message,
        action=caution.action,
        party=_PARTY.get(caution.party, caution.party),
        source=caution.source,
        concerns=listed(concerns) if len(concerns) < len(NAMES) else "",
        signed=mark_words(basis, caution),
    )
