from datetime import timedelta

import pytest

from shimstock.trade.machine.state import JointNow
from shimstock.trade.machine.words import JointWord, PartWord
from shimstock.trade.reach.findings import findings
from trade.reach.small import TODAY, machine, piece


def opened(days, joint="hood-bolts", **more):
    state = JointNow(JointWord.OPEN, since=TODAY - timedelta(days=days), **more)
    return findings(machine(joints={joint: state}))


def test_a_machine_in_order_has_no_findings():
    assert findings(machine("hood-bolts")) == ()


@pytest.mark.parametrize(("days", "found"), [(6, 0), (7, 1), (400, 1)])
def test_open_for_seven_days_and_not_covered_is_a_finding(days, found):
    assert len(opened(days)) == found
    assert opened(days, covered=True) == ()


def test_what_must_be_covered_the_same_night_is_found_the_next_day():
    (finding,) = opened(1, "governor-base")

    assert finding.where == "governor-base" and "overnight" in finding.what
    assert opened(0, "governor-base") == ()


def test_rejected_and_sealed_cannot_both_be_true():
    pieces = {("governor", ""): piece(PartWord.REJECTED)}
    sealed = {"cover-face": JointNow(JointWord.TORQUED)}

    (finding,) = findings(machine(joints=sealed, pieces=pieces))

    assert finding.where == "cover-face" and "Governor is rejected" in finding.what
    assert findings(machine("cover-face", pieces=pieces)) == ()


def test_two_makes_on_the_machine_are_a_finding():
    pieces = {
        ("pump", "left"): piece(PartWord.BUILT_IN, maker="Ash"),
        ("pump", "right"): piece(PartWord.BUILT_IN, maker="Birch"),
    }

    (finding,) = findings(machine(pieces=pieces))

    assert (finding.kind, finding.where) == ("set", "pumps")
    on_bench = {key: piece(PartWord.OFF, maker=now.maker) for key, now in pieces.items()}
    assert findings(machine(pieces=on_bench)) == ()


@pytest.mark.parametrize(("bare", "found"), [(0, 0), (1, 1)])
def test_what_was_uncovered_for_work_is_a_finding_on_the_days_after(bare, found):
    uncovered_on = TODAY - timedelta(days=bare)

    assert len(opened(9, uncovered_on=uncovered_on)) == found
    assert len(opened(9, "governor-base", uncovered_on=uncovered_on)) == found
