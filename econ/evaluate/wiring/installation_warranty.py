"""Each way's warranty, for who does what."""

from collections.abc import Callable, Mapping
from typing import Final

import numpy as np

from econ.evaluate.wiring.installation_price import Route
from econ.installation.incentive import is_met
from econ.installation.warranty import VOIDED_BY, Warranty, no_warranty
from econ.kernel.alternative import Alternative


def warranty(route: Route) -> Warranty:
    """Return what a way's warranty covers.

    Parameters
    ----------
    route : Route
        Tasks and who does them: a kit that a contractor connects and starts has more of its claims paid.

    Returns
    -------
    warranty : Warranty
        Usual terms of its kind; a quote's own labour warranty where it names one.
    """
    return _BY_WAY[Alternative(route.rows.table.alternative)](route)


def _keep(route: Route) -> Warranty:
    return no_warranty(route.site.inputs.n_row)


def _window(route: Route) -> Warranty:
    parts, sealed = route.cost("window_parts_warranty_yr"), route.cost("window_sealed_warranty_yr")
    paid, never = route.number("warranty.claims_frac"), np.full(route.site.inputs.n_row, np.nan)
    return Warranty(parts, sealed, parts, paid, VOIDED_BY[Alternative.WINDOW_UNITS], never)


def _kit(route: Route) -> Warranty:
    is_licensed = is_met(route.rows, "licensed_commissioning", route.site.facts["permit_needed"])
    paid = np.where(is_licensed, route.number("warranty.kit_licensed_claims_frac"), route.cost("kit_claims_paid_frac"))
    return Warranty(
        parts_yr=route.cost("kit_parts_warranty_yr"),
        compressor_yr=route.cost("kit_compressor_warranty_yr"),
        labour_yr=route.cost("kit_labour_warranty_yr"),
        claims_paid_frac=paid,
        voided_by=VOIDED_BY[Alternative.SELF_INSTALL],
        register_within_d=route.cost("registration_deadline_d"),
    )


def _hired(route: Route) -> Warranty:
    is_quoted = route.site.structure.has_quote
    labour = route.number("quote.labour_warranty_yr") if is_quoted else route.cost("trade_labour_warranty_yr")
    is_left_out = is_quoted & route.site.inputs.is_option("quote.warranty", "no")
    return Warranty(
        parts_yr=route.cost("trade_parts_warranty_yr"),
        compressor_yr=route.cost("trade_compressor_warranty_yr"),
        labour_yr=np.where(is_left_out, 0.0, labour),
        claims_paid_frac=route.number("warranty.claims_frac"),
        voided_by=VOIDED_BY[Alternative.CONTRACTED_INSTALL],
        register_within_d=route.cost("registration_deadline_d"),
    )


_BY_WAY: Final[Mapping[Alternative, Callable[[Route], Warranty]]] = {
    Alternative.KEEP_AS_IS: _keep,
    Alternative.WINDOW_UNITS: _window,
    Alternative.SELF_INSTALL: _kit,
    Alternative.CONTRACTED_INSTALL: _hired,
}
