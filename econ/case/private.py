"""What leaves this machine holds no private figures: they are taken out before anything is made of a case."""

from econ.case.schema import Case
from econ.case.sections.quote import Private


def handed_over(case: Case) -> Case:
    """Return a case without its private section, as every print, page for a client and export gets it.

    Parameters
    ----------
    case : Case
        The case; it stays as it is.
    """
    return case.model_copy(update={"private": Private()})


def has_private(case: Case) -> bool:
    """Return whether a case holds private figures."""
    return case.private != Private()
