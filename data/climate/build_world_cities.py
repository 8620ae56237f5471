"""Build world_cities.csv: ``python build_world_cities.py RAW.csv NAMES.json OUT.csv`` (needs pvlib and h5py).

RAW.csv holds monthly means by city and two-letter country; NAMES.json the countries of GeoNames by those letters. Adds
the key "<city>, <country>" and the height of the map that pvlib brings, at least 0 (at coasts the map shows the sea's
floor); leaves out cities of the USA (the table of stations has them), yearly means and estimated degree-days. The same
raw file gives the same bytes.
"""

import csv
import hashlib
import io
import json
import sys
from collections.abc import Callable, Mapping
from pathlib import Path

RAW_SHA256 = "d2ee2becea815e7017a21a9d96b24c0311522d152f2331e0de2be116594ec341"
MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
KEPT = ("latitude", "longitude", *(f"t_{month}" for month in MONTHS), "heat_db_99_est", "cool_db_1_est")


def built(raw: str, countries: Mapping[str, str], height_m: Callable[[float, float], float]) -> str:
    """Return the text of world_cities.csv."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(["key", "city", "country", "elevation_m", *KEPT])
    seen: set[str] = set()
    for row in csv.DictReader(io.StringIO(raw)):
        country = countries[row["country_iso2"]].removeprefix("The ")
        key = f"{row['city']}, {country}"
        if row["country_iso2"] == "US" or key in seen:
            continue
        seen.add(key)
        elevation_m = round(max(height_m(float(row["latitude"]), float(row["longitude"])), 0.0))
        writer.writerow([key, row["city"], country, elevation_m, *(row[name] for name in KEPT)])
    return out.getvalue()


def main() -> None:
    """Read the raw file, refuse another than the reviewed one, write the table."""
    from pvlib.location import lookup_altitude

    raw_path, names_path, out_path = map(Path, sys.argv[1:4])
    content = raw_path.read_bytes()
    if hashlib.sha256(content).hexdigest() != RAW_SHA256:
        raise SystemExit("the raw file is not the reviewed one")
    countries = {code: entry["name"] for code, entry in json.loads(names_path.read_text(encoding="utf-8")).items()}
    out_path.write_text(built(content.decode("utf-8"), countries, lookup_altitude), encoding="utf-8", newline="\n")


if __name__ == "__main__":
    main()
