"""Options and limits drawn at random with every kind of limit, date and mark, and a plain search of all choices."""

from itertools import product

import numpy as np

from econ.kernel.alternative import ALTERNATIVES
from econ.portfolio.options import OPEN, Limits, Options

LOW_USD = np.array([0, 200, 1500, 3500])
HIGH_USD = np.array([1, 700, 3500, 7000])


def drawn(seed: int, n_room: int, n_year: int, tight_frac: float = 0.4) -> tuple[Options, Limits]:
    """Return rooms three to a flat and six to a house; limits take a part of what doing everything would."""
    rng = np.random.default_rng(seed)
    shape = (n_room, len(ALTERNATIVES))
    cost = rng.integers(LOW_USD, HIGH_USD, shape).astype(float)
    benefit = np.where(np.arange(4) == 0, 0.0, rng.integers(-1500, 6000, shape))
    flat, group = np.arange(n_room) // 3, np.arange(n_room) // 6
    is_open = (rng.random(shape) < 0.8) | (np.arange(4) == 0)
    options = Options(
        name=tuple(ALTERNATIVES),
        cost_usd=cost,
        benefit_usd=benefit,
        too_hot_h=rng.integers([100, 0, 0, 0], [900, 90, 50, 50], shape).astype(float),
        own_hours_h=np.tile([0.0, 2.0, 16.0, 3.0], (n_room, 1)),
        electrician_d=np.tile([0.0, 0.0, 0.5, 0.5], (n_room, 1)),
        current_a=np.tile([0.0, 5.0, 10.0, 11.0], (n_room, 1)),
        is_open=is_open,
        closed_reason=np.full(shape, OPEN),
        reasons=(),
        must=rng.random(n_room) < 0.1,
        must_not=rng.random(n_room) < 0.1,
        first_year=rng.integers(0, 3, n_room) * (rng.random(n_room) < 0.3),
        flat=flat,
        whole_flat=rng.random(flat[-1] + 1) < 0.2,
        discount_frac=0.03,
        study_period_yr=15,
        group=group,
        setup_usd=rng.integers(0, 900, group[-1] + 1).astype(float),
        setup_way=(False, False, True, True),
        hot_hour_usd=float(rng.integers(0, 3)) / 4.0,
    )
    part = n_room * tight_frac / n_year
    limits = Limits(
        budget_usd=np.round(rng.uniform(0.5, 1.5, n_year) * part * 2500.0),
        own_hours_h=np.where(rng.random(n_year) < 0.5, np.round(part * 20.0), np.inf),
        electrician_d=np.where(rng.random(n_year) < 0.5, np.round(part) / 2.0, np.inf),
        panel_a=np.where(rng.random(flat[-1] + 1) < 0.5, 21.0, np.inf),
    )
    return options, limits


def best_by_search(options: Options, limits: Limits) -> tuple[int, float]:
    """Return the most must rooms done and, of those choices, the most worth, by trying every choice there is."""
    n_year, rate = limits.n_year, options.discount_frac
    moves = [(0, -1), *product(range(1, len(options.name)), range(n_year))]
    index = np.stack(np.meshgrid(*[np.arange(len(moves))] * options.n_room, indexing="ij"), axis=-1)
    picked = np.array(moves)[index.reshape(-1, options.n_room)]
    way, year = picked[..., 0], picked[..., 1]
    rooms, done = np.arange(options.n_room), picked[..., 1] >= 0
    good = (options.is_open[rooms, way] & (year >= options.first_year) & ~options.must_not | ~done).all(axis=1)
    worth = np.zeros(len(way))
    for at in range(n_year):
        now = year == at
        needs = now & np.array(options.setup_way)[way]
        paid = sum(cost * needs[:, options.group == of].any(axis=1) for of, cost in enumerate(options.setup_usd))
        spent = (options.cost_usd[rooms, way] * now).sum(axis=1) + paid
        good &= spent <= limits.budget_usd[at] + 1e-9
        good &= (options.own_hours_h[rooms, way] * now).sum(axis=1) <= limits.own_hours_h[at] + 1e-9
        good &= (options.electrician_d[rooms, way] * now).sum(axis=1) <= limits.electrician_d[at] + 1e-9
        worth += (options.worth_usd(at)[rooms, way] * now).sum(axis=1) - paid / (1.0 + rate) ** at
    for flat, most in enumerate(limits.panel_a):
        here = options.flat == flat
        good &= (options.current_a[rooms, way] * (done & here)).sum(axis=1) <= most + 1e-9
        counted = here & ~options.must_not
        if options.whole_flat[flat] and counted.any():
            good &= (year[:, counted] == year[:, counted][:, :1]).all(axis=1)
    musts = np.where(good, (done & options.must).sum(axis=1), -1)
    return int(musts.max()), float(worth[musts == musts.max()].max())
