"""Traction on soil: how it grows with slip and firmness, and where it wastes least."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import minimize_scalar

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.drive.best_slip import best_slip
from shimstock.trade.sums.drive.mobility_number import mobility_number
from shimstock.trade.sums.drive.traction import traction

NUMBERS = st.floats(12, 100)
WHEEL = {"cone": 1200, "width": 0.467, "diameter": 1.62, "load": 18}


def on(number, slip):
    return traction(soil="measured", number=number, slip=slip).value


@given(NUMBERS)
def test_the_best_slip_is_where_a_general_search_finds_it(number):
    found = minimize_scalar(
        lambda slip: -on(number, slip).efficiency, bounds=(0.1, 60), method="bounded",
        options={"xatol": 1e-6},
    )  # fmt: skip
    best = best_slip(soil="measured", number=number).value
    assert best.slip == pytest.approx(found.x, abs=1e-3)
    assert best.efficiency == pytest.approx(-found.fun)


@given(NUMBERS, st.floats(1, 90))
def test_more_slip_pulls_harder_at_the_rim_and_rolls_heavier(number, slip):
    less, more = on(number, slip), on(number, slip + 5)
    assert more.gross > less.gross
    assert more.resistance > less.resistance


@given(NUMBERS, st.floats(2, 30))
def test_firmer_soil_pulls_more_and_wastes_less(number, slip):
    soft, firm = on(number, slip), on(number + 5, slip)
    assert firm.net > soft.net
    assert firm.efficiency > soft.efficiency


def test_softer_soil_wants_more_slip():
    slips = [best_slip(soil=s).value.slip for s in ("hard", "firm", "tilled", "soft")]
    assert slips == sorted(slips)


def test_a_named_soil_is_its_number():
    assert traction(soil="tilled", slip=12).value == on(40, 12)


def test_a_wheel_that_hardly_slips_is_said_not_to_pull():
    got = traction(soil="soft", slip=0.5)
    assert got.value.net < 0
    assert "does not pull at all" in "\n".join(got.working.shown())
    assert "does not pull" not in "\n".join(traction(soil="soft", slip=10).working.shown())


def test_a_swamp_has_no_best_slip():
    with pytest.raises(NotPossible, match="so soft that the wheel never pulls"):
        best_slip(soil="measured", number=1)


@pytest.mark.parametrize("sum_", [best_slip, lambda **soil: traction(**soil, slip=10)])
def test_a_measured_soil_wants_its_number_and_a_named_one_does_not(sum_):
    with pytest.raises(NotPossible, match="is missing for a measured soil"):
        sum_(soil="measured")
    with pytest.raises(NotPossible, match="beside a soil that has one"):
        sum_(soil="firm", number=50)


def test_load_sinks_a_wheel_and_a_softer_tyre_carries_it():
    number = mobility_number(**WHEEL).value
    assert mobility_number(**WHEEL | {"load": 36}).value == pytest.approx(number / 2)
    assert mobility_number(**WHEEL, deflection=0.25).value > number
