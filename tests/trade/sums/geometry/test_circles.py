from math import cos, hypot, pi, radians, sin

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from published.as_printed import as_printed
from shimstock.trade.numbers.units import Length
from shimstock.trade.sums.geometry.circle import circle
from shimstock.trade.sums.geometry.roundness import roundness


def lengths(*pairs: tuple[float, float]) -> list[tuple[Length, Length]]:
    return [(Length(x), Length(y)) for x, y in pairs]


def test_scipy_cookbook_least_squares_circle():
    # SciPy cookbook, "Least squares circle", first data set.
    points = lengths((9, 34), (35, 10), (-13, 6), (10, -14), (23, 27), (0, -10))
    got = circle(points=points, unit="mm")
    assert got.value.x == as_printed("10.50009")
    assert got.value.y == as_printed("9.65995")
    assert got.value.radius == as_printed("23.33353")
    assert got.value.misses == as_printed("7.71185")
    assert got.working.disagreements() == []


def test_gander_golub_strebel_1994_circle():
    # Gander, Golub and Strebel, 1994, geometric fit (from memory).
    got = circle(points=lengths((1, 7), (2, 6), (5, 8), (7, 7), (9, 5), (3, 7)), unit="mm")
    assert got.value.x == as_printed("4.7398")
    assert got.value.y == as_printed("2.9835")
    assert got.value.radius == as_printed("4.7142")
    assert got.working.disagreements() == []


def test_circle_through_four_surveyed_points():
    # Points from a forum on survey data; the result was computed twice by independent scripts.
    got = circle(points=lengths((11.88, 0.08), (10.34, 8.59), (2.58, 9.54), (-0.29, 1.95)))
    assert got.value.x == as_printed("6.08113")
    assert got.value.y == as_printed("3.62995")
    assert got.value.radius == as_printed("6.69873")


@settings(deadline=None, max_examples=25)
@given(st.floats(-50, 50), st.floats(-50, 50), st.floats(0.1, 100), st.integers(3, 12))
def test_points_on_a_circle_give_it_back(x, y, r, count):
    turn = [2 * pi * i / count for i in range(count)]
    got = circle(points=lengths(*((x + r * cos(t), y + r * sin(t)) for t in turn))).value
    assert hypot(got.x - x, got.y - y) < 1e-6 * (1 + r)
    assert got.radius == pytest.approx(r, rel=1e-6)


def test_what_is_no_circle_is_refused():
    with pytest.raises(ValueError, match="measure three or more"):
        circle(points=lengths((0, 0), (1, 1), (1, 1)))
    with pytest.raises(ValueError, match="points in one line"):
        circle(points=lengths((0, 0), (1, 1), (2, 2), (3, 3)))


@settings(deadline=None, max_examples=25)
@given(st.floats(-5, 5), st.floats(-5, 5), st.floats(0.1, 3), st.integers(8, 24), st.floats(-9, 9))
def test_least_squares_circle_takes_out_what_is_only_off_centre(a, b, lobe, count, mean):
    # Metrology: R = Σr/N, a = 2/N·Σ r·cos θ, b = 2/N·Σ r·sin θ; two lobes are what is left.
    turns = [radians(360 * i / count) for i in range(count)]
    readings = [Length(mean + a * cos(t) + b * sin(t) + lobe * cos(2 * t)) for t in turns]
    got = roundness(readings=readings, unit="thou")
    lobes = [lobe * cos(2 * t) for t in turns]
    assert got.value.mean == pytest.approx(mean, abs=1e-9)
    assert got.value.off_x == pytest.approx(a, abs=1e-9)
    assert got.value.off_y == pytest.approx(b, abs=1e-9)
    assert got.value.out_of_round == pytest.approx(max(lobes) - min(lobes), abs=1e-9)
    assert got.working.disagreements() == []


def test_three_readings_say_nothing_about_roundness():
    with pytest.raises(ValueError, match="take four or more"):
        roundness(readings=[Length(0)] * 3)
