"""Press and shrink fits: Lamé against scipy, inverses, limits and what is refused."""

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.integrate import solve_bvp

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.fits.force_fit_rule import force_fit_rule
from shimstock.trade.sums.fits.interference_for_pressure import interference_for_pressure
from shimstock.trade.sums.fits.press_fit import press_fit
from shimstock.trade.sums.fits.shrink_temperature import shrink_temperature
from shimstock.trade.sums.freeing._metals import parse_metal

STEEL = parse_metal("12 um/m.K")


def answers(worked):
    return {name: each.value for name, each in worked.working.answers.items()}


def grows(inner, outer, p_in, p_out, modulus, poisson, at):
    """Radial growth of a thick ring, by the equation of elasticity solved with scipy."""
    stiff = modulus / (1 - poisson**2)

    def equation(r, y):  # u'' + u'/r − u/r² = 0
        return np.vstack((y[1], y[0] / r**2 - y[1] / r))

    def ends(ya, yb):
        radial = [stiff * (y[1] + poisson * y[0] / r) for y, r in ((ya, inner), (yb, outer))]
        return np.array([radial[0] + p_in, radial[1] + p_out])

    r = np.linspace(inner, outer, 50)
    solved = solve_bvp(equation, ends, r, np.zeros((2, r.size)), tol=1e-8)
    return float(solved.sol(at)[0])


def test_lame_agrees_with_the_equation_of_elasticity():
    # Elasticity of a ring in plane stress, solved numerically by scipy.
    got = press_fit(interference=0.05, diameter=50, hub=90, bore=20, hub_material="grey iron")
    p = got.value
    hub = grows(25, 45, p, 0, 100e3, 0.211, 25)
    shaft = grows(10, 25, 0, p, 207e3, 0.292, 25)
    assert 2 * (hub - shaft) == pytest.approx(0.05, rel=1e-4)


@given(
    st.floats(10, 200), st.floats(1.05, 5), st.floats(0, 0.95), st.floats(1, 200),
    st.sampled_from(["mm", "in"]),
)  # fmt: skip
def test_interference_and_pressure_undo_each_other(diameter, wall, hollow, pressure, unit):
    joint = {"diameter": diameter, "hub": diameter * wall, "bore": diameter * hollow, "unit": unit}
    there = interference_for_pressure(pressure=pressure, **joint)
    assume(there.value < 0.01 * diameter)
    back = press_fit(interference=there.value, **joint)
    assert back.value == pytest.approx(pressure)
    assert back.working.disagreements() == there.working.disagreements() == []
    by_hoop = interference_for_pressure(hub_hoop=answers(back)["hub hoop"], **joint)
    assert by_hoop.value == pytest.approx(there.value)


@given(st.floats(0.001, 0.15), st.floats(1.01, 3))
def test_more_interference_presses_harder(interference, more):
    joint = {"diameter": 50, "hub": 80}
    tight = press_fit(interference=interference * more, **joint).value
    assert tight == pytest.approx(more * press_fit(interference=interference, **joint).value)


def test_a_hollow_shaft_or_a_thin_hub_or_iron_holds_less():
    usual = press_fit(interference=0.04, diameter=50, hub=80).value
    assert press_fit(interference=0.04, diameter=50, hub=80, bore=30).value < usual
    assert press_fit(interference=0.04, diameter=50, hub=60).value < usual
    assert press_fit(interference=0.04, diameter=50, hub=80, hub_material="grey iron").value < usual


def test_interference_on_the_radius_counts_twice():
    joint = {"diameter": 50, "hub": 80}
    on_radius = press_fit(interference=0.02, on="radius", **joint).value
    assert on_radius == press_fit(interference=0.04, **joint).value


def test_inches_and_millimetres_come_to_the_same():
    metric = answers(press_fit(interference=0.0508, diameter=50.8, hub=101.6, length=50.8))
    inch = answers(press_fit(interference=0.002, diameter=2, hub=4, length=2, unit="in"))
    assert inch["pressure"] / 145.0377 == pytest.approx(metric["pressure"], rel=1e-3)
    assert inch["press force"] * 4.448222 == pytest.approx(metric["press force"], rel=1e-3)
    assert inch["torque"] * 112.9848 == pytest.approx(metric["torque"], rel=1e-3)


def test_a_solid_shaft_is_pressed_by_the_pressure_and_has_no_bore():
    got = answers(press_fit(interference=0.04, diameter=50, hub=80))
    assert got["shaft hoop"] == -got["pressure"]
    assert "shaft bore hoop" not in got
    assert "torque" not in got


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ({"hub": 50}, "must be larger than where they meet.*swapped"),
        ({"bore": 50}, "must be smaller than where they meet.*solid"),
        ({"interference": 0}, "must be above 0"),
        ({"hub_poisson": 0.5}, "below 0.5"),
        ({"unit": "ft"}, "neither mm nor in"),
    ],
)
def test_what_no_press_fit_can_be_is_refused(typed, said):
    with pytest.raises(NotPossible, match=said):
        press_fit(**{"interference": 0.04, "diameter": 50, "hub": 80} | typed)


@pytest.mark.parametrize("typed", [{}, {"pressure": 10, "hub_hoop": 20}])
def test_pressure_or_hoop_is_given_and_not_both(typed):
    with pytest.raises(NotPossible, match="one of pressure and hub hoop"):
        interference_for_pressure(diameter=50, hub=80, **typed)


def test_the_old_rule_says_when_it_is_stretched():
    assert answers(force_fit_rule(diameter=2)) == {"press": 45, "force": 90_000}
    assert not any("extrapolates" in each for each in force_fit_rule(diameter=9).working.cautions)
    assert any("extrapolates" in each for each in force_fit_rule(diameter=12).working.cautions)


@given(st.floats(0.001, 0.1), st.floats(0, 0.1), st.floats(-20, 40))
def test_the_hub_is_hot_enough_to_slip_on(interference, clearance, start):
    fitted = {"interference": interference, "diameter": 100, "metal": STEEL, "start": start}
    at = shrink_temperature(clearance=clearance, **fitted).value
    assert 100 * 12e-6 * (at - start) == pytest.approx(interference + clearance)


def test_cooling_is_as_far_below_the_room_as_heating_above():
    fitted = {"interference": 0.05, "diameter": 50, "metal": STEEL, "start": 20}
    hot = shrink_temperature(**fitted).value
    assert hot - 20 == pytest.approx(20 - shrink_temperature(way="cool the shaft", **fitted).value)


@pytest.mark.parametrize(
    ("interference", "said"),
    [(0.05, "dry ice, about"), (0.10, "liquid nitrogen, about"), (0.15, "not even")],
)
def test_what_cold_is_enough_is_said(interference, said):
    cold = shrink_temperature(
        interference=interference, diameter=50, metal=STEEL, way="cool the shaft"
    )
    assert said in answers(cold)["cold"]


def test_no_cold_below_all_cold():
    with pytest.raises(NotPossible, match="colder than anything can be; heat the hub"):
        shrink_temperature(interference=0.5, diameter=50, metal=STEEL, way="cool the shaft")


def test_a_part_that_may_not_have_so_much_heat_is_told():
    fitted = {"interference": 0.1, "diameter": 50, "metal": STEEL}
    assert answers(shrink_temperature(**fitted))["within the limit"].startswith("no limit was")
    assert answers(shrink_temperature(limit=200, **fitted))["within the limit"] == "yes"
    beyond = shrink_temperature(limit=150, **fitted)
    assert answers(beyond)["within the limit"].startswith("no: do not")
    assert any("beyond the part's limit" in each for each in beyond.working.cautions)
    chilled = {"interference": 0.05, "diameter": 50, "metal": STEEL, "way": "cool the shaft"}
    assert answers(shrink_temperature(limit=-70, **chilled))["within the limit"] == "yes"
    assert answers(shrink_temperature(limit=-40, **chilled))["within the limit"].startswith("no:")


@pytest.mark.parametrize(
    ("interference", "said"), [(0.02, "no"), (0.075, "near it"), (0.09, "yes")]
)
def test_a_hub_of_iron_is_said_to_be_too_tight(interference, said):
    got = press_fit(interference=interference, diameter=50, hub=80, hub_material="grey iron")
    assert answers(got)["too tight"].startswith(said)
