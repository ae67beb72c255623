"""The reading page: what was typed is understood, stored once, and told at once."""

import html
import re
from secrets import token_urlsafe

import pytest

from shimstock.workshop import acts
from shimstock.workshop.models import DiaryEntry, ReadingRow
from workshop.shed_book import LINER_1, LINER_2

BORE = "/m/grey/reading/bore/"


def sent(values, *, piece="1", stage="as found", **more):
    """A form as a page sends it."""
    return {"value": values, "piece": piece, "stage": stage, "form": token_urlsafe(8), **more}


def said(answer):
    """The words of a page, without its marks."""
    bare = re.sub(r"<[^>]+>", " ", answer.content.decode())
    return " ".join(html.unescape(bare).split())


def read_bore(values=LINER_1, piece="1", stage="as found"):
    return acts.take_reading(
        machine="grey", figure="bore", piece=piece, typed=values, stage=stage, who="Ann"
    )


def test_the_boxes_have_the_shape_of_the_measurement(pages):
    page = pages.get(f"{BORE}?piece=1").content.decode()

    assert re.findall(r"<legend>(\w+)</legend>", page) == ["Thrust", "Pin"]
    places = re.findall(r'<label for="box-\d">(\w+) ', page)
    assert places == ["Top", "Middle", "Bottom", "Top", "Middle", "Bottom"]


def test_one_number_has_one_box(pages):
    page = pages.get("/m/grey/reading/F3/").content.decode()

    assert page.count('name="value"') == 1
    assert "stand-in figure" in page


def test_a_reading_is_stored_and_told_at_once(pages):
    answer = pages.post(BORE, sent(LINER_1), follow=True)

    # bore worn to 5.7592 of at most 5.7600: tests/workshop/shed_book.py
    assert answer.redirect_chain[-1][0] == f"{BORE}?piece=1&stage=as+found"
    assert "5.7592 in: serviceable, at most 5.7600 in is allowed" in said(answer)
    assert "Serviceable as found" in said(answer)
    assert ReadingRow.objects.get().typed == LINER_1


def test_a_reading_that_is_sent_again_is_stored_once(pages):
    form = sent(LINER_1)
    pages.post(BORE, form)
    again = pages.post(BORE, form, follow=True)

    assert "This was in the book already: Read liner bore (F1), 1" in said(again)
    assert DiaryEntry.objects.filter(act="read").count() == 1


def test_one_form_with_other_numbers_shows_both(pages):
    form = sent(LINER_1)
    pages.post(BORE, form)
    again = pages.post(BORE, {**form, "value": LINER_2})

    assert again.status_code == 422
    assert "holds something else now" in said(again)
    assert " ".join(LINER_1) in said(again)
    assert " ".join(LINER_2) in said(again)
    assert [row.typed for row in ReadingRow.objects.all()] == [LINER_1]


def test_a_slip_is_asked_about_and_nothing_typed_is_lost(pages):
    answer = pages.post(BORE, sent(["7.7592", *LINER_1[1:]]))

    page = answer.content.decode()
    assert answer.status_code == 422
    assert re.findall(r'name="value" value="([^"]*)"', page) == ["7.7592", *LINER_1[1:]]
    assert 'name="meant" value="1"' in page
    assert not ReadingRow.objects.exists()


def test_a_value_that_was_likely_meant_is_taken_into_its_box(pages):
    slipped = ["5.7592", "7.5554", *LINER_1[2:]]
    page = pages.post(BORE, sent(slipped)).content.decode()
    offered = re.findall(r'name="take" value="1 ([^"]+)"', page)
    taken = pages.post(BORE, sent(slipped, take=f"1 {offered[0]}"))

    assert taken.status_code == 200
    assert f'value="{offered[0]}"' in taken.content.decode()
    assert not ReadingRow.objects.exists()


def test_what_is_meant_is_kept(pages):
    pages.post(BORE, sent(["7.7592", *LINER_1[1:]], meant="1"))

    assert ReadingRow.objects.get().values[0] == 7.7592


def test_an_empty_box_is_no_place_that_was_not_read(pages):
    empty = pages.post(BORE, sent(["", *LINER_1[1:]]))
    dash = pages.post(BORE, sent(["-", *LINER_1[1:]]))

    assert empty.status_code == 422
    assert dash.status_code == 302
    assert ReadingRow.objects.get().values[0] is None


@pytest.mark.parametrize(
    ("typed", "understood"),
    [
        ("5.7591", "5.7591 in"),
        ("5 3/4 in", "5.75 in = 146.05 mm"),
        ("146.3 mm", "5.75984 in = 146.3 mm"),
        ("-", "not read"),
        ("12 psi", "is a pressure; liner bore is a length, in inches"),
        ("wide", "has no number at its start"),
    ],
)
def test_what_is_typed_is_understood_box_by_box(typed, understood, pages):
    # 1 in = 25.4 mm exactly: NIST SP 811, B.8
    answer = pages.post(f"{BORE}understood/", sent([*LINER_1[:1], typed, *[""] * 4]))

    took = re.search(r'id="took-1"[^>]*>(.*?)</p>', answer.content.decode())[1]
    assert understood in html.unescape(took)
    assert not DiaryEntry.objects.filter(act="read").exists()


def test_with_what_it_was_read_may_be_said(pages):
    form = sent(["0.006"], piece="", **{"with": "dial gauge", "good_to": "0.0010", "each": "3"})
    pages.post("/m/grey/reading/end-float/", form)

    row = ReadingRow.objects.get()
    assert (row.instrument["name"], row.each) == ("dial gauge", 3)
    assert row.instrument["mpe"] == pytest.approx(0.0005 * 3**0.5)  # k = 2: JCGM 100:2008, 4.3.7


def test_how_many_readings_must_be_a_count(pages):
    answer = pages.post("/m/grey/reading/end-float/", sent(["0.006"], piece="", each="some"))

    assert answer.status_code == 422
    assert "some is no count of readings" in said(answer)


def test_as_found_stands_beside_as_finished(pages):
    read_bore()
    read_bore(["5.7702"] * 6, stage="as finished")
    page = said(pages.get(f"{BORE}?piece=1&stage=as found"))

    assert "Serviceable as found" in page
    assert "as finished" in page.split("Read it again")[0]


def test_an_earlier_reading_is_struck_and_stays(pages):
    read_bore(LINER_2)
    read_bore(LINER_1)
    page = pages.get(f"{BORE}?piece=1").content.decode()

    assert f"<del>{' · '.join(LINER_2)}</del>" in page
    assert f"<strong>{' · '.join(LINER_1)}</strong>" in page


def test_a_verdict_beyond_its_limit_is_accepted_with_a_reason(pages):
    acts.take_reading(machine="grey", figure="end-float", typed="0.020", who="Ann")
    page = pages.get("/m/grey/reading/end-float/").content.decode()
    assert "Accept it all the same" in page

    form = {"accept": "1", "of": "", "reason": "shims are in the post", "form": token_urlsafe(8)}
    answer = pages.post("/m/grey/reading/end-float/", form, follow=True)

    assert "Accepted: shims are in the post" in said(answer)
    assert "Accept it all the same" not in said(answer)


def test_nothing_is_accepted_without_a_reason(pages):
    acts.take_reading(machine="grey", figure="end-float", typed="0.020", who="Ann")
    form = {"accept": "1", "of": "", "reason": " ", "form": token_urlsafe(8)}
    answer = pages.post("/m/grey/reading/end-float/", form)

    assert answer.status_code == 422
    assert "cannot be accepted without a reason" in said(answer)


def test_a_figure_that_follows_from_another_leads_there(pages):
    read_bore()
    page = pages.get("/m/grey/reading/taper/?piece=1").content.decode()

    assert "It follows from" in page
    assert "/m/grey/reading/bore/?piece=1" in page


def test_the_page_leads_to_the_joint_behind_which_it_lies(pages):
    assert "Behind sump to case (J3)" in said(pages.get(f"{BORE}?piece=1"))


def test_the_scale_says_in_words_what_it_shows(pages):
    read_bore()
    page = pages.get(f"{BORE}?piece=1").content.decode()
    label = re.search(r'class="drawn"[^>]*aria-label="([^"]+)"', page)[1]

    assert label.startswith("As found: new 5.7500 to 5.7510 in; limit 5.76 in; thrust top")
    assert page.count('<g class="value"><line') == 6


def test_a_bore_that_was_bored_is_shown_against_its_new_size(pages):
    read_bore(["5.7702"] * 6, stage="as finished")
    page = pages.get(f"{BORE}?piece=1&stage=as finished").content.decode()
    label = re.search(r'class="drawn"[^>]*aria-label="([^"]+)"', page)[1]

    # +0.020 in on 5.7500 .. 5.7510 in, at most 5.7600 in
    assert label.startswith("As finished, +0.020 in: new 5.7700 to 5.7710 in; limit 5.78 in;")


def test_two_people_reading_the_same_lose_nothing(pages):
    seen = DiaryEntry.objects.latest("pk").pk
    acts.take_reading(machine="grey", figure="bore", piece="1", typed=LINER_2, who="Tom")
    answer = pages.post(BORE, sent(LINER_1, seen=seen))

    assert answer.status_code == 422
    assert "Tom: Read liner bore (F1), 1" in said(answer)
    assert f'value="{LINER_1[0]}"' in answer.content.decode()


def test_the_page_asks_the_database_little(pages, django_assert_max_num_queries):
    read_bore()
    pages.get(f"{BORE}?piece=1")
    with django_assert_max_num_queries(10):
        pages.get(f"{BORE}?piece=1")
