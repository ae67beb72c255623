import json

import pytest


def way(run, line):
    ran = run(f"{line} --json")
    assert ran.code == 0, ran.err
    return json.loads(ran.out)


def test_minutes_are_those_of_the_joints_that_are_named(in_demo, run):
    told = way(run, "shimstock reach brackwater right-main")

    assert told["minutes_open"] == sum(joint["open"] for joint in told["opens"])
    assert told["minutes_close"] == sum(joint["close"] for joint in told["opens"])
    assert told["opens"][-1]["joint"] == "right-main"


def test_joints_that_stand_open_cost_nothing(in_demo, run):
    told = way(run, "shimstock reach brackwater timing-cover")

    assert [joint["joint"] for joint in told["opens"]] == ["timing-cover"]
    assert told["open_already"] == ["flywheel-clamp"]


def test_several_targets_share_their_way(in_demo, run):
    both = way(run, "shimstock reach lowmere left-sprocket right-sprocket")
    left = way(run, "shimstock reach lowmere left-sprocket")
    right = way(run, "shimstock reach lowmere right-sprocket")

    assert both["minutes_open"] == pytest.approx(left["minutes_open"] + right["minutes_open"])


def test_taking_a_part_off_opens_more_than_seeing_it(in_demo, run):
    seen = way(run, "shimstock reach lowmere governor-housing")
    off = way(run, "shimstock reach lowmere governor-housing --off")

    assert len(off["opens"]) > len(seen["opens"])


def test_cautions_stand_above_the_way(in_demo, run):
    shown = run("shimstock reach brackwater left-brake").out

    assert shown.index("CAUTION: Asbestos") < shown.index("Way in to")


def test_play_says_what_to_hold_next_where_a_hold_was_not_read(in_demo, run):
    told = way(run, "shimstock play lowmere magneto-drive")

    assert told["total"] is None
    assert told["next_hold"]
