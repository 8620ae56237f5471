"""Pictures of the pages: python -m tests.browser.pictures FOLDER [CASE], or FILE.png for the answer page alone.

A folder gets every page at two widths on both grounds; a file gets the top of the answer page, as the README shows it.
"""

import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from playwright.sync_api import Browser

from econ.case.toml import read_case_file, write_case
from econ.store import cases
from econ.tables.place import data_root
from tests.app.screen import PAGES as NAMES
from tests.browser.dashboard import browser, served, settled

PAGES = ("", *NAMES[1:])
WIDTHS_PX = (1280, 390)
GROUNDS = ("light", "dark")
HEIGHT_PX = 900
MOST_PX = 12_000
MARGIN_PX = 24
README_PX = 1720
"""Height of the README's picture: verdict, cards and the running total."""


def pictures(folder: Path, name: str = "lower_level_cold") -> list[Path]:
    """Return the pictures taken of a demo case: <page>_<width>_<ground>.png."""
    folder.mkdir(parents=True, exist_ok=True)
    with shown(name) as (address, query, opened):
        return [
            picture(opened, f"{address}/{page}{query}", folder / f"{page or 'first_look'}_{width}_{ground}.png")
            for width in WIDTHS_PX
            for ground in GROUNDS
            for page in PAGES
        ]


def readme_picture(file: Path, name: str = "lower_level_cold") -> Path:
    """Return the picture of the top of the answer page."""
    with shown(name) as (address, query, opened), tempfile.TemporaryDirectory() as place:
        whole = picture(opened, f"{address}/answer{query}", Path(place) / "answer_1280_light.png", README_PX)
        file.write_bytes(whole.read_bytes())
    return file


@contextmanager
def shown(name: str) -> Iterator[tuple[str, str, Browser]]:
    """Serve a demo case and open a browser; give the address, the query that opens the case, and the browser."""
    with tempfile.TemporaryDirectory() as place:
        store = Path(place) / "cases.sqlite3"
        case = read_case_file(data_root() / "cases" / f"{name}.toml")
        made = cases.create(store, case.record.name or name, write_case(case))
        with served(store) as address, browser() as opened:
            yield address, f"?case={made.address}", opened


def picture(opened: Browser, address: str, file: Path, most_px: int = MOST_PX) -> Path:
    """Take one whole page, or its top; width and ground stand in the file's name."""
    _, width, ground = file.stem.rsplit("_", 2)
    page = opened.new_page(viewport={"width": int(width), "height": HEIGHT_PX})
    page.emulate_media(color_scheme="dark" if ground == "dark" else "light")
    page.goto(address)
    settled(page)
    page.wait_for_timeout(1500)
    settled(page)
    height = page.evaluate("document.querySelector('[data-testid=stMain]').scrollHeight")
    page.set_viewport_size({"width": int(width), "height": min(int(height) + MARGIN_PX, most_px)})
    page.wait_for_timeout(700)
    page.screenshot(path=file)
    page.close()
    return file


if __name__ == "__main__":
    wanted = Path(sys.argv[1])
    if wanted.suffix == ".png":
        print(readme_picture(wanted, *sys.argv[2:3]))
    else:
        print(*pictures(wanted, *sys.argv[2:3]), sep="\n")
