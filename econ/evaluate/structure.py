"""What picks formulas: the part of a case that is not a number."""

from dataclasses import dataclass

from econ.climate.monthly import Site
from econ.kernel.alternative import Alternative


@dataclass(frozen=True, slots=True)
class WeatherChoice:
    """Whose weather a case has: an hourly file, months typed in, or a listed station, in this order.

    Attributes
    ----------
    hourly_file : str
        Key among the hourly files; empty for none.
    months : tuple of (str, tuple of float)
        Monthly figures by name, twelve each; empty for none.
    site : Site or None
        Where the months were taken.
    elevation_m : float or None
        Height that the user gave for the air; None for that of the weather place. [m]
    notes : tuple of str
        What was taken for granted in choosing, in sentences.
    """

    hourly_file: str = ""
    months: tuple[tuple[str, tuple[float, ...]], ...] = ()
    site: Site | None = None
    elevation_m: float | None = None
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Structure:
    """The choices that change the formulas; hashable, so that rows can be grouped by it.

    Attributes
    ----------
    station : str
        Key of the weather station, or the name of the place that other weather is of.
    n_rooms : int
        Rooms in the case.
    room_names : tuple of str
        Their names, in the order of the case.
    technologies : tuple of str
        Kind of machine of each alternative, in the order of ALTERNATIVES.
    base_case : Alternative
        What the others are compared with.
    study_period_yr : int
        Years compared.
    tariff_kind : str
        How electricity is priced: flat, seasonal, tiered or time_of_use.
    has_quote : bool
        Whether a contractor's total is known.
    parties : tuple of (str, str)
        Task and the party the user gave it to.
    tools_owned : tuple of str
        Keys of the tools that are there already.
    tools_borrowed : tuple of str
        Keys of the tools that somebody lends.
    weather : WeatherChoice or None
        Whose weather it is; None for the listed station named above.
    measures : tuple of str
        Keys of the measures done to the room whichever way is gone, each once, in the order of their table.
    """

    station: str
    n_rooms: int
    room_names: tuple[str, ...]
    technologies: tuple[str, str, str, str]
    base_case: Alternative
    study_period_yr: int
    tariff_kind: str = "flat"
    has_quote: bool = False
    parties: tuple[tuple[str, str], ...] = ()
    tools_owned: tuple[str, ...] = ()
    tools_borrowed: tuple[str, ...] = ()
    weather: WeatherChoice | None = None
    measures: tuple[str, ...] = ()
