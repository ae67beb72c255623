"""The shed's page: every machine, its next thing, what stands open and bare."""

from django.test.utils import CaptureQueriesContext

from shimstock.workshop import acts
from workshop.shed_book import MONDAY, TEXT


def test_each_machine_with_how_it_stands_and_what_comes_next(pages):
    acts.add_machine(slug="red", name="The red one", book_text=TEXT, who="Ann", at=MONDAY)
    acts.open_joint(machine="grey", joint="J1", who="Ben")

    html = pages.get("/").content.decode()

    assert html.index("The grey one") < html.index("The red one")
    assert "1 joint open." in html
    assert "Nothing stands open." in html
    assert 'href="/m/grey/joint/hood-joint/"' in html
    assert "Open and not covered" in html


def test_an_empty_shed_says_what_to_do_first(client, settings, db):
    from dataclasses import replace

    settings.SERVING = replace(settings.SERVING, who="Ann")
    html = client.get("/").content.decode()

    assert "Book the first one in" in html
    assert 'href="/new/"' in html


def test_fifty_machines_cost_no_more_questions_than_one(pages):
    from django.db import connection

    with CaptureQueriesContext(connection) as few:
        pages.get("/")
    for number in range(12):
        text = TEXT + f"# the copy of machine {number}\n"
        acts.add_machine(slug=f"m{number}", name=f"M {number}", book_text=text, who="Ann")
    with CaptureQueriesContext(connection) as many:
        pages.get("/")

    assert len(many) == len(few) <= 12


def test_a_machine_is_booked_in_from_the_page(pages):
    from shimstock.workshop.looking import see

    sent = {
        "name": "Old red", "slug": "red", "starter": "any-tractor", "where1": "engine",
        "serial1": "A-7", "form": "a-form",
    }  # fmt: skip
    answer = pages.post("/new/", sent)

    assert answer.headers["Location"] == "/m/red/"
    assert see("red").row.serials == {"engine": "A-7"}
    assert see("red").row.diary.get().who == "Ann"


def test_a_faulty_book_is_told_with_its_lines_and_nothing_typed_is_lost(pages):
    text = TEXT.replace("seals: oil", "seals: soup", 1)
    answer = pages.post("/new/", {"name": "Old red", "slug": "red", "text": text, "form": "x"})
    html = answer.content.decode()

    assert answer.status_code == 422
    assert "soup" in html and "line" in html
    assert "Old red" in html and "book: shed-engine" in html


def test_a_name_that_is_taken_is_refused(pages):
    answer = pages.post("/new/", {"name": "Grey", "slug": "grey", "starter": "any-tractor"})

    assert answer.status_code == 422
    assert "is here already" in answer.content.decode()
