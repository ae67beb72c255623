"""Long shoes against the pressure summed up piece by piece, and what is refused."""

from math import cos, hypot, radians, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.brakes.outside_shoe import outside_shoe
from shimstock.trade.sums.brakes.pedal_to_torque import pedal_to_torque
from shimstock.trade.sums.brakes.self_locking_shoe import self_locking_shoe
from shimstock.trade.sums.brakes.shoe_brake import shoe_brake
from shimstock.trade.sums.brakes.two_shoe_brake import two_shoe_brake

SHOE = {"friction": 0.32, "width": 40, "radius": 125, "pivot": 100, "start": 10, "end": 120}
ARM = {"arm": 187.5}

shoes = st.fixed_dictionaries(
    {
        "friction": st.floats(0.05, 0.5),
        "width": st.floats(10, 100),
        "radius": st.floats(80, 300),
        "pivot": st.floats(30, 79),
        "start": st.floats(0, 60),
        "end": st.floats(70, 170),
    }
)


def answers(worked):
    return {name: each.value for name, each in worked.working.answers.items()}


def summed(shoe, of, pressure=1.0):
    """The sum over the lining of a quantity for each unit of force, by a general library."""
    largest = sin(radians(min(shoe["end"], 90)))

    def piece(angle):
        return pressure * sin(angle) / largest * shoe["width"] * shoe["radius"] * of(angle)

    return quad(piece, radians(shoe["start"]), radians(shoe["end"]))[0]


@given(shoes, st.floats(0.1, 5))
def test_moments_and_torque_are_the_pressure_summed_up(shoe, pressure):
    got = shoe_brake(**shoe, **ARM, pressure=pressure)
    mu, r, a = shoe["friction"], shoe["radius"], shoe["pivot"]
    found = answers(got)
    assert got.value == pytest.approx(summed(shoe, lambda _: mu * r, pressure), rel=1e-6)
    assert found["friction moment"] == pytest.approx(
        summed(shoe, lambda angle: mu * (r - a * cos(angle)), pressure), rel=1e-6
    )
    assert found["normal moment"] == pytest.approx(
        summed(shoe, lambda angle: a * sin(angle), pressure), rel=1e-6
    )
    assert got.working.disagreements() == []


@given(shoes, st.sampled_from(["leading", "trailing"]), st.floats(-45, 45))
def test_the_hinge_of_an_inside_shoe_holds_the_rest_of_the_forces(shoe, turning, tilt):
    found = answers(shoe_brake(**shoe, **ARM, pressure=1, turning=turning, tilt=tilt))
    helps = 1 if turning == "leading" else -1
    mu, force, lean = shoe["friction"], found["force"], radians(tilt)
    out = summed(shoe, lambda angle: cos(angle) - helps * mu * sin(angle))
    across = summed(shoe, lambda angle: sin(angle) + helps * mu * cos(angle))
    assert found["hinge x"] == pytest.approx(out - force * sin(lean), rel=1e-6, abs=1e-6)
    assert found["hinge y"] == pytest.approx(across - force * cos(lean), rel=1e-6, abs=1e-6)
    assert found["hinge"] == pytest.approx(hypot(found["hinge x"], found["hinge y"]))


@given(shoes, st.sampled_from(["leading", "trailing"]), st.floats(-45, 45))
def test_the_hinge_of_an_outside_shoe_holds_the_rest_of_the_forces(shoe, turning, tilt):
    shoe = shoe | {"pivot": shoe["radius"] + shoe["pivot"]}
    found = answers(outside_shoe(**shoe, **ARM, pressure=1, turning=turning, tilt=tilt))
    helps = 1 if turning == "leading" else -1
    mu, force, lean = shoe["friction"], found["force"], radians(tilt)
    out = summed(shoe, lambda angle: cos(angle) - helps * mu * sin(angle))
    across = summed(shoe, lambda angle: sin(angle) + helps * mu * cos(angle))
    assert found["hinge x"] == pytest.approx(out - force * sin(lean), rel=1e-6, abs=1e-6)
    assert found["hinge y"] == pytest.approx(force * cos(lean) - across, rel=1e-6, abs=1e-6)


@given(shoes, st.sampled_from(["leading", "trailing"]), st.floats(1, 1e5))
def test_force_to_pressure_and_back(shoe, turning, force):
    try:
        forth = answers(shoe_brake(**shoe, **ARM, force=force, turning=turning))
    except NotPossible as error:
        assert "grips by itself" in str(error)
        return
    back = answers(shoe_brake(**shoe, **ARM, pressure=forth["pressure"], turning=turning))
    assert back["force"] == pytest.approx(force)
    assert back["torque"] == pytest.approx(forth["torque"])


def test_a_leading_shoe_brakes_harder_than_a_trailing_one():
    leading = shoe_brake(**SHOE, **ARM, force=1000).value
    trailing = shoe_brake(**SHOE, **ARM, force=1000, turning="trailing").value
    both = two_shoe_brake(**SHOE, **ARM, force=1000)
    assert leading > 2 * trailing
    assert both.value == pytest.approx(leading + trailing)
    found = answers(both)
    assert found["leading torque"] == pytest.approx(leading)
    assert found["trailing torque"] == pytest.approx(trailing)
    alone = answers(shoe_brake(**SHOE, **ARM, force=1000))
    for name in ("friction moment", "normal moment"):
        assert found[name] == pytest.approx(alone[name])


def test_at_its_locking_friction_a_shoe_needs_no_force():
    limit = answers(self_locking_shoe(**SHOE))["locking friction"]
    just = SHOE | {"friction": limit}
    assert answers(shoe_brake(**just, **ARM, pressure=1))["force"] == pytest.approx(0, abs=1e-9)
    assert answers(self_locking_shoe(**SHOE | {"friction": 1.01 * limit}))["self-locking"] == "yes"
    assert answers(self_locking_shoe(**SHOE | {"friction": 0.99 * limit}))["self-locking"] == "no"


def test_a_small_shoe_just_short_of_locking_still_takes_a_force():
    small = SHOE | {name: SHOE[name] / 500 for name in ("width", "radius", "pivot")}
    limit = answers(self_locking_shoe(**small, unit="in"))["locking friction"]
    short = small | {"friction": 0.999 * limit, "arm": 0.4, "unit": "in"}
    assert answers(shoe_brake(**short, force=1))["self-locking"] == "no"
    assert two_shoe_brake(**short, force=1).value > 0


def test_a_locking_shoe_says_so_and_refuses_a_force():
    locks = SHOE | {"friction": 1.9}
    found = answers(shoe_brake(**locks, **ARM, pressure=1))
    assert found["self-locking"] == "yes"
    assert found["force"] < 0
    with pytest.raises(NotPossible, match="grips by itself"):
        shoe_brake(**locks, **ARM, force=100)
    with pytest.raises(NotPossible, match="leading shoe grips by itself"):
        two_shoe_brake(**locks, **ARM, pressure=1)


def test_units_of_the_inch_give_the_same_brake():
    inches = SHOE | {name: SHOE[name] / 25.4 for name in ("width", "radius", "pivot")}
    pounds = shoe_brake(**inches, arm=187.5 / 25.4, force=1000 / 4.4482216, unit="in")
    newtons = shoe_brake(**SHOE, **ARM, force=1000)
    assert pounds.value * 112.98483 == pytest.approx(newtons.value, rel=1e-6)


def test_pedal_levers_multiply_and_pins_take_their_share():
    straight = two_shoe_brake(**SHOE, **ARM, force=200 * 5 * 4 * 0.8 / 2)
    pedal = pedal_to_torque(pedal=200, ratios=[5, 4], efficiency=80, **SHOE, **ARM)
    assert pedal.value == pytest.approx(straight.value)
    assert answers(pedal)["force"] == pytest.approx(1600)
    shared = pedal_to_torque(pedal=200, ratios=[5, 4], efficiency=80, shared=4, **SHOE, **ARM)
    assert shared.value == pytest.approx(pedal.value / 2)
    with pytest.raises(NotPossible, match="names no lever"):
        pedal_to_torque(pedal=200, ratios=[], **SHOE, **ARM)


@pytest.mark.parametrize(
    ("changed", "said"),
    [
        ({"start": 120, "end": 10}, "must lie at least 1 deg beyond the start"),
        ({"pivot": 125}, "must be less than the radius of the drum, 125 mm"),
        ({"pressure": 1}, "pressure and force together"),
        ({"force": None}, "neither pressure nor force"),
        ({"friction": 0}, "friction 0 must be at least 0.01"),
    ],
)
def test_what_no_shoe_can_have_is_refused(changed, said):
    with pytest.raises(NotPossible, match=said):
        shoe_brake(**{**SHOE, **ARM, "force": 100} | changed)


def test_an_outside_shoe_hangs_outside_its_drum():
    with pytest.raises(NotPossible, match="must be more than the radius"):
        outside_shoe(**SHOE, **ARM, force=100)


def test_the_largest_pressure_sits_at_the_toe_of_a_short_lining_and_at_90_of_a_long_one():
    short = shoe_brake(**SHOE | {"end": 60}, **ARM, pressure=1).working.shown()
    assert "s_a = sin(θ_2) = sin(60°) = 0.866025" in short
    for end in (90.5, 120):
        long = shoe_brake(**SHOE | {"end": end}, **ARM, pressure=1).working.shown()
        assert "s_a = 1" in long
