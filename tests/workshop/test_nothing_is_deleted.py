from pathlib import Path

import pytest

import shimstock.workshop
from shimstock.workshop.models import DiaryEntry, JoinCode, JointState, Machine, SignInTry
from shimstock.workshop.models.kept import Kept, NothingIsDeleted

SOURCES = sorted(Path(shimstock.workshop.__file__).parent.rglob("*.py"))


def test_no_line_of_the_workshop_deletes_but_what_sweeps_at_the_door():
    assert len(SOURCES) > 20
    lines = [
        f"{path.name}: {line.strip()}"
        for path in SOURCES
        if path.name != "sweeping.py"
        for line in path.read_text().splitlines()
        if ".delete(" in line or "ignore_conflicts" in line or "_raw_delete" in line
    ]
    assert lines == []


def test_what_is_swept_is_no_part_of_the_book():
    assert not issubclass(SignInTry, Kept)
    assert not issubclass(JoinCode, Kept)


def test_a_row_refuses_to_be_deleted(machine, do):
    do.open_joint(joint="J1")

    for row in (machine, JointState.objects.get(), DiaryEntry.objects.first()):
        with pytest.raises(NothingIsDeleted):
            row.delete()
    with pytest.raises(NothingIsDeleted):
        JointState.objects.all().delete()
    with pytest.raises(NothingIsDeleted):
        Machine.objects.filter(pk=machine.pk).delete()
    assert JointState.objects.count() == 1


def test_an_entry_in_the_diary_is_never_changed(machine):
    entry = DiaryEntry.objects.get()
    entry.who = "Bob"

    with pytest.raises(ValueError, match="never changed"):
        entry.save()
