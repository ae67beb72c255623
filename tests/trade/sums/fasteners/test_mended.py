import pytest

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.fasteners.tightening_order import tightening_order


def test_holes_and_a_count_are_not_both_taken():
    with pytest.raises(NotPossible, match="holes and count are each enough alone"):
        tightening_order(holes=((0, 0), (4, 0), (4, 3)), count=8)
