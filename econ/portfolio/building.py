"""Figures of a building: what the user said of it, else the usual ones."""

from econ.case.quantity import Amount
from econ.case.schema import Case
from econ.kernel.spread import Spread
from econ.tables.loaders import Tables


def figure(case: Case, tables: Tables, name: str) -> float:
    """Return the likely value of one figure of the building, in the unit of its row.

    Parameters
    ----------
    case : Case
        What the user said.
    tables : Tables
        Usual figures.
    name : str
        Of a field of the section, or of a row of the table.
    """
    said = getattr(case.building, name, None)
    if isinstance(said, Amount) and not said.is_unknown:
        return said.likely
    return usual(tables, name).likely


def usual(tables: Tables, name: str) -> Spread:
    """Return the usual range of one figure of a building, with its source."""
    return tables.building[name].spread("usual")


def said_or(case: Case, name: str, otherwise: float) -> float:
    """Return what the user said of one field, or something else where nothing is said."""
    said = getattr(case.building, name)
    return said.likely if isinstance(said, Amount) and not said.is_unknown else otherwise
