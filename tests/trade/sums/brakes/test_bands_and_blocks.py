"""Bands and blocks against their own mechanics, and what is refused."""

from math import cos, radians

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad, solve_ivp

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.brakes.band_brake import band_brake
from shimstock.trade.sums.brakes.band_strength import band_strength
from shimstock.trade.sums.brakes.block_brake import block_brake
from shimstock.trade.sums.brakes.brake_rivets import brake_rivets
from shimstock.trade.sums.brakes.self_locking_band import self_locking_band

BAND = {"friction": 0.25, "wrap": 240, "radius": 300, "slack_arm": 200, "lever": 950}
RIVETS = {"force": 10000, "rivets": 4, "shear": 60, "crushing": 120, "thickness": 3}


def answers(worked):
    return {name: each.value for name, each in worked.working.answers.items()}


def test_tension_grows_round_the_drum_as_friction_makes_it():
    got = answers(band_brake(**BAND, pull=100))
    grown = solve_ivp(
        lambda _, tension: 0.25 * tension, (0, radians(240)), [got["slack tension"]], rtol=1e-10
    )
    assert got["tight tension"] == pytest.approx(grown.y[0][-1], rel=1e-6)


@given(st.floats(0.05, 0.6), st.floats(90, 330), st.floats(0, 300), st.floats(1, 1e5))
def test_pull_tight_and_torque_lead_to_one_another(friction, wrap, tight_arm, tight):
    band = BAND | {"friction": friction, "wrap": wrap, "tight_arm": tight_arm}
    by_tight = answers(band_brake(**band, tight=tight))
    by_torque = answers(band_brake(**band, torque=by_tight["torque"]))
    assert by_torque["tight tension"] == pytest.approx(tight)
    assert by_torque["pull"] == pytest.approx(by_tight["pull"], rel=1e-6, abs=1e-6 * tight)
    if by_tight["self-locking"] == "yes":
        with pytest.raises(NotPossible, match="grips by itself whatever the pull"):
            band_brake(**band, pull=10)
    else:
        by_pull = answers(band_brake(**band, pull=by_tight["pull"]))
        assert by_pull["torque"] == pytest.approx(by_tight["torque"], rel=1e-5)


def test_a_band_locks_just_where_its_pull_vanishes():
    arm = self_locking_band(friction=0.25, wrap=240, slack_arm=200, tight_arm=50).value
    at_limit = answers(band_brake(**BAND, tight_arm=arm, tight=1000))
    assert at_limit["pull"] == pytest.approx(0, abs=1e-9)
    for tight_arm, said in ((0.99 * arm, "no"), (1.01 * arm, "yes")):
        assert answers(band_brake(**BAND, tight_arm=tight_arm, tight=1))["self-locking"] == said
        got = self_locking_band(friction=0.25, wrap=240, slack_arm=200, tight_arm=tight_arm)
        assert answers(got)["self-locking"] == said


def test_a_small_band_just_short_of_locking_still_takes_a_pull():
    small = {"friction": 0.25, "wrap": 240, "radius": 2, "lever": 9, "slack_arm": 0.5, "unit": "in"}
    arm = self_locking_band(friction=0.25, wrap=240, slack_arm=0.5, tight_arm=0, unit="in").value
    got = answers(band_brake(**small, tight_arm=0.999 * arm, pull=1))
    assert got["self-locking"] == "no"
    assert got["torque"] > 0


def test_a_band_wants_exactly_one_thing_known():
    with pytest.raises(NotPossible, match="0 of pull, tight and torque"):
        band_brake(**BAND)
    with pytest.raises(NotPossible, match="2 of pull, tight and torque"):
        band_brake(**BAND, pull=1, torque=1)


def test_twice_the_steel_carries_twice():
    assert band_strength(width=50, thickness=3, stress=50).value == 7500
    assert band_strength(width=50, thickness=6, stress=50).value == 15000


@pytest.mark.parametrize("span", [20, 60, 100, 170])
def test_a_block_on_its_pivot_does_not_tip(span):
    """Pressure falls with the cosine; friction and pressure have no moment about the pivot."""
    got = block_brake(friction=0.3, width=40, radius=160, span=span, pressure=0.9)
    h, half = answers(got)["pivot distance"], radians(span) / 2
    tipping = quad(lambda a: cos(a) * (h * cos(a) - 160), -half, half)[0]
    torque = quad(lambda a: 0.3 * 0.9 * cos(a) * 40 * 160 * 160, -half, half)[0]
    push = quad(lambda a: 0.9 * cos(a) * 40 * 160 * cos(a), -half, half)[0]
    assert tipping == pytest.approx(0, abs=1e-9)
    assert got.value == pytest.approx(torque)
    assert answers(got)["push"] == pytest.approx(push)
    assert answers(got)["drag"] * h == pytest.approx(torque)


def test_a_short_block_may_be_pivoted_at_the_rim():
    got = block_brake(friction=0.3, width=40, radius=160, span=1, pressure=1)
    assert answers(got)["pivot distance"] == pytest.approx(160, rel=1e-4)


def test_rivets_are_sized_by_what_gives_first():
    by_shear = brake_rivets(**RIVETS)
    by_crushing = brake_rivets(**RIVETS | {"thickness": 2})
    assert by_shear.value == pytest.approx((4 * 2500 / (3.14159265 * 60)) ** 0.5)
    assert by_crushing.value == pytest.approx(2500 / (2 * 120))
    assert set(answers(by_shear)) == {"diameter"}


@given(st.integers(1, 60))
def test_more_rivets_may_be_thinner(rivets):
    few = brake_rivets(**RIVETS | {"rivets": rivets}).value
    assert brake_rivets(**RIVETS | {"rivets": rivets + 1}).value < few


def test_the_edge_is_one_and_a_half_holes():
    got = answers(brake_rivets(**RIVETS, hole=8, tension=80))
    assert got["edge"] == 12
    assert got["width"] == pytest.approx(10000 / 240 + 16)
