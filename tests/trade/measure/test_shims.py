from itertools import combinations_with_replacement

import pytest
from hypothesis import given
from hypothesis import strategies as st

from published.as_printed import as_printed
from shimstock.trade.measure.bore import largest
from shimstock.trade.measure.shims import choose_pack, end_play, pack_for_end_play
from shimstock.trade.measure.take import understand
from shimstock.trade.numbers.instruments import good_to
from shimstock.trade.numbers.limits import Range
from trade.measure.figures import figure

OFFERED = [0.003, 0.005, 0.010, 0.020]


@given(
    st.lists(st.integers(2, 30), min_size=1, max_size=4),
    st.integers(0, 60),
    st.integers(0, 10),
)
def test_no_smaller_pack_lies_in_the_band(thou, low, wide):
    found = choose_pack([n / 1000 for n in thou], low=low / 1000, high=(low + wide) / 1000).value

    fewest = next(
        (
            count
            for count in range(7)
            for pack in combinations_with_replacement(thou, count)
            if low <= sum(pack) <= low + wide
        ),
        None,
    )
    if fewest is not None:
        assert len(found.shims) == fewest
        assert low - 1e-6 <= found.thickness * 1000 <= low + wide + 1e-6
    else:
        assert found is None or len(found.shims) > 6


def test_among_packs_of_the_same_count_the_middle_of_the_band_counts():
    assert choose_pack(OFFERED, low=0.010, high=0.030).value.shims == (0.020,)


def test_no_pack_in_the_band_is_said():
    worked = choose_pack([0.010], low=0.011, high=0.019)

    assert worked.value is None
    assert "No pack" in worked.working.shown()[-1]


def test_no_shim_at_all():
    assert choose_pack(OFFERED, low=0.0, high=0.001).value.shims == ()


@pytest.mark.parametrize(("offered", "low"), [([0.0], 0.01), ([], 0.01), ([0.01], 0.03)])
def test_shims_and_band_must_make_sense(offered, low):
    with pytest.raises(ValueError, match="must be above 0"):
        choose_pack(offered, low=low, high=0.02)


def test_a_pack_brings_the_end_play_into_its_range():
    wanted = Range(0.005, 0.010, "in", "0.005 .. 0.010 in")
    worked = pack_for_end_play(OFFERED, fitted=0.010, end_play=0.018, wanted=wanted)

    assert worked.value.shims == (0.020,)
    assert worked.working.value("e_new") == as_printed("0.008")
    assert worked.working.disagreements() == []


def test_shigley_stack_of_four_sizes():
    # Shigley, Mechanical Engineering Design, 9th ed., example 1-3: w = 0.005, and by root of the
    # sum of squares ±0.006
    of = figure(unit="in")

    def size(text, within):
        return largest(of, understand("x", of, [text], instrument=good_to(within, "in")))

    got = end_play(
        [
            ("housing", size("1.750", 0.003), 1),
            ("collar", size("0.750", 0.001), -1),
            ("washer", size("0.120", 0.005), -1),
            ("boss", size("0.875", 0.001), -1),
        ],
        "in",
    )

    assert got.value == as_printed("0.005")
    assert 2 * got.u == as_printed("0.006")
    assert got.working.disagreements() == []
