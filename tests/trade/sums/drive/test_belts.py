"""Belts against their own mechanics, and pulleys there and back."""

from math import asin, cos, e, exp, pi, radians, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad, solve_ivp

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.sums.drive._pulleys import Pair, read_pairs
from shimstock.trade.sums.drive.belt_creep import belt_creep
from shimstock.trade.sums.drive.belt_length import belt_length
from shimstock.trade.sums.drive.belt_power import belt_power
from shimstock.trade.sums.drive.belt_surface_speed import belt_surface_speed
from shimstock.trade.sums.drive.pulley_for_speed import pulley_for_speed
from shimstock.trade.sums.drive.pulley_speed import pulley_speed
from shimstock.trade.sums.drive.v_belt_power import v_belt_power

FLAT = {"pulley": 0.35, "speed": 975, "wrap": 170, "friction": 0.3, "tight": 2000}
CREEP = {"tight": 2000, "slack": 800, "width": 100, "thickness": 6, "modulus": 100}
sizes = st.floats(20, 1000)


def answers(worked):
    return {name: each.value for name, each in worked.working.answers.items()}


@pytest.mark.parametrize("lay", ["open", "crossed"])
def test_a_belt_is_as_long_as_its_runs_and_its_arcs(lay):
    """Walked along: half of each side, twice; the arcs by their angles of wrap."""
    big, small, centres = 250.0, 100.0, 900.0
    lean = asin((big + small if lay == "crossed" else big - small) / centres)
    run = quad(lambda _: cos(lean), 0, centres)[0]
    on_small = pi + 2 * lean if lay == "crossed" else pi - 2 * lean
    walked = 2 * run + big * (pi + 2 * lean) + small * on_small
    got = belt_length(first=2 * big, second=2 * small, centres=centres, lay=lay)
    assert got.value == pytest.approx(walked, rel=1e-9)


@given(first=sizes, second=sizes, further=st.floats(10, 10_000))
def test_it_does_not_matter_which_pulley_is_named_first(first, second, further):
    centres = (first + second) / 2 + further
    one = belt_length(first=first, second=second, centres=centres)
    other = belt_length(first=second, second=first, centres=centres)
    assert one.value == pytest.approx(other.value)
    crossed = belt_length(first=first, second=second, centres=centres, lay="crossed")
    assert crossed.value > one.value


def test_with_two_like_pulleys_an_open_belt_is_two_runs_and_one_round():
    got = answers(belt_length(first=300, second=300, centres=2000))
    assert got["length"] == pytest.approx(4000 + 300 * pi)
    assert got["short form"] == pytest.approx(got["length"])


def test_the_short_form_comes_to_the_exact_length_far_apart_and_not_near():
    far = answers(belt_length(first=300, second=500, centres=20_000, lay="crossed"))
    near = answers(belt_length(first=300, second=500, centres=450, lay="crossed"))
    assert far["short form"] == pytest.approx(far["length"], rel=1e-7)
    assert abs(near["short form"] / near["length"] - 1) > 1e-3


def test_pulleys_that_touch_have_no_belt():
    with pytest.raises(NotPossible, match="more than half of both pulleys, 400 mm"):
        belt_length(first=300, second=500, centres=400)


@given(friction=st.floats(0.05, 0.8), wrap=st.floats(30, 350))
def test_the_pull_grows_round_the_pulley_as_friction_makes_it(friction, wrap):
    got = answers(belt_power(**FLAT | {"friction": friction, "wrap": wrap}))
    grown = solve_ivp(
        lambda _, pull: friction * pull, (0, radians(wrap)), [got["slack side"]], rtol=1e-10
    )
    assert grown.y[0][-1] == pytest.approx(2000, rel=1e-6)


def test_belt_power_is_pull_times_speed():
    got = answers(belt_power(**FLAT))
    assert got["belt speed"] == pytest.approx(pi * 0.35 * 975 / 60)
    assert got["power"] * 1000 == pytest.approx((2000 - got["slack side"]) * got["belt speed"])
    assert got["slack side"] == pytest.approx(2000 / e ** (0.3 * radians(170)))


def test_a_dead_flat_groove_wedges_nothing_and_a_narrow_one_much():
    flat = belt_power(**FLAT).value
    assert v_belt_power(**FLAT, groove=60).value > flat
    wedge = 0.3 / sin(radians(19))
    got = answers(v_belt_power(**FLAT, groove=38))
    assert got["slack side"] == pytest.approx(2000 * exp(-wedge * radians(170)))


@given(groove=st.floats(20, 59), belts=st.integers(1, 19))
def test_narrower_grooves_and_more_belts_carry_more(groove, belts):
    usual = v_belt_power(**FLAT, groove=groove, belts=belts).value
    assert v_belt_power(**FLAT, groove=groove + 1, belts=belts).value < usual
    more = v_belt_power(**FLAT, groove=groove, belts=belts + 1).value
    assert more / usual == pytest.approx((belts + 1) / belts)


@given(sizes, sizes, st.floats(0, 20), st.floats(0, 20), st.floats(50, 3000))
def test_the_pulley_for_a_speed_turns_at_that_speed(driving, driven, thickness, slip, speed):
    belt = {"thickness": thickness, "slip": slip}
    pair = [Pair(driving, driven, measured=True)]
    wanted = pulley_speed(speed=speed, pulleys=pair, **belt).value
    back = pulley_for_speed(driving=driving, speed=speed, wanted=wanted, **belt).value
    assert back == pytest.approx(driven)


def test_a_speed_that_asks_for_no_pulley_at_all():
    with pytest.raises(NotPossible, match="too fast for any pulley"):
        pulley_for_speed(driving=100, speed=100, wanted=5000, thickness=5)


def test_pulleys_are_read_with_and_without_a_unit():
    assert read_pairs("14/7") == [Pair(14, 7)]
    assert read_pairs("14/7 in") == [Pair(355.6, 177.8, measured=True)]
    assert read_pairs("30 cm/150 mm; 2/1 in")[0] == Pair(300, 150, measured=True)


@pytest.mark.parametrize("typed", ["", "14", "14/7/3", "14/0", "14/x", ", ".join(["2/1"] * 7)])
def test_what_is_no_row_of_pulleys(typed):
    with pytest.raises(NotUnderstood):
        read_pairs(typed)


def test_a_belts_thickness_wants_pulleys_with_a_unit():
    with pytest.raises(NotPossible, match="type them as 14/8 in"):
        pulley_speed(speed=975, pulleys=read_pairs("14/8"), thickness=6)
    got = pulley_speed(speed=1000, pulleys=read_pairs("300/100 mm"), thickness=5)
    assert got.value == pytest.approx(1000 * 305 / 105)


def test_a_thousand_turns_of_creep():
    """Between the pulleys a belt shortens by what its stretch falls."""
    tight, slack = (pull / (100 * 6 * 100) for pull in (2000, 800))
    got = belt_creep(**CREEP)
    assert got.value / 100 == pytest.approx((tight - slack) / (1 + tight))


def test_a_stiff_belt_hardly_creeps_and_an_idle_one_not_at_all():
    assert belt_creep(**CREEP | {"modulus": 1e5}).value < 0.01
    assert belt_creep(**CREEP | {"slack": 2000}).value == 0
    with pytest.raises(NotPossible, match="swapped"):
        belt_creep(**CREEP | {"slack": 2001})


@pytest.mark.parametrize(
    ("speed", "usual"), [(2999, "no"), (3000.1, "yes"), (3199.9, "yes"), (3201, "no")]
)
def test_the_belts_usual_speed_has_a_hundred_feet_either_way(speed, usual):
    got = belt_surface_speed(pulley=1 / pi, speed=speed)
    assert got.value == pytest.approx(speed)
    assert answers(got)["usual"] == usual
