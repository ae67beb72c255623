import pytest

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.engine.bore_for_torque import bore_for_torque
from shimstock.trade.sums.engine.compressed_pressure import compressed_pressure
from shimstock.trade.sums.engine.compression_at_sea import compression_at_sea
from shimstock.trade.sums.engine.displacement import displacement
from shimstock.trade.sums.engine.piston_position import piston_position
from shimstock.trade.sums.engine.piston_speed import piston_speed
from shimstock.trade.sums.engine.torque_from_bmep import torque_from_bmep
from shimstock.trade.sums.engine.torque_mean_pressure import torque_mean_pressure


@pytest.mark.parametrize(
    ("sum_", "given", "named"),
    [
        (compression_at_sea, {"reading": 96, "height": 1000}, "reading 96 bar"),
        (compressed_pressure, {"ratio": 5, "start": 14.7}, "start 14.7 bar"),
        (torque_from_bmep, {"pressure": 95, "displacement": 5}, "pressure 95 bar"),
        (torque_from_bmep, {"pressure": 6, "displacement": 351}, "displacement 351 l"),
        (torque_mean_pressure, {"torque": 200, "displacement": 351}, "displacement 351 l"),
        (bore_for_torque, {"torque": 200, "mean_pressure": 95}, "mean pressure 95 bar"),
        (piston_speed, {"stroke": 1333, "speed": 900}, "stroke 1333 mm"),
        (piston_position, {"stroke": 1333, "rod": 2600, "angle": 20}, "stroke 1333 mm"),
        (displacement, {"bore": 1080, "stroke": 133, "unit": "mm"}, "bore 1080 mm"),
    ],
)
def test_bare_numbers_of_another_unit_than_the_sums_are_refused(sum_, given, named):
    with pytest.raises(NotPossible, match=f"{named} .*at most"):
        sum_(**given)


def test_a_torque_that_means_more_than_any_mean_pressure_asks_for_the_units():
    with pytest.raises(NotPossible, match=r"mean pressure 62\.8319 bar .*look at the units"):
        torque_mean_pressure(torque=500, displacement=1)
