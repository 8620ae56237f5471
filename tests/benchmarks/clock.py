"""Times, against a floor of bare numpy measured in the same run: machines differ, ratios hold.

Ratios are of processor time, which other work on the machine lengthens least; the clock's time is printed beside it.
"""

import time
from dataclasses import dataclass

import numpy as np

NEED_STEPS = 24 * 7
"""Hours of a day times passes over them: what any solution hour by hour must step through."""


@dataclass(frozen=True)
class Spent:
    """Shortest time of a few runs: by the clock, and by all processors together."""

    clock_s: float
    worked_s: float


@dataclass(frozen=True)
class Timed:
    """Shortest time of a few runs, the floor's, and what the clock should say on a machine with nothing else to do."""

    label: str
    spent: Spent
    floor_s: float
    budget_s: float

    @property
    def ratio(self):
        """Return the processor time in floors."""
        return self.spent.worked_s / self.floor_s

    def report(self):
        """Print the figures; pytest shows them with -rP or -s."""
        print(
            f"{self.label}: {1e3 * self.spent.clock_s:.1f} ms, budget {1e3 * self.budget_s:.0f} ms, "
            f"worked {1e3 * self.spent.worked_s:.1f} ms, floor {1e3 * self.floor_s:.2f} ms, ratio {self.ratio:.1f}"
        )


def shortest(run, repeats):
    """Return the shortest of several runs; the first, which fills caches, is not counted."""
    run()
    found = []
    for _ in range(repeats):
        begin, worked = time.perf_counter(), time.process_time()
        run()
        found.append((time.perf_counter() - begin, time.process_time() - worked))
    clock_s, worked_s = (min(times) for times in zip(*found, strict=True))
    return Spent(clock_s, worked_s)


def hourly_floor_s(n_row, n_day, repeats=3):
    """Return the processor time of the barest sweep hour by hour: a line, a clip and a line, all rooms and days."""
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

    return shortest(sweep, repeats).worked_s
