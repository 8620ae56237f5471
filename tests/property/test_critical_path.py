"""Dates and the deciding chain against an independent graph library, on random acyclic nets."""

import networkx as nx
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from econ.installation.calendar import work_week, worked_h
from econ.installation.schedule import schedule
from econ.kernel.alternative import PARTIES
from tests.unit.installation.nets import every_day, rows, table

HOURS_A_DAY = 8.0
SELF, HELPER = 0, 1


def random_net(seed, n_task, *, is_work):
    """Return predecessors, parties, working hours and waits; lengths have no two sums alike, so that no chains tie."""
    rng = np.random.default_rng(seed)
    after = [[int(before) for before in range(at) if rng.random() < 0.35] for at in range(n_task)]
    party = rng.integers(0, len(PARTIES), n_task)
    hours = rng.uniform(0.5, 20.0, n_task) * (rng.random(n_task) < 0.8) * is_work
    waits = rng.uniform(0.5, 30.0, n_task) * (rng.random(n_task) < 0.5)
    return after, party, hours, waits


def graph_of(after, party, hours, waits):
    """Return the net as a graph of moments: ready, start and finish of each task, and who is free when."""
    graph = nx.DiGraph()
    last: dict[int, int] = {}
    for at, before in enumerate(after):
        graph.add_edge("decision", ("ready", at), days=0.0)
        graph.add_edge(("ready", at), ("start", at), days=waits[at])
        graph.add_edge(("start", at), ("finish", at), days=hours[at] / HOURS_A_DAY)
        for each in before:
            graph.add_edge(("finish", each), ("ready", at), days=0.0)
        if hours[at] > 0.0:
            if party[at] in last:
                graph.add_edge(("finish", last[party[at]]), ("start", at), days=0.0)
            last[party[at]] = at
    return graph


def longest_d(graph, source):
    """Return the longest way from a moment to every other, days."""
    longest = dict.fromkeys(graph, -np.inf) | {source: 0.0}
    for node in nx.topological_sort(graph):
        for before, _, days in graph.in_edges(node, data="days"):
            longest[node] = max(longest[node], longest[before] + days)
    return longest


@given(st.integers(0, 2**31), st.integers(1, 14))
@settings(deadline=None)
def test_waits_alone_end_with_the_longest_path_of_the_net(seed, n_task):
    after, _, hours, waits = random_net(seed, n_task, is_work=False)
    graph = nx.DiGraph()
    graph.add_nodes_from(range(n_task))
    graph.add_weighted_edges_from(("decision", at, waits[at]) for at in range(n_task))
    graph.add_weighted_edges_from((each, at, waits[at]) for at, before in enumerate(after) for each in before)
    gates = [True] * n_task
    found = schedule(rows(table(after, gates), hours, waits), every_day())
    assert found.in_service_d[0] == pytest.approx(nx.dag_longest_path_length(graph), abs=1e-9)


@given(st.integers(0, 2**31), st.integers(1, 14))
@settings(deadline=None)
def test_every_date_is_the_longest_path_with_the_people_as_edges(seed, n_task):
    after, party, hours, waits = random_net(seed, n_task, is_work=True)
    longest = longest_d(graph_of(after, party, hours, waits), "decision")
    found = schedule(rows(table(after), hours, waits, party=party), every_day())
    for name, dates in (("ready", found.wait_start_d), ("start", found.start_d), ("finish", found.finish_d)):
        assert dates[0] == pytest.approx([longest[name, at] for at in range(n_task)], abs=1e-6)


@given(st.integers(0, 2**31), st.integers(1, 14))
@settings(deadline=None)
def test_the_deciding_chain_is_what_has_no_slack_in_the_graph(seed, n_task):
    after, party, hours, waits = random_net(seed, n_task, is_work=True)
    graph = graph_of(after, party, hours, waits)
    end = ("finish", n_task - 1)
    forward, backward = longest_d(graph, "decision"), longest_d(graph.reverse(), end)
    found = schedule(rows(table(after), hours, waits, party=party), every_day())
    slack = np.array([forward[end] - forward["finish", at] - backward["finish", at] for at in range(n_task)])
    is_tied = (hours == 0.0) & (waits == 0.0)  # nothing to wait for: such tasks may lie beside the chain at no slack
    assert np.array_equal(found.is_critical[0][~is_tied], (slack < 1e-6)[~is_tied])


@given(st.integers(0, 2**31), st.integers(1, 10))
@settings(deadline=None)
def test_own_work_falls_on_own_work_days_only(seed, n_task):
    after, party, hours, waits = random_net(seed, n_task, is_work=True)
    weekend = work_week(np.array([0]), np.array([[False] * 5 + [True] * 2]), np.array([6.0]))
    weekdays = work_week(np.array([0]), np.array([[True] * 5 + [False] * 2]), np.array([HOURS_A_DAY]))
    weeks = (weekend, weekend, weekdays, weekdays)
    found = schedule(rows(table(after), hours, waits, party=party), weeks)
    for at in np.flatnonzero(hours):
        week = weeks[party[at]]
        worked = worked_h(found.finish_d[:, at], week) - worked_h(found.start_d[:, at], week)
        assert worked[0] == pytest.approx(hours[at], abs=1e-6)
        assert week.is_work[0, int(found.start_d[0, at] + 1e-7) % 7]
