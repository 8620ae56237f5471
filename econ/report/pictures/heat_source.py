"""Where the heat comes from on the hottest day: one bar cut in named pieces."""

import plotly.graph_objects as go

from econ.evaluate.result import Result
from econ.report.look import Look
from econ.report.numbers import Quantity, percent
from econ.report.pictures.frame import Columns
from econ.report.pictures.pieces_bar import Wording, counted_rooms, largest_first, positive, standing_bar


def pieces_w(result: Result) -> dict[str, float]:
    """Return where the heat of the rooms served comes from, largest first; every room where none is served."""
    return largest_first(result.rooms.piece_label, result.rooms.piece_w[counted_rooms(result)].sum(axis=0))


def figure(result: Result, look: Look) -> go.Figure:
    """Return the bar of the hot day."""
    wording = Wording(look.ground.heat, "carried away", "on the design day, and share of the heat coming in")
    return standing_bar(pieces_w(result), wording, look)


def statement(result: Result, look: Look) -> str:
    """Return the sentence above the picture: the design load and its largest piece."""
    loads, counted = result.rooms, counted_rooms(result)
    by_room = loads.design_cooling_sensible_w + loads.design_cooling_latent_w
    load = loads.block.cooling_w if loads.is_served.any() else float(by_room.sum())
    pieces = pieces_w(result)
    gains, largest = positive(pieces), next(iter(pieces), "")
    if gains <= 0.0:
        return "On the design day no heat comes in that would have to be taken out."
    noun = "room needs" if int(counted.sum()) == 1 else "rooms need"
    return (
        f"On a hot afternoon the {noun} about {look.measure(load, Quantity.POWER)} of cooling; "
        f"the largest part of the heat, {percent(pieces[largest] / gains)}, comes from {largest}."
    )


def table(result: Result, look: Look) -> Columns:
    """Return every piece with its power and its share of all heat that comes in."""
    pieces = pieces_w(result)
    gains = positive(pieces) or float("nan")
    return {
        "From": list(pieces),
        "Heat on the design day": [look.measure(power, Quantity.POWER) for power in pieces.values()],
        "Share of all heat that comes in": [percent(power / gains) if power > 0.0 else "" for power in pieces.values()],
    }
