"""Two people at one joint: the second sees what was changed and decides."""

import re
from contextlib import ExitStack

import pytest
from playwright.sync_api import Page, expect

from e2e.conftest import PATIENT, PHONE, shimstock


@pytest.fixture
def two_phones(browser, served):
    with ExitStack() as open_ones:
        phones: list[Page] = []
        for _ in range(2):
            context = browser.new_context(viewport=PHONE, base_url=served.address)
            open_ones.callback(context.close)
            context.set_default_timeout(PATIENT)
            page = context.new_page()
            page.route("**/live/**", lambda route: route.abort())  # each stands with an old page
            phones.append(page)
        yield phones


def lay_ready(page: Page, bolts: str) -> None:
    box = page.get_by_label("Bolts counted in the bag")
    if not box.is_visible():
        page.get_by_text("Lay ready").first.click()
    box.fill(bolts)
    page.get_by_role("button", name="Laid ready").click()


def test_the_second_sees_what_the_first_wrote_and_decides(two_phones, served):
    ida, ben = two_phones
    for page in two_phones:
        page.goto("/m/brackwater/joint/J56/")
    lay_ready(ida, "4")
    expect(ida.locator("main")).to_contain_text("4 bolts counted")

    lay_ready(ben, "5")

    warned = ben.get_by_role("alert")
    expect(warned).to_contain_text("after you opened the page")
    expect(warned).to_contain_text(re.compile("Ida: .*4 bolts counted"))
    expect(ben.get_by_label("Bolts counted in the bag")).to_have_value("5")  # nothing typed is lost
    assert "5 bolts" not in shimstock(served.shed, "diary", "brackwater", "--last", "1")

    ben.get_by_role("button", name="Laid ready").click()

    expect(ben.locator("main")).to_contain_text("5 bolts counted")
    assert "5 bolts" in shimstock(served.shed, "diary", "brackwater", "--last", "1")


def test_two_at_different_joints_do_not_meet(two_phones, served):
    ida, ben = two_phones
    ida.goto("/m/brackwater/joint/J56/")
    ben.goto("/m/brackwater/joint/J04/")
    lay_ready(ida, "4")
    expect(ida.locator("main")).to_contain_text("4 bolts counted")

    ben.get_by_role("button", name="Open J04").click()

    expect(ben.locator("main")).to_contain_text("Opened Primary filter bowl")


def test_a_button_pressed_twice_acts_once(two_phones, served):
    page, _ = two_phones
    page.goto("/m/brackwater/joint/J56/")
    html = page.content()
    form = re.search(r'name="form" value="([^"]+)"', html)
    token = re.search(r'name="csrfmiddlewaretoken" value="([^"]+)"', html)
    seen = re.search(r'name="seen" value="([^"]+)"', html)
    assert form and token and seen
    fields = {
        "csrfmiddlewaretoken": token[1], "form": form[1], "seen": seen[1], "do": "cover",
    }  # fmt: skip
    before = shimstock(served.shed, "diary", "brackwater", "--last", "500").count("Covered")

    answers = [page.request.post("/m/brackwater/joint/J56/", form=fields) for _ in range(2)]

    assert [answer.status for answer in answers] == [200, 200]
    assert "in the book already" in answers[1].text()
    after = shimstock(served.shed, "diary", "brackwater", "--last", "500").count("Covered")
    assert after == before + 1
