"""Weighted governors against one another and against a balance of moments."""

from math import asin, cos, pi, sin, tan

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.governor.porter_speed import porter_speed
from shimstock.trade.sums.governor.proell_speed import proell_speed
from shimstock.trade.sums.governor.watt_speed import watt_speed

G = 9.80665


@given(st.floats(5, 80), st.floats(0.5, 10))
def test_without_a_sleeve_a_porter_is_a_watt(angle, mass):
    radius = 300 * sin(angle * pi / 180)
    watt = watt_speed(arm=300, angle=angle).value.speed
    assert porter_speed(arm=300, radius=radius, mass=mass, sleeve=0).value == pytest.approx(watt)


@given(st.floats(50, 240), st.floats(0.5, 10), st.floats(0, 60))
def test_without_an_extension_a_proell_is_a_porter(radius, mass, sleeve):
    balls = {"arm": 250, "radius": radius, "mass": mass, "sleeve": sleeve}
    assert proell_speed(**balls, extension=0).value == pytest.approx(porter_speed(**balls).value)
    assert proell_speed(**balls, extension=50).value < porter_speed(**balls).value


@given(st.floats(40, 150), st.floats(40, 80), st.floats(0.5, 10), st.floats(1, 60))
def test_offset_and_unequal_arms_keep_the_ball_in_balance(radius, offset, mass, sleeve):
    """Pulls of both arms, weight and centrifugal force on one ball add up to nothing."""
    if radius <= offset:
        radius += 60
    arms = {"arm": 300, "lower_arm": 250, "upper_offset": 20, "lower_offset": offset}
    speed = porter_speed(**arms, radius=radius, mass=mass, sleeve=sleeve).value
    up, down = asin((radius - 20) / 300), asin((radius - offset) / 250)
    lower = sleeve * G / 2 / cos(down)
    upper = (mass * G + sleeve * G / 2) / cos(up)
    inwards = upper * sin(up) + lower * sin(down)
    assert mass * (speed * pi / 30) ** 2 * radius / 1000 == pytest.approx(inwards)


def test_a_proell_is_in_balance_about_its_instantaneous_centre():
    arm, extension, radius, mass, sleeve = 0.25, 0.1, 0.15, 5, 40
    lean = asin(radius / arm)
    height = arm * cos(lean)

    def moment(speed):
        pull = mass * (speed * pi / 30) ** 2 * radius
        down = mass * G + sleeve * G / 2
        return pull * (height + extension) - down * radius - sleeve * G / 2 * height * tan(lean)

    met = brentq(moment, 1, 1000)
    got = proell_speed(arm=250, extension=100, radius=150, mass=5, sleeve=40).value
    assert got == pytest.approx(met)


@given(st.floats(50, 280), st.floats(1, 19))
def test_further_out_is_faster(radius, more):
    balls = {"arm": 300, "mass": 6, "sleeve": 18}
    slow = porter_speed(**balls, radius=radius).value
    assert porter_speed(**balls, radius=radius + more).value > slow


@pytest.mark.parametrize(
    ("given_", "said"),
    [
        ({"radius": 300}, "upper arm 300 mm .* cannot stand at a radius of 300 mm"),
        ({"lower_arm": 150}, "lower arm 150 mm"),
        ({"lower_offset": 200}, "lower arm 300 mm with its pivot 200 mm off"),
    ],
)
def test_arms_that_cannot_reach_are_refused(given_, said):
    with pytest.raises(NotPossible, match=said):
        porter_speed(**{"arm": 300, "radius": 200, "mass": 6, "sleeve": 18, **given_})


def test_balls_above_the_pivot_and_short_arms_are_refused():
    with pytest.raises(NotPossible, match="takes the balls to the pivot"):
        watt_speed(arm=400, angle=60, rise=200.1)
    with pytest.raises(NotPossible, match="must be less than the arm, 100 mm"):
        proell_speed(arm=100, extension=50, radius=100, mass=5, sleeve=40)
