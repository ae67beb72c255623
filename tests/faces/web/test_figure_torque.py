"""A joint's torque is corrected from a page of its own, looked at first."""

import re

from shimstock.workshop import acts
from shimstock.workshop.books import book_of
from shimstock.workshop.models import Machine
from workshop.shed_book import TEXT

PAGE = "/m/grey/book/cover-joint/1/"


def words(answer):
    return " ".join(re.sub(r"<[^>]+>", " ", answer.content.decode()).split())


def bolts():
    return book_of(Machine.objects.get(slug="grey")).joints["cover-joint"].fasteners[0]


def test_looking_writes_nothing_and_keeps_what_was_typed(pages):
    answer = pages.post(PAGE, {"torque": "28 lbf.ft", "page": "61", "note": "x", "look": "1"})

    assert "Nothing is written yet" in words(answer)
    assert 'name="torque" value="28 lbf.ft"' in answer.content.decode()
    assert Machine.objects.get(slug="grey").book_text == TEXT


def test_put_in_the_book_it_is_no_stand_in(pages):
    assert "stand-in figure" in words(pages.get(PAGE))

    sent = {"torque": "28 lbf.ft", "page": "61", "note": "", "put": "1", "form": "f"}
    answer = pages.post(PAGE, sent, follow=True)

    assert "page 61" in words(answer)
    assert (bolts().torque.typed, bolts().page) == ("28 lbf.ft", 61)


def test_what_is_wrong_is_said_and_nothing_typed_is_lost(pages):
    answer = pages.post(PAGE, {"torque": "tight", "page": "61", "put": "1", "form": "f"})

    assert answer.status_code == 422
    assert 'value="tight"' in answer.content.decode()
    assert 'value="61"' in answer.content.decode()


def test_a_fastening_that_is_not_there(pages):
    assert pages.get("/m/grey/book/cover-joint/9/").status_code == 404


def test_the_joints_page_and_its_job_card_say_whose_torque_it_is(pages):
    from io import BytesIO

    from pypdf import PdfReader

    def shown() -> tuple[str, str]:
        html = pages.get("/m/grey/joint/J2/").content.decode()
        card = pages.get("/m/grey/job/cover-joint.pdf")
        data = b"".join(card.streaming_content) if card.streaming else card.content
        return html, " ".join(page.extract_text() for page in PdfReader(BytesIO(data)).pages)

    html, card = shown()
    assert "stand-in: type your book" in html
    assert "24 lbf.ft stand-in" in " ".join(card.split())
    acts.correct_torque(
        machine="grey", joint="J2", number=1, torque="24 lbf.ft", page="61", who="Ben"
    )
    html, card = shown()

    assert "stand-in: type your book" not in html
    assert ">page 61</a>" in html
    assert "24 lbf.ft (page 61)" in " ".join(card.split())


def test_a_torque_far_from_the_books_is_asked_about(pages):
    sent = {"torque": "240", "page": "61", "form": "f"}
    asked = pages.post(PAGE, {**sent, "put": "1"})

    assert asked.status_code == 422
    assert "is far from the 24 lbf.ft that the book has" in words(asked)
    assert pages.post(PAGE, {**sent, "look": "meant"}).status_code == 200
    assert bolts().torque.typed == "24 lbf.ft"

    pages.post(PAGE, {**sent, "meant": "1"})

    assert bolts().torque.typed == "240 lbf.ft"
