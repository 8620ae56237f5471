"""A plan for many rooms year by year: a column of cash by way, and the budget as a line across."""

from typing import Final

import numpy as np
import plotly.graph_objects as go

from econ.kernel.alternative import ALTERNATIVES
from econ.portfolio.picks import picked, setup_usd
from econ.portfolio.plan import Plan
from econ.report.look import Look
from econ.report.numbers import money, plural
from econ.report.pictures.frame import bar_look, framed, name_upright_axis, write
from econ.report.style import MARKS, NAMES, SMALL_SIZE
from econ.report.words.rooms import year_words

HEIGHT_PX: Final = 320
_WIDTH: Final = 0.5
_LEAST_SHARE: Final = 0.09
"""Part of the height from which a piece bears its name."""


def figure(plan: Plan, base_year: int, look: Look) -> go.Figure:
    """Return the picture.

    Parameters
    ----------
    plan : Plan
        What is done.
    base_year : int
        Calendar year of the first column.
    look : Look
        Ground.
    """
    n_year = plan.limits.n_year
    cash, paid = _cash_usd(plan), setup_usd(plan.rooms.options, plan.picks, n_year)
    budget = np.where(np.isfinite(plan.limits.budget_usd), plan.limits.budget_usd, 0.0)
    top = 1.15 * max(float((cash.sum(axis=0) + paid).max()), float(budget.max()), 1.0)
    drawn = framed(look, HEIGHT_PX, {"r": 12, "t": 40})
    drawn.update_layout(barmode="overlay")
    foot = np.zeros(n_year)
    for at, name in enumerate(ALTERNATIVES):
        if cash[at].any():
            _pieces(drawn, plan, cash[at], foot, at, look)
            for year in np.flatnonzero(cash[at] > _LEAST_SHARE * top):
                _named(drawn, f"{MARKS[name].glyph} {_count(plan, at, int(year))}", int(year), foot, cash[at], look)
            foot += cash[at]
    if paid.any():
        drawn.add_bar(
            x=np.arange(n_year), y=paid, base=foot, width=_WIDTH, name="Paid once",
            marker={"color": "rgba(0,0,0,0)", "line": {"color": look.ground.ink, "width": 1.4}},
            hovertemplate="Permits, tools, visits: $%{y:,.0f}<extra></extra>",
        )  # fmt: skip
    _budgets(drawn, plan, look)
    drawn.update_xaxes(tickvals=list(range(n_year)), ticktext=[str(base_year + year) for year in range(n_year)])
    drawn.update_xaxes(range=[-0.6, n_year - 0.4])
    drawn.update_yaxes(range=[0.0, top], tickprefix="$", tickformat="~s", nticks=6)
    name_upright_axis(drawn, "Cash of each year; a dashed line is its budget", look)
    return drawn


def _cash_usd(plan: Plan) -> np.ndarray:
    """Return the cash of each way and year, set-ups apart, shape (A, Y). [USD]"""
    cash = np.zeros((len(ALTERNATIVES), plan.limits.n_year))
    done = plan.picks.is_done
    spent = picked(plan.rooms.options, plan.picks, "cost_usd")
    np.add.at(cash, (plan.picks.way[done], plan.picks.year[done]), spent[done])
    return cash


def _count(plan: Plan, way: int, year: int) -> int:
    return int(((plan.picks.way == way) & (plan.picks.year == year)).sum())


def _pieces(drawn: go.Figure, plan: Plan, cash: np.ndarray, foot: np.ndarray, way: int, look: Look) -> None:
    name, years = ALTERNATIVES[way], np.flatnonzero(cash)
    drawn.add_bar(
        x=years, y=cash[years], base=foot[years], width=_WIDTH, name=NAMES[name],
        marker=bar_look(name, look), customdata=[[_count(plan, way, int(year))] for year in years],
        hovertemplate=f"{NAMES[name]}: $%{{y:,.0f}}<br>%{{customdata[0]}} rooms<extra></extra>",
    )  # fmt: skip


def _named(drawn: go.Figure, text: str, year: int, foot: np.ndarray, cash: np.ndarray, look: Look) -> None:
    write(
        drawn, f"<b>{text}</b>", (year, float(foot[year] + cash[year] / 2.0)), look.ground.ink,
        xanchor="center", bgcolor=look.ground.paper, font={"size": SMALL_SIZE},
    )  # fmt: skip


def _budgets(drawn: go.Figure, plan: Plan, look: Look) -> None:
    for year, budget in enumerate(plan.limits.budget_usd):
        if np.isfinite(budget):
            drawn.add_scatter(
                x=[year - 0.42, year + 0.42], y=[budget, budget], mode="lines", hoverinfo="skip",
                line={"color": look.ground.ink, "width": 2, "dash": "dash"},
            )  # fmt: skip


def statement(plan: Plan) -> str:
    """Return the sentence above the picture."""
    cash = _cash_usd(plan).sum(axis=0) + setup_usd(plan.rooms.options, plan.picks, plan.limits.n_year)
    told = []
    for year, spent in enumerate(cash):
        count = int((plan.picks.year == year).sum())
        if count:
            told.append(f"{year_words(year)} {count} {plural('room', count)} for {money(float(spent))}")
    if not told:
        return "Nothing is done in any year."
    text = "; ".join(told)
    return f"{text[0].upper()}{text[1:]}."


def legend() -> str:
    """Return the signs of the ways in words."""
    return ", ".join(f"{MARKS[name].glyph} {NAMES[name]}" for name in ALTERNATIVES[1:]) + "; a number counts rooms."
