"""The site, and who does the work in which time."""

from typing import ClassVar, Final

from pydantic import ValidationInfo, field_validator

from econ.case.field import FRACTION, USD, USD_PER_H, WAIT, amount, choice, length, words
from econ.case.nearest import nearest
from econ.case.quantity import Measure
from econ.case.section import Amt, Choice, Known, Section, fault
from econ.kernel.alternative import PARTIES
from econ.kernel.errors import CaseError, Fault

_NEAR: Final = length(0.0, 60.0)
_NONE_THERE: Final = "None there: type 100 ft."


class Site(Section):
    """Rules that hold here, the wall, and the distances."""

    path: ClassVar[str] = "site"

    occupancy: Choice = choice("Who lives there", "Owner's permissions often end where a home is let.")
    permit: Choice = choice("Permit", "Not known is treated as needed; a phone call to the permit office settles it.")
    owner_may_mechanical: Choice = choice(
        "Owner may hang and connect it", "Whether the local rule lets an owner do the mechanical work."
    )
    owner_may_electrical: Choice = choice("Owner may do the circuit", "Not known is treated as no.")
    association: Choice = choice("Association", "Whether an owners' association must agree to what is seen outside.")
    heritage: Choice = choice("Heritage or street rule", "Whether a planning rule has a say in what is seen outside.")
    room_permitted: Choice = choice(
        "Permit for a converted room", "Garage, attic, basement or sunroom: was making a room of it permitted?"
    )
    wall: Choice = choice("Wall to drill", "What the hole for the lines goes through.")
    wall_thickness_m: Amt = amount(
        "Wall thickness", "Measure at a door or window. It decides the bit and the hours.", length(0.05, 1.5, "in")
    )
    cladding: Choice = choice("Outside of that wall", "Knock on it: foam sounds dull; old cement shingles are brittle.")
    fire_wall: Choice = choice(
        "It holds back fire", "Walls to a garage, a neighbour or a shared hall; a label or the permit office tells."
    )
    hole: Choice = choice(
        "The hole comes out", "Outside: above the ground, through the rim above the foundation, or below the ground."
    )
    outdoor_place: Choice = choice("Outdoor unit stands on", "The ground, a bracket on the wall, or a roof.")
    outdoor_height_m: Amt = amount("Height above ground", "Of the outdoor unit's foot.", length(0.0, 60.0))
    line_run_m: Amt = amount(
        "Lines needed", "Along the way the pipes go, from indoor unit to outdoor unit.", length(0.3, 60.0)
    )
    line_rise_m: Amt = amount("Lines up or down", "Difference in height between the two units.", length(0.0, 30.0))
    anchor_base: Choice = choice(
        "Bracket is fixed to",
        "What the bolts of the outdoor bracket reach: studs, a ledger, solid concrete, filled or through-bolted block.",
        after="site.outdoor_place=wall_bracket",
    )
    anchor_ultimate_n: Amt = amount(
        "Breaking load of one anchor", "As the anchor's maker prints it for this wall; a quarter of it is allowed.",
        Measure("N", "lbf", 100.0, 200_000.0), after="site.outdoor_place=wall_bracket",
    )  # fmt: skip
    bracket_reach_m: Amt = amount(
        "Wall to middle of the unit", "How far out the unit's middle stands on its bracket.", length(0.1, 1.5, "in"),
        after="site.outdoor_place=wall_bracket", expert=True,
    )  # fmt: skip
    bracket_height_m: Amt = amount(
        "Height of the bracket", "Between its upper and lower bolts.", length(0.05, 1.5, "in"),
        after="site.outdoor_place=wall_bracket", expert=True,
    )  # fmt: skip
    drain: Choice = choice("Drain", "Water must run downhill all the way, or be pumped.")
    drain_run_m: Amt = amount(
        "Length of the drain", "From the indoor unit to where the water leaves; left out, as long as the lines.",
        length(0.3, 60.0), after="site.drain=gravity",
    )  # fmt: skip
    drain_drop_m: Amt = amount(
        "Drop of the drain", "How much lower its end lies than the outlet of the indoor unit.",
        length(0.0, 30.0, "in"), after="site.drain=gravity",
    )  # fmt: skip
    head_above_m: Amt = amount("Free above the indoor unit", "Up to the ceiling or a beam.", length(0.0, 5.0, "in"))
    head_beside_m: Amt = amount("Free beside it", "On its narrower side.", length(0.0, 10.0, "in"))
    head_blows: Choice = choice("It blows", "Into the open room, or at a bed or a seat where someone stays for hours.")
    head_studs: Choice = choice(
        "Studs behind its plate", "Whether the plate's screws reach at least two studs.",
        after="site.wall=wood_frame|brick_on_frame",
    )  # fmt: skip
    head_access: Choice = choice(
        "Room for a stepladder before it", "Filters are washed every month, coils now and then."
    )
    boundary_m: Amt = amount("To the boundary", "From the outdoor unit to the neighbour's land.", _NEAR)
    gas_meter_m: Amt = amount("To a gas meter or regulator", f"From the outdoor unit. {_NONE_THERE}", _NEAR)
    vents_m: Amt = amount("To a vent or flue", f"Dryer, furnace, water heater, fresh air. {_NONE_THERE}", _NEAR)
    bedroom_window_m: Amt = amount("To a bedroom window", f"Yours or a neighbour's. {_NONE_THERE}", _NEAR)
    snow_m: Amt = amount(
        "Deepest usual snow", "On the ground there, drifts included; 0 for none.", length(0.0, 5.0, "in")
    )
    outdoor_front_m: Amt = amount(
        "Free before the outdoor unit", "Where it blows and is opened.", length(0.0, 60.0, "in")
    )
    outdoor_back_m: Amt = amount("Free behind it", "Between the unit and the wall.", length(0.0, 60.0, "in"))
    door_swing: Choice = choice("A door or gate swings against it", "Or it stands in a way out.")
    flood: Choice = choice("Water may stand there", "Flood, roof water or a stream, even once in many years.")
    salt_air: Choice = choice("Salt in the air", "Within sight of the sea, or beside a salted road.")
    pipes: Choice = choice(
        "Water pipes that only the present heat keeps from freezing", "In outside walls, floor, ceiling or crawl.",
        after="use.present_heat_stays=no",
    )  # fmt: skip
    panel_distance_m: Amt = amount("Panel to outdoor unit", "Along the way the wire goes.", length(0.3, 150.0))
    panel_spaces: Choice = choice(
        "Two free spaces in the panel", "A photo of the panel, shown to an electrician, settles it."
    )
    wiring: Choice = choice("Wire", "Seen on the surface, or fished through closed walls.")
    circuit: Choice = choice(
        "Circuit", "A new one, one that serves nothing else already, or one shared with other things."
    )
    breaker_a: Amt = amount("Its breaker", "Amperes, there or planned.", Measure("A", "", 10.0, 125.0))
    conductor: Choice = choice(
        "Its wire", "Copper, by gauge number; choose takes the thinnest that carries the label's minimum."
    )
    code_edition: Choice = choice(
        "Electrical code in force",
        "The edition that the permit office has adopted; it decides ground-fault protection.",
    )
    receptacle: Choice = choice(
        "Outlet for service", "An outdoor outlet within 25 ft of the outdoor unit, for whoever services it."
    )


class Work(Section):
    """Your time, your helper, your tools, and the waits."""

    path: ClassVar[str] = "work"

    hour_value_usd_per_h: Amt = amount("Value of your hour", "0 if you enjoy it. Shown apart from cash.", USD_PER_H)
    helper: Choice = choice(
        "Helper", "Two people are needed to lift and hold. A handyman takes whole tasks alone, at a rate."
    )
    helper_usd_per_h: Amt = amount("Helper's pay", "An hour.", USD_PER_H, after="work.helper=paid")
    handyman_usd_per_h: Amt = amount("Handyman's rate", "An hour.", USD_PER_H, after="work.helper=handyman")
    contractor_finishes: Choice = choice(
        "Will a contractor finish or start a kit bought elsewhere?",
        "Most will not. Phone two or three before you buy; not known is priced both ways.",
    )
    days: Choice = choice("Days you can work", "Sets how long the work stretches.")
    hours_per_day_h: Amt = amount("Hours in a working day", "What you would really do.", Measure("hour", "", 0.5, 16.0))
    skill_masonry: Choice = choice(
        "Have you drilled masonry?", "Sets the hours of drilling and fixing alone; it opens no lock.",
        after="site.wall=brick_on_frame|block|poured_concrete|solid_brick|stone",
    )  # fmt: skip
    skill_bracket: Choice = choice(
        "Have you fixed a bracket from a ladder?", "Sets the hours of the bracket alone; it opens no lock.",
        after="site.outdoor_place=wall_bracket",
    )  # fmt: skip
    skill_torque: Choice = choice(
        "Have you used a torque wrench?", "Sets the hours of the couplings alone; it opens no lock."
    )
    parties: tuple[tuple[str, str], ...] | None = words(
        "Who does which task", "Tasks moved from their usual hands.", kind="table"
    )
    tools_owned: tuple[str, ...] | None = words("Tools you have", "Nothing to pay for these.", kind="list")
    tools_borrowed: tuple[str, ...] | None = words(
        "Tools you can borrow", "Nothing to pay for these, but somebody to ask.", kind="list"
    )
    contractor_wait_d: Amt = amount("Contractor's wait", "Days from signing to start; months in the hot season.", WAIT)
    electrician_wait_d: Amt = amount("Electrician's wait", "Days from call to visit.", WAIT)
    permit_wait_d: Amt = amount("Permit's wait", "Days from asking to holding it.", WAIT)
    delivery_wait_d: Amt = amount("Delivery's wait", "Days from order to the kit at your door.", WAIT)
    interim: Choice = choice(
        "Cooling until then", "What cools the room until the new way works; hire and its electricity are first cost."
    )
    mishap_frac: Amt = amount(
        "Chance of a rescue visit",
        "That a trade must put right what you could not; 0.1 is one in ten.",
        FRACTION,
        expert=True,
    )
    mishap_usd: Amt = amount(
        "Cost of a rescue visit", "What they charge, parts in. Wrong holes and damaged lines are counted apart.", USD,
        expert=True,
    )  # fmt: skip
    start_doing: Choice = choice("Start", "When the work may begin.", expert=True)

    @field_validator("parties", mode="after")
    @classmethod
    def known_parties(
        cls, parties: tuple[tuple[str, str], ...] | None, info: ValidationInfo
    ) -> tuple[tuple[str, str], ...] | None:
        """Return who does what; tasks and parties must be known."""
        known = info.context if isinstance(info.context, Known) else Known()
        faults = [
            found
            for task, party in parties or ()
            for found in _party_faults(task, party, known.given_tasks or known.tasks)
        ]
        if faults:
            raise CaseError(faults)
        return parties

    @field_validator("tools_owned", "tools_borrowed", mode="after")
    @classmethod
    def known_tools(cls, tools: tuple[str, ...] | None, info: ValidationInfo) -> tuple[str, ...] | None:
        """Return the tools; each must be known."""
        known = info.context if isinstance(info.context, Known) else Known()
        unknown = [tool for tool in tools or () if known.tools and tool not in known.tools]
        if unknown:
            close = ", ".join(nearest(unknown[0], known.tools))
            raise fault("names a tool that is not listed", ", ".join(unknown), f"Nearest: {close}.")
        return tools


def _party_faults(task: str, party: str, tasks: tuple[str, ...]) -> list[Fault]:
    faults = []
    if tasks and task not in tasks:
        faults.append(Fault(task, "is not a task", repr(task), f"Nearest: {', '.join(nearest(task, tasks))}."))
    if party not in PARTIES:
        faults.append(
            Fault(task, f"must be one of: {', '.join(PARTIES)}", repr(party), "Write one of these in quotes.")
        )
    return faults
