import subprocess
import sys

import pytest

from shimstock.workshop.changes import changes_told
from shimstock.workshop.models import DiaryEntry
from workshop.shed_book import LINER_1, MONDAY, TEXT


def test_a_changed_word_stands_before_and_after(do):
    do.open_joint(joint="J3", at=MONDAY)
    entry = do.close_joint(
        joint="J3", faces_clean=True, gaskets=["sump gasket"], bolts=20, at=MONDAY
    )

    assert changes_told(entry) == (
        "joint sump-joint: word open -> sealed",
        "joint sump-joint: bolts ready none -> 20",
        "joint sump-joint: faces clean no -> yes",
        "joint sump-joint: gaskets ready none -> sump gasket",
        "joint sump-joint: sealed on none -> 2026-03-02",
    )


def test_a_joint_touched_for_the_first_time_was_undisturbed(do):
    entry = do.open_joint(joint="J3", at=MONDAY)

    assert "joint sump-joint: word undisturbed -> open" in changes_told(entry)


def test_a_new_reading_tells_what_was_written_and_leaves_out_what_is_empty(do):
    took = do.take_reading(figure="bore", piece="1", typed=LINER_1, at=MONDAY)

    told = changes_told(took.entry)

    assert f"reading bore, 1, as found: typed {', '.join(LINER_1)}" in told
    assert "reading bore, 1, as found: instrument bore gauge" in told
    assert "verdict bore, 1, as found: verdict serviceable" in told
    assert not any(word in line for line in told for word in ("accepted", "machine", "current"))


def test_a_reading_that_is_superseded_or_withdrawn_is_told(do):
    do.take_reading(figure="end-float", typed="0.006")
    took = do.take_reading(figure="end-float", typed="0.007")
    undone = do.undo(took.entry)

    assert "reading end-float, as found: the earlier one counts no more" in changes_told(took.entry)
    assert "reading end-float, as found: is withdrawn" in changes_told(undone)


def test_a_whole_book_is_named_and_not_printed(do):
    entry = do.change_book(book_text=TEXT.replace("max 5.7600 in", "max 5.7580 in"))

    assert changes_told(entry) == ("machine: book text changed",)
    booked = DiaryEntry.objects.first()
    assert "machine: book text written" in changes_told(booked)
    assert "machine: name The grey one" in changes_told(booked)


def test_a_piece_and_an_undo_are_told(do):
    entry = do.move_piece(part="pump", piece="left", to="off", maker="round mark", at=MONDAY)
    undone = do.undo(entry)

    assert "piece pump, left: word off -> fitted" in changes_told(undone)
    assert "piece pump, left: maker round mark -> none" in changes_told(undone)


LOOKED = """
import sys
from pathlib import Path
from shimstock.site.start import start
start(Path(sys.argv[1]))
import {module}
print(*sys.modules)
"""


@pytest.mark.parametrize(
    "module", ["shimstock.workshop.find", "shimstock.workshop.changes", "shimstock.workshop.ledger"]
)
def test_what_only_names_things_does_not_wait_for_books(module, tmp_path):
    code = LOOKED.format(module=module)
    seen = subprocess.run(
        [sys.executable, "-c", code, str(tmp_path / "shed")], capture_output=True, text=True
    )

    assert seen.returncode == 0, seen.stderr
    assert module in seen.stdout.split()
    assert "pydantic" not in seen.stdout.split()
