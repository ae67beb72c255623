"""The play of each link by everything that was read: against other ways to the same answer."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats

from shimstock.trade.measure.chain.expected import OVER, SHAPE, TIGHT, Chain, Expected
from shimstock.trade.measure.chain.link_play import plays
from shimstock.trade.measure.chain.posterior import Contradiction
from shimstock.trade.measure.chain.told import Felt, Read
from trade.measure.chain.chains import FAN, MESH, THREE, rocked


def drawn(link: Expected, count: int, pick: np.random.Generator) -> np.ndarray:
    """Plays as they are expected, drawn with scipy's own Lomax distribution."""
    low = np.where(pick.random(count) < TIGHT, 0.0, link.low)
    fitted = low + (link.high - low) * pick.random(count)
    return fitted + stats.lomax.rvs(SHAPE, scale=link.rate, size=count, random_state=pick)


def by_samples(chain: Chain, told, count=400_000):
    """Ends and middle of each link's play and its chance to be over, from weighted samples."""
    pick = np.random.default_rng(1)
    true = np.array([drawn(link, count, pick) for link in chain.links])
    moved = np.array(chain.gains)[:, None] * true
    weight = np.ones(count)
    for each in told:
        shows = moved[each.link :].sum(axis=0) if isinstance(each, Felt) else true[each.link]
        weight *= stats.norm.pdf(each.value, shows, each.u)
    weight /= weight.sum()
    for link, play in zip(chain.links, true, strict=True):
        order = np.argsort(play)
        below = np.cumsum(weight[order])
        ends = np.interp([0.05, 0.5, 0.95], below, play[order])
        yield *ends, weight[play > link.limit].sum()


@pytest.mark.parametrize(
    "told",
    [
        [],
        [Felt(0, 0.25, 0.02)],
        [Felt(0, 0.25, 0.02), Felt(2, 0.09, 0.02)],
        [Felt(0, 0.25, 0.02), Read(1, 0.011, 0.002)],
    ],
)
def test_samples_weighted_by_the_readings_say_the_same(told):
    # another method, and scipy's own distributions, https://docs.scipy.org/doc/scipy/
    for got, (low, likely, high, over) in zip(plays(FAN, told), by_samples(FAN, told), strict=True):
        assert got.stands.low == pytest.approx(low, abs=0.0003)
        assert got.stands.likely == pytest.approx(likely, abs=0.0003)
        assert got.stands.high == pytest.approx(high, abs=0.0006)
        assert got.stands.over == pytest.approx(over, abs=0.015)


def test_without_a_reading_about_one_link_in_seven_is_over():
    (alone,) = plays(Chain((MESH,), (1.0,)), [])

    assert alone.stands.over == pytest.approx(OVER, abs=0.015)


def test_a_link_read_closely_is_what_was_read_with_its_uncertainty():
    (alone,) = plays(Chain((MESH,), (4.0,)), [Read(0, 0.0200, 0.0002)])

    # 0.02 ± 1.645·0.0002, the normal distribution's 90 %; wear so great is nearly even there
    assert alone.stands.low == pytest.approx(0.0200 - 1.645 * 0.0002, abs=0.00003)
    assert alone.stands.high == pytest.approx(0.0200 + 1.645 * 0.0002, abs=0.00003)


def test_two_readings_count_as_their_mean():
    twice = plays(FAN, [Felt(0, 0.34, 0.01), Felt(0, 0.36, 0.01)])
    once = plays(FAN, [Felt(0, 0.35, 0.01 / 2**0.5)])

    for one, other in zip(twice, once, strict=True):
        assert one.stands.likely == pytest.approx(other.stands.likely, rel=0.02)


@given(rocked(), st.randoms(use_true_random=False))
@settings(max_examples=40, deadline=None)
def test_the_order_of_readings_does_not_matter(made, pick):
    chain, told = made
    mixed = list(told)
    pick.shuffle(mixed)

    for one, other in zip(plays(chain, told), plays(chain, mixed), strict=True):
        assert one.stands.likely == pytest.approx(other.stands.likely, rel=1e-6, abs=1e-12)
        assert one.stands.over == pytest.approx(other.stands.over, abs=1e-9)


@given(rocked(), st.sampled_from([25.4, 0.01, 1000.0]))
@settings(max_examples=40, deadline=None)
def test_another_unit_changes_nothing(made, factor):
    chain, told = made
    links = tuple(each.scaled(factor) for each in chain.links)
    again = [type(each)(each.link, each.value * factor, each.u * factor) for each in told]

    others = plays(Chain(links, chain.gains), again)
    for one, other in zip(plays(chain, told), others, strict=True):
        assert other.stands.likely == pytest.approx(one.stands.likely * factor, rel=1e-6)
        assert other.stands.high == pytest.approx(one.stands.high * factor, rel=1e-6)
        assert other.stands.over == pytest.approx(one.stands.over, abs=1e-7)


@given(rocked())
@settings(max_examples=60, deadline=None)
def test_no_play_is_less_than_none_and_the_ends_stand_in_order(made):
    for each in plays(*made):
        assert 0 <= each.stands.low <= each.stands.likely <= each.stands.high
        assert 0 <= each.stands.over <= 1


@given(st.tuples(*[st.floats(0.005, 0.03)] * 3))
@settings(max_examples=40, deadline=None)
def test_holding_in_turn_gives_the_differences(true):
    moved = [gain * play for gain, play in zip(FAN.gains, true, strict=True)]
    told = [Felt(at, sum(moved[at:]), 0.002) for at in range(3)]

    for play, gain, each in zip(true, FAN.gains, plays(FAN, told), strict=True):
        u = 2**0.5 * 0.002 / gain
        assert each.stands.likely == pytest.approx(play, abs=1.5 * u)
        assert each.stands.high - each.stands.low <= 2 * 1.8 * u


@given(st.floats(-0.003, 0.003))
@settings(max_examples=20, deadline=None)
def test_a_reading_on_a_link_narrows_it_where_the_holds_agree(off):
    # not so for every reading: one far from what was expected may widen what it tells of
    known = plays(FAN, THREE)[1].stands
    closer = plays(FAN, [*THREE, Read(1, 0.030 + off, 0.001)])[1].stands

    assert closer.high - closer.low < known.high - known.low


def test_readings_that_cannot_all_be_true_are_refused():
    with pytest.raises(Contradiction):
        plays(FAN, [Felt(0, 0.20, 0.01), Felt(1, 0.29, 0.01)])
    with pytest.raises(Contradiction) as wrong:
        plays(FAN, [*THREE, Read(2, 0.030, 0.0005)])
    assert wrong.value.told.link == 2


def test_a_reading_between_two_points_of_the_grid_is_no_contradiction():
    _, read, _ = plays(FAN, [Felt(0, 0.35, 0.01), Read(1, 0.0110037, 1e-9)])

    assert read.stands.likely == pytest.approx(0.011, abs=0.0001)


def test_a_little_more_with_the_next_hold_is_only_a_reading_error():
    first = plays(FAN, [Felt(0, 0.30, 0.01), Felt(1, 0.31, 0.01), Felt(2, 0.09, 0.01)])[0].stands

    assert first.low > 0 and first.over < 0.05


def test_much_more_than_was_expected_is_believed_where_it_was_read():
    (alone,) = plays(Chain((MESH,), (8.0,)), [Felt(0, 2.0, 0.02)])

    assert alone.stands.likely == pytest.approx(0.25, rel=0.01)


@pytest.mark.parametrize("added", [(0.0078, 0.0109), (-0.0052, -0.0073)])
def test_a_wrong_gasket_is_taken_off_again(added):
    mesh = Expected(MESH.low, MESH.high, MESH.limit, added)
    (got,) = plays(Chain((mesh,), (1.0,)), [Read(0, 0.0300, 0.0001)])

    assert got.stands.likely == pytest.approx(0.0300, abs=0.0001)
    left = sorted(0.0300 - each for each in added)
    assert left[0] - 0.0003 <= got.right.low <= got.right.high <= left[1] + 0.0003


def test_a_gasket_that_is_right_changes_nothing():
    for each in plays(FAN, THREE):
        assert each.right is each.stands


@pytest.mark.parametrize("ends", [(-0.001, 0.006, 0.012), (0.007, 0.006, 0.012), (0, 0.01, 0.009)])
def test_a_new_range_that_cannot_be_is_refused(ends):
    with pytest.raises(ValueError, match="play is not below"):
        Expected(*ends)
