"""Coolant: the table both ways, topping up, and what is refused."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.oil.antifreeze_share import antifreeze_share
from shimstock.trade.sums.oil.antifreeze_top_up import antifreeze_top_up
from shimstock.trade.sums.oil.freezing_point import freezing_point
from shimstock.trade.sums.oil.glycol_volume import glycol_volume


def answers(worked):
    return {name: each.value for name, each in worked.working.answers.items()}


@given(st.floats(0, 60))
def test_share_and_freezing_point_are_each_others_inverse(share):
    point = freezing_point(share=share).value
    assert antifreeze_share(freezing=min(point, 0)).value == pytest.approx(share, abs=1e-6)


@given(st.floats(0, 59))
def test_more_antifreeze_freezes_later(share):
    assert freezing_point(share=share + 1).value < freezing_point(share=share).value


@pytest.mark.parametrize(
    ("share", "library"), [(15, -6.15), (25, -12.12), (35, -19.88), (45, -30.54), (55, -44.37)]
)
def test_between_its_points_the_table_is_as_hopeful_as_it_says(share, library):
    # A general property library's fit of ASHRAE's data at shares that the table leaves out.
    got = freezing_point(share=share).value
    assert library - 0.5 < got < library


def test_water_freezes_at_nought():
    assert freezing_point(share=0).value == 0
    assert antifreeze_share(freezing=0).value == 0


def test_past_60_per_cent_it_is_refused():
    with pytest.raises(NotPossible, match="at most 60"):
        freezing_point(share=61)
    with pytest.raises(NotPossible, match="at least -52"):
        antifreeze_share(freezing=-53)


def test_glycol_and_water_fill_the_system():
    got = answers(antifreeze_share(freezing=-24.8, system=14))
    assert got["glycol"] == pytest.approx(5.6)
    assert got["glycol"] + got["water"] == pytest.approx(14)


@given(st.floats(1, 50), st.floats(0, 30), st.floats(31, 60), st.floats(61, 100))
def test_after_topping_up_the_share_is_the_one_wanted(system, have, want, fresh):
    drained = antifreeze_top_up(system=system, have=have, want=want, fresh=fresh).value
    left = (system - drained) * have / 100 + drained * fresh / 100
    assert left / system * 100 == pytest.approx(want)
    assert 0 < drained <= system


@pytest.mark.parametrize(("have", "want", "fresh"), [(40, 30, 100), (20, 60, 50), (40, 40, 100)])
def test_a_share_that_cannot_be_reached_is_refused(have, want, fresh):
    with pytest.raises(NotPossible, match="must be above have"):
        antifreeze_top_up(system=12, have=have, want=want, fresh=fresh)


def test_glycol_alone_is_the_whole_system():
    got = answers(glycol_volume(system=14, by_weight=100))
    assert got["glycol"] == pytest.approx(14)
    assert got["water"] == pytest.approx(0, abs=1e-9)


@given(st.floats(1, 99))
def test_by_weight_comes_back_from_the_volumes(by_weight):
    got = answers(glycol_volume(system=100, by_weight=by_weight))
    heavy = got["glycol"] * 1.1155
    assert 100 * heavy / (heavy + got["water"]) == pytest.approx(by_weight)
