import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.units import Length
from shimstock.trade.sums.shims.end_play_after import end_play_after
from shimstock.trade.sums.shims.shim_thickness import shim_thickness


@given(st.floats(0, 1), st.floats(0, 1), st.floats(0, 0.5))
def test_the_new_pack_leaves_the_play_that_is_wanted(fitted, play, wanted):
    if fitted + play < wanted:
        return
    pack = shim_thickness(fitted=Length(fitted), end_play=Length(play), wanted=Length(wanted)).value
    left = end_play_after(fitted=Length(fitted), end_play=Length(play), pack=pack)
    assert left.value == pytest.approx(wanted, abs=1e-12)
    assert left.working.disagreements() == []


@pytest.mark.parametrize(
    ("pack", "said"), [(0.5, "play"), (0.75, "neither play nor preload"), (1.0, "preload")]
)
def test_a_pack_leaves_play_or_preload(pack, said):
    got = end_play_after(fitted=Length(0.5), end_play=Length(0.25), pack=Length(pack))
    assert got.working.answers["it is"].value == said


def test_the_last_binary_digits_make_no_play_and_no_preload():
    # 0.1 + 0.7 − 0.8 is −1e-16 to a computer.
    got = end_play_after(fitted=Length(0.1), end_play=Length(0.7), pack=Length(0.8))
    assert (got.value, got.working.answers["it is"].value) == (0, "neither play nor preload")
    none = shim_thickness(fitted=Length(0.1), end_play=Length(0.7), wanted=Length(0.8))
    assert none.value == 0
    assert got.working.disagreements() == none.working.disagreements() == []


def test_what_no_pack_can_do_is_refused():
    with pytest.raises(NotPossible, match="cannot both be wanted"):
        shim_thickness(
            fitted=Length(0), end_play=Length(1), wanted=Length(0.1), preload=Length(0.1)
        )
    with pytest.raises(NotPossible, match="cannot be"):
        shim_thickness(fitted=Length(0.1), end_play=Length(0.1), wanted=Length(0.3))
