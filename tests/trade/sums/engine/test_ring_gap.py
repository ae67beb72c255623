import pytest

from published.as_printed import as_printed
from shimstock.trade.numbers.units import Length
from shimstock.trade.sums.engine.ring_gap import ring_gap, ring_gap_growth


def test_trade_rule_for_a_3_5_in_bore():
    # Common practice, no source: 0.0035 to 0.004 in for each inch of bore.
    got = ring_gap(bore=Length(3.5))
    assert got.value[0] == as_printed(".012")
    assert got.value[1] == as_printed(".014")
    assert got.working.disagreements() == []


def test_trade_rule_for_a_bored_liner():
    # Common practice, no source: bore 5.770 in, 0.0035 for each inch.
    assert ring_gap(bore=Length(5.770)).value[0] == as_printed("0.0202")


def test_geometry_gap_grows_by_pi_times_the_wear():
    got = ring_gap_growth(wear=Length(0.010))
    assert got.value == as_printed(".0314")
    assert got.working.disagreements() == []


def test_no_bore_no_gap():
    with pytest.raises(ValueError, match="above 0"):
        ring_gap(bore=Length(0))
    with pytest.raises(ValueError, match="not above"):
        ring_gap(bore=Length(3), least=0.005, most=0.004)
