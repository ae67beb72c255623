"""Packs from the drawer: the nearest of all, against trying every one by hand."""

from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.numbers.not_possible import NotPossible
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


def test_the_pack_and_its_error_are_said_in_words():
    got = answers(shim_pack(target=0.86, shims=[0.10, 0.15, 0.50], pieces=[4, 2, 1]))
    assert got["pack"] == "2 × 0.100 mm + 1 × 0.150 mm + 1 × 0.500 mm"
    assert got["off by"] == "0.010 mm too thin"
    assert got["pieces"] == "4"
    exact = answers(shim_pack(target=0.85, shims=[0.10, 0.15, 0.50], pieces=[4, 2, 1]))
    assert exact["off by"] == "nothing"
    thick = answers(shim_pack(target=0.012, shims=[0.0125], unit="in"))
    assert (thick["pack"], thick["off by"]) == ("1 × 0.0125 in", "0.0005 in too thick")


def test_one_of_each_unless_told_otherwise():
    assert shim_pack(target=0.3, shims=[0.1]).value == (1,)
    assert shim_pack(target=0.3, shims=[0.1], pieces=[5]).value == (3,)


def test_fewer_pieces_go_before_more_and_thinner_before_thicker():
    assert shim_pack(target=0.3, shims=[0.1, 0.3], pieces=[5, 1]).value == (0, 1)
    assert shim_pack(target=0.25, shims=[0.2, 0.3]).value == (1, 0)
    assert answers(shim_pack(target=0.1, shims=[0.5]))["pack"] == "no shim"


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ({"shims": []}, "must go with the shims"),
        ({"pieces": [1, 2]}, "2 counts for 1 thicknesses"),
        ({"shims": [0.0]}, "at least 1e-06"),
        ({"target": 1.0, "shims": [1e-6, 2e-6, 3e-6], "pieces": [10**6] * 3}, "too many to look"),
    ],
)
def test_a_drawer_that_cannot_be_tried_is_refused(typed, said):
    with pytest.raises(NotPossible, match=said):
        shim_pack(**{"target": 0.3, "shims": [0.1]} | typed)


def test_a_full_drawer_is_looked_through():
    sizes = [round(0.002 + 0.0005 * i, 4) for i in range(20)]
    got = shim_pack(target=0.0475, shims=sizes, pieces=[6] * 20, unit="in")
    assert answers(got)["off by"] == "nothing"
    assert answers(got)["pieces"] == "5"
    assert got.working.disagreements() == []
