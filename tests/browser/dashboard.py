"""The dashboard in a process of its own, and a browser to look at it."""

import os
import shutil
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from playwright.sync_api import Browser, Page, sync_playwright

ROOT = Path(__file__).parents[2]
FLAGS = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)
IDLE = '[data-testid="stApp"][data-test-script-state="notRunning"]'
START_S = 60.0
QUIET_LOOKS = 4


def chromium() -> str:
    """Return the path of a Chromium; empty where there is none."""
    named = os.environ.get("ECON_CHROMIUM", "")
    found = [shutil.which(name) for name in ("chromium", "chromium-browser", "google-chrome")]
    return named or next((path for path in found if path), "")


@contextmanager
def served(store: Path, to: str = "localhost") -> Iterator[str]:
    """Serve the dashboard on a free port with its own saved cases, to this machine or to others; give its address."""
    server, address = started(store, to)
    try:
        yield address
    finally:
        server.terminate()
        server.wait(timeout=10)


def started(store: Path, to: str = "localhost") -> tuple["subprocess.Popen[bytes]", str]:
    """Start the dashboard and wait until it answers; give its process and its address."""
    port = _free_port()
    options = ["--server.port", str(port), "--server.headless", "true", "--server.address", to]
    command = [sys.executable, "-m", "streamlit", "run", "app.py", *options]
    environment = os.environ | {"ECON_STORE": str(store), "PYTHONPATH": str(ROOT)}
    server = subprocess.Popen(command, cwd=ROOT, env=environment, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    try:
        _wait_for(f"http://localhost:{port}/_stcore/health", server)
    except RuntimeError:
        server.kill()
        raise
    return server, f"http://localhost:{port}"


@contextmanager
def browser() -> Iterator[Browser]:
    """Open a headless Chromium that asks nobody anything on its own."""
    with sync_playwright() as driver:
        opened = driver.chromium.launch(executable_path=chromium(), args=list(FLAGS))
        try:
            yield opened
        finally:
            opened.close()


def settled(page: Page) -> None:
    """Wait until the page is drawn and nothing has run for a while; before the first run nothing runs either."""
    page.wait_for_selector("h1", timeout=60_000)
    quiet = 0
    while quiet < QUIET_LOOKS:
        page.wait_for_selector(IDLE, timeout=60_000)
        page.wait_for_timeout(150)
        quiet = quiet + 1 if page.query_selector(IDLE) else 0


def _free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("localhost", 0))
        return int(probe.getsockname()[1])


def _wait_for(address: str, server: "subprocess.Popen[bytes]") -> None:
    until = time.monotonic() + START_S
    while time.monotonic() < until:
        if server.poll() is not None:
            raise RuntimeError(f"The dashboard ended at once with {server.returncode}.")
        try:
            with urllib.request.urlopen(address, timeout=2):
                return
        except (urllib.error.URLError, ConnectionError):
            time.sleep(0.2)
    raise RuntimeError("The dashboard did not answer in time.")
