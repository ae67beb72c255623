"""The shed, a machine's drawing, finding and a part, as a phone and a keyboard meet them."""

import re

import pytest
from playwright.sync_api import expect

from e2e.conftest import LAPTOP, PHONE

TALLEST_FOLD = 200  # CSS pixels, of a group that is folded


def test_a_group_is_unfolded_with_a_tap_and_its_rows_lead_in(phone):
    phone.goto("/m/brackwater/")
    group = phone.locator("details.group", has_text="Timing gears and camshaft")
    expect(group).not_to_have_attribute("open", "")
    assert group.bounding_box()["height"] < TALLEST_FOLD

    group.locator("summary").click()
    group.get_by_role("link", name="J36").click()

    phone.wait_for_url("**/m/brackwater/joint/*/")
    expect(phone.get_by_role("heading", level=1)).to_contain_text("J36")


def test_every_row_of_the_drawing_can_be_hit_with_a_glove(phone):
    phone.goto("/m/brackwater/")
    phone.evaluate("for (const each of document.querySelectorAll('details')) each.open = true")
    small = phone.evaluate(
        """() => [...document.querySelectorAll('.groups a, .groups summary, main .lines a')]
          .map(each => [each.textContent.trim(), each.getBoundingClientRect()])
          .filter(([text, box]) => box.height < 43.9 || box.width < 43.9)
          .map(([text, box]) => `${text}: ${box.width} x ${box.height}`)"""
    )

    assert small == []


def test_the_whole_drawing_lies_open_on_a_laptop(browser, served):
    context = browser.new_context(viewport=LAPTOP, base_url=served.address)
    page = context.new_page()
    page.goto("/m/brackwater/")

    groups = page.locator("details.group")
    expect(page.locator("details.group[open]")).to_have_count(groups.count())
    left = {round(group.bounding_box()["x"]) for group in groups.all()}
    context.close()
    assert len(left) == 3


def test_things_are_found_while_one_types(phone):
    phone.goto("/m/brackwater/")
    phone.get_by_role("searchbox").press_sequentially("J36", delay=30)

    found = phone.locator("#found").get_by_role("link", name=re.compile("J36"))
    expect(found).to_be_visible()
    assert phone.url.endswith("/m/brackwater/")
    found.click()
    phone.wait_for_url("**/joint/*/")


@pytest.mark.parametrize("where", ["/", "/m/brackwater/"])
def test_things_are_found_without_a_script(browser, served, where):
    context = browser.new_context(
        viewport=PHONE, base_url=served.address, java_script_enabled=False
    )
    page = context.new_page()
    page.goto(where)
    page.get_by_role("searchbox").fill("40-D-1187")
    page.get_by_role("button", name="Find").click()

    expect(page.locator("#found")).to_contain_text("Brackwater 40, engine 40-D-1187")
    context.close()


def test_a_piece_is_moved_and_a_move_that_is_not_allowed_says_why(phone):
    phone.goto("/m/brackwater/part/brake-drum/?piece=left")
    phone.get_by_label("It is", exact=True).select_option("built in")
    phone.get_by_label("Note that goes with it").fill("lip filed")
    phone.get_by_role("button", name="Write it down").click()

    expect(phone.get_by_role("alert")).to_contain_text("Not done")
    expect(phone.get_by_label("Note that goes with it")).to_have_value("lip filed")

    phone.get_by_label("It is", exact=True).select_option("off")
    phone.get_by_role("button", name="Write it down").click()

    expect(phone.locator(".piece-state")).to_contain_text("off")
    expect(phone.locator("main")).to_contain_text("lip filed")


def test_a_machine_is_booked_in_and_its_page_is_there(phone):
    phone.goto("/")
    phone.get_by_role("link", name="Book a machine in").click()
    phone.get_by_label("What you call it").fill("Hill farm 12")
    phone.get_by_label("A starter").select_option("two-cylinder-diesel")
    phone.get_by_role("button", name="Book it in").click()

    phone.wait_for_url("**/m/hill-farm-12/")
    expect(phone.get_by_role("heading", level=1)).to_have_text("Hill farm 12")
    expect(phone.locator("main")).to_contain_text("Nothing stands open.")
