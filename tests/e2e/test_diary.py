"""The diary on a phone: read back, searched, and an act undone from it."""

import re

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page, expect

from e2e.conftest import SIZES, shimstock


def violations(page: Page) -> list[str]:
    return [each["id"] for each in Axe().run(page).response["violations"]]


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("size", SIZES)
def test_the_diary_can_be_read_by_everybody(browser, served, size, scheme):
    context = browser.new_context(
        viewport=SIZES[size], color_scheme=scheme, base_url=served.address
    )
    page = context.new_page()
    for address in ("/m/brackwater/diary/", "/m/brackwater/diary/12/undo/"):
        page.goto(address)
        for summary in page.get_by_text("Changed").all()[:3]:
            summary.click()
        assert violations(page) == [], address
        assert page.evaluate("document.documentElement.scrollWidth") <= SIZES[size]["width"]
    context.close()


def test_an_act_is_found_undone_and_struck(phone: Page, shed):
    shimstock(shed, "leak", "brackwater", "J36", "weeping")
    phone.goto("/m/brackwater/diary/")
    newest = phone.locator("ol.entries > li").first
    expect(newest).to_contain_text("weeping")

    newest.get_by_role("link", name=re.compile("^Undo")).click()
    expect(phone.get_by_role("heading", name="What would be put back")).to_be_visible()
    phone.get_by_role("button", name="Undo it").click()

    undoing, undone = (phone.locator("ol.entries > li").nth(at) for at in (0, 1))
    expect(undoing).to_contain_text("Undid")
    expect(undone.locator("s")).to_contain_text("weeping")
    expect(undone).to_contain_text("undone by")


def test_older_entries_are_a_page_further_on(phone: Page):
    phone.goto("/m/brackwater/diary/")
    last = phone.locator("ol.entries > li .mark").last.inner_text()
    phone.get_by_role("link", name="Older").click()
    phone.wait_for_url("**/diary/?*")

    assert int(phone.locator("ol.entries > li .mark").first.inner_text()) < int(last)


def test_the_diary_is_narrowed_to_one_person_and_one_place(phone: Page):
    phone.goto("/m/brackwater/diary/")
    phone.get_by_label("Who").select_option("Tom")
    phone.get_by_label("What or where").fill("J52")
    phone.get_by_role("button", name="Find").click()
    phone.wait_for_url("**J52*")

    lines = phone.locator("ol.entries > li")
    assert lines.count() > 0
    assert [text for text in lines.all_inner_texts() if "Tom" not in text] == []
    assert [text for text in lines.all_inner_texts() if "J52" not in text] == []
