from math import sqrt

import pytest

from shimstock.trade.numbers.instruments import KNOWN, good_to, named
from shimstock.trade.numbers.quantity import NotUnderstood

# How books name their instruments, with the unit of the figure. Common practice, no source.
TEXTS = [
    ("bore gauge set on a micrometer", "in", "bore gauge"),
    ("depth gauge or dial on straight-edge", "in", "depth gauge"),
    ("outside micrometer on skirt; subtract", "in", "outside micrometer"),
    ("workshop scale", "oz", "workshop scale"),
    ("feeler gauge with a new ring", "in", "feeler gauge"),
    ("bore gauge and micrometer", "in", "bore gauge"),
    ("alignment mandrel and dial", "in", "alignment mandrel and dial"),
    ("bore gauge less journal, or crushable gauge strip", "in", "bore gauge"),
    ("dial gauge on shaft end", "in", "dial gauge"),
    ("straight-edge and feelers", "in", "straight-edge and feelers"),
    ("small hole gauge and micrometer", "in", "small hole gauge and micrometer"),
    ("micrometer and hole gauge", "in", "small hole gauge and micrometer"),
    ("dividers and rule", "in", "dividers and rule"),
    ("rule on surface plate", "in", "rule"),
    ("spring tester", "lbf", "spring tester"),
    ("dial on tooth flank, one gear held", "in", "dial gauge"),
    ("rule or dial at tip", "in", "rule"),
    ("hand tachometer on shaft end; not the dash", "rpm", "hand tachometer"),
    ("spill pipe and flywheel marks", "deg", "spill pipe and flywheel marks"),
    ("pump bench (sent out)", "cc", "pump bench"),
    ("injector hand test pump", "psi", "injector hand test pump"),
    ("injector hand test pump, watch", "s", "watch"),
    ("low-pressure gauge at final filter", "psi", "low-pressure gauge"),
    ("diesel compression gauge in injector hole", "psi", "compression gauge"),
    ("test gauge at gallery", "psi", "pressure gauge"),
    ("pan of water and thermometer", "degF", "thermometer"),
    ("pump and gauge, blanking bungs", "psi", "hand pump and gauge"),
    ("calliper", "in", "calliper"),
    ("spring balance", "lbf", "spring balance"),
    ("inside micrometer", "in", "inside micrometer"),
    ("gauge in remote port", "psi", "hydraulic test gauge"),
    ("voltmeter across the joint", "V", "voltmeter"),
    ("micrometer; subtract", "in", "outside micrometer"),
    ("crushable gauge strip", "in", "crushable gauge strip"),
    ("wire gauge", "in", "wire gauge"),
    ("timing light on flywheel mark", "deg", "timing light"),
    ("capacitance meter and insulation check", "uF", "capacitance meter"),
    ("ohmmeter", "ohm", "ohmmeter"),
    ("rule or drill shank", "in", "rule"),
    ("string and spring balance", "lbf.in", "spring balance on a string"),
    ("straight-edge and rule", "in", "straight-edge and rule"),
    ("steel tape, pin centre to pin centre", "in", "steel tape"),
    ("hydrometer", "sg", "hydrometer"),
    ("torque wrench", "lbf.ft", "torque wrench"),
    ("stopwatch", "min", "watch"),
]


@pytest.mark.parametrize(("text", "unit", "name"), TEXTS)
def test_a_books_instrument_text_is_found(text, unit, name):
    got = named(text, unit)
    assert got.name == name
    assert got.unit == unit
    assert got.u(10) > 0
    assert got.source == "common practice, no source"


def test_one_reading_is_resolution_and_largest_error_together():
    # JCGM 100:2008, 4.3.7 and F.2.2.1: δ/√12 and a/√3.
    micrometer = named("outside micrometer", "in")
    assert micrometer.u(2.25) == pytest.approx(sqrt(0.0001**2 / 12 + 0.0002**2 / 3))
    assert micrometer.expanded(2.25) == 2 * micrometer.u(2.25)
    gauge = named("compression gauge", "psi")
    assert gauge.u(400) == pytest.approx(sqrt(25 / 12 + (5 + 4) ** 2 / 3))


def test_metric_figures_take_the_metric_instrument():
    assert named("dial gauge", "mm").resolution == 0.01
    assert named("dial gauge", "um").resolution == pytest.approx(10)
    assert named("dial gauge", "thou").resolution == pytest.approx(0.5)
    assert named("thermometer", "degC").mpe == 1
    assert named("test gauge", "kPa").resolution == pytest.approx(6.894757)


def test_an_unknown_instrument_is_named_with_what_would_do():
    with pytest.raises(NotUnderstood) as error:
        named("eye", "rpm")
    assert str(error.value) == (
        "eye names no instrument that measures speed of turning; hand tachometer would do"
    )


def test_good_to_is_taken_as_expanded():
    assert good_to(0.0003, "in").expanded(5.75) == pytest.approx(0.0003)


def test_every_instrument_can_be_named_by_its_own_name():
    for _, versions in KNOWN:
        for one in versions:
            assert named(one.name, one.unit).name == one.name


@pytest.mark.parametrize("expanded", [0, -0.0003, float("nan")])
def test_no_gauge_is_good_to_nothing(expanded):
    with pytest.raises(NotUnderstood, match="above nothing"):
        good_to(expanded, "in")
