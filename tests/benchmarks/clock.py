"""Times, against a floor of bare numpy measured in the same run: machines differ, ratios hold."""

import time
from dataclasses import dataclass

import numpy as np

NEED_STEPS = 24 * 7
"""Hours of a day times passes over them: what any solution hour by hour must step through."""


@dataclass(frozen=True)
class Timed:
    """Shortest time of a few runs, and that of the floor."""

    label: str
    seconds: float
    floor_s: float
    budget_s: float

    @property
    def ratio(self):
        """Return the time in floors."""
        return self.seconds / self.floor_s

    def report(self):
        """Print the figures; pytest shows them with -rP or -s."""
        print(
            f"{self.label}: {1e3 * self.seconds:.1f} ms, budget {1e3 * self.budget_s:.0f} ms, floor "
            f"{1e3 * self.floor_s:.2f} ms, ratio {self.ratio:.1f}"
        )


def shortest_s(run, repeats):
    """Return the shortest of several runs; the first, which fills caches, is not counted."""
    run()
    found = []
    for _ in range(repeats):
        begin = time.perf_counter()
        run()
        found.append(time.perf_counter() - begin)
    return min(found)


def hourly_floor_s(n_row, n_day, repeats=3):
    """Return the time of the barest hour by hour sweep: a line, a clip and a line on arrays of rooms and days."""
    mass, free, held = (np.full((n_row, n_day), 20.0) for _ in range(3))
    slope, low, high = np.full((n_row, 1), 0.9), np.full((n_row, 1), 20.0), np.full((n_row, 1), 24.0)

    def sweep():
        for _ in range(NEED_STEPS):
            np.multiply(mass, slope, out=free)
            np.add(free, 1.0, out=free)
            np.clip(free, low, high, out=held)
            np.subtract(held, free, out=held)
            np.multiply(mass, slope, out=mass)
            np.add(mass, held, out=mass)

    return shortest_s(sweep, repeats)
