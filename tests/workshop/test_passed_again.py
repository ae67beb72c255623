"""What is opened after a gate was passed must be passed again."""

import pytest

from shimstock.workshop.now import machine_now
from shimstock.workshop.refused import Refused


@pytest.fixture
def painted(do):
    for joint in ("J2", "J3"):
        do.leak_check(joint=joint, result="dry", chalk=True)
    do.answer_point(point="degreased", answer="yes")
    do.pass_gate(gate="paint")


def test_opening_a_joint_takes_the_pass_back_and_says_so(machine, do, painted):
    entry = do.open_joint(joint="J1")

    assert machine_now(machine).passed == frozenset()
    assert entry.says.endswith("To be passed again: Paint.")


def test_undoing_the_opening_brings_the_pass_back(machine, do, painted):
    do.undo(do.open_joint(joint="J1"))

    assert machine_now(machine).passed == {"paint"}


def test_it_can_be_passed_again_once_all_is_as_it_was(machine, do, painted):
    with pytest.raises(Refused, match="passed already"):
        do.pass_gate(gate="paint")
    do.open_joint(joint="J1")

    do.pass_gate(gate="paint")

    assert machine_now(machine).passed == {"paint"}
