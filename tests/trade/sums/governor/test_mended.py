import pytest

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.governor.droop import droop


@pytest.mark.parametrize("by", ["full-load speed", "no-load speed"])
def test_a_declared_speed_that_is_not_divided_by_is_refused(by):
    with pytest.raises(NotPossible, match=f"declared speed 1000 rpm is not used .* the {by}"):
        droop(no_load=1100, full_load=975, declared=1000, by=by)
