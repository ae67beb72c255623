"""What no page of ours sends is answered in words, and never breaks a page."""

import pytest

from shimstock.workshop import acts
from shimstock.workshop.looking import see

LONG = "9" * 5000


@pytest.mark.parametrize("seen", ["²", LONG, "-1", "\x00", "soon"])
def test_an_odd_mark_of_what_was_seen(pages, seen):
    answer = pages.post("/m/grey/joint/J1/", {"do": "open", "form": "f", "seen": seen})

    assert answer.status_code == 302


@pytest.mark.parametrize("since", ["²", LONG])
def test_an_odd_question_for_news(pages, since):
    assert pages.get("/live/", {"since": since, "machine": "grey"}).status_code == 204
    assert pages.get("/m/grey/diary/", {"before": since}).status_code == 200


@pytest.mark.parametrize("code", ["a b.j.x", "a/b.s.x", "grey.j.a/b", "grey.x.y", "."])
def test_an_odd_label(pages, code):
    assert pages.get(f"/l/{code}/").status_code == 404


@pytest.mark.parametrize(
    "text", ["\x00", "a: &a [*a]", "a: &a {b: *a}", "- &x [1]\n" + "- [" + "*x," * 10 + "]"]
)
def test_an_odd_book(pages, text):
    answer = pages.post("/new/", {"name": "Odd", "slug": "odd", "text": text, "form": "f"})

    assert answer.status_code == 422


def test_a_book_that_is_no_text(pages):
    from django.core.files.uploadedfile import SimpleUploadedFile

    file = SimpleUploadedFile("book.yaml", b"\xff\xfe\x00\x01")
    answer = pages.post("/new/", {"name": "Odd", "slug": "odd", "file": file, "form": "f"})

    assert answer.status_code == 422


def test_labels_for_an_address_without_end(pages):
    acts.open_joint(machine="grey", joint="J1", who="Ben")
    asked = {"of": "open", "address": "http://" + "a" * 3000}

    assert pages.get("/m/grey/labels.pdf", asked).status_code in (404, 422)


def test_much_from_a_stranger_is_turned_away_unread(pages, settings):
    from dataclasses import replace

    settings.SERVING = replace(settings.SERVING, sign_in=True)
    pages.cookies[settings.SESSION_COOKIE_NAME] = "no-session-of-ours"  # anybody can send a cookie
    answer = pages.post("/sign-in/", {"name": "a" * 2**20})

    assert answer.status_code == 413


def test_what_a_person_sends_may_be_larger(pages):
    answer = pages.post("/m/grey/note/", {"about": "J1", "text": "a" * 2**21, "form": "f"})

    assert answer.status_code == 302


def test_a_slip_of_ones_own_has_nothing_to_do_with_what_others_did(pages):
    seen = pages.get("/m/grey/joint/J1/").context["latest"]
    acts.open_joint(machine="grey", joint="J3", who="Ben")

    answer = pages.post(
        "/m/grey/joint/J1/", {"do": "open", "bolts": "nine", "form": "f", "seen": str(seen)}
    )

    assert answer.status_code == 422
    assert "Meanwhile" not in answer.content.decode()


def test_what_is_refused_because_of_another_says_so_and_what_was_typed(pages):
    page = pages.get("/m/grey/joint/J1/")
    seen = page.context["latest"]
    acts.open_joint(machine="grey", joint="J1", bolts_out=4, who="Ben")

    answer = pages.post(
        "/m/grey/joint/J1/", {"do": "open", "bolts": "9", "form": "f", "seen": str(seen)}
    )
    html = answer.content.decode()

    assert answer.status_code == 422
    assert "Ben: Opened hood to case (J1)." in html
    assert "bolts 9" in html
    assert see("grey").now.joint("hood-joint").bolts_out == 4


def test_a_form_kept_on_a_phone_bears_the_time_it_was_typed(pages):
    from datetime import timedelta

    from django.utils import timezone

    from shimstock.workshop.models import Note

    typed = timezone.now() - timedelta(hours=5)
    sent = {"about": "J1", "text": "Rust.", "form": "f", "kept_at": typed.isoformat()}
    pages.post("/m/grey/note/", sent)

    assert abs(Note.objects.get().at - typed) < timedelta(seconds=1)


@pytest.mark.parametrize(
    "kept_at", ["", "yesterday", "2999-01-01T00:00:00Z", "1970-01-01T00:00:00Z"]
)
def test_a_clock_that_cannot_be_right_is_not_believed(pages, kept_at):
    from datetime import timedelta

    from django.utils import timezone

    from shimstock.workshop.models import Note

    pages.post("/m/grey/note/", {"about": "J1", "text": "Rust.", "form": "f", "kept_at": kept_at})

    assert timezone.now() - Note.objects.get().at < timedelta(minutes=1)
