import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.power.bmep_power import bmep_power
from shimstock.trade.sums.power.brake_load_power import brake_load_power
from shimstock.trade.sums.power.mean_pressure import mean_pressure
from shimstock.trade.sums.power.morse_powers import morse_powers
from shimstock.trade.sums.power.morse_test import morse_test
from shimstock.trade.sums.power.rope_brake import rope_brake
from shimstock.trade.sums.power.shaft_power import shaft_power
from shimstock.trade.sums.power.torque_from_power import torque_from_power

some = st.floats(0.1, 5000)


@given(torque=some, speed=some)
def test_torque_comes_back_from_its_power(torque, speed):
    power = shaft_power(torque=torque, speed=speed).value
    assert torque_from_power(power=power, speed=speed).value == pytest.approx(torque)


@given(pressure=st.floats(0.5, 20), volume=st.floats(0.1, 30), speed=some)
@pytest.mark.parametrize("cycle", ["four-stroke", "two-stroke"])
def test_mean_pressure_comes_back_from_its_power(cycle, pressure, volume, speed):
    power = bmep_power(pressure=pressure, displacement=volume, speed=speed, cycle=cycle).value
    back = mean_pressure(power=power, displacement=volume, speed=speed, cycle=cycle).value
    assert back == pytest.approx(pressure)


def test_a_two_stroke_has_twice_the_power_of_a_four_stroke():
    given_ = {"pressure": 5, "displacement": 2, "speed": 1000}
    assert bmep_power(**given_, cycle="two-stroke").value == 2 * bmep_power(**given_).value


def test_swept_volume_is_given_once():
    with pytest.raises(NotPossible, match="each enough alone"):
        bmep_power(pressure=6, speed=1000, displacement=2, bore=100, stroke=100)
    with pytest.raises(NotPossible, match="bore and stroke together"):
        mean_pressure(power=20, speed=1000, bore=100)


@given(load=st.floats(50, 500), tare=st.floats(0, 50))
def test_tare_takes_its_own_share_off_the_power(load, tare):
    worked = brake_load_power(load=load, tare=tare, arm=0.5, speed=1000).value
    assert worked == pytest.approx(
        brake_load_power(load=load, arm=0.5, speed=1000).value * (load - tare) / load, abs=1e-9
    )


def test_a_load_below_the_tare_or_the_spring_is_refused():
    with pytest.raises(NotPossible, match="load 20 N must not be below the tare, 30 N"):
        brake_load_power(load=20, tare=30, arm=1, speed=500)
    with pytest.raises(NotPossible, match="weight 20 N must not be below the spring's pull, 30 N"):
        rope_brake(weight=20, spring=30, drum=1, speed=500)


def test_a_thin_rope_brake_is_an_arm_brake_of_half_the_drum():
    rope = rope_brake(weight=400, spring=40, drum=0.8, speed=600).working.answers
    arm = brake_load_power(load=360, arm=0.4, speed=600).working.answers
    for name in ("torque", "power"):
        assert rope[name].value == pytest.approx(arm[name].value)


def test_cut_out_loads_and_powers_say_the_same():
    cut = [110, 107, 104, 110]
    loads = morse_test(load=160, cut=cut, arm=0.37, speed=2800)
    power = loads.working.answers["brake power"].value
    powers = morse_powers(power=power, cut=[power * one / 160 for one in cut])
    assert powers.value == pytest.approx(loads.value)
    assert powers.working.answers["friction power"].value == pytest.approx(
        loads.working.answers["friction power"].value
    )


def test_a_cylinder_that_does_not_fire_is_named():
    with pytest.raises(NotPossible, match="cylinder 2 cut, 160 N must be below"):
        morse_test(load=160, cut=[110, 160, 104, 110], arm=0.37, speed=2800)


def test_cylinders_that_give_less_than_the_brake_are_refused():
    with pytest.raises(NotPossible, match="the speed must be the same"):
        morse_powers(power=10, cut=[6, 6])
    with pytest.raises(NotPossible, match="at least two"):
        morse_powers(power=10, cut=[1])
