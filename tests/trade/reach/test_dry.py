"""Which joints are seen dry, and when a run cannot have shown it."""

from dataclasses import replace
from datetime import timedelta

import pytest

from shimstock.trade.machine.state import JointNow
from shimstock.trade.machine.words import JointWord
from shimstock.trade.numbers.not_understood import HardlyMeant
from shimstock.trade.reach.dry import chalk_dry, is_dry, refuse_not_run
from trade.scenes.diesel import TODAY, diesel

BEFORE = TODAY - timedelta(days=90)
PLATE = JointNow(JointWord.TORQUED, sealed_on=TODAY)
HEAD = JointNow(JointWord.PARKED_OPEN, since=BEFORE)


def test_dry_by_a_run_is_asked_about_while_the_head_is_off():
    with pytest.raises(HardlyMeant, match="Cylinder head to cylinder block since 6 Mar") as asked:
        refuse_not_run(diesel(joints={"oil-pump-plate": PLATE, "head": HEAD}), "oil-pump-plate")

    assert "standing" in asked.value.would_do[0]


def test_nothing_is_asked_of_an_engine_that_is_whole_or_was_when_the_joint_was_closed():
    refuse_not_run(diesel(joints={"oil-pump-plate": PLATE}), "oil-pump-plate")
    long_ago = replace(PLATE, sealed_on=BEFORE - timedelta(days=1))
    refuse_not_run(diesel(joints={"oil-pump-plate": long_ago, "head": HEAD}), "oil-pump-plate")


def test_a_joint_closed_on_the_day_the_head_came_off_may_not_have_been_run():
    """The day alone does not tell which was first."""
    same_day = replace(PLATE, sealed_on=BEFORE)

    with pytest.raises(HardlyMeant, match="Cylinder head"):
        refuse_not_run(diesel(joints={"oil-pump-plate": same_day, "head": HEAD}), "oil-pump-plate")


def test_a_wheel_off_does_not_keep_the_engine_from_running():
    wheel = {"left-wheel": JointNow(JointWord.OPEN, since=BEFORE)}

    refuse_not_run(diesel(joints={"oil-pump-plate": PLATE, **wheel}), "oil-pump-plate")


@pytest.mark.parametrize(
    ("word", "closed", "dry"),
    [
        (JointWord.UNDISTURBED, None, True),
        (JointWord.SEALED, TODAY, True),
        (JointWord.TORQUED, BEFORE, True),
        (JointWord.TORQUED, TODAY + timedelta(days=1), False),
        (JointWord.TORQUED, None, False),
        (JointWord.LEAKING, BEFORE, False),
        (JointWord.OPEN, None, False),
    ],
)
def test_chalk_counts_while_the_joint_stays_as_it_was_seen(word, closed, dry):
    joint = JointNow(word, sealed_on=closed, dry_chalked_on=TODAY)

    assert chalk_dry(joint) is dry
    assert is_dry(diesel(joints={"oil-pump-plate": joint}), "oil-pump-plate") is dry
