"""The book on a phone: a figure corrected, a whole book mended, and nothing typed lost."""

import re

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page, expect

from e2e.conftest import SIZES

PAGES = ("/m/brackwater/book/", "/m/brackwater/book/F001/", "/m/brackwater/book-file/")


def wide(page: Page) -> int:
    """How far a page can be pushed sideways, in pixels."""
    return int(
        page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")
    )


def violations(page: Page) -> list[str]:
    return [each["id"] for each in Axe().run(page).response["violations"]]


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("size", SIZES)
def test_the_books_pages_can_be_read_by_everybody(browser, served, size, scheme):
    context = browser.new_context(
        viewport=SIZES[size], color_scheme=scheme, base_url=served.address
    )
    page = context.new_page()
    for address in PAGES:
        page.goto(address)
        assert violations(page) == [], address
        assert wide(page) <= 0, address
    context.close()


def test_a_figure_is_found_looked_at_and_put_in_the_book(phone: Page):
    phone.goto("/m/brackwater/book/")
    stand_ins = int(re.search(r"(\d+) of \d+", phone.locator("main").inner_text())[1])

    phone.get_by_label("Find in the book").fill("protrusion")
    phone.get_by_role("button", name="Find").click()
    phone.wait_for_url("**q=protrusion*")
    phone.get_by_role("link", name=re.compile("Liner protrusion")).click()
    phone.get_by_label("Page of the maker's book").fill("43")
    phone.get_by_role("button", name="Look first").click()
    expect(phone.get_by_text("Nothing is written yet.")).to_be_visible()
    assert violations(phone) == []
    assert wide(phone) <= 0
    phone.get_by_role("button", name="Put it in the book").first.click()

    expect(phone.get_by_text("From the maker's book, page 43.")).to_be_visible()
    phone.get_by_role("link", name="The whole book").click()
    expect(phone.get_by_text(f"{stand_ins - 1} of ")).to_be_visible()


def test_a_wrong_limit_is_told_at_its_field_and_stays_as_typed(phone: Page):
    phone.goto("/m/brackwater/book/F001/")
    phone.get_by_label("Limit of use").fill("max 5.7000 in")
    phone.get_by_role("button", name="Put it in the book").first.click()

    limit = phone.get_by_label("Limit of use")
    expect(limit).to_have_value("max 5.7000 in")
    expect(limit).to_have_accessible_description(re.compile("lies inside the new range"))
    assert violations(phone) == []


def test_a_fault_in_the_text_leads_to_its_line_and_is_mended_there(phone: Page):
    phone.goto("/m/brackwater/book-file/")
    text = phone.get_by_label("brackwater-40.yaml")
    whole = text.input_value()
    text.fill(whole.replace("limit: max 5.7600 in", "limitt: max 5.7600 in"))
    phone.get_by_role("button", name="Look first").click()
    line = phone.get_by_role("link", name=re.compile(r"^Line \d+"))
    line.wait_for()

    assert violations(phone) == []
    line.click()
    chosen = phone.evaluate(
        "(() => { const t = document.getElementById('text');"
        " return t.value.slice(t.selectionStart, t.selectionEnd); })()"
    )
    assert chosen.strip() == "limitt: max 5.7600 in"

    text.fill(whole.replace("limit: max 5.7600 in", "limit: max 5.7580 in"))
    phone.get_by_role("button", name="Look first").click()
    expect(phone.get_by_text("This is what it would change")).to_be_visible()
    assert violations(phone) == []
    assert wide(phone) <= 0
    phone.get_by_role("button", name="Take it").click()
    expect(phone.get_by_text(re.compile("Changed the book; .* changed with it"))).to_be_visible()


def test_the_book_is_saved_as_a_file_and_sent_back_as_one(phone: Page, tmp_path):
    phone.goto("/m/brackwater/book/")
    with phone.expect_download() as saving:
        phone.get_by_role("link", name="Save it as a file").click()
    file = tmp_path / saving.value.suggested_filename
    saving.value.save_as(file)
    assert file.name == "brackwater-40.yaml"
    file.write_text(file.read_text().replace("page: 41", "page: 42"))

    phone.goto("/m/brackwater/book-file/")
    phone.get_by_label("Or a file from this device").set_input_files(file)
    phone.get_by_role("button", name="Look first").click()
    phone.get_by_role("button", name="Take it").click()
    phone.locator(".said").wait_for()
    phone.goto("/m/brackwater/book/F001/")

    expect(phone.get_by_text("From the maker's book, page 42.")).to_be_visible()
