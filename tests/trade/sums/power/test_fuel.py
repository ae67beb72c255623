import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.numbers.conversion import convert
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.power.consumption_by_heating_value import consumption_by_heating_value
from shimstock.trade.sums.power.consumption_from_efficiency import consumption_from_efficiency
from shimstock.trade.sums.power.fuel_annual import fuel_annual
from shimstock.trade.sums.power.fuel_consumption import fuel_consumption
from shimstock.trade.sums.power.fuel_flow import fuel_flow
from shimstock.trade.sums.power.fuel_full_throttle import fuel_full_throttle
from shimstock.trade.sums.power.fuel_older_d497 import fuel_older_d497
from shimstock.trade.sums.power.fuel_partial_throttle import fuel_partial_throttle
from shimstock.trade.sums.power.gallons_per_hour import gallons_per_hour
from shimstock.trade.sums.power.thermal_efficiency import thermal_efficiency
from shimstock.trade.sums.power.work_from_consumption import work_from_consumption
from shimstock.trade.sums.power.work_per_gallon import work_per_gallon


@given(efficiency=st.floats(5, 60), heat=st.floats(30, 50))
def test_efficiency_comes_back_from_its_consumption(efficiency, heat):
    taken = consumption_from_efficiency(efficiency=efficiency, heating_value=heat).value
    back = thermal_efficiency(consumption=taken, heating_value=heat).value
    assert back == pytest.approx(efficiency)


@given(power=st.floats(5, 100), share=st.floats(0.2, 1))
def test_weight_and_volume_of_the_fuel_say_the_same(power, share):
    fuel = share * power  # kg/h
    by_weight = fuel_consumption(power=power, fuel=fuel).value
    by_volume = fuel_consumption(power=power, volume=fuel / 0.84, density=0.84).value
    assert by_volume == pytest.approx(by_weight)
    assert thermal_efficiency(power=power, fuel=fuel, heating_value=42).value == pytest.approx(
        thermal_efficiency(consumption=by_weight, heating_value=42).value
    )


def test_a_timed_can_by_weight_and_by_volume():
    by_weight = fuel_flow(time=30, weight=4.2, density=0.84).working.answers
    by_volume = fuel_flow(time=30, volume=5, density=0.84).working.answers
    assert by_weight["volume"].value == pytest.approx(by_volume["volume"].value)
    assert by_weight["weight"].value == pytest.approx(by_volume["weight"].value)
    with pytest.raises(NotPossible, match="give one of the two"):
        fuel_flow(time=30)


def test_a_fuel_of_the_same_heat_takes_the_same():
    same = consumption_by_heating_value(consumption=280, heating_value=43, reference=43)
    assert same.value == 280


def test_fuel_is_given_once_and_a_volume_with_its_density():
    with pytest.raises(NotPossible, match="each enough alone"):
        fuel_consumption(power=20, fuel=5, volume=6)
    with pytest.raises(NotPossible, match="by weight or by volume"):
        fuel_consumption(power=20)
    with pytest.raises(NotPossible, match="without the density"):
        fuel_consumption(power=20, volume=6)
    with pytest.raises(NotPossible, match="power is needed"):
        thermal_efficiency(heating_value=42, fuel=5)
    with pytest.raises(NotPossible, match="leave one out"):
        thermal_efficiency(heating_value=42, power=20, consumption=250)


def test_more_power_than_heat_is_refused():
    with pytest.raises(NotPossible, match="more power than the fuel has heat"):
        thermal_efficiency(heating_value=42, power=20, fuel=1)


@given(power=st.floats(5, 100), work=st.floats(3, 20))
def test_work_from_a_gallon_comes_back(power, work):
    volume = gallons_per_hour(power=power, work=work).value
    assert work_per_gallon(power=power, volume=volume).value == pytest.approx(work)


@given(work=st.floats(3, 20))
def test_a_row_of_a_test_report_multiplies_to_the_gallon(work):
    # Identity: (hp.h/gal)·(lb/hp.h) = lb/gal, here through grams and litres.
    grams = 6.994 / work
    metric = convert(grams, "lb/hp.h", "g/kWh")
    assert convert(metric, "g/kWh", "lb/hp.h") * work == pytest.approx(6.994)
    assert work_from_consumption(consumption=grams, gallon=6.994).value == pytest.approx(work)


@pytest.mark.parametrize(("volume", "said"), [(2.5, "yes"), (1.5, "no: more"), (5, "no: less")])
def test_a_result_no_official_test_saw_is_doubted(volume, said):
    told = work_per_gallon(power=38, volume=volume, kind="diesel").working.answers["plausible"]
    assert told.value.startswith(said)


def test_nothing_is_doubted_without_the_kind_of_fuel():
    assert "plausible" not in work_per_gallon(power=38, volume=0.1).working.answers


@given(share=st.floats(1, 100))
def test_throttle_wide_open_is_partial_throttle_slowed_by_nothing(share):
    full = fuel_full_throttle(pto=30, share=share).value
    wide_open = fuel_partial_throttle(pto=30, share=share, slowed=0)
    assert wide_open.value == wide_open.working.answers["at full throttle"].value == full
    assert fuel_partial_throttle(pto=30, share=share, slowed=20).value < full


@given(a=st.floats(1, 99), more=st.floats(0.1, 50))
def test_more_load_takes_more_fuel_by_either_standard(a, more):
    b = min(a + more, 100)
    for fuel_of in (fuel_full_throttle, fuel_older_d497):
        hourly = [fuel_of(pto=30, share=s).working.answers["fuel"].value for s in (a, b)]
        assert hourly[0] < hourly[1]


def test_a_season_takes_its_hours_times_the_mean():
    told = fuel_annual(pto=30, hours=200, fuel="petrol").working.answers
    assert told["total"].value == pytest.approx(200 * told["mean"].value)
    assert told["mean"].value > fuel_annual(pto=30).value


def test_fuel_for_work_times_the_work_is_the_fuel():
    told = fuel_older_d497(pto=30, share=50).working.answers
    assert told["fuel"].value == pytest.approx(15 * told["for work"].value)


def test_the_two_standards_say_their_names():
    assert fuel_full_throttle(pto=30).working.answers["standard"].value == "ASABE D497.7"
    assert fuel_older_d497(pto=30).working.answers["standard"].value == "ASAE D497.4"
