"""The circuit as a ladder from panel to unit: what is known in whole lines, what is not in broken ones."""

from dataclasses import dataclass
from math import isfinite
from typing import Final

from econ.case.choices import option_at
from econ.evaluate.sheet import Sheet, point
from econ.evaluate.wiring.circuit import circuit_numbers, supply_v, wire_awg
from econ.evaluate.wiring.installation_site import Inputs
from econ.report.numbers import Quantity, UnitSystem, measure, plain_number
from econ.report.sketch.element import LETTER, SHORTAGE_COLOUR, box, drawing, line, words

WIDTH: Final = 360.0
RUNG: Final = 62.0
TOP: Final = 10.0
SIZE: Final = (86.0, 40.0)
LEFT: Final = 6.0

_PROTECTION: Final = {
    "2017_or_older": "ground-fault protection: not asked by this code",
    "not_known": "ground-fault protection: code not known",
}
_ASKED: Final = "ground-fault protection: asked by this code"


@dataclass(frozen=True, slots=True)
class CircuitDrawing:
    """What the ladder needs to know; NaN where a number is not known.

    Attributes
    ----------
    service_a, load_a : float
        Rating of the home's service; its calculated load with the unit. [A] [A]
    breaker_a : float
        Breaker of the circuit. [A]
    size_awg, conductor_a : float
        Gauge number of the wire and what it carries. [dimensionless] [A]
    is_wire_named : bool
        Whether the wire was named, not chosen by the minimum.
    length_m, drop_frac : float
        Length of the run; share of the voltage lost on it. [m] [dimensionless]
    supply_v : float
        Supply. [V]
    protection : str
        What the code in force asks of the switch, in words.
    mca_a, mop_a : float
        Least ampacity and largest breaker of the unit. [A] [A]
    is_label_read : bool
        Whether these two were read off the label.
    """

    service_a: float
    load_a: float
    breaker_a: float
    size_awg: float
    conductor_a: float
    is_wire_named: bool
    length_m: float
    drop_frac: float
    supply_v: float
    protection: str
    mca_a: float
    mop_a: float
    is_label_read: bool


def circuit_drawing(sheet: Sheet) -> CircuitDrawing:
    """Return what the ladder shows of a case's likely values."""
    inputs = Inputs(point(sheet), 1)
    numbers = {name: float(value[0]) for name, value in circuit_numbers(inputs).items()}
    edition = option_at("site.code_edition", float(inputs.number("site.code_edition")[0]))
    wire = option_at("site.conductor", float(inputs.number("site.conductor")[0]))
    return CircuitDrawing(
        service_a=numbers["service_a"],
        load_a=numbers["service_load_a"],
        breaker_a=numbers["breaker_a"],
        size_awg=float(wire_awg(inputs)[0]),
        conductor_a=numbers["conductor_a"],
        is_wire_named=wire.isdigit(),
        length_m=float(inputs.number("site.panel_distance_m")[0]),
        drop_frac=numbers["voltage_drop_frac"],
        supply_v=float(supply_v(inputs)[0]),
        protection=_PROTECTION.get(edition, _ASKED),
        mca_a=numbers["mca_a"],
        mop_a=numbers["mop_a"],
        is_label_read=float(inputs.number("kit.label_read_frac")[0]) > 0.0,
    )


@dataclass(frozen=True, slots=True)
class Rung:
    """One part of the circuit: its name, what is written beside it, whether that is known and whether it fits."""

    name: str
    lines: tuple[str, str]
    is_known: bool
    fits: bool = True


def amperes(value_a: float) -> str:
    """Return a current as it is written on a label.

    Examples
    --------
    >>> amperes(15.0), amperes(14.26), amperes(float("nan"))
    ('15 A', '14.3 A', 'not known')
    """
    if not isfinite(value_a):
        return "not known"
    return f"{plain_number(value_a, 0 if value_a == round(value_a) else 1)} A"


def rungs(circuit: CircuitDrawing, units: UnitSystem) -> tuple[Rung, ...]:
    """Return the parts of the circuit from the panel to the unit.

    Parameters
    ----------
    circuit : CircuitDrawing
        What is known of it.
    units : UnitSystem
        The reader's units.
    """
    label = "label" if circuit.is_label_read else "class, not your label"
    lost = f"loses {plain_number(circuit.drop_frac * 100.0, 1)} % of {plain_number(circuit.supply_v)} V"
    chosen = "" if circuit.is_wire_named else " or thicker"
    return (
        Rung(
            "Panel",
            (
                f"main breaker {amperes(circuit.service_a)}",
                f"load with the unit about {amperes(float(round(circuit.load_a)))}",
            ),
            isfinite(circuit.service_a),
            not circuit.load_a > circuit.service_a,
        ),
        Rung(
            "Breaker",
            (amperes(circuit.breaker_a), f"at least {amperes(circuit.mca_a)}, at most {amperes(circuit.mop_a)}"),
            isfinite(circuit.breaker_a),
            not (circuit.breaker_a > circuit.mop_a or circuit.breaker_a < circuit.mca_a),
        ),
        Rung(
            "Wire",
            (
                f"{plain_number(circuit.size_awg)} gauge copper{chosen}, carries {amperes(circuit.conductor_a)}",
                f"{measure(circuit.length_m, Quantity.LENGTH, units)} long, {lost}",
            ),
            circuit.is_wire_named,
            circuit.conductor_a >= circuit.mca_a,
        ),
        Rung(
            "Switch", ("within sight of the unit", circuit.protection), circuit.protection != _PROTECTION["not_known"]
        ),
        Rung(
            "Unit",
            (f"minimum {amperes(circuit.mca_a)}, largest breaker {amperes(circuit.mop_a)}", f"from its {label}"),
            circuit.is_label_read,
        ),
    )


def description(circuit: CircuitDrawing, units: UnitSystem) -> str:
    """Return in words what the ladder shows."""
    parts = rungs(circuit, units)
    unknown = [part.name.lower() for part in parts if not part.is_known]
    odd = [part.name.lower() for part in parts if not part.fits]
    open_words = f" Still to be found out: {', '.join(unknown)}." if unknown else ""
    odd_words = f" Does not fit: {', '.join(odd)}." if odd else ""
    carries = f"carry at least {amperes(circuit.mca_a)} and its breaker may be at most {amperes(circuit.mop_a)}"
    source = "by the label" if circuit.is_label_read else "going by the class; read your unit's label"
    return f"The unit's circuit must {carries}, {source}.{odd_words}{open_words} An electrician has the last word."


def ladder(circuit: CircuitDrawing, units: UnitSystem) -> str:
    """Return the parts one below the other, joined by the wire; what does not fit in a warning colour."""
    parts = rungs(circuit, units)
    drawn: list[str] = []
    for place, part in enumerate(parts):
        drawn += _rung(part, TOP + place * RUNG)
        if place:
            x = LEFT + SIZE[0] / 2.0
            drawn.append(line((x, TOP + (place - 1) * RUNG + SIZE[1]), (x, TOP + place * RUNG), 3.0))
    height = TOP + len(parts) * RUNG
    return drawing((WIDTH, height), "The unit's circuit, from panel to unit", description(circuit, units), drawn)


def _rung(part: Rung, top: float) -> list[str]:
    stroke = "currentColor" if part.fits else SHORTAGE_COLOUR
    dash = "" if part.is_known else ' stroke-dasharray="5 4"'
    middle = top + SIZE[1] / 2.0
    colour = "" if part.fits else f'style="fill:{SHORTAGE_COLOUR}"'
    return [
        box((LEFT, top), SIZE, f'fill="none" stroke="{stroke}" stroke-width="2" rx="3"{dash}'),
        words(part.name, (LEFT + SIZE[0] / 2.0, middle + LETTER / 3.0), more='font-weight="600"'),
        *(
            words(text, (LEFT + SIZE[0] + 12.0, middle - 4.0 + at * (LETTER + 4.0)), "start", colour)
            for at, text in enumerate(part.lines)
        ),
    ]
