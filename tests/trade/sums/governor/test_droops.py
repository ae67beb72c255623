"""Droop says what it is divided by; classes by what holds them back."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.governor.droop import droop
from shimstock.trade.sums.governor.governor_class import governor_class
from shimstock.trade.sums.governor.speed_swing import speed_swing


def said(worked):
    return worked.working.answers["divided by"].value


@given(st.floats(1.001, 2), st.floats(300, 2000))
def test_one_droop_three_divisors(share, loaded):
    fast = share * loaded
    by_full = droop(no_load=fast, full_load=loaded)
    by_none = droop(no_load=fast, full_load=loaded, by="no-load speed")
    by_declared = droop(no_load=fast, full_load=loaded, by="declared speed", declared=loaded)
    assert by_none.value == pytest.approx(by_full.value / share)
    assert by_declared.value == pytest.approx(by_full.value)
    assert said(by_full).startswith("full-load speed")
    assert said(by_none).startswith("no-load speed")
    assert said(by_declared).startswith("declared speed")
    assert any("divide the droop by different speeds" in t for t in by_full.working.cautions)


def test_a_shops_governor_run():
    # Common practice, no source: (fast idle − loaded)/loaded; out of order, then put right.
    assert droop(no_load=1344, full_load=1114).value == pytest.approx(20.6, abs=0.05)
    assert droop(no_load=1226, full_load=1111).value == pytest.approx(10.4, abs=0.05)


def test_what_cannot_be_is_refused():
    with pytest.raises(NotPossible, match="swapped"):
        droop(no_load=900, full_load=1000)
    with pytest.raises(NotPossible, match="declared speed is missing"):
        droop(no_load=1000, full_load=900, by="declared speed")


def test_thrown_off_and_thrown_on_swing_alike():
    off = speed_swing(before=1500, peak=1620, settled=1575)
    on = speed_swing(before=1500, peak=1380, settled=1425)
    assert off.value == on.value
    assert said(off).startswith("initial speed")


@given(st.floats(0, 12), st.floats(0, 4), st.floats(0, 15), st.floats(0, 3))
def test_worse_in_anything_is_never_a_better_class(sag, band, recovery, more):
    order = ["none", "G1", "G2", "G3"]
    now = order.index(governor_class(droop=sag, band=band, recovery=recovery).value)
    for worse in (
        {"droop": sag + more, "band": band, "recovery": recovery},
        {"droop": sag, "band": band + more, "recovery": recovery},
        {"droop": sag, "band": band, "recovery": recovery + more},
    ):
        assert order.index(governor_class(**worse).value) <= now


@pytest.mark.parametrize(
    ("given_", "reached"),
    [
        ((3, 0.5, 3), "G3"), ((3.1, 0.5, 3), "G2"), ((3, 0.6, 3), "G2"), ((3, 0.5, 3.1), "G2"),
        ((3, 0.5, 10), "G1"), ((8, 2.5, 10.1), "none"), ((8.1, 0, 0), "none"),
    ],
)  # fmt: skip
def test_the_worst_of_the_three_decides(given_, reached):
    # ISO 8528-5, table of operating limits, from memory.
    sag, band, recovery = given_
    assert governor_class(droop=sag, band=band, recovery=recovery).value == reached
