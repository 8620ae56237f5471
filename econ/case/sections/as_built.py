"""What was asked, tested and really done, kept with the case: it moves no number and proves nothing."""

from typing import ClassVar, Final

from pydantic import ValidationInfo, field_validator

from econ.case.field import aside, asides, words
from econ.case.nearest import nearest
from econ.case.quantity import Measure
from econ.case.section import Amounts, Amt, Known, Listed, Section, Table, Text
from econ.kernel.errors import CaseError, Fault

HOURS: Final = Measure("hour", "", 0.0, 500.0)
PAID: Final = Measure("USD", "", 0.0, 1_000_000.0)
AIR: Final = Measure("degC", "degF", -40.0, 80.0)
SPLIT: Final = Measure("K", "delta_degF", 0.0, 60.0)
"""The air at the unit, and how far what it blows lies from what it draws in."""

WHEN: Final = ("at_once", "after_day", "after_month")
"""When joints are tested: before the unit runs, after 24 hours, after 30 days."""


class Phone(Section):
    """What somebody said when they were asked."""

    path: ClassVar[str] = "phone"

    answers: Table = words("What they said", "By question; your own words.", kind="notes")
    spoke_to: Table = words("Whom you spoke to", "By whom you phoned: a name and a number.", kind="notes")
    asked_on: Table = words("Asked on", "By whom you phoned: the day.", kind="days")


class Tests(Section):
    """What was measured before the work was handed over."""

    path: ClassVar[str] = "tests"

    leak_means: Text = words(
        "Joints tested with", "Soap, or a detector rated for this refrigerant. No gauges.", kind="mark"
    )
    joints: Table = words(
        "Each joint", "Every joint, three times: at once, after 24 hours, after 30 days.", kind="marks"
    )
    leak_at_once_on: Text = words("Tested at once, on", "Before the unit first runs.", kind="day")
    leak_after_day_on: Text = words("Again after 24 hours, on", "The unit may run between.", kind="day")
    leak_after_month_on: Text = words("Again after 30 days, on", "A slow leak shows late.", kind="day")
    mode: Text = words(
        "How it ran while you read", "The maker's test mode, or full fan and the most extreme set-point.", kind="mark"
    )
    running: Text = words("It was", "Cooling or heating.", kind="mark")
    minutes_min: Amt = aside("It had run for", "Minutes; 15 at least.", Measure("minute", "", 0.0, 600.0))
    return_c: Amt = aside("Air drawn in", "At the top of the indoor unit.", AIR)
    supply_c: Amt = aside("Air blown out", "In the middle of the outlet.", AIR)
    outdoor_c: Amt = aside("Air outside", "In the shade, at the same time.", AIR)
    band_low_k: Amt = aside("The maker's least difference", "From the manual, if it gives one.", SPLIT)
    band_high_k: Amt = aside("The maker's greatest difference", "From the manual, if it gives one.", SPLIT)
    drain_l: Amt = aside("Water poured in", "Into the indoor unit's pan.", Measure("L", "quart", 0.0, 50.0))
    drain: Text = words("The water", "Watch its end outside and the wall beneath the unit.", kind="mark")
    breaker_a: Amt = aside("Breaker", "Amperes on its handle.", Measure("A", "", 5.0, 200.0))
    volts_v: Amt = aside("Volts at the unit", "As the electrician measured them.", Measure("V", "", 90.0, 300.0))
    photos: Listed = words("Photos taken", "Tick what you have a photo of.", kind="list")
    notes: Text = words("Anything else", "Sounds, smells, what the maker's display showed.")

    @field_validator("joints", mode="after")
    @classmethod
    def known_times(cls, joints: Table) -> Table:
        """Return the joints' results; each must say when it was tested."""
        faults = [
            Fault(key, f"must end in one of: {', '.join(WHEN)}", repr(key), "Write it such as outdoor_wide_1.at_once.")
            for key, _ in joints or ()
            if key.rpartition(".")[2] not in WHEN
        ]
        if faults:
            raise CaseError(faults)
        return joints


class AsBuilt(Section):
    """Who really did what, and the papers of it; makers may be named here."""

    path: ClassVar[str] = "as_built"

    way: Text = words("What was done", "The way you went.", kind="mark")
    equipment: Text = words("Maker, model, serial numbers", "From the labels, indoors and outdoors.")
    in_service_on: Text = words("It first ran on", "The day it was handed over.", kind="day")
    done_by: Table = words("Done by", "By task: a name.", kind="notes")
    licence: Table = words("Licence", "By task: the number on the licence.", kind="notes")
    done_on: Table = words("Done on", "By task: the day.", kind="days")
    hours_h: Amounts = asides("Hours", "By task: person-hours it really took.", HOURS)
    cost_usd: Amounts = asides("Paid", "By task: what it really cost.", PAID)
    permit_no: Text = words("Permit number", "As printed on the permit.")
    permit_on: Text = words("Permit of", "The day it was given.", kind="day")
    inspected_by: Text = words("Inspected by", "A name, or the office.")
    inspected_on: Text = words("Inspected on", "The day it passed.", kind="day")
    registered_on: Text = words(
        "Warranty registered on", "Makers shorten a warranty that is not registered.", kind="day"
    )
    parts_until: Text = words("Parts are covered until", "From the maker's paper.", kind="day")
    labour_until: Text = words("Labour is covered until", "From the contractor's paper.", kind="day")
    call_first: Text = words("Whom to call first", "A name and a number, for the care sheet.")
    notes: Text = words("What else was done", "What differs from the plan, and why.")

    @field_validator("done_by", "licence", "done_on", "hours_h", "cost_usd", mode="after")
    @classmethod
    def known_tasks(cls, told: Table | Amounts, info: ValidationInfo) -> Table | Amounts:
        """Return what was told of tasks; each must be known."""
        known = info.context if isinstance(info.context, Known) else Known()
        faults = [
            Fault(str(key), "is not a task", repr(key), f"Nearest: {', '.join(nearest(str(key), known.tasks))}.")
            for key, _ in told or ()
            if known.tasks and key not in known.tasks
        ]
        if faults:
            raise CaseError(faults)
        return told


class FirstYear(Section):
    """Bills since the change, to set against what was forecast."""

    path: ClassVar[str] = "first_year"

    electricity: Text = words("Electricity bills since", "One row a bill, as on the page of place and prices.")
    gas: Text = words("Gas bills since", "One row a bill: its dates and the therms.")


class Paper(Section):
    """How documents are printed, and what of them stays private."""

    path: ClassVar[str] = "paper"

    size: Text = words("Paper", "Letter, or A4.", kind="mark")
    large_print: Text = words("Large print", "A quarter larger; more pages.", kind="mark")
    leave_out: Text = words(
        "Leave out address and names", "Lines to fill in by hand stand in their place.", kind="mark"
    )
    address: Text = words("Address", "Printed on sheets for offices and neighbours; left out, a line to fill in.")


RECORDS: Final = {section.path: section for section in (Phone, Tests, AsBuilt, FirstYear, Paper)}
"""Sections that move no number, in the order of a file."""
