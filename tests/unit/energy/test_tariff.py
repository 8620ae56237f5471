"""Electricity bills."""

import numpy as np
import pytest

from econ.energy.tariff import flat_bill_usd


def test_flat_bill_is_energy_times_each_rows_price() -> None:
    energy_kwh = np.full((2, 12), 100.0)
    bill_usd = flat_bill_usd(energy_kwh, np.array([0.10, 0.25]))
    assert bill_usd.sum(axis=1) == pytest.approx([120.0, 300.0])


def test_one_price_serves_all_rows() -> None:
    assert flat_bill_usd(np.full((2, 12), 10.0), np.array(0.2)).tolist() == np.full((2, 12), 2.0).tolist()
