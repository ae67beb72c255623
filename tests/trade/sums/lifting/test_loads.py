"""Axles, centre of gravity, ballast and rearing against statics, and what is refused."""

from math import asin, cos, sin

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.lifting.axle_loads import axle_loads
from shimstock.trade.sums.lifting.centre_of_gravity import centre_of_gravity
from shimstock.trade.sums.lifting.front_ballast import front_ballast
from shimstock.trade.sums.lifting.weight_transfer import weight_transfer

TRACTOR = {"weight": 2500, "wheelbase": 2200}
PLOUGH = {"front": 950, "front_arm": 1200, "hitch": 1000, "overhang": 600}
HITCH = {"hitch_height": 500, "wheelbase": 2200, "front": 9000}


def answers(worked):
    return {name: each.value for name, each in worked.working.answers.items()}


@given(st.floats(0, 2200), st.floats(0, 1000), st.floats(0, 2200))
def test_axles_carry_all_the_weight_and_balance_it(behind, load, load_behind):
    got = axle_loads(**TRACTOR, behind=behind, load=load, load_behind=load_behind).value
    assert got.front + got.rear == pytest.approx(2500 + load)
    about_rear = 2500 * (2200 - behind) + load * (2200 - load_behind)
    assert got.front * 2200 == pytest.approx(about_rear, abs=1e-6)


def test_a_load_over_an_axle_goes_to_that_axle_alone():
    empty = axle_loads(**TRACTOR, behind=1400).value
    loaded = axle_loads(**TRACTOR, behind=1400, load=500, load_behind=2200).value
    assert loaded.rear - empty.rear == pytest.approx(500)
    assert loaded.front == pytest.approx(empty.front)


@pytest.mark.parametrize(("load_behind", "axle"), [(6000, "front"), (-6000, "rear")])
def test_an_axle_that_would_lift_is_named(load_behind, axle):
    with pytest.raises(NotPossible, match=f"the {axle} axle would lift off"):
        axle_loads(**TRACTOR, behind=1400, load=900, load_behind=load_behind)


@given(st.floats(200, 2000), st.floats(-300, 1200), st.floats(50, 1000))
def test_a_tractor_of_known_centre_is_weighed_to_that_centre(forward, above, raised):
    """Weighed by moments about the rear axle, the front lifted by turning about it."""
    tilt = asin(raised / 2200)
    lean = forward * cos(tilt) - above * sin(tilt)
    front = 2500 * forward / 2200
    front_raised = 2500 * lean / (2200 * cos(tilt))
    assume(0 <= front_raised <= 2500)
    got = centre_of_gravity(**TRACTOR, front=front, raised=raised, front_raised=front_raised).value
    assert got.forward == pytest.approx(forward)
    assert got.above == pytest.approx(above, abs=1e-6)


def test_axle_loads_and_weighing_lead_to_one_another():
    front = axle_loads(**TRACTOR, behind=1364).value.front
    got = centre_of_gravity(**TRACTOR, front=front, raised=600, front_raised=front).value
    assert got.forward == pytest.approx(2200 - 1364)
    assert got.above == pytest.approx(0)


def test_weighings_that_cannot_be_are_refused():
    level = {"front": 950, "raised": 600, "front_raised": 900}
    with pytest.raises(NotPossible, match="front 2600 kg cannot be more than the whole"):
        centre_of_gravity(**TRACTOR, **level | {"front": 2600})
    with pytest.raises(NotPossible, match="front raised 2600 kg cannot be more"):
        centre_of_gravity(**TRACTOR, **level | {"front_raised": 2600})
    with pytest.raises(NotPossible, match="raised 2200 mm must be less than the wheelbase"):
        centre_of_gravity(**TRACTOR, **level | {"raised": 2200})


@given(st.floats(0, 3000), st.floats(0, 50))
def test_with_its_ballast_the_front_keeps_its_share_and_no_more_is_hung(implement, share):
    got = front_ballast(**TRACTOR, **PLOUGH, implement=implement, share=share).value
    if got.least > 0:
        assert got.front == pytest.approx(share / 100 * 2500, abs=1e-6)
    else:
        assert got.front >= share / 100 * 2500 - 1e-6


def test_the_ballasted_front_is_what_the_axle_loads_say():
    """Empty tractor, implement behind and ballast before, each by its own moment."""
    got = front_ballast(**TRACTOR, **PLOUGH, implement=1000).value
    behind = 2200 * (1 - 950 / 2500)
    implement = axle_loads(
        **TRACTOR, behind=behind, load=1000, load_behind=2200 + 1000 + 600
    ).value.front
    lifted = got.least * (1200 + 2200) / 2200
    assert got.front == pytest.approx(implement + lifted)


@given(st.floats(0, 3000), st.floats(1, 500))
def test_a_heavier_implement_never_wants_less(implement, more):
    one, two = (
        front_ballast(**TRACTOR, **PLOUGH, implement=each).value.least
        for each in (implement, implement + more)
    )
    assert two >= one


def test_no_ballast_is_below_none():
    got = front_ballast(**TRACTOR, **PLOUGH, implement=600)
    assert got.value.least == 0
    assert answers(got)["needed"] == "no"
    with pytest.raises(NotPossible, match="front 2600 kg cannot be more than the whole"):
        front_ballast(**TRACTOR, **PLOUGH | {"front": 2600}, implement=600)


@given(st.floats(100, 450), st.floats(500, 4000), st.floats(100, 50000))
def test_the_pull_that_lifts_the_front_moves_all_of_its_load(height, wheelbase, front):
    tractor = {"hitch_height": height, "wheelbase": wheelbase, "front": front}
    lifting = weight_transfer(pull=0, **tractor).value.lifting
    assert weight_transfer(pull=lifting, **tractor).value.moved == pytest.approx(front)


@pytest.mark.parametrize(("share", "said"), [(0.99, "no"), (1.01, "yes")])
def test_beyond_that_pull_the_front_is_said_to_lift(share, said):
    lifting = weight_transfer(pull=0, **HITCH).value.lifting
    got = weight_transfer(pull=share * lifting, **HITCH)
    assert answers(got)["front lifts"] == said
    assert got.value.front >= 0


def test_a_higher_hitch_lifts_sooner():
    low, high = (
        weight_transfer(pull=5000, **HITCH | {"hitch_height": h}).value for h in (400, 700)
    )
    assert high.moved > low.moved
    assert high.lifting < low.lifting


def test_a_pull_along_the_ground_moves_almost_nothing():
    assert weight_transfer(pull=1000, **HITCH | {"hitch_height": 1}).value.moved < 1


def test_the_same_loss_of_load_at_a_smaller_tilt_means_a_higher_centre():
    level = {"front": 950, "front_raised": 900}
    heights = [
        centre_of_gravity(**TRACTOR, **level, raised=raised).value.above
        for raised in (300, 600, 900)
    ]
    assert heights == sorted(heights, reverse=True)
