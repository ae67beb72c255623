"""Paper from a phone: looked at, kept, and the whole workshop carried to another folder."""

from __future__ import annotations

import zipfile

import pytest
from axe_playwright_python.sync_playwright import Axe

from e2e.conftest import serving, shimstock


def test_a_job_card_is_one_tap_away_from_the_papers(phone):
    phone.goto("/m/brackwater/papers/")
    link = phone.get_by_role("link", name="Brake housing to main case, right (J56)")
    answer = phone.request.get(link.get_attribute("href"))

    assert answer.headers["content-type"] == "application/pdf"
    assert answer.body().startswith(b"%PDF")


def test_letter_is_kept_for_all_papers_of_the_page(phone):
    phone.goto("/m/brackwater/papers/")
    phone.get_by_role("link", name="Letter", exact=True).click()
    phone.wait_for_url("**paper=letter*")

    assert "paper=letter" in phone.get_by_role("link", name="Keep the PDF").get_attribute("href")
    assert phone.get_by_role("link", name="Letter", exact=True).get_attribute("aria-current")


def test_labels_are_chosen_wrongly_and_then_rightly_with_nothing_typed_again(phone):
    phone.goto("/m/brackwater/labels/?joint=timing-cover")
    phone.get_by_label("Where phones find the shed").fill("ftp://nowhere")
    phone.get_by_label("Start at label").fill("7")
    phone.get_by_role("button", name="Make the labels").click()

    assert "is no address" in phone.get_by_role("alert").inner_text()
    assert Axe().run(phone).violations_count == 0
    assert phone.get_by_label("Start at label").input_value() == "7"
    phone.get_by_label("Open joints").check()
    phone.get_by_label("Where phones find the shed").fill("http://192.168.1.20:8140")
    form = phone.evaluate("() => String(new URLSearchParams(new FormData(document.forms[0])))")
    answer = phone.request.get(f"/m/brackwater/labels.pdf?{form}")
    assert answer.headers["content-type"] == "application/pdf"


@pytest.mark.parametrize("script", [True, False])
def test_the_workshop_is_kept_as_a_file_and_taken_back(script, browser, served, tmp_path):
    context = browser.new_context(java_script_enabled=script, base_url=served.address)
    page = context.new_page()
    page.goto("/archive/")
    with page.expect_download() as coming:
        page.get_by_role("button", name="Make the file and keep it").click()
    coming.value.save_as(tmp_path / "w.zip")
    context.close()

    assert zipfile.ZipFile(tmp_path / "w.zip").testzip() is None
    shimstock(tmp_path / "new", "restore", str(tmp_path / "w.zip"))
    with serving(tmp_path / "new") as again:
        page = browser.new_page(base_url=again.address)
        page.goto("/m/brackwater/")
        assert "Brackwater 40" in page.inner_text("h1")
        page.close()
