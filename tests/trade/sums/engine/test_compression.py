"""Compression: what lifts it, what brings it back, and what cannot be."""

from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.engine.air_standard_efficiency import air_standard_efficiency
from shimstock.trade.sums.engine.bore_for_torque import bore_for_torque
from shimstock.trade.sums.engine.compression_ratio import compression_ratio
from shimstock.trade.sums.engine.displacement import displacement
from shimstock.trade.sums.engine.milling import milling
from shimstock.trade.sums.engine.milling_for_ratio import milling_for_ratio
from shimstock.trade.sums.engine.overbore import overbore
from shimstock.trade.sums.engine.torque_mean_pressure import torque_mean_pressure

CYLINDER = {"bore": 108.0, "stroke": 133.0}
RATIOS = st.floats(3, 20)


@given(RATIOS, RATIOS, st.one_of(st.none(), st.floats(1000, 20_000)))
def test_milled_as_much_as_asked_for_it_has_the_ratio_wanted(ratio, wanted, area):
    cut = milling_for_ratio(**CYLINDER, ratio=ratio, wanted=wanted, area=area)
    after = milling(**CYLINDER, ratio=ratio, cut=cut.value, area=area).value
    assert after == pytest.approx(wanted)
    what = cut.working.answers["what"].value
    assert what == ("mill so much off" if wanted >= ratio else "a gasket so much thicker")


@given(RATIOS, st.floats(0, 1), st.floats(0.01, 1))
def test_the_ratio_rises_with_what_is_milled_off(ratio, cut, more):
    first = milling(**CYLINDER, ratio=ratio, cut=cut).value
    assert ratio <= first < milling(**CYLINDER, ratio=ratio, cut=cut + more).value


def test_the_wider_the_chamber_at_the_face_the_more_a_cut_does():
    narrow = milling(**CYLINDER, ratio=6, cut=1, area=5000).value
    wide = milling(**CYLINDER, ratio=6, cut=1, area=9000).value
    assert narrow < wide
    assert milling(**CYLINDER, ratio=6, cut=1, area=pi / 4 * 108**2).value == pytest.approx(
        milling(**CYLINDER, ratio=6, cut=1).value
    )


def test_a_thicker_gasket_is_a_cut_below_nothing():
    at = {**CYLINDER, "chamber": 200_000}
    thin, thick = (compression_ratio(**at, gasket=t).value for t in (1.2, 2.0))
    assert milling(**CYLINDER, ratio=thin, cut=-0.8).value == pytest.approx(thick)
    with pytest.raises(NotPossible, match="takes all the room above the piston"):
        milling(**CYLINDER, ratio=6, cut=30)


@given(st.floats(0, 20_000), st.floats(0, 3), st.floats(-1, 1), st.floats(-9000, 9000))
def test_the_clearance_is_put_together_piece_by_piece(chamber, gasket, deck, dome):
    room = 250_000 + chamber
    by_piece = compression_ratio(**CYLINDER, chamber=room, gasket=gasket, deck=deck, dome=dome)
    whole = by_piece.working.answers["clearance"].value
    assert by_piece.value == pytest.approx(compression_ratio(**CYLINDER, chamber=whole).value)
    assert whole == pytest.approx(room + pi / 4 * 108**2 * (gasket + deck) - dome)


def test_inches_give_the_ratio_that_millimetres_give():
    inch = compression_ratio(
        bore=4.25, stroke=5.25, chamber=14, gasket=1 / 16, gasket_bore=4.375, deck=0.01, unit="in"
    )
    mm = compression_ratio(
        bore=4.25 * 25.4, stroke=5.25 * 25.4, chamber=14 * 25.4**3, gasket=25.4 / 16,
        gasket_bore=4.375 * 25.4, deck=0.254,
    )  # fmt: skip
    assert inch.value == pytest.approx(mm.value)


@pytest.mark.parametrize(
    ("given_", "said"),
    [
        ({"chamber": 0}, "the room above the piston comes to nothing"),
        ({"chamber": 1000, "dome": 1000}, "look at deck and dome"),
        ({"chamber": 1000, "deck": -1}, "look at deck and dome"),
        ({"chamber": -1}, "must be at least 0"),
    ],
)
def test_no_room_is_refused(given_, said):
    with pytest.raises(NotPossible, match=said):
        compression_ratio(**CYLINDER, **given_)


@given(RATIOS, st.floats(0, 3))
def test_bored_out_the_chamber_is_a_smaller_share(ratio, more):
    got = overbore(bore=108, new_bore=108 + more, ratio=ratio).value
    small, big = displacement(**CYLINDER).value, displacement(bore=108 + more, stroke=133).value
    assert got.growth == pytest.approx(100 * (big / small - 1), abs=1e-9)
    chamber = small / (ratio - 1)
    bored = compression_ratio(bore=108 + more, stroke=133, chamber=chamber).value
    assert got.ratio == pytest.approx(bored)


def test_a_bore_does_not_shrink():
    with pytest.raises(NotPossible, match="must not be below the old, 108 mm"):
        overbore(bore=108, new_bore=107.9, ratio=6)


@given(RATIOS, st.floats(0.01, 5), st.floats(1.2, 1.4))
def test_more_compression_is_more_efficient_but_never_all(ratio, more, gamma):
    low = air_standard_efficiency(ratio=ratio, gamma=gamma).value
    assert 0 < low < air_standard_efficiency(ratio=ratio + more, gamma=gamma).value < 100


@given(st.floats(20, 500), st.floats(3, 12), st.integers(1, 8), st.floats(0.8, 1.5),
       st.sampled_from(["four-stroke", "two-stroke"]))  # fmt: skip
def test_bore_torque_and_mean_pressure_lead_to_one_another(torque, pressure, z, share, cycle):
    sized = bore_for_torque(
        torque=torque, mean_pressure=pressure, cylinders=z, stroke_share=share, cycle=cycle
    ).value
    swept = displacement(bore=sized.bore, stroke=share * sized.bore, cylinders=z).value
    assert swept == pytest.approx(1e6 * sized.displacement)
    back = torque_mean_pressure(torque=torque, displacement=sized.displacement, cycle=cycle)
    assert back.value == pytest.approx(pressure)
