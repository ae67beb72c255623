"""A torque corrected in the book keeps the other fastenings, and undone it is as it was."""

import pytest

from shimstock.trade.numbers.not_understood import HardlyMeant, NotUnderstood
from shimstock.workshop.books import book_of
from shimstock.workshop.refused import NotFound, Refused
from workshop.shed_book import TEXT


def bolts(machine):
    machine.refresh_from_db()
    return book_of(machine).joints["cover-joint"].fasteners


def test_a_torque_and_its_page_are_put_in_the_book(machine, do):
    entry = do.correct_torque(joint="J2", number=1, torque="28 lbf.ft", page="61", note="table 4")

    assert (bolts(machine)[0].torque.typed, bolts(machine)[0].page) == ("28 lbf.ft", 61)
    assert (bolts(machine)[0].count, bolts(machine)[0].thread) == (12, "3/8-16 UNC")
    assert entry.says == (
        "Corrected side cover to case (J2) in the book: 28 lbf.ft, page 61 (table 4)."
    )
    old, new = TEXT.splitlines(), machine.book_text.splitlines()
    assert [line for line in new if line not in old] == [
        "    fasteners: {count: 12, what: bolt, thread: 3/8-16 UNC, torque: 28 lbf.ft, page: 61}"
    ]


def test_undone_the_old_book_is_back(machine, do):
    do.undo(do.correct_torque(joint="J2", number=1, torque="24 lbf.ft", page="61"))

    machine.refresh_from_db()
    assert machine.book_text == TEXT


def test_a_number_alone_is_in_the_unit_of_now(machine, do):
    do.correct_torque(joint="J2", number=1, torque="28", page="")

    assert bolts(machine)[0].torque.typed == "28 lbf.ft"
    assert bolts(machine)[0].page is None


def test_of_a_starters_several_fastenings_only_one_changes(db):
    from shimstock.workshop import acts
    from shimstock.workshop.models import Machine

    text = "book: mine\ntitle: Mine\nextends: two-cylinder-diesel\n"
    acts.add_machine(slug="mine", name="Mine", book_text=text, who="Ann")
    book = book_of(Machine.objects.get(slug="mine"))
    key, was = next((k, j.fasteners) for k, j in book.joints.items() if len(j.fasteners) > 1)

    acts.correct_torque(machine="mine", joint=key, number=2, torque="9 lbf.ft", page="7", who="Ann")

    now = book_of(Machine.objects.get(slug="mine")).joints[key].fasteners
    assert (now[0], now[1].torque.typed, now[1].page) == (was[0], "9 lbf.ft", 7)


@pytest.mark.parametrize(
    ("typed", "error"),
    [
        ({"number": 1, "torque": "24 lbf.ft", "page": ""}, Refused),
        ({"number": 1, "torque": "24 in", "page": ""}, NotUnderstood),
        ({"number": 2, "torque": "24 lbf.ft", "page": "1"}, NotFound),
    ],
)
def test_what_cannot_be_is_refused(machine, do, typed, error):
    with pytest.raises(error):
        do.correct_torque(joint="J2", **typed)

    machine.refresh_from_db()
    assert machine.book_text == TEXT


def test_a_torque_far_from_the_books_is_asked_about_and_kept_where_it_is_meant(machine, do):
    with pytest.raises(HardlyMeant, match=r"^240 lbf\.ft is far from the 24 lbf\.ft"):
        do.correct_torque(joint="J2", number=1, torque="240", page="61")
    assert bolts(machine)[0].torque.typed == "24 lbf.ft"

    do.correct_torque(joint="J2", number=1, torque="240", page="61", meant=True)

    assert bolts(machine)[0].torque.typed == "240 lbf.ft"
