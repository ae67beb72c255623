"""Linings against their limits; stops, what the rule allows, and their heat."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.brakes.deceleration import deceleration
from shimstock.trade.sums.brakes.lining_left import lining_left
from shimstock.trade.sums.brakes.stop_heat import stop_heat
from shimstock.trade.sums.brakes.stopping_distance import stopping_distance
from shimstock.trade.sums.brakes.stopping_rule import stopping_rule

HEAT = {"mass": 2400, "speed": 24, "drums": 2, "drum_mass": 18}


def answers(worked):
    return {name: each.value for name, each in worked.working.answers.items()}


def test_a_lining_at_its_limit_may_stay_and_below_it_may_not():
    assert answers(lining_left(thickness=25.4 / 32))["fit for use"] == "yes"
    below = lining_left(thickness=0.79)
    assert answers(below)["fit for use"] == "no"
    assert "Reline both sides of the axle together." in below.working.shown()


def test_the_books_limit_goes_before_any_rule():
    got = answers(lining_left(thickness=5, rule="heavy vehicle manual", limit=4.5))
    assert (got["limit"], got["left"], got["fit for use"]) == (4.5, 0.5, "yes")


def test_road_law_for_lorries_is_called_an_analogue():
    shown = "\n".join(lining_left(thickness=5, rule="other air drum").working.shown())
    assert "no rule for a farm tractor" in shown


def test_hours_left_go_on_as_the_lining_has_worn():
    got = answers(lining_left(thickness=3, limit=1, new=5, worked=1000))
    assert got["hours left"] == pytest.approx(1000)
    assert answers(lining_left(thickness=1, limit=2, new=5, worked=1000))["hours left"] == 0
    with pytest.raises(NotPossible, match="must be less than when new, 3 mm"):
        lining_left(thickness=5, new=3, worked=1000)


@given(st.floats(1, 60), st.floats(0.5, 8))
def test_distance_and_deceleration_are_each_others_inverse(speed, rate):
    got = answers(stopping_distance(speed=speed, deceleration=rate, reaction=0))
    assert got["distance"] == got["braking distance"]
    assert deceleration(speed=speed, distance=got["distance"]).value == pytest.approx(rate)


def test_a_stop_at_gravity_from_its_speed_of_one_second():
    got = answers(deceleration(speed=9.80665 * 3.6, distance=9.80665 / 2))
    assert got["deceleration"] == pytest.approx(9.80665)
    assert got["of gravity"] == pytest.approx(100)
    assert got["time"] == pytest.approx(1)
    longer = answers(deceleration(speed=36, distance=25))
    assert (longer["deceleration"], longer["time"]) == (pytest.approx(2), pytest.approx(5))
    assert longer["of gravity"] == pytest.approx(200 / 9.80665)


def test_downhill_takes_longer_and_too_steep_never_stops():
    level, down, up = (
        stopping_distance(speed=20, deceleration=2.5, slope=slope).value for slope in (0, -10, 10)
    )
    assert up < level < down
    with pytest.raises(NotPossible, match="does not hold on a slope of −30 %"):
        stopping_distance(speed=20, deceleration=2.5, slope=-30)


def test_a_slope_takes_gravity_by_its_sine():
    # 3-4-5 triangle: 75 % is the slope whose sine is 0.6.
    got = stopping_distance(speed=36, deceleration=10, slope=-75, reaction=0)
    assert got.value == pytest.approx(100 / (2 * (10 - 0.6 * 9.80665)))


def test_the_rule_is_milder_for_slow_tractors():
    slow, fast = stopping_rule(fastest=30), stopping_rule(fastest=30.1, speed=30)
    assert slow.value > fast.value
    assert answers(slow)["least deceleration"] < answers(fast)["least deceleration"]


@pytest.mark.parametrize(
    ("measured", "passes", "because"),
    [
        ({"distance": 14.28}, "yes", None),
        ({"distance": 14.29}, "no", "the distance is too long"),
        ({"distance": 14.28, "pedal": 600, "hand": 400}, "yes", None),
        ({"distance": 14.28, "pedal": 601}, "no", "the pedal took more than 600 N"),
        ({"hand": 401}, "no", "the hand lever took more than 400 N"),
        ({"pedal": 600}, None, None),
        ({}, None, None),
    ],
)
def test_a_measured_stop_is_held_against_the_rule(measured, passes, because):
    got = answers(stopping_rule(fastest=30, **measured))
    assert (got.get("passes"), got.get("because")) == (passes, because)


def test_no_trial_is_faster_than_the_tractor():
    with pytest.raises(NotPossible, match="must not be above the top speed, 20 km/h"):
        stopping_rule(fastest=20, speed=25)


def test_twice_the_speed_makes_four_times_the_heat():
    assert stop_heat(**HEAT | {"speed": 48}).value == pytest.approx(4 * stop_heat(**HEAT).value)


def test_time_and_deceleration_say_the_same_stop():
    by_time = answers(stop_heat(**HEAT, time=2, wheel_radius=0.6))
    rate = 24 / 3.6 / 2
    by_rate = answers(stop_heat(**HEAT, deceleration=rate, wheel_radius=0.6))
    assert by_rate.pop("time") == pytest.approx(2)
    assert by_rate == pytest.approx(by_time)
    # Newton: what brakes the machine at the ground, shared by two wheels.
    assert by_time["torque"] == pytest.approx(2400 * rate * 0.6 / 2)
    with pytest.raises(NotPossible, match="each enough alone"):
        stop_heat(**HEAT, time=2, deceleration=1)


def test_without_a_time_there_is_heat_but_no_power():
    assert set(answers(stop_heat(**HEAT))) == {"energy", "each drum", "rise"}
