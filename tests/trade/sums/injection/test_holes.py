"""Fuel through holes: there and back, and what is refused."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.injection.api_gravity import api_gravity
from shimstock.trade.sums.injection.delivery_per_stroke import delivery_per_stroke
from shimstock.trade.sums.injection.fuel_figures import fuel_figures
from shimstock.trade.sums.injection.hole_delivery import hole_delivery
from shimstock.trade.sums.injection.injector_hole import injector_hole
from shimstock.trade.sums.injection.orifice_velocity import orifice_velocity

AT = {"speed": 1500, "degrees": 25, "pressure": 180, "against": 40, "coefficient": 0.7}
JET = {"pressure": 180, "against": 40, "coefficient": 0.7}


def answers(worked):
    return {name: each.value for name, each in worked.working.answers.items()}


@given(
    st.floats(5, 500), st.floats(200, 4000), st.floats(5, 60), st.integers(1, 8),
    st.floats(0.5, 1), st.floats(0.7, 1),
)  # fmt: skip
def test_hole_and_delivery_lead_to_one_another(delivery, speed, degrees, holes, c, density):
    at = {**AT, "speed": speed, "degrees": degrees, "coefficient": c, "density": density}
    across = injector_hole(**at, delivery=delivery, holes=holes).value
    assert hole_delivery(**at, diameter=across, holes=holes).value == pytest.approx(delivery)


@given(st.floats(10, 300), st.integers(1, 8), st.floats(500, 3000))
def test_fuel_through_the_holes_is_the_fuel_that_was_asked_for(power, cylinders, speed):
    asked = delivery_per_stroke(
        power=power, consumption=250, cylinders=cylinders, speed=speed, density=0.83
    )
    at = {**AT, "speed": speed, "density": 0.83}
    across = injector_hole(**at, delivery=asked.value).value
    each = power / cylinders
    burnt = answers(hole_delivery(**at, diameter=across, power=each))
    assert burnt["fuel"] == pytest.approx(power * 0.25 / cylinders)
    assert burnt["consumption"] == pytest.approx(250)


@given(st.floats(41, 1000), st.floats(1, 500))
def test_more_pressure_is_a_faster_jet_and_a_smaller_hole(pressure, more):
    jets = [orifice_velocity(**{**JET, "pressure": p}).value for p in (pressure, pressure + more)]
    assert jets[0] < jets[1]
    low, high = (injector_hole(**{**AT, "pressure": p}, delivery=100).value
                 for p in (pressure, pressure + more))  # fmt: skip
    assert low > high


def test_the_jet_has_the_energy_that_the_pressure_gave():
    fast = orifice_velocity(pressure=200, against=50, coefficient=1, density=0.84).value
    assert 840 * fast**2 / 2 == pytest.approx(150e5)


def test_an_end_like_the_start_changes_nothing():
    alike = orifice_velocity(**JET, end_pressure=180, end_against=40).value
    assert alike == orifice_velocity(**JET).value
    with pytest.raises(NotPossible, match="need each other"):
        orifice_velocity(**JET, end_pressure=300)
    with pytest.raises(NotPossible, match="end pressure 60 bar must be above"):
        orifice_velocity(**JET, end_pressure=60, end_against=70)


def test_a_cylinder_that_pushes_back_as_hard_is_refused():
    with pytest.raises(NotPossible, match="pressure 40 bar must be above the cylinder's, 40 bar"):
        orifice_velocity(**{**JET, "pressure": 40})
    with pytest.raises(NotPossible, match="degrees"):
        injector_hole(**{**AT, "degrees": 360}, delivery=100)


def test_delivery_by_fuel_burnt_by_cycle_and_into_the_glass():
    by_power = delivery_per_stroke(power=40, consumption=250, cylinders=2, speed=1000)
    by_fuel = delivery_per_stroke(fuel=10, cylinders=2, speed=1000, strokes=200)
    assert by_fuel.value == pytest.approx(by_power.value)
    assert answers(by_fuel)["in the glass"] == pytest.approx(0.2 * by_fuel.value)
    twice = delivery_per_stroke(fuel=10, cylinders=2, speed=1000, cycle="two-stroke")
    assert twice.value == pytest.approx(by_fuel.value / 2)
    with pytest.raises(NotPossible, match="each enough alone"):
        delivery_per_stroke(fuel=10, power=40, consumption=250, cylinders=2, speed=1000)
    with pytest.raises(NotPossible, match="power and consumption together"):
        delivery_per_stroke(power=40, cylinders=2, speed=1000)


@given(st.floats(-2, 220))
def test_api_and_specific_gravity_lead_to_one_another(api):
    gravity = api_gravity(api=api).value
    back = answers(api_gravity(specific_gravity=gravity))["degrees api"]
    assert back == pytest.approx(api, abs=1e-9)


def test_api_10_is_water():
    # Definition of the scale.
    got = answers(api_gravity(api=10))
    assert got["specific gravity"] == 1
    assert got["density"] == 0.999016
    assert answers(api_gravity(specific_gravity=0.84))["density"] == pytest.approx(
        0.839173, abs=1e-6
    )
    with pytest.raises(NotPossible, match="give one of the two"):
        api_gravity()
    with pytest.raises(NotPossible, match="give one of the two"):
        api_gravity(api=10, specific_gravity=1)


@pytest.mark.parametrize(
    ("given_", "words"),
    [
        ({"fuel": "diesel"}, "not judged: type what was measured"),
        ({"fuel": "diesel", "density": 0.82}, "nothing speaks against it"),
        ({"fuel": "diesel", "density": 0.81}, "no: density below"),
        ({"fuel": "petrol", "density": 0.78, "heating_value": 40}, "density above, heating value"),
        ({"fuel": "petrol", "heating_value": 44.8}, "nothing speaks against it"),
        ({"fuel": "petrol", "viscosity": 1}, "not judged"),
        ({"fuel": "calibration fluid", "viscosity": 2.8}, "no: viscosity above"),
    ],
)
def test_a_fuel_is_held_against_its_figures(given_, words):
    assert words in fuel_figures(**given_).value
