"""A figure's page: what is typed is looked at first, then put in the book, and never lost."""

import re

import pytest

from shimstock.workshop import acts
from shimstock.workshop.books import book_of
from shimstock.workshop.models import DiaryEntry, Machine
from workshop.shed_book import LINER_1, TEXT

PAGE = "/m/grey/book/bore/"


def typed(**other):
    fields = {"new": "5.7500 .. 5.7510 in", "limit": "max 5.7600 in", "page": "", "note": ""}
    return {**fields, "form": "a-form", **other}


def words(answer):
    return " ".join(re.sub(r"<[^>]+>", " ", answer.content.decode()).split())


def field(answer, name):
    return re.search(rf'name="{name}" value="([^"]*)"', answer.content.decode())[1]


def bore():
    return book_of(Machine.objects.get(slug="grey")).figures["bore"]


def test_it_shows_all_that_the_book_says(pages):
    said = words(pages.get(PAGE))

    for each in ("thrust top", "bore gauge", "+0.020 in, +0.040 in", "5.7500 in", "stand-in"):
        assert each in said


def test_looking_first_shows_the_verdicts_and_lines_and_writes_nothing(pages):
    acts.take_reading(machine="grey", figure="bore", piece="1", typed=LINER_1, who="Ann")
    entries = DiaryEntry.objects.count()

    answer = pages.post(PAGE, typed(limit="max 5.7580 in", page="41", look="1"))

    said = words(answer)
    assert answer.status_code == 200
    assert "serviceable becomes" in said
    assert "worn out" in said
    assert "then page: 41" in said
    assert field(answer, "limit") == "max 5.7580 in"
    assert DiaryEntry.objects.count() == entries
    assert Machine.objects.get(slug="grey").book_text == TEXT


def test_put_in_the_book_it_is_no_stand_in_any_more(pages):
    answer = pages.post(PAGE, typed(page="41", note="second printing", put="1"), follow=True)

    assert "From the maker's book, page 41" in words(answer).replace("&#x27;", "'")
    assert not bore().stand_in
    assert "(second printing)" in DiaryEntry.objects.last().says


@pytest.mark.parametrize("button", ["look", "put"])
def test_what_is_wrong_stands_at_its_field_and_nothing_typed_is_lost(pages, button):
    sent = typed(new="5.7510 .. 5.7500 in", limit="about six", page="41", note="p. 41")

    answer = pages.post(PAGE, {**sent, button: "1"})

    assert answer.status_code == 422
    shown = answer.content.decode()
    for name in ("new", "limit"):
        assert re.search(rf'name="{name}"[^>]*{name}-wrong[^>]*aria-invalid="true"', shown)
        assert f'id="{name}-wrong"' in shown
    assert [field(answer, name) for name in ("new", "limit", "page", "note")] == [
        sent[name] for name in ("new", "limit", "page", "note")
    ]


@pytest.mark.parametrize("button", ["look", "put"])
def test_a_limit_inside_the_new_range_is_told_at_the_limit(pages, button):
    answer = pages.post(PAGE, typed(limit="max 5.7000 in", **{button: "1"}))

    assert answer.status_code == 422
    told = re.search(r'id="limit-wrong">([^<]*)<', answer.content.decode())
    assert "lies inside the new range" in told[1]
    assert bore().limit[0].value == 5.76


def test_sent_twice_it_is_written_once(pages):
    for _ in range(2):
        assert pages.post(PAGE, typed(page="41", put="1")).status_code == 302

    assert DiaryEntry.objects.filter(act="correct figure").count() == 1


def test_what_others_changed_meanwhile_is_not_written_over(pages):
    seen = DiaryEntry.objects.last().pk
    acts.correct_figure(machine="grey", figure="bore", typed={"page": "12"}, who="Ben")

    answer = pages.post(PAGE, typed(page="41", put="1", seen=seen))

    assert answer.status_code == 422
    assert "Ben" in words(answer)
    assert bore().page == 12


def test_a_figure_is_found_by_its_mark_and_an_unknown_one_is_not_there(pages):
    assert "liner bore" in words(pages.get("/m/grey/book/F1/"))
    assert pages.get("/m/grey/book/bone/").status_code == 404


def test_it_asks_little_of_the_database(pages, django_assert_max_num_queries):
    pages.get(PAGE)
    with django_assert_max_num_queries(8):
        pages.get(PAGE)


def test_a_slipped_digit_is_asked_about_and_can_be_looked_at_and_put_in_as_meant(pages):
    slip = {"new": "57.500 .. 57.510", "limit": "max 57.600"}
    for button in ({"put": "1"}, {"look": "1"}):
        answer = pages.post(PAGE, typed(**slip, **button))
        assert answer.status_code == 422
        assert "a slip of the finger?" in words(answer)
        assert "Would do: 5.7500 .. 5.7510 in, max 5.7600 in" in words(answer)
        assert 'name="meant"' in answer.content.decode()

    looked = pages.post(PAGE, typed(**slip, look="meant"))
    assert "Nothing is written yet" in words(looked)
    assert 'form="correct" name="meant"' in looked.content.decode()
    assert bore().new.high == 5.751

    assert pages.post(PAGE, typed(**slip, meant="1")).status_code == 302
    assert bore().new.high == 57.51
