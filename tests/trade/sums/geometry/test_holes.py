"""Holes from distances: found where they are, and refused where nothing meets."""

from math import dist, hypot

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.geometry.hole_by_distances import hole_by_distances

THREE = [(0.0, 0.0), (6.0, 0.0), (0.0, 4.0)]
places = st.tuples(st.floats(-50, 50), st.floats(-50, 50))


@given(places, places, places, places)
def test_a_hole_is_found_where_it_is(one, two, three, hole):
    sides = [(q[0] - one[0], q[1] - one[1]) for q in (two, three)]
    flat = abs(sides[0][0] * sides[1][1] - sides[0][1] * sides[1][0])
    assume(flat > 0.05 * hypot(*sides[0]) * hypot(*sides[1]) > 0.05)
    distances = [dist(hole, each) for each in (one, two, three)]
    assume(min(distances) > 0.01)
    got = hole_by_distances(points=[one, two, three], distances=distances)
    assert (got.value.x, got.value.y) == pytest.approx(hole, abs=1e-6)
    assert got.value.misfit == pytest.approx(0, abs=1e-6)
    assert got.working.disagreements() == []


def test_a_mirrored_hole_is_told_apart():
    up, down = ([dist(hole, each) for each in THREE] for hole in ((2, 3), (2, -3)))
    assert hole_by_distances(points=THREE, distances=up).value.y == pytest.approx(3)
    assert hole_by_distances(points=THREE, distances=down).value.y == pytest.approx(-3)


def test_a_distance_misread_by_a_tenth_shows_as_a_misfit():
    true = [dist((9, 7), each) for each in THREE]
    off = hole_by_distances(points=THREE, distances=[true[0] + 0.1, *true[1:]])
    assert 0.05 < off.working.answers["misfit"].value < 0.4


def test_distances_that_never_meet_are_refused():
    with pytest.raises(NotPossible, match="do not meet"):
        hole_by_distances(points=THREE, distances=[1, 1, 1])


def test_three_in_line_leave_two_places():
    with pytest.raises(NotPossible, match="one line"):
        hole_by_distances(points=[(0, 0), (1, 1), (2, 2)], distances=[1, 1, 1])
    with pytest.raises(NotPossible, match="one line"):
        hole_by_distances(points=[(0, 0), (0, 0), (2, 2)], distances=[1, 1, 1])


@pytest.mark.parametrize(("points", "distances"), [(THREE[:2], [1, 1]), (THREE, [1, 1])])
def test_three_of_each_are_wanted(points, distances):
    with pytest.raises(NotPossible, match="three of each"):
        hole_by_distances(points=points, distances=distances)
