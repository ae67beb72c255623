"""Firing orders: which throws allow them, and the beat they give."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.sums.engine.firing_intervals import firing_intervals
from shimstock.trade.sums.engine.firing_order import firing_order, read_order

FOUR = [0.0, 180.0, 180.0, 0.0]
SIX = [0.0, 120.0, 240.0, 240.0, 120.0, 0.0]


def intervals(worked):
    return [a.value for name, a in worked.working.answers.items() if name.startswith("interval")]


@pytest.mark.parametrize(
    ("throws", "order", "between"),
    [
        # Geometry of the crank: pistons with like throws fire a turn apart.
        ([0], (1,), [720]),
        ([0, 0], (1, 2), [360, 360]),
        ([0, 180], (1, 2), [180, 540]),
        ([0, 240, 120], (1, 3, 2), [120, 120, 480]),
        ([0, 240, 120], (1, 2, 3), [240, 240, 240]),
        (FOUR, (1, 3, 4, 2), [180] * 4),
        (FOUR, (1, 2, 4, 3), [180] * 4),
        (SIX, (1, 5, 3, 6, 2, 4), [120] * 6),
    ],
)
def test_throws_and_order_give_the_intervals(throws, order, between):
    assert intervals(firing_order(throws=throws, order=order)) == between


@pytest.mark.parametrize("order", [(1, 2, 3, 4), (1, 4, 2, 3), (1, 4, 3, 2)])
def test_an_order_that_the_throws_cannot_have_is_refused(order):
    with pytest.raises(NotPossible, match="does not fit these throws in one cycle"):
        firing_order(throws=FOUR, order=order)


def test_a_throw_for_each_cylinder():
    with pytest.raises(NotPossible, match="order 1-2 names 2 cylinders and there are 4 throws"):
        firing_order(throws=FOUR, order=(1, 2))


def test_a_two_stroke_fires_at_each_top():
    assert intervals(firing_order(throws=[0, 180], order=(1, 2), cycle="two-stroke")) == [180, 180]
    with pytest.raises(NotPossible, match="does not fit"):
        firing_order(throws=[0, 0], order=(1, 2), cycle="two-stroke")


@given(
    st.lists(st.integers(0, 23).map(lambda n: 15.0 * n), min_size=1, max_size=5),
    st.randoms(use_true_random=False),
    st.sampled_from(["four-stroke", "two-stroke"]),
)
def test_fired_in_order_once_each_within_a_cycle(throws, chance, cycle):
    order = list(range(1, len(throws) + 1))
    chance.shuffle(order)
    whole = 720 if cycle == "four-stroke" else 360
    try:
        fired = firing_order(throws=throws, order=tuple(order), cycle=cycle)
    except NotPossible:
        return
    assert all(a < b for a, b in pairwise([*fired.value, fired.value[0] + whole]))
    assert [each % 360 for each in fired.value] == [throws[n - 1] for n in order]
    assert sum(intervals(fired)) == whole
    assert fired.working.disagreements() == []


@given(st.permutations(range(1, 5)), st.integers(0, 3))
def test_it_does_not_matter_which_cylinder_is_named_first(order, by):
    turned = (*order[by:], *order[:by])
    try:
        named = intervals(firing_order(throws=FOUR, order=tuple(order)))
    except NotPossible:
        with pytest.raises(NotPossible):
            firing_order(throws=FOUR, order=turned)
        return
    assert intervals(firing_order(throws=FOUR, order=turned)) == [*named[by:], *named[:by]]


def test_the_angles_go_into_the_intervals():
    fired = firing_order(throws=SIX, order=(1, 5, 3, 6, 2, 4))
    again = firing_intervals(firings=fired.value)
    assert again.value == [120] * 6
    assert again.working.answers["beat"].value == "even"
    assert firing_order(throws=[0, 180], order=(1, 2)).working.answers["beat"].value == "uneven"


@pytest.mark.parametrize("text", ["1-3-4-2", "1, 3, 4, 2", "1 3 4 2", "1–3–4–2"])
def test_an_order_is_read_as_it_is_written(text):
    assert read_order(text) == (1, 3, 4, 2)


@pytest.mark.parametrize("text", ["", "1-3-4", "1-2-2", "0-1", "a-b", "1342", "²-1"])
def test_an_order_that_leaves_one_out_is_refused(text):
    with pytest.raises(NotUnderstood, match="does not name"):
        read_order(text)
