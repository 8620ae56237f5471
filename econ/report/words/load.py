"""How a room's loads were found, in sentences: which method rules, and why a hand check differs."""

from typing import Final

import numpy as np

from econ.evaluate.result import RoomLoads
from econ.report.look import Look
from econ.report.numbers import NONE_TEXT, Quantity, percent, plain_number
from econ.report.pictures.frame import Columns

MOIST_SHARE: Final = 0.5
"""Moisture share of the summer need from which a room is told to want drying more than cooling. Assumption."""

FEWEST_OF_A_BLOCK: Final = 2
"""Rooms from which a block is more than a room."""

LEAST_SHARE: Final = 1.005
"""Sum of the rooms over the block from which the difference is told."""

SMALL_KWH: Final = 25.0
"""kWh; a reason that adds less is not told."""


def design_sentence(rooms: RoomLoads, place: int, look: Look) -> str:
    """Return which method gave a room's design cooling, beside what the other one gives.

    Parameters
    ----------
    rooms : RoomLoads
        The rooms.
    place : int
        Position of the room. [dimensionless]
    look : Look
        Units.
    """
    name, method = rooms.name[place], rooms.design_cooling_method[place]
    hourly, factors = (
        look.measure(float(each[place]), Quantity.POWER)
        for each in (rooms.hourly_cooling_w, rooms.load_factor_cooling_w)
    )
    if method == "own":
        return (
            f"{name}: the size follows your own calculation. Ours would be {hourly} by the hot day, without moisture."
        )
    if float(rooms.hourly_cooling_w[place]) <= 0.0:
        return f"{name}: no cooling was asked for."
    if method == "load_factors":
        return (
            f"{name}: the residential load factors give more ({factors}) than the hot day run hour by hour ({hourly}), "
            "both without moisture; the larger one counts."
        )
    is_glass = float(rooms.load_factor_cooling_w[place]) > float(rooms.hourly_cooling_w[place])
    if is_glass:
        return (
            f"{name}: glass is more than a fifth of the floor, so the hot day run hour by hour counts ({hourly}), "
            f"not the residential load factors ({factors}); both without moisture."
        )
    return (
        f"{name}: the hot day run hour by hour gives more ({hourly}) than the residential load factors ({factors}), "
        "both without moisture; the larger one counts."
    )


def block_sentence(rooms: RoomLoads, look: Look) -> str:
    """Return what the served rooms need together; empty where that is what one room needs.

    Parameters
    ----------
    rooms : RoomLoads
        The rooms.
    look : Look
        Units.
    """
    if int(rooms.is_served.sum()) < FEWEST_OF_A_BLOCK or rooms.block.cooling_w <= 0.0:
        return ""
    together = look.measure(rooms.block.cooling_w, Quantity.POWER)
    by_room = rooms.design_cooling_sensible_w + rooms.design_cooling_latent_w
    apart_w = float(by_room[rooms.is_served].sum())
    if apart_w <= LEAST_SHARE * rooms.block.cooling_w:
        return f"Together the rooms served need {together}, moisture included."
    apart = look.measure(apart_w, Quantity.POWER)
    return (
        f"Together the rooms served need {together}, moisture included, not {apart}: they do not all want most in the "
        "same hour."
    )


def moisture_sentence(rooms: RoomLoads, place: int) -> str:
    """Return that a room wants drying more than cooling; empty where it does not.

    Parameters
    ----------
    rooms : RoomLoads
        The rooms.
    place : int
        Position of the room. [dimensionless]
    """
    share = float(rooms.moisture_share_frac[place])
    if not share >= MOIST_SHARE:
        return ""
    return (
        f"{rooms.name[place]} needs drying more than cooling: {percent(share)} of its summer need is moisture. "
        "A larger unit does not dry better: look at a dehumidifier before a size."
    )


def hand_sentence(rooms: RoomLoads, place: int, look: Look) -> str:
    """Return the degree-day hand check of a room's heating and what makes it differ.

    Parameters
    ----------
    rooms : RoomLoads
        The rooms.
    place : int
        Position of the room. [dimensionless]
    look : Look
        Units.
    """
    name, by_hand = rooms.name[place], float(rooms.degree_day_heating_kwh[place])
    if not np.isfinite(by_hand):
        return f"{name}: it loses no heat, so degree-days say nothing."
    hourly = float(rooms.annual_heating_kwh[place])
    base = look.measure(float(rooms.balance_point_c[place]), Quantity.TEMPERATURE)
    told = f"{name}: degree-days below {base} give {plain_number(by_hand)} kWh of heat a year by hand; "
    told += f"hour by hour it is {plain_number(hourly)} kWh"
    reasons = [
        f"{label} {'add' if part > 0 else 'take'} {plain_number(abs(part))} kWh"
        for label, part in zip(rooms.hand_part_label, rooms.hand_part_kwh[place].tolist(), strict=True)
        if abs(part) >= SMALL_KWH
    ]
    return f"{told}: {'; '.join(reasons)}." if reasons else f"{told}."


def hand_table(rooms: RoomLoads) -> Columns:
    """Return the hand check of every room as a table, in kWh a year."""
    columns: Columns = {"Room": list(rooms.name)}
    columns["By degree-days, kWh"] = [_kwh(float(each)) for each in rooms.degree_day_heating_kwh]
    for at, label in enumerate(rooms.hand_part_label):
        columns[label.capitalize()] = [_kwh(float(each)) for each in rooms.hand_part_kwh[:, at]]
    columns["Hour by hour, kWh"] = [_kwh(float(each)) for each in rooms.annual_heating_kwh]
    return columns


def _kwh(amount: float) -> str:
    return plain_number(amount) if np.isfinite(amount) else NONE_TEXT
