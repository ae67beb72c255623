"""A shim pack, as it is asked for and answered."""

import json

import pytest

AXLE = "shimstock shims brackwater F065 right --fitted 0.024 --offered 0.003,0.005,0.010"


def test_the_pack_and_the_play_to_expect(in_demo, run):
    told = json.loads(run(f"{AXLE} --play 0.011 --working --json").out)

    assert told["joint"] == "right-axle-seal"
    assert told["shims"] == [0.010, 0.005]
    assert told["expect"] == pytest.approx(0.002)
    assert told["working"][-1].startswith("e_new = e + t − t_0 = 0.011 + 0.015 − 0.024 = 0.002 in")


def test_the_latest_reading_is_taken_where_no_play_is_typed(in_demo, run):
    assert run("shimstock read brackwater F065 right 0.0110").code == 0

    shown = run(AXLE).out
    assert "Lay together 1 × 0.010 in, 1 × 0.005 in: 0.0150 in, in place of 0.0240 in." in shown
    assert "0.0010 to 0.0040 in" in shown and "[stand-in figure]" in shown
    assert "t_min" not in shown


def test_behind_a_bearing_a_thicker_pack_takes_up_play(in_demo, run):
    told = json.loads(run(f"{AXLE} --play 0.011 --behind-bearing --json").out)

    assert told["thickness"] > 0.024
    assert 0.001 <= told["expect"] <= 0.004


def test_a_unit_after_the_last_size_belongs_to_all(in_demo, run):
    line = "shimstock shims brackwater F065 right --fitted '0.6 mm' --offered '0.15,0.25 mm'"
    shown = run(f"{line} --play '0.28 mm'").out

    assert "1 × 0.25 mm, 1 × 0.15 mm: 0.0157 in" in shown


@pytest.mark.parametrize(
    ("line", "wrong"),
    [
        (AXLE, "has not been read"),
        ("shimstock shims brackwater F001 1 --fitted 1 --offered 2", "is not set by shims"),
        ("shimstock shims brackwater F071 --fitted .1 --offered .1", "as much as the pack"),
        (f"{AXLE[:-18]} 0.010 --play 0.011", "no pack of up to twelve of these shims"),
        (f"{AXLE} --play 0.9", "even without shims 0.8760 in of play is left"),
        (f"{AXLE} --play long", "long"),
    ],
)
def test_where_there_is_no_pack_it_says_why_and_what_would_do(line, wrong, in_demo, run):
    ran = run(line)

    assert ran.code in (1, 2) and ran.out == ""
    assert wrong in " ".join(ran.err.split())
