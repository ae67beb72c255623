import pytest

from shimstock.trade.machine.words import JointWord
from shimstock.workshop import acts
from shimstock.workshop.models import DiaryEntry
from shimstock.workshop.now import machine_now
from shimstock.workshop.refused import NotFound, Refused


def hood(machine) -> JointWord:
    return machine_now(machine).joint("hood-joint").word


def test_an_undo_is_an_act_of_its_own(machine, do):
    opened = do.open_joint(joint="J1")

    undone = acts.undo(entry_id=opened.pk, who="Bob")

    assert hood(machine) == JointWord.UNDISTURBED
    assert (undone.act, undone.who, undone.undoes) == ("undo", "Bob", opened)
    assert undone.says == f"Undid {opened.pk}: {opened.says}"
    assert DiaryEntry.objects.count() == 3


def test_an_act_is_undone_once(do):
    opened = do.open_joint(joint="J1")
    undone = do.undo(opened)

    with pytest.raises(Refused, match=f"undone already, by entry {undone.pk}"):
        do.undo(opened)


def test_an_undo_is_undone_and_then_the_act_again(machine, do):
    opened = do.open_joint(joint="J1")
    undone = do.undo(opened)

    do.undo(undone)
    assert hood(machine) == JointWord.OPEN

    do.undo(opened)
    assert hood(machine) == JointWord.UNDISTURBED


def test_a_later_act_on_the_same_thing_is_named_and_goes_first(machine, do):
    opened = do.open_joint(joint="J1")
    covered = do.cover_joint(joint="J1")

    with pytest.raises(Refused) as refused:
        do.undo(opened)
    (reason,) = refused.value.reasons
    assert f"entry {covered.pk}, Ann, “Covered hood to case (J1).”" in reason

    do.undo(covered)
    do.undo(opened)
    assert hood(machine) == JointWord.UNDISTURBED


def test_a_later_act_that_is_itself_undone_does_not_stand_in_the_way(machine, do):
    opened = do.open_joint(joint="J1")
    undone = do.undo(do.cover_joint(joint="J1"))
    done_again = do.undo(undone)

    with pytest.raises(Refused):
        do.undo(opened)

    do.undo(done_again)
    do.undo(opened)
    assert hood(machine) == JointWord.UNDISTURBED


def test_an_act_on_another_thing_does_not_stand_in_the_way(machine, do):
    opened = do.open_joint(joint="J1")
    do.open_joint(joint="J3")

    do.undo(opened)

    assert hood(machine) == JointWord.UNDISTURBED
    assert machine_now(machine).joint("sump-joint").word == JointWord.OPEN


def test_what_was_made_anew_in_the_same_place_stands_in_the_way(do):
    first = do.take_reading(figure="end-float", typed="0.006")
    undone = do.undo(first.entry)
    second = do.take_reading(figure="end-float", typed="0.007")

    with pytest.raises(Refused, match=f"undo {second.entry.pk}"):
        do.undo(undone)


def test_an_act_that_a_later_one_rests_on_stands(machine, do):
    hood_off = do.open_joint(joint="J1")
    cover_off = do.open_joint(joint="J2")

    with pytest.raises(Refused, match=f"undo {cover_off.pk}"):
        do.undo(hood_off)

    do.undo(cover_off)
    do.undo(hood_off)
    assert hood(machine) == JointWord.UNDISTURBED


def test_a_reading_judged_by_another_book_since_stands(machine, do):
    from workshop.shed_book import TEXT

    took = do.take_reading(figure="end-float", typed="0.006")
    changed = do.change_book(book_text=TEXT.replace("min 20 cc", "min 21 cc"))

    with pytest.raises(Refused, match=f"undo {changed.pk}"):
        do.undo(took.entry)


def test_an_unknown_entry_cannot_be_undone(machine):
    with pytest.raises(NotFound, match="no entry in the diary '77'"):
        acts.undo(entry_id=77, who="Ann")


def test_an_undo_needs_a_person_too(do):
    opened = do.open_joint(joint="J1")

    with pytest.raises(Refused, match="say who"):
        acts.undo(entry_id=opened.pk, who="")
