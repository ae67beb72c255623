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


def test_play_tells_the_likely_play_of_each_link_with_its_interval(in_demo, run):
    told = way(run, "shimstock play brackwater fan-drive")
    governor = told["links"][1]["play"]

    assert governor["low"] < governor["likely"] < governor["high"]
    assert governor["over"] > 0.99 and governor["parted"]
    assert governor["right_gasket"]["likely"] < governor["likely"]
    assert told["trouble"] == ""
    assert "X" in run("shimstock play brackwater fan-drive").out


def test_play_says_what_can_hurt_on_the_way_to_the_next_reading(in_demo, run):
    run("shimstock read brackwater crankshaft-end-float '0.022 in'")
    told = way(run, "shimstock play brackwater crankshaft-end-float")

    assert told["next"]["opening"] > 0
    assert any("Lifting head" in caution for caution in told["cautions"])


def test_play_without_a_name_lists_the_chains_of_the_book(in_demo, run):
    ran = run("shimstock play brackwater")

    assert ran.code != 0
    assert "left-brake-linkage" in " ".join(ran.err.split())


SPROCKET = "shimstock reach lowmere left-sprocket"


def while_open(told, joint):
    (found,) = [each for each in told["while_open"] if each["joint"] == joint]
    return found["chance"]


def test_stand_ins_stand_in_the_heading_until_they_are_typed(in_demo, run):
    shown = " ".join(run(SPROCKET).out.split())
    typed = run(f"{SPROCKET} --rate 12 --touch-up 30 --seal-price J53=16").out

    assert "if an hour is worth 10 (stand-in), touching up paint 60 min (stand-in)" in shown
    assert "seals cost nothing (stand-in)" in shown
    assert "an hour is worth 12, touching up paint 30 min, seals as typed, all others" in " ".join(
        typed.split()
    )


def test_money_for_the_seals_raises_the_chance_at_which_it_pays(in_demo, run):
    plain = way(run, SPROCKET)
    joint = plain["while_open"][0]["joint"]
    dear = way(run, f"{SPROCKET} --seal-price {joint}=40")

    # (150/60·10 + 40) / ((860 + 60)/60·10 + 40): the book's minutes and paint; common practice
    assert while_open(plain, joint) == pytest.approx(25 / (920 / 6))
    assert while_open(dear, joint) == pytest.approx(65 / (920 / 6 + 40))


@pytest.mark.parametrize("typed", ["J53", "J53=cheap", "J53=-1", "J53=inf"])
def test_a_price_that_is_none_is_refused(typed, in_demo, run):
    ran = run(f"{SPROCKET} --seal-price {typed}")

    assert ran.code == 2
    assert "J54=16 would do" in " ".join(ran.err.split())


def test_nothing_to_weigh_is_said(in_demo, run):
    ran = run(f"{SPROCKET} --rate 0")

    assert ran.code == 2
    assert "--rate 10 would do" in " ".join(ran.err.split())


def test_the_way_says_the_torque_what_comes_to_light_and_how_to_close(in_demo, run):
    shown = " ".join(run("shimstock reach brackwater left-main").out.split())
    told = way(run, "shimstock reach brackwater left-main")

    assert "8 bolts 1/2-13 UNC, 55 lbf.ft" in shown and "(stand-in)" in shown
    assert "Comes to light J36: timing marks" in shown
    assert "Close in the opposite order." in shown
    assert told["closes"] == [joint["joint"] for joint in told["opens"]][::-1]
    assert told["proven"] is True


def test_several_ways_are_counted(in_demo, run):
    from shimstock.workshop.ways import how_sure

    class Way:
        alternatives, proven = 3, True

    assert how_sure(Way) == "Cheapest of 3 ways, proven."
