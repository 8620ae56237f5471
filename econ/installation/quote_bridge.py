"""The bridge from the price of a kit to a contractor's quote, in whole cents, so that it adds up."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import floor
from typing import Final, Literal

from econ.installation.quote import PRICED_SCOPE

STEP_KIND: Final[dict[str, str]] = {
    "equipment": "equipment",
    "selling": "overhead_profit",
    "insurance": "overhead_profit",
    "commissioning": "labour",
    "materials": "materials",
    "electrical": "electrical",
    "labour": "labour",
    "permit": "permit",
    "removal": "labour",
    "travel": "labour",
    "overhead": "overhead_profit",
    "warranty": "warranty",
    "tax": "tax",
}
"""Steps in the order of the bridge, and the kind of quote line that pays for each."""

Origin = Literal["said", "ours", "rest"]
"""Whose figure a step is: the quote's own line, this program's items, or what neither tells."""

REST: Final = "rest"
UNSORTED: Final = "not_said"
LEFT_OUT: Final = "The quote leaves the equipment out"
KIT_OFF: Final = "Less the price of the kit"


@dataclass(frozen=True, slots=True)
class Part:
    """One line item beneath a step.

    Attributes
    ----------
    label : str
        What it is.
    cents : int
        What it adds, in hundredths of a dollar.
    """

    label: str
    cents: int


@dataclass(frozen=True, slots=True)
class Said:
    """A quote as far as it was typed in.

    Attributes
    ----------
    total_cents : int
        Its total, in hundredths of a dollar.
    lines : tuple of (str, str, int)
        Words, kind and amount in cents of each line; "not_said" where the kind was not confirmed.
    scope : mapping of str to str
        yes, no, not_said or not_known for each part of `econ.installation.quote.SCOPE`.
    """

    total_cents: int
    lines: tuple[tuple[str, str, int], ...]
    scope: Mapping[str, str]

    @property
    def kinds(self) -> frozenset[str]:
        """Kinds that have a line of their own."""
        return frozenset(kind for _, kind, _ in self.lines)


@dataclass(frozen=True, slots=True)
class Step:
    """One step of the bridge.

    Attributes
    ----------
    key : str
        A key of `STEP_KIND`, "not_said" for lines of no kind, or "rest".
    origin : str
        Whose figure it is.
    parts : tuple of Part
        Its line items; they add up to it.
    """

    key: str
    origin: Origin
    parts: tuple[Part, ...]

    @property
    def cents(self) -> int:
        """What the step adds, in hundredths of a dollar."""
        return sum(part.cents for part in self.parts)


@dataclass(frozen=True, slots=True)
class Bridge:
    """From the kit to the quote, and on to the whole job.

    Attributes
    ----------
    kit_cents, total_cents : int
        Price of the kit and of the quote, in hundredths of a dollar.
    steps : tuple of Step
        From the one to the other: kit plus steps is the total.
    missing : tuple of Step
        What the quote leaves out or does not mention, from this program's items.
    """

    kit_cents: int
    total_cents: int
    steps: tuple[Step, ...]
    missing: tuple[Step, ...]

    @property
    def whole_cents(self) -> int:
        """The quote with all that it lacks, in hundredths of a dollar."""
        return self.total_cents + sum(step.cents for step in self.missing)


def shared_cents(total_cents: int, weights: Sequence[float]) -> tuple[int, ...]:
    """Return an amount shared by weights in whole cents that add up to it; the largest remainders are rounded up.

    Parameters
    ----------
    total_cents : int
        The amount, in hundredths of a dollar. [USDcent]
    weights : sequence of float
        None negative; all zero gives it all to the first. [dimensionless]

    Returns
    -------
    shares : tuple of int
        One a weight.

    Examples
    --------
    >>> shared_cents(100, [1.0, 1.0, 1.0]), shared_cents(-5, [0.0, 0.0])
    ((34, 33, 33), (-5, 0))
    """
    whole = float(sum(weights))
    if whole <= 0.0:
        return (total_cents, *(0 for _ in weights[1:]))
    exact = [total_cents * (weight / whole) for weight in weights]
    shares = [floor(share) for share in exact]
    left = total_cents - sum(shares)
    largest = sorted(range(len(weights)), key=lambda at: shares[at] - exact[at])
    for at in largest[:left]:
        shares[at] += 1
    return tuple(shares)


def bridge(said: Said, own: Mapping[str, Sequence[Part]], kit_cents: int) -> Bridge:
    """Return the bridge of a quote.

    A line of the quote is shared among the steps of its kind as this program's items are. A kind without a line stands
    at this program's items; where the quote's lines leave less than these come to, they share what is left. Parts that
    the quote leaves out or does not mention are no part of its total and follow after it.

    Parameters
    ----------
    said : Said
        The quote.
    own : mapping of str to sequence of Part
        This program's items at likely values, by step.
    kit_cents : int
        Price of the kit, in hundredths of a dollar. [USDcent]

    Returns
    -------
    bridge : Bridge
        Adds up to the cent.
    """
    lacks = lacking(said)
    inside = {key: parts for key, parts in own.items() if key not in lacks}
    steps = [*_said_steps(said, inside, kit_cents), *_unsorted(said)]
    told = {step.key for step in steps}
    rest = {key: tuple(parts) for key, parts in inside.items() if STEP_KIND[key] not in said.kinds and key not in told}
    left = said.total_cents - kit_cents - sum(step.cents for step in steps)
    steps += _own_steps(rest, kit_cents, left, fits=bool(said.lines))
    left = said.total_cents - kit_cents - sum(step.cents for step in steps)
    if left:
        steps.append(Step(REST, REST, (Part("", left),)))
    order = [*STEP_KIND, UNSORTED, REST]
    missing = [Step(key, "ours", tuple(own[key])) for key in STEP_KIND if key in lacks and key in own]
    return Bridge(
        kit_cents,
        said.total_cents,
        tuple(sorted((step for step in steps if step.cents), key=lambda step: order.index(step.key))),
        tuple(step for step in missing if step.cents),
    )


def lacking(said: Said) -> frozenset[str]:
    """Return the steps that the quote leaves out or does not mention and that own items can price.

    Parameters
    ----------
    said : Said
        A part with a line of its own is in, whatever the tick says.
    """
    lacks = {part for part in PRICED_SCOPE if said.scope[part] != "yes" and part not in said.kinds}
    if said.scope["equipment"] == "no" and "equipment" not in said.kinds:
        lacks.add("equipment")
    return frozenset(lacks)


def _said_steps(said: Said, own: Mapping[str, Sequence[Part]], kit_cents: int) -> list[Step]:
    """Return the steps of the kinds that have lines, each line shared among them as own items are."""
    parts: dict[str, list[Part]] = {}
    for label, kind, cents in said.lines:
        keys = [key for key in STEP_KIND if STEP_KIND[key] == kind and key in own] or _first_of(kind)
        weights = [max(0.0, float(sum(part.cents for part in own.get(key, ())))) for key in keys]
        for key, share in zip(keys, shared_cents(cents, weights) if keys else (), strict=True):
            parts.setdefault(key, []).append(Part(label, share))
    if "equipment" in parts:
        parts["equipment"].append(Part(KIT_OFF, -kit_cents))
    elif said.scope["equipment"] == "no":
        parts["equipment"] = [Part(LEFT_OUT, -kit_cents)]
    return [Step(key, "said", tuple(found)) for key, found in parts.items()]


def _first_of(kind: str) -> list[str]:
    """Return the main step of a kind, for a line that no own item answers to."""
    main = {"overhead_profit": "overhead"}
    return [main.get(kind, kind)] if main.get(kind, kind) in STEP_KIND else []


def _unsorted(said: Said) -> list[Step]:
    parts = tuple(Part(label, cents) for label, kind, cents in said.lines if kind == UNSORTED)
    return [Step(UNSORTED, "said", parts)] if parts else []


def _own_steps(own: Mapping[str, tuple[Part, ...]], kit_cents: int, left_cents: int, *, fits: bool) -> list[Step]:
    """Return the steps that stand at own items; made smaller to what is left where they must fit into it."""
    flat = [(key, part) for key, parts in own.items() for part in parts]
    off = kit_cents if "equipment" in own else 0
    room = max(0, left_cents + off)
    amounts = [part.cents for _, part in flat]
    if fits and sum(amounts) > room:
        amounts = list(shared_cents(room, [float(cents) for cents in amounts]))
    found: dict[str, list[Part]] = {key: [] for key in own}
    for (key, part), cents in zip(flat, amounts, strict=True):
        found[key].append(Part(part.label, cents))
    if off:
        found["equipment"].append(Part(KIT_OFF, -off))
    return [Step(key, "ours", tuple(parts)) for key, parts in found.items()]
