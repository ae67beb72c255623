import pytest

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.power.bmep_power import bmep_power
from shimstock.trade.sums.power.brake_load_power import brake_load_power
from shimstock.trade.sums.power.draft_power import draft_power
from shimstock.trade.sums.power.drawbar_power import drawbar_power
from shimstock.trade.sums.power.mean_pressure import mean_pressure
from shimstock.trade.sums.power.morse_test import morse_test
from shimstock.trade.sums.power.rope_brake import rope_brake
from shimstock.trade.sums.power.thermal_efficiency import thermal_efficiency


@pytest.mark.parametrize(
    ("sum_", "given", "named"),
    [
        (brake_load_power, {"load": 300, "arm": 36, "speed": 900}, "arm 36 m"),
        (brake_load_power, {"load": 160_000, "arm": 1, "speed": 900}, "load 160000 N"),
        (morse_test, {"load": 160, "arm": 14, "speed": 900, "cut": [110, 107]}, "arm 14 m"),
        (rope_brake, {"weight": 400, "spring": 30, "drum": 28, "speed": 300}, "drum 28 m"),
        (rope_brake, {"weight": 400, "spring": 30, "drum": 1, "speed": 300, "rope": 1}, "rope 1 m"),
        (bmep_power, {"pressure": 95, "displacement": 5, "speed": 900}, "pressure 95 bar"),
        (bmep_power, {"pressure": 6, "displacement": 351, "speed": 900}, "displacement 351 l"),
        (drawbar_power, {"pull": 2200, "speed": 5}, "pull 2200 kN"),
        (draft_power, {"speed": 5, "draft": 10, "depth": 6, "width": 1}, "depth 6 m"),
    ],
)
def test_bare_numbers_of_another_unit_than_the_sums_are_refused(sum_, given, named):
    with pytest.raises(NotPossible, match=f"{named} .*at most"):
        sum_(**given)


def test_a_mean_pressure_that_no_engine_has_asks_for_the_units():
    with pytest.raises(NotPossible, match=r"mean pressure 45 bar .*look at the units"):
        mean_pressure(power=37.5, displacement=1, speed=1000)


def test_a_density_without_a_volume_is_refused():
    with pytest.raises(NotPossible, match="volume is missing"):
        thermal_efficiency(heating_value=43, power=20, fuel=5, density=0.84)
