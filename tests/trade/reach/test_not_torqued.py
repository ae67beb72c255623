"""A joint that was closed and not torqued stands before everything that is run or driven.

Source: a thread that is only nipped works loose; common practice, no source.
"""

from dataclasses import replace

import pytest

from shimstock.trade.machine.state import JointNow
from shimstock.trade.machine.words import JointWord
from shimstock.trade.reach import not_torqued
from shimstock.trade.reach.gates import gate, may_pass
from trade.reach.small import TODAY, book, machine
from trade.scenes.diesel import diesel

SEALED = JointNow(JointWord.SEALED, sealed_on=TODAY)
STARTED = {"stop": ("yes", ""), "plate": ("yes", ""), "oil": ("yes", "")}
TORQUE = {"fasteners": {"count": 4, "torque": "24 lbf.ft"}}
BOOK = book(
    {
        "governor-base": {
            "name": "Governor to case", "mark": "J4", "between": ["governor", "case"],
            "seals": "oil", "after": ["cover-face"], "open": 45, "close": 60, **TORQUE,
        },
        "rod-pin": {
            "name": "Rod", "mark": "J5", "between": ["rod", "governor"],
            "seals": "nothing", "open": 5, "close": 5, **TORQUE,
        },
    }
)  # fmt: skip


@pytest.mark.parametrize("key", ["first-start", "road", "handing-over"])
@pytest.mark.parametrize("joint", ["flywheel-clamp", "rod-caps"])
def test_no_flywheel_or_rod_cap_is_run_on_that_was_only_nipped(key, joint):
    def torque(word):
        points = gate(diesel(joints={joint: JointNow(word, sealed_on=TODAY)}), key).open_points
        return [(p.where, p.hard) for p in points if p.kind == "torque"]

    assert torque(JointWord.SEALED) == [(joint, True)]
    assert torque(JointWord.TORQUED) == []


def test_no_reason_replaces_the_torque():
    signed = {**STARTED, "torque:rod-pin": ("not needed", "tight enough")}

    (reason,) = may_pass(
        machine(of=BOOK, joints={"rod-pin": SEALED}, answers=signed), "first-start"
    )

    assert reason.hard and reason.why == "Rod is closed, not torqued"


def test_a_joint_for_which_the_book_has_no_torque_is_done_when_it_is_closed():
    assert may_pass(machine(joints={"rod-pin": SEALED}, answers=STARTED), "first-start") == ()


def test_what_was_closed_over_it_is_opened_again_and_its_minutes_count():
    now = machine(of=BOOK, joints={"governor-base": SEALED, "rod-pin": SEALED}, answers=STARTED)
    view = gate(now, "first-start")
    point, rod = view.open_points

    assert point.would_do.startswith("open Hood to case and Governor cover to case first, then")
    assert (point.minutes, rod.minutes) == (10 + 15 + 15 + 20 + 10, 10)
    assert view.minutes == 10 + 15 + 15 + 20 + 2 * 10
    assert view.working.disagreements() == []


def test_the_way_to_what_is_not_torqued_is_looked_for_once_for_all_gates(monkeypatch):
    solved, way = [], not_torqued.way_in

    def counted(now, targets):
        solved.append(tuple(target.key for target in targets))
        return way(now, targets)

    monkeypatch.setattr(not_torqued, "way_in", counted)
    now = diesel(joints={"flywheel-clamp": SEALED, "rod-caps": SEALED})
    views = [gate(now, key) for key in now.book.gates]

    asked = [view.key for view in views if any(p.kind == "torque" for p in view.open_points)]
    assert len(asked) > 1
    assert sorted(solved) == sorted(set(solved))
    assert {len(joints) for joints in solved} == {1, 2}


def test_another_state_of_the_machine_has_a_way_of_its_own():
    """What lies open already need not be opened."""
    closed = machine(of=BOOK, joints={"governor-base": SEALED})
    before = not_torqued.open_for(closed, ("governor-base",))
    hood_off = replace(closed, joints={**closed.joints, "hood-bolts": JointNow(JointWord.OPEN)})

    assert not_torqued.open_for(hood_off, ("governor-base",)) == before[1:]
