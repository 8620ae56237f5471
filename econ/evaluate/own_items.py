"""What a hired installation comes to from this program's own items, whatever a quote says."""

from collections.abc import Mapping
from dataclasses import replace

from econ.evaluate.structure import Structure
from econ.evaluate.wiring.installation import installation
from econ.installation.first_cost import cash_first_cost_usd
from econ.kernel.alternative import HIRED
from econ.kernel.arrays import FloatArray
from econ.tables.tasks import InstallationTables


def hired_usd(structure: Structure, values: Mapping[str, FloatArray], tables: InstallationTables) -> float:
    """Return the cash first cost of hiring, built up from its parts.

    Parameters
    ----------
    structure : Structure
        A quote in it is left aside.
    values : mapping of str to ndarray, shape ()
        Likely numbers by path.
    tables : InstallationTables
        Task lists and cost words.

    Returns
    -------
    hired_usd : float
        Equipment, labour, circuit, permits, tax. [USD]
    """
    made = installation(replace(structure, has_quote=False), values, tables, 1)[HIRED]
    return float(cash_first_cost_usd(made.line_items)[0])
