import pytest
from django.utils import timezone

from shimstock.workshop.ledger import writing
from shimstock.workshop.models import DiaryEntry, JointState
from shimstock.workshop.rows import row_name, row_named
from workshop.shed_book import MONDAY


def joint(machine, **values) -> JointState:
    return JointState(machine=machine, joint="hood-joint", **values)


def test_an_act_that_fails_half_way_leaves_nothing(machine):
    with pytest.raises(RuntimeError), writing("open", who="Ann", machine=machine) as pen:
        pen.save(joint(machine, word="open"))
        raise RuntimeError

    assert not JointState.objects.exists()
    assert DiaryEntry.objects.count() == 1


def test_an_act_whose_entry_cannot_be_written_leaves_nothing(machine, monkeypatch):
    def full(self):
        raise OSError("disk full")

    monkeypatch.setattr(DiaryEntry, "save", full)
    with pytest.raises(OSError, match="disk full"), writing("x", who="A", machine=machine) as pen:
        pen.save(joint(machine, word="open"))

    assert not JointState.objects.exists()


def test_a_row_saved_twice_is_noted_from_first_to_last(machine):
    row = joint(machine)
    with writing("open", who="Ann", machine=machine) as pen:
        row.word = "open"
        pen.save(row)
        row.word, row.covered = "parked open", True
        pen.save(row)
        pen.says = "Opened and covered."

    name = row_name(row)
    assert pen.entry.before[name] == {"word": "undisturbed", "covered": False}
    assert pen.entry.after[name]["word"] == "parked open"
    assert pen.entry.touched == [name]
    assert pen.entry.places == ["joint:hood-joint"]


def test_only_what_changed_is_noted(machine):
    row = joint(machine, word="open", bolts_out=4)
    with writing("open", who="Ann", machine=machine) as pen:
        pen.save(row)
        pen.says = "Opened."
    with writing("cover", who="Ann", machine=machine) as pen:
        row.covered = True
        pen.save(row)
        pen.says = "Covered."

    assert pen.entry.before == {row_name(row): {"covered": False}}
    assert pen.entry.after == {row_name(row): {"covered": True}}


def test_what_was_saved_unchanged_is_not_noted(machine):
    row = joint(machine, word="open")
    row.save()
    with writing("look", who="Ann", machine=machine) as pen:
        pen.save(row)
        pen.says = "Looked."

    assert pen.entry.touched == []


def test_an_act_is_dated_now_or_when_it_was_done(machine):
    for at in (None, MONDAY):
        with writing("look", who=" Ann ", machine=machine, at=at) as pen:
            pen.says = "Looked."
        wanted = at or timezone.now()
        assert abs((pen.entry.at - wanted).total_seconds()) < 5
        assert pen.entry.who == "Ann"
    assert pen.today == MONDAY.date()


def test_a_row_is_found_again_by_its_name(machine):
    assert row_named(row_name(machine)) == machine
