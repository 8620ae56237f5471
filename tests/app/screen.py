"""One browser tab as tests see it."""

from dataclasses import dataclass
from pathlib import Path

from streamlit.testing.v1 import AppTest

ROOT = Path(__file__).parents[2]
APP = str(ROOT / "app.py")
PAGES = (
    "first_look",
    "room",
    "place",
    "equipment",
    "work",
    "answer",
    "plan",
    "quote",
    "what_if",
    "rooms",
    "figures",
    "report",
    "cases",
    "guide",
)
FIRST_DRAWS, FULL_DRAWS = 16, 32
"""Fewer than the product draws: what pages show of them is tested, not their number."""

STATION = "St Cloud Regional Arpt, MN"


@dataclass
class Screen:
    """What a person can do in one tab, and read."""

    app: AppTest

    def go(self, page):
        """Open a page."""
        self.app.switch_page(f"econ/ui/pages/{page}.py").run()
        assert not self.app.exception
        return self

    def type(self, key, text):
        """Type into a field and leave it."""
        self.app.text_input(key=key).set_value(text).run()
        assert not self.app.exception
        return self

    def click(self, key):
        """Press a button."""
        self.app.button(key=key).click().run()
        assert not self.app.exception
        return self

    def choose(self, key, option):
        """Tap an option."""
        self.app.button_group(key=key).set_value(option).run()
        assert not self.app.exception
        return self

    def typed(self, key):
        """Return what stands in a field."""
        return self.app.text_input(key=key).value

    @property
    def html(self):
        """All that is written on the page as HTML."""
        return "\n".join(str(part.proto.body) for part in self.app.get("html"))

    @property
    def strip(self):
        """The line of four ways."""
        return next(part.proto.body for part in self.app.get("html") if 'class="strip"' in str(part.proto.body))

    def reloaded(self):
        """Open the same address again, as after a reload, a crash or a restart."""
        again = AppTest.from_file(APP, default_timeout=60)
        for name, value in self.app.query_params.items():
            again.query_params[name] = value
        return Screen(again.run())
