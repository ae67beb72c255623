import pytest

from shimstock.trade.measure.judge import judge
from trade.measure.figures import figure


@pytest.mark.parametrize(
    ("limit", "value", "names"),
    [
        (["max 0.0150 in", "min 0.0040 in"], 0.009, "at most 0.0150 in"),
        (["max 0.0150 in", "min 0.0040 in"], 0.005, "at least 0.0040 in"),
        (["min 0.0020 in", "max 0.0200 in"], 0.003, "at least 0.0020 in"),
        (["min 0.0020 in", "max 0.0080 in"], 0.0039, "at least 0.0020 in"),
    ],
)
def test_what_is_worn_is_held_against_the_end_it_wears_towards(limit, value, names):
    lash = figure(new="0.0040 .. 0.0080 in", limit=limit)

    assert names in judge("lash", lash, value, 0.00005).says


def test_a_decimal_comma_in_the_book_is_not_rounded_away():
    limit = figure(new="0 .. 1,0 mm", limit="max 2,5 mm")

    assert "2.5 mm" in judge("x", limit, 9.0, 0.01).says
    assert "2.5 mm" in judge("x", limit, 1.5, 0.01).says


@pytest.mark.parametrize(
    "limit", [["min 0.006 in", "max 0.014 in"], ["max 0.014 in", "min 0.006 in"]]
)
def test_the_order_of_two_limits_does_not_say_which_way_it_wears(limit):
    gap = figure(name="Piston clearance", new="0.006 .. 0.0085 in", limit=limit)

    assert gap.wears_up
    assert "at most 0.014 in" in judge("gap", gap, 0.0100, 0.0001).says
    assert "worn out" in judge("gap", gap, 0.0200, 0.0001).says
    assert "too small" in judge("gap", gap, 0.0040, 0.0001).says


def test_the_first_of_two_limits_counts_where_both_lie_beyond_new():
    both = {"new": "4.0 .. 5.2 cc", "limit": ["min 3.8 cc", "max 5.4 cc"]}

    assert not figure(**both).wears_up
    assert figure(**{**both, "limit": both["limit"][::-1]}).wears_up
