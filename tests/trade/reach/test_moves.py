from dataclasses import replace
from itertools import pairwise

import pytest

from shimstock.trade.machine.joints import Fasteners
from shimstock.trade.machine.state import JointNow, VerdictNow
from shimstock.trade.machine.words import JointWord, PartWord, Stage, Verdict
from shimstock.trade.reach.moves import (
    JOINT_MOVES,
    PIECE_MOVES,
    may_move_joint,
    may_move_piece,
)
from shimstock.trade.reach.target import UnknownName
from trade.reach.small import machine, piece, whats


def test_every_state_can_be_reached():
    assert set(JOINT_MOVES) == set(JointWord)
    assert set(PIECE_MOVES) == set(PartWord)


def test_every_state_but_the_last_leads_somewhere():
    for words, moves in ((JointWord, JOINT_MOVES), (PartWord, PIECE_MOVES)):
        for word in words:
            onwards = [to for to, move in moves.items() if word in move.start and to != word]
            assert onwards or word is PartWord.SCRAPPED, word


def test_opening_needs_what_is_before_it():
    assert may_move_joint(machine(), "hood-bolts", JointWord.OPEN) == ()
    (reason,) = may_move_joint(machine(), "tank-straps", JointWord.OPEN)
    assert reason.would_do == "open Hood to case first"


def test_sealing_asks_everything_that_closing_asks():
    reasons = may_move_joint(machine("hood-bolts", "cover-face"), "cover-face", JointWord.SEALED)

    assert {why for _, why in whats(reasons)} >= {"is not ready", "faces are not clean"}


def test_a_joint_does_not_jump_from_open_to_leak_checked():
    (reason,) = may_move_joint(machine("hood-bolts"), "hood-bolts", JointWord.LEAK_CHECKED)

    assert reason.hard and "cannot become leak-checked" in reason.why
    assert "close (sealed)" in reason.would_do


def test_a_leak_is_opened_again():
    now = machine(joints={"hood-bolts": JointNow(JointWord.LEAKING)})

    assert may_move_joint(now, "hood-bolts", JointWord.OPEN) == ()
    assert may_move_joint(now, "hood-bolts", JointWord.LEAK_CHECKED) != ()


def test_a_leak_seen_on_a_joint_that_nobody_touched():
    assert may_move_joint(machine(), "hood-bolts", JointWord.LEAKING) == ()


def moved(word, to, part="pump", which="left", **more):
    now = machine(pieces={(part, which): piece(word)}, **more)
    return may_move_piece(now, part, which, to)


def test_a_piece_goes_from_the_machine_over_the_bench_and_back():
    way = [
        PartWord.FITTED,
        PartWord.OFF,
        PartWord.BAGGED,
        PartWord.WASHED,
        PartWord.MEASURED,
        PartWord.PASSED,
        PartWord.DRY_FITTED,
        PartWord.BUILT_IN,
        PartWord.PAINTED,
    ]
    for word, to in pairwise(way):
        assert moved(word, to) == (), (word, to)


def test_a_rejected_piece_is_not_built_in():
    (reason,) = moved(PartWord.REJECTED, PartWord.BUILT_IN)

    assert reason.hard and reason.what == "Pump, left"


def test_a_piece_that_is_out_comes_back_checked():
    (reason,) = moved(PartWord.AT_MACHINIST, PartWord.PASSED)

    assert reason.would_do == "from here: fetch back (back and checked)"


def test_two_makes_are_never_built_in_unless_proved():
    def build_in(**more):
        pieces = {
            ("pump", "left"): piece(maker="Ash", **more),
            ("pump", "right"): piece(maker="Birch", **more),
        }
        return may_move_piece(machine(pieces=pieces), "pump", "left", PartWord.BUILT_IN)

    (reason,) = build_in()
    assert reason.hard and "of two makes" in reason.why
    assert build_in(proved_pair=True) == ()


def test_a_piece_is_not_rejected_while_it_is_sealed_in():
    sealed = {"left-pump-seat": JointNow(JointWord.SEALED)}

    (reason,) = moved(PartWord.FITTED, PartWord.REJECTED, joints=sealed)
    assert reason.hard and reason.would_do == "open that joint first"
    assert moved(PartWord.FITTED, PartWord.REJECTED) == ()  # nobody has sealed it
    assert moved(PartWord.FITTED, PartWord.REJECTED, which="right", joints=sealed) == ()


def test_out_of_limit_is_not_passed_without_a_person_and_a_reason():
    worn = VerdictNow(Verdict.WORN_OUT, "0.9 mm, at least 1.0")
    accepted = VerdictNow(Verdict.WORN_OUT, accepted="Ann, 1 June 2026: for the show ring only")

    (reason,) = moved(
        PartWord.MEASURED, PartWord.PASSED, verdicts={("delivery", "left", Stage.FOUND): worn}
    )
    assert "0.9 mm" in reason.why
    found = {("delivery", "left", Stage.FOUND): accepted}
    assert moved(PartWord.MEASURED, PartWord.PASSED, verdicts=found) == ()


def test_a_sized_part_is_not_ordered_before_it_is_measured():
    (reason,) = moved(PartWord.WANTED, PartWord.ON_ORDER)
    assert "do not order sized parts yet" in reason.would_do

    read = {("delivery", "left", Stage.FOUND): VerdictNow(Verdict.WORN_OUT)}
    assert moved(PartWord.WANTED, PartWord.ON_ORDER, verdicts=read) == ()
    # a part whose figures come in no sizes
    assert moved(PartWord.WANTED, PartWord.ON_ORDER, part="governor", which="") == ()


def test_a_piece_must_be_named_where_there_are_several():
    with pytest.raises(UnknownName, match="say which: left or right"):
        may_move_piece(machine(), "pump", "", PartWord.OFF)
    with pytest.raises(UnknownName, match="there is left, right"):
        may_move_piece(machine(), "pump", "middle", PartWord.OFF)
    with pytest.raises(UnknownName, match="did you mean pump"):
        may_move_piece(machine(), "pumps", "", PartWord.OFF)


@pytest.mark.parametrize("to", [JointWord.SEALED, JointWord.TORQUED, JointWord.DRY_FITTED])
def test_a_joint_that_was_never_open_is_not_closed(to):
    (reason,) = may_move_joint(machine(), "hood-bolts", to)

    assert reason.hard and f"cannot become {to}" in reason.why


@pytest.mark.parametrize(
    ("word", "to"),
    [
        (PartWord.PASSED, PartWord.SCRAPPED),
        (PartWord.BAGGED, PartWord.ON_ORDER),
        (PartWord.FITTED, PartWord.IN_THE_POST),
        (PartWord.LENT, PartWord.BUILT_IN),
        (PartWord.SCRAPPED, PartWord.PASSED),
        (PartWord.AT_MACHINIST, PartWord.DRY_FITTED),
    ],
)
def test_a_piece_leaves_no_state_out(word, to):
    (reason,) = moved(word, to, part="governor", which="")

    assert reason.hard and f"is {word}, and cannot become {to}" in reason.why


def test_one_of_a_pair_is_not_proved_by_itself():
    pieces = {
        ("pump", "left"): piece(maker="Ash", proved_pair=True),
        ("pump", "right"): piece(maker="Birch"),
    }

    (reason,) = may_move_piece(machine(pieces=pieces), "pump", "left", PartWord.BUILT_IN)

    assert "not proved a pair" in reason.why


def test_a_part_does_not_come_off_from_behind_a_joint_that_is_sealed_over_it():
    sealed = {"cover-face": JointNow(JointWord.SEALED)}
    now = machine("hood-bolts", joints=sealed, pieces={("governor", ""): piece(PartWord.BUILT_IN)})

    (reason,) = may_move_piece(now, "governor", "", PartWord.OFF)
    assert reason.hard and reason.why == "is sealed over it"

    another_way = machine("hood-bolts", "governor-base", joints=sealed, pieces=now.pieces)
    assert may_move_piece(another_way, "governor", "", PartWord.OFF) == ()


def test_a_hot_joint_may_be_tightened_again_after_its_leak_check():
    now = machine(joints={"hood-bolts": JointNow(JointWord.LEAK_CHECKED)})

    assert may_move_joint(now, "hood-bolts", JointWord.TORQUED) == ()


@pytest.mark.parametrize("seen", [JointWord.LEAK_CHECKED, JointWord.WEEPING, JointWord.LEAKING])
def test_where_the_book_has_a_torque_no_leak_check_comes_before_it(seen):
    # States in the usual order: sealed, torqued, leak-checked; common practice, no source.
    (reason,) = may_move_joint(_closed(JointWord.SEALED, "24 lbf.ft"), "cover-face", seen)
    assert reason.hard and reason.why.startswith("is sealed, and not torqued yet")
    assert "write down the torque first" in reason.would_do

    assert may_move_joint(_closed(JointWord.TORQUED, "24 lbf.ft"), "cover-face", seen) == ()
    assert may_move_joint(_closed(JointWord.UNDISTURBED, "24 lbf.ft"), "cover-face", seen) == ()
    assert may_move_joint(_closed(JointWord.SEALED, None), "cover-face", seen) == ()


def _closed(word, torque):
    now = machine(joints={"cover-face": JointNow(word)})
    bolts = Fasteners.model_validate({"count": 12, "what": "bolt", "torque": torque})
    cover = now.book.joints["cover-face"].model_copy(update={"fasteners": (bolts,)})
    book = now.book.model_copy(update={"joints": {**now.book.joints, "cover-face": cover}})
    return replace(now, book=book)


def test_a_state_is_said_as_the_end_of_a_sentence():
    now = machine(joints={"hood-bolts": JointNow(JointWord.GASKET_READY)})

    (reason,) = may_move_joint(now, "hood-bolts", JointWord.LEAK_CHECKED)
    assert reason.why.startswith("has its gasket ready, and cannot")
