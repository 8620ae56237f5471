"""What each way's warranty covers, for how long, and what would void it."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.kernel.alternative import Alternative
from econ.kernel.arrays import FloatArray

VOIDED_BY: Final = {
    Alternative.KEEP_AS_IS: (),
    Alternative.WINDOW_UNITS: (
        "no receipt",
        "a unit run on an extension cord or tilted against the manual",
    ),
    Alternative.SELF_INSTALL: (
        "a maker who asks for a licensed installer, or for proof of one",
        "a refrigerant circuit opened without a certificate, or charge let out",
        "lines cut, flared or extended where the manual does not allow it",
        "no registration in time, no photograph of the nameplate, no receipt",
        "work without the permit that the place asks for",
    ),
    Alternative.CONTRACTED_INSTALL: (
        "no registration in time: parts then run for the shorter term",
        "upkeep that the paper asks for and nobody can show",
        "a firm that no longer exists: its labour warranty is gone, the maker's parts stay",
    ),
}
"""Usual causes, from memory of printed terms; the paper that comes with the unit decides. Assumption."""


PROOF: Final = {
    Alternative.KEEP_AS_IS: (),
    Alternative.WINDOW_UNITS: ("the receipt", "model and serial number"),
    Alternative.SELF_INSTALL: (
        "the receipt and the registration",
        "photographs of both nameplates",
        "who joined the lines, by licence or certificate where the maker asks for one",
        "test values: leak checks at once, after 24 hours and after 30 days",
        "permit and inspection, where the place asks for them",
    ),
    Alternative.CONTRACTED_INSTALL: (
        "the invoice and the registration",
        "photographs of both nameplates",
        "the start-up record and the permit's inspection",
        "records of upkeep, where the paper asks for it",
    ),
}
"""What a claim usually wants to see, from memory of printed terms; the paper decides. Assumption."""


@dataclass(frozen=True, slots=True, eq=False)
class Warranty:
    """What is covered from the day of service.

    Attributes
    ----------
    parts_yr, compressor_yr, labour_yr : ndarray, shape (B,)
        Years of free parts, of a free compressor or sealed system, and of free labour. [year] [year] [year]
    claims_paid_frac : ndarray, shape (B,)
        Share of claims within these years that are paid. [dimensionless]
    voided_by : tuple of str
        What would void it, in plain words.
    register_within_d : ndarray, shape (B,)
        Days after service within which it is to be registered; NaN where nothing is. [day]
    """

    parts_yr: FloatArray
    compressor_yr: FloatArray
    labour_yr: FloatArray
    claims_paid_frac: FloatArray
    voided_by: tuple[str, ...]
    register_within_d: FloatArray


def no_warranty(n_row: int) -> Warranty:
    """Return what is there where nothing new is bought.

    Parameters
    ----------
    n_row : int
        Decision rows. [any]

    Returns
    -------
    warranty : Warranty
        Nothing is covered.
    """
    none = np.zeros(n_row)
    return Warranty(none, none, none, none, (), np.full(n_row, np.nan))
