"""The door of the shed in a real browser: joining, signing in, letting in, being signed out."""

from __future__ import annotations

import json
import re
import time
from collections.abc import Iterator

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, BrowserContext, Page

from e2e.conftest import LAPTOP, PATIENCE, PATIENT, PHONE, Served, serving, shimstock
from e2e.test_every_page import RULES, TAPPED, WIDER

PASSWORD = "rust-and-paraffin"
LOOKS = {"phone, light": (PHONE, "light"), "laptop, dark": (LAPTOP, "dark")}


@pytest.fixture(scope="module")
def door(demo_shed, tmp_path_factory) -> Iterator[Served]:
    """A shed that is served to phones."""
    import shutil

    shed = shutil.copytree(demo_shed, tmp_path_factory.mktemp("door") / "shed")
    with serving(shed, "--lan") as served:
        until = time.monotonic() + PATIENCE
        while "Ctrl-C ends it" not in served.printed.read_text() and time.monotonic() < until:
            time.sleep(0.05)
        yield served


@pytest.fixture
def visitor(browser: Browser, door: Served) -> Iterator[BrowserContext]:
    """A phone that nobody is signed in on."""
    with a_device(browser, door) as context:
        yield context


def a_device(browser: Browser, door: Served, size=PHONE, scheme="light") -> BrowserContext:
    context = browser.new_context(viewport=size, color_scheme=scheme, base_url=door.address)
    context.set_default_timeout(PATIENT)
    return context


def a_code(door: Served) -> str:
    return json.loads(shimstock(door.shed, "let-in", "--json"))["code"]


def join(page: Page, code: str, name: str) -> None:
    page.goto(f"/join/{code}/")
    page.get_by_label("Your name").fill(name)
    page.get_by_label("Password").fill(PASSWORD)
    page.get_by_role("button", name="Join").click()
    page.get_by_role("link", name=name).wait_for()


def test_the_first_one_gets_in_by_what_the_terminal_shows(door, visitor):
    [code] = re.findall(r"/join/([A-Z0-9-]+)/", door.printed.read_text())
    page = visitor.new_page()
    join(page, code, "Ida")
    page.goto("/people/")

    assert page.get_by_text("You are Ida").is_visible()


def test_somebody_is_let_in_by_somebody_who_is_in(door, visitor, browser):
    mine = visitor.new_page()
    join(mine, a_code(door), "Ben")
    mine.get_by_role("link", name="Ben").click()
    mine.get_by_role("button", name="Make a code").click()
    code = mine.locator("strong.code").inner_text()
    with a_device(browser, door) as other:
        theirs = other.new_page()
        theirs.goto("/")
        theirs.get_by_label("Code").fill(code.lower())
        theirs.get_by_role("button", name="Join").click()
        theirs.wait_for_url(f"**/join/{code}/")
        join(theirs, code, "Zoë")

        mine.goto("/people/")
        mine.get_by_role("button", name="Sign out Zoë").click()
        mine.get_by_text("Zoë is signed out").wait_for()
        theirs.goto("/sums/")

        assert "/sign-in/" in theirs.url
        theirs.get_by_label("Your name").fill("zoë")
        theirs.get_by_label("Password").fill(PASSWORD)
        theirs.get_by_role("button", name="Sign in").click()
        theirs.wait_for_url("**/sums/")


def test_it_ends_with_the_browser_unless_it_is_ones_own_phone(door, browser):
    lasting = []
    for name, own in (("Ann", False), ("Max", True)):
        with a_device(browser, door) as context:
            page = context.new_page()
            page.goto(f"/join/{a_code(door)}/")
            page.get_by_label("Your name").fill(name)
            page.get_by_label("Password").fill(PASSWORD)
            page.get_by_label("This is my own phone").set_checked(own)
            page.get_by_role("button", name="Join").click()
            page.get_by_role("link", name=name).wait_for()
            [session] = [each for each in context.cookies() if each["name"] == "shed"]
            lasting.append(session["expires"] > 0)
            assert session["httpOnly"]
            assert session["sameSite"] == "Lax"

    assert lasting == [False, True]


@pytest.mark.parametrize("look", LOOKS)
def test_the_door_shuts_nobody_out_for_how_they_see_or_tap(look, door, browser):
    with a_device(browser, door, *LOOKS[look]) as context:
        page = context.new_page()
        code, name = a_code(door), f"Kim {look}"
        page.goto("/")
        is_whole(page)
        page.goto(f"/join/{code}/")
        is_whole(page)
        page.get_by_label("Your name").fill(name)
        page.get_by_label("Password").fill("short")
        page.get_by_role("button", name="Join").click()
        page.get_by_role("alert").wait_for()
        assert page.get_by_label("Your name").input_value() == name
        is_whole(page)
        join(page, code, name)
        page.goto("/people/")
        is_whole(page)
        page.get_by_text("Change my password").click()
        page.get_by_label("Old password").fill("not mine")
        page.get_by_label("New password", exact=True).fill("another-long-one")
        page.get_by_label("New password, once more").fill("another-long-one")
        page.get_by_role("button", name="Change it").click()
        page.get_by_role("alert").wait_for()
        is_whole(page)
        page.get_by_role("button", name="Make a code").click()
        page.locator(".square svg").wait_for()
        is_whole(page)
        page.goto(f"/join/{code}/")
        is_whole(page)


def is_whole(page: Page) -> None:
    page.wait_for_load_state("networkidle")
    found = Axe().run(page, options=RULES)
    assert found.violations_count == 0, found.generate_report()
    assert page.evaluate(WIDER) <= 0, "the page can be scrolled sideways"
    assert page.evaluate(TAPPED) == []
