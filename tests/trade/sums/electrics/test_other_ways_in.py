"""Ways into a sum that its example does not show: their workings agree with themselves too."""

from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.sums.electrics.battery_charge import battery_charge
from shimstock.trade.sums.electrics.battery_freezing import battery_freezing
from shimstock.trade.sums.electrics.charge_from_voltage import charge_from_voltage
from shimstock.trade.sums.electrics.starter_cable import starter_cable
from shimstock.trade.sums.electrics.starter_drop_limit import starter_drop_limit
from shimstock.trade.sums.electrics.voltage_drop import voltage_drop
from shimstock.trade.sums.electrics.wire_gauge import wire_gauge
from shimstock.trade.sums.electrics.wire_resistance import wire_resistance

WARM = st.floats(-40, 120)


@given(reading=st.floats(1, 1.4), temperature=WARM, cells=st.sampled_from([None, 3, 6]))
def test_every_stretch_of_the_charges_agrees(reading, temperature, cells):
    got = battery_charge(reading=reading, temperature=temperature, cells=cells)
    assert got.working.disagreements() == []


@given(reading=st.floats(1.12, 1.4))
def test_every_stretch_of_the_frosts_agrees(reading):
    assert battery_freezing(reading=reading).working.disagreements() == []


@given(volts=st.floats(5, 16))
def test_every_stretch_of_the_voltages_agrees(volts):
    assert charge_from_voltage(volts=volts, cells=6).working.disagreements() == []


@given(area=st.floats(0.5, 120), length=st.floats(0.1, 20), temperature=WARM)
def test_wires_by_their_area_agree(area, length, temperature):
    got = wire_resistance(area=area, length=length, temperature=temperature)
    assert got.working.disagreements() == []
    drop = voltage_drop(current=5, out=length, system=24, area=area, temperature=temperature)
    assert drop.working.disagreements() == []


@given(across=st.floats(0.1, 11.5))
def test_gauges_by_diameter_agree(across):
    assert wire_gauge(diameter=across).working.disagreements() == []


@given(current=st.floats(1, 300), temperature=WARM)
def test_the_manuals_limit_agrees(current, temperature):
    got = starter_cable(current=current, out=1.5, system=12, temperature=temperature)
    assert got.working.disagreements() == []
    limit = starter_drop_limit(current=current, where="positive cable", measured=0.3)
    assert limit.working.disagreements() == []
