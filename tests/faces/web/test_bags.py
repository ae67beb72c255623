"""The page of the bags, and the short addresses on their labels."""

import re
from urllib.parse import quote

import pytest

from shimstock.workshop import acts
from shimstock.workshop.labels import Labelled, code_of
from shimstock.workshop.looking import see


@pytest.fixture
def machine(pages):
    for number, about, holds, shelf in [
        ("12", "J2", "12 bolts", "B2"),
        ("3/a", "pump left", "its pipe", "B2"),
        ("7", "J1", "", ""),
    ]:
        acts.put_in_bag(
            machine="grey", number=number, about=about, holds=holds, shelf=shelf, who="Ann"
        )
    return see("grey").row


def bags_on(client, asked=""):
    page = client.get(f"/m/grey/bags/{asked}").content.decode()
    return re.findall(r'<span class="mark">([^<]*)</span>', page)


@pytest.mark.parametrize(
    ("asked", "found"),
    [
        ("", ["3/a", "12", "7"]),
        ("?q=12", ["12"]),
        ("?q=PIPE", ["3/a"]),
        ("?shelf=b2", ["3/a", "12"]),
        ("?q=99", []),
        ("?shelf=C1", []),
    ],
)
def test_bags_are_found_by_shelf_number_and_what_they_hold(machine, client, asked, found):
    assert bags_on(client, asked) == found


def test_a_bag_leads_to_what_it_is_of(machine, client):
    page = client.get("/m/grey/bags/").content.decode()

    assert 'href="/m/grey/joint/cover-joint/#here"' in page
    assert 'href="/m/grey/part/pump/?piece=left#here"' in page


def test_a_bag_is_filled_moved_and_emptied_from_the_page(machine, client):
    def send(**typed):
        return client.post("/m/grey/bag/", {"form": str(typed), "seen": see("grey").latest} | typed)

    assert send(do="put", number="20", about="J3", holds="20 bolts", shelf="C1").status_code == 302
    assert send(do="put", number="12", shelf="C1").url == "/m/grey/bags/"
    assert bags_on(client, "?shelf=C1") == ["12", "20"]

    send(do="empty", number="12")
    assert bags_on(client, "?shelf=C1") == ["20"]


def test_from_the_page_of_a_joint_one_comes_back_to_it(machine, client):
    place = "joint:sump-joint"
    answer = client.post("/m/grey/bag/", {"number": "20", "about": place, "then": place})

    assert answer.url == "/m/grey/joint/sump-joint/#bag"


def test_a_bag_that_is_refused_is_shown_again_as_it_was_typed(machine, client):
    typed = {"number": "12", "about": "J3", "holds": "20 bolts", "shelf": "C1"}
    answer = client.post("/m/grey/bag/", typed)
    page = answer.content.decode()

    assert answer.status_code == 422
    assert "Bag 12 is of side cover to case (J2): empty it first" in page
    assert all(f'value="{value}"' in page for value in typed.values())


@pytest.mark.parametrize(
    ("kind", "which", "page"),
    [
        ("joint", "cover-joint", "/m/grey/joint/cover-joint/"),
        ("part", "pump", "/m/grey/part/pump/"),
        ("bag", "12", "/m/grey/joint/cover-joint/#here"),
        ("bag", "3/a", "/m/grey/part/pump/?piece=left#here"),
        ("bag", "gone & away", "/m/grey/bags/?q=gone+%26+away"),
        ("shelf", "B2", "/m/grey/bags/?shelf=B2"),
    ],
)
def test_a_scanned_label_leads_to_what_it_is_stuck_to(machine, client, kind, which, page):
    code = code_of(Labelled("grey", kind, which))

    answer = client.get(f"/l/{quote(code, safe='')}/")

    assert (answer.status_code, answer.url) == (302, page)


@pytest.mark.parametrize("code", ["grey", "grey.x.12", "nobody.b.12"])
def test_a_label_that_is_none_of_ours_is_said_to_be_none(machine, client, code):
    answer = client.get(f"/l/{code}/")

    assert answer.status_code == 404
    assert "There is no" in answer.content.decode()


def test_the_page_asks_the_database_little(machine, client, django_assert_max_num_queries):
    with django_assert_max_num_queries(12):
        client.get("/m/grey/bags/")
