"""Taking a reading on a phone and with the keyboard alone."""

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import expect

from e2e.conftest import LAPTOP
from e2e.test_every_page import RULES, WIDER

LINER = "/m/brackwater/reading/liner-bore/?piece=1&stage=as%20finished"
SIX = ["5.7703", "5.7702", "5.7701", "5.7702", "5.7701", "5.7700"]
PATIENCE = 20_000  # ms


def shuts_nobody_out(page):
    found = Axe().run(page, options=RULES)
    assert found.violations_count == 0, found.generate_report()
    assert page.evaluate(WIDER) <= 0


def test_a_whole_reading_with_the_keyboard_alone(phone):
    phone.goto("/m/brackwater/reading/liner-bore/?piece=1")
    for _ in range(60):  # to the stage as finished
        phone.keyboard.press("Tab")
        if phone.evaluate("document.activeElement.textContent.trim()") == "As finished":
            break
    phone.keyboard.press("Enter")
    expect(phone.locator("[aria-current=true]").last).to_have_text("As finished")
    for _ in range(60):
        phone.keyboard.press("Tab")
        if phone.evaluate("document.activeElement.name") == "value":
            break
    for value in SIX:
        phone.keyboard.type(value)
        phone.keyboard.press("Enter")

    said = phone.locator(".said")
    expect(said).to_contain_text(f"as finished, {' '.join(SIX)}: good", timeout=PATIENCE)
    shuts_nobody_out(phone)


def test_what_is_typed_is_understood_as_one_types(phone):
    phone.goto(LINER)
    boxes = phone.locator("input[name=value]")
    boxes.nth(0).press_sequentially("5 3/4 in")
    expect(phone.locator("#took-0")).to_have_text("5.75 in = 146.05 mm", timeout=PATIENCE)

    boxes.nth(1).press_sequentially("wide")
    expect(phone.locator("#took-1")).to_contain_text("has no number", timeout=PATIENCE)
    shuts_nobody_out(phone)


def test_a_slip_is_put_right_at_one_touch(phone):
    phone.goto(LINER)
    boxes = phone.locator("input[name=value]")
    for box, value in zip(boxes.all(), ["7.7703", *SIX[1:]], strict=True):
        box.fill(value)
    offer = phone.get_by_role("button", name="5.7703 in for 7.7703")
    expect(offer).to_be_visible(timeout=PATIENCE)
    shuts_nobody_out(phone)
    offer.tap()
    expect(boxes.first).to_have_value("5.7703 in")
    expect(offer).to_be_hidden(timeout=PATIENCE)
    phone.get_by_role("button", name="Into the book").tap()

    expect(phone.locator(".said")).to_contain_text("5.7700: good", timeout=PATIENCE)


def test_what_is_meant_is_sent_as_meant(phone):
    phone.goto(LINER)
    for box, value in zip(
        phone.locator("input[name=value]").all(), ["7.7703", *SIX[1:]], strict=True
    ):
        box.fill(value)
    phone.get_by_role("button", name="Into the book").tap()
    expect(phone.locator(".wrong[role=alert]")).to_contain_text("a slip", timeout=PATIENCE)
    phone.get_by_role("button", name="7.7703 is meant").tap()

    expect(phone.locator(".said")).to_contain_text("7.7703", timeout=PATIENCE)
    expect(phone.locator(".earlier")).to_contain_text("meant so")


def test_keys_that_a_number_pad_lacks(phone):
    phone.goto(LINER)
    box = phone.locator("input[name=value]").first
    box.tap()
    box.press_sequentially("5")
    phone.get_by_role("button", name="space").tap()
    box.press_sequentially("3")
    phone.get_by_role("button", name="/", exact=True).tap()
    box.press_sequentially("4")
    phone.get_by_role("button", name="in", exact=True).tap()
    expect(box).to_have_value("5 3/4 in")
    phone.get_by_role("button", name="abc").tap()
    assert box.evaluate("box => box.inputMode") == "text"
    phone.get_by_role("button", name="not read").tap()
    expect(phone.locator("input[name=value]").nth(1)).to_be_focused()


def test_a_reading_works_without_script(browser, served):
    context = browser.new_context(java_script_enabled=False, base_url=served.address)
    context.set_default_timeout(PATIENCE)
    page = context.new_page()
    page.goto(LINER)
    for box, value in zip(page.locator("input[name=value]").all(), SIX, strict=True):
        box.fill(value)
    page.get_by_role("button", name="Into the book").click()

    assert "5.7700: good" in page.locator(".said").inner_text()
    context.close()


@pytest.mark.parametrize("open_first", [True, False])
def test_how_it_was_reached_lies_open_where_there_is_room(open_first, browser, served):
    size = LAPTOP if open_first else {"width": 390, "height": 844}
    context = browser.new_context(viewport=size, base_url=served.address)
    context.set_default_timeout(PATIENCE)
    page = context.new_page()
    page.goto("/m/brackwater/reading/liner-bore/?piece=1")

    assert page.locator(".working").first.is_visible() is open_first
    context.close()
