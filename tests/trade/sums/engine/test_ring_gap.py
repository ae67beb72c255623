import pytest

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.units import Length
from shimstock.trade.sums.engine.rim_arc import rim_arc
from shimstock.trade.sums.engine.ring_gap import ring_gap
from shimstock.trade.sums.engine.ring_gap_growth import ring_gap_growth


def test_the_shares_are_for_each_unit_of_bore_whatever_the_unit():
    inches = ring_gap(bore=Length(3.5)).value
    mm = ring_gap(bore=Length(3.5 * 25.4), unit="mm").value
    assert mm == pytest.approx([25.4 * gap for gap in inches])


def test_a_worn_bore_opens_the_gap_by_the_growth_of_its_rim():
    # Common practice, no source: 0.0202 in for a liner bored to 5.770 in.
    new = ring_gap(bore=Length(5.770)).value[0]
    assert new == pytest.approx(0.0202, abs=0.00005)
    worn = ring_gap(bore=Length(5.780)).value[0]
    growth = ring_gap_growth(wear=Length(0.010)).value
    rims = [rim_arc(across=across, angle=360, unit="in").value for across in (5.770, 5.780)]
    assert growth == pytest.approx(rims[1] - rims[0])
    assert worn - new < growth / 100, "the rule forgives a hundredth of what wear opens"


@pytest.mark.parametrize(
    ("given_", "said"),
    [
        ({"bore": Length(0)}, "bore 0 in must be above 0"),
        ({"bore": Length(3), "least": 0.005, "most": 0.004}, "must not be above most, 0.004"),
    ],
)
def test_no_bore_and_swapped_shares_are_refused(given_, said):
    with pytest.raises(NotPossible, match=said):
        ring_gap(**given_)
