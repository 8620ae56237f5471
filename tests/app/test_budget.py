"""A slider over budgets tells what each gives without changing the case; a button plans with it."""

import pytest

BUDGET = "w_building_budget_usd"


@pytest.fixture
def sampled(screen):
    """Return a tab with the sample building open on the page and a small budget set."""
    screen.go("rooms").click("sample_building")
    screen.type(BUDGET, "4000")
    return screen


def slider(tab):
    return next(each for each in tab.app.select_slider if each.key.startswith("w_try_budget"))


def test_the_page_tells_what_the_budget_gives_and_what_a_list_by_payback_would_do(sampled):
    assert "What another budget would give" in [each.value for each in sampled.app.subheader]
    assert "With $4,000 this year, 11 of 24 rooms are done this year" in sampled.html
    assert "A further $1,000 this year is worth" in sampled.html
    assert "A list ranked by payback" in sampled.html
    assert "This year 11 rooms for" in sampled.html


def test_the_slider_tries_a_budget_and_the_button_plans_with_it(sampled):
    slider(sampled).set_value(2).run()
    assert not sampled.app.exception
    assert "With $1,000 this year, 2 of 24 rooms are done this year" in sampled.html
    assert "of $4,000 does" in sampled.html
    sampled.click("plan_with")
    assert sampled.typed(BUDGET) == "1000"
    assert "of $1,000 does 2 of 24 rooms" in sampled.html
    assert sampled.reloaded().go("rooms").typed(BUDGET) == "1000"
