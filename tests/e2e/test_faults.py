"""A search for a fault on a phone, in gloves: from the machine to the next check, and back."""

import re

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import expect

from e2e.conftest import PHONE, shimstock
from e2e.test_every_page import RULES, WIDER

GLOVES = 56  # CSS pixels: what one presses in gloves is at least as high
SECONDS = 8_000  # in milliseconds: a page asks every three what is new
PRESSED = "() => [...document.querySelectorAll('.gloves button, .gloves .button, .gloves .choice, \
.gloves summary')].filter(each => each.checkVisibility()) \
.map(each => [each.textContent.trim(), each.getBoundingClientRect().height])"


def shuts_nobody_out(page):
    found = Axe().run(page, options=RULES)
    assert found.violations_count == 0, found.generate_report()
    assert page.evaluate(WIDER) <= 0


def fits_gloves(page):
    assert [each for each in page.evaluate(PRESSED) if each[1] < GLOVES - 0.5] == []


@pytest.fixture
def whole(served):
    """A machine that nobody has taken apart: most checks can be done on it."""
    shimstock(served.shed, "machine", "add", "whole", "--book", "two-cylinder-diesel")


def seen_first(page, words, sign, finds):
    """From the machine's page to the first ranking, by one sign found by its words."""
    page.goto("/m/whole/")
    page.get_by_role("link", name="Find a fault").click()
    page.get_by_label("What is wrong, in your words").fill(words)
    page.get_by_role("button", name="Begin").click()
    expect(page.get_by_role("heading", level=1)).to_have_text(words.capitalize())
    page.get_by_role("searchbox").fill(finds)
    page.get_by_role("button", name="Find", exact=True).click()
    group = page.get_by_role("group", name=sign)
    group.get_by_role("radio", name="seen", exact=True).check()
    page.get_by_role("button", name="Write down what I saw").click()
    expect(page.locator(".said")).to_contain_text(f"({sign}): seen")


def white_smoke(page):
    seen_first(page, "smokes white, will not catch", "S02", "white smoke")


def test_white_smoke_to_the_next_check_and_back_with_its_result(phone, whole):
    white_smoke(phone)
    fits_gloves(phone)
    shuts_nobody_out(phone)
    check = phone.locator("#check")
    first = check.get_by_role("heading", level=3).inner_text()
    expect(check.locator(".minutes")).to_contain_text("min")

    check.get_by_role("button", name=re.compile("not this|Not seen")).first.tap()

    expect(phone.locator(".said")).to_contain_text(re.compile("cleared|not seen"))
    assert check.get_by_role("heading", level=3).inner_text() != first
    expect(phone.locator(".told-line", has_text=re.compile("cleared|not seen"))).to_have_count(1)


def test_a_question_is_answered_by_one_tap(phone, whole):
    seen_first(phone, "crunches into gear", "S20", "gears noisy")
    asked = phone.locator("#question")
    name = asked.get_by_role("heading", level=3).inner_text()
    asked.get_by_role("button", name="Not seen").tap()

    expect(phone.locator(".said")).to_contain_text("not seen")
    expect(phone.locator("#told ~ * .told-line", has_text=name.split()[0])).to_contain_text(
        "not seen"
    )


def test_a_check_with_a_figure_is_read_and_counts_by_itself(phone):
    phone.goto("/m/lowmere/faults/")
    phone.get_by_label("What is wrong, in your words").fill("oil light stays on")
    phone.get_by_role("button", name="Begin").click()
    phone.locator(".said").wait_for()
    phone.goto("/m/lowmere/reading/oil-pressure-rated/?search=2")
    phone.get_by_role("textbox", name=re.compile("As read|Reading 1")).fill("9 psi")
    phone.get_by_role("button", name="Into the book").tap()
    expect(phone.locator(".said")).to_be_visible()  # the answer, not yet the page asked from
    phone.get_by_role("link", name="Back to the search for the fault").tap()

    phone.wait_for_url("**/m/lowmere/faults/2/")
    phone.get_by_text("From readings in the book").tap()
    expect(phone.locator("#read")).to_contain_text("9 psi")


def test_why_a_cause_is_unfolded_by_a_tap_and_leads_to_the_whole_working(phone, whole):
    white_smoke(phone)
    cause = phone.locator(".causes details").first
    cause.locator("summary").tap()
    expect(cause).to_contain_text("speaks")
    shuts_nobody_out(phone)
    cause.get_by_role("link", name="The whole working").tap()

    expect(phone.get_by_role("heading", name="What comes of it")).to_be_visible()


def test_what_another_says_shows_up_on_the_open_page(phone, browser, served):
    phone.goto("/m/brackwater/faults/1/")
    expect(phone.locator(".told-line")).to_have_count(2)
    first = phone.locator("#check").get_by_role("heading", level=3).inner_text()
    other = browser.new_context(viewport=PHONE, base_url=served.address).new_page()
    other.goto("/m/brackwater/faults/1/")
    other.locator("#check").get_by_role("button", name="It is not this").first.click()
    expect(other.locator(".said")).to_contain_text("cleared")
    other.context.close()

    expect(phone.locator("#live")).to_contain_text("cleared", timeout=SECONDS)
    expect(phone.locator("#check")).to_contain_text(first)  # nothing changes under the thumb
    expect(phone.locator("#check + .moved-on")).to_contain_text("cleared")
    phone.locator(".moved-on").get_by_role("button", name="Show the page as it is now").tap()
    expect(phone.locator(".told-line")).to_have_count(3)


@pytest.fixture
def without_script(browser, served):
    context = browser.new_context(
        viewport=PHONE, base_url=served.address, java_script_enabled=False
    )
    yield context.new_page()
    context.close()


def test_the_whole_search_works_without_script(without_script, whole):
    page = without_script
    white_smoke(page)
    page.get_by_text("Other checks").click()
    other = page.locator("details[open] li a").first
    other.click()
    expect(page.get_by_role("heading", name="The check you chose")).to_be_visible()
    page.locator("summary", has_text="Found and put right").click()
    page.get_by_label("What it was").select_option("cranks-slowly")
    page.get_by_label("How it was put right").fill("batteries charged")
    page.get_by_role("button", name="Found and put right").click()
    expect(page.locator(".said")).to_contain_text("batteries charged")
    page.get_by_role("button", name="Take it up again").click()

    expect(page.locator(".said")).to_contain_text("Took up search")
