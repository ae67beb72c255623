"""Squeezed fuel and waves in the pipe against their own mechanics."""

from math import exp, pi, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.injection.compressed_volume import compressed_volume
from shimstock.trade.sums.injection.injection_pump_power import injection_pump_power
from shimstock.trade.sums.injection.plunger_stroke import plunger_stroke
from shimstock.trade.sums.injection.pressure_wave import pressure_wave
from shimstock.trade.sums.injection.reflected_wave import reflected_wave

PUMP = {"delivery": 100.0, "pressure": 180.0, "barrel": 6.5, "squeeze": 80e-6}
LINE = {"plunger": 9.0, "plunger_speed": 0.3, "pipe_bore": 2.0, "modulus": 1783.0}


def answers(worked):
    return {name: each.value for name, each in worked.working.answers.items()}


@given(st.floats(0.01, 1000), st.floats(2, 2000), st.floats(500, 5000))
def test_squeeze_and_modulus_say_the_same(volume, pressure, modulus):
    by_modulus = compressed_volume(volume=volume, pressure=pressure, modulus=modulus)
    by_squeeze = compressed_volume(volume=volume, pressure=pressure, squeeze=0.1 / modulus)
    assert by_modulus.value == pytest.approx(by_squeeze.value)
    share = answers(by_modulus)["share"] / 100
    assert by_modulus.value == pytest.approx(1000 * volume * share)


def test_a_wave_runs_as_fast_by_squeeze_as_by_modulus():
    by_modulus = pressure_wave(length=500, speed=1000, density=0.86, modulus=1783)
    by_squeeze = pressure_wave(length=500, speed=1000, density=0.86, squeeze=0.1 / 1783)
    assert by_squeeze.value == pytest.approx(by_modulus.value)
    for given_ in ({}, {"modulus": 1783, "squeeze": 5e-5}):
        with pytest.raises(NotPossible, match=r"give one of the two|leave one out"):
            pressure_wave(length=500, speed=1000, **given_)


def test_only_the_rise_of_pressure_counts():
    near = compressed_volume(volume=1, pressure=100.5, start=1, squeeze=0.01)
    assert near.value == pytest.approx(995)
    assert compressed_volume(volume=1, pressure=31, start=21, squeeze=8e-5).value == pytest.approx(
        0.8
    )


def test_a_little_pressure_shrinks_as_the_bulk_modulus_is_defined():
    # K = −V·dp/dV, followed through: V = V₀·e^(−Δp/K).
    got = compressed_volume(volume=1, pressure=11, modulus=1718).value
    assert got == pytest.approx(1000 * (1 - exp(-1 / 1718)), rel=1e-3)


@pytest.mark.parametrize(
    ("given_", "said"),
    [
        ({"pressure": 1, "squeeze": 8e-5}, "must be above what it starts from, 1 bar"),
        ({"pressure": 100}, "squeeze is missing"),
        ({"pressure": 100, "squeeze": 8e-5, "modulus": 1700}, "leave one out"),
        ({"pressure": 100, "squeeze": 0.02}, "press the fuel to nothing"),
        ({"pressure": -1, "squeeze": 8e-5}, "must be at least 0"),
    ],
)
def test_what_cannot_be_squeezed_is_refused(given_, said):
    with pytest.raises(NotPossible, match=said):
        compressed_volume(volume=10, **given_)


def test_a_stiff_fuel_needs_the_delivery_alone():
    stiff = plunger_stroke(**{**PUMP, "squeeze": 1e-15}, plunger=8)
    assert stiff.value == pytest.approx(100 / (pi * 16))


@given(st.floats(0.5, 4), st.floats(100, 1500))
def test_a_pipe_costs_what_its_volume_costs_in_the_barrel(bore, length):
    volume = pi / 4 * bore**2 * length / 1000
    piped = plunger_stroke(**PUMP, plunger=8, pipe_bore=bore, pipe_length=length)
    other = plunger_stroke(**{**PUMP, "barrel": 6.5 + volume}, plunger=8)
    assert piped.value == pytest.approx(other.value)
    assert piped.value > plunger_stroke(**PUMP, plunger=8).value


def test_a_pump_without_any_fuel_in_it_is_refused():
    with pytest.raises(NotPossible, match="leave no fuel"):
        plunger_stroke(**{**PUMP, "barrel": 0}, plunger=8, pipe_length=500)


def test_the_power_is_the_work_under_the_pressure():
    run = {**PUMP, "against": 40, "speed": 2000, "cylinders": 2}
    got = injection_pump_power(**run)
    rise, push = 0.5 * 179e5 * answers(got)["squeezed"] * 1e-9, 140e5 * 100e-9
    assert got.value == pytest.approx((rise + push) * 2 * 2000 / 120)
    two = injection_pump_power(**run, cycle="two-stroke").value
    assert two == pytest.approx(2 * got.value)
    with pytest.raises(NotPossible, match="the cylinder's, 180 bar"):
        injection_pump_power(**{**run, "against": 180})


@given(st.floats(100, 2000), st.floats(200, 3000), st.floats(0.7, 1))
def test_lag_grows_with_pipe_and_speed(length, speed, density):
    one = pressure_wave(length=length, speed=speed, density=density, modulus=1783)
    longer = pressure_wave(length=2 * length, speed=speed, density=density, modulus=1783)
    faster = pressure_wave(length=length, speed=2 * speed, density=density, modulus=1783)
    assert longer.value == pytest.approx(2 * one.value) == faster.value
    got = answers(one)
    assert got["time"] * got["wave speed"] == pytest.approx(length)
    assert got["there and back"] == pytest.approx(2 * got["time"])


@given(
    st.floats(0.05, 1.5), st.integers(1, 8), st.floats(0.4, 1), st.floats(0, 50), st.floats(0, 80)
)
def test_what_enters_the_nozzle_leaves_through_its_holes(hole, holes, c, standing, against):
    given_ = {**LINE, "hole": hole, "holes": holes, "coefficient": c, "standing": standing}
    got = reflected_wave(**given_, against=against, density=0.86)
    seen = answers(got)
    jet = c * sqrt(2 * (seen["at the nozzle"] - against) * 1e5 / 860)
    share = holes * (hole / 2) ** 2
    assert seen["speed at the nozzle"] == pytest.approx(share * jet)
    heavy = 860 * seen["wave speed"]

    def leftover(passed):
        at_nozzle = standing * 1e5 + heavy * (2 * seen["pipe speed"] - passed)
        return passed - share * c * sqrt(2 * max(at_nozzle - against * 1e5, 0) / 860)

    met = brentq(leftover, 0, 3 * seen["pipe speed"])
    assert seen["speed at the nozzle"] == pytest.approx(met)
    assert got.value.nozzle == pytest.approx(got.value.pump + got.value.reflected)


@given(st.floats(0.1, 0.6), st.floats(1.05, 3))
def test_a_smaller_hole_throws_more_back(hole, share):
    given_ = {**LINE, "standing": 27.6, "coefficient": 0.7}
    small, big = (reflected_wave(**given_, hole=h).value for h in (hole, hole * share))
    assert small.reflected > big.reflected


def test_a_shut_pipe_throws_all_back_and_a_wide_hole_none():
    shut = reflected_wave(**LINE, hole=1e-4, standing=20)
    sent = shut.value.pump - 20
    assert shut.value.reflected == pytest.approx(sent, rel=1e-4)
    assert shut.value.nozzle == pytest.approx(20 + 2 * sent, rel=1e-4)
    wide = reflected_wave(**LINE, hole=20, standing=20)
    assert wide.value.nozzle == pytest.approx(20, rel=1e-2)


def test_a_wave_that_the_cylinder_holds_back_is_refused():
    sent = reflected_wave(**LINE, hole=0.3, standing=20).value.pump - 20
    with pytest.raises(NotPossible, match="more than the wave brings"):
        reflected_wave(**LINE, hole=0.3, standing=20, against=20 + 2.001 * sent)
    reflected_wave(**LINE, hole=0.3, standing=20, against=20 + 1.9 * sent)
