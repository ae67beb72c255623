"""A note from a page is kept at its place; what cannot be kept is not lost."""

import pytest

from shimstock.workshop.looking import see


@pytest.fixture
def machine(pages):
    return see("grey").row


@pytest.mark.parametrize(
    ("about", "page"),
    [
        ("joint:hood-joint", "/m/grey/joint/hood-joint/#notes"),
        ("piece:pump:left", "/m/grey/part/pump/?piece=left#notes"),
        ("machine", "/m/grey/#notes"),
    ],
)
def test_a_note_leads_back_to_the_page_of_its_place(machine, client, about, page):
    answer = client.post("/m/grey/note/", {"about": about, "text": "look here", "form": about})

    assert (answer.status_code, answer.url) == (302, page)
    (note,) = machine.notes_written.all()
    assert (note.about, note.text, note.by) == (about, "look here", "Ann")


def test_the_same_sending_twice_keeps_one_note(machine, client):
    for _ in range(2):
        client.post("/m/grey/note/", {"about": "machine", "text": "look here", "form": "k1"})

    assert machine.notes_written.count() == 1


@pytest.mark.parametrize(
    ("about", "text"), [("joint:gone", "four dowels"), ("joint:", "four dowels"), ("J1", "  ")]
)
def test_a_note_that_is_not_kept_is_shown_again_as_it_was_typed(machine, client, about, text):
    answer = client.post("/m/grey/note/", {"about": about, "text": text, "form": "k1"})

    assert answer.status_code in (404, 422)
    assert f">{text}</textarea>" in answer.content.decode()
    assert machine.notes_written.count() == 0


def test_the_form_is_marked_to_be_kept_out_of_reach_of_the_shed(machine, client):
    page = client.get("/m/grey/joint/J1/").content.decode()

    assert 'data-keep="note"' in page
    assert 'data-says="A note on hood to case (J1), The grey one"' in page


def test_a_note_is_not_asked_for_with_get(machine, client):
    assert client.get("/m/grey/note/").status_code == 405
