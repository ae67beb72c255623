import pytest

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.find import find_sum
from shimstock.trade.sums.lifting.axle_loads import axle_loads

TRACTOR = dict(weight=1600, wheelbase=2100, behind=1300)


@pytest.mark.parametrize(
    ("one", "missing"), [({"load": 200}, "load behind"), ({"load_behind": 2600}, "load")]
)
def test_a_load_and_its_place_are_given_together(one, missing):
    with pytest.raises(NotPossible, match=f"{missing} is missing"):
        axle_loads(**TRACTOR, **one)


def test_a_load_right_over_the_front_axle_is_still_a_place():
    got = axle_loads(**TRACTOR, load=200, load_behind=0)
    assert got.value.front == pytest.approx(axle_loads(**TRACTOR).value.front + 200)


def test_what_hangs_on_a_leg_is_called_a_load_for_a_share_is_per_cent():
    assert find_sum("sling-by-length").inputs[0].name == "load"
