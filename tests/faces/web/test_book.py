"""The book's page: what is a stand-in still, and every figure to be found by what it is called."""

import re

import pytest

from shimstock.workshop import acts
from shimstock.workshop.models import Machine


def texts(answer):
    return re.sub(r"<[^>]+>", " ", answer.content.decode())


def figures_listed(answer):
    return re.findall(r'href="/m/\w+/book/([\w-]+)/"', answer.content.decode())


def test_it_says_how_many_figures_are_stand_ins_still(pages):
    assert "5 of 5" in texts(pages.get("/m/grey/book/"))

    acts.correct_figure(machine="grey", figure="bore", typed={"page": "41"}, who="Ann")

    answer = pages.get("/m/grey/book/")
    assert "4 of 5" in texts(answer)
    assert "page 41" in texts(answer)


@pytest.mark.parametrize(
    ("asked", "found"),
    [
        ("q=F3", ["end-float"]),
        ("q=liner", ["bore", "taper"]),
        ("q=LINER+taper", ["taper"]),
        ("q=5.7600", ["bore"]),
        ("q=idle", ["idle"]),
        ("q=nothing+of+the+kind", []),
    ],
)
def test_figures_are_found_by_what_they_are_called(pages, asked, found):
    assert figures_listed(pages.get(f"/m/grey/book/?{asked}")) == found


def test_only_the_stand_ins_are_shown(pages):
    acts.correct_figure(machine="grey", figure="bore", typed={"page": "41"}, who="Ann")

    assert "bore" not in figures_listed(pages.get("/m/grey/book/?only=stand-in"))


def test_torques_and_gaskets_lead_to_their_joints(pages):
    answer = pages.get("/m/grey/book/?q=J2")

    assert "12 bolts 3/8-16 UNC, 24 lbf.ft" in texts(answer)
    assert "side gasket, 0.015 in" in texts(answer)
    assert "/m/grey/joint/cover-joint/" in answer.content.decode()


def test_it_asks_little_of_the_database(pages, django_assert_max_num_queries):
    pages.get("/m/grey/book/")
    with django_assert_max_num_queries(8):
        pages.get("/m/grey/book/")


def test_the_book_comes_out_as_it_went_in(pages):
    answer = pages.get("/m/grey/book.yaml")

    row = Machine.objects.get(slug="grey")
    assert answer.content.decode() == row.book_text
    assert answer["Content-Type"].startswith("text/yaml")
    assert answer["Content-Disposition"] == 'attachment; filename="shed-engine.yaml"'
