"""The insurer's sheet: what was done, by whom and when, as it was entered; the rest is left to fill in."""

from econ.kernel.alternative import PARTIES
from econ.report.document.block import Blanks, Block, Grid, Heading, Sentence, Setting, Tone
from econ.report.document.content import said
from econ.report.document.content.basis import Basis
from econ.report.document.content.plan import WHO, tasks_of

ENTERED = "This sheet records what was entered. It is not proof of compliance."
TESTS = (
    "Leak test: means, result, date",
    "Again after 24 hours; after 30 days",
    "Supply and return air, after 15 minutes",
    "Drain test: poured, result",
    "Breaker; volts at the unit",
    "Permit no.; inspected on, by",
)
PHOTOS = "Photos: nameplates, breaker and panel label, wall hole and sleeve, joints, drain end, outdoor unit, permit."
OMITTED = frozenset({"survey", "compare_quotes", "clean_up", "run_in", "receive", "check_parts", "dry_fit"})
"""Tasks of no interest to an insurer."""


def insurer_sheet(basis: Basis) -> list[Block]:
    """Return the sheet; a record of the work kept with the case will fill its blanks.

    Parameters
    ----------
    basis : Basis
        What it is written from.
    """
    way = basis.work_way
    return [
        Heading("Record of a heat pump put in", 1),
        Sentence(ENTERED),
        Blanks(
            (
                ("Policy no.; address", ""),
                ("Equipment", way.capability.label),
                ("Maker, model, serial numbers", ""),
                ("Permit", said.option(basis, "site.permit")),
                ("Who lives there", said.option(basis, "site.occupancy")),
            )
        ),
        Heading("Work, as planned; who really did it, and when"),
        _work(basis),
        Heading("Tests"),
        Blanks(tuple((test, "") for test in TESTS)),
        Sentence(PHOTOS),
        Heading("Open items"),
        Blanks((("Still to be done, by whom, by when", ""), ("", ""), ("Signed, name, date", ""))),
        Sentence(ENTERED, Tone.SMALL),
    ]


def _work(basis: Basis) -> Grid:
    way = basis.work_way
    plan = way.schedule
    rows = tuple(
        (plan.label[task], WHO[PARTIES[int(plan.party[0, task])]], basis.look.day(float(plan.start_d[0, task])), "", "")
        for task in tasks_of(way)
        if plan.task[task] not in OMITTED and not plan.task[task].startswith("book_")
    )
    titles = ("Task", "Planned", "For", "Done by, licence no.", "On")
    return Grid(titles, rows, (0.36, 0.12, 0.14, 0.26, 0.12), setting=Setting.SMALL)
