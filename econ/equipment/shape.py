"""How capacity and power run between the tests of typical machines: ratios only, no size and no efficiency."""

from typing import Final

# --- variable-speed split heat pumps: means over a public data set of cold-climate heat pumps (before 2025) --------

FULL_CAPACITY_95_OVER_82: Final = 0.940
"""Greatest cooling output, 95 over 82 degF. Means of a public data set."""

FULL_EIR_95_OVER_82: Final = 1.326
"""Power per output at greatest cooling output, 95 over 82 degF. Same set."""

LOW_EIR_67_OVER_82: Final = 0.7712 / 0.9035
"""Power per output, 67 over 82 degF. NREL/OCHRE defaults, ductless heat pumps, at 67 degF wet bulb."""

HEAT_GREATEST_OVER_RATED_47: Final = 1.0 / 0.908
"""Greatest over rated heating output at 47 degF. Means of a public data set."""

HEAT_LOW_SHARE_17_OVER_47: Final = 0.341 / 0.272
"""Least over greatest heating output, 17 over 47 degF. Same set."""

HEAT_EIR_LOW_47: Final = 0.730
"""Power per output at least over rated output, 47 degF. Same set."""

HEAT_EIR_LOW_17: Final = 0.798 * 1.351
"""Power per output at least output and 17 degF over rated at 47 degF. Same set."""

HEAT_EIR_FULL_47: Final = 1.057
"""Power per output at greatest over rated output, 47 degF: the straight efficiency line through least (.272, 1/.730)
and rated (.908, 1) output, continued to greatest (1, .9465). Derived from the same set."""

HEAT_EIR_FULL_17: Final = 1.351 * 1.114
"""Power per output at greatest output and 17 degF over rated at 47 degF: as above at 17 degF, where rated is about 0.81
of greatest output. Derived from the same set."""

HEAT_EIR_5_OVER_17: Final = 1.164
"""Power per output at greatest output, 5 over 17 degF. Same set."""

MID_SPEED_FRAC: Final = 1.0 / 3.0
"""Where the intermediate speed lies between low (0) and full (1). 10 CFR 430 appendix M1, section 3.2.4."""

FROST_CAPACITY_FRAC: Final = 0.90
"""Capacity at 35 degF with frost over that on the straight line between 17 and 47 degF. 10 CFR 430 appendix M1, 3.6.4
(recalled)."""

FROST_POWER_FRAC: Final = 0.985
"""Power at 35 degF with frost over that on the straight line. Same section (recalled)."""

DEMAND_DEFROST_CREDIT_FRAC: Final = 1.03
"""Credit in ratings of ductless heat pumps. Assumption: they defrost on demand. AHRI 210/240-2023, eq. 11.129."""

# --- window units --------------------------------------------------------------------------------------------------

WINDOW_CAPACITY_82_OVER_95: Final = 1.0565 / 0.9947
"""Cooling output, 82 over 95 degF. NREL/OCHRE defaults, room air conditioners, at 67 degF wet bulb."""

WINDOW_EIR_82_OVER_95: Final = 0.8430 / 0.9990
"""Power per output, 82 over 95 degF. Same curve."""

WINDOW_LOW_TEST_FRAC: Final = 0.52
"""Low-speed test output at 82 degF over full at 95 degF: middle of the 47 to 57 % that 10 CFR 430 appendix F asks for
(recalled)."""

WINDOW_MID_FRAC: Final = 0.692
"""Output of the test at 87 degF over full at 95 degF: the load that the cycling factors of appendix F imply."""

WINDOW_EIR_LOW: Final = HEAT_EIR_LOW_47
"""Power per output at low over full speed. Assumption: as measured on split units."""

WINDOW_HEAT_CAPACITY: Final = {62: 1.2163, 47: 1.0, 17: 0.5673, 5: 0.3942}
"""Heating output over that at 47 degF, by degF outdoors. NREL/OCHRE defaults, ductless heat pumps, at 70 degF."""

WINDOW_HEAT_EIR: Final = {62: 0.7878 / 0.9793, 47: 1.0, 17: 1.3797 / 0.9793, 5: 1.5465 / 0.9793}
"""Power per heating output over that at 47 degF, by degF outdoors. Same curve."""
