import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from published.as_printed import as_printed
from shimstock.trade.numbers.limits import Limit, Range, parse_limit, parse_range
from shimstock.trade.numbers.quantity import (
    NotUnderstood,
    Quantity,
    convert,
    decimals_for,
    kind,
    parse,
    show,
)
from shimstock.trade.numbers.unit_names import UNITS, find


@pytest.mark.parametrize(
    ("typed", "unit", "value"),
    [
        ("2 1/2 in", "in", 2.5),
        ('2-1/2"', "in", 2.5),
        ("2.4985", "in", 2.4985),
        ("1.5 thou", "in", 0.0015),
        ("15 thou", "in", 0.015),
        ("1 1/2 thou", "in", 0.0015),
        ("63.5 mm", "in", 2.5),
        ("63,5 mm", "in", 2.5),
        ("63,46 mm", "mm", 63.46),
        ("12 psi", "psi", 12),
        ("24 lbf.ft", "lbf.ft", 24),
        ("24 ft-lb", "lbf.ft", 24),
        ("24 lb ft", "lbf.ft", 24),
        ("700 rpm", "rpm", 700),
        ("1/16", "in", 0.0625),
        ("4.5/1000", "in", 0.0045),
        ("½ in", "in", 0.5),
        ("2½″", "in", 2.5),
        ("2 ½″", "in", 2.5),
        ("3′", "in", 36),
        (".0015", "in", 0.0015),
        ("-0.002", "in", -0.002),
        ("−0.002", "in", -0.002),
        ("−2 1/2", "in", -2.5),
        ("+0.020 in", "in", 0.02),
        ("0,125", "in", 0.125),
        ("160 F", "degF", 160),
        ("100 °C", "degF", 212),
        ("160°", "degF", 160),
        ("1,250.5", "psi", 1250.5),
        ("1.250,5", "psi", 1250.5),
        ("1,250,000", "count", 1_250_000),
        ("5' 3\"", "in", 63),
        ("5 ft 3 1/2 in", "in", 63.5),
        ("-5' 3\"", "in", -63),
        ("3 %", "%", 3),
        ("25 min", "min", 25),
        ("1 h 20 min", "min", 80),
        ("1h20min", "min", 80),
        ("10 s", "s", 10),
        ("0.22 uF", "uF", 0.22),
        ("0.22 µF", "uF", 0.22),
        ("1.4 ohm", "ohm", 1.4),
        ("24.2 cc", "cc", 24.2),
        ("28.1 V", "V", 28.1),
        ("1.265 sg", "sg", 1.265),
        ("2.5 kN", "N", 2500),
        ("62 lb", "lbf", 62),
        ("3 1/4 turns", "deg", 1170),
        ("5 ", "in", 5),
    ],
)
def test_what_people_type_in_a_shed(typed, unit, value):
    got = parse(typed, unit=unit)
    assert got.value == value
    assert got.unit == unit
    assert got.typed == typed


def test_the_unit_read_or_assumed_is_kept():
    assert parse("1.5 thou", unit="in") == Quantity(0.0015, "in", "1.5 thou", "thou")
    assert parse("1.5", unit="in").said == "in"
    assert parse("24 ft-lb", unit="N.m").said == "lbf.ft"


@pytest.mark.parametrize(
    ("typed", "would_do"),
    [
        ("1,250", ("1.250", "1250")),
        ("2 - 1/2", ("2 1/2", "1.5")),
        ("1/16/2", ("1/16",)),
        ("1.5.2", ("1.52", "15.2")),
        ("50 000 623", ("50000623",)),
        ("1/0", ("1/16",)),
    ],
)
def test_ambiguous_text_is_answered_with_what_would_be_read(typed, would_do):
    with pytest.raises(NotUnderstood) as error:
        parse(typed, unit="in")
    assert error.value.typed == typed
    assert error.value.would_do == would_do
    assert error.value.wrong in str(error.value)
    for text in would_do:
        parse(text, unit="in")


@pytest.mark.parametrize(
    "typed",
    ["5 7/0", "3/4 1/2", "2 5/4", "", "  ", "worn", "nan", "inf", "1e400", "1e-400", "1 2", "--5",
     "5..6", "5-", "1-2", "½½", "5,75,2", "1_000", "5.7592 furlongs", "9" * 60, "5 in 3 in", "٣",
     "5\x00", "1/2/", "in", "5 lb", "20 °C", "5 ft 3 lb", "3 in 5 ft"],
)  # fmt: skip
def test_what_cannot_be_read_says_what_would_do(typed):
    with pytest.raises(NotUnderstood) as error:
        parse(typed, unit="in", what="liner bore")
    assert error.value.typed == typed
    assert error.value.would_do
    for text in error.value.would_do:
        parse(text, unit="in")


def test_another_kind_names_both_kinds():
    with pytest.raises(NotUnderstood) as error:
        parse("12 psi", unit="in", what="liner bore")
    assert str(error.value) == (
        "12 psi is a pressure; liner bore is a length, in inches; 5.7592 or 146.28 mm would do"
    )


@given(st.text(max_size=20))
def test_any_text_is_understood_or_refused_kindly(typed):
    try:
        parse(typed, unit="in")
    except NotUnderstood as error:
        assert error.would_do


measured = st.sampled_from([u.name for u in UNITS])


@given(st.floats(-1e4, 1e4), measured)
def test_what_is_shown_is_read_back(value, unit):
    got = parse(show(value, unit), unit=unit)
    assert got.unit == unit
    assert abs(got.value - value) <= 0.5001 * 10.0 ** -decimals_for(unit)


@pytest.mark.parametrize(
    ("value", "unit", "shown"),
    [
        (5.75, "in", "5.7500 in"),
        (1.5, "thou", "1.5 thou"),
        (146.05, "mm", "146.050 mm"),
        (300.0, "psi", "300 psi"),
        (24.5, "lbf.ft", "24.5 lbf.ft"),
        (-0.00001, "in", "0.0000 in"),
        (1.265, "sg", "1.265 sg"),
        (3.0, "%", "3 %"),
    ],
)
def test_units_are_shown_in_trade_spelling(value, unit, shown):
    assert show(value, unit) == shown


def test_decimals_can_be_asked_for():
    assert show(0.00012, "in", 5) == "0.00012 in"


FLOATS = pint.UnitRegistry(autoconvert_offset_to_baseunit=True)


# How Pint writes the units whose names here it does not know; the last are no units to it.
PINT_WRITES = {
    "in": "inch", "mm2": "mm**2", "cm2": "cm**2", "m2": "m**2", "in2": "inch**2", "ft2": "ft**2",
    "ksi": "kpsi", "N/cm2": "N/cm**2",
    "inHg": "inHg", "kgf": "kgf", "tonf": "force_ton", "lbf.ft": "lbf*ft", "lbf.in": "lbf*inch",
    "N.m": "N*m", "N.mm": "N*mm", "kN.m": "kN*m", "kgf.m": "kgf*m", "lbf/in": "lbf/inch",
    "deg": "degree", "arcmin": "arcminute", "rad": "radian", "turns": "turn",
    "K": "delta_degC", "Fdeg": "delta_degF", "um/m.K": "um/m/delta_degC",
    "uin/in.F": "uinch/inch/delta_degF", "min": "minute", "h": "hour", "days": "day",
    "cc": "cm**3", "mm3": "mm**3", "m3": "m**3", "in3": "inch**3", "l": "litre",
    "gal": "US_liquid_gallon", "imp.gal": "imperial_gallon", "qt": "US_liquid_quart",
    "pt": "US_pint", "fl.oz": "US_fluid_ounce", "t": "tonne", "kg/m3": "kg/m**3",
    "g/cc": "g/cm**3", "lb/gal": "lb/US_liquid_gallon", "lb/ft3": "lb/ft**3",
    "kohm": "kiloohm", "ohm/kft": "ohm/kilofoot", "uF": "microfarad", "mH": "millihenry",
    "ft.lbf.energy": "ft*lbf", "hp.h": "hp*hour", "J/kg.K": "J/kg/delta_degC",
    "Btu/lb.F": "Btu_it/lb/delta_degF", "g/kWh": "g/kWh", "lb/hp.h": "lb/hp/hour",
    "hp.h/gal": "hp*hour/US_liquid_gallon", "kWh/l": "kWh/litre", "l/kWh": "litre/kWh",
    "gal/hp.h": "US_liquid_gallon/hp/hour", "kg/h": "kg/hour", "lb/h": "lb/hour",
    "l/min": "litre/minute", "l/h": "litre/hour", "gal/min": "US_liquid_gallon/minute",
    "gal/h": "US_liquid_gallon/hour", "km/h": "km/hour", "ft/min": "ft/minute",
    "m/s2": "m/s**2", "ft/s2": "ft/s**2", "mm2/s": "mm**2/s", "m2/l": "m**2/litre",
    "ft2/gal": "ft**2/US_liquid_gallon", "per.bar": "1/bar", "per.s": "1/s",
    "per.min": "1/minute", "Btu/lb": "Btu_it/lb", "Btu": "Btu_it",
}  # fmt: skip
NO_UNIT_TO_PINT = ("sg", "%", "count", "tpi")


# Referee: Pint with its own numbers, beside the exact definitions used here.
@pytest.mark.parametrize(
    "have", [u for u in UNITS if u.name not in NO_UNIT_TO_PINT], ids=lambda u: u.name
)
def test_conversions_agree_with_pint_in_floats(have):
    for want in UNITS:
        if want.kind == have.kind:
            spelt = [PINT_WRITES.get(each.name, each.name) for each in (have, want)]
            expected = FLOATS.Quantity(12.5, spelt[0]).to(spelt[1]).magnitude
            assert convert(12.5, have.name, want.name) == pytest.approx(expected, rel=1e-7)


# Source: 1 in = 25.4 mm, 1 lbf = 4.4482216152605 N exactly (NIST SP 811, appendix B).
def test_exact_definitions_stay_exact():
    assert convert(146.05, "mm", "in") == 5.75
    assert convert(1, "in", "mm") == 25.4
    assert convert(1, "lbf", "N") == 4.4482216152605
    assert convert(-40, "degC", "degF") == -40


# Source: NIST SP 811, appendix B.8, factors as printed (those in E+00 form written out).
@pytest.mark.parametrize(
    ("have", "want", "printed"),
    [
        ("thou", "um", "25.4"),
        ("ft", "m", "0.3048"),
        ("cm", "mm", "10"),
        ("psi", "kPa", "6.894757"),
        ("bar", "kPa", "100"),
        ("MPa", "kPa", "1000"),
        ("kgf", "N", "9.80665"),
        ("kN", "N", "1000"),
        ("lbf.ft", "N.m", "1.355818"),
        ("lbf.in", "N.m", "0.1129848"),
        ("kgf.m", "N.m", "9.80665"),
        ("rad", "deg", "57.29578"),
        ("turns", "deg", "360"),
        ("h", "s", "3600"),
        ("days", "h", "24"),
        ("min", "s", "60"),
        ("gal", "l", "3.785412"),
        ("imp.gal", "l", "4.54609"),
        ("qt", "l", "0.9463529"),
        ("pt", "l", "0.4731765"),
        ("fl.oz", "cc", "29.57353"),
        ("l", "cc", "1000"),
        ("oz", "g", "28.34952"),
        ("lb", "kg", "0.4535924"),
        ("hp", "W", "745.6999"),
        ("kW", "W", "1000"),
        ("mph", "km/h", "1.609344"),
        ("V", "mV", "1000"),
        ("kohm", "ohm", "1000"),
    ],
)
def test_nist_sp_811_factors(have, want, printed):
    assert convert(1, have, want) == as_printed(printed)
    assert convert(convert(1, have, want), want, have) == pytest.approx(1, rel=1e-12)


def test_every_unit_of_a_kind_is_tied_to_another():
    for unit in UNITS:
        others = [u.name for u in UNITS if u.kind == unit.kind and u is not unit]
        alone = ("A", "uF", "mH", "sg", "%", "tpi", "per.bar", "cP", "mm2/s", "count")
        assert others or unit.name in alone


def test_kinds():
    assert kind("in") == "length"
    assert kind("psi") == "pressure"
    with pytest.raises(ValueError, match="one cannot become the other"):
        convert(1, "in", "psi")
    with pytest.raises(KeyError, match="furlong"):
        kind("furlong")


def test_every_spelling_means_one_unit():
    for unit in UNITS:
        for spelling in unit.spellings:
            assert find(spelling) is unit, spelling


@pytest.mark.parametrize(
    ("typed", "low", "high", "unit"),
    [
        ("6.1250 .. 6.1260 in", 6.125, 6.126, "in"),
        ("0.012 in", 0.012, 0.012, "in"),
        ("10 s ..", 10, None, "s"),
        (".. 5 in", None, 5, "in"),
        ("-0.002..0.003 mm", -0.002, 0.003, "mm"),
        ("1/16 .. 1/8 in", 0.0625, 0.125, "in"),
        ("580 .. 620 rpm", 580, 620, "rpm"),
        ("2 thou .. 0.005 in", 0.002, 0.005, "in"),
    ],
)
def test_ranges(typed, low, high, unit):
    assert parse_range(typed) == Range(low, high, unit, typed)


@pytest.mark.parametrize("typed", ["", "..", "5 .. 3 in", "5", "1 .. 2 .. 3 in", "1 in .. 2 psi"])
def test_what_is_no_range_is_refused(typed):
    with pytest.raises(NotUnderstood) as error:
        parse_range(typed)
    assert error.value.typed == typed


def test_a_reading_on_the_limit_is_within_it():
    assert parse_limit("max 0.0010 in").holds(5.7510 - 5.7500)
    assert not parse_limit("max 0.0010 in").holds(0.00101)
    assert parse_limit("min 300 psi").holds(300)
    assert not parse_limit("min 300 psi").holds(299)
    assert parse_range("10 s ..").holds(1e9)
    assert not parse_range("6.1250 .. 6.1260 in").holds(6.1261)


def test_limits_in_another_unit():
    assert parse_limit("max 5.7600 in").convert("mm") == Limit(
        "max", 146.304, "mm", "max 5.7600 in"
    )
    assert parse_range("10 s ..").convert("min").high is None
    for wrong in ("6.1 in", "max", "max 6.1", "most 6 in"):
        with pytest.raises(NotUnderstood):
            parse_limit(wrong)


@pytest.mark.parametrize(
    ("typed", "unit", "value"),
    [
        ("1.5 thou of an inch", "in", 0.0015),
        ("2 thousandths of an inch", "in", 0.002),
        ("3 thousandths", "in", 0.003),
        ("40 lbs/in2", "psi", 40),
        ("40 lb per sq in", "psi", 40),
        ("40 lbs. per sq. in.", "psi", 40),
        ("700 r.p.m.", "rpm", 700),
    ],
)
def test_units_as_old_books_spell_them(typed, unit, value):
    assert parse(typed, unit=unit).value == pytest.approx(value)
