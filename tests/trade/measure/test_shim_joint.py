"""Shims between the faces of a joint. Direction and sums: common workshop practice, no source."""

import pytest

from published.as_printed import as_printed
from shimstock.trade.machine.reading import read_book
from shimstock.trade.machine.starters import starter_text
from shimstock.trade.measure.shim_joint import (
    moves_with_pack,
    pack_between_faces,
    shimmed_joints,
)
from shimstock.trade.numbers.limits import Range

OFFERED = [0.003, 0.005, 0.010]
WANTED = Range(0.001, 0.004, "in", "0.0010 .. 0.0040 in")


def test_too_much_play_takes_shims_out():
    worked = pack_between_faces(OFFERED, fitted=0.024, end_play=0.011, wanted=WANTED)

    assert worked.value.thickness == as_printed("0.015")
    assert worked.working.value("e_new") == as_printed("0.002")
    assert worked.working.disagreements() == []


def test_too_little_play_puts_shims_in():
    worked = pack_between_faces(OFFERED, fitted=0.010, end_play=0.0, wanted=WANTED)

    assert worked.value.thickness > 0.010
    assert 0.001 <= worked.working.value("e_new") <= 0.004


def test_no_shim_at_all_may_be_right():
    worked = pack_between_faces(OFFERED, fitted=0.003, end_play=0.006, wanted=WANTED)

    assert worked.value.shims == ()
    assert worked.working.value("e_new") == as_printed("0.003")
    assert worked.working.disagreements() == []


def test_play_that_no_pack_can_take_up_is_said():
    with pytest.raises(ValueError, match=r"even without shims 0\.0100 in of play is left"):
        pack_between_faces(OFFERED, fitted=0.001, end_play=0.011, wanted=WANTED)


def test_a_pack_of_shims_too_thick_is_none():
    worked = pack_between_faces([0.010], fitted=0.024, end_play=0.011, wanted=WANTED)

    assert worked.value is None


def test_the_joint_of_one_side_settles_that_side():
    book = read_book(starter_text("two-cylinder-diesel"))

    assert shimmed_joints(book, "axle-end-play", "right") == ("right-axle-seal",)
    assert shimmed_joints(book, "liner-bore", "1") == ()


def test_a_lash_does_not_move_as_its_pack_does():
    assert moves_with_pack("Axle shaft bearing end play")
    assert not moves_with_pack("Fan bevel gear lash")
