"""Not every check can be done by everybody, with anything."""

from shimstock.trade.faults.at_hand import AtHand, offered
from shimstock.trade.faults.network import Check

CHECKS = {
    "oil": Check(3),
    "union": Check(10, dangers=("fuel-spray",)),
    "lift": Check(10, hands=2),
    "dial": Check(20, needs=("dial gauge",)),
}


def test_one_grown_person_with_everything_at_hand():
    can, cannot = offered(CHECKS, AtHand())

    assert set(can) == {"oil", "union", "dial"}
    assert cannot == {"lift": "needs 2 people"}


def test_what_is_dangerous_is_not_for_a_helper_under_age():
    can, cannot = offered(CHECKS, AtHand(people=2, young=True))

    assert set(can) == {"oil", "lift", "dial"}
    assert cannot["union"] == "not for a helper under age: fuel-spray"


def test_a_tool_that_is_not_there():
    _, cannot = offered(CHECKS, AtHand(people=2, missing=frozenset({"dial gauge"})))

    assert cannot == {"dial": "needs what is not at hand: dial gauge"}
