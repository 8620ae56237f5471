"""The bridge from the price of the kit to the whole price of hiring, step by step."""

from dataclasses import dataclass
from typing import Final

from econ.evaluate.result import Result
from econ.kernel.alternative import ALTERNATIVES, HIRED, SELF
from econ.report.document.drawing.axis import PAGE_WIDTH, Scale, filled, outlined, round_steps, upright_axis
from econ.report.document.drawing.shape import SOFT, Drawing, Shape, Word, line
from econ.report.numbers import MINUS, first_cost_money, money
from econ.report.pictures.first_cost import CATEGORY_WORDS, category_usd

HEIGHT: Final = 168.0
TOP: Final = 22.0
FOOT: Final = 128.0
LEFT: Final = 44.0

KIT: Final = "equipment"
OWN: Final = "own_time"


@dataclass(frozen=True, slots=True)
class Step:
    """One step of the bridge.

    Attributes
    ----------
    label : str
        What it is.
    usd : float
        What it adds; for a pier, how high it stands. [USD]
    is_pier : bool
        Whether it stands on the ground: the kit, doing it oneself, hiring.
    is_hired : bool
        Whether it belongs to hiring.
    is_cash : bool
        False for own time.
    """

    label: str
    usd: float
    is_pier: bool = False
    is_hired: bool = False
    is_cash: bool = True


def bridge_steps(result: Result) -> tuple[Step, ...]:
    """Return the steps from kit to hiring.

    Parameters
    ----------
    result : Result
        Likely values in row 0.

    Returns
    -------
    steps : tuple of Step
        Each step of one's own, and last what hiring costs beyond or below all of them.
    """
    own = category_usd(result.alternatives[SELF])
    hired_usd = float(result.alternatives[HIRED].first_cost_usd[0])
    kit = own.pop(KIT, 0.0)
    total = kit + sum(own.values())
    return (
        Step("kit", kit, is_pier=True),
        *(Step(CATEGORY_WORDS.get(key, key), usd, is_cash=key != OWN) for key, usd in own.items()),
        Step("yourself, all in", total, is_pier=True),
        Step("their work and cover", hired_usd - total, is_hired=True),
        Step("hired, all in", hired_usd, is_pier=True, is_hired=True),
    )


def bridge_statement(result: Result) -> str:
    """Return the sentence above the bridge: how much of the difference one would have to provide oneself."""
    steps = bridge_steps(result)
    kit, total, hired = (step.usd for step in steps if step.is_pier)
    apart, own = hired - kit, total - kit
    said = f"Between the price of the kit and hiring lie {first_cost_money(apart)}."
    if own >= apart:
        return f"{said} The work and parts that you would have to provide come to more: {first_cost_money(own)}."
    return f"{said} Of that, about {first_cost_money(own)} is work and parts that you would also have to provide."


def bridge(result: Result) -> Drawing:
    """Return the bridge.

    Parameters
    ----------
    result : Result
        Likely values in row 0.
    """
    steps = bridge_steps(result)
    tops = _spans(steps)
    high = max(max(span) for span in tops) or 1.0
    up = Scale(min(0.0, *(min(span) for span in tops)), high, FOOT, TOP)
    shapes: list[Shape] = upright_axis(up, (LEFT, PAGE_WIDTH), round_steps(up.low, high, 5), money)
    pace = (PAGE_WIDTH - LEFT) / len(steps)
    for at, (step, span) in enumerate(zip(steps, tops, strict=True)):
        shapes += _column(step, (LEFT + at * pace, pace), (up.at(max(span)), up.at(min(span))))
    shapes.append(line((LEFT, up.at(0.0)), (PAGE_WIDTH, up.at(0.0)), SOFT, 0.8))
    shapes.append(Word("Today's dollars, own time priced (in outline)", (4.0, 9.0), colour=SOFT))
    return Drawing(PAGE_WIDTH, HEIGHT, tuple(shapes), "From the price of the kit to hiring")


def _spans(steps: tuple[Step, ...]) -> list[tuple[float, float]]:
    """Return from where to where each step reaches. [USD]"""
    spans, height = [], 0.0
    for step in steps:
        start = 0.0 if step.is_pier else height
        height = start + step.usd
        spans.append((start, height))
    return spans


def _column(step: Step, place: tuple[float, float], span: tuple[float, float]) -> list[Shape]:
    (left, pace), (top, foot) = place, span
    corner, size = (left + 0.18 * pace, top), (0.64 * pace, max(foot - top, 0.6))
    middle = left + pace / 2.0
    name = ALTERNATIVES[HIRED if step.is_hired else SELF]
    body = filled(name, corner, size) if step.is_cash and step.usd >= 0.0 else [outlined(name, corner, size)]
    amount = first_cost_money(step.usd) if step.is_pier else f"{'+' if step.usd >= 0.0 else MINUS}{_plain(step.usd)}"
    rows = _folded(step.label)
    words = [
        Word(row, (middle, FOOT + 12.0 + 9.5 * at), 7.5, "middle", is_bold=step.is_pier) for at, row in enumerate(rows)
    ]
    return [*body, Word(amount, (middle, top - 3.0), 7.5, "middle", is_bold=step.is_pier), *words]


def _plain(usd: float) -> str:
    return first_cost_money(abs(usd))


def _folded(label: str) -> list[str]:
    """Return a label a word or two a line."""
    rows: list[str] = []
    for word in label.split():
        if rows and len(rows[-1]) + len(word) < 8:
            rows[-1] = f"{rows[-1]} {word}"
        else:
            rows.append(word)
    return rows
