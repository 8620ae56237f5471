"""The verdict: order of gates, what is clear, and what is not allowed."""

import numpy as np
import pytest

from econ.kernel.alternative import Alternative, Standing
from econ.uncertainty.chance import Chance
from econ.uncertainty.verdict import Candidates, eligible, verdict

OPEN = (Standing.OPEN,) * 4
COST = (9000.0, 8000.0, 6000.0, 7000.0)


def candidates(standing=OPEN, need=(1, 1, 1, 1), time=(1, 1, 1, 1), cash=(1, 1, 1, 1), cost=COST) -> Candidates:
    gates = (np.array(gate, dtype=bool) for gate in (need, time, cash))
    return Candidates(standing, *gates, np.array(cost))


def chances(*share: float) -> Chance:
    return Chance(np.array(share), np.full(4, 0.01), 4096)


def own(standing: Standing) -> tuple[Standing, ...]:
    return (Standing.OPEN, Standing.OPEN, standing, Standing.OPEN)


@pytest.mark.parametrize(("won", "kind"), [(0.7499, "too_close"), (0.75, "clear"), (0.9, "clear")])
def test_winner_of_three_draws_in_four_is_clear(won, kind):
    found = verdict(candidates(), chances(0.0, 0.0, won, 1.0 - won))
    assert (found.kind, found.winner, found.runner_up) == (
        kind,
        Alternative.SELF_INSTALL,
        Alternative.CONTRACTED_INSTALL,
    )
    assert found.gap_usd == 1000.0


def test_likely_winner_that_loses_most_draws_is_too_close():
    assert verdict(candidates(), chances(0.0, 0.0, 0.1, 0.9)).kind == "too_close"


@pytest.mark.parametrize(("cost", "kind"), [(9501.0, "too_close"), (9500.0, "clear"), (9000.0, "clear")])
def test_without_draws_a_gap_of_a_twentieth_is_clear(cost, kind):
    found = verdict(candidates(cost=(20_000.0, 15_000.0, cost, 10_000.0)), None)
    assert found.kind == kind
    assert np.isnan(found.chance).all()


def test_without_draws_equal_costs_are_too_close():
    assert verdict(candidates(cost=(5.0, 5.0, 5.0, 5.0)), None).kind == "too_close"
    assert verdict(candidates(cost=(0.0, 0.0, 0.0, 0.0)), None).kind == "too_close"


def test_self_install_that_may_not_be_done_names_the_winner_among_the_rest():
    found = verdict(candidates(standing=own(Standing.NOT_ALLOWED)), chances(0.0, 0.1, float("nan"), 0.9))
    assert (found.kind, found.winner) == ("not_allowed", Alternative.CONTRACTED_INSTALL)
    assert found.reasons[2] == ("not_allowed",)
    assert found.eligible == (True, True, False, True)


def test_self_install_with_help_may_win_clearly():
    assert verdict(candidates(standing=own(Standing.WITH_HELP)), chances(0.0, 0.0, 0.8, 0.2)).kind == "clear"


def test_winner_whose_standing_is_not_known_is_never_clear():
    found = verdict(candidates(standing=own(Standing.UNKNOWN)), chances(0.0, 0.0, 1.0, 0.0))
    assert (found.kind, found.winner, found.reasons[2]) == (
        "too_close",
        Alternative.SELF_INSTALL,
        ("standing_unknown",),
    )


@pytest.mark.parametrize(
    ("gate", "code"), [("need", "short_of_need"), ("time", "late"), ("cash", "over_cash")], ids=lambda value: value
)
def test_cheapest_that_fails_a_gate_is_pushed_aside_with_its_reason(gate, code):
    found = verdict(candidates(**{gate: (1, 1, 0, 1)}), None)
    assert (found.winner, found.reasons[2]) == (Alternative.CONTRACTED_INSTALL, (code,))


def test_reasons_come_in_the_fixed_order():
    failing = candidates(standing=own(Standing.NOT_ALLOWED), need=(1, 1, 0, 1), time=(1, 1, 0, 1), cash=(1, 1, 0, 1))
    assert verdict(failing, None).reasons == ((), (), ("not_allowed", "short_of_need", "late", "over_cash"), ())


def test_where_nobody_passes_every_gate_the_later_gate_gives_way():
    late_or_dear = candidates(need=(0, 1, 1, 1), time=(1, 0, 1, 0), cash=(1, 1, 0, 1))
    assert eligible(late_or_dear).tolist() == [False, False, True, False]
    nobody_does_the_job = candidates(need=(0, 0, 0, 0), time=(1, 1, 0, 1))
    assert eligible(nobody_does_the_job).all()


def test_being_allowed_never_gives_way():
    shut = candidates(standing=(Standing.NOT_ALLOWED,) * 4)
    found = verdict(shut, None)
    assert (found.kind, found.winner, found.runner_up) == ("not_allowed", None, None)
    assert np.isnan(found.gap_usd)


def test_only_one_left_is_clear():
    found = verdict(candidates(need=(0, 0, 1, 0)), None)
    assert (found.kind, found.winner, found.runner_up) == ("clear", Alternative.SELF_INSTALL, None)
