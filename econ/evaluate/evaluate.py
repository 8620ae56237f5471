"""One pure function: the same structure, values and tables give the same Result, whoever calls."""

from collections.abc import Mapping

import numpy as np

from econ.caution import registry
from econ.evaluate.blocks import row_count
from econ.evaluate.costs import alternative_costs
from econ.evaluate.design import design_rows
from econ.evaluate.outcome import Parts, alternative_results, caution_results
from econ.evaluate.physics import physics
from econ.evaluate.result import Result
from econ.evaluate.structure import Structure
from econ.evaluate.summary import climate_summary, room_loads
from econ.evaluate.version import RESULTS_VERSION
from econ.evaluate.waiting import waiting
from econ.evaluate.wiring import caution, climate
from econ.evaluate.wiring.installation import installation
from econ.evaluate.wiring.lifecycle import lifecycle
from econ.evaluate.wiring.measures import fans_count, room_work, running_usd_per_yr
from econ.evaluate.wiring.waiting import interim_need
from econ.kernel.alternative import KEEP
from econ.kernel.arrays import FloatArray
from econ.tables.loaders import Tables
from econ.tables.tasks import installation_tables


def evaluate(structure: Structure, values: Mapping[str, FloatArray], tables: Tables) -> Result:
    """Return the whole answer for every decision row.

    Parameters
    ----------
    structure : Structure
        What picks formulas.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    tables : Tables
        Stations, and the words of tables.

    Returns
    -------
    result : Result
        Months, years and sums for B rows; pictures and words follow the first row.

    Raises
    ------
    ShapeError
        If two values hold different numbers of rows.
    OutOfRangeError
        If a number lies outside what a formula allows.
    """
    n_row = row_count(values)
    said = {path: np.asarray(value, dtype=np.float64) for path, value in values.items()}
    work = room_work(structure, said, tables, n_row)
    values = work.values
    weather = climate.weather(structure, tables)
    hours = physics(structure, values, weather, n_row)
    design = design_rows(structure, values, tables, weather, n_row)
    lacks = interim_need(values, hours.uses[KEEP])
    ways = installation(structure, values, installation_tables(), n_row, work, lacks)
    need, fans = hours.need, fans_count(structure, values, n_row)
    running = running_usd_per_yr(values, fans, need.all_cooling_kwh, need.heat_kwh.sum(axis=1))
    costs = alternative_costs(structure, values, ways, hours.uses, work, running)
    money = lifecycle(structure, values, costs)
    meanwhile = waiting(structure, values, tables, ways, costs, lacks)
    parts = Parts(structure, values, tables, n_row, hours, design, ways, meanwhile)
    alternatives = alternative_results(parts)
    facts = caution.facts(structure, values, caution_results(parts, alternatives), n_row)
    return Result(
        results_version=RESULTS_VERSION,
        base_case=structure.base_case,
        study_period_yr=structure.study_period_yr,
        climate=climate_summary(structure, values, tables, hours),
        rooms=room_loads(structure, values, design, hours, weather),
        need_cool_kwh=hours.need.cool_kwh,
        need_latent_kwh=hours.need.latent_kwh,
        need_heat_kwh=hours.need.heat_kwh,
        mean_cooling_w=hours.need.mean_cooling_w,
        unmet_cooling_allowed_frac=float(np.ravel(values["rules.unmet_cooling_allowed_frac"])[0]),
        alternatives=alternatives,
        streams=money.streams,
        measures=money.measures,
        component_usd=money.component_usd,
        lcc_at_zero_hour_usd=money.lcc_at_zero_hour_usd,
        by_warranty_usd=money.by_warranty_usd,
        terms=money.terms,
        waiting=meanwhile.year,
        cautions=registry.found(facts),
        facts=facts if n_row == 1 else None,
    )
