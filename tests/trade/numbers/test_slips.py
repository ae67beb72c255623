import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.numbers.slips import slips


def found(typed: str, **also: float) -> list[float]:
    got = slips(float(typed), "in", 5.68, 5.82, typed=typed, near=5.7554, **also)
    return [round(slip.value, 4) for slip in got]


@pytest.mark.parametrize(
    "typed",
    ["5.9752", "146.284", "57.592", "5.5792", "5759.2", "0.57592", "5.1592", "7.5592", "5.2597"],
)
def test_the_meant_value_is_offered(typed):
    assert 5.7592 in found(typed)
    assert len(found(typed)) <= 4


def test_millimetres_typed_in_an_inch_figure_are_said_so():
    (slip,) = slips(146.284, "in", 5.68, 5.82, typed="146.284", near=5.7554)
    assert slip.how == "millimetres: 5.7592 in"


def test_thousandths_and_other_units():
    (slip,) = slips(1.5, "in", 0.001, 0.005, typed="1.5")
    assert (slip.value, slip.how) == (0.0015, "thousandths of an inch: 0.0015 in")
    assert slips(5.7592, "mm", 146, 147)[0].value == pytest.approx(146.28368)
    assert slips(1265, "sg", 1.1, 1.3, typed="1265")[0].value == 1.265
    assert slips(27.6, "psi", 300, 450, typed="27.6")[0].how.startswith("bar")
    assert slips(0.3, "V", 18, 24, typed="0.3") == []


def test_digits_slip_in_the_unit_that_was_typed():
    got = slips(5.9592, "in", 5.68, 5.82, typed="141.684 mm", near=5.7554)
    assert any(abs(slip.value - 146.184 / 25.4) < 1e-9 for slip in got)


def test_pounds_of_pull_and_degrees_of_heat_slip_too():
    assert slips(26.0, "lbf", 55, 70, typed="26 lb")[0].value == 62
    assert slips(610.0, "degF", 150, 180, typed="610°")[0].value == 160


def test_a_value_in_range_has_not_slipped():
    assert slips(5.75, "in", 5.68, 5.82) == []


def test_text_that_is_no_plain_decimal_falls_back_on_the_value():
    assert slips(9.5, "in", 5.68, 5.82, typed="9 1/2") == []
    assert slips(57.5, "in", 5.68, 5.82, typed="57 1/2")[0].value == 5.75


@given(
    st.floats(1e-4, 1e4), st.floats(1e-3, 1e3), st.sampled_from(["in", "mm", "psi", "degF", "%"])
)
def test_every_offer_lies_in_the_range_and_each_once(value, low, unit):
    got = slips(value, unit, low, low * 1.3)
    assert all(low <= slip.value <= low * 1.3 for slip in got)
    assert len({slip.value for slip in got}) == len(got) <= 4


@pytest.mark.parametrize("typed", ["57592", "5.592", "5.792", ".7592"])
def test_a_point_or_a_digit_left_out_is_offered(typed):
    low, high = (5.755, 5.765) if typed == "5.792" else (5.68, 5.82)
    got = slips(float(typed), "in", low, high, typed=typed, near=5.7554)

    assert 5.7592 in [round(slip.value, 4) for slip in got]


def test_a_digit_left_out_is_said_so():
    (slip,) = slips(5.585, "in", 5.74, 5.77, typed="5.585", near=5.7554)
    assert slip.how == "a 7 left out: 5.7585 in"


def test_a_digit_slips_past_one_neighbour_sooner_than_past_all():
    got = slips(5.9751, "in", 5.68, 5.82, typed="5.9751", near=5.7554, band=0.010)
    offered = [round(slip.value, 4) for slip in got]

    assert offered[0] == 5.7591
    assert offered.index(5.7591) < offered.index(5.7519)


def test_what_lies_many_bands_away_comes_later():
    def first(band):
        return slips(5.9751, "in", 5.68, 5.82, typed="5.9751", near=5.7554, band=band)[0].value

    assert first(0.1) == pytest.approx(5.7951)  # two neighbours swapped, and near enough
    assert first(0.010) == pytest.approx(5.7591)
