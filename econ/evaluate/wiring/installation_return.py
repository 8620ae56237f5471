"""Sending the kit back: last day, fee, and when the dry-fit shows whether it has to go."""

from collections.abc import Mapping

import numpy as np

from econ.evaluate.wiring.installation import Installation
from econ.evaluate.wiring.installation_site import Inputs
from econ.installation.delivery import KitReturn, restocking_usd, return_by_d
from econ.kernel.alternative import Alternative
from econ.kernel.arrays import FloatArray


def kit_return(values: Mapping[str, FloatArray], way: Installation, n_row: int) -> KitReturn:
    """Return until when the kit may go back and what that costs.

    Parameters
    ----------
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    way : Installation
        Tasks and dates.
    n_row : int
        B.

    Returns
    -------
    kit_return : KitReturn
        The window runs from the day the kit is at the door, whether or not anyone has looked at it yet.
    """
    if way.tasks.table.alternative != Alternative.SELF_INSTALL:
        nothing = np.full(n_row, np.nan)
        return KitReturn(nothing, nothing, nothing)
    inputs, table = Inputs(values, n_row), way.tasks.table
    receive, dry_fit = table.position("receive"), table.position("dry_fit")
    delivered_d = way.schedule.wait_start_d[:, receive] + way.tasks.wait_d[:, receive]
    price_usd = inputs.number("kit.price_usd")
    return KitReturn(
        return_by_d=return_by_d(delivered_d, inputs.number("kit.return_window_d")),
        dry_fit_d=way.schedule.finish_d[:, dry_fit],
        restocking_usd=restocking_usd(price_usd, inputs.number("kit.count"), inputs.number("kit.restocking_frac")),
    )
