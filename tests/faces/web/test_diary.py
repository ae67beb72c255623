"""The diary page: newest first by evening, found by who, what and where, and undone there."""

import html
import re
from datetime import timedelta

import pytest

from shimstock.workshop import acts
from shimstock.workshop.models import DiaryEntry, JointState
from workshop.shed_book import LINER_1, MONDAY

PAGE = "/m/grey/diary/"


def words(answer):
    return " ".join(html.unescape(re.sub(r"<[^>]+>", " ", answer.content.decode())).split())


def numbers(answer):
    return [int(each) for each in re.findall(r'<li id="e(\d+)"', answer.content.decode())]


@pytest.fixture
def worked(pages):
    """Some evenings of work on the machine: entries by what they were."""
    late = MONDAY + timedelta(hours=6)  # half past one at night
    tuesday = MONDAY + timedelta(days=1)
    made = {
        "open": acts.open_joint(machine="grey", joint="J1", who="Ann", at=MONDAY),
        "read": acts.take_reading(
            machine="grey", figure="bore", piece="1", typed=LINER_1, who="Ben", at=late
        ).entry,
        "off": acts.move_piece(
            machine="grey", part="pump", piece="left", to="off", who="Ben", at=tuesday
        ),
    }
    made["undone"] = acts.undo(entry_id=made["off"].pk, who="Ann", at=tuesday)
    return made


def test_the_newest_stands_first_under_its_evening(pages, worked):
    answer = pages.get(PAGE)

    evenings = re.findall(r"<h2>([^<]*)</h2>\s*<ol", answer.content.decode())
    assert numbers(answer) == sorted(numbers(answer), reverse=True)
    assert evenings == ["Tuesday 3 Mar 2026", "Monday 2 Mar 2026"]


def test_each_tells_what_it_changed_and_leads_there(pages, worked):
    answer = pages.get(PAGE)

    assert "joint hood-joint: word undisturbed -> open" in words(answer)
    for address in (
        "joint/hood-joint/",
        "part/pump/?piece=left",
        "reading/bore/?piece=1&amp;stage",
    ):
        assert f'href="/m/grey/{address}' in answer.content.decode()


def test_what_was_undone_is_struck_and_says_by_which_entry(pages, worked):
    shown = pages.get(PAGE).content.decode()

    says, by = worked["off"].says, worked["undone"].pk
    assert f"<s>{says}</s> <strong>undone by {by}</strong>" in shown
    assert f"/diary/{worked['off'].pk}/undo/" not in shown
    assert f"/diary/{worked['open'].pk}/undo/" in shown


def test_an_undoing_that_was_undone_itself_strikes_nothing(pages, worked):
    acts.undo(entry_id=worked["undone"].pk, who="Ann")

    assert f"<s>{worked['off'].says}</s>" not in pages.get(PAGE).content.decode()


@pytest.mark.parametrize(
    ("asked", "found"),
    [
        ("who=Ben", ["read", "off"]),
        ("q=J1", ["open"]),
        ("q=hood+to+case", ["open"]),
        ("q=liner+bore", ["read"]),
        ("q=pump", ["off", "undone"]),
        ("about=joint:hood-joint", ["open"]),
        ("about=piece:pump:left", ["off", "undone"]),
        ("about=reading:bore", ["read"]),
        ("q=nothing+of+the+kind", []),
    ],
)
def test_entries_are_found_by_who_what_and_where(pages, worked, asked, found):
    assert sorted(numbers(pages.get(f"{PAGE}?{asked}"))) == [worked[each].pk for each in found]


def test_thirty_are_on_a_page_and_the_older_ones_on_the_next(pages, grey):
    for number in range(35):
        result = "weeping" if number % 2 else "leaking"
        acts.leak_check(machine="grey", joint="J3", result=result, who="Ann")

    first = pages.get(f"{PAGE}?who=Ann")
    older = html.unescape(re.search(r'rel="next" href="([^"]*)"', first.content.decode())[1])
    second = pages.get(PAGE + older)

    assert len(numbers(first)) == 30
    assert "who=Ann" in older
    everything = list(DiaryEntry.objects.order_by("-pk").values_list("pk", flat=True))
    assert numbers(first) + numbers(second) == everything
    assert 'rel="next"' not in second.content.decode()


def test_undoing_shows_first_what_would_be_put_back(pages, worked):
    page = f"{PAGE}{worked['open'].pk}/undo/"

    before = words(pages.get(page))
    assert "hood to case (J1): undisturbed again, no longer open" in before
    assert "Undo it" in before

    answer = pages.post(page, {"form": "f"}, follow=True)
    assert f"Undid {worked['open'].pk}" in words(answer)
    assert JointState.objects.get(joint="hood-joint").word == "undisturbed"


def test_it_says_what_stands_against_undoing(pages, worked):
    later = acts.leak_check(machine="grey", joint="J3", result="weeping", who="Ann")
    last = acts.leak_check(machine="grey", joint="J3", result="leaking", who="Ben")
    page = f"{PAGE}{later.pk}/undo/"

    said = words(pages.get(page))
    assert f"Undo that one first: undo {last.pk}" in said
    assert "Undo it" not in said
    assert f'href="{PAGE}{last.pk}/undo/"' in pages.get(page).content.decode()

    assert pages.post(page, {"form": "f"}).status_code == 422
    assert JointState.objects.get(joint="sump-joint").word == "leaking"


def test_an_entry_of_another_machine_is_not_there(pages, grey, db):
    from workshop.shed_book import TEXT

    other = acts.add_machine(slug="red", name="The red one", book_text=TEXT, who="Ann")

    assert pages.get(f"{PAGE}{other.pk}/undo/").status_code == 404


def test_a_note_can_be_written_there(pages, grey):
    shown = pages.get(PAGE).content.decode()

    assert 'action="/m/grey/note/" data-keep="note" data-says="a note"' in shown


def test_a_full_page_asks_little_of_the_database(pages, worked, django_assert_max_num_queries):
    for number in range(40):
        result = "weeping" if number % 2 else "leaking"
        acts.leak_check(machine="grey", joint="J3", result=result, who="Ann")
        acts.take_reading(
            machine="grey", figure="end-float", typed=[f"0.00{5 + number % 2}"], who="Ben"
        )
    pages.get(PAGE)

    with django_assert_max_num_queries(12):
        pages.get(PAGE)
