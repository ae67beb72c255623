"""Wheels, tyres and the power take-off; pumps and cylinders; and what is refused."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.sums.drive._tyre import read_tyre
from shimstock.trade.sums.drive.cylinder import cylinder
from shimstock.trade.sums.drive.cylinder_force import cylinder_force
from shimstock.trade.sums.drive.ground_speed import ground_speed
from shimstock.trade.sums.drive.hydraulic_power import hydraulic_power
from shimstock.trade.sums.drive.pto_speed import pto_speed
from shimstock.trade.sums.drive.pump_flow import pump_flow
from shimstock.trade.sums.drive.tyre_diameter import tyre_diameter

GEARS = {"outside": 75, "inside": 50, "width": 25, "speed": 1000}


def answers(worked):
    return {name: each.value for name, each in worked.working.answers.items()}


@given(st.floats(100, 3000), st.floats(5, 400), st.floats(0.1, 1.2), st.floats(0, 90))
def test_slip_takes_its_share_of_the_speed(speed, ratio, radius, slip):
    drive = {"speed": speed, "ratio": ratio, "radius": radius}
    free = ground_speed(**drive).value
    assert ground_speed(**drive, slip=slip).value == pytest.approx(free * (1 - slip / 100))


def test_radius_and_circumference_come_to_the_same():
    by_radius = ground_speed(speed=975, ratio=72, radius=0.6).value
    rolled = 2 * 3.141592653589793 * 0.6
    assert ground_speed(speed=975, ratio=72, circumference=rolled).value == pytest.approx(by_radius)


@pytest.mark.parametrize("tyre", [{}, {"radius": 0.6, "circumference": 3.8}])
def test_ground_speed_wants_one_measure_of_the_tyre(tyre):
    with pytest.raises(NotPossible, match="exactly one is wanted"):
        ground_speed(speed=975, ratio=72, **tyre)


def test_a_higher_section_makes_a_bigger_tyre():
    low, high = (tyre_diameter(tyre=read_tyre("12.4-38"), aspect=a).value for a in (0.75, 0.9))
    assert 38 < low < high == pytest.approx(38 + 2 * 12.4 * 0.9)


@pytest.mark.parametrize("typed", ["13.6-28", "13.6R28", "13.6 x 28", " 13.6-28 "])
def test_a_tyre_is_read_however_it_is_moulded(typed):
    tyre = read_tyre(typed)
    assert (tyre.section, tyre.rim) == (13.6, 28)


@pytest.mark.parametrize(("typed", "said"), [
    ("28", "is no tyre size"), ("320/85R28", "is no tyre size"), ("1-28", "no tractor has"),
    ("13.6-99", "no tractor has"), ("", "is no tyre size"),
])  # fmt: skip
def test_what_is_no_tyre_is_refused(typed, said):
    with pytest.raises(NotUnderstood, match=said):
        read_tyre(typed)


@pytest.mark.parametrize("standard", [540, 1000])
def test_the_engine_speed_for_the_power_take_off_gives_its_standard_speed(standard):
    engine = answers(pto_speed(speed=800, ratio=1.8, standard=standard))["engine speed"]
    assert pto_speed(speed=engine, ratio=1.8).value == pytest.approx(standard)


@given(st.floats(10, 100))
def test_efficiency_and_flow_lead_to_one_another(efficiency):
    flow = pump_flow(**GEARS, efficiency=efficiency).value.real
    assert pump_flow(**GEARS, measured=flow).value.efficiency == pytest.approx(efficiency)


def test_a_pump_that_gives_more_than_it_holds_is_doubted():
    shown = "\n".join(pump_flow(**GEARS, measured=70).working.shown())
    assert "More than 100 %" in shown
    assert "More than 100 %" not in "\n".join(pump_flow(**GEARS, measured=50).working.shown())


def test_a_pump_wants_one_thing_known_and_its_gears_the_right_way():
    for known in ({}, {"efficiency": 90, "measured": 40}):
        with pytest.raises(NotPossible, match="exactly one is wanted"):
            pump_flow(**GEARS, **known)
    with pytest.raises(NotPossible, match="must be less than the outside"):
        pump_flow(**GEARS | {"inside": 75}, efficiency=90)


def test_power_in_the_oil_is_pressure_times_flow():
    """In SI, where the power is p·Q without a factor: 1714 is 1714.29 rounded."""
    psi, gallon, horsepower = 6894.757293, 3.785411784e-3, 745.6998716
    watts = 1000 * psi * 10 * gallon / 60
    assert hydraulic_power(pressure=1000, flow=10).value == pytest.approx(watts / horsepower, 2e-4)


@given(st.floats(1, 8), st.floats(0, 0.95), st.floats(1, 20000), st.floats(0.1, 50))
def test_a_cylinder_comes_in_faster_and_asks_more_pressure(bore, share, load, flow):
    got = cylinder(bore=bore, rod=share * bore, load=load, flow=flow).value
    assert got.in_pressure >= got.out_pressure
    assert got.in_speed >= got.out_speed


@given(st.floats(1, 8), st.floats(0, 0.95), st.floats(1, 20000))
def test_force_and_pressure_lead_to_one_another(bore, share, load):
    ram = {"bore": bore, "rod": share * bore}
    asked = cylinder(**ram, load=load, flow=1).value
    out = cylinder_force(**ram, pressure=asked.out_pressure, unit="in").value.out
    back = cylinder_force(**ram, pressure=asked.in_pressure, unit="in").value.back
    assert (out, back) == pytest.approx((load, load))


def test_power_of_a_cylinder_is_that_of_its_oil():
    ram = cylinder(bore=3, rod=1.25, load=2500, flow=8)
    oil = hydraulic_power(pressure=ram.value.out_pressure, flow=8).value
    assert answers(ram)["power out"] == pytest.approx(oil, rel=2e-4)
    assert answers(ram)["power in"] == pytest.approx(
        hydraulic_power(pressure=ram.value.in_pressure, flow=8).value, rel=2e-4
    )


def test_a_rod_as_thick_as_its_bore_is_refused():
    with pytest.raises(NotPossible, match="rod 2 in must be thinner than the bore"):
        cylinder(bore=2, rod=2, load=1, flow=1)
    with pytest.raises(NotPossible, match="rod 50 mm must be thinner than the bore"):
        cylinder_force(bore=50, rod=50, pressure=10)
