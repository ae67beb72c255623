"""The shed's page: every machine, its next thing, what stands open and bare."""

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test.utils import CaptureQueriesContext

from shimstock.faces.web.found import MOST_FOUND
from shimstock.faces.web.pages.shed import MANY
from shimstock.workshop import acts
from shimstock.workshop.looking import see
from workshop.shed_book import MONDAY, TEXT


def test_each_machine_with_how_it_stands_and_what_comes_next(pages):
    acts.add_machine(slug="red", name="The red one", book_text=TEXT, who="Ann", at=MONDAY)
    acts.open_joint(machine="grey", joint="J1", who="Ben")

    html = pages.get("/").content.decode()

    assert html.index("The grey one") < html.index("The red one")
    assert "1 joint open, not covered." in html
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


def test_what_is_unsafe_stands_beside_what_is_bare_and_says_nothing_twice(pages):
    acts.open_joint(machine="grey", joint="J1", who="Ben", at=MONDAY)
    assert "Unsafe tonight" not in pages.get("/").content.decode()
    acts.open_joint(machine="grey", joint="J2", who="Ben", at=MONDAY)
    acts.ready_joint(
        machine="grey", joint="J2", who="Ben", faces_clean=True, gaskets=["side gasket"], bolts=12
    )
    acts.close_joint(machine="grey", joint="J2", who="Ben", torqued=True)
    acts.leak_check(machine="grey", joint="J2", who="Ben", result="leaking")

    html = pages.get("/").content.decode()

    assert "since 2 Mar 2026" in html
    assert "side cover to case (J2) leaks: do not run on it" in html
    assert html.count("hood to case") == 2  # the next thing, and what is bare


def test_what_waits_is_named_with_its_note(pages):
    acts.move_piece(machine="grey", part="pump", piece="left", to="off", who="Ben")
    acts.move_piece(
        machine="grey", part="pump", piece="left", to="wanted", note="ask the dealer", who="Ben"
    )

    html = pages.get("/").content.decode()

    assert "1 piece away or wanted" in html
    assert "wanted: ask the dealer" in html
    assert 'href="/m/grey/part/pump/?piece=left"' in html[html.index("Waits for") :]


def test_some_that_stand_bare_are_counted_among_those_that_stand_open(pages):
    acts.open_joint(machine="grey", joint="J1", who="Ben")
    acts.open_joint(machine="grey", joint="J3", who="Ben")
    acts.cover_joint(machine="grey", joint="J3", who="Ben")

    assert "2 joints open, 1 of them not covered." in pages.get("/").content.decode()


def test_many_machines_are_shown_in_short_and_first_those_to_be_looked_at(pages):
    acts.open_joint(machine="grey", joint="J1", who="Ben")
    assert "To be looked at first" not in pages.get("/").content.decode()
    for number in range(MANY):
        acts.add_machine(slug=f"m{number}", name=f"M {number}", book_text=TEXT, who="Ann")

    html = pages.get("/").content.decode()
    first = html[html.index("To be looked at first") : html.index('class="cards"')]

    assert html.count('in-short" aria-labelledby') == MANY + 1
    assert first.count("<li>") == 1
    assert "The grey one" in first and "1 not covered" in first


def test_a_machine_is_found_in_the_shed_by_what_is_stamped_on_it(pages):
    acts.add_machine(
        slug="red", name="Old red", book_text=TEXT, serials={"engine": "A-7"}, who="Ann"
    )

    numbered = pages.get("/find/", {"q": "a-7"}).content.decode()
    both = pages.get("/find/", {"q": "J2"}, headers={"HX-Request": "true"}).content.decode()

    assert 'href="/m/red/"' in numbered and 'href="/m/grey/"' not in numbered
    assert 'href="/m/red/joint/cover-joint/"' in both and "Old red" in both
    assert 'href="/m/grey/joint/cover-joint/"' in both and "<html" not in both


def test_a_machine_is_booked_in_from_the_page(pages):
    sent = {
        "name": "Old red", "slug": "red", "starter": "any-tractor", "where1": "engine",
        "serial1": "A-7", "form": "a-form",
    }  # fmt: skip
    answer = pages.post("/new/", sent)

    assert answer.headers["Location"] == "/m/red/"
    assert see("red").row.serials == {"engine": "A-7"}
    assert see("red").row.diary.get().who == "Ann"


def test_a_short_name_is_made_of_the_name_where_none_is_typed(pages):
    sent = {"name": "Old Red, 1953", "starter": "any-tractor", "form": "a-form"}

    assert pages.post("/new/", sent).headers["Location"] == "/m/old-red-1953/"


def test_a_book_of_ones_own_goes_before_the_starter_and_is_kept_as_it_was(pages):
    book = SimpleUploadedFile("hill.yaml", TEXT.replace("\n", "\r\n").encode())
    sent = {"name": "Hill", "slug": "hill", "starter": "any-tractor", "form": "a", "file": book}
    pages.post("/new/", sent)

    row = see("hill").row
    assert (row.book_name, row.book_text) == ("hill.yaml", TEXT)


def test_a_faulty_book_is_told_with_its_lines_and_nothing_typed_is_lost(pages):
    text = TEXT.replace("seals: oil", "seals: soup", 1)
    line = text.splitlines().index("    seals: soup") + 1
    sent = {"name": "Old red", "slug": "red", "text": text, "serial1": "A-7", "form": "x"}
    answer = pages.post("/new/", sent)
    html = answer.content.decode()

    assert answer.status_code == 422
    assert f"Line {line}" in html and f"{line}      seals: soup" in html
    assert "Old red" in html and "book: shed-engine" in html and 'value="A-7"' in html


@pytest.mark.parametrize(
    "data", [b"\xff\xfe", b"book: a\x00", b"\x89PNG\r\n", b"", b"- a list\n", b"a: [\n"]
)
def test_a_file_that_is_no_book_is_refused(pages, data):
    sent = {"name": "Old red", "slug": "red", "form": "x", "file": SimpleUploadedFile("b", data)}
    answer = pages.post("/new/", sent)

    assert answer.status_code == 422
    assert "Old red" in answer.content.decode()


def test_a_name_that_is_taken_is_refused(pages):
    answer = pages.post("/new/", {"name": "Grey", "slug": "grey", "starter": "any-tractor"})

    assert answer.status_code == 422
    assert "is here already" in answer.content.decode()


def test_finding_in_the_whole_shed_asks_no_more_for_many_machines(
    pages, django_assert_max_num_queries
):
    for number in range(8):
        acts.add_machine(slug=f"m{number}", name=f"M {number}", book_text=TEXT, who="Ann")

    with django_assert_max_num_queries(12):
        html = pages.get("/find/", {"q": "pump"}).content.decode()

    assert html.count("/part/pump/") == 9


def test_no_more_is_found_than_can_be_read(pages):
    html = pages.get("/find/", {"q": "o"}).content.decode()
    assert "another word finds fewer" not in html
    for number in range(8):
        acts.add_machine(slug=f"m{number}", name=f"M {number}", book_text=TEXT, who="Ann")

    html = pages.get("/find/", {"q": "o"}).content.decode()

    assert html.count("<li><a") == MOST_FOUND
    assert "another word finds fewer" in html


def test_starters_that_show_something_to_tap_are_offered_first(pages):
    html = pages.get("/new/").content.decode()

    assert html.index('value="two-cylinder-diesel"') < html.index('value="any-tractor"')
