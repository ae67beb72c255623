"""An evening at a joint, on a phone: opened with its way, covered, laid ready, closed; by two."""

import re

from playwright.sync_api import expect

from e2e.conftest import PHONE

J47 = "/m/brackwater/joint/J47/"


def stands(page):
    return page.locator(".joint-state")


def test_a_joint_is_opened_with_all_that_stands_before_it(phone):
    phone.goto(J47)
    expect(phone.get_by_role("heading", name="Springs under load")).to_be_visible()

    phone.get_by_role("button", name="Open J47").click()
    expect(phone.get_by_role("alert")).to_contain_text("open Seat and mudguards")

    phone.get_by_label("Bolts out").fill("7")
    phone.get_by_label("Open all of them on the way").check()
    phone.get_by_role("button", name="Open J47").click()

    expect(stands(phone)).to_contain_text("open")
    expect(stands(phone)).to_contain_text("not covered")
    phone.get_by_role("button", name="J47 is covered").click()
    expect(stands(phone)).to_contain_text("parked open")


def test_a_joint_with_all_for_it_there_is_closed_and_found_dry(phone):
    phone.goto("/m/brackwater/joint/J17/")
    phone.get_by_label("Torqued to the figure").check()
    phone.get_by_role("button", name="Close J17").click()
    expect(stands(phone)).to_contain_text("torqued")

    phone.get_by_role("button", name="Dry", exact=True).click()
    expect(phone.get_by_role("alert")).to_contain_text("cannot be told by a run")
    phone.get_by_label("Seen standing full").check()
    phone.get_by_role("button", name="Dry", exact=True).click()

    expect(phone.locator(".joint-head")).to_contain_text("Chalk-dry")
    expect(phone.get_by_role("status").first).to_be_attached()


def test_a_reason_against_closing_leads_to_where_it_is_settled(phone):
    phone.goto("/m/brackwater/joint/J56/")
    phone.locator("#close summary").click()

    settle = phone.locator(".against li", has_text="Brake shoes with linings, right: is on order")
    settle.get_by_role("link").click()

    phone.wait_for_url(re.compile(r"/part/brake-shoes[^/]*/\?piece=right"))


def test_what_another_did_meanwhile_is_shown_and_one_decides(phone, browser, served):
    phone.goto("/m/brackwater/joint/J56/")
    other = browser.new_context(viewport=PHONE, base_url=served.address).new_page()
    other.goto("/m/brackwater/joint/J56/")
    other.get_by_text("Lay ready", exact=True).click()
    other.get_by_label("Bolts counted in the bag").fill("5")
    other.get_by_role("button", name="Laid ready").click()
    expect(other.locator(".said")).to_contain_text("5 bolts counted")

    phone.get_by_role("button", name="J56 is covered").click()

    expect(phone.get_by_role("alert")).to_contain_text("5 bolts counted")
    phone.get_by_role("button", name="J56 is covered").click()
    expect(phone.locator(".said")).to_contain_text("Covered")
    other.context.close()


def test_a_bag_is_found_again_by_its_number(phone):
    phone.goto("/m/brackwater/joint/J36/")
    phone.get_by_text("Put into a bag").click()
    phone.get_by_label("Bag", exact=True).fill("12")
    phone.get_by_label("Shelf", exact=True).fill("B2")
    phone.get_by_label("What is in it").fill("12 bolts")
    phone.get_by_role("button", name="Into the bag").click()
    expect(phone.locator("#bag")).to_contain_text("Bag 12, shelf B2: 12 bolts")

    phone.goto("/m/brackwater/bags/")
    phone.get_by_label("Find a bag").fill("12")
    phone.get_by_role("button", name="Find").click()
    phone.get_by_role("link", name="Timing gear side cover").click()

    phone.wait_for_url("**/joint/timing-cover/#here")


def test_a_joint_is_opened_and_covered_without_script(browser, served):
    context = browser.new_context(
        viewport=PHONE, base_url=served.address, java_script_enabled=False
    )
    page = context.new_page()
    page.goto("/m/brackwater/joint/J06/")
    page.get_by_role("button", name="Open J06").click()
    page.get_by_role("button", name="J06 is covered").click()

    expect(stands(page)).to_contain_text("parked open")
    context.close()
