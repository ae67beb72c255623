import pytest
from hypothesis import given
from hypothesis import strategies as st

from published.as_printed import as_printed
from shimstock.trade.machine.words import Verdict
from shimstock.trade.measure.bore import largest
from shimstock.trade.measure.pair import TOGETHER, compare
from shimstock.trade.measure.take import understand
from shimstock.trade.numbers.instruments import good_to
from trade.measure.figures import figure

SPREAD = figure(name="Compression", unit="psi", pair="max 50 psi")
SHARE = figure(name="Delivery", unit="cc", pair="max 3 %")
LOWEST = figure(name="Compression", unit="psi", pair="min 75 %")


def together(of, good=0.1, **values):
    gauge = good_to(good, of.measured_in)
    several = {
        piece: largest(of, understand("x", of, [str(value)], instrument=gauge))
        for piece, value in values.items()
    }
    return compare("x", of, several)


@pytest.mark.parametrize(
    ("of", "values", "printed", "verdict"),
    [
        (SHARE, {"a": 24.2, "b": 21.6}, "10.7", Verdict.WORN_OUT),
        (SHARE, {"a": 4.1, "b": 5.0}, "18.0", Verdict.WORN_OUT),
        (SPREAD, {"a": 400, "b": 355, "c": 380}, "45", Verdict.GOOD),
        (SPREAD, {"a": 400, "b": 340}, "60", Verdict.WORN_OUT),
        (LOWEST, {"a": 120, "b": 100, "c": 84}, "70", Verdict.WORN_OUT),
        (LOWEST, {"a": 120, "b": 100, "c": 96}, "80", Verdict.GOOD),
    ],
)
def test_how_far_the_several_differ(of, values, printed, verdict):
    judged = together(of, **values)

    assert judged.value == as_printed(printed)
    assert judged.verdict is verdict
    assert judged.piece == TOGETHER
    assert judged.working.disagreements() == []


def test_a_difference_inside_its_own_uncertainty_of_the_limit_is_borderline():
    judged = together(SPREAD, good=10, a=400, b=348)

    assert judged.verdict is Verdict.BORDERLINE
    assert judged.settles.startswith("Read each again")


def test_one_alone_is_no_pair():
    assert together(SPREAD, a=400) is None


def test_without_a_pair_limit_nothing_is_compared():
    assert together(figure(unit="psi"), a=400, b=100) is None


@given(st.floats(80, 120), st.floats(80, 120))
def test_the_order_of_the_pieces_does_not_matter(a, b):
    assert together(SHARE, a=a, b=b).value == together(SHARE, a=b, b=a).value


@pytest.mark.parametrize("of", [SHARE, LOWEST])
def test_two_that_give_nothing_have_no_share_of_each_other(of):
    assert together(of, a=0, b=0) is None
