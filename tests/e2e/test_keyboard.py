"""A joint opened, made ready, closed and found dry with the keyboard alone."""

from playwright.sync_api import Locator, Page, expect

MOST_TABS = 120


def reach(page: Page, wanted: Locator) -> None:
    """Go on with the Tab key until a thing has the focus."""
    for _ in range(MOST_TABS):
        if wanted.evaluate("each => each === document.activeElement"):
            return
        page.keyboard.press("Tab")
    raise AssertionError(f"the keyboard does not come to {wanted}")


def press(page: Page, name: str) -> None:
    """Come to a button and press it."""
    reach(page, page.get_by_role("button", name=name, exact=True).first)
    page.keyboard.press("Enter")


def unfold(page: Page, act: str) -> None:
    """Open the form of something that may be done, where it is folded."""
    summary = page.locator(f"details#{act}:not([open]) > summary")
    if summary.count():
        reach(page, summary)
        page.keyboard.press("Enter")


def test_an_evening_with_the_keyboard_alone(phone):
    phone.goto("/m/brackwater/joint/J04/")
    press(phone, "Open J04")
    state = phone.locator(".joint-state")
    expect(state).to_contain_text("open")

    unfold(phone, "ready")
    reach(phone, phone.get_by_label("Both faces are clean"))
    phone.keyboard.press("Space")
    for new in phone.locator("main input[name=gasket]").all():
        reach(phone, new)
        phone.keyboard.press("Space")
    reach(phone, phone.get_by_label("Bolts counted in the bag"))
    phone.keyboard.type("1")
    press(phone, "Laid ready")

    expect(state).to_contain_text("gasket ready")
    unfold(phone, "close")
    reach(phone, phone.get_by_label("Torqued to the figure"))
    phone.keyboard.press("Space")
    press(phone, "Close J04")

    expect(state).to_contain_text("torqued")
    unfold(phone, "leak")
    reach(phone, phone.get_by_label("Seen standing full"))
    phone.keyboard.press("Space")
    press(phone, "Dry")
    expect(phone.locator(".joint-head")).to_contain_text("Chalk-dry")


def test_where_the_focus_is_can_be_seen(phone):
    phone.goto("/m/brackwater/joint/J04/")
    reach(phone, phone.get_by_role("button", name="Open J04"))

    drawn = phone.evaluate("getComputedStyle(document.activeElement).outlineWidth")
    assert float(drawn.removesuffix("px")) >= 2
