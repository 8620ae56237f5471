"""Lists to take along, and the record of the work: to buy, to hire, to ask, what was tested and done, what to mind."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from econ.case.sections.as_built import WHEN
from econ.evaluate import keeping
from econ.evaluate.bill_scale import month_mean_c
from econ.evaluate.first_year import first_year
from econ.evaluate.result import AlternativeResult
from econ.evaluate.wiring.installation_tools import ToolPlan
from econ.kernel.alternative import ALTERNATIVES, Alternative
from econ.report.document.block import Block, Grid, Heading, Points, Sentence, Setting, Tone
from econ.report.document.content.basis import Basis, short
from econ.report.numbers import Quantity, money, tenths
from econ.report.style import NAMES
from econ.report.words import keeping as words
from econ.report.words.first_year import since_more, since_sentence
from econ.report.words.record import done_table, entered_sentence
from econ.tables.keeping import SEASONS, Row, keeping_tables

CELL: Final = 60
"""Letters of a user's text in a table; the whole of it stands at the end."""


@dataclass(frozen=True, slots=True)
class _Kept:
    """What lists of a way are written from."""

    basis: Basis
    way: AlternativeResult
    facts: Mapping[str, bool]

    def rows(self, rows: tuple[Row, ...]) -> tuple[Row, ...]:
        """Return the rows of a list that belong to the way."""
        return keeping.asked_rows(rows, self.way.name, self.facts)


def done_way(basis: Basis) -> AlternativeResult:
    """Return the way whose record is kept: the one entered, else that of the last step marked, else the one told."""
    case = basis.answer.case
    entered = case.as_built.way or (case.steps[-1].route if case.steps else None)
    return basis.result.alternatives[ALTERNATIVES.index(Alternative(entered))] if entered else basis.work_way


def lists_blocks(basis: Basis) -> list[Block]:
    """Return the lists to take along and the care sheet, and the record as far as it is entered.

    Parameters
    ----------
    basis : Basis
        What it is written from.
    """
    kept = _Kept(basis, done_way(basis), keeping.named_facts(basis.answer.structure, basis.answer.sheet))
    return [
        Heading(f"Appendix: to buy, to hire, to ask. {NAMES[kept.way.name]}"),
        *_shopping(kept),
        *_hire(kept),
        *_phone(kept),
        *record_blocks(basis),
        *_care(kept),
    ]


def _shopping(kept: _Kept) -> list[Block]:
    look = kept.basis.look
    goods = keeping.shopping(kept.way, _plans(kept))
    rows = tuple(
        (words.goods_label(each), words.quantity_words(each, look), "", money(each.cost_usd)) for each in goods
    )
    shares = (0.6, 0.13, 0.13, 0.14)
    table = Grid(("To buy", "How much", "Got it", "Estimated"), rows, shares, frozenset((3,)), setting=Setting.SMALL)
    note = Sentence(words.shopping_note(kept.way.name, goods), Tone.SMALL)
    return [table, note] if rows else [note]


def _plans(kept: _Kept) -> tuple[ToolPlan, ...]:
    return keeping.plans_of(kept.basis.answer.structure, kept.basis.answer.sheet, kept.way.name)


def _hire(kept: _Kept) -> list[Block]:
    told = [words.hire_words(hire, kept.basis.look) for hire in keeping.hires(kept.way, _plans(kept))]
    rows = tuple((*hire[:3], "", hire[3]) for hire in told)
    titles = ("To hire", "For", "From", "Booked", "Estimated")
    return [Grid(titles, rows, (0.44, 0.12, 0.18, 0.12, 0.14), frozenset((4,)), setting=Setting.SMALL)] if rows else []


def _phone(kept: _Kept) -> list[Block]:
    questions = kept.rows(keeping_tables().questions)
    said = dict(kept.basis.answer.case.phone.answers or ())
    rows, strong, before = list[tuple[str, ...]](), list[int](), ""
    for row in questions:
        if row.group != before:
            before = row.group
            strong.append(len(rows))
            rows.append((_whom(kept.basis, row.group), "", ""))
        rows.append((row.text, row.more, short(said.get(row.key, ""), CELL)))
    shares = (0.42, 0.3, 0.28)
    titles = ("To ask by phone", "Why", "What they said")
    return [Grid(titles, tuple(rows), shares, strong=frozenset(strong), setting=Setting.TINY)] if rows else []


def _whom(basis: Basis, whom: str) -> str:
    phone = basis.answer.case.phone
    told = dict(phone.spoke_to or ()).get(whom, ""), dict(phone.asked_on or ()).get(whom, "")
    parts = [short(part, CELL) for part in told if part]
    return f"{words.WHOM_WORDS[whom]}: {', '.join(parts)}" if parts else words.WHOM_WORDS[whom]


def _care(kept: _Kept) -> list[Block]:
    rows = kept.rows(keeping_tables().care)
    ordered = sorted(rows, key=lambda row: SEASONS.index(row.group))
    before = ["", *(row.group for row in ordered)]
    seasons = [
        "" if row.group == last else words.SEASON_WORDS[row.group] for row, last in zip(ordered, before, strict=False)
    ]
    cells = tuple((season, row.text, row.more, row.who) for season, row in zip(seasons, ordered, strict=True))
    if not cells:
        return []
    built = kept.basis.answer.case.as_built
    told = [
        ("Call first", short(built.call_first or "")),
        ("Parts are covered until", built.parts_until or ""),
        ("Labour is covered until", built.labour_until or ""),
    ]
    lines = tuple(f"{label}: {text or '____________________'}." for label, text in told)
    table = Grid(("When", "What", "How", "Who"), cells, (0.14, 0.28, 0.42, 0.16), setting=Setting.TINY)
    return [Heading(words.care_title(kept.way.name)), Points(lines), table]


def record_blocks(basis: Basis) -> list[Block]:
    """Return what was entered of tests, of the work as done, and of the bills since; nothing where nothing was.

    Parameters
    ----------
    basis : Basis
        What it is written from.
    """
    found = [*_tests(basis), *_done(basis), *_since(basis)]
    return [Heading("The record of the work"), Sentence(words.ENTERED), *found] if found else []


def _tests(basis: Basis) -> list[Block]:
    tests, look = basis.answer.case.tests, basis.look
    joints = keeping.joints(basis.answer.sheet, done_way(basis).name)
    told = [*(words.joint_sentences(tests, joints) if tests.joints else ())]
    told += [words.due_sentence(tests, look.this_year), words.split_sentence(tests, keeping_tables().splits, look)]
    told += [words.split_source(tests, keeping_tables().splits)]
    told += [f"{label}: {text}." for label, text in tested_lines(basis) if text]
    told = [text for text in told if text]
    blocks: list[Block] = [Points(tuple(told))] if told else []
    if tests.joints:
        results = dict(tests.joints)
        rows = tuple(
            (words.joint_words(joint), *(words.MARK_WORDS.get(results.get(f"{joint}.{when}", ""), "") for when in WHEN))
            for joint in joints
        )
        titles = ("Joint", *(words.WHEN_WORDS[when] for when in WHEN))
        blocks.append(Grid(titles, rows, (0.4, 0.2, 0.2, 0.2), setting=Setting.SMALL))
    return blocks


def tested_lines(basis: Basis) -> tuple[tuple[str, str], ...]:
    """Return the tests as lines of a form: what was entered, empty where it is a line to fill in."""
    tests, look = basis.answer.case.tests, basis.look
    air = [
        look.measure(amount.likely, Quantity.TEMPERATURE) if amount is not None and not amount.is_unknown else ""
        for amount in (tests.return_c, tests.supply_c)
    ]
    later = [
        _tight(basis, when, on)
        for when, on in (("after_day", tests.leak_after_day_on), ("after_month", tests.leak_after_month_on))
    ]
    photos = {row.key: row.text for row in keeping_tables().photos}
    power = [
        f"{tenths(amount.likely)} {unit}" if amount is not None and not amount.is_unknown else ""
        for amount, unit in ((tests.breaker_a, "A"), (tests.volts_v, "V"))
    ]
    return (
        ("Leak test: with what, on", _joined(_mark(tests.leak_means), _tight(basis, "at_once", tests.leak_at_once_on))),
        ("Again after 24 hours; after 30 days", _joined(*later)),
        ("Air drawn in; blown out; how it ran", _joined(*air, _mark(tests.mode))),
        ("Drain test", _mark(tests.drain)),
        ("Breaker; volts at the unit", _joined(*power)),
        ("Photos", "; ".join(photos[key] for key in tests.photos or () if key in photos)),
        ("Notes on the tests", short(tests.notes or "", CELL)),
    )


def _tight(basis: Basis, when: str, on: str | None) -> str:
    """Return when joints were tested, and how many of them were entered as tight."""
    results = dict(basis.answer.case.tests.joints or ())
    joints = keeping.joints(basis.answer.sheet, done_way(basis).name)
    entered = [results[key] for joint in joints if (key := f"{joint}.{when}") in results]
    told = f"{entered.count('tight')} of {len(joints)} joints tight" if entered else ""
    return ", ".join(part for part in (on, told) if part)


def _mark(mark: str | None) -> str:
    return words.MARK_WORDS[mark] if mark else ""


def _joined(*parts: str) -> str:
    return "; ".join(part or "________" for part in parts) if any(parts) else ""


def _done(basis: Basis) -> list[Block]:
    built = basis.answer.case.as_built
    lines = [
        ("Maker, model, serial numbers", short(built.equipment or "", 2 * CELL)),
        ("First ran on", built.in_service_on or ""),
        ("Permit", ", ".join(part for part in (short(built.permit_no or "", CELL), built.permit_on or "") if part)),
        (
            "Inspected",
            ", ".join(part for part in (short(built.inspected_by or "", CELL), built.inspected_on or "") if part),
        ),
        ("Warranty registered on", built.registered_on or ""),
        ("What else was done", short(built.notes or "", 2 * CELL)),
    ]
    told = tuple(f"{label}: {text}." for label, text in lines if text)
    blocks: list[Block] = [Points(told)] if told else []
    if told_of := done_table(basis.answer.case, done_way(basis)):
        rows = tuple(zip(*told_of.values(), strict=True))
        shares = (0.34, 0.18, 0.14, 0.12, 0.1, 0.12)
        blocks += [
            Grid(tuple(told_of), rows, shares, frozenset((4, 5)), setting=Setting.SMALL),
            Sentence(entered_sentence(basis.answer.case, done_way(basis)), Tone.SMALL),
        ]
    return blocks


def _since(basis: Basis) -> list[Block]:
    case = basis.answer.case
    if not (case.first_year.electricity or case.first_year.gas):
        return []
    typical_c = month_mean_c(basis.answer.structure, basis.answer.sheet, basis.tables)
    found = first_year(case, basis.answer.sheet, basis.result, done_way(basis).name, typical_c)
    told = [text for since in found for text in (since_sentence(since, basis.look), *since_more(since, basis.look))]
    told += [f"Not used: {fault}" for since in found for fault in since.text.faults]
    return [Heading("Bills against the forecast", 3), Points(tuple(told))]
