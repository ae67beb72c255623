"""The room a ratio asks for, the gasket that makes it, and bore and torque back from the book."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.engine.bore_for_displacement import bore_for_displacement
from shimstock.trade.sums.engine.clearance_volume import clearance_volume
from shimstock.trade.sums.engine.compression_ratio import compression_ratio
from shimstock.trade.sums.engine.displacement import displacement
from shimstock.trade.sums.engine.gasket_for_ratio import gasket_for_ratio
from shimstock.trade.sums.engine.milling_for_ratio import milling_for_ratio
from shimstock.trade.sums.engine.overbore import overbore
from shimstock.trade.sums.engine.torque_from_bmep import torque_from_bmep
from shimstock.trade.sums.engine.torque_mean_pressure import torque_mean_pressure

CYLINDER = {"bore": 101.6, "stroke": 127.0}
RATIOS = st.floats(3, 20)
CYCLES = st.sampled_from(["four-stroke", "two-stroke"])


@given(RATIOS)
def test_the_room_for_a_ratio_gives_the_ratio_back(ratio):
    room = clearance_volume(**CYLINDER, ratio=ratio).value
    assert compression_ratio(**CYLINDER, chamber=room).value == pytest.approx(ratio)


@given(RATIOS, st.floats(0.01, 5))
def test_more_compression_leaves_less_room(ratio, more):
    room = clearance_volume(**CYLINDER, ratio=ratio).value
    assert clearance_volume(**CYLINDER, ratio=ratio + more).value < room


@given(st.floats(4, 6), st.floats(0.1, 4), st.floats(102, 110), st.floats(0.5, 3))
def test_with_the_new_gasket_the_engine_has_the_ratio_wanted(wanted, down, hole, thin):
    head = {**CYLINDER, "gasket_bore": hole}
    room = clearance_volume(**CYLINDER, ratio=wanted + down).value
    chamber = room - 0.7853981633974483 * hole**2 * thin
    ratio = compression_ratio(**head, chamber=chamber, gasket=thin).value
    thick = gasket_for_ratio(**head, ratio=ratio, wanted=wanted, gasket=thin).value
    assert thick > thin
    after = compression_ratio(**head, chamber=chamber, gasket=thick).value
    assert after == pytest.approx(wanted)


def test_a_gasket_is_a_cut_the_other_way():
    change = {**CYLINDER, "ratio": 5.6, "wanted": 5.3}
    cut = milling_for_ratio(**change).value
    assert gasket_for_ratio(**change, gasket=1.2).value == pytest.approx(1.2 - cut)


def test_thinner_than_nothing_is_refused():
    with pytest.raises(NotPossible, match=r"ratio 8 cannot be reached by a gasket.*mill the head"):
        gasket_for_ratio(**CYLINDER, ratio=5.3, wanted=8, gasket=1.2)


@given(st.floats(50, 200), st.floats(0.7, 1.6), st.integers(1, 12))
def test_bore_and_swept_volume_lead_to_one_another(bore, share, cylinders):
    litres = displacement(bore=bore, stroke=share * bore, cylinders=cylinders).value / 1e6
    has = {"displacement": litres, "cylinders": cylinders}
    assert bore_for_displacement(**has, stroke=share * bore).value == pytest.approx(bore)
    assert bore_for_displacement(**has, stroke_share=share).value == pytest.approx(bore)


def test_bored_out_it_sweeps_what_the_new_bore_sweeps():
    at = {"stroke": 5.25, "cylinders": 4, "unit": "in"}
    told = overbore(bore=4.25, new_bore=4.29, ratio=6, **at).working.answers
    assert told["before"].value == pytest.approx(displacement(bore=4.25, **at).value)
    assert told["after"].value == pytest.approx(displacement(bore=4.29, **at).value)
    without = overbore(bore=4.25, new_bore=4.29, ratio=6, unit="in").working.answers
    assert set(without) == {"growth", "ratio"}


@given(st.floats(0.1, 30), st.floats(0.2, 40), CYCLES)
def test_torque_and_mean_pressure_lead_to_one_another(pressure, litres, cycle):
    torque = torque_from_bmep(pressure=pressure, displacement=litres, cycle=cycle).value
    back = torque_mean_pressure(torque=torque, displacement=litres, cycle=cycle).value
    assert back == pytest.approx(pressure)


def test_a_two_stroke_pulls_twice_as_hard_at_one_mean_pressure():
    four, two = (
        torque_from_bmep(pressure=6, displacement=2, cycle=cycle).value
        for cycle in ("four-stroke", "two-stroke")
    )
    assert two == pytest.approx(2 * four)
