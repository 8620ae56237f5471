"""Signatures in print: what a finding's mark says, and all that was ever signed or marked, taken back or not."""

from dataclasses import replace
from typing import Final

from econ.case.schema import Case
from econ.case.sections.signed import STEP, SignOff
from econ.caution.registry import RULES
from econ.caution.sign import Kind
from econ.evaluate.settled import marks_of
from econ.installation.plan import Stop
from econ.kernel.caution import Caution
from econ.report.document.block import SIGN_HERE, Block, Grid, Heading, Sentence, Setting
from econ.report.document.content.basis import Basis, short
from econ.report.words.plan import ROLE_WORDS, mark_text, on_text, signature_text

ENTERED: Final = "This records what was entered. It is not proof that the work complies."
_MESSAGE: Final = {rule.code: rule.message for rule in RULES}
_KIND_WORDS: Final = {Kind.READ: "read", Kind.DEALT: "dealt with", Kind.SIGNED: "signed"}


def mark_words(basis: Basis, caution: Caution) -> str:
    """Return what was done about a finding; a stop that still lacks a signature keeps a line for it.

    Parameters
    ----------
    basis : Basis
        What a document is written from.
    caution : Caution
        A finding.
    """
    if (stop := _stop(basis, caution)) is not None:
        told = signatures(basis, stop)
        return " ".join([*told, *([SIGN_HERE] if told and stop.is_open else [])])
    marks = [line for _, line in marks_of(basis.answer.case, caution, basis.printed)]
    return mark_text(_printable(basis, marks[-1]), basis.look.this_year) if marks else ""


def is_signed(basis: Basis, caution: Caution) -> bool:
    """Return whether a stop is open no more."""
    stop = _stop(basis, caution)
    return not stop.is_open if stop is not None else bool(marks_of(basis.answer.case, caution, basis.printed))


def _stop(basis: Basis, caution: Caution) -> Stop | None:
    """Return a finding as a stop of the plan that is told; None where it is none of its stops."""
    return next((stop for stop in basis.plan.stops if stop.code == caution.code), None)


def signatures(basis: Basis, stop: Stop) -> list[str]:
    """Return who signed a stop and whether that counts, without names where the user wants them left out."""
    is_hidden = leaves_out_names(basis.answer.case)
    shown = [
        replace(each, who="a named person", licence="")
        if is_hidden
        else replace(each, who=short(each.who), licence=short(each.licence), note=short(each.note))
        for each in stop.signatures
    ]
    return [signature_text(each, basis.look.this_year) for each in shown]


def _printable(basis: Basis, line: SignOff) -> SignOff:
    """Return a mark whose texts fit on a line, without names where the user wants them left out."""
    cut = {name: short(getattr(line, name) or "") or None for name in ("who", "licence", "note", "why_back")}
    if leaves_out_names(basis.answer.case):
        cut |= {"who": "a named person", "licence": None}
    return line.model_copy(update=cut)


def leaves_out_names(case: Case) -> bool:
    """Return whether prints leave out address and names."""
    return case.paper.leave_out == "yes"


def record_blocks(basis: Basis) -> list[Block]:
    """Return every signature and mark on record, in the order in which they were given.

    Parameters
    ----------
    basis : Basis
        What a document is written from.
    """
    lines = [_printable(basis, line) for line in basis.answer.case.signed]
    if not lines:
        return []
    year = basis.look.this_year
    rows = tuple(
        (
            finding_words(line.code or ""),
            _KIND_WORDS[Kind(line.kind or "")],
            f"{line.who or ''} ({ROLE_WORDS[line.role]})" if line.role else line.who or "",
            line.licence or "",
            on_text(line.date, year) if line.date else "",
            _note(line, year),
        )
        for line in lines
    )
    titles = ("Finding", "How", "By", "Licence or permit no.", "On", "Note")
    grid = Grid(titles, rows, (0.3, 0.08, 0.18, 0.12, 0.12, 0.2), setting=Setting.TINY)
    return [Heading("Signatures and marks on record"), Sentence(ENTERED), grid]


def finding_words(code: str) -> str:
    """Return what a mark is about: the rule's words, or the name of a step's own stop."""
    return _MESSAGE.get(code) or code.removeprefix(STEP).replace("_", " ")


def _note(line: SignOff, year: int) -> str:
    why = f": {line.why_back}" if line.why_back else ""
    back = f"Taken back on {on_text(line.taken_back, year)}{why}." if line.taken_back else ""
    return " ".join(part for part in (line.note or "", back) if part)


def signed_texts(case: Case) -> list[tuple[str, str]]:
    """Return every text typed at a signature or mark, with what it is of: tables hold no more than its beginning."""
    hidden = ("who", "licence") if leaves_out_names(case) else ()
    names = [name for name in ("who", "licence", "note", "why_back") if name not in hidden]
    found = [(line, name, getattr(line, name)) for line in case.signed for name in names]
    told = [(f"{_TITLE[name]}, {finding_words(line.code or '')}", text) for line, name, text in found if text]
    return told + [
        (f"Why skipped: {(line.task or '').replace('_', ' ')}", line.reason) for line in case.steps if line.reason
    ]


_TITLE: Final = {name: str(declared.title) for name, declared in SignOff.model_fields.items()}
