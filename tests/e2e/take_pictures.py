"""Takes the pictures of the README: walks the evening and a search on a phone, keeps what it sees.

Run: make pictures
"""

import shutil
import sys
import tempfile
from pathlib import Path

from PIL import Image
from playwright.sync_api import Page, sync_playwright

sys.path.insert(0, str(Path(__file__).parents[1]))

from e2e.conftest import PHONE, QUIET, chromium, serving, shimstock
from e2e.evening import evening

PICTURES = Path(__file__).parents[2] / "docs/pictures"
KEPT = {"shed", "machine", "joint", "reading-slip", "reading", "joint-refused", "joint-dry"}
COLOURS = 128  # as many as these pages need; a quarter of the bytes


def take(page: Page, name: str, top: str = "body") -> None:
    """Keep what the phone shows, from what `top` finds on the page."""
    file = PICTURES / f"phone-{name}.png"
    page.locator(top).evaluate("each => each.scrollIntoView({block: 'start'})")
    page.screenshot(path=file)
    with Image.open(file) as picture:
        picture.convert("P", palette=Image.Palette.ADAPTIVE, colors=COLOURS).save(
            file, optimize=True
        )


def search(page: Page) -> None:
    """Gears that crash: what it can be, why, and what to check."""
    page.goto("/m/lowmere/faults/newest/")
    take(page, "fault-check", "#next")
    page.locator(".causes summary").first.click()
    take(page, "fault-causes", "#causes")


def main() -> None:
    """Take them all."""
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        shed = Path(folder, "shed")
        shimstock(shed, "demo")
        told = ("--seen", "S19", "--not", "S18", "--keep", "--about", "crunches into gear")
        shimstock(shed, "fault", "lowmere", *told)
        browser = playwright.chromium.launch(executable_path=chromium(), args=QUIET)
        with serving(shed) as served:
            context = browser.new_context(
                viewport=PHONE, base_url=served.address, color_scheme="light"
            )
            page = context.new_page()
            evening(page, lambda name: take(page, name) if name in KEPT else None)
            search(page)
            context.close()
        browser.close()
        shutil.rmtree(shed)


if __name__ == "__main__":
    main()
