"""A case without what says who and where: for a print that leaves the house."""

from typing import Any, Final

from econ.case.schema import Case

PERSONAL: Final[dict[str, tuple[str, ...]]] = {
    "record": ("name", "filled_in_by", "notes"),
    "phone": ("spoke_to", "answers"),
    "tests": ("notes",),
    "as_built": ("done_by", "licence", "permit_no", "inspected_by", "call_first", "notes"),
    "paper": ("address",),
    "letterhead": ("business", "licence", "prepared_for"),
    "offer": ("name", "returns"),
}
"""Fields by section whose words may name a person or a place, licence and permit numbers with them."""

LEFT_OUT: Final = "name left out"


def without_names(case: Case) -> Case:
    """Return the case without address and names; everything that moves a number stays.

    Parameters
    ----------
    case : Case
        The case; it stays as it is.
    """
    told: dict[str, Any] = {
        section: getattr(case, section).model_copy(update=dict.fromkeys(names)) for section, names in PERSONAL.items()
    }
    told["rooms"] = tuple(room.model_copy(update={"name": None}) for room in case.rooms)
    told["quotes"] = tuple(each.model_copy(update={"name": None, "returns": None}) for each in case.quotes)
    told["signed"] = tuple(
        line.model_copy(update={"who": LEFT_OUT, "licence": None, "note": None, "why_back": None})
        for line in case.signed
    )
    return case.model_copy(update=told)
