"""Packs from the drawer: the nearest of all, against trying every one by hand."""

from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.sums.shims._drawer import parse_drawer
from shimstock.trade.sums.shims._packs import nearest
from shimstock.trade.sums.shims.shim_pack import shim_pack


def answers(worked):
    return {name: each.value for name, each in worked.working.answers.items()}


@given(
    st.lists(st.tuples(st.integers(1, 40), st.integers(0, 4)), min_size=1, max_size=5),
    st.integers(1, 200),
)
def test_no_pack_of_the_drawer_is_nearer_or_as_near_with_fewer_pieces(drawer, target):
    sizes, pieces = zip(*drawer, strict=True)
    got = nearest(sizes, pieces, target)
    assert all(0 <= n <= most for n, most in zip(got, pieces, strict=True))

    def merit(counts):
        thick = sum(n * size for n, size in zip(counts, sizes, strict=True))
        return abs(thick - target), sum(counts), thick

    every = product(*(range(n + 1) for n in pieces))
    assert merit(got) == min(merit(counts) for counts in every)


def packed(target, drawer, unit="mm"):
    return shim_pack(target=target, drawer=parse_drawer(drawer), unit=unit)


def test_the_pack_and_its_error_are_said_in_words():
    got = answers(packed(0.86, "0.10x4, 0.15x2, 0.50x1"))
    assert got["pack"] == "2 × 0.100 mm + 1 × 0.150 mm + 1 × 0.500 mm"
    assert got["off by"] == "0.010 mm too thin"
    assert got["pieces"] == "4"
    assert answers(packed(0.85, "0.10x4, 0.15x2, 0.50x1"))["off by"] == "nothing"
    thick = answers(packed(0.012, "0.0125", unit="in"))
    assert (thick["pack"], thick["off by"]) == ("1 × 0.0125 in", "0.0005 in too thick")


def test_an_exact_pack_is_off_by_nothing_at_all():
    # 3·0.003 + 0.005 − 0.014 is 2e-18 to a computer.
    assert answers(packed(0.014, "0.003x4, 0.005", unit="in"))["error"] == 0


def test_one_of_each_unless_told_otherwise():
    assert packed(0.3, "0.1").value == {0.1: 1}
    assert packed(0.3, "0.1x5").value == {0.1: 3}
    assert packed(0.3, "0.1, 0.1x2").value == {0.1: 3}


def test_fewer_pieces_go_before_more_and_thinner_before_thicker():
    assert packed(0.3, "0.1x5, 0.3").value == {0.3: 1}
    assert packed(0.25, "0.2, 0.3").value == {0.2: 1}
    assert answers(packed(0.1, "0.5"))["pack"] == "no shim"


@pytest.mark.parametrize(
    ("target", "drawer", "said"),
    [
        (0.3, "0.0000001 mm", "must be between 1e-06 and 1e\\+06 mm"),
        (1.0, "0.000001x999999, 0.000002x999999, 0.000003x999999", "too many to look"),
    ],
)
def test_a_drawer_that_cannot_be_tried_is_refused(target, drawer, said):
    with pytest.raises(NotPossible, match=said):
        packed(target, drawer)


@pytest.mark.parametrize(
    ("text", "read"),
    [
        ("0.003x4, 0.005x2 in", [(0.003, "in", 4), (0.005, "in", 2)]),
        ("0.003 in x 4; 0.005 in × 2", [(0.003, "in", 4), (0.005, "in", 2)]),
        ("0,10*4; 0,15 mm", [(0.1, "mm", 4), (0.15, "mm", 1)]),
        ("3 thou x 2, 0.1 mm", [(3, "thou", 2), (0.1, "mm", 1)]),
        ("1/64x3", [(1 / 64, "", 3)]),
    ],
)
def test_a_drawer_is_read_however_it_is_written(text, read):
    assert [(each.size, each.unit, each.count) for each in parse_drawer(text)] == read


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "names no shim"),
        ("4x0.003", "says 4x0.003"),
        ("0.1xq", "says 0.1xq"),
        ("0.1, 12 psi", "says 12 psi, which is no length"),
        ("0 mm", "above 0"),
        ("0.1x-3", "says 0.1x-3"),
    ],
)
def test_what_is_no_drawer_is_named(text, said):
    with pytest.raises(NotUnderstood, match=said):
        parse_drawer(text)


def test_a_drawer_in_inches_makes_up_millimetres():
    assert answers(packed(25.4, "1 in"))["off by"] == "nothing"
    assert packed(25.4, "1 in, 25.4 mm").value == {25.4: 1}


def test_a_full_drawer_is_looked_through():
    drawer = ", ".join(f"{0.002 + 0.0005 * i:.4f}x6" for i in range(20))
    got = packed(0.0475, drawer, unit="in")
    assert answers(got)["off by"] == "nothing"
    assert answers(got)["pieces"] == "5"
    assert got.working.disagreements() == []
