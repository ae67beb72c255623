from math import dist

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.sums.fasteners._amounts import parse_torque
from shimstock.trade.sums.fasteners._hole_order import middle_of, on_a_circle
from shimstock.trade.sums.fasteners.tightening_order import parse_holes, tightening_order

PLACES = st.tuples(st.integers(-50, 50), st.integers(-50, 50))
HOLES = st.lists(PLACES, min_size=2, max_size=20, unique=True)


@pytest.mark.parametrize(
    ("count", "order"),
    [
        (4, (1, 3, 2, 4)),
        (5, (1, 3, 5, 2, 4)),
        (6, (1, 4, 2, 5, 3, 6)),
        (8, (1, 5, 3, 7, 2, 6, 4, 8)),
    ],
)
def test_a_circle_is_pulled_across_like_a_star(count, order):
    """Common practice, no source."""
    assert tightening_order(count=count).value == order


@pytest.mark.parametrize("count", range(4, 31, 2))
def test_on_an_even_circle_every_second_bolt_lies_across_from_the_one_before(count):
    got = tightening_order(count=count).value
    places = on_a_circle(count)
    for one, other in zip(got[::2], got[1::2], strict=True):
        assert dist(places[one - 1], places[other - 1]) == pytest.approx(2)


def head(columns, rows):
    return tuple((4.0 * x, 5.0 * y) for y in range(rows) for x in range(columns))


@pytest.mark.parametrize(("columns", "rows"), [(5, 2), (4, 2), (3, 2), (5, 3), (7, 2)])
def test_a_head_is_pulled_from_the_middle_outwards(columns, rows):
    holes = head(columns, rows)
    out = [dist(holes[i - 1], middle_of(holes)) for i in tightening_order(holes=holes).value]

    assert out == pytest.approx(sorted(out), abs=2.0)  # half of the least distance of two
    assert out[-1] == max(out)


def test_the_corners_of_a_head_are_pulled_across():
    """Two rows of five: the middle pair, then ends of diagonals."""
    got = tightening_order(holes=head(5, 2)).value
    assert got[:2] == (3, 8)
    assert set(got[2:6]) == {2, 4, 7, 9}
    assert {frozenset(got[2:4]), frozenset(got[4:6])} == {frozenset({2, 9}), frozenset({4, 7})}
    assert {frozenset(got[6:8]), frozenset(got[8:])} == {frozenset({1, 10}), frozenset({5, 6})}


@given(HOLES)
def test_every_hole_is_pulled_once_and_the_order_is_always_the_same(holes):
    holes = tuple((float(x), float(y)) for x, y in holes)
    got = tightening_order(holes=holes)

    assert sorted(got.value) == list(range(1, len(holes) + 1))
    assert got.value == tightening_order(holes=holes).value
    assert got.working.disagreements() == []


@given(HOLES, st.sampled_from([25.4, 1e-7, 1000.0]))
def test_the_order_is_the_same_in_any_unit(holes, scale):
    scaled = tuple((x * scale, y * scale) for x, y in holes)
    plain = tuple((float(x), float(y)) for x, y in holes)
    got = [tightening_order(holes=each).value for each in (plain, scaled)]
    assert got[0] == got[1]


def test_the_rounds_share_out_the_torque():
    got = tightening_order(count=6, torque=parse_torque("80 lbf.ft")).working.answers
    assert [got[f"round {i}"].value for i in (1, 2, 3)] == [40, 60, 80]
    assert got["rounds"].value == "50 %, 75 %, 100 %"


@pytest.mark.parametrize("rounds", [[], [75, 50, 100]])
def test_rounds_that_do_not_rise_are_refused(rounds):
    with pytest.raises(NotPossible, match="harder than the last"):
        tightening_order(count=6, rounds=rounds)


def test_holes_are_asked_for():
    with pytest.raises(NotPossible, match="type holes, or count"):
        tightening_order()


@pytest.mark.parametrize(
    "text", ["", "1,2", "1,2; 1,2", "1,2; 3", "a,b; 1,2", "1e9,0; 0,0", "nan,0; 0,0"]
)
def test_what_names_no_holes_is_refused(text):
    with pytest.raises(NotUnderstood) as refused:
        parse_holes(text)
    assert refused.value.would_do
