import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.electrics.battery_charge import battery_charge
from shimstock.trade.sums.electrics.battery_freezing import battery_freezing
from shimstock.trade.sums.electrics.battery_voltage import battery_voltage
from shimstock.trade.sums.electrics.charge_from_voltage import charge_from_voltage

ACID = st.floats(1.05, 1.35)


@given(a=ACID, b=ACID)
def test_stronger_acid_is_never_less_charge(a, b):
    low, high = sorted((a, b))
    assert battery_charge(reading=low).value <= battery_charge(reading=high).value


@given(a=st.floats(1.12, 1.35), b=st.floats(1.12, 1.35))
def test_stronger_acid_never_freezes_sooner(a, b):
    low, high = sorted((a, b))
    assert battery_freezing(reading=low).value >= battery_freezing(reading=high).value


@given(reading=st.floats(1.125, 1.26))
def test_charge_by_acid_and_by_the_tables_own_voltage_agree(reading):
    got = battery_charge(reading=reading)
    volts = got.working.answers["voltage of six cells at rest"].value
    assert charge_from_voltage(volts=volts, cells=6).value == pytest.approx(got.value)


@given(reading=ACID, warm=st.floats(-20, 120))
def test_cold_acid_reads_too_strong(reading, warm):
    shift = battery_charge(reading=reading, temperature=warm).working.answers["correction"].value
    assert (shift < 0) == (warm < 80) or shift == 0


def test_a_six_volt_battery_is_half_of_a_twelve_volt_one():
    three, six = (
        battery_charge(reading=1.19, cells=n).working.answers["voltage at rest"].value
        for n in (3, 6)
    )
    assert three == six / 2
    assert charge_from_voltage(volts=6.12, cells=3).value == pytest.approx(50)


@pytest.mark.parametrize(("reading", "charge"), [(1.1, 0), (1.3, 100)])
def test_beyond_the_table_its_ends_stand_and_it_is_said(reading, charge):
    got = battery_charge(reading=reading)
    assert got.value == charge
    assert any("the table's" in line for line in got.working.shown())


def test_frost_is_read_at_the_acid_allowed_for_its_warmth():
    cold = battery_freezing(reading=1.222, temperature=0)
    assert cold.working.answers["correction"].value == pytest.approx(-0.032)
    assert cold.value == pytest.approx(battery_freezing(reading=1.19).value)


def test_the_doubt_about_frost_is_shown():
    lines = " ".join(battery_freezing(reading=1.12).working.shown())
    assert "near −10 °C" in lines


@pytest.mark.parametrize("acid", [1.12, 1.155, 1.19, 1.225, 1.265])
def test_the_rule_of_084_lies_a_little_below_the_table(acid):
    rule = battery_voltage(acid=acid, cells=6).value
    table = battery_charge(reading=acid, cells=6).working.answers["voltage at rest"].value
    assert 0 < table - rule < 0.14


def test_more_volts_than_a_charger_gives_are_refused():
    with pytest.raises(NotPossible, match="number of cells"):
        charge_from_voltage(volts=12.6, cells=3)
