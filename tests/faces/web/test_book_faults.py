"""What a book says of faults, on its page: causes and signs, and which of them are stand-ins."""

import re

import pytest

from shimstock.workshop import acts
from workshop.shed_book import MONDAY, TEXT

FAULTS = """\
causes:
  ring-gone: {name: Ring broken, mark: K1, part: liner, prior: rare,
    check: {do: look down the bore, minutes: 12 min}}
  gasket-gone: {name: Gasket gone, mark: K2, part: cover, prior: 0.2, page: our own eleven,
    check: {do: dust it with chalk, minutes: 25 min}}
signs:
  smokes: {name: Smokes blue, mark: N1, said: blue haze, where: case, leak: 0.02,
    causes: {ring-gone: strong}}
  weeps: {name: Weeps, mark: N2, page: 88, causes: {gasket-gone: 0.7}}
"""


@pytest.fixture
def book_page(pages):
    acts.add_machine(slug="red", name="The red one", book_text=TEXT + FAULTS, who="Ann", at=MONDAY)

    def page(query=""):
        html = pages.get(f"/m/red/book/{query}").content.decode()
        return re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", html))

    return page


def test_each_cause_has_its_prior_and_its_check_and_says_whether_it_is_a_stand_in(book_page):
    shown = book_page()

    assert "K1 Ring broken rare, 0.01; check 12 min: look down the bore stand-in" in shown
    assert "K2 Gasket gone 0.2; check 25 min: dust it with chalk our own eleven" in shown


def test_each_sign_has_its_weights_and_says_whether_it_is_a_stand_in(book_page):
    shown = book_page()

    assert "N1 Smokes blue “blue haze”; Ring broken, 0.8; anything else, 0.02 stand-in" in shown
    assert "N2 Weeps Gasket gone, 0.7; anything else, 0.02 page 88" in shown


def test_they_are_found_by_words_and_by_what_is_a_stand_in_still(book_page):
    assert "Smokes blue" in book_page("?q=haze") and "Weeps" not in book_page("?q=haze")
    assert "Ring broken" in book_page("?q=K1")
    only = book_page("?only=stand-in")
    assert "K1 Ring broken" in only and "K2 Gasket gone" not in only
    assert "N1 Smokes" in only and "N2 Weeps" not in only


def test_a_book_without_faults_says_nothing_of_them(pages):
    assert "What can be wrong" not in pages.get("/m/grey/book/").content.decode()
