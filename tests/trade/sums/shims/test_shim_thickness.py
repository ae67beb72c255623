import pytest
from hypothesis import given
from hypothesis import strategies as st

from published.as_printed import as_printed
from shimstock.trade.numbers.units import Length
from shimstock.trade.sums.shims.shim_thickness import shim_thickness


def test_gearbox_manual_page_play_and_preload():
    # A car gearbox manual's page: fitted 0.65, play 0.30, preload 0.20.
    got = shim_thickness(
        fitted=Length(0.65), end_play=Length(0.30), preload=Length(0.20), unit="mm"
    )
    assert got.value == as_printed("1.15")
    assert got.working.disagreements() == []


def test_outboard_motor_manual_page_too_tight():
    # An outboard motor manual's page: 0.52 with 0.22 too much.
    got = shim_thickness(fitted=Length(0.52), end_play=Length(-0.22), unit="mm")
    assert got.value == as_printed("0.30")
    assert got.working.disagreements() == []


@given(st.floats(0, 1), st.floats(0, 1), st.floats(0, 0.5))
def test_the_new_pack_leaves_the_play_that_is_wanted(fitted, play, wanted):
    if fitted + play < wanted:
        return
    pack = shim_thickness(fitted=Length(fitted), end_play=Length(play), wanted=Length(wanted)).value
    assert play - (pack - fitted) == pytest.approx(wanted, abs=1e-12)


def test_what_no_pack_can_do_is_refused():
    with pytest.raises(ValueError, match="cannot both be wanted"):
        shim_thickness(
            fitted=Length(0), end_play=Length(1), wanted=Length(0.1), preload=Length(0.1)
        )
    with pytest.raises(ValueError, match="cannot be"):
        shim_thickness(fitted=Length(0.1), end_play=Length(0.1), wanted=Length(0.3))
