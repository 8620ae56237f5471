"""What the rooms need, and what each way's equipment can give."""

from math import isfinite

import numpy as np

from econ.evaluate.result import AlternativeResult, Capability
from econ.report import tables
from econ.report.document.block import Block, Grid, Heading, Picture, Points, Sentence, Setting
from econ.report.document.content.basis import Basis
from econ.report.document.content.costs import grid_of
from econ.report.document.drawing.months import need_columns
from econ.report.numbers import NONE_TEXT, Quantity, plain_number
from econ.report.pictures import capacity, heat_source, need
from econ.report.sketch import circuit as circuit_sketch
from econ.report.style import NAMES
from econ.report.words import gaps, load
from econ.report.words.weather import weather_sentences


def need_blocks(basis: Basis) -> list[Block]:
    """Return the loads room by room, the weather behind them, and the year."""
    rooms, look = basis.result.rooms, basis.look
    together = load.block_sentence(rooms, look)
    damp = [load.moisture_sentence(rooms, place) for place in range(len(rooms.name))]
    shares = (0.16, 0.11, 0.11, 0.11, 0.09, 0.09, 0.1, 0.1, 0.13)
    return [
        Heading("What the rooms need"),
        Sentence(heat_source.statement(basis.result, look)),
        grid_of(tables.room_loads(basis.answer, look), shares),
        Points(tuple(sentence for sentence in (*damp, together) if sentence)),
        Picture(need.statement(basis.result, look), need_columns(basis.result)),
        Sentence(" ".join(weather_sentences(basis.result.climate))),
    ]


def method_blocks(basis: Basis) -> list[Block]:
    """Return how design cooling was found in each room, and the hand check of heating by degree-days."""
    rooms, look = basis.result.rooms, basis.look
    told = tuple(load.design_sentence(rooms, place, look) for place in range(len(rooms.name)))
    check = load.hand_table(rooms)
    return [
        Heading("How the loads were found"),
        Points(told),
        grid_of(check, (1.0,) * len(check), Setting.TINY, "Heating by degree-days, checked by hand"),
    ]


def equipment_blocks(basis: Basis) -> list[Block]:
    """Return what each way brings, what it gives at the design temperatures, and the circuit."""
    ladder = circuit_sketch.circuit_drawing(basis.answer.sheet)
    lacks = [f"{NAMES[way.name]}: {' '.join(gaps.shortcomings(basis.result, way.name, basis.look))}"
             for way in basis.result.alternatives if gaps.shortcomings(basis.result, way.name, basis.look)]  # fmt: skip
    return [
        Heading("Equipment"),
        Sentence(capacity.statement(basis.result, basis.look)),
        _grid(basis),
        Points(tuple(lacks)),
        Sentence(circuit_sketch.description(ladder, basis.look.units)),
    ]


def _grid(basis: Basis) -> Grid:
    climate, look = basis.result.climate, basis.look
    hot = look.measure(climate.cool_design_c, Quantity.TEMPERATURE)
    cold = look.measure(climate.heat_design_c, Quantity.TEMPERATURE)
    titles = ("Way to go", "Equipment", f"Cools at {hot}", f"Heats at {cold}", "Supply", "Electricity, kWh/yr")
    rows = tuple(_row(basis, way) for way in basis.result.alternatives)
    return Grid(titles, rows, (0.2, 0.28, 0.15, 0.15, 0.08, 0.14), setting=Setting.SMALL)


def _row(basis: Basis, way: AlternativeResult) -> tuple[str, ...]:
    climate, can = basis.result.climate, way.capability
    volts = f"{plain_number(can.volts)} V" if can.volts > 0.0 else NONE_TEXT
    return (
        NAMES[way.name],
        can.label or "nothing",
        _power(basis, can, can.cool_w, climate.cool_design_c),
        _power(basis, can, can.heat_w, climate.heat_design_c),
        volts,
        plain_number(float(way.electricity_kwh[0].sum())),
    )


def _power(basis: Basis, can: Capability, power_w: np.ndarray, at_c: float) -> str:
    found = float(np.interp(at_c, can.at_c, power_w)) if len(can.at_c) else float("nan")
    return basis.look.measure(found, Quantity.POWER) if isfinite(found) and found > 0.0 else "none"
