"""Whoever works on an open joint takes the cover off; from that day dust comes in again."""

from datetime import timedelta

import pytest

from shimstock.trade.machine.state import JointNow
from shimstock.trade.machine.words import JointWord
from shimstock.trade.reach.findings import findings
from shimstock.workshop.now import machine_now
from workshop.shed_book import MONDAY

LATER = MONDAY + timedelta(days=9)


@pytest.fixture
def covered(do) -> None:
    do.open_joint(joint="J3", at=MONDAY)
    do.cover_joint(joint="J3", at=MONDAY)


def sump(machine) -> JointNow:
    return machine_now(machine).joint("sump-joint")


@pytest.mark.parametrize(
    ("act", "given", "word"),
    [
        ("ready_joint", {"faces_clean": True}, JointWord.FACES_CLEAN),
        ("ready_joint", {"bolts": 20}, JointWord.OPEN),
        ("close_joint", {"dry": True}, JointWord.DRY_FITTED),
    ],
)
def test_work_takes_the_cover_off_and_keeps_the_day_of_opening(
    machine, do, covered, act, given, word
):
    entry = getattr(do, act)(joint="J3", at=LATER, **given)

    now = sump(machine)
    assert (now.word, now.covered, now.since) == (word, False, MONDAY.date())
    assert now.uncovered_on == LATER.date()
    assert entry.says.endswith(", cover off.")
    do.undo(entry)
    assert (sump(machine).covered, sump(machine).uncovered_on) == (True, None)


def test_work_on_a_joint_that_is_clean_already_takes_the_cover_off_too(machine, do):
    do.open_joint(joint="J3")
    do.ready_joint(joint="J3", faces_clean=True)
    do.cover_joint(joint="J3")
    do.ready_joint(joint="J3", bolts=20)

    assert (sump(machine).word, sump(machine).covered) == (JointWord.FACES_CLEAN, False)


def test_what_was_not_covered_is_not_uncovered(machine, do):
    do.open_joint(joint="J3")
    entry = do.ready_joint(joint="J3", faces_clean=True)

    assert sump(machine).uncovered_on is None
    assert "cover off" not in entry.says


@pytest.mark.parametrize("after", ["cover", "close"])
def test_covered_again_or_shut_it_is_uncovered_no_more(machine, do, covered, after):
    do.ready_joint(joint="J3", faces_clean=True, at=LATER)
    if after == "cover":
        do.cover_joint(joint="J3")
    else:
        do.close_joint(joint="J3", gaskets=["sump gasket"], bolts=20)

    assert sump(machine).uncovered_on is None


def test_an_evenings_work_under_the_cover_is_no_finding_until_the_next_day(machine, do, covered):
    do.ready_joint(joint="J3", faces_clean=True, at=LATER)

    assert findings(machine_now(machine, LATER.date())) == ()
    (finding,) = findings(machine_now(machine, LATER.date() + timedelta(days=1)))
    assert finding.what == "sump to case has stood open for 10 days, not covered since 11 Mar 2026"
