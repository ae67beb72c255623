import pytest

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.brakes.brake_rivets import brake_rivets
from shimstock.trade.sums.brakes.lining_left import lining_left
from shimstock.trade.sums.brakes.outside_shoe import outside_shoe
from shimstock.trade.sums.brakes.stop_heat import stop_heat


@pytest.mark.parametrize("worked", [{}, {"worked": 900}])
def test_a_lining_thicker_than_new_is_refused_with_or_without_hours(worked):
    with pytest.raises(NotPossible, match="must be less than when new, 4 mm"):
        lining_left(thickness=5, new=4, **worked)


def test_the_thickness_when_new_says_what_has_worn():
    assert lining_left(thickness=3, new=4.5).working.answers["worn"].value == 1.5


def test_hours_without_the_thickness_when_new_are_refused():
    with pytest.raises(NotPossible, match="thickness when new is missing"):
        lining_left(thickness=3, worked=900)


STOP = dict(mass=2400, speed=24, drums=2, drum_mass=18)


def test_a_wheel_without_the_time_of_the_stop_is_refused():
    with pytest.raises(NotPossible, match=r"wheel radius 0\.6 .*time or deceleration is missing"):
        stop_heat(**STOP, wheel_radius=0.6)
    assert "torque" in stop_heat(**STOP, wheel_radius=0.6, deceleration=2.5).working.answers


@pytest.mark.parametrize(
    ("one", "missing"), [({"hole": 5}, "tension is missing"), ({"tension": 80}, "hole is missing")]
)
def test_a_rivet_hole_and_the_tension_beside_it_are_given_together(one, missing):
    with pytest.raises(NotPossible, match=missing):
        brake_rivets(force=5000, rivets=10, shear=30, crushing=60, thickness=3, **one)


def test_an_outside_shoe_with_its_hinge_far_out_says_that_friction_works_the_other_way():
    shoe = {"friction": 0.3, "width": 50, "radius": 150, "start": 5, "end": 60, "arm": 300}
    for turning, pivot, said in (
        ("leading", 260, "hinders"), ("trailing", 260, "helps"), ("leading", 200, "helps"),
    ):  # fmt: skip
        end = 60 if pivot == 260 else 120
        got = outside_shoe(**shoe | {"end": end}, pivot=pivot, force=1000, turning=turning)
        assert got.working.answers["friction"].value == f"{said} the shoe"
