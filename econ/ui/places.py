"""The town: the only answer without a usual value."""

import re
from typing import Final

import streamlit as st

from econ.evaluate.known import known_names
from econ.evaluate.place import town_of
from econ.kernel.errors import CaseError
from econ.report.numbers import Quantity
from econ.report.words.weather import weather_sentences
from econ.tables.stations import Near
from econ.tables.towns import Town, load_towns
from econ.ui import cached, fields, now, state
from econ.uncertainty.answer import Answer

_KEY: Final = "w_place_station"
_SEARCH: Final = "w_place_search"
_POINT: Final = re.compile(r"\s*([-+\u2212]?\d{1,2}(?:\.\d+)?)\s*°?\s*[,; ]\s*([-+\u2212]?\d{1,3}(?:\.\d+)?)\s*°?\s*")
OWN: Final = ("latitude_deg", "longitude_deg", "elevation_m", "hourly_file", "monthly")
"""Fields of weather that no list has; a listed place takes their place."""

_MOST_TOWNS: Final = 6
_SAME_HEIGHT_M: Final = 15.0
"""m; less is said to be about as high: half of the coarse map's heights are within it."""


def ask() -> None:
    """Ask for the weather place, by its name or by what lies nearest to a town or point."""
    names = known_names().stations
    station = state.current_case().place.station
    st.session_state[_KEY] = station if station in names else None
    st.selectbox(
        "Nearest weather place: type a town or a state",
        names,
        index=None,
        key=_KEY,
        placeholder="Such as Duluth, or MN",
        on_change=_chosen,
        filter_mode="contains",
        help=f"{len(names)} places with a public weather record. Take one near you and about as high.",
    )
    if found := state.refused("place.station"):
        st.html(fields.fault_html(found.fault))
    with st.container(key="place_search", gap="xsmall"):
        st.text_input(
            "Not in that list? Type your town, or latitude and longitude",
            key=_SEARCH,
            placeholder="Such as Mesa, AZ, or 35.2, -111.6",
            autocomplete="off",
        )
        _nearest(str(st.session_state[_SEARCH]).strip())


def sentence(answer: Answer | None) -> str:
    """Return what the weather record says, in one sentence."""
    if answer is None:
        return "Choose a town: this page then shows how hot and cold it gets."
    climate, look = answer.result.climate, now.look()
    hot = look.measure(climate.cool_design_c, Quantity.TEMPERATURE)
    cold = look.measure(climate.heat_design_c, Quantity.TEMPERATURE)
    return (
        f"At {climate.station}, one hour in a hundred is warmer than {hot} and one in a hundred colder than {cold} "
        f"({'record ' if climate.basis == 'record' else ''}{climate.period})."
    )


def made_from(answer: Answer | None) -> str:
    """Return what the weather was made from, and why it is taken to be warmer than its record."""
    if answer is None:
        return ""
    place = answer.case.place
    warmer = answer.sheet.entry("place.warming_offset_k")
    shown = now.look().measure(warmer.likely, Quantity.TEMPERATURE_DIFFERENCE)
    why = place.warming_reason or warmer.spread.source
    apart = _apart_of(place.town, answer.structure.station) if place.town and place.station else ""
    return " ".join([*weather_sentences(answer.result.climate), apart, f"Taken {shown} warmer than its years: {why}."])


def height_words(apart_m: float) -> str:
    """Return how much higher or lower a weather place lies."""
    if abs(apart_m) < _SAME_HEIGHT_M:
        return "about as high"
    return f"{now.height(abs(apart_m))} {'higher' if apart_m > 0.0 else 'lower'}"


def take(station: str, town: str | None) -> bool:
    """Take a listed place as the weather, for a town or not; weather of one's own is left, and undo brings it back."""
    return state.give_all("place", {**dict.fromkeys(OWN), "station": station, "town": town}, "place.station")


def _chosen() -> None:
    station = st.session_state[_KEY]
    if station is not None:
        take(station, None)


def _nearest(words: str) -> None:
    """Draw the towns that the words name, and the three weather places nearest to the one chosen."""
    if not words:
        return
    if found := _POINT.fullmatch(words):
        latitude, longitude = (float(part.replace("\u2212", "-")) for part in found.groups())
        if abs(latitude) <= 90.0 and abs(longitude) <= 180.0:
            _offer(cached.tables().stations.nearest(latitude, longitude), None)
            return
    towns = load_towns().search(words, _MOST_TOWNS)
    if not towns:
        st.caption(
            "No such town in the list. Check the spelling, or type latitude and longitude as maps show them, "
            "west and south minus."
        )
        return
    key = f"w_place_town_{fields.slug(words)}"
    st.session_state.setdefault(key, towns[0])
    chosen = st.pills("Which one?", towns, key=key) if len(towns) > 1 else towns[0]
    if chosen:
        town = load_towns().town(chosen)
        _offer(cached.tables().stations.nearest(town.latitude_deg, town.longitude_deg), town)


def _offer(places: tuple[Near, ...], town: Town | None) -> None:
    st.caption("The three nearest weather places. Of two that are near, take the one about as high as you.")
    for near in places:
        height = f", {height_words(near.elevation_m - town.elevation_m)}" if town else f", at {_at(near.elevation_m)}"
        st.button(
            f"{near.name}: {now.distance(near.distance_km)} away{height}",
            key=f"near_{near.name}",
            on_click=_taken,
            args=(near.name, town.key if town else None),
        )


def _at(elevation_m: float) -> str:
    return f"{now.height(elevation_m)} above the sea"


def _taken(station: str, town: str | None) -> None:
    if take(station, town):
        st.session_state[_SEARCH] = ""


def _apart_of(town: str, station: str) -> str:
    """Return how far a town is from the weather place chosen for it; empty where either is not listed."""
    try:
        here = town_of(town)
    except CaseError:
        return ""
    places = cached.tables().stations
    near = next(
        (
            each
            for each in places.nearest(here.latitude_deg, here.longitude_deg, len(places.names))
            if each.name == station
        ),
        None,
    )
    if near is None:
        return ""
    return f"It lies {now.distance(near.distance_km)} from {town}, {height_words(near.elevation_m - here.elevation_m)}."
