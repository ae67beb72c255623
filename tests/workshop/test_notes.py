"""Notes on a place: kept with the person's name, told in the diary, undone without a trace."""

import pytest

from shimstock.trade.reach.target import UnknownName
from shimstock.workshop import acts
from shimstock.workshop.refused import Refused
from shimstock.workshop.told import notes_on, told_of


def test_a_note_is_kept_at_its_place(machine, do):
    entry = do.write_note(about="J2", text=" weeps at the lower bolt \n")

    (note,) = notes_on(machine, "joint:cover-joint")
    assert (note.text, note.by) == ("weeps at the lower bolt", "Ann")
    assert entry.says == "Note on side cover to case (J2): weeps at the lower bolt"
    assert entry.places == ["note:joint:cover-joint"]
    assert notes_on(machine, "joint:hood-joint") == []


@pytest.mark.parametrize(
    ("about", "place"),
    [
        ("joint:hood-joint", "joint:hood-joint"),
        ("piece:pump:left", "piece:pump:left"),
        ("Pump left", "piece:pump:left"),
        ("machine", "machine"),
    ],
)
def test_a_note_may_be_on_a_joint_a_piece_or_the_machine(machine, do, about, place):
    do.write_note(about=about, text="look here")

    assert [note.text for note in notes_on(machine, place)] == ["look here"]


def test_an_empty_note_is_refused(do):
    with pytest.raises(Refused, match="The note is empty"):
        do.write_note(about="J2", text="  \n")


@pytest.mark.parametrize("about", ["J99", "joint:none", "piece:none:", "piece:pump:middle", ""])
def test_a_note_on_nothing_in_the_book_is_refused(do, about):
    with pytest.raises(UnknownName):
        do.write_note(about=about, text="look here")


def test_two_people_may_write_on_one_place_and_undo_only_their_own(machine, do):
    first = do.write_note(about="J2", text="first")
    acts.write_note(machine=machine, about="J2", text="second", who="Bo")
    with pytest.raises(Refused, match="A later act"):
        do.undo(first)  # both are on one place: the later one comes off first


def test_an_undone_note_counts_no_more(machine, do):
    do.undo(do.write_note(about="J2", text="wrong joint"))

    assert notes_on(machine, "joint:cover-joint") == []


def test_the_diary_of_a_place_tells_its_acts_and_notes_latest_first(machine, do):
    do.open_joint(joint="J1")
    do.write_note(about="J1", text="four dowels")
    do.open_joint(joint="J3")

    told = told_of(machine, "joint:hood-joint", 10)

    assert [entry.act for entry in told] == ["note", "open"]
    assert len(told_of(machine, "joint:hood-joint", 1)) == 1


def test_a_place_whose_name_ends_alike_is_not_told(machine, do):
    do.open_joint(joint="J1")

    assert told_of(machine, "hood-joint", 10) == []
