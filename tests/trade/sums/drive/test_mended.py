import pytest

from shimstock.trade.sums.find import find_sum


@pytest.mark.parametrize(
    "name",
    ["belt-power", "v-belt-power", "belt-surface-speed", "pulley-for-speed", "pulley-speed"],
)
def test_a_pulley_is_never_said_to_turn_at_the_rated_speed_of_the_engine(name):
    assert find_sum(name).input("speed").found == ""


@pytest.mark.parametrize("name", ["belt-power", "v-belt-power"])
def test_the_smaller_pulley_of_a_belt_is_not_taken_from_the_tractors_book(name):
    assert find_sum(name).input("pulley").found == ""
