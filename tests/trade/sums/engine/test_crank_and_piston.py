"""The slider-crank against numerical derivatives and searches, and there and back."""

from math import pi

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import minimize_scalar

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.engine.crank_angle import crank_angle
from shimstock.trade.sums.engine.piston_position import piston_position
from shimstock.trade.sums.engine.piston_speed import piston_speed
from shimstock.trade.sums.engine.rim_arc import rim_arc
from shimstock.trade.sums.engine.rim_degrees import rim_degrees
from shimstock.trade.sums.engine.top_piston_speed import top_piston_speed

CRANK = {"stroke": 171.45, "rod": 342.9}
RODS = st.floats(100, 500)


def at(angle, speed=975.0, **crank):
    return piston_position(**{**CRANK, **crank}, angle=angle, speed=speed).value


@given(st.floats(0.01, 179.9), RODS)
def test_angle_and_drop_lead_to_one_another(angle, rod):
    drop = at(angle, rod=rod).drop
    back = crank_angle(stroke=171.45, rod=rod, drop=drop).value
    # The drop near the top is the difference of two rods: some of its digits are lost there.
    assert back == pytest.approx(angle, rel=1e-6, abs=1e-3)
    assert at(-angle, rod=rod).drop == pytest.approx(drop)


def test_half_way_down_the_crank_is_not_yet_square():
    assert crank_angle(**CRANK, drop=0).value == 0
    assert crank_angle(**CRANK, drop=171.45).value == pytest.approx(180)
    assert crank_angle(**CRANK, drop=171.45 / 2).value < 90
    long = crank_angle(stroke=1, rod=3000, drop=0.5).value
    assert long == pytest.approx(90, abs=0.01)


@given(st.floats(-350, 350), RODS)
def test_speed_and_acceleration_are_the_slopes_of_the_way(angle, rod):
    step = 0.01  # deg
    second = step / (6 * 975)
    before, now, after = (at(angle + k * step, rod=rod) for k in (-1, 0, 1))
    speed = (after.drop - before.drop) / 1000 / (2 * second)
    gain = (after.speed - before.speed) / (2 * second)
    assert now.speed == pytest.approx(speed, abs=1e-5)
    assert now.acceleration == pytest.approx(gain, abs=1e-2)


def test_the_mean_of_the_speed_is_the_mean_piston_speed():
    speeds = [at(angle).speed for angle in np.linspace(0, 180, 20_001)]
    mean = piston_speed(stroke=171.45, speed=975).value
    assert np.trapezoid(speeds, dx=1 / 20_000) == pytest.approx(mean, rel=1e-6)
    assert at(0).speed == 0
    assert piston_position(**CRANK, angle=60).value.speed == 0


@given(RODS, st.floats(100, 3000))
def test_the_top_speed_is_where_a_search_finds_it(rod, speed):
    found = top_piston_speed(stroke=171.45, rod=rod, speed=speed)
    best = minimize_scalar(
        lambda angle: -at(angle, speed, rod=rod).speed, bounds=(20, 120), method="bounded",
        options={"xatol": 1e-8},
    )  # fmt: skip
    assert found.value == pytest.approx(-best.fun)
    assert found.working.answers["angle"].value == pytest.approx(best.x, abs=1e-3)
    # With an endless rod it would be π/2 of the mean; any shorter one goes faster.
    assert found.value > pi / 2 * piston_speed(stroke=171.45, speed=speed).value


@pytest.mark.parametrize("rod", [50.0, 85.725])
def test_a_rod_that_cannot_clear_the_crank_is_refused(rod):
    said = f"rod {rod:g} mm must be longer than the crank's throw, 85.725 mm"
    with pytest.raises(NotPossible, match=said):
        piston_position(stroke=171.45, rod=rod, angle=30)
    with pytest.raises(NotPossible, match=said):
        top_piston_speed(stroke=171.45, rod=rod, speed=975)
    with pytest.raises(NotPossible, match=said):
        crank_angle(stroke=171.45, rod=rod, drop=1)


def test_a_drop_beyond_the_stroke_is_refused():
    with pytest.raises(NotPossible, match=r"drop 172 mm is beyond the stroke, 171\.45 mm"):
        crank_angle(**CRANK, drop=172)


@given(st.floats(-720, 720), st.floats(50, 1500), st.sampled_from(["mm", "in"]))
def test_arc_and_degrees_lead_to_one_another(angle, across, unit):
    arc = rim_arc(across=across, angle=angle, unit=unit).value
    back = rim_degrees(across=across, arc=arc, unit=unit).value
    assert back == pytest.approx(angle, abs=1e-9)


def test_a_whole_turn_is_the_girth():
    assert rim_arc(across=500, angle=360).value == pytest.approx(500 * pi)
    with pytest.raises(NotPossible, match="across 0 mm must be above 0"):
        rim_arc(across=0, angle=10)
