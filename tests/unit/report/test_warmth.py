"""A shortfall of cooling, in words, held against the limit of what still counts as doing the job."""

import numpy as np
import pytest

from econ.kernel.alternative import WINDOW
from econ.report.words.warmth import unmet_share_frac, warm_text
from tests import builders


def short_by(share_frac, above_kh=30.0):
    """Return a result whose window units leave a share of the season's cooling undone; 3 % is allowed."""
    whole = builders.result()
    wanted = float(whole.need_cool_kwh[0].sum() + whole.need_latent_kwh[0].sum())
    return builders.with_way(
        whole,
        WINDOW,
        unmet_cooling_kwh_per_yr=np.array([share_frac * wanted]),
        unmet_cooling_h=np.array([60.0]),
        unmet_cooling_kh=np.array([above_kh]),
    )


def said(share_frac, look, above_kh=30.0):
    whole = short_by(share_frac, above_kh)
    return warm_text(whole, whole.alternatives[WINDOW], look)


@pytest.mark.parametrize("share", [0.0, 0.02, 0.3])
def test_share_is_of_the_season_s_cooling_drying_included(share):
    whole = short_by(share)
    assert unmet_share_frac(whole, whole.alternatives[WINDOW]) == pytest.approx(share)


def test_hours_and_degree_hours_are_told_as_an_upper_estimate(look):
    text = said(0.001, look)
    assert text.startswith(
        "Leaves the room too warm for about 60 hours a year (degree-hours above your set-point: 54 °F·h"
    )
    assert "an upper estimate" in text
    assert "counts as doing the job" not in text


@pytest.mark.parametrize(
    ("share", "words"),
    [
        (0.0149, ""),
        (0.0151, "1.5 % of the season's cooling is left undone, just inside the 3 % that counts"),
        (0.03, "3.0 % of the season's cooling is left undone, just inside the 3 %"),
        (0.0301, "3.0 % of the season's cooling is left undone, just outside the 3 %"),
        (0.0449, "just outside the 3 % that counts as doing the job. Another weather place nearby may say otherwise."),
        (0.0451, "4.5 % of the season's cooling is left undone, and 3 % still counts as doing the job."),
        (0.2, "20 % of the season's cooling is left undone, and 3 % still counts as doing the job."),
    ],
)
def test_near_the_limit_it_is_said_on_which_side(share, words, look):
    text = said(share, look)
    assert words in text
    assert ("counts as doing the job" in text) == bool(words)


def test_degree_hours_that_were_not_worked_out_are_not_told(look):
    assert "degree-hours" not in said(0.2, look, above_kh=0.0)


def test_a_way_that_keeps_up_says_nothing(look):
    whole = builders.result()
    assert warm_text(whole, whole.alternatives[WINDOW], look) == ""
