"""Print our annual loads beside those of the hourly simulation: ``python -m tests.reference``."""

import sys

from tests.reference import equipment_check
from tests.reference.simulation.table import lines, summary
from tests.reference.simulation.weather import folder

HEAD = f"{'case':32s} {'duty':6s} {'weather':13s} {'theirs':>8s} {'ours':>8s} {'error':>8s} {'':9s} {'allowed':>8s}"


def main():
    """Print the table with hourly files where they are installed, and from monthly figures."""
    ways = [("monthly", "table"), ("monthly", "product")]
    if folder() is None:
        print("Hourly weather files are not installed (pip install -e '.[simulation]'): monthly figures only.\n")
    else:
        ways = [("hourly", "table"), ("hourly", "grid"), ("hourly", "product"), *ways]
    print("Annual loads, kWh.")
    for weather, earth in ways:
        found = lines(weather, earth)
        print(HEAD, *(line.text() for line in found), sep="\n")
        print(f"largest errors of both signs above 800 kWh:\n{summary(found)}\n")
    print(equipment_check.text())


if __name__ == "__main__":
    sys.exit(main())
