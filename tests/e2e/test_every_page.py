"""Each page, at both sizes, light and dark: nobody is shut out, nothing is cut off or broken."""

from collections.abc import Iterator

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page

from e2e.conftest import LAPTOP, PHONE, Served, serving, watched
from e2e.pages import PAGES

LOOKS = {"phone, light": (PHONE, "light"), "laptop, dark": (LAPTOP, "dark")}
# WCAG 2.2 AA, and what its authors hold to be good practice beside it.
RULES = {
    "runOnly": {
        "type": "tag",
        "values": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
    }
}
SMALLEST = 44  # CSS pixels, of what one taps
FIRST, LATER = 200_000, 50_000  # bytes on the air: of a first page whole, of a page after it

TAPPED = """
() => [...document.querySelectorAll(
    'button, .button, summary, nav a, .lines a, .row-link, select, input:not([type=hidden])')]
  .filter(each => each.checkVisibility())
  .map(each => {
    const held = each.matches('input[type=checkbox], input[type=radio]') && each.closest('label');
    return [each, (held || each).getBoundingClientRect()];
  })
  .filter(([each, box]) => box.width && box.height && (box.height < 43.5 || box.width < 43.5))
  .filter(([each]) => !each.matches('.skip, .unseen'))
  .map(([each, box]) => `${each.outerHTML.slice(0, 90)} ${box.width} x ${box.height}`)
"""
WIDER = "() => document.documentElement.scrollWidth - document.documentElement.clientWidth"


@pytest.fixture(scope="module")
def server(demo_shed, tmp_path_factory) -> Iterator[Served]:
    import shutil

    shed = shutil.copytree(demo_shed, tmp_path_factory.mktemp("read") / "shed")
    with serving(shed) as served:
        yield served


@pytest.fixture(scope="module", params=LOOKS)
def looked_at(request, browser: Browser, server: Served) -> Iterator[Page]:
    size, scheme = LOOKS[request.param]
    context = browser.new_context(
        viewport=size, color_scheme=scheme, base_url=server.address, has_touch=size is PHONE
    )
    context.faults = watched(context)
    yield context.new_page()
    context.close()


@pytest.mark.parametrize("what", PAGES)
def test_a_page_shuts_nobody_out_and_is_whole(what, looked_at, server):
    from_outside = []
    looked_at.on("request", lambda asked: from_outside.append(asked.url))
    looked_at.context.faults.said.clear()

    answer = looked_at.goto(PAGES[what])
    looked_at.wait_for_load_state("networkidle")
    found = Axe().run(looked_at, options=RULES)

    assert answer.status == (404 if what.startswith("no such") else 200)
    assert found.violations_count == 0, found.generate_report()
    assert looked_at.evaluate(WIDER) <= 0, "the page can be scrolled sideways"
    assert looked_at.evaluate(TAPPED) == []
    assert [url for url in from_outside if not url.startswith((server.address, "blob:"))] == []
    refusal = "status of 404"  # the browser's own line, where nothing is to be found
    said = looked_at.context.faults.said
    assert [line for line in said if not (answer.status == 404 and refusal in line)] == []


# All others are weighed without a browser, in tests/faces/web/test_queries.py.
@pytest.mark.parametrize("what", ["machine", "reading of a bore", "book"])
def test_a_page_is_small_on_the_air(what, browser, server):
    context = browser.new_context(viewport=PHONE, base_url=server.address)
    page = context.new_page()
    wire = context.new_cdp_session(page)
    wire.send("Network.enable")
    came: list[float] = []
    wire.on("Network.loadingFinished", lambda done: came.append(done["encodedDataLength"]))

    page.goto(PAGES[what])
    page.wait_for_load_state("networkidle")
    first = sum(came)
    came.clear()
    page.reload()
    page.wait_for_load_state("networkidle")
    later = sum(came)
    context.close()

    assert 0 < first < FIRST
    assert 0 < later < LATER
