import pytest
from hypothesis import given
from hypothesis import strategies as st

from published.as_printed import as_printed
from shimstock.trade.numbers.units import Deg, Inch, Length, PerInch, Teeth
from shimstock.trade.sums.gears.angular_play import angular_play
from shimstock.trade.sums.gears.backlash_from_centre_distance import backlash_from_centre_distance
from shimstock.trade.sums.gears.centre_distance import centre_distance
from shimstock.trade.sums.gears.exact_backlash import exact_backlash
from shimstock.trade.sums.gears.lash_at_end import lash_at_end
from shimstock.trade.sums.gears.lash_from_end import lash_from_end
from shimstock.trade.sums.gears.pitch_radius import pitch_radius
from shimstock.trade.sums.gears.recommended_backlash import TABLE, recommended_backlash
from shimstock.trade.sums.gears.train_ratio import train_ratio

# Norton, Design of Machinery, gear example (from memory): 19 and 37 teeth, diametral pitch 6,
# 20°, centre distance 4.6667 in set 2 % too wide.
NORTON_C, NORTON_SPREAD = 28 / 6, 0.02 * 28 / 6


def test_norton_running_pressure_angle():
    worked = exact_backlash(
        centre=Length(NORTON_C), spread=Length(NORTON_SPREAD), pressure_angle=Deg(20)
    )
    assert worked.working.value("φ'") == as_printed("22.89")
    assert worked.working.disagreements() == []


def test_norton_angular_backlash_of_the_pinion():
    # Printed 171.1 minutes of arc, from 43200·ΔC·tan φ'/(π·d) with the running angle.
    running = exact_backlash(
        centre=Length(NORTON_C), spread=Length(NORTON_SPREAD), pressure_angle=Deg(20)
    ).working.value("φ'")
    lash = backlash_from_centre_distance(
        spread=Length(NORTON_SPREAD), pressure_angle=Deg(running)
    ).value
    radius = pitch_radius(teeth=Teeth(19), diametral_pitch=PerInch(6)).value
    assert 60 * angular_play(lash=lash, radius=Length(radius)).value == as_printed("171.1")


def test_involute_backlash_is_8_per_cent_over_the_approximation_at_2_per_cent_spread():
    # Derived from the geometry of the involute: 0.07420 against 0.06794 in.
    exact = exact_backlash(
        centre=Length(NORTON_C), spread=Length(NORTON_SPREAD), pressure_angle=Deg(20)
    )
    near = backlash_from_centre_distance(spread=Length(NORTON_SPREAD), pressure_angle=Deg(20))
    assert exact.value == as_printed("0.07420")
    assert near.value == as_printed("0.06794")


@pytest.mark.parametrize(
    ("spread", "near", "exact"),
    [(0.05, "0.03640", "0.03649"), (0.1, "0.07279", "0.07318"), (0.3, "0.21838", "0.22184")],
)
def test_involute_backlash_module_3_20_and_40_teeth(spread, near, exact):
    # Derived from the geometry of the involute: module 3 mm, 20°, centre distance 90 mm.
    got = exact_backlash(
        centre=Length(90), spread=Length(spread), pressure_angle=Deg(20), unit="mm"
    )
    about = backlash_from_centre_distance(spread=Length(spread), pressure_angle=Deg(20), unit="mm")
    assert got.value == as_printed(exact)
    assert about.value == as_printed(near)
    assert got.working.disagreements() == about.working.disagreements() == []


def test_geometry_lash_of_0_15_mm_at_60_mm():
    got = angular_play(lash=Length(0.15), radius=Length(60), unit="mm")
    assert got.value == as_printed("0.14324")
    assert 60 * got.value == as_printed("8.594")


@given(st.floats(0.0001, 0.05), st.floats(0.0001, 0.05), st.floats(10, 30))
def test_gears_further_apart_have_more_lash(spread, more, angle):
    def lash(by: float) -> tuple[float, float]:
        near = backlash_from_centre_distance(spread=Length(by), pressure_angle=Deg(angle))
        exact = exact_backlash(centre=Length(5), spread=Length(by), pressure_angle=Deg(angle))
        return near.value, exact.value

    assert all(a < b for a, b in zip(lash(spread), lash(spread + more), strict=True))


@given(st.floats(1e-6, 5e-4), st.floats(12, 28))
def test_for_small_spread_both_formulas_agree(spread, angle):
    near = backlash_from_centre_distance(spread=Length(spread), pressure_angle=Deg(angle))
    exact = exact_backlash(centre=Length(5), spread=Length(spread), pressure_angle=Deg(angle))
    assert exact.value == pytest.approx(near.value, rel=0.002)


@pytest.mark.parametrize(("angle", "printed"), [(14.5, "0.0078"), (20, "0.0109")])
def test_a_gasket_0_015_too_thick_opens_the_mesh(angle, printed):
    # Common practice, no source: 0.015 in of gasket opens a mesh by 0.008 to 0.011 in.
    got = backlash_from_centre_distance(spread=Length(0.015), pressure_angle=Deg(angle))
    assert got.value == as_printed(printed)


# AGMA recommended backlash ranges for coarse pitch gears, an engineering page's copy.
@pytest.mark.parametrize(
    ("centre", "pitch", "least", "most"),
    [
        (4, 12, ".005", ".015"),
        (5, 10, ".005", ".015"),
        (7, 8, ".010", ".020"),
        (15, 5, ".020", ".030"),
        (15, 6, ".015", ".025"),
        (25, 2, ".030", ".040"),
        (35, 1, ".040", ".060"),
        (45, 4, ".035", ".050"),
        (60, 3, ".045", ".065"),
        (90, 3.49, ".050", ".080"),
        (120, 0.5, ".080", ".110"),
    ],
)
def test_agma_recommended_backlash(centre, pitch, least, most):
    got = recommended_backlash(centre=Inch(centre), diametral_pitch=PerInch(pitch))
    assert got.value[0] == as_printed(least)
    assert got.value[1] == as_printed(most)


@pytest.mark.parametrize(("centre", "pitch"), [(4, 8), (121, 1), (15, 20), (15, 0.4), (110, 2)])
def test_where_the_table_is_empty_it_says_so(centre, pitch):
    with pytest.raises(ValueError, match="maker's book"):
        recommended_backlash(centre=Inch(centre), diametral_pitch=PerInch(pitch))


def test_agma_table_grows_with_the_centre_distance():
    for column in zip(*(row for _, row in TABLE), strict=True):
        filled = [entry for entry in column if entry]
        assert filled == sorted(filled)
        assert all(least < most for least, most in filled)


def test_khurmi_13_1_compound_train():
    # Khurmi and Gupta, Theory of Machines, example 13.1: 975 rev/min gives 52.
    got = train_ratio(
        meshes=[(Teeth(20), Teeth(50)), (Teeth(25), Teeth(75)), (Teeth(26), Teeth(65))]
    )
    assert 975 * got.value == as_printed("52")
    assert got.working.disagreements() == []
    assert "turns against the first" in got.working.shown()[-1]


def test_bhatt_mehta_13_5_an_idler_does_not_count():
    # Bhatt and Mehta, example 13.5: 30-45-75 teeth, ratio 2.5, 1000 rev/min gives 400.
    got = train_ratio(meshes=[(Teeth(30), Teeth(45)), (Teeth(45), Teeth(75))])
    assert 1 / got.value == as_printed("2.5")
    assert 1000 * got.value == as_printed("400")
    assert "turns the same way as the first" in got.working.shown()[-1]


def test_khurmi_13_2_exact_centres():
    # Khurmi and Gupta, example 13.2, p. 433.
    got = centre_distance(
        driving=Teeth(38), driven=Teeth(114), circular_pitch=Length(25), unit="mm"
    )
    assert got.value == as_printed("604.79")
    assert got.working.value("d_1") == pytest.approx(302.39, abs=0.011)  # cut, not rounded
    assert got.working.value("d_2") == as_printed("907.2")


def test_geometry_fan_rock_back_to_each_mesh():
    # Derived from geometry: 40-80, 80-32 and 24-18 teeth, 8 to the inch, read at 10 in.
    def mesh(movement: float, teeth: int, ratio: float) -> float:
        radius = pitch_radius(teeth=Teeth(teeth), diametral_pitch=PerInch(8)).value
        return lash_from_end(
            movement=Length(movement), radius=Length(radius), ratio=ratio, end_radius=Length(10)
        ).value

    speed_up = train_ratio(meshes=[(Teeth(24), Teeth(18))]).value
    whole = train_ratio(meshes=[(Teeth(80), Teeth(32)), (Teeth(24), Teeth(18))]).value
    assert mesh(0.090, 18, 1) == as_printed("0.0101")
    assert mesh(0.290 - 0.090, 32, speed_up) == as_printed("0.0300")
    assert mesh(0.350 - 0.290, 80, whole) == as_printed("0.0090")


@given(st.floats(0, 0.1), st.floats(0.5, 10), st.floats(0.1, 10), st.floats(0.5, 20))
def test_lash_there_and_back(lash, radius, ratio, end):
    there = lash_at_end(
        lash=Length(lash), radius=Length(radius), ratio=ratio, end_radius=Length(end)
    )
    back = lash_from_end(
        movement=there.value, radius=Length(radius), ratio=ratio, end_radius=Length(end)
    )
    assert back.value == pytest.approx(lash)
    assert there.working.disagreements() == back.working.disagreements() == []


def test_what_no_gear_can_be_is_refused():
    with pytest.raises(ValueError, match="above 0 and below 45"):
        backlash_from_centre_distance(spread=Length(0.01), pressure_angle=Deg(90))
    with pytest.raises(ValueError, match="at least 0"):
        exact_backlash(centre=Length(5), spread=Length(-0.01), pressure_angle=Deg(20))
    with pytest.raises(ValueError, match="two gears with teeth"):
        train_ratio(meshes=[])
    with pytest.raises(ValueError, match="two gears with teeth"):
        train_ratio(meshes=[(Teeth(20), Teeth(0))])
    with pytest.raises(ValueError, match="above 0"):
        lash_at_end(lash=Length(0.01), radius=Length(0), ratio=1, end_radius=Length(10))
    with pytest.raises(ValueError, match="above 0"):
        angular_play(lash=Length(0.01), radius=Length(0))
    with pytest.raises(ValueError, match="at least 1"):
        pitch_radius(teeth=Teeth(0), diametral_pitch=PerInch(8))
    with pytest.raises(ValueError, match="at least 1"):
        centre_distance(driving=Teeth(0), driven=Teeth(9), circular_pitch=Length(1))
