"""Build towns.csv: ``python build_towns.py CITIES.json OUT.csv`` (needs pvlib and h5py).

CITIES.json holds places of 500 people and more from GeoNames. Keeps those of the USA and its territories, each name
once a state (the largest), with the height of the map that pvlib brings, at least 0 (at coasts the map shows the sea's
floor). The same raw file gives the same bytes.
"""

import csv
import hashlib
import io
import json
import sys
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Any

RAW_SHA256 = "1523be8c6f083eeee946e1c27a0916474d0f0de4361a15104fcc70218bc4d55e"
TERRITORIES = ("PR", "VI", "GU")


def built(places: Iterable[dict[str, Any]], height_m: Callable[[float, float], float]) -> str:
    """Return the text of towns.csv."""
    largest: dict[str, dict[str, Any]] = {}
    for place in sorted(places, key=lambda each: (-each["population"], each["geonameid"])):
        is_territory = place["countrycode"] in TERRITORIES
        state = place["countrycode"] if is_territory else place["admin1code"]
        if (place["countrycode"] == "US" or is_territory) and state.isalpha():
            largest.setdefault(f"{place['name']}, {state}", place | {"state": state})
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(["key", "latitude", "longitude", "elevation_m", "population"])
    for key, place in sorted(largest.items()):
        latitude, longitude = round(place["latitude"], 3), round(place["longitude"], 3)
        writer.writerow([key, latitude, longitude, round(max(height_m(latitude, longitude), 0.0)), place["population"]])
    return out.getvalue()


def main() -> None:
    """Read the raw file, refuse another than the reviewed one, write the table."""
    from pvlib.location import lookup_altitude

    raw_path, out_path = map(Path, sys.argv[1:3])
    content = raw_path.read_bytes()
    if hashlib.sha256(content).hexdigest() != RAW_SHA256:
        raise SystemExit("the raw file is not the reviewed one")
    text = built(json.loads(content).values(), lookup_altitude)
    out_path.write_text(text, encoding="utf-8", newline="\n")


if __name__ == "__main__":
    main()
