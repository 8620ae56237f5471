"""The town: the only answer without a usual value."""

import streamlit as st

from econ.evaluate.known import known_names
from econ.report.numbers import Quantity
from econ.ui import cached, fields, now, state
from econ.uncertainty.answer import Answer

_KEY = "w_place_station"


def ask() -> None:
    """Ask for the weather place, by name or by the nearest to a point."""
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
        help=f"{len(names)} places with a public weather record. Take one near you and about as high.",
    )
    if found := state.refused("place.station"):
        st.html(fields.fault_html(found.fault))
    with st.popover("My town is not listed", type="tertiary"):
        _nearest()


def sentence(answer: Answer | None) -> str:
    """Return what the weather record says, in one sentence."""
    if answer is None:
        return "Choose a town: this page then shows how hot and cold it gets."
    climate, look = answer.result.climate, now.look()
    hot = look.measure(climate.cool_design_c, Quantity.TEMPERATURE)
    cold = look.measure(climate.heat_design_c, Quantity.TEMPERATURE)
    return (
        f"At {climate.station}, one hour in a hundred is warmer than {hot} and one in a hundred colder than {cold} "
        f"(record {climate.period})."
    )


def _chosen() -> None:
    station = st.session_state[_KEY]
    if station is not None:
        state.give("place.station", station, station)


def _nearest() -> None:
    st.caption("Latitude and longitude stand on any map; west of Greenwich is minus.")
    latitude = st.number_input("Latitude", -90.0, 90.0, value=None, key="w_latitude")
    longitude = st.number_input("Longitude", -180.0, 180.0, value=None, key="w_longitude")
    if latitude is None or longitude is None:
        return
    for near in cached.tables().stations.nearest(latitude, longitude, 3):
        words = f"{near.name}, {now.distance(near.distance_km)} away"
        st.button(words, key=f"near_{near.name}", on_click=state.give, args=("place.station", near.name, near.name))
