"""How each route stands on this site: open, with help, not allowed, or not known yet."""

from dataclasses import dataclass
from typing import Final

from econ.kernel.alternative import Standing


@dataclass(frozen=True, slots=True)
class SiteAnswers:
    """What was answered about the site, likely values, as options of their choices.

    Attributes
    ----------
    occupancy, permit, association, owner_may_mechanical : str
        Options of the fields of the same name.
    hole : str
        Option of the field of the same name.
    locks : tuple of str
        Reasons, in plain words, why tasks of a self-installation had to go to a licensed party.
    licensed_tasks : tuple of str
        Labels of the tasks that a licensed party does in a self-installation.
    contractor_finishes : str
        Whether a contractor takes on a kit bought elsewhere: option of the field.
    contractor_tasks : tuple of str
        Labels of the tasks on the kit that only a contractor may do here.
    """

    occupancy: str
    permit: str
    association: str
    owner_may_mechanical: str
    hole: str
    locks: tuple[str, ...]
    licensed_tasks: tuple[str, ...]
    contractor_finishes: str = "yes"
    contractor_tasks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class RouteStanding:
    """How a route stands, and the reasons in plain words, gravest first."""

    standing: Standing
    reasons: tuple[str, ...]


OPEN: Final = RouteStanding(Standing.OPEN, ())
_PERMIT_REFUSED = "The permit was refused; ask the permit office in writing what would make it pass."
_HOLE_REFUSED = (
    "A hole below the ground is refused: water and soil gas come in. Go out above the ground or through the rim."
)
_CONSENT = "The association must agree first; its time is in the dates."
_CONSENT_UNKNOWN = "It is not known whether an association must agree: ask before spending."
_LANDLORD = "The landlord must agree in writing first; the time for it is in the dates."


def consent_standing(site: SiteAnswers, what: str = "an outdoor unit") -> RouteStanding:
    """Return what association and landlord make of something that shows from outside.

    Parameters
    ----------
    site : SiteAnswers
        What was answered.
    what : str
        What they are asked about, within a sentence.

    Returns
    -------
    standing : RouteStanding
        A refusal of the association is one of anything that shows.
    """
    landlord = (_LANDLORD,) if site.occupancy == "tenant" else ()
    if site.association == "refused":
        return RouteStanding(Standing.NOT_ALLOWED, (f"The association has refused {what}.", *landlord))
    if site.association == "not_known":
        return RouteStanding(Standing.UNKNOWN, (_CONSENT_UNKNOWN, *landlord))
    consent = (_CONSENT,) if site.association == "consent_needed" else ()
    return RouteStanding(Standing.OPEN, (*consent, *landlord))


def _refusals(site: SiteAnswers) -> RouteStanding:
    """Return what a refused permit, or a hole where there may be none, makes of any outdoor unit."""
    found = ((site.permit == "refused", _PERMIT_REFUSED), (site.hole == "below_grade", _HOLE_REFUSED))
    reasons = tuple(reason for is_so, reason in found if is_so)
    return RouteStanding(Standing.NOT_ALLOWED if reasons else Standing.OPEN, reasons)


def _owner_rule(site: SiteAnswers) -> RouteStanding:
    """Return what the rules on owners' mechanical work make of a self-installation."""
    if site.owner_may_mechanical == "no":
        return RouteStanding(
            Standing.NOT_ALLOWED, ("Mechanical work here is for a licensed contractor, owners included.",)
        )
    if site.owner_may_mechanical == "yes":
        return OPEN
    if site.occupancy in ("owner_lets", "not_known"):
        text = "A let home: the owner's exemption does not hold unless the permit office says so."
        return RouteStanding(Standing.NOT_ALLOWED, (text,))
    if site.occupancy == "tenant":
        text = (
            "A tenant is not the owner: fixed mechanical work is not for the tenant unless the permit office says so."
        )
        return RouteStanding(Standing.NOT_ALLOWED, (text,))
    if site.permit == "not_needed":
        return OPEN
    return RouteStanding(Standing.UNKNOWN, ("Ask the permit office whether an owner may do the mechanical work.",))


def _finishing(site: SiteAnswers) -> RouteStanding:
    """Return what it means that some of the work on the kit is left to a contractor who did not sell it."""
    if not site.contractor_tasks or site.contractor_finishes == "yes":
        return OPEN
    listed = "; ".join(site.contractor_tasks)
    if site.contractor_finishes == "no":
        text = f"No contractor takes on a kit bought elsewhere, and only a contractor may do this here: {listed}."
        return RouteStanding(Standing.NOT_ALLOWED, (text,))
    text = f"Ask, before you buy, whether a contractor does this on a kit bought elsewhere: {listed}."
    return RouteStanding(Standing.UNKNOWN, (text,))


_RANK: Final = {Standing.NOT_ALLOWED: 0, Standing.UNKNOWN: 1, Standing.WITH_HELP: 2, Standing.OPEN: 3}


def gravest(*parts: RouteStanding) -> RouteStanding:
    """Return several standings as one: the gravest, with the reasons of all, gravest first."""
    ordered = sorted(parts, key=lambda part: _RANK[part.standing])
    return RouteStanding(ordered[0].standing, tuple(reason for part in ordered for reason in part.reasons))


def self_install_standing(site: SiteAnswers) -> RouteStanding:
    """Return how a self-installation stands: consent, the rules on owners' work, and who must do part of it.

    Parameters
    ----------
    site : SiteAnswers
        What was answered.

    Returns
    -------
    standing : RouteStanding
        ``with_help`` where a licensed party does at least one task.
    """
    stopped = gravest(_refusals(site), consent_standing(site), _owner_rule(site), _finishing(site))
    if stopped.standing == Standing.NOT_ALLOWED:
        return RouteStanding(stopped.standing, (*stopped.reasons, *site.locks))
    shared = OPEN
    if site.licensed_tasks:
        listed = "; ".join(site.licensed_tasks)
        shared = RouteStanding(Standing.WITH_HELP, (*site.locks, f"Done by a licensed party: {listed}."))
    return gravest(stopped, shared)


def contracted_install_standing(site: SiteAnswers) -> RouteStanding:
    """Return how a hired installation stands: only consent, a refused permit or the place of the hole can stop it.

    Parameters
    ----------
    site : SiteAnswers
        What was answered.

    Returns
    -------
    standing : RouteStanding
        Open, not allowed or unknown.
    """
    return gravest(_refusals(site), consent_standing(site))
