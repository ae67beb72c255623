"""The machine's page: where one was, what comes next, and the drawing to tap."""

import re

import pytest

from shimstock.faces.web.drawn import drawn
from shimstock.workshop import acts
from shimstock.workshop.looking import see


def test_every_joint_and_part_is_on_the_drawing_once_as_a_link(pages):
    html = pages.get("/m/grey/").content.decode()
    book = see("grey").book
    drawing = html[html.index('class="groups"') : html.index('class="legend"')]

    for kind, things in (("joint", book.joints), ("part", book.parts)):
        for key in things:
            assert drawing.count(f'href="/m/grey/{kind}/{key}/"') == 1, key


def test_a_group_with_something_open_and_bare_is_unfolded_and_told_in_words(pages):
    acts.open_joint(machine="grey", joint="J1", who="Ben")

    html = pages.get("/m/grey/").content.decode()

    assert '<details class="group" open>' in html
    assert re.search(r"hood to case, open, not covered", html)
    acts.cover_joint(machine="grey", joint="J1", who="Ben")
    assert '<details class="group">' in pages.get("/m/grey/").content.decode()


def test_where_was_i_says_what_was_done_last_what_stands_open_and_what_comes_next(pages):
    acts.open_joint(machine="grey", joint="J1", who="Ben")

    html = pages.get("/m/grey/").content.decode()

    assert "Today Ben: Opened hood to case (J1)." in html
    assert "hood to case (J1) stands open since 0 days." in html
    assert "Next: Cover hood to case (J1)." in html


def test_the_next_thing_leads_to_where_it_is_done(pages):
    acts.open_joint(machine="grey", joint="J1", who="Ben")

    html = pages.get("/m/grey/").content.decode()

    assert re.search(r'<a href="/m/grey/joint/hood-joint/">Cover hood to case', html)


def test_the_legend_names_each_state_that_is_drawn(grey):
    acts.open_joint(machine="grey", joint="J1", who="Ben")

    words = [str(word) for word in drawn(see("grey").now).legend]

    assert words == ["undisturbed", "open", "fitted"]


@pytest.mark.parametrize(
    ("typed", "address"),
    [
        ("J2", "/m/grey/joint/cover-joint/"),
        ("side cover", "/m/grey/joint/cover-joint/"),
        ("pump", "/m/grey/part/pump/"),
        ("liner bore", "/m/grey/reading/bore/"),
    ],
)
def test_a_thing_is_found_by_mark_name_or_key(pages, typed, address):
    html = pages.get("/m/grey/find/", {"q": typed}).content.decode()

    assert f'href="{address}"' in html


def test_what_is_found_as_one_types_is_only_the_lines(pages):
    answer = pages.get("/m/grey/find/", {"q": "pump"}, headers={"HX-Request": "true"})

    assert "<html" not in answer.content.decode()
    assert 'href="/m/grey/part/pump/"' in answer.content.decode()


def test_what_is_not_there_is_said_with_what_was_typed(pages):
    html = pages.get("/m/grey/find/", {"q": "<magneto>"}).content.decode()

    assert "“&lt;magneto&gt;”" in html


def test_a_machine_that_is_not_there_is_said_so(pages):
    answer = pages.get("/m/gray/")

    assert answer.status_code == 404
    assert "Did you mean grey?" in answer.content.decode()
