"""The names a case may use, from the tables."""

from functools import lru_cache

from econ.case.section import Known
from econ.kernel.alternative import ALTERNATIVES, Alternative
from econ.tables.loaders import Tables, load_tables
from econ.tables.tasks import installation_tables


@lru_cache(maxsize=1)
def known_names() -> Known:
    """Return stations, tasks, tools, states and measures of the tables this package brings."""
    tables: Tables = load_tables()
    work = installation_tables()
    tasks = {task for way in ALTERNATIVES for task in work.tasks[way].key}
    states = tuple(state for state in tables.prices.keys if state != "US")
    return Known(
        tables.stations.names,
        tuple(sorted(tasks)),
        tuple(tool.key for tool in work.tools),
        states,
        tables.measures.keys,
        given_tasks=tuple(sorted(work.tasks[Alternative.SELF_INSTALL].key)),
    )
