"""Photos from a phone: many at once, over a line that breaks, and without script."""

from __future__ import annotations

import re
from collections.abc import Iterator
from hashlib import sha256
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from PIL import Image
from playwright.sync_api import Browser, Page, Route, expect

from e2e.conftest import PHONE, Served, watched

JOINT = "/m/brackwater/joint/J56/"
RULES = {"runOnly": {"type": "tag", "values": ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa"]}}


@pytest.fixture
def pictures(tmp_path: Path) -> list[Path]:
    """Three pictures of which each needs several pieces, the last lying on its side."""
    made = []
    for number in range(3):
        noise = Image.effect_noise((1500, 1000), 120).convert("RGB")
        exif = Image.Exif()
        exif[0x0112] = 6 if number == 2 else 1
        path = tmp_path / f"IMG_{number}.jpg"
        noise.save(path, quality=95, exif=exif.tobytes())
        assert path.stat().st_size > 1_100_000
        made.append(path)
    return made


@pytest.fixture
def bad_line(browser: Browser, served: Served) -> Iterator[Page]:
    """A phone whose line will break: of that its console may complain, and of nothing else."""
    context = browser.new_context(viewport=PHONE, has_touch=True, base_url=served.address)
    faults = watched(context)
    yield context.new_page()
    context.close()
    assert [line for line in faults.said if "net::ERR_" not in line] == []


def originals(served: Served) -> set[str]:
    """The digests of the pictures that lie in the shed."""
    kept = (served.shed / "photos").glob("??/*.jpg")
    names = [path for path in kept if len(path.stem) == 64]
    assert all(sha256(path.read_bytes()).hexdigest() == path.stem for path in names)
    return {path.stem for path in names}


def digests(pictures: list[Path]) -> set[str]:
    return {sha256(path.read_bytes()).hexdigest() for path in pictures}


def choose(page: Page, pictures: list[Path]) -> None:
    page.get_by_role("radio", name="before").check()
    page.get_by_label("Choose, many at once").set_input_files(pictures)


def pieces_of(page: Page) -> list[int]:
    """Where the pieces begin that the page sends from now on, one after the other."""
    sent: list[int] = []
    page.on(
        "request",
        lambda asked: asked.method == "PATCH" and sent.append(int(asked.headers["upload-offset"])),
    )
    return sent


def test_several_at_once_each_with_its_progress(phone: Page, served: Served, pictures):
    phone.goto(JOINT)
    choose(phone, pictures)
    before = phone.locator("#photos-shown img").count()
    phone.get_by_role("button", name="Keep 3 photos").click()

    lines = phone.locator(".photos-arriving li")
    expect(lines).to_have_count(3)
    for number in range(3):
        expect(lines.nth(number)).to_contain_text("kept: Photo of")
        bar = lines.nth(number).get_by_role("progressbar")
        assert bar.evaluate("bar => bar.value === bar.max")
    expect(phone.locator("#photos-shown img")).to_have_count(before + 3)
    assert digests(pictures) <= originals(served)
    sides = phone.locator("#photos-shown img").evaluate_all(
        "all => all.map(img => img.getAttribute('width'))"
    )
    assert sides.count("1000") == 1, "the one on its side is told upright"


def test_a_broken_line_costs_one_piece(bad_line: Page, served: Served, pictures):
    bad_line.goto(JOINT)
    sent = pieces_of(bad_line)
    broken: list[str] = []

    def break_the_line(route: Route) -> None:
        if route.request.headers["upload-offset"] == "500000" and len(broken) < 2:
            broken.append(route.request.url)
            return route.abort("connectionreset")
        return route.fallback()

    bad_line.route(re.compile("/arriving/."), lambda route: (
        break_the_line(route) if route.request.method == "PATCH" else route.fallback()
    ))  # fmt: skip
    choose(bad_line, pictures[:1])
    bad_line.get_by_role("button", name="Keep 1 photo").click()

    expect(bad_line.locator(".photos-said")).to_contain_text("it goes on by itself")
    expect(bad_line.locator(".photos-said")).to_contain_text("kept: Photo of", timeout=20_000)
    assert len(broken) == 2
    assert sent.count(0) == 1, "what had arrived is not sent again"
    assert digests(pictures[:1]) <= originals(served)


def test_out_of_reach_and_back(bad_line: Page, served: Served, pictures):
    bad_line.goto(JOINT)
    choose(bad_line, pictures[:1])
    bad_line.context.set_offline(True)
    bad_line.get_by_role("button", name="Keep 1 photo").click()
    expect(bad_line.locator(".photos-said")).to_contain_text("out of reach")
    bad_line.context.set_offline(False)

    expect(bad_line.locator(".photos-said")).to_contain_text("kept: Photo of", timeout=20_000)
    assert digests(pictures[:1]) <= originals(served)


def test_a_closed_page_goes_on_with_the_same_picture(bad_line: Page, served: Served, pictures):
    bad_line.goto(JOINT)
    bad_line.route(re.compile("/arriving/."), lambda route: (
        route.abort() if route.request.headers.get("upload-offset") == "500000"
        else route.fallback()
    ))  # fmt: skip
    choose(bad_line, pictures[:1])
    bad_line.locator("#photos-note").fill("at the dowel")
    bad_line.get_by_role("button", name="Keep 1 photo").click()
    expect(bad_line.locator(".photos-said")).to_contain_text("it goes on by itself")
    bad_line.close(run_before_unload=False)

    again = bad_line.context.new_page()
    again.goto(JOINT)
    sent = pieces_of(again)
    left = again.locator("[data-left]")
    expect(left).to_contain_text("Not all of it arrived: IMG_0.jpg. Choose the same pictures again")
    expect(again.locator("#photos-note")).to_have_value("at the dowel")
    choose(again, pictures[:1])
    again.get_by_role("button", name="Keep 1 photo").click()

    expect(again.locator(".photos-said")).to_contain_text("kept: Photo of")
    expect(left).to_be_hidden()
    assert sent and min(sent) == 500_000
    assert digests(pictures[:1]) <= originals(served)


def test_what_is_no_picture_is_told_and_the_others_are_kept(
    phone: Page, served, pictures, tmp_path
):
    text = tmp_path / "IMG_9.jpg"
    text.write_text("the pump, before")
    phone.goto(JOINT)
    choose(phone, [text, pictures[0]])
    phone.get_by_role("button", name="Keep 2 photos").click()

    lines = phone.locator(".photos-said")
    expect(lines.nth(0)).to_contain_text("not kept: It is no picture")
    expect(lines.nth(1)).to_contain_text("kept: Photo of")
    assert digests(pictures[:1]) <= originals(served)


def test_without_script(browser: Browser, served: Served, pictures):
    context = browser.new_context(
        viewport=PHONE, java_script_enabled=False, base_url=served.address
    )
    page = context.new_page()
    page.goto(JOINT)
    choose(page, pictures)
    page.get_by_role("button", name="Keep the photos").click()

    expect(page.get_by_text(re.compile("^Photo of .*, before"))).to_have_count(3)
    assert digests(pictures) <= originals(served)
    page.locator("#photos-shown a").first.click()
    expect(page.get_by_role("heading", level=1)).to_contain_text("before")
    context.close()


def test_the_pages_shut_nobody_out(phone: Page, pictures):
    phone.goto(JOINT)
    choose(phone, pictures)
    phone.get_by_role("button", name="Keep 3 photos").click()
    expect(phone.get_by_text("kept: Photo of")).to_have_count(3)
    pages = [JOINT, "/m/brackwater/photos/"]
    phone.goto(pages[1])
    pages.append(str(phone.locator(".photos-shown a").first.get_attribute("href")))

    for address in pages:
        phone.goto(address)
        found = Axe().run(phone, options=RULES)
        assert found.violations_count == 0, found.generate_report()
        wider = "document.documentElement.scrollWidth - document.documentElement.clientWidth"
        assert phone.evaluate(wider) <= 0
