import pytest

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.sums.electrics.battery_charge import battery_charge
from shimstock.trade.sums.electrics.battery_freezing import battery_freezing
from shimstock.trade.sums.electrics.charge_from_voltage import charge_from_voltage
from shimstock.trade.sums.find import find_sum
from shimstock.trade.sums.typed import work_out


@pytest.mark.parametrize("reading", [1, 1.05, 1.119])
def test_acid_near_water_is_not_said_to_stand_23_degrees_of_frost(reading):
    with pytest.raises(NotPossible, match=r"below the table, 1\.120; treat it as water"):
        battery_freezing(reading=reading)


def test_acid_that_cold_makes_read_too_strong_is_refused_by_what_it_is():
    with pytest.raises(NotPossible, match=r"acid 1\.098"):
        battery_freezing(reading=1.13, temperature=0)
    assert battery_freezing(reading=1.152, temperature=0).value == pytest.approx(-23)


def test_a_point_of_the_table_is_printed_once():
    lines = battery_freezing(reading=1.12).working.shown()
    assert "t_f = −23 degC" in lines


@pytest.mark.parametrize(("reading", "said"), [(1.1, True), (1.2, False), (1.3, True)])
def test_outside_the_table_its_end_row_is_said(reading, said):
    lines = battery_charge(reading=reading).working.shown()
    assert lines.count("Outside the table its end row is taken.") == said


def test_volts_above_full_charge_ask_for_the_charger():
    lines = " ".join(charge_from_voltage(volts=13.5, cells=6).working.shown())
    assert "charger may be running" in lines
    assert "charger" not in " ".join(charge_from_voltage(volts=12.5, cells=6).working.shown())


def test_the_number_of_cells_is_never_guessed():
    for name, typed in (("charge-from-voltage", "volts"), ("battery-voltage", "acid")):
        with pytest.raises(NotUnderstood, match="--cells"):
            work_out(find_sum(name), {typed: "1.2"})
    assert "voltage at rest" not in battery_charge(reading=1.2).working.answers


def test_a_six_volt_battery_taken_for_six_cells_is_asked_for_its_cells_first():
    lines = " ".join(charge_from_voltage(volts=6.2, cells=6).working.shown())
    assert lines.index("count the cells again") < lines.index("dead cell")
