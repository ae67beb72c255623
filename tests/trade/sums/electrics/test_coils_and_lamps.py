import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.electrics.ballast_resistor import ballast_resistor
from shimstock.trade.sums.electrics.ballast_voltage import ballast_voltage
from shimstock.trade.sums.electrics.lamp_current import lamp_current


@given(supply=st.floats(11, 15), coil=st.floats(0.5, 5), wanted=st.floats(4, 10))
def test_the_resistor_chosen_gives_the_coil_what_it_wants(supply, coil, wanted):
    chosen = ballast_resistor(supply=supply, coil=coil, wanted=wanted)
    got = ballast_voltage(supply=supply, coil=coil, ballast=chosen.value).working.answers
    told = chosen.working.answers
    assert got["voltage"].value == pytest.approx(wanted)
    assert got["current"].value == pytest.approx(told["current"].value)
    assert got["heat"].value == pytest.approx(told["heat"].value)


def test_without_a_resistor_the_coil_gets_the_whole_supply():
    assert ballast_voltage(supply=6, coil=1.5).value == pytest.approx(6)


def test_a_coil_that_wants_the_whole_supply_is_refused():
    with pytest.raises(NotPossible, match="wanted 12 V must be below the supply, 6 V"):
        ballast_resistor(supply=6, coil=1.5, wanted=12)


def test_half_the_voltage_doubles_the_current():
    six, twelve = (lamp_current(power=35, voltage=u, lamps=2).value for u in (6, 12))
    assert six == 2 * twelve
