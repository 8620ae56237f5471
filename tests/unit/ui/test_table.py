"""Small tables on screen: every cell there, the first column naming its row."""

import re

from econ.ui.look import table_html


def test_table_holds_every_cell_with_its_row_named_first():
    html = table_html({"": ["Cash", "Hours"], "Keep": ["$0", "0 hours"], "Hire": ["$5,450", "\N{EN DASH}"]})
    assert re.findall(r'<th scope="col">(.*?)</th>', html) == ["", "Keep", "Hire"]
    assert re.findall(r'<th scope="row">(.*?)</th>', html) == ["Cash", "Hours"]
    assert re.findall(r"<td[^>]*>(.*?)</td>", html) == ["$0", "$5,450", "0 hours", "\N{EN DASH}"]


def test_numbers_stand_to_the_right_and_words_to_the_left():
    html = table_html({"What": ["a"], "Much": ["$1,200"], "Less": ["\u2212$3"], "Who": ["electrician"]})
    assert html.count('class="number"') == 2
    assert "<td>electrician</td>" in html


def test_words_are_only_letters():
    assert "<script>" not in table_html({"<script>": ["<script>"], "b": ["<script>"]})
