"""Build energy_by_state.csv from the state figures: ``python build_energy_by_state.py RAW.csv OUT.csv``.

Keeps the prices per unit sold and the grid factor, adds Puerto Rico, Guam and the Virgin Islands as assumptions (the
source has no figures for them) and says for each row which cells the source did not have. The same raw file
gives the same bytes.
"""

import csv
import hashlib
import io
import sys
from pathlib import Path

RAW_SHA256 = "319a674a54f3a2af4eecf9feb76c14a406413a97de906ad3154fcd072bcb479d"

COLUMNS = {
    "electricity_usd_per_kwh": "electricity_usd_per_kwh",
    "gas_usd_per_therm": "gas_usd_per_therm",
    "propane_usd_per_gal": "propane_usd_per_gal",
    "oil_usd_per_gal": "heating_oil_usd_per_gal",
    "grid_kg_co2e_per_kwh": "grid_co2_kg_per_kwh_generation",
}

ISLANDS = {"GU": ("0.33", "0.60"), "PR": ("0.25", "0.60"), "VI": ("0.40", "0.60")}
"""Assumption, from memory: residential price [USD/kWh] and grid factor [kg/kWh] of mostly oil-fired island grids."""


GRID_FROM_MEMORY = {"AK": "0.47", "HI": "0.66", "US": "0.37"}
"""Assumption, from memory, where the source has no figure [kg/kWh]: the nation about 2022 is 823 lb/MWh."""


def built(raw: str) -> str:
    """Return the text of energy_by_state.csv, by state."""
    rows = {row["state"]: row for row in csv.DictReader(io.StringIO(raw))}
    lines = [_line(state, row) for state, row in rows.items()]
    for state, (price, grid) in ISLANDS.items():
        _, year, _, *fuels, _, _, source = _line("US", rows["US"])
        source = source.removeprefix("assumption: grid factor from memory; ")
        told = f"assumption: electricity and grid from memory, fuels those of the nation ({source})"
        lines.append([state, year, price, *fuels, grid, " ".join(COLUMNS), told])
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(["state", "year", *COLUMNS, "filled", "source"])
    writer.writerows(sorted(lines))
    return out.getvalue()


def _line(state: str, row: dict[str, str]) -> list[str]:
    filled = [name for name, raw_name in COLUMNS.items() if row[raw_name] == ""]
    grid = GRID_FROM_MEMORY.get(state, "")
    cells = [row[raw_name] or grid for raw_name in COLUMNS.values()]
    note = "assumption: grid factor from memory; " if filled else ""
    return [state, row["year"], *cells, " ".join(filled), note + row["source"]]


def main() -> None:
    """Read the raw file, refuse another than the reviewed one, write the table."""
    raw_path, out_path = map(Path, sys.argv[1:3])
    content = raw_path.read_bytes()
    if hashlib.sha256(content).hexdigest() != RAW_SHA256:
        raise SystemExit("the raw file is not the reviewed one")
    out_path.write_text(built(content.decode("utf-8")), encoding="utf-8", newline="\n")


if __name__ == "__main__":
    main()
