"""How a page looks: its style sheet, sentences, pictures with their tables, findings."""

import base64
import re
from collections.abc import Mapping, Sequence
from html import escape
from pathlib import Path
from typing import Final

import streamlit as st

from econ.kernel.caution import Caution, Severity
from econ.report.charts import CHARTS
from econ.report.size_words import size_sentences
from econ.report.style import GROUNDS, PLOT_CONFIG, Theme
from econ.report.words.finding import figures
from econ.report.words.glossary import short_words
from econ.ui import now, state
from econ.uncertainty.answer import Answer

_STYLE: Final = Path(__file__).with_name("look.css")
FONT: Final = '"Source Sans", sans-serif'
SEVERITY: Final = {
    Severity.HOLD_POINT: ("Stop", "⬣"),
    Severity.CAUTION: ("Caution", "▲"),
    Severity.NOTE: ("Note", "○"),
}
_NUMBER: Final = re.compile(r"[\u2212\u2013$-]*[\d.,]*\d|\u2013$")
_MARKUP: Final = re.compile(r"[\\\\`*_{}\[\]()<>#+!|~$:-]")
_RANK: Final = (Severity.HOLD_POINT, Severity.CAUTION, Severity.NOTE)


def dress() -> None:
    """Give the page its style sheet."""
    st.html(_STYLE)
    light, dark = (GROUNDS[theme].paper for theme in (Theme.LIGHT, Theme.DARK))
    st.html(f"<style>.stApp {{ --ground: light-dark({light}, {dark}); }}</style>")


def literal(text: str) -> str:
    r"""Return a text with every sign of markup made plain, for labels and messages that would read it as markup.

    Examples
    --------
    >>> literal("![x](y) $5")
    '\\!\\[x\\]\\(y\\) \\$5'
    """
    return _MARKUP.sub(r"\\\g<0>", text)


def said(sentence: str, *, kind: str = "said") -> None:
    """Show the sentence that carries a page or a verdict."""
    if sentence:
        st.html(f'<p class="{kind}">{escape(sentence)}</p>')


def points(sentences: Sequence[str]) -> None:
    """Show sentences as a list; empty ones are left out."""
    if told := [f"<li>{escape(sentence)}</li>" for sentence in sentences if sentence]:
        st.html(f'<ul class="points">{"".join(told)}</ul>')


def picture(key: str, answer: Answer) -> None:
    """Show one picture: a sentence that is true without it, the figure, and the same as a table."""
    chart, look = CHARTS[key], now.look()
    statement = chart.statement(answer.result, look)
    st.subheader(chart.title)
    st.html(f'<p class="statement">{escape(statement)}</p>')
    doubt = {"drawn_rows": answer.drawn} if key == "running_total" else {}
    figure = chart.figure(answer.result, look, **doubt)
    figure.update_layout(font_family=FONT)
    st.plotly_chart(figure, theme=None, config=PLOT_CONFIG, key=f"c_{key}", alt=statement)
    columns = chart.table(answer.result, look)
    said(short_words(" ".join([statement, *map(str, next(iter(columns.values()), []))])), kind="small")
    with st.expander("Show as a table"):
        table(columns)


def table(columns: Mapping[str, Sequence[object]]) -> None:
    """Show a small table whole: its words wrap, and on a narrow screen its first column stays while the rest moves."""
    st.html(table_html(columns))


def table_html(columns: Mapping[str, Sequence[object]]) -> str:
    """Return a table whose first column names its rows."""
    head = "".join(f'<th scope="col">{escape(title)}</th>' for title in columns)
    rows = zip(*columns.values(), strict=True)
    body = "".join(
        f"<tr>{_cell(first, 'th')}{''.join(_cell(cell, 'td') for cell in rest)}</tr>" for first, *rest in rows
    )
    return (
        f'<div class="table" tabindex="0" role="region" aria-label="Table"><table><thead><tr>{head}</tr></thead>'
        f"<tbody>{body}</tbody></table></div>"
    )


def _cell(value: object, tag: str) -> str:
    text = str(value)
    scope = ' scope="row"' if tag == "th" else ""
    number = ' class="number"' if tag == "td" and _NUMBER.match(text) else ""
    return f"<{tag}{scope}{number}>{escape(text)}</{tag}>"


def pictures(answer: Answer | None, *keys: str) -> None:
    """Show pictures, where there is an answer to draw."""
    for key in keys if answer is not None else ():
        picture(key, answer)  # type: ignore[arg-type]


def sizes(answer: Answer | None) -> None:
    """Say what the size chosen does and does not do, where there is an answer."""
    for sentence in size_sentences(answer, now.look()) if answer is not None else ():
        said(sentence, kind="statement")


def drawing(svg: str, statement: str = "") -> None:
    """Show a drawing made of the answers so far, and in words what it shows."""
    if statement:
        st.html(f'<p class="statement">{escape(statement)}</p>')
    if svg:
        st.html(svg_image(svg, statement, "drawing"))


def svg_image(svg: str, alt: str, kind: str) -> str:
    """Return a drawing as an image in the ink of the page; drawn inline it would be taken out as unsafe."""
    inked = svg.replace("currentColor", GROUNDS[state.theme()].ink).replace(
        "font-family:inherit", "font-family:sans-serif"
    )
    source = base64.b64encode(inked.encode()).decode()
    return f'<img class="{kind}" alt="{escape(alt)}" src="data:image/svg+xml;base64,{source}">'


def findings(cautions: tuple[Caution, ...], most: int = 5) -> None:
    """Show findings, stops first; those past `most` are folded."""
    ordered = sorted(cautions, key=lambda caution: _RANK.index(caution.severity))
    st.html("".join(map(_finding, ordered[:most])))
    if rest := ordered[most:]:
        with st.expander(f"{len(rest)} more"):
            st.html("".join(map(_finding, rest)))


def finding(caution: Caution, settled: str = "") -> None:
    """Show one finding, and what was done about it."""
    st.html(_finding(caution, settled))


def _finding(caution: Caution, settled: str = "") -> str:
    word, glyph = SEVERITY[caution.severity]
    told = figures(caution, now.look())
    behind = f"<p>{escape(told)}</p>" if told else ""
    behind += f"<p><b>{escape(settled)}</b></p>" if settled else ""
    return (
        f'<div class="finding {caution.severity}"><span class="glyph" aria-hidden="true">{glyph}</span>'
        f'<div><p><span class="word">{word}.</span> {escape(caution.message)}</p><p>{escape(caution.action)}</p>'
        f"{behind}"
        f'<p class="small">Who: {escape(caution.party)}. Source: {escape(caution.source)}</p></div></div>'
    )
