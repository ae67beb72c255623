"""The page of the way in: what can hurt, what to open in which order, and what else comes of it."""

import re
from dataclasses import replace

import pytest

from shimstock.workshop import acts
from shimstock.workshop.looking import see
from workshop.shed_book import MONDAY, TEXT

DANGER = """
cautions:
  springs: {name: Springs under load, dangers: [spring], do: Let it down., never: Never cut it.}
"""
BOOK = (
    TEXT.replace("    mark: J2\n", "    mark: J2\n    dangers: [spring]\n    hands: 2\n") + DANGER
)


@pytest.fixture
def machine(db, settings):
    settings.SERVING = replace(settings.SERVING, who="Ann")
    acts.add_machine(slug="grey", name="The grey one", book_text=BOOK, who="Ann", at=MONDAY)
    return see("grey").row


@pytest.fixture
def asking(machine, client):
    def asking(asked, status=200):
        answer = client.get(f"/m/grey/reach/{asked}")
        assert answer.status_code == status
        body = re.sub(r"(?s)<(style|script|svg)\b.*?</\1>", "", answer.content.decode())
        read = re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", body)).replace("&#x27;", "'")
        return answer.content.decode(), read

    return asking


def test_the_way_is_shown_in_order_after_what_can_hurt(asking):
    page, read = asking("?to=pump")

    order = re.findall(r'href="/m/grey/joint/([^/]+)/">J', page)
    assert order == ["hood-joint", "cover-joint"]
    assert "Opening 35 min, closing 65 min." in read
    assert read.index("Never cut it") < read.index("J1 hood to case")
    assert "2 people" in read
    assert "1 × side gasket, 0.015 in" in read


def test_one_may_ask_for_several_things_at_once(asking):
    page, read = asking("?to=pump&to=J3")

    assert "Way in to Pump and sump to case" in read
    assert "Opening 65 min" in read
    assert page.count('name="to" value=') == 2  # they stay while one more is asked for


def test_the_first_joint_of_the_way_is_one_tap_away(asking):
    page, _ = asking("?to=pump")

    assert re.search(r'class="button wide" href="/m/grey/joint/hood-joint/">Open the first', page)


def test_what_stands_open_is_not_opened_again(asking):
    acts.open_joint(machine="grey", joint="J1", who="Ann")
    _, read = asking("?to=pump")
    assert "Opening 25 min" in read
    assert "Open already: hood to case (J1)" in read

    acts.open_joint(machine="grey", joint="J2", who="Ann")
    _, read = asking("?to=pump")
    assert "Nothing to open: it is in reach" in read


def test_what_is_worth_doing_while_it_is_open_is_weighed_as_was_said(asking):
    _, read = asking("?to=J1")
    assert "side cover to case (J2)" in read
    assert "If an hour is worth 10 (stand-in), touching up paint 60 min (stand-in)" in read

    _, read = asking("?to=J1&rate=25&touch_up=0&seals=J2%3D8")
    assert "If an hour is worth 25, touching up paint 0 min, seals as typed" in read


@pytest.mark.parametrize(
    ("asked", "status", "says"),
    [
        ("?to=pumpe", 422, "'pumpe' is neither a joint nor a part of shed-engine"),
        ("?to=pump&rate=much", 422, "much is no amount"),
        ("?to=pump&rate=-1", 422, "-1 is no amount"),
        ("?to=J1&seals=J2%3Dmuch", 422, "J2=much is no price of a joint's seals. Would do: J54=16"),
        ("?to=J1&rate=0&touch_up=0", 422, "nothing to weigh"),
    ],
)
def test_what_is_not_understood_is_said_and_stays_in_the_form(asking, asked, status, says):
    page, read = asking(asked, status)

    assert says in read
    assert all(f'value="{value}"' in page for value in re.findall(r"(?:to|rate)=([^&]+)", asked))


def test_what_may_be_meant_is_offered_beside_what_is_known_already(asking):
    page, read = asking("?to=J3&to=side", 422)

    assert "Which of these?" in read
    assert 'href="?to=J3&amp;to=joint%3Acover-joint"' in page
    _, read = asking("?to=J3&to=joint%3Acover-joint")
    assert "Way in to sump to case and side cover to case" in read


def test_one_piece_of_several_may_be_asked_for_by_its_place(asking):
    _, read = asking("?to=piece:pump:left")

    assert "Way in to Pump, left" in read


def test_a_part_that_is_to_come_off_takes_more_than_one_to_be_seen(asking):
    text = BOOK.replace("reaches: [liner]", "reaches: [liner, cover]")
    acts.change_book(machine="grey", book_text=text, who="Ann")

    _, read = asking("?to=cover")
    assert "Opening 30 min" in read  # it is seen through the sump
    _, read = asking("?to=cover&off=on")
    assert "Opening 35 min" in read


def test_nothing_asked_for_is_a_form_to_ask_with(asking):
    page, read = asking("")

    assert "To what" in read
    assert 'class="wrong"' not in page


def test_the_page_asks_the_database_little(machine, client, django_assert_max_num_queries):
    with django_assert_max_num_queries(12):
        client.get("/m/grey/reach/?to=pump")


def test_to_see_and_to_take_off_are_two_ways_and_the_page_says_which(pages):
    seeing = pages.get("/m/grey/reach/", {"to": "pump"}).content.decode()
    taking = pages.get("/m/grey/reach/", {"to": "pump", "off": "1"}).content.decode()

    for html in (seeing, taking):
        assert 'href="?to=pump"' in html
        assert 'href="?to=pump&amp;off=1"' in html
    assert 'href="?to=pump" aria-current="true"' in seeing
    assert 'href="?to=pump&amp;off=1" aria-current="true"' in taking
