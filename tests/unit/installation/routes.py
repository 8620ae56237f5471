"""Routes of an invented site, as tests ask for them."""

from econ.evaluate.wiring.installation import installation
from econ.tables.tasks import installation_tables
from tests.unit.installation.site_values import site_values, structure

TABLES = installation_tables()


def routes(n_row=1, shape=None, **changed):
    return installation(shape or structure(), site_values(**changed), TABLES, n_row)


def amounts(route):
    return dict(zip(route.line_items.key, route.line_items.amount_usd[0], strict=True))


def party_of(route, task):
    return route.tasks.party[0, route.tasks.table.position(task)]
