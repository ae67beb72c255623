"""Pumps held against each other, in the way that the book's pair limit judges readings."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from shimstock.trade.machine.words import Verdict
from shimstock.trade.measure.bore import largest
from shimstock.trade.measure.pair import compare
from shimstock.trade.measure.take import understand
from shimstock.trade.numbers.instruments import good_to
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.uncertainty import Component, combine
from shimstock.trade.sums.injection.pump_balance import pump_balance
from trade.measure.figures import figure

WORDS = {
    Verdict.GOOD: "near enough",
    Verdict.BORDERLINE: "borderline: the glasses cannot tell, measure again",
    Verdict.WORN_OUT: "not a pair",
}
GLASS = st.integers(50, 400).map(lambda tenths: tenths / 10)


def answers(worked):
    return {name: each.value for name, each in worked.working.answers.items()}


@given(st.lists(GLASS, min_size=2, max_size=6), st.integers(1, 30), st.sampled_from([0.01, 0.1, 1]))
def test_it_judges_as_the_pair_limit_of_a_book_does(glasses, limit, good):
    pair = figure(name="Delivery", unit="cc", pair=f"max {limit} %")
    gauge = good_to(good, "cc")
    read = {
        f"pump {i}": largest(pair, understand("x", pair, [str(glass)], instrument=gauge))
        for i, glass in enumerate(glasses)
    }
    judged = compare("x", pair, read)
    got = pump_balance(deliveries=glasses, limit=limit, good_to=good)
    assert got.value.spread == pytest.approx(judged.value)
    assert answers(got)["plus or minus"] == pytest.approx(judged.expanded)
    # Where the bound is met to the last digit, rounding may fall to either side.
    edges = (limit, limit + judged.expanded)
    assume(all(abs(judged.value - edge) > 1e-9 for edge in edges))
    assert got.value.verdict == WORDS[judged.verdict]


@given(st.lists(GLASS, min_size=2, max_size=6), st.floats(0.01, 1))
def test_what_the_glasses_leave_open_of_a_share_of_the_mean(glasses, good):
    """JCGM 100:2008, 5.1.2: each glass moved a little, and what that does to the spread."""
    assume(len(set(glasses)) == len(glasses))

    def spread(values):
        return 100 * (max(values) - min(values)) / (sum(values) / len(values))

    def moved(i, by):
        return spread([glass + by * (k == i) for k, glass in enumerate(glasses)])

    slopes = [(moved(i, 1e-5) - moved(i, -1e-5)) / 2e-5 for i in range(len(glasses))]
    parts = [Component(str(i), slope, good / 2) for i, slope in enumerate(slopes)]
    got = pump_balance(deliveries=glasses, good_to=good, of="mean")
    assert got.value.spread == pytest.approx(spread(glasses))
    assert answers(got)["plus or minus"] == pytest.approx(2 * combine(parts).u, rel=1e-4)
    assert answers(got)["share of"] == "the mean"


def test_each_pump_from_the_mean():
    got = answers(pump_balance(deliveries=[20, 22, 24]))
    assert got["mean"] == 22
    assert got["pump 1 from the mean"] == pytest.approx(-100 / 11)
    assert got["pump 2 from the mean"] == 0
    assert got["pump 3 from the mean"] == pytest.approx(100 / 11)
    assert got["spread"] == pytest.approx(100 / 6)
    assert got["spread"] + got["smallest of largest"] == pytest.approx(100)


def test_just_at_the_limit_is_near_enough():
    assert pump_balance(deliveries=[25, 24.25], limit=3).value.verdict == "near enough"
    assert pump_balance(deliveries=[25, 24.24], limit=3).value.verdict == "not a pair"
    assert pump_balance(deliveries=[25, 24.24], limit=3, good_to=0.1).value.verdict.startswith(
        "borderline"
    )


def test_no_limit_but_the_typed_one():
    got = pump_balance(deliveries=[30, 10])
    assert got.value.verdict == "not judged: type the book's limit"
    assert any("maker's test plan" in text for text in got.working.cautions)


@pytest.mark.parametrize(
    ("glasses", "said"),
    [
        ([], "at least two"),
        ([20], "at least two"),
        ([0, 0], "all nothing"),
        ([-1, 2], "at least 0"),
    ],
)
def test_too_few_or_dead_pumps_are_refused(glasses, said):
    with pytest.raises(NotPossible, match=said):
        pump_balance(deliveries=glasses, limit=3)
