"""Oil: the D341 line, grades at their edges, seconds and index, and what is refused."""

from itertools import pairwise
from math import log10

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.oil._sae_j300 import SUMMER, WINTER
from shimstock.trade.sums.oil._sae_j306 import GRADES
from shimstock.trade.sums.oil.engine_oil_grade import engine_oil_grade
from shimstock.trade.sums.oil.gear_oil_grade import gear_oil_grade
from shimstock.trade.sums.oil.oil_viscosity import oil_viscosity
from shimstock.trade.sums.oil.sus_to_cst import sus_to_cst
from shimstock.trade.sums.oil.viscosity_index import viscosity_index
from shimstock.trade.sums.oil.winter_gear_oil import winter_gear_oil
from shimstock.trade.sums.oil.winter_oil_grade import winter_oil_grade


def answers(worked):
    return {name: each.value for name, each in worked.working.answers.items()}


def test_the_line_goes_through_its_two_points():
    oil = {"cold": 100, "hot": 11.2}
    assert oil_viscosity(**oil, at=40).value == pytest.approx(100)
    assert oil_viscosity(**oil, at=100).value == pytest.approx(11.2)


@pytest.mark.parametrize("at", [0, 20, 60, 80, 120, 150])
def test_astm_d341_line_solved_by_a_general_library(at):
    """log log(ν + 0.7) = A − B·log T in the logarithms of the standard, solved for ν by a root."""

    def z(viscosity):
        return log10(log10(viscosity + 0.7))

    b = (z(100) - z(11.2)) / (log10(373.15) - log10(313.15))
    a = z(100) + b * log10(313.15)
    wanted = brentq(lambda v: z(v) - (a - b * log10(at + 273.15)), 0.5, 1e6, xtol=1e-12)
    assert oil_viscosity(cold=100, hot=11.2, at=at).value == pytest.approx(wanted, rel=1e-6)


@given(st.floats(20, 900), st.floats(2, 18), st.floats(-20, 150))
def test_oil_thins_as_it_warms(cold, hot, at):
    try:
        colder = oil_viscosity(cold=cold, hot=hot, at=at).value
    except NotPossible as error:
        assert "20 million" in str(error)
        return
    assert oil_viscosity(cold=cold, hot=hot, at=at + 5).value < colder


@given(st.floats(20, 900), st.floats(2, 18), st.floats(60, 140))
def test_any_two_points_of_the_line_give_the_line(cold, hot, at):
    third = oil_viscosity(cold=cold, hot=hot, at=at).value
    back = oil_viscosity(cold=cold, hot=third, hot_at=at, at=100).value
    assert back == pytest.approx(hot, rel=1e-6)


def test_below_2_it_says_that_it_extrapolates():
    cautions = oil_viscosity(cold=15, hot=3, at=200).working.cautions
    assert any("extrapolates" in each for each in cautions)
    above = oil_viscosity(cold=15, hot=2.001, at=100).working.cautions
    assert not any("extrapolates" in each for each in above)


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ({"cold": 11, "hot": 100}, "oil thins as it warms"),
        ({"cold": 11, "hot": 11}, "oil thins as it warms"),
        ({"cold": 100, "hot": 11, "cold_at": 100, "hot_at": 40}, "must be at least 1 °C above"),
        ({"cold": 460, "hot": 30, "at": -65}, "20 million"),
    ],
)
def test_what_no_oil_can_do_is_refused(typed, said):
    with pytest.raises(NotPossible, match=said):
        oil_viscosity(**{"at": 60} | typed)


@pytest.mark.parametrize("edition", ["1999", "2015"])
def test_j300_a_limit_belongs_to_the_thicker_grade(edition):
    for thin, thick in pairwise(SUMMER[edition]):
        assert thin.below >= thick.least, "no gap between two grades"
    assert engine_oil_grade(viscosity=12.5, edition=edition).value == "40"
    assert engine_oil_grade(viscosity=12.4999, edition=edition).value == "30"


def test_j300_from_memory_the_thin_grades_of_2015():
    # SAE J300, January 2015, from memory: least, and below which, in mm²/s at 100 °C.
    thin = SUMMER["2015"][:3]
    assert [tuple(each) for each in thin] == [
        ("8", 4.0, 6.1), ("12", 5.0, 7.1), ("16", 6.1, 8.2),
    ]  # fmt: skip


def test_j300_editions_differ_where_20_begins():
    assert engine_oil_grade(viscosity=6.0, edition="1999").value == "20"
    assert engine_oil_grade(viscosity=6.0, edition="2015").value == "8 or 12"
    assert engine_oil_grade(viscosity=7.0, edition="2015").value == "12 or 16 or 20"


@pytest.mark.parametrize(
    ("viscosity", "said"), [(5, "none: below grade 20"), (26.1, "none: above grade 60")]
)
def test_j300_beyond_its_table_is_no_grade(viscosity, said):
    got = engine_oil_grade(viscosity=viscosity, edition="1999")
    assert got.value == "none"
    assert answers(got)["grade"] == said


def test_j306_grades_have_no_gap_between_them():
    for table in GRADES.values():
        for thin, thick in pairwise(table):
            assert thin.below == thick.least
    assert answers(gear_oil_grade(viscosity=8))["grade"] == "none: below grade 80"
    assert gear_oil_grade(viscosity=500).value == "250"


@pytest.mark.parametrize("grade", WINTER, ids=lambda each: each.name)
def test_j300_a_winter_grade_is_met_at_its_limits_and_not_beyond(grade):
    met = {"cranking": grade.cranking, "cranking_at": grade.cranking_at, "viscosity": grade.least}
    assert winter_oil_grade(**met, pumping=60_000).value == grade.name
    assert answers(winter_oil_grade(**met))["pumping at"] == grade.cranking_at - 5
    for worse, because in (
        ({"cranking": grade.cranking + 1}, "too thick to crank"),
        ({"viscosity": grade.least - 0.01}, "too thin when hot"),
        ({"pumping": 60_001}, "too thick to pump"),
    ):
        got = winter_oil_grade(**met | worse)
        assert got.value == "none"
        assert answers(got)["because"] == f"as {grade.name} it is {because}"


def test_j300_from_memory_cranking_limits():
    # SAE J300, December 1999 and January 2015; 10W and 20W read, the others from memory.
    assert [(g.name, g.cranking) for g in WINTER] == [
        ("0W", 6200), ("5W", 6600), ("10W", 7000), ("15W", 7000), ("20W", 9500), ("25W", 13000),
    ]  # fmt: skip


def test_a_cranking_test_has_its_temperatures():
    with pytest.raises(NotPossible, match="those are −35, −30, −25, −20, −15, −10"):
        winter_oil_grade(cranking=6000, cranking_at=-18, viscosity=14)


def test_gear_oil_too_thick_in_mild_cold_is_no_winter_grade():
    assert winter_gear_oil(thick_at=-11).value == "none"
    assert winter_gear_oil(thick_at=-26).value == "80W"
    assert answers(winter_gear_oil(thick_at=-28))["to spare"] == 2
    assert winter_gear_oil(thick_at=-25.9).value == "85W"


@given(st.floats(32, 5000))
def test_more_seconds_are_more_centistokes(seconds):
    assert sus_to_cst(seconds=seconds + 5).value > sus_to_cst(seconds=seconds).value


def test_the_two_saybolt_formulas_nearly_meet_at_100():
    # 0.226·100 − 195/100 and 0.220·100 − 135/100, both 20.65.
    assert sus_to_cst(seconds=100).value == pytest.approx(20.65)
    assert sus_to_cst(seconds=101).value == pytest.approx(0.220 * 101 - 135 / 101)
    assert sus_to_cst(seconds=100.001).value == pytest.approx(20.65, abs=0.001)


@given(st.floats(0, 100))
def test_index_and_viscosity_are_each_others_inverse(index):
    oil = viscosity_index(poor=400, good=150, index=index).value
    assert viscosity_index(poor=400, good=150, oil=oil).value == pytest.approx(index, abs=1e-9)


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ({"poor": 150, "good": 400, "index": 80}, "look whether the two are swapped"),
        ({"poor": 400, "good": 150}, "must be one of the two"),
        ({"poor": 400, "good": 150, "oil": 200, "index": 80}, "must be one of the two"),
        ({"poor": 150, "good": 150, "index": 80}, "look whether the two are swapped"),
        ({"poor": 400, "good": 150, "oil": 149}, "above 100 the index has another formula"),
    ],
)
def test_what_gives_no_index_is_refused(typed, said):
    with pytest.raises(NotPossible, match=said):
        viscosity_index(**typed)
