"""Four things that are refused, not warned of, on every starter where they can happen."""

import pytest

from shimstock.trade.machine.starters import starter_names
from shimstock.trade.machine.state import JointNow, MachineNow
from shimstock.trade.machine.words import JointWord
from shimstock.trade.reach.closing import why_not_close
from shimstock.trade.reach.gates import gate, may_pass
from trade.scenes.diesel import TODAY, signed, starter

EVERY = [name for name in starter_names() if starter(name).joints]


def with_all_but(name, key, *without, **instead):
    """A machine on which everything that a gate asks is answered, but for some points."""
    book = starter(name)
    dry = {joint: JointNow(JointWord.LEAK_CHECKED) for joint in book.on_paint}
    points = book.gates[key].points
    answers = {
        point: signed(entry.answers[0] if entry.answers else "Tom")
        for point, entry in points.items()
        if point not in without
    }
    answers |= {point: signed(*said) for point, said in instead.items()}
    passed = frozenset(book.gates[key].passed_before)
    return MachineNow(book, TODAY, joints=dry, answers=answers, passed=passed)


@pytest.mark.parametrize("name", EVERY)
@pytest.mark.parametrize("key", ["paint", "first-start", "road", "handing-over"])
def test_a_machine_on_which_all_is_answered_passes(name, key):
    assert may_pass(with_all_but(name, key), key) == ()


def refused(name, key, point, ways=("no", "not needed", "")):
    """Neither silence, nor a no, nor a reason written down gets past a hard point."""
    for machine in (
        with_all_but(name, key, point),
        *(with_all_but(name, key, **{point: (said, "a very good reason")}) for said in ways),
    ):
        (reason,) = may_pass(machine, key)
        assert reason.hard
        assert [p.where for p in gate(machine, key).open_points] == [point]


@pytest.mark.parametrize("name", EVERY)
def test_no_first_start_without_a_proved_stop(name):
    refused(name, "first-start", "stop-proved")


def test_no_first_start_of_a_diesel_without_a_plate_for_the_inlet():
    refused("two-cylinder-diesel", "first-start", "inlet-plate", ("no", "yes", "nobody", "", "—"))


@pytest.mark.parametrize("name", EVERY)
@pytest.mark.parametrize("point", ["turned-by-hand", "out-of-drive", "wheels-chocked"])
def test_no_first_start_before_the_engine_was_turned_and_is_out_of_drive(name, point):
    """Turned by hand, in neutral, chocked: common practice, no source."""
    (reason,) = may_pass(with_all_but(name, "first-start", point), "first-start")
    assert reason.why == starter(name).gates["first-start"].points[point].ask


@pytest.mark.parametrize("name", EVERY)
def test_no_two_pack_paint_without_saying_who_has_air_fed_equipment(name):
    for said in (None, "nobody", "no one", "no", "", "not needed"):
        instead = {"paint-kind": ("two-pack",)}
        if said is not None:
            instead["air-fed"] = (said, "a filter mask will do")
        machine = with_all_but(name, "paint", "air-fed", **instead)
        (reason,) = may_pass(machine, "paint")
        assert reason.hard and "air-fed" in reason.why
    named = {"paint-kind": ("two-pack",), "air-fed": ("Tom of the body shop",)}
    assert may_pass(with_all_but(name, "paint", **named), "paint") == ()


@pytest.mark.parametrize("name", EVERY)
def test_which_paint_goes_on_cannot_be_left_open(name):
    refused(name, "paint", "paint-kind")


@pytest.mark.parametrize("name", EVERY)
def test_no_test_drive_without_the_brake_test(name):
    refused(name, "road", "brake-test")


@pytest.mark.parametrize("name", EVERY)
def test_no_road_with_linings_unanswered(name):
    refused(name, "road", "linings")


@pytest.mark.parametrize("name", EVERY)
def test_no_joint_over_linings_is_closed_before_they_are_answered(name):
    book = starter(name)
    over_linings = [key for key, joint in book.joints.items() if "asbestos" in joint.dangers]
    assert over_linings
    for key in over_linings:
        opened = MachineNow(book, TODAY, joints={key: JointNow(JointWord.OPEN)})
        assert any(r.hard and "asbestos" in r.why for r in why_not_close(opened, key)), key
