"""Spring governors against themselves: there and back, the limit of one speed, and refusals."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.governor.ball_pull import ball_pull
from shimstock.trade.sums.governor.hartnell_speed import hartnell_speed
from shimstock.trade.sums.governor.hartnell_spring import hartnell_spring
from shimstock.trade.sums.governor.insensitiveness import insensitiveness
from shimstock.trade.sums.governor.isochronous_tension import isochronous_tension
from shimstock.trade.sums.governor.sensitiveness import sensitiveness
from shimstock.trade.sums.governor.speed_between import speed_between
from shimstock.trade.sums.governor.spring_for_speed import spring_for_speed

BALLS = {"mass": 2.5, "ball_arm": 120.0, "sleeve_arm": 80.0}
RUN = {**BALLS, "inner_radius": 120.0, "outer_radius": 142.5, "inner_speed": 290.0}
NARROW = {"inner_radius": 100.0, "outer_radius": 175.0, "inner_force": 550.0}


def answers(worked):
    return {name: each.value for name, each in worked.working.answers.items()}


@given(
    st.floats(0.2, 5), st.floats(60, 150), st.floats(40, 150), st.floats(100, 900),
    st.floats(1.01, 1.3), st.floats(1, 40), st.floats(0, 0.9),
)  # fmt: skip
def test_spring_and_speed_lead_to_one_another(mass, ball_arm, sleeve_arm, slow, grows, out, share):
    balls = 2 * ball_pull(mass=mass, radius=120, speed=slow).value * ball_arm / sleeve_arm
    sleeve = share * balls / 9.80665
    arms = {"mass": mass, "ball_arm": ball_arm, "sleeve_arm": sleeve_arm, "sleeve": sleeve}
    spring = hartnell_spring(
        **arms, inner_radius=120, outer_radius=120 + out, inner_speed=slow, outer_speed=slow * grows
    )
    lift = answers(spring)["lift"]
    back = hartnell_speed(**arms, radius=120, speed=slow, rate=spring.value.rate, lift=lift)
    assert back.value.speed == pytest.approx(slow * grows)
    assert back.value.force == pytest.approx(spring.value.inner)
    assert answers(back)["radius"] == pytest.approx(120 + out)


@given(st.floats(1.05, 1.5), st.floats(0, 0.5), st.floats(0, 4))
def test_with_springs_between_the_balls_too(grows, helping, sleeve):
    given_ = {**BALLS, "sleeve": sleeve, "helping": helping}
    spring = hartnell_spring(**{**RUN, **given_}, outer_speed=290 * grows)
    back = hartnell_speed(
        **given_, radius=120, speed=290, rate=spring.value.rate, lift=answers(spring)["lift"]
    )
    assert back.value.speed == pytest.approx(290 * grows)
    assert not any("not stable" in line for line in back.working.shown())


@given(st.floats(0.2, 5), st.floats(50, 200), st.floats(100, 900), st.floats(1.01, 2))
def test_pull_and_spring_force_rise_with_speed(mass, radius, speed, grows):
    at = {"mass": mass, "radius": radius}
    slow, fast = (ball_pull(**at, speed=n).value for n in (speed, grows * speed))
    assert fast == pytest.approx(grows**2 * slow)
    at |= {"ball_arm": 100, "sleeve_arm": 80, "rate": 20, "lift": 5}
    forces = [hartnell_speed(**at, speed=n).value.force for n in (speed, grows * speed)]
    assert forces[0] < forces[1]


@given(st.floats(100, 900), st.floats(1, 100), st.floats(0, 1), st.floats(-20, 20))
def test_at_the_isochronous_rate_the_speed_is_one_at_every_lift(speed, out, sleeve, lift):
    given_ = {**BALLS, "sleeve": sleeve, "inner_speed": speed, "outer_speed": speed}
    spring = hartnell_spring(**given_, inner_radius=120, outer_radius=120 + out)
    assert spring.value.rate == pytest.approx(answers(spring)["isochronous rate"])
    assert "The balls go out at no higher speed: this governor is not stable." in (
        spring.working.shown()
    )
    still = hartnell_speed(
        **BALLS, sleeve=sleeve, radius=120, speed=speed, rate=spring.value.rate, lift=lift
    )
    assert still.value.speed == pytest.approx(speed)


@pytest.mark.parametrize(("share", "faster"), [(0.8, False), (1.2, True)])
def test_a_softer_spring_is_not_stable_and_a_stiffer_one_is(share, faster):
    rate = share * answers(hartnell_spring(**RUN, outer_speed=310))["isochronous rate"]
    for lift in (10, -10):
        after = hartnell_speed(**BALLS, radius=120, speed=290, rate=rate, lift=lift)
        assert (after.value.speed > 290) is (faster is (lift > 0))
        assert any("not stable" in line for line in after.working.shown()) is not faster


def test_force_at_the_sleeve_is_that_of_both_balls_over_the_arms():
    got = hartnell_spring(**RUN, outer_speed=310, sleeve=4).value
    balls = 2 * ball_pull(mass=2.5, radius=142.5, speed=310).value
    assert got.outer == pytest.approx(balls * 120 / 80 - 4 * 9.80665)


def test_springs_between_the_balls_take_over_from_the_main_one():
    alone = hartnell_spring(**RUN, outer_speed=310)
    helped = hartnell_spring(**RUN, outer_speed=310, helping=0.5)
    # Each ball moves out by 1.5 of the lift, so the springs between are pulled twice that.
    assert alone.value.rate - helped.value.rate == pytest.approx(0.5 * (2 * 1.5) ** 2)
    even = answers(alone)["isochronous rate"] - answers(helped)["isochronous rate"]
    assert even == pytest.approx(0.5 * (2 * 1.5) ** 2)


@pytest.mark.parametrize(
    ("given_", "said"),
    [
        ({"inner_radius": 150}, "outer radius 142.5 mm must be larger than the inner, 150 mm"),
        ({"inner_radius": 142.5}, "swapped"),
        ({"outer_radius": 380}, "further than it can swing"),
        ({"sleeve": 90}, "sleeve 90 kg is more than the balls carry at 290 rpm"),
        ({"outer_speed": 240}, "outer speed 240 rpm asks for a main spring that pushes less"),
        ({"helping": 5}, "the springs between the balls"),
        ({"mass": 0}, "must be above 0"),
    ],
)
def test_a_spring_that_cannot_be_is_refused(given_, said):
    with pytest.raises(NotPossible, match=said):
        hartnell_spring(**{**RUN, "outer_speed": 310, **given_})


@pytest.mark.parametrize(
    ("given_", "said"),
    [
        ({"lift": 170}, "further than it can swing"),
        ({"lift": -90}, "past the spindle"),
        ({"lift": -50}, "leaves the spring slack"),
        ({"sleeve": 90}, "even without a spring"),
    ],
)
def test_a_lift_that_cannot_be_is_refused(given_, said):
    with pytest.raises(NotPossible, match=said):
        hartnell_speed(**{**BALLS, "radius": 120, "speed": 290, "rate": 20, "lift": 5, **given_})


def test_the_tension_it_asks_for_makes_it_isochronous():
    now = isochronous_tension(**NARROW, outer_force=1100)
    assert answers(now)["now"] == "stable: faster as the balls go out"
    shifted = {**NARROW, "inner_force": 550 + now.value}
    then = isochronous_tension(**shifted, outer_force=1100 + now.value)
    assert then.value == pytest.approx(0, abs=1e-9)
    assert answers(then)["now"] == "isochronous: one speed at all radii"
    for missed, words in ((0.3, "isochronous"), (0.9, "unstable")):
        near = isochronous_tension(
            **{**shifted, "inner_force": 550 + now.value + missed},
            outer_force=1100 + now.value + missed,
        )
        assert answers(near)["now"].startswith(words), "a thousandth of the force is near"
    more = isochronous_tension(**{**NARROW, "inner_force": 900}, outer_force=1450)
    assert answers(more)["now"] == "unstable: the balls go from stop to stop"
    assert any("hunts" in text for text in now.working.cautions)


@given(st.floats(0.01, 0.99), st.floats(200, 400), st.floats(1, 1.2))
def test_a_speed_between_lies_where_the_straight_force_meets_the_pull(share, slow, grows):
    ends = {"inner_radius": 100, "outer_radius": 130}
    radius = 100 + 30 * share
    got = speed_between(**ends, inner_speed=slow, outer_speed=slow * grows, radius=radius).value
    forces = [ball_pull(mass=1, radius=r, speed=n).value
              for r, n in ((100, slow), (130, slow * grows))]  # fmt: skip
    force = forces[0] + share * (forces[1] - forces[0])
    met = brentq(lambda n: ball_pull(mass=1, radius=radius, speed=n).value - force, 1, 5000)
    assert got == pytest.approx(met)


def test_beyond_the_known_radii_it_says_that_it_extrapolates():
    ends = {"inner_radius": 100, "outer_radius": 130, "inner_speed": 300, "outer_speed": 320}
    assert not any("extrapolates" in t for t in speed_between(**ends, radius=130).working.cautions)
    assert any("extrapolates" in t for t in speed_between(**ends, radius=140).working.cautions)
    with pytest.raises(NotPossible, match="slack"):
        speed_between(**{**ends, "outer_speed": 600}, radius=80)


@given(st.floats(1, 1000), st.floats(200, 2000), st.floats(200, 2000), st.floats(0.1, 100))
def test_the_shifted_spring_brings_the_speed_back(force, speed, wanted, rate):
    there = spring_for_speed(force=force, speed=speed, wanted=wanted, rate=rate)
    back = spring_for_speed(force=there.value, speed=wanted, wanted=speed, rate=rate)
    assert back.value == pytest.approx(force)
    assert (there.value > force) is (wanted > speed) or there.value == pytest.approx(force)
    assert rate * answers(there)["stretch"] == pytest.approx(there.value - force, abs=1e-9)
    assert answers(there)["stretch"] + answers(back)["stretch"] == pytest.approx(
        0, abs=1e-6 * (force + there.value) / rate
    )


def test_friction_and_range_of_speeds():
    stiff = insensitiveness(friction=3, sleeve_force=90, ball_weight=15, speed=1000)
    got = answers(stiff)
    assert got["above"] - got["below"] == pytest.approx(1000 * stiff.value / 100)
    assert set(answers(insensitiveness(friction=3, sleeve_force=90))) == {"share"}
    assert insensitiveness(friction=0, sleeve_force=90).value == 0
    with pytest.raises(NotPossible, match="free sleeve, pins and linkage"):
        insensitiveness(friction=105, sleeve_force=90, ball_weight=15)
    assert answers(sensitiveness(least=290, most=310))["divided by"].startswith("mean speed")
    with pytest.raises(NotPossible, match="swapped"):
        sensitiveness(least=310, most=290)
