"""Slings by the balance of forces, by angle and by length alike."""

from math import cos, radians, sin, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.lifting.sling_by_length import sling_by_length
from shimstock.trade.sums.lifting.sling_tension import sling_tension

angles = st.floats(30, 90)


@given(angle=angles, load=st.floats(1, 1e5))
def test_two_legs_hold_the_load_up(angle, load):
    leg = sling_tension(load=load, angle=angle).value
    assert 2 * leg * sin(radians(angle)) == pytest.approx(load)


@given(included=st.floats(0, 120))
def test_both_ways_of_naming_the_angle_agree(included):
    between = sling_tension(load=500, included=included).value
    # A hair of rounding must not carry 120 degrees over the limit.
    level = min(90.0, 90 - included / 2 + 1e-9)
    assert between == pytest.approx(sling_tension(load=500, angle=level).value)
    assert between == pytest.approx(250 / cos(radians(included / 2)))


@given(angle=angles)
def test_length_and_height_say_the_same_as_the_angle(angle):
    leg = sling_tension(load=500, angle=angle).value
    height = 1000 * sin(radians(angle)) * (1 + 1e-12)
    by_length = sling_by_length(load=250, leg=1000, height=min(1000, height)).value
    assert by_length == pytest.approx(leg)


@given(angle=st.floats(31, 90))
def test_a_flatter_leg_pulls_harder(angle):
    assert (
        sling_tension(load=500, angle=angle - 1).value > sling_tension(load=500, angle=angle).value
    )


def test_of_four_legs_two_are_counted_on():
    two, three, four = (sling_tension(load=500, legs=n, angle=60).value for n in (2, 3, 4))
    assert two == three == four


@pytest.mark.parametrize("angle", [{"angle": 29.9}, {"included": 120.1}])
def test_legs_spread_too_far_are_refused(angle):
    with pytest.raises(NotPossible, match="longer slings or a spreader beam"):
        sling_tension(load=500, **angle)
    sling_tension(load=500, angle=30)
    sling_tension(load=500, included=120)


@pytest.mark.parametrize("angle", [{}, {"angle": 60, "included": 60}])
def test_one_angle_is_wanted(angle):
    with pytest.raises(NotPossible, match="exactly one"):
        sling_tension(load=500, **angle)


def test_one_leg_hangs_straight():
    assert sling_tension(load=500, legs=1, angle=90).value == 500
    with pytest.raises(NotPossible, match="hangs straight"):
        sling_tension(load=500, legs=1, angle=60)


def test_a_leg_is_no_shorter_than_its_height_and_no_flatter_than_30_degrees():
    with pytest.raises(NotPossible, match="swapped"):
        sling_by_length(load=250, leg=48, height=60)
    with pytest.raises(NotPossible, match="flatter than 30 deg"):
        sling_by_length(load=250, leg=121, height=60)
    assert sling_by_length(load=250, leg=60 * sqrt(2), height=60).value == pytest.approx(
        353.55, 1e-4
    )


def test_a_leaned_leg_at_its_rating_pulls_its_upright_rating():
    leaned = sling_by_length(load=250, leg=60, height=48, rated=1000).working.answers["rated"]
    assert sling_by_length(load=leaned.value, leg=60, height=48).value == pytest.approx(1000)
