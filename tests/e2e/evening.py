"""One evening at the machine with a phone: a filter bowl opened, seen to, closed and found dry.

Walked by a test, and by the command that takes the pictures of the README.
"""

from collections.abc import Callable

from playwright.sync_api import Page, expect

Picture = Callable[[str], None]


def no_picture(name: str) -> None:
    """Take none."""


def evening(page: Page, picture: Picture = no_picture) -> None:
    """Walk one evening from the shed's page to a joint that is chalk-dry."""
    page.goto("/")
    picture("shed")
    page.get_by_role("link", name="Brackwater 40", exact=True).click()
    expect(page.get_by_role("heading", level=1)).to_contain_text("Brackwater 40")
    picture("machine")
    _find_the_bowl(page)
    picture("joint")
    _open_it(page)
    _bag_it(page)
    _read(page, picture)
    _close_it(page, picture)


def _find_the_bowl(page: Page) -> None:
    page.get_by_role("searchbox").fill("filter bowl")
    page.keyboard.press("Enter")
    page.get_by_role("link", name="Primary filter bowl to its head").first.click()
    expect(page.get_by_role("heading", level=1)).to_contain_text("J04")
    expect(
        page.locator(".caution strong").first
    ).to_be_visible()  # what can hurt, before the spanner


def _open_it(page: Page) -> None:
    page.get_by_role("button", name="Open J04").click()
    expect(page.get_by_text("Opened Primary filter bowl").first).to_be_visible()
    page.get_by_label("Write a note").fill("Water and rust in the bowl, half a cup.")
    page.get_by_role("button", name="Keep the note").click()
    expect(page.get_by_text("half a cup").first).to_be_visible()


def _bag_it(page: Page) -> None:
    page.get_by_text("Put into a bag").click()
    page.get_by_role("textbox", name="Bag", exact=True).fill("12")
    page.get_by_role("textbox", name="Shelf").fill("B 3")
    page.get_by_role("button", name="Into the bag").click()
    expect(page.get_by_text("Bag 12").first).to_be_visible()


def _read(page: Page, picture: Picture) -> None:
    """On to the bore gauge: six numbers, one of them slipped."""
    joint = page.url
    page.goto("/m/brackwater/reading/liner-bore/?piece=2")
    boxes = page.locator("main form input[inputmode]")
    typed = ["5.7541", "5.7536", "5.9731", "5.7549", "5.7540", "5.7528"]
    for number, value in enumerate(typed):
        boxes.nth(number).fill(value)
    picture("reading-typed")
    page.get_by_role("button", name="Into the book").click()
    expect(page.get_by_role("alert")).to_contain_text("5.9731")
    picture("reading-slip")
    boxes.nth(2).fill("5.7531")
    page.get_by_role("button", name="Into the book").click()
    expect(page.locator(".said")).to_contain_text("serviceable")
    picture("reading")
    page.goto(joint)


def _close_it(page: Page, picture: Picture) -> None:
    _unfold(page, "close")
    page.get_by_role("button", name="Close J04").click()
    expect(page.get_by_role("alert")).to_contain_text("4 things still stand against it")
    picture("joint-refused")
    expect(page.locator("#close")).to_contain_text("fibre washer of the fuel filter bolt")
    _unfold(page, "ready")
    page.get_by_label("Both faces are clean").check()
    for new in page.locator("main input[name=gasket]").all():
        new.check()
    page.get_by_label("Bolts counted in the bag").fill("1")
    page.get_by_role("button", name="Laid ready").click()
    expect(page.locator(".said")).to_contain_text("Made ready")
    _unfold(page, "close")
    page.get_by_label("Torqued to the figure").check()
    page.get_by_role("button", name="Close J04").click()
    expect(page.locator(".joint-state")).to_contain_text("torqued")
    _unfold(page, "leak")
    page.get_by_label("Seen standing full").check()  # the head is away: it cannot have run
    page.get_by_role("button", name="Dry", exact=True).click()
    expect(page.locator(".joint-head")).to_contain_text("Chalk-dry")
    picture("joint-dry")


def _unfold(page: Page, act: str) -> None:
    """Open the form of something that may be done; the likeliest lies open already."""
    summary = page.locator(f"details#{act}:not([open]) > summary")
    if summary.count():
        summary.click()
