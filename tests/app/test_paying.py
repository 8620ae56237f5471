"""Paying and what comes later, on screen: borrowed money shows its true rate, letting its mark, years their dollars."""


def test_instalments_without_interest_show_their_true_rate(ready):
    ready.go("what_if").choose("w_finance_pays_for", "self_install").choose("w_finance_kind", "instalments")
    ready.type("w_finance_dearer_frac", "10%").type("w_finance_month_count", "18")
    html = ready.html
    assert "18 payments of $" in html
    assert "Without interest in name, it is 12." in html


def test_letting_is_off_and_says_that_it_is_no_tax_advice_once_on(ready):
    assert "limits on losses" not in ready.go("what_if").html
    ready.choose("w_letting_counted", "yes")
    assert "This is not tax advice" in ready.html


def test_answer_page_shows_cash_by_month_and_how_far_figures_reach(ready):
    labels = [each.label for each in ready.go("answer").app.expander]
    assert "How much cash, month by month, until it is cool?" in labels
    assert any(label.startswith("How far may each figure reach?") for label in labels)


def test_years_may_be_told_in_their_own_dollars(ready):
    assert "In today&#x27;s dollars, before discounting." in ready.go("figures").html
    ready.app.toggle(key="w_nominal").set_value(True).run()
    assert "the lifetime cost is the same" in ready.html


def test_where_the_money_would_be_sets_the_return_given_up(screen):
    ready = screen.click("ready_garage_studio_hot")
    before = ready.go("place").app.text_input(key="w_money_discount_rate_real_frac").placeholder
    ready.choose("w_money_otherwise", "card")
    assert ready.app.text_input(key="w_money_discount_rate_real_frac").placeholder != before
