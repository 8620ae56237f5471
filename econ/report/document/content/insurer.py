"""The insurer's sheet: what was done, by whom and when, as it was entered; the rest is left to fill in."""

from econ.kernel.alternative import PARTIES
from econ.report.document.block import Blanks, Block, Grid, Heading, Sentence, Setting, Tone
from econ.report.document.content import said
from econ.report.document.content.basis import Basis, short
from econ.report.document.content.keeping import done_way, tested_lines
from econ.report.document.content.plan import WHO, tasks_of
from econ.report.words.record import days_done

ENTERED = "This sheet records what was entered. It is not proof of compliance."
PHOTOS = "Photos: nameplates, breaker and panel label, wall hole and sleeve, joints, drain end, outdoor unit, permit."
FIRST_TESTS = 5
"""Lines of tests that the sheet has room for; photos and notes stand by themselves."""

ON_LINE = 90
IN_CELL = 22
"""Letters of a user's text on a line of the form, and in a cell."""

OMITTED = frozenset({"survey", "compare_quotes", "clean_up", "run_in", "receive", "check_parts", "dry_fit"})
"""Tasks of no interest to an insurer."""


def insurer_sheet(basis: Basis) -> list[Block]:
    """Return the sheet; what is not entered in the record of the work is left to fill in.

    Parameters
    ----------
    basis : Basis
        What it is written from.
    """
    way, built = done_way(basis), basis.answer.case.as_built
    return [
        Heading("Record of a heat pump put in", 1),
        Sentence(ENTERED),
        Blanks(
            (
                ("Policy no.; address", _address(basis)),
                ("Equipment", way.capability.label),
                ("Maker, model, serial numbers", short(built.equipment or "", ON_LINE)),
                ("Permit; its number", _permit(basis)),
                ("Who lives there", said.option(basis, "site.occupancy")),
            )
        ),
        Heading("Work, as planned; who really did it, and when"),
        _work(basis),
        Heading("Tests"),
        Blanks((*tested_lines(basis)[:FIRST_TESTS], ("Inspected by; on", _inspected(basis)))),
        Sentence(_photos(basis)),
        Heading("Open items"),
        Blanks((("Still to be done, by whom, by when", ""), ("", ""), ("Signed, name, date", ""))),
        Sentence(ENTERED, Tone.SMALL),
    ]


def _work(basis: Basis) -> Grid:
    way, built = done_way(basis), basis.answer.case.as_built
    plan, on = way.schedule, days_done(basis.answer.case, way.name)
    who, licence = (dict(table or ()) for table in (built.done_by, built.licence))
    rows = tuple(
        (
            plan.label[task],
            WHO[PARTIES[int(plan.party[0, task])]],
            basis.look.day(float(plan.start_d[0, task])),
            ", ".join(
                short(text, IN_CELL) for text in (who.get(plan.task[task]), licence.get(plan.task[task])) if text
            ),
            on.get(plan.task[task], ""),
        )
        for task in tasks_of(way)
        if plan.task[task] not in OMITTED and not plan.task[task].startswith("book_")
    )
    titles = ("Task", "Planned", "For", "Done by, licence no.", "On")
    return Grid(titles, rows, (0.36, 0.12, 0.14, 0.26, 0.12), setting=Setting.SMALL)


def _address(basis: Basis) -> str:
    address = basis.answer.case.paper.address
    return f"________; {short(address, ON_LINE)}" if address else ""


def _permit(basis: Basis) -> str:
    built = basis.answer.case.as_built
    parts = (said.option(basis, "site.permit"), short(built.permit_no or "", ON_LINE), built.permit_on or "")
    return "; ".join(part for part in parts if part)


def _inspected(basis: Basis) -> str:
    built = basis.answer.case.as_built
    return "; ".join(part for part in (short(built.inspected_by or "", ON_LINE), built.inspected_on or "") if part)


def _photos(basis: Basis) -> str:
    """Return the photos that were entered as taken, else those that belong to the record."""
    taken = dict(tested_lines(basis))["Photos"]
    return f"Photos taken: {taken}." if taken else PHOTOS
