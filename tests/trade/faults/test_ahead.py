"""Looking ahead over a search small enough to try every course of it."""

import random
from itertools import pairwise

import numpy as np
import pytest

from shimstock.trade.faults.ahead import (
    Field,
    Point,
    best_minutes,
    doubt,
    minutes_in_order,
    minutes_with,
    worth_trying,
)


def a_point(seed: int) -> Point:
    """Four checks that settle and one that tells, six machines, three joints; invented."""
    pick = np.random.default_rng(seed)
    finds = np.zeros((6, 5))
    finds[:, :4] = pick.choice([0.0, 0.5, 1.0], size=(6, 4), p=[0.6, 0.1, 0.3])
    tells = [[], [], [], [], [pick.uniform(0.02, 0.98, size=6)]]
    weight = pick.uniform(size=6)
    field = Field(
        finds=finds,
        minutes=pick.uniform(2, 40, size=5),
        needs=pick.random((5, 3)) < 0.4,
        opening=pick.uniform(5, 60, size=3),
        tells=tells,
    )
    return Point(
        field, weight / weight.sum(), np.ones(6), np.zeros(5, dtype=bool), np.zeros(3, dtype=bool)
    )


def least(point: Point) -> float:
    """The best search there is, every course tried."""
    if point.chance < 1e-12:
        return 0.0
    left = [n for n in range(5) if not point.done[n]]
    return min(
        float(point.costs[n]) * point.chance + sum(least(each) for each in point.results(n))
        for n in left
    )


@pytest.mark.parametrize("seed", range(8))
def test_looking_ahead_to_the_end_is_the_best_search_there_is(seed):
    point = a_point(seed)

    assert best_minutes(point, depth=5, width=5) == pytest.approx(least(point), rel=1e-4)


@pytest.mark.parametrize("seed", range(8))
def test_the_further_ahead_the_fewer_minutes_and_never_below_the_best(seed):
    point = a_point(seed)
    by_depth = [best_minutes(point, depth, width=5) for depth in range(4)]

    assert by_depth[0] == minutes_in_order(point)
    assert all(a >= b - 1e-9 for a, b in pairwise(by_depth))
    assert by_depth[-1] >= least(point) * (1 - 1e-4)


def test_in_order_by_hand():
    """Two machines of one cause each: 10 min, then 30 more in the half of cases that are left."""
    field = Field(
        finds=np.array([[1.0, 0.0], [0.0, 1.0]]),
        minutes=np.array([10.0, 20.0]),
        needs=np.array([[False], [True]]),
        opening=np.array([10.0]),
        tells=[[], []],
    )
    none = np.zeros(2, dtype=bool)
    point = Point(field, np.array([0.5, 0.5]), np.ones(2), none, np.zeros(1, dtype=bool))

    assert minutes_in_order(point) == pytest.approx(10 + 0.5 * 30)
    assert minutes_with(point, 1) == pytest.approx(30 + 0.5 * 10)
    assert doubt(point) == pytest.approx(1)


def test_what_tells_nothing_is_not_tried():
    point = a_point(1)
    silent = [[], [], [], [], [np.full(6, 0.3)]]
    field = Field(
        point.field.finds, point.field.minutes, point.field.needs, point.field.opening, silent
    )
    still = Point(field, point.weight, point.alive, point.done, point.open_now)

    assert 4 in worth_trying(point, 5)
    assert 4 not in worth_trying(still, 5)


def test_the_order_of_two_results_does_not_matter():
    pick = random.Random(3)
    point = a_point(4)
    first, second = pick.sample(range(4), 2)

    one = point.after(first).after(second)
    other = point.after(second).after(first)

    assert one.chance == pytest.approx(other.chance)
    assert list(one.costs) == list(other.costs)


@pytest.mark.parametrize("seed", range(12))
def test_taking_off_what_changes_comes_to_the_same_as_adding_up_anew(seed):
    """The order by chance per minute again, every sum made anew after every check."""
    point = a_point(seed)
    total = 0.0
    here = point
    while here.chance > 1e-9 and here.gains.max() > 0:
        check = int((here.gains / here.costs).argmax())
        total += float(here.costs[check]) * here.chance
        here = here.after(check)

    assert minutes_in_order(point) == pytest.approx(total, rel=1e-4)
