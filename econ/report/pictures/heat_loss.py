"""Where the heat goes on the coldest night: one bar cut in named pieces, the twin of the hot day's."""

import plotly.graph_objects as go

from econ.evaluate.result import Result
from econ.report.look import Look
from econ.report.numbers import Quantity, percent
from econ.report.pictures.frame import Columns
from econ.report.pictures.pieces_bar import Wording, counted_rooms, largest_first, positive, standing_bar


def pieces_w(result: Result) -> dict[str, float]:
    """Return where the heat of the rooms served goes, largest first; every room where none is served."""
    return largest_first(result.rooms.loss_label, result.rooms.loss_w[counted_rooms(result)].sum(axis=0))


def figure(result: Result, look: Look) -> go.Figure:
    """Return the bar of the cold night."""
    wording = Wording(look.ground.cool, "comes in", "in the cold design hour, and share of the heat going out")
    return standing_bar(pieces_w(result), wording, look)


def statement(result: Result, look: Look) -> str:
    """Return the sentence above the picture: what is lost, how cold it is, and the largest piece."""
    pieces = pieces_w(result)
    losses, largest = positive(pieces), next(iter(pieces), "")
    if losses <= 0.0:
        return "No heat is asked for here, so none is counted as lost."
    noun = "room loses" if int(counted_rooms(result).sum()) == 1 else "rooms lose"
    lost, cold = sum(pieces.values()), look.measure(result.climate.heat_design_c, Quantity.TEMPERATURE)
    return (
        f"On a cold night, {cold} outside, the {noun} about {look.measure(lost, Quantity.POWER)}, sun and people not "
        f"counted; the largest part, {percent(pieces[largest] / losses)}, is that of {largest}."
    )


def table(result: Result, look: Look) -> Columns:
    """Return every piece with its power and its share of all heat that goes out."""
    pieces = pieces_w(result)
    losses = positive(pieces) or float("nan")
    return {
        "Through": list(pieces),
        "Heat in the cold design hour": [look.measure(power, Quantity.POWER) for power in pieces.values()],
        "Share of all heat that goes out": [
            percent(power / losses) if power > 0.0 else "" for power in pieces.values()
        ],
    }
