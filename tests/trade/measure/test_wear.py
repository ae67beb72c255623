import pytest

from shimstock.trade.measure.judge import judge
from shimstock.trade.measure.wear import keep_wear
from shimstock.trade.numbers.working import Working
from trade.measure.figures import JOURNAL, figure


def worn_of(of, now):
    working = Working()
    working.given("x", now, of.measured_in)
    return keep_wear(working, of, now, "x"), working


GROUSER = figure(new="1.875 .. 2.000 in", limit="min 0.750 in")
PITCH = figure(new="24.000 .. 24.060 in", limit="max 24.750 in")


@pytest.mark.parametrize(
    ("of", "now", "worn"),
    [
        (GROUSER, 1.875, 0),  # (new − now)/(new − limit)·100; common practice, no source
        (GROUSER, 0.750, 100),
        (GROUSER, 1.3125, 50),
        (PITCH, 24.750, 100),
        (PITCH, 24.405, 50),
        (PITCH, 25.095, 150),
        (JOURNAL, 3.7475, 50),
    ],
)
def test_per_cent_worn_counts_from_new_to_limit_either_way(of, now, worn):
    share, working = worn_of(of, now)

    assert share == pytest.approx(worn)
    assert working.disagreements() == []


def test_within_new_is_never_worn():
    assert worn_of(GROUSER, 1.95)[0] < 0


def test_nothing_to_count_from_without_new_and_limit():
    assert worn_of(figure(limit="max 1 in"), 0.5)[0] is None
    assert worn_of(figure(new="0 .. 1 in"), 0.5)[0] is None


def test_a_verdict_shows_how_far_worn():
    working = judge("grouser", GROUSER, 1.3125, 0.001).working

    assert working.value("W") == pytest.approx(50)
