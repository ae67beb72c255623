"""Which pieces are on the machine, and which open joints keep the engine from running.

Source: the states of a part in their usual order; common practice, no source.
"""

import pytest

from shimstock.trade.machine.state import JointNow, PieceNow
from shimstock.trade.machine.words import GONE_WORDS, MAY_BE_CLOSED_OVER, JointWord, PartWord
from shimstock.trade.reach.readable import WaitsFor, waits_for
from shimstock.trade.reach.whereabouts import (
    AWAY,
    DONE_WITH,
    NOT_HERE,
    OFF,
    PASSED,
    engine_apart,
    is_off,
)
from trade.scenes.diesel import TODAY, diesel

OPEN = JointNow(JointWord.OPEN, since=TODAY)
SHUT = JointNow(JointWord.TORQUED, sealed_on=TODAY)
ON_MACHINE = {PartWord.FITTED, PartWord.DRY_FITTED, PartWord.BUILT_IN, PartWord.PAINTED}


def test_every_state_of_a_part_says_where_it_is():
    assert set(PartWord) == ON_MACHINE | OFF | NOT_HERE | PASSED
    assert len(ON_MACHINE) + len(OFF) + len(NOT_HERE) + len(PASSED) == len(PartWord)


def test_nothing_that_is_off_or_away_may_be_closed_over():
    assert not MAY_BE_CLOSED_OVER & (OFF | NOT_HERE)
    assert PASSED < MAY_BE_CLOSED_OVER
    assert NOT_HERE | DONE_WITH >= GONE_WORDS
    assert {PartWord.SCRAPPED} == NOT_HERE - AWAY


@pytest.mark.parametrize("word", [PartWord.OFF, PartWord.MEASURED, PartWord.BACK_AND_CHECKED])
@pytest.mark.parametrize("joint", [OPEN, JointNow()])
def test_what_was_taken_off_or_measured_and_not_fitted_is_off(word, joint):
    now = diesel(pieces={("governor-gear", ""): PieceNow(word)}, joints={"governor-base": joint})

    assert is_off(now, "governor-gear")


@pytest.mark.parametrize("word", sorted(PASSED))
@pytest.mark.parametrize(
    ("joint", "off"),
    [(OPEN, True), (JointNow(JointWord.DRY_FITTED), True), (SHUT, False), (JointNow(), False)],
)
def test_what_was_passed_lies_on_the_bench_until_its_joint_is_closed_over_it(word, joint, off):
    now = diesel(pieces={("governor-gear", ""): PieceNow(word)}, joints={"governor-base": joint})

    assert is_off(now, "governor-gear") is off


@pytest.mark.parametrize("word", sorted(ON_MACHINE | AWAY))
def test_what_is_on_the_machine_or_away_is_not_off(word):
    now = diesel(pieces={("governor-gear", ""): PieceNow(word)}, joints={"governor-base": OPEN})

    assert not is_off(now, "governor-gear")


def test_each_piece_of_several_goes_by_its_own_joint():
    passed = {("brake-drum", piece): PieceNow(PartWord.PASSED) for piece in ("left", "right")}
    now = diesel(pieces=passed, joints={"left-brake": OPEN})

    assert [is_off(now, "brake-drum", piece) for piece in ("left", "right")] == [True, False]


def test_a_cover_that_only_shows_it_takes_nothing_off():
    """The bonnet shows the tank, which has a joint of its own."""
    passed = {("fuel-tank", ""): PieceNow(PartWord.PASSED)}

    assert not is_off(diesel(pieces=passed, joints={"bonnet": OPEN}), "fuel-tank")
    assert is_off(diesel(pieces=passed, joints={"bonnet": OPEN, "tank": OPEN}), "fuel-tank")


def test_the_engine_is_apart_where_a_joint_is_open_that_it_needs_shut():
    now = diesel(joints={"head": OPEN, "tank": OPEN, "left-wheel": OPEN, "oil-filter": SHUT})

    assert engine_apart(now) == ("tank", "head")


GEAR_PASSED = {("governor-gear", ""): PieceNow(PartWord.PASSED)}
GEAR_MEASURED = {("governor-gear", ""): PieceNow(PartWord.MEASURED)}
RINGS_MEASURED = {("piston-rings", "1"): PieceNow(PartWord.MEASURED)}


@pytest.mark.parametrize(
    ("figure", "piece", "pieces", "joints", "waits"),
    [
        ("fan-rock", "", GEAR_MEASURED, {}, [WaitsFor("piece", "governor-gear")]),
        ("fan-rock", "", GEAR_PASSED, {"governor-base": SHUT}, []),
        ("compression", "1", RINGS_MEASURED, {}, [WaitsFor("piece", "piston-rings", "1")]),
        ("ring-gap", "1", RINGS_MEASURED, {}, []),  # it is read on the bench
        # the joint that spreads a mesh of the chain, whether the engine could run or not
        ("fan-rock", "", {}, {"governor-base": OPEN}, [WaitsFor("joint", "governor-base")]),
        (
            "governor-shaft-end-float",
            "",
            {},
            {"governor-side-cover": OPEN},
            [WaitsFor("joint", "governor-side-cover")],
        ),
        # one that spreads none of it, or that the engine needs shut only to run
        ("fan-rock", "", {}, {"left-main": OPEN, "governor-side-cover": OPEN}, []),
        ("liner-bore", "1", {}, {"head": OPEN}, []),
        ("compression", "1", {}, {"head": OPEN}, [WaitsFor("joint", "head")]),
        ("compression", "1", {}, {"left-wheel": OPEN, "governor-side-cover": OPEN}, []),
    ],
)
def test_a_figure_waits_for_what_it_is_read_through(figure, piece, pieces, joints, waits):
    assert list(waits_for(diesel(pieces=pieces, joints=joints), figure, piece)) == waits
