"""The quote page: a total is enough, lines are sorted by a person, and what is private never shows to a client."""

from econ.case.toml import write_case
from econ.store import cases
from econ.store.connection import store_path
from tests.demo import demo_case

LINES = "A new unit 2,350\nElectrical 780\nNobody knows 2,320\nTotal 5,450"


def opened(screen, name):
    cases.create(store_path(), name, write_case(demo_case(name)))
    return screen.reloaded().go("quote")


def test_the_page_begins_with_the_total_alone(screen):
    page = opened(screen, "garage_studio_hot")
    assert [field.key for field in page.app.text_input if field.key.startswith("w_quote")] == ["w_quote_total_usd"]
    page.type("w_quote_total_usd", "4800")
    assert "between the kit and the quote" in page.html.lower()
    assert "4,800" in "".join(str(chart.proto) for chart in page.app.get("plotly_chart"))


def test_an_invented_quote_fills_the_page(screen):
    page = opened(screen, "garage_studio_hot").click("sample_itemised")
    assert "The lines come to the total, $5,450.00." in page.html
    page.click("guess_offer")
    assert "inside the range that our own items give" in page.html
    for row in ("Unit and line set", "Overhead and profit"):
        assert row in page.html


def test_lines_survive_a_reload_and_are_sorted_by_hand(screen):
    page = opened(screen, "sunroom_with_quote")
    page.app.text_area(key="w_offer_lines").set_value(LINES).run()
    page.app.selectbox(key="w_offer_kind_2").set_value("labour").run()
    assert not page.app.exception
    again = page.reloaded().go("quote")
    assert again.app.text_area(key="w_offer_lines").value == LINES
    assert again.app.selectbox(key="w_offer_kind_2").value == "labour"
    assert again.app.selectbox(key="w_offer_kind_0").value is None, "a guess waits to be taken"
    assert "lines not sorted yet" in again.html


def test_a_bar_opens_to_its_line_items(screen):
    page = opened(screen, "sunroom_with_quote")
    assert page.html.count('<details class="bar">') >= 10
    assert "Our own items for it" in page.html


def test_another_quote_is_set_on_equal_scope(screen):
    page = opened(screen, "lower_level_cold").click("quote_more")
    page.type("w_quotes_0_total_usd", "4550").choose("w_quotes_0_equipment", "yes")
    assert "On equal scope" in page.html
    page.click("quote_away_0")
    assert "w_quotes_0_total_usd" not in {field.key for field in page.app.text_input}


def test_a_job_that_is_no_kit_job_says_so_and_compares_no_kit(screen):
    page = opened(screen, "top_floor_flat")
    assert "one for a kit" in page.html
    assert "the price of the kit leave out" not in " ".join(head.value for head in page.app.subheader)


def test_the_client_sees_no_input_and_nothing_private(screen):
    page = opened(screen, "sunroom_with_quote")
    page.type("w_private_labour_usd_per_h", "67.13").type("w_private_notes", "planted words")
    page.type("w_letterhead_business", "Bright & Cool <b>")
    assert "67.13" in str(page.typed("w_private_labour_usd_per_h"))
    page.click("client_on")
    assert not page.app.text_input
    assert not page.app.selectbox
    assert [button.key for button in page.app.button] == ["client_off"]
    assert "Bright &amp; Cool &lt;b&gt;" in page.html
    assert "This is not a contract." in page.html
    shown = page.html + "".join(str(chart.proto) for chart in page.app.get("plotly_chart"))
    assert "67.13" not in shown
    assert "planted words" not in shown
    page.click("client_off")
    assert page.typed("w_private_labour_usd_per_h") == "67.13"


def test_a_file_is_saved_without_private_figures_unless_they_are_asked_for(screen, monkeypatch):
    made = {}
    monkeypatch.setattr("streamlit.download_button", lambda label, data, **_: made.update({label: data()}))
    opened(screen, "sunroom_with_quote").go("cases")
    assert "private" not in made["Save as a file"]
    assert "[private]\nlabour_usd_per_h = 62" in made["Save with my own figures, for myself alone"]


def test_the_other_quote_can_be_the_one_that_counts(screen):
    page = opened(screen, "sunroom_with_quote").click("quote_count_0")
    assert page.typed("w_quote_total_usd") == "4550"
    assert page.typed("w_quotes_0_total_usd") == "5450"
    assert page.app.text_area(key="w_quotes_0_lines").value.startswith("Unit and line set")


def test_markup_in_a_quote_is_text(screen):
    page = opened(screen, "garage_studio_hot").type("w_quote_total_usd", "4800")
    hostile = "<script>alert(1)</script> 200\n![x](y) **bold** $5 300\n=SUM(A1) 1e309\n\x00 Unit 400"
    page.app.text_area(key="w_offer_lines").set_value(hostile).run()
    assert not page.app.exception
    assert "<script>alert" not in page.html
    assert "&lt;script&gt;alert(1)&lt;/script&gt;" in page.html
    labels = [box.label for box in page.app.selectbox if str(box.key).startswith("w_offer_kind")]
    assert "What is it for: \\!\\[x\\]\\(y\\) \\*\\*bold\\*\\* \\$5" in labels


def test_the_work_page_leads_to_the_quote_explained(screen):
    page = opened(screen, "sunroom_with_quote").go("work").click("to_quote")
    assert page.app.title[0].value.startswith("What does the extra money buy")
