import pytest
from hypothesis import given
from hypothesis import strategies as st

from published.as_printed import as_printed
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.power.altitude_derate import altitude_derate
from shimstock.trade.sums.power.correction_iso_1585_ci import correction_iso_1585_ci
from shimstock.trade.sums.power.correction_iso_1585_si import correction_iso_1585_si
from shimstock.trade.sums.power.correction_iso_3046 import correction_iso_3046
from shimstock.trade.sums.power.correction_older_60f import correction_older_60f
from shimstock.trade.sums.power.correction_sae_j1349 import correction_sae_j1349
from shimstock.trade.sums.power.correction_un_r85_ci import correction_un_r85_ci
from shimstock.trade.sums.power.correction_with_friction import correction_with_friction
from shimstock.trade.sums.power.derate import derate

SPARK = [correction_sae_j1349, correction_iso_1585_si]
DIESEL = [correction_iso_1585_ci, correction_un_r85_ci]
ALL = [*SPARK, *DIESEL]


def worked(sum_, pressure, temperature, **more):
    if sum_ in DIESEL:
        more.setdefault("fuel_per_litre", 50)
    return sum_(pressure=pressure, temperature=temperature, **more)


@pytest.mark.parametrize("sum_", ALL)
def test_reference_air_needs_no_correction(sum_):
    got = worked(sum_, 99, 25, power=30)
    assert got.value == pytest.approx(1, abs=1e-12)
    assert got.working.answers["corrected power"].value == pytest.approx(30)
    assert got.working.answers["inside the range"].value == "yes"


@pytest.mark.parametrize("sum_", ALL)
@given(p=st.floats(80, 105), t=st.floats(-10, 45), less=st.floats(0.1, 10), hot=st.floats(1, 10))
def test_thinner_and_hotter_air_is_corrected_more(sum_, p, t, less, hot):
    assert worked(sum_, p - less, t).value > worked(sum_, p, t).value
    assert worked(sum_, p, t + hot).value > worked(sum_, p, t).value


@pytest.mark.parametrize("sum_", ALL)
def test_damp_air_is_corrected_more_than_dry(sum_):
    dry, damp = (worked(sum_, 98, 30, humidity=share).value for share in (0, 80))
    assert damp > dry
    assert dry == worked(sum_, 98, 30).value


@pytest.mark.parametrize(
    ("t", "printed"), [(20, "2.339"), (25, "3.169"), (30, "4.246"), (45, "9.593")]
)
def test_full_vapour_pressure(t, printed):
    # Saturation of water vapour in kPa, steam tables as psychrometric handbooks print them (from
    # memory); the Magnus formula is good to four parts in a thousand of them.
    got = correction_iso_1585_si(pressure=99, temperature=t, humidity=50).working.value("p_s")
    assert got == pytest.approx(float(printed), rel=4e-3)


def test_full_vapour_table_goes_before_the_formula():
    table = correction_iso_3046(pressure=87, temperature=45, humidity=80, saturation=9.593)
    formula = correction_iso_3046(pressure=87, temperature=45, humidity=80)
    assert table.working.value("p_s") == 9.593
    assert formula.value == pytest.approx(table.value, rel=1e-3)


@pytest.mark.parametrize(
    ("sum_", "pressure", "temperature", "words"),
    [
        (correction_iso_1585_si, 99, 40, "15 to 35 °C"),
        (correction_iso_1585_si, 90, 25, "0.93 to 1.07"),
        (correction_iso_1585_ci, 99, 45, "10 to 40 °C"),
        (correction_un_r85_ci, 79, 25, "80 to 110 kPa"),
        (correction_sae_j1349, 90, 20, "0.93 to 1.07"),
    ],
)
def test_outside_its_range_a_standard_says_so_by_name(sum_, pressure, temperature, words):
    working = worked(sum_, pressure, temperature).working
    told = working.answers["inside the range"].value
    assert told.startswith("no: ")
    assert words in told
    assert working.answers["standard"].value in told
    assert any(line.startswith("Outside the range") for line in working.shown())


def test_inches_of_mercury_typed_for_kilopascals_are_refused():
    with pytest.raises(NotPossible, match=r"pressure 29\.1 kPa must be at least 30"):
        correction_sae_j1349(pressure=29.1, temperature=20)


@pytest.mark.parametrize("sum_", ALL)
def test_vapour_that_presses_harder_than_the_air_is_refused(sum_):
    with pytest.raises(NotPossible, match="must be below the barometer"):
        worked(sum_, 80, 98, humidity=100)


def test_the_standards_differ_for_a_turbocharged_engine():
    # ISO 1585 as read: 0.7 and 1.2, liquid cooled 0.7 and 0.7. UN R85 from memory: 0.7 and 1.5.
    hot = {"pressure": 95, "temperature": 40, "fuel_per_litre": 100, "boost": 1.6}
    iso = correction_iso_1585_ci(**hot, aspiration="turbo").working.answers
    cooled = correction_iso_1585_ci(**hot, aspiration="turbo liquid-cooled").working.answers
    un = correction_un_r85_ci(**hot, aspiration="turbo").working.answers
    assert iso["air factor"].value == pytest.approx((99 / 95) ** 0.7 * (313 / 298) ** 1.2)
    assert cooled["air factor"].value == pytest.approx((99 / 95) ** 0.7 * (313 / 298) ** 0.7)
    assert un["air factor"].value == pytest.approx((99 / 95) ** 0.7 * (313 / 298) ** 1.5)
    assert iso["standard"].value != un["standard"].value


def test_the_engine_factor_stays_within_its_bounds():
    # Least 0.2 in ISO 1585 as read, 0.3 in UN R85 from memory; 1.2 at most in both.
    for sum_, least in ((correction_iso_1585_ci, 0.2), (correction_un_r85_ci, 0.3)):
        low, high = (
            sum_(pressure=95, temperature=25, fuel_per_litre=q).working.answers["engine factor"]
            for q in (10, 90)
        )
        assert (low.value, high.value) == (least, 1.2)


def test_boost_divides_the_fuel():
    boosted = worked(correction_iso_1585_ci, 95, 25, fuel_per_litre=100, boost=2)
    assert boosted.value == worked(correction_iso_1585_ci, 95, 25, fuel_per_litre=50).value


@pytest.mark.parametrize("sum_", DIESEL)
def test_fuel_for_each_litre_from_its_rate(sum_):
    # Two-stroke of the same rate: half the fuel for each cycle.
    rate = {"fuel": 2.5, "displacement": 2.5, "speed": 2000}
    four, two = (
        sum_(pressure=95, temperature=30, cycle=cycle, **rate).working.answers
        for cycle in ("four-stroke", "two-stroke")
    )
    assert four["fuel per litre"].value == pytest.approx(60)
    assert two["fuel per litre"].value == pytest.approx(30)


def test_the_standards_agree_for_a_diesel_without_blower_within_their_bounds():
    iso, un = (worked(sum_, 95, 30).working.answers["correction"] for sum_ in DIESEL)
    assert iso.value == un.value == pytest.approx(1.05431**0.66, rel=1e-5)


def test_fuel_is_given_once():
    with pytest.raises(NotPossible, match="each enough alone"):
        worked(correction_iso_1585_ci, 95, 25, fuel=2, displacement=2, speed=1000)
    with pytest.raises(NotPossible, match="displacement and speed together"):
        correction_un_r85_ci(pressure=95, temperature=25, fuel=2)


def test_iso_3046_leaves_reference_power_at_reference():
    got = correction_iso_3046(
        pressure=100, temperature=25, humidity=30, saturation=3.17, power=30, consumption=250
    ).working.answers
    assert got["power"].value == pytest.approx(30)
    assert got["consumption"].value == pytest.approx(250)


def test_iso_3046_takes_more_fuel_where_it_gives_less_power():
    got = correction_iso_3046(pressure=80, temperature=35, humidity=60).working.answers
    assert got["power factor"].value < 1 < got["consumption factor"].value


def test_iso_3046_refuses_air_that_leaves_no_power():
    with pytest.raises(NotPossible, match="would leave no power"):
        correction_iso_3046(pressure=30, temperature=60, humidity=50, efficiency=50)


def test_the_older_basis_lies_four_per_cent_above_sae_j1349():
    # 99 kPa and 77 °F on the older basis: 29.92/29.2347·√(536.7/519.7), worked out.
    assert correction_older_60f(pressure=29.2347, temperature=77).value == as_printed("1.0400")


def test_the_older_basis_corrects_the_power():
    got = correction_older_60f(pressure=29.5, temperature=80, vapour=0.5, power=40)
    assert got.working.answers["corrected power"].value == pytest.approx(40 * got.value)


def test_the_older_basis_takes_humidity_or_vapour():
    with pytest.raises(NotPossible, match="each enough alone"):
        correction_older_60f(pressure=29, temperature=80, humidity=50, vapour=0.5)
    with pytest.raises(NotPossible, match="must be below the barometer"):
        correction_older_60f(pressure=29, temperature=80, vapour=29)
    by_share = correction_older_60f(pressure=29, temperature=80, humidity=50)
    by_vapour = correction_older_60f(
        pressure=29, temperature=80, vapour=by_share.working.value("p_v")
    )
    assert by_share.value == pytest.approx(by_vapour.value)


@given(speed=st.floats(0, 3000), factor=st.floats(1.001, 1.3))
def test_friction_makes_the_correction_larger(speed, factor):
    got = correction_with_friction(
        torque=150, displacement=200, piston_speed=speed, correction=factor
    )
    assert got.value > 150 * factor


def test_friction_stands_straight_between_the_rows_of_its_table():
    got = correction_with_friction(
        torque=150, displacement=1, piston_speed=750, correction=1
    ).working.answers
    assert got["friction"].value == pytest.approx(0.1125)
    assert got["corrected torque"].value == pytest.approx(150)


@given(low=st.floats(-500, 15000), up=st.floats(1, 10000))
def test_higher_up_is_never_more_power(low, up):
    at = [altitude_derate(power=100, altitude=h).value for h in (low, low + up)]
    assert at[1] <= at[0] <= 100
    if low >= 500:
        assert at[1] < at[0]


def test_what_is_lost_is_told():
    told = altitude_derate(power=100, altitude=2500).working.answers
    assert told["loss"].value == pytest.approx(6)
    assert derate(power=100, losses=[10, 20]).working.answers["share left"].value == pytest.approx(
        0.72
    )


def test_nothing_is_lost_up_to_the_free_height():
    assert altitude_derate(power=100, altitude=500).value == 100
    with pytest.raises(NotPossible, match="would leave nothing"):
        altitude_derate(power=100, altitude=30000, loss=5)


@given(losses=st.lists(st.floats(0.1, 20), min_size=2, max_size=4))
def test_losses_added_take_more_than_losses_multiplied(losses):
    assert derate(power=50, losses=losses, together="added").value < (
        derate(power=50, losses=losses).value
    )


def test_losses_that_leave_nothing_are_refused():
    with pytest.raises(NotPossible, match="leave nothing"):
        derate(power=50, losses=[60, 50], together="added")
    with pytest.raises(NotPossible, match="one loss at least"):
        derate(power=50, losses=[])
