"""A whole book sent from a page: every fault on its line, looked at before it is taken."""

import html
import re

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile

from shimstock.workshop import acts
from shimstock.workshop.models import DiaryEntry, Machine
from workshop.shed_book import LINER_1, TEXT

PAGE = "/m/grey/book-file/"
FAULTY = TEXT.replace("of: case\n    new: 0.004", "of: nobody\n    new: 0.004").replace(
    "limit: min 20 cc", "limitt: min 20 cc"
)
BETTER = TEXT.replace("limit: max 5.7600 in", "limit: max 5.7580 in\n    page: 41")


def words(answer):
    return " ".join(html.unescape(re.sub(r"<[^>]+>", " ", answer.content.decode())).split())


def in_the_form(answer):
    found = re.search(r"<textarea[^>]*>\n(.*?)</textarea>", answer.content.decode(), re.DOTALL)
    return html.unescape(found[1])


def machine():
    return Machine.objects.get(slug="grey")


def test_the_form_holds_the_book_to_the_letter(pages):
    assert in_the_form(pages.get(PAGE)) == TEXT


@pytest.mark.parametrize("button", ["look", "take"])
def test_every_fault_stands_with_its_line_and_the_text_is_not_lost(pages, button):
    answer = pages.post(PAGE, {"text": FAULTY, "name": "mine.yaml", button: "1", "form": "f"})

    said = words(answer)
    assert answer.status_code == 422
    assert "2 faults" in said
    lines = FAULTY.splitlines()
    for fault in ("of: nobody", "limitt: min 20 cc"):
        number = next(n for n, line in enumerate(lines, 1) if fault in line)
        assert f"Line {number}" in said
        assert f"{number} {lines[number - 1].strip()}" in said
    assert in_the_form(answer) == FAULTY
    assert machine().book_text == TEXT


def test_looking_first_shows_what_changes_and_writes_nothing(pages):
    acts.take_reading(machine="grey", figure="bore", piece="1", typed=LINER_1, who="Ann")

    answer = pages.post(PAGE, {"text": BETTER, "name": "mine.yaml", "look": "1"})

    said = words(answer)
    assert "1 verdict" in said
    assert "becomes" in said
    assert "then page: 41" in said
    assert "Take it" in said
    assert machine().book_text == TEXT


def test_taken_it_is_the_machines_book(pages):
    sent = {"text": BETTER.replace("\n", "\r\n"), "name": "mine.yaml", "take": "1", "form": "f"}

    answer = pages.post(PAGE, sent, follow=True)

    assert "Changed the book" in words(answer)
    assert (machine().book_text, machine().book_name) == (BETTER, "mine.yaml")
    assert DiaryEntry.objects.last().act == "change book"


def test_a_file_is_looked_at_before_it_is_taken(pages):
    file = SimpleUploadedFile("other.yaml", BETTER.encode())

    answer = pages.post(PAGE, {"text": TEXT, "name": "x.yaml", "file": file, "take": "1"})

    assert in_the_form(answer) == BETTER
    assert 'name="name" value="other.yaml"' in answer.content.decode()
    assert machine().book_text == TEXT


def test_a_book_that_would_lose_readings_is_refused(pages):
    acts.take_reading(machine="grey", figure="end-float", typed=["0.005"], who="Ann")
    without = re.sub(r"  end-float:\n(    .*\n)+", "", TEXT).replace(
        "    figures: [end-float]\n", ""
    )

    answer = pages.post(PAGE, {"text": without, "name": "x.yaml", "take": "1", "form": "f"})

    assert answer.status_code == 422
    assert "leave it in" in words(answer)
    assert in_the_form(answer) == without


def test_a_figure_far_from_the_starters_is_told_at_its_line_before_it_is_taken(pages):
    text = "book: mine\ntitle: Mine\nextends: two-cylinder-diesel\n"
    acts.add_machine(slug="mine", name="Mine", book_text=text, who="Ann")
    slipped = (
        f"{text}figures:\n  liner-bore:\n    new: 57.500 .. 57.512 in\n    limit: max 57.6 in\n"
    )

    looked = pages.post("/m/mine/book-file/", {"text": slipped, "name": "m.yaml", "look": "1"})

    said = words(looked)
    assert "did a digit slip?" in said
    assert "Line 6, figures > liner-bore > new: 57.500 .. 57.512 in lies outside" in said
    assert "5.7500 .. 5.7512 in would do" in said
    assert "Take it" in said


def test_newer_starters_are_offered_and_taken_only_when_asked(pages):
    text = "book: mine\ntitle: Mine\nextends: two-cylinder-diesel\n"
    acts.add_machine(slug="mine", name="Mine", book_text=text, who="Ann")
    row = Machine.objects.get(slug="mine")
    old = {
        name: kept.replace("max 5.7600 in", "max 5.7599 in") for name, kept in row.starters.items()
    }
    Machine.objects.filter(slug="mine").update(starters=old)
    assert old != row.starters

    offered = pages.get("/m/mine/book/")
    assert "Newer text of two-cylinder-diesel" in words(offered)

    looked = pages.post("/m/mine/book-file/", {"look": "1"})
    assert "With today's text of two-cylinder-diesel" in words(looked)
    assert "The text stays as it is" in words(looked)

    pages.post("/m/mine/book-file/", {"text": text, "name": "book", "take": "1", "form": "f"})
    assert Machine.objects.get(slug="mine").starters == row.starters
