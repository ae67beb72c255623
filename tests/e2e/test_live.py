"""What another person does shows up on an open page, without a reload."""

import re

from playwright.sync_api import expect

from e2e.conftest import shimstock

SECONDS = 8_000  # in milliseconds: a page asks every three


def test_an_act_of_another_shows_up_on_an_open_page(phone, served):
    phone.goto("/m/brackwater/joint/J56/")
    phone.evaluate("window.same_page = true")
    shimstock(served.shed, "cover", "brackwater", "J56", "--who", "Ben")

    said = phone.locator("#live")
    expect(said).to_contain_text(re.compile(r"Ben, \d\d:\d\d: Covered .*J56"), timeout=SECONDS)
    expect(phone.locator("#page")).to_contain_text("parked open")
    assert phone.evaluate("window.same_page") is True


def test_a_page_on_which_something_is_typed_is_left_alone(phone, served):
    phone.goto("/m/brackwater/reading/fan-rock/")
    box = phone.locator("main form input[inputmode]").first
    box.fill("0.36")
    shimstock(served.shed, "cover", "brackwater", "J56", "--who", "Ben")

    expect(phone.locator("#live")).to_contain_text("Covered", timeout=SECONDS)
    expect(box).to_have_value("0.36")
    expect(phone.get_by_role("button", name="Show the page as it is now")).to_be_visible()


def test_a_page_with_nothing_new_is_left_alone(phone, served):
    phone.goto("/m/brackwater/")
    asked = []
    phone.on("request", lambda request: asked.append(request.url))
    phone.wait_for_timeout(4000)

    assert [url for url in asked if "/live/" in url] != []
    assert [url for url in asked if "/m/brackwater" in url and "/live/" not in url] == []
    expect(phone.locator("#live")).to_be_empty()


def test_what_is_typed_while_the_page_comes_anew_is_not_lost(phone, served):
    """A slow network: somebody begins to type after the page was asked for."""
    address = "/m/brackwater/reading/fan-rock/"
    phone.goto(address)
    held = []
    phone.route(f"**{address}", lambda route: held.append(route))
    shimstock(served.shed, "cover", "brackwater", "J56", "--who", "Ben")
    box = phone.locator("main form input[inputmode]").first
    expect(phone.locator("#live")).to_contain_text("Covered", timeout=SECONDS)
    while not held:
        phone.wait_for_timeout(50)
    box.fill("0.36")
    held[0].continue_()

    expect(phone.get_by_role("button", name="Show the page as it is now")).to_be_visible()
    expect(box).to_have_value("0.36")


def test_what_the_reader_opened_stays_open(phone, served):
    phone.goto("/m/brackwater/joint/J04/")
    phone.get_by_text("Put into a bag").click()
    phone.get_by_text("Put into a bag").blur()
    shimstock(served.shed, "cover", "brackwater", "J56", "--who", "Ben")

    expect(phone.locator("#live")).to_contain_text("Covered", timeout=SECONDS)
    expect(phone.get_by_role("textbox", name="Shelf")).to_be_visible()
