"""The names a case may use, from the tables."""

from functools import lru_cache

from econ.case.section import Known
from econ.kernel.alternative import Alternative
from econ.tables.loaders import Tables, load_tables
from econ.tables.tasks import installation_tables


@lru_cache(maxsize=1)
def known_names() -> Known:
    """Return stations, tools, states and measures of the tables this package brings, and the tasks that may be given out.

    Those are the tasks of a self-installation: the other ways' lists say who does what.
    """
    tables: Tables = load_tables()
    work = installation_tables()
    states = tuple(state for state in tables.prices.keys if state != "US")
    return Known(
        tables.stations.names,
        tuple(sorted(work.tasks[Alternative.SELF_INSTALL].key)),
        tuple(tool.key for tool in work.tools),
        states,
        tables.measures.keys,
    )
