"""Paint and air: yes and no with their reasons, inverses, and what is refused."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from published.as_printed import as_printed
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.paint.dew_point import dew_point
from shimstock.trade.sums.paint.film_from_wet import film_from_wet
from shimstock.trade.sums.paint.may_i_paint import may_i_paint
from shimstock.trade.sums.paint.paint_needed import paint_needed
from shimstock.trade.sums.paint.recoat_window import recoat_window
from shimstock.trade.sums.paint.spreading_rate import spreading_rate
from shimstock.trade.sums.paint.wet_film import wet_film


def answers(worked):
    return {name: each.value for name, each in worked.working.answers.items()}


@given(st.floats(-40, 60), st.floats(1, 99))
def test_dew_lies_below_the_air_and_rises_with_damp(air, humidity):
    point = dew_point(air=air, humidity=humidity).value
    assert point < air
    assert dew_point(air=air, humidity=humidity + 1).value > point


@given(st.floats(-80, 100))
def test_in_saturated_air_the_dew_point_is_the_air(air):
    assert dew_point(air=air, humidity=100).value == pytest.approx(air, abs=1e-9)


def test_outside_the_formulas_range_it_says_so():
    assert any("extrapolates" in each for each in dew_point(air=70, humidity=50).working.cautions)


def test_a_morning_too_damp_and_a_noon_dry_enough():
    """Worked by hand with the Magnus formula; iron lags behind the air."""
    morning = answers(may_i_paint(air=14, humidity=88, metal=13.1))
    noon = answers(may_i_paint(air=19, humidity=62, metal=16.2))
    assert morning["dew point"] == as_printed("12.0")
    assert morning["above dew point"] == as_printed("1.1")
    assert morning["paint now"] == "no"
    assert morning["because"] == (
        "the metal is only 1.1 °C above the dew point, 3 above are wanted; "
        "humidity 88 % is over 85 %"
    )
    assert (noon["dew point"], noon["above dew point"]) == (as_printed("11.6"), as_printed("4.6"))
    assert noon["paint now"] == "yes"
    assert "because" not in noon


def test_wet_metal_and_a_cold_sheet_are_named():
    got = answers(may_i_paint(air=20, humidity=80, metal=12, least_metal=15))
    assert got["because"] == (
        "the metal is 4.4 °C below the dew point, 3 above are wanted; "
        "metal at 12 °C is colder than 15 °C"
    )


def test_a_margin_that_misses_by_a_hair_does_not_look_met():
    point = dew_point(air=20, humidity=60).value
    got = answers(may_i_paint(air=20, humidity=60, metal=point + 2.999))
    assert got["paint now"] == "no"
    assert "2.999" in got["because"]


def test_the_limits_themselves_are_allowed():
    assert answers(may_i_paint(air=20, humidity=85, metal=22))["paint now"] == "yes"
    assert answers(may_i_paint(air=20, humidity=85.1, metal=22))["paint now"] == "no"
    got = may_i_paint(air=20, humidity=60, metal=18, least_metal=18)
    assert answers(got)["paint now"] == "yes"


def test_without_the_sheets_temperature_it_reminds_of_it():
    shown = may_i_paint(air=20, humidity=60, metal=18).working.shown()
    assert "The lowest temperature of the paint's own sheet was not given: look it up." in shown


@given(st.floats(5, 500), st.floats(5, 100), st.floats(0, 60))
def test_wet_and_dry_film_are_each_others_inverse(dry, solids, thinner):
    wet = wet_film(dry=dry, solids=solids, thinner=thinner).value
    back = film_from_wet(wet=wet, solids=solids, thinner=thinner).value
    assert back == pytest.approx(dry)
    assert wet >= dry


def test_thinner_asks_for_a_wetter_film():
    assert wet_film(dry=50, solids=50, thinner=10).value == pytest.approx(110)


@given(st.floats(5, 100), st.floats(10, 300), st.floats(0, 90), st.integers(1, 5))
def test_litres_are_area_over_spreading_rate(solids, dry, loss, coats):
    rate = spreading_rate(solids=solids, dry=dry, loss=loss).value
    litres = paint_needed(area=14, dry=dry, solids=solids, loss=loss, coats=coats).value
    assert litres == pytest.approx(coats * 14 / rate)


def test_thinner_goes_by_the_paint():
    got = answers(paint_needed(area=10, dry=50, solids=50, loss=0, thinner=15))
    assert got["paint"] == pytest.approx(1.0)
    assert got["thinner"] == pytest.approx(0.15)


def test_ten_degrees_colder_takes_twice_as_long_and_warmer_half():
    times = {"earliest": 16, "latest": 168, "sheet_at": 20}
    cold, warm = (answers(recoat_window(**times, metal=metal)) for metal in (10, 30))
    assert (cold["earliest"], cold["latest"]) == (32, 336)
    assert (warm["earliest"], warm["latest"]) == (8, 84)


@pytest.mark.parametrize(
    ("waited", "now", "because"),
    [
        (15.9, "no", "it needs 0.1 h more"),
        (16, "yes", None),
        (168, "yes", None),
        (168.1, "no", "the window is past: scuff it first"),
    ],
)
def test_the_window_is_open_between_its_ends(waited, now, because):
    got = answers(recoat_window(earliest=16, latest=168, sheet_at=20, metal=20, waited=waited))
    assert (got["recoat now"], got.get("because")) == (now, because)


def test_a_window_closes_after_it_opens():
    with pytest.raises(NotPossible, match="must not be before the earliest"):
        recoat_window(earliest=24, latest=16)


def test_the_halving_rule_owns_up_to_having_no_source():
    assert "no source" in recoat_window(earliest=16).working.shown()[0]
