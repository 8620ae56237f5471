"""What a landlord reads beside the rest: who pays, who saves, and in which rooms."""

from econ.kernel.alternative import ALTERNATIVES
from econ.report.document.block import Block, Grid, Heading, Sentence, Setting
from econ.report.document.content.basis import Basis
from econ.report.numbers import first_cost_money, money
from econ.report.style import NAMES

_PAYERS = {
    "me": "You pay the energy bill, so what is saved there is yours.",
    "tenant": "The tenant pays the energy bill. You would spend the money, and the tenant would save or pay it.",
    "included in rent": "Energy is in the rent. You pay both the work and the bill.",
}
_OPEN = "Who pays the energy bill is not known: savings go to whoever does."


def who_pays_blocks(basis: Basis) -> list[Block]:
    """Return who spends and who saves, way by way against the base case.

    Parameters
    ----------
    basis : Basis
        What it is written from.
    """
    result = basis.result
    base = ALTERNATIVES.index(result.base_case)
    energy = [float(way.energy_cost_usd_per_yr[0]) for way in result.alternatives]
    first = [float(way.cash_first_cost_usd[0]) for way in result.alternatives]
    rows = tuple(
        (
            NAMES[name],
            first_cost_money(first[at]),
            money(energy[at]),
            "base" if at == base else money(energy[at] - energy[base]),
            money(float(result.measures.annualised_cost_usd_per_yr[at, 0])),
        )
        for at, name in enumerate(ALTERNATIVES)
    )
    titles = (
        "Way to go",
        "Cash at the start",
        "Energy bill a year",
        "Bill against the base",
        "All-in a year, all parties",
    )
    return [
        Heading("Who pays and who saves"),
        Sentence(f"{_PAYERS.get(basis.option('prices.pays_bill'), _OPEN)} No effect on the rent is counted."),
        Grid(titles, rows, (0.28, 0.18, 0.18, 0.18, 0.18), frozenset((1, 2, 3, 4)), setting=Setting.SMALL),
    ]
