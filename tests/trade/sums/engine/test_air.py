"""Air at a height, and what it does to a gauge and a carburettor."""

from math import exp

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.constants import R, g
from scipy.integrate import quad

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.engine.atmosphere import atmosphere
from shimstock.trade.sums.engine.compressed_pressure import compressed_pressure
from shimstock.trade.sums.engine.compression_at_sea import compression_at_sea
from shimstock.trade.sums.engine.gauge_compression import gauge_compression
from shimstock.trade.sums.engine.mixture_at_height import mixture_at_height

HEIGHTS = st.floats(-400, 4000)
RATIOS = st.floats(3, 22)
EXPONENTS = st.floats(1.2, 1.4)
PETROL = {"mixture": 14.0, "temperature": 15.0}


@given(st.floats(-500, 11_000))
def test_each_layer_of_air_carries_those_above_it(height):
    """ISO 2533: dp/p = −g·dh/(R·T), with T falling by 6.5 K each 1000 m."""
    air = atmosphere(height=height).value
    fallen, _ = quad(lambda h: g * 0.0289644 / (R * (288.15 - 0.0065 * h)), 0, height)
    weight = 101.325 * exp(-fallen)
    assert air.pressure == pytest.approx(weight, rel=5e-5)
    assert air.share == pytest.approx(air.pressure / 101.325)


@pytest.mark.parametrize("height", [-501, 11_001])
def test_above_the_standard_and_below_the_ground_is_refused(height):
    with pytest.raises(NotPossible, match="at least -500 and at most 11000"):
        atmosphere(height=height)


@given(RATIOS, HEIGHTS, st.floats(1, 500), EXPONENTS)
def test_the_gauge_falls_with_height(ratio, height, more, exponent):
    at = {"ratio": ratio, "exponent": exponent}
    low, high = (gauge_compression(**at, height=h).value for h in (height, height + more))
    assert low > high
    tighter = gauge_compression(ratio=ratio + 0.1, exponent=exponent, height=height).value
    assert tighter > low


@given(RATIOS, HEIGHTS, EXPONENTS)
def test_a_reading_taken_up_there_comes_back_to_the_sea(ratio, height, exponent):
    at = {"ratio": ratio, "exponent": exponent}
    reading = gauge_compression(**at, height=height).value
    at_sea = gauge_compression(**at).value
    assert compression_at_sea(reading=reading, height=height).value == pytest.approx(at_sea)


@given(RATIOS, EXPONENTS)
def test_the_gauge_is_the_pressure_less_the_airs(ratio, exponent):
    absolute = compressed_pressure(ratio=ratio, exponent=exponent, start=1.01325).value
    gauge = gauge_compression(ratio=ratio, exponent=exponent).value
    assert gauge == pytest.approx(absolute - 1.01325)


def test_compressed_slowly_it_keeps_its_heat_to_itself_the_least():
    assert compressed_pressure(ratio=8, exponent=1, start=1).value == pytest.approx(8)
    assert compressed_pressure(ratio=8, exponent=1.4, start=1).value == pytest.approx(8**1.4)
    strange = compressed_pressure(ratio=8, exponent=1.5).working.cautions
    assert any("extrapolates" in text for text in strange)


@pytest.mark.parametrize("ratio", [1, 0, -6, 101])
def test_a_ratio_that_compresses_nothing_is_refused(ratio):
    with pytest.raises(NotPossible, match="must be above 1 and at most 100"):
        gauge_compression(ratio=ratio)


@given(HEIGHTS, st.floats(1, 500))
def test_higher_up_a_carburettor_runs_richer(height, more):
    low, high = (mixture_at_height(**PETROL, height=h).value for h in (height, height + more))
    assert low > high
    assert mixture_at_height(**PETROL, height=0).value == pytest.approx(14)


@given(st.floats(0, 5000))
def test_the_mixture_falls_with_the_root_of_the_density(height):
    air = atmosphere(height=height).value
    density = air.share * 288.15 / (air.temperature + 273.15)
    got = mixture_at_height(**PETROL, height=height, pressure="ISO 2533").value
    assert got == pytest.approx(14 * density**0.5)


def test_the_textbooks_rule_is_leaner_in_the_mountains():
    at = {**PETROL, "height": 4000}
    share = mixture_at_height(**at, pressure="textbook").value / mixture_at_height(**at).value
    assert share**2 == pytest.approx(1.02, abs=0.01), "as much as the pressures differ"
