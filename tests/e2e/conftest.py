"""A served shed and a real browser: each test has a shed of its own, laid out once and copied."""

import os
import re
import shutil
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect, sync_playwright

PHONE = {"width": 390, "height": 844}
LAPTOP = {"width": 1280, "height": 800}
SIZES = {"phone": PHONE, "laptop": LAPTOP}
QUIET = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-default-apps",
)
PATIENT = 30_000  # milliseconds that a browser waits: a busy machine is slow, not wrong
expect.set_options(timeout=PATIENT)
PATIENCE = 60  # seconds that a server may take to answer for the first time


def chromium() -> str:
    """Where the browser is; the tests cannot do without one."""
    for name in ("chromium", "chromium-browser", "google-chrome"):
        if found := shutil.which(name):
            return found
    pytest.exit("no Chromium found: `apt-get install chromium`, or run .ci/run", returncode=1)


def a_free_port() -> int:
    with socket.socket() as listening:
        listening.bind(("127.0.0.1", 0))
        return int(listening.getsockname()[1])


def shimstock(shed: Path, *typed: str) -> str:
    """What a command prints on a shed."""
    command = [sys.executable, "-m", "shimstock", "--shed", str(shed), "--who", "Ida", *typed]
    done = subprocess.run(command, capture_output=True, text=True, env=_environment())
    assert done.returncode == 0, done.stderr
    return done.stdout


def _environment() -> dict[str, str]:
    ours = {"DJANGO_SETTINGS_MODULE", "SHIMSTOCK_SHED", "SHIMSTOCK_SERVING"}
    kept = {name: value for name, value in os.environ.items() if name not in ours}
    return kept | {"SHIMSTOCK_COLD": "yes"}


@dataclass
class Served:
    """A shed whose pages are served."""

    shed: Path
    address: str
    printed: Path


@contextmanager
def serving(shed: Path, *options: str) -> Iterator[Served]:
    """Serve a shed as `shimstock serve` does, until the end of the block."""
    port = a_free_port()
    printed = shed / "served.txt"
    command = [sys.executable, "-m", "shimstock", "--shed", str(shed), "--who", "Ida"]
    with printed.open("w") as out:
        program = subprocess.Popen(
            [*command, "serve", "--port", str(port), *options],
            stdout=out, stderr=subprocess.STDOUT, env=_environment(),
        )  # fmt: skip
        try:
            _wait_for(program, printed)
            yield Served(shed, f"http://localhost:{port}", printed)
        finally:
            program.terminate()
            program.wait(20)


def _wait_for(program: subprocess.Popen[bytes], printed: Path) -> None:
    """Until the program says that the pages answer."""
    until = time.monotonic() + PATIENCE
    while time.monotonic() < until and program.poll() is None:
        if "The shed's pages" in printed.read_text():
            return
        time.sleep(0.05)
    raise AssertionError(f"the server does not answer: {printed.read_text()}")


@pytest.fixture(scope="session")
def demo_shed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo's shed, to be copied and never changed."""
    shed = tmp_path_factory.mktemp("demo") / "shed"
    shimstock(shed, "demo")
    return shed


@pytest.fixture
def shed(demo_shed: Path, tmp_path: Path) -> Path:
    """A demo shed of the test's own."""
    return Path(shutil.copytree(demo_shed, tmp_path / "shed"))


@pytest.fixture
def served(shed: Path) -> Iterator[Served]:
    """The test's own shed, served to this computer."""
    with serving(shed) as server:
        yield server


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium(), args=QUIET)
        yield browser
        browser.close()


@dataclass
class Faults:
    """What a browser's console complained about."""

    said: list[str]


def watched(context: BrowserContext) -> Faults:
    """Note every error of the pages of a context."""
    faults = Faults([])

    def look_after(page: Page) -> None:
        page.on("pageerror", lambda error: faults.said.append(f"{page.url}: {error}"))
        page.on("console", lambda line: line.type == "error" and faults.said.append(line.text))

    context.on("page", look_after)
    return faults


@pytest.fixture
def phone(browser: Browser, served: Served) -> Iterator[Page]:
    """A page on a phone; its console must stay free of errors."""
    context = browser.new_context(viewport=PHONE, has_touch=True, base_url=served.address)
    faults = watched(context)
    context.set_default_timeout(PATIENT)
    yield context.new_page()
    context.close()
    refused = re.compile(r"status of 4(22|04|03)")  # the browser's own line for a refusal
    assert [line for line in faults.said if not refused.search(line)] == []
