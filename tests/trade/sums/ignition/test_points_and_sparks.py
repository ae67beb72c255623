"""Points, sparks and coils: there and back, what goes up and what goes down, and refusals."""

from math import cos, radians

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.engine.firing_frequency import firing_frequency
from shimstock.trade.sums.ignition.coil_current import coil_current
from shimstock.trade.sums.ignition.coil_time_constant import coil_time_constant
from shimstock.trade.sums.ignition.degrees_in_time import degrees_in_time
from shimstock.trade.sums.ignition.dwell import dwell
from shimstock.trade.sums.ignition.dwell_angle import dwell_angle
from shimstock.trade.sums.ignition.dwell_from_gap import dwell_from_gap
from shimstock.trade.sums.ignition.magneto_advance import magneto_advance
from shimstock.trade.sums.ignition.magneto_lag import magneto_lag
from shimstock.trade.sums.ignition.spark_rate import spark_rate

CYLINDERS = st.integers(1, 12)
SPEEDS = st.floats(50, 4000)
COIL = {"voltage": 6.0, "resistance": 1.5}


def answers(worked):
    return {name: each.value for name, each in worked.working.answers.items()}


@given(st.floats(0.5, 99.5), CYLINDERS)
def test_share_and_angle_lead_to_one_another(share, cylinders):
    angle = dwell_angle(share=share, cylinders=cylinders).value
    got = dwell(angle=angle, cylinders=cylinders)
    assert got.value.share == pytest.approx(share)
    assert answers(got)["open"] + angle == pytest.approx(360 / cylinders)


@given(st.floats(1, 44), SPEEDS, st.floats(1.01, 3))
def test_at_speed_the_coil_has_less_time(angle, speed, faster):
    slow = dwell(angle=angle, cylinders=8, speed=speed)
    fast = dwell(angle=angle, cylinders=8, speed=faster * speed)
    assert fast.value.closed == pytest.approx(slow.value.closed / faster)
    assert fast.value.share == slow.value.share
    rate = spark_rate(speed=speed, cylinders=8).value
    assert answers(slow)["period"] == pytest.approx(1000 / rate)
    # The distributor turns at half the crank's speed.
    turned = degrees_in_time(time=slow.value.closed, speed=speed).value / 2
    assert turned == pytest.approx(angle)


def test_without_a_speed_no_time_is_told():
    got = dwell(angle=52, cylinders=4)
    assert got.value.closed is None
    assert set(answers(got)) == {"share", "open"}


@pytest.mark.parametrize("angle", [90, 104])
def test_more_than_one_lobes_share_is_refused(angle):
    with pytest.raises(NotPossible, match="below one lobe's 90 deg; look whether it is crank"):
        dwell(angle=angle, cylinders=4)


@given(st.floats(0.05, 0.9), st.floats(0.01, 0.09), CYLINDERS)
def test_dwell_falls_as_the_gap_grows(gap, more, cylinders):
    narrow, wide = (dwell_from_gap(gap=g, lift=1, cylinders=cylinders, unit="mm").value
                    for g in (gap, gap + more))  # fmt: skip
    assert 0 < wide < narrow < 360 / cylinders


@given(st.floats(0.05, 0.95), CYLINDERS)
def test_the_points_open_where_the_lobe_lifts_the_heel_that_far(share, cylinders):
    """A cosine lobe followed numerically from its top down its side."""

    def lift(turned):
        return (1 + cos(radians(cylinders * turned))) / 2

    side = brentq(lambda turned: lift(turned) - (1 - share), 0, 180 / cylinders)
    got = dwell_from_gap(gap=share, lift=1, cylinders=cylinders, unit="mm")
    assert answers(got)["open"] == pytest.approx(2 * side)


@given(st.floats(0.1, 0.9), CYLINDERS)
def test_what_a_little_more_gap_takes_off(gap, cylinders):
    at = {"lift": 1, "cylinders": cylinders, "unit": "mm"}
    before, after = (dwell_from_gap(gap=gap + d, **at).value for d in (-1e-6, 1e-6))
    slope = dwell_from_gap(gap=gap, **at).working.value("s")
    assert slope == pytest.approx((after - before) / 2e-6, rel=1e-4)


def test_inch_and_mm_gaps_say_the_same():
    inch = dwell_from_gap(gap=0.015, lift=0.04, cylinders=4)
    mm = dwell_from_gap(gap=0.381, lift=1.016, cylinders=4, unit="mm")
    assert inch.value == pytest.approx(mm.value)
    for gap in (0.04, 0.05):
        with pytest.raises(NotPossible, match=r"less than the lift of the lobe, 0\.04 in"):
            dwell_from_gap(gap=gap, lift=0.04, cylinders=4)


@given(SPEEDS, CYLINDERS, st.sampled_from(["four-stroke", "two-stroke"]))
def test_every_firing_has_its_spark(speed, cylinders, cycle):
    sparks = spark_rate(speed=speed, cylinders=cylinders, cycle=cycle)
    fires = firing_frequency(speed=speed, cylinders=cylinders, cycle=cycle).value
    assert sparks.value == pytest.approx(fires)
    got = answers(sparks)
    assert got["a minute"] / 60_000 * got["period"] == pytest.approx(1)


@given(st.floats(0.5, 10), st.floats(0.1, 20))
def test_share_and_time_constant_lead_to_one_another(constant, closed):
    filled = coil_current(**COIL, time_constant=constant, closed=closed).value
    assume(filled.share < 99.99)
    back = coil_time_constant(share=filled.share, after=closed).value
    assert back == pytest.approx(constant, rel=1e-6)
    assert filled.current == pytest.approx(4 * filled.share / 100)


def test_the_current_is_that_of_a_coil_followed_through_time():
    """L·di/dt + R·i = U, stepped by a general solver; L is the time constant times R."""
    inductance = 2.5 * 1.5  # mH, with ms and A
    solved = solve_ivp(
        lambda _, i: (6 - 1.5 * i) / inductance, (0, 4), [0.0], rtol=1e-10, atol=1e-12
    )
    got = coil_current(**COIL, time_constant=2.5, closed=4).value
    assert got.current == pytest.approx(solved.y[0, -1])


def test_a_coil_begins_with_nothing_and_never_has_more_than_all():
    assert coil_current(**COIL, time_constant=2, closed=0).value.current == 0
    assert coil_current(**COIL, time_constant=2, closed=1e6).value.share == 100
    for share in (0, 100):
        with pytest.raises(NotPossible, match="must be above 0 and below 100"):
            coil_time_constant(share=share, after=4)


@given(st.floats(0, 90), st.floats(-30, 30))
def test_at_crank_speed_the_lag_counts_once_and_at_half_twice(lag, start):
    once = magneto_advance(lag=lag, turns=1, start=start).value
    twice = magneto_advance(lag=lag, turns=0.5, start=start).value
    assert once.running == pytest.approx(lag + start)
    assert twice.lag == pytest.approx(2 * once.lag)
    assert twice.running - start == pytest.approx(2 * lag)


def test_a_magneto_that_does_not_turn_is_refused():
    with pytest.raises(NotPossible, match="turns 0 must be above 0 and at most 2"):
        magneto_advance(lag=14, turns=0)


@given(st.floats(0, 45), st.floats(-30, 30), st.floats(0.5, 2))
def test_lag_and_running_advance_lead_to_one_another(lag, start, turns):
    running = magneto_advance(lag=lag, turns=turns, start=start).value.running
    assume(0 <= running <= 90)
    back = magneto_lag(running=running, turns=turns, start=start).value
    assert back == pytest.approx(lag, abs=1e-9)


def test_a_start_earlier_than_the_running_spark_is_refused():
    with pytest.raises(NotPossible, match="running 5 deg must not be below the start's, 10 deg"):
        magneto_lag(running=5, turns=0.5, start=10)
