import pytest
from hypothesis import given
from hypothesis import strategies as st

from published.as_printed import as_printed
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.sums.electrics._wire import Gauge, named, parse_gauge
from shimstock.trade.sums.electrics.fuse_size import SIZES, fuse_size
from shimstock.trade.sums.electrics.joint_drop import joint_drop
from shimstock.trade.sums.electrics.starter_cable import starter_cable
from shimstock.trade.sums.electrics.starter_drop_limit import starter_drop_limit
from shimstock.trade.sums.electrics.voltage_drop import voltage_drop
from shimstock.trade.sums.electrics.wire_gauge import wire_gauge
from shimstock.trade.sums.electrics.wire_resistance import wire_resistance
from shimstock.trade.sums.electrics.wire_size import wire_size

GAUGES = [Gauge(n) for n in range(-3, 41)]


@pytest.mark.parametrize("gauge", GAUGES, ids=named)
def test_every_gauge_is_read_as_it_is_named_and_found_by_its_area(gauge):
    assert parse_gauge(named(gauge)) == gauge
    area = wire_size(gauge=gauge).value
    assert wire_gauge(area=area).working.answers["nearest gauge"].value == named(gauge)


@pytest.mark.parametrize(
    ("text", "gauge"), [("0", 0), ("00", -1), ("0000", -3), ("AWG 10", 10), ("no. 6", 6)]
)
def test_a_gauge_may_be_written_in_other_ways(text, gauge):
    assert parse_gauge(text) == gauge


@pytest.mark.parametrize("text", ["5/0", "41", "0/0", "thick", "", "2.5", "-1", "00000", "²"])
def test_what_is_no_gauge_is_told(text):
    with pytest.raises(NotUnderstood, match="2/0"):
        parse_gauge(text)


def test_three_gauges_halve_the_copper_and_six_the_diameter():
    # Rule of thumb of the American wire gauge: 92^(3/39) is 1.416, its square 2.005.
    four, one = (wire_size(gauge=Gauge(n)).value for n in (4, 1))
    assert one / four == pytest.approx(2.005, abs=0.001)


def test_copper_area_of_common_gauges():
    # Wire tables print 67.4 mm² for 2/0, 42.4 for 1 and 2.08 for 14 (from memory).
    for gauge, printed in ((-1, "67.4"), (1, "42.4"), (14, "2.08")):
        told = wire_size(gauge=Gauge(gauge)).working.answers
        assert told["area"].value == as_printed(printed)
        number = wire_gauge(diameter=25.4 * told["diameter"].value).working.answers["number"]
        assert number.value == pytest.approx(gauge)


def test_a_bad_joint_gets_hot():
    assert joint_drop(current=200, resistance=0.01).working.answers["heat"].value == 400


def test_a_wire_beyond_the_gauges_is_refused():
    with pytest.raises(NotPossible, match="beyond the gauges"):
        wire_gauge(area=150)
    with pytest.raises(NotPossible, match="by diameter or by area"):
        wire_gauge()


@given(area=st.floats(0.5, 120), length=st.floats(0.1, 20), warm=st.floats(-30, 100))
def test_resistance_rises_with_length_and_warmth_and_falls_with_copper(area, length, warm):
    base = wire_resistance(area=area, length=length, temperature=warm).value
    assert wire_resistance(area=area, length=length, temperature=warm + 1).value > base
    assert wire_resistance(area=area, length=length + 1, temperature=warm).value > base
    assert wire_resistance(area=area + 1, length=length, temperature=warm).value < base


def test_warm_copper_resists_by_the_usual_coefficient():
    # 0.00393 for each degree from 20 °C, from memory of IEC 60028.
    cold, hot = (wire_resistance(gauge=Gauge(1), temperature=t).value for t in (20, 70))
    assert hot / cold == pytest.approx(1.1965)


def test_a_wire_is_given_once():
    for given_ in ({}, {"gauge": Gauge(1), "area": 50}):
        with pytest.raises(NotPossible, match="by gauge or by area"):
            wire_resistance(**given_)


@given(current=st.floats(1, 400), out=st.floats(0.5, 3), back=st.floats(0, 3))
def test_the_drop_is_that_of_the_cable_as_one_joint(current, out, back):
    got = voltage_drop(current=current, out=out, back=back, system=24, gauge=Gauge(-1))
    ohms = wire_resistance(gauge=Gauge(-1), length=out + back).value
    assert got.value == pytest.approx(joint_drop(current=current, resistance=ohms).value)
    assert got.working.answers["left"].value == pytest.approx(24 - got.value)


def test_a_drop_weighs_twice_on_half_the_voltage():
    shares = [
        voltage_drop(current=200, out=2, system=u, area=50).working.answers["share"].value
        for u in (6, 12, 24)
    ]
    assert shares[0] == pytest.approx(2 * shares[1])
    assert shares[0] == pytest.approx(4 * shares[2])


def test_a_cable_that_takes_all_the_voltage_is_refused():
    with pytest.raises(NotPossible, match="would take all of 6 V"):
        voltage_drop(current=300, out=10, system=6, gauge=Gauge(14))


@given(current=st.floats(5, 400), out=st.floats(0.5, 4), share=st.floats(1, 10))
@pytest.mark.parametrize("system", [6, 12, 24])
def test_the_cable_chosen_is_the_thinnest_that_will_do(system, current, out, share):
    try:
        got = starter_cable(current=current, out=out, system=system, share=share).working
    except NotPossible as refused:
        assert "more than 4/0" in str(refused)
        return
    gauge = parse_gauge(got.answers["gauge"].value)
    assert got.answers["area"].value == pytest.approx(wire_size(gauge=gauge).value)
    assert got.answers["share lost"].value <= share * (1 + 1e-8)
    thinner = Gauge(gauge + (1 if gauge < 2 else 2))
    if thinner <= 40:
        over = voltage_drop(current=current, out=out, system=system, gauge=thinner)
        assert over.working.answers["share"].value > share * (1 - 1e-8)


def test_a_need_of_exactly_one_gauge_takes_that_gauge():
    for gauge in (-3, -1, 1, 4):
        drop = voltage_drop(current=200, out=2, system=12, gauge=Gauge(gauge))
        share = drop.working.answers["share"].value
        got = starter_cable(current=200, out=2, system=12, share=share)
        assert got.working.answers["gauge"].value == named(gauge)


def test_without_a_share_the_manuals_limit_holds():
    got = starter_cable(current=300, out=2, system=12).working
    assert got.value("U_m") == pytest.approx(starter_drop_limit(current=300).value)
    with pytest.raises(NotPossible, match="more than 4/0"):
        starter_cable(current=3000, out=2, system=6)


def test_a_measured_drop_is_judged():
    for volts, said in ((0.55, "yes"), (0.65, "no: clean and remake its joints")):
        told = starter_drop_limit(current=300, measured=volts).working.answers
        assert told["within the limit"].value == said


@given(currents=st.lists(st.floats(0.1, 15), min_size=1, max_size=5))
def test_the_fuse_is_the_next_size_above_the_current(currents):
    least = sum(currents) * 1.25
    fuse = fuse_size(currents=currents).value
    assert fuse >= least * (1 - 1e-9)
    assert all(size < least for size in SIZES if size < fuse)


def test_a_current_of_exactly_a_size_takes_that_size():
    assert fuse_size(currents=[8]).value == 10
    assert fuse_size(currents=[4.1, 3.9]).value == 10


def test_a_wire_thinner_than_its_fuse_is_refused():
    with pytest.raises(NotPossible, match="wire 10 A must not be below the fuse, 15 A"):
        fuse_size(currents=[12], wire=10)
    with pytest.raises(NotPossible, match="largest fuse"):
        fuse_size(currents=[90])
    with pytest.raises(NotPossible, match="one current at least"):
        fuse_size(currents=[])
