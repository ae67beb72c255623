"""Limits and fits: tables against their formulas, texts, and what is refused."""

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from published.as_printed import as_printed
from shimstock.trade.numbers.limits import Range
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.units import Mm
from shimstock.trade.sums.fits import _ansi_b4_1
from shimstock.trade.sums.fits._designation import parse_designation
from shimstock.trade.sums.fits._iso286_tables import FINE, GRADES, LOWER, MAIN, UPPER
from shimstock.trade.sums.fits._limits_text import parse_limits
from shimstock.trade.sums.fits._zones import parse_zone
from shimstock.trade.sums.fits.ansi_fit import ansi_fit
from shimstock.trade.sums.fits.fit import fit
from shimstock.trade.sums.fits.hole_and_shaft import hole_and_shaft
from shimstock.trade.sums.fits.iso_fit import iso_fit
from shimstock.trade.sums.fits.iso_limits import iso_limits
from shimstock.trade.sums.fits.shaft_for_hole import shaft_for_hole


def answers(worked):
    return {name: each.value for name, each in worked.working.answers.items()}


def limits_of(size, zone):
    return iso_limits(size=Mm(size), zone=parse_zone(zone))


def made(designation):
    return iso_fit(designation=parse_designation(designation)).value


# Limits of holes in the published tables of ISO 286-2 (from memory), in mm.
@pytest.mark.parametrize(
    ("size", "zone", "low", "high"),
    [
        (25, "K7", "24.985", "25.006"),
        (25, "M7", "24.979", "25.000"),
        (25, "N7", "24.972", "24.993"),
        (25, "P7", "24.965", "24.986"),
        (25, "S7", "24.952", "24.973"),
        (25, "K6", "24.989", "25.002"),
        (10, "N9", "9.964", "10.000"),
        (30, "F8", "30.020", "30.053"),
        (300, "M6", "299.959", "299.991"),
        (30, "JS7", "29.9895", "30.0105"),
        (30, "js6", "29.9935", "30.0065"),
        (30, "k6", "30.002", "30.015"),
        (30, "k8", "30.000", "30.033"),
        (2, "P7", "1.984", "1.994"),
    ],
)
def test_iso_286_2_limits(size, zone, low, high):
    got = limits_of(size, zone)
    assert got.value.low == as_printed(low)
    assert got.value.high == as_printed(high)
    assert got.working.disagreements() == []


def test_the_upper_end_belongs_to_its_range():
    # ISO 286-1: over … up to and including; Ø30 belongs to 18 to 30.
    assert limits_of(30, "H7").value.high == as_printed("30.021")
    assert limits_of(30.001, "H7").working.value("IT_h") == 25


# ISO 286-1, the formulas behind the tables; D is the geometric mean of the range.
MEANS = [(low * high) ** 0.5 for low, high in zip((1, *MAIN[:-1]), MAIN, strict=True)]


@pytest.mark.parametrize(("grade", "share"), [(6, 10), (7, 16), (8, 25), (9, 40)])
def test_iso_286_1_grades_follow_their_formula(grade, share):
    # Within 1.7 µm of the table over 3 to 500 mm; the table rounds.
    for mean, row in list(zip(MEANS, GRADES[grade], strict=True))[1:]:
        i = 0.45 * mean ** (1 / 3) + 0.001 * mean
        assert row == pytest.approx(share * i, abs=1.7)


@pytest.mark.parametrize(
    ("row", "factor", "power"),
    [
        (UPPER["d"], -16, 0.44),
        (UPPER["e"], -11, 0.41),
        (UPPER["f"], -5.5, 0.41),
        (UPPER["g"], -2.5, 0.34),
        (LOWER["n"], 5, 0.34),
    ],
)
def test_iso_286_1_deviations_follow_their_formula(row, factor, power):
    # ISO 286-1, formulas for fundamental deviations (from memory); the tables round.
    for mean, entry in list(zip(MEANS, row, strict=True))[1:]:
        assert entry == pytest.approx(factor * mean**power, rel=0.04, abs=1)


def test_iso_286_1_close_fits_follow_their_formulas():
    # ISO 286-1, formulas for fundamental deviations (from memory): m = IT7 − IT6,
    # s = IT7 + 0.4·D and u = IT7 + D above 50 mm; the tables round.
    for i, high in enumerate(MAIN[1:], 1):
        assert LOWER["m"][i] == GRADES[7][i] - GRADES[6][i], high
    for i, (low, high) in enumerate(zip((1, *FINE[:-1]), FINE, strict=True)):
        it7 = next(row for end, row in zip(MAIN, GRADES[7], strict=True) if high <= end)
        mean = (low * high) ** 0.5
        if high > 50:
            assert LOWER["s"][i] == pytest.approx(it7 + 0.4 * mean, abs=2)
        if high > 24:
            assert LOWER["u"][i] == pytest.approx(it7 + mean, abs=4)


@pytest.mark.parametrize("text", ["z6", "H4", "H12", "7H", "", "hs6", "Hs7"])
def test_a_zone_that_is_not_held_is_named(text):
    with pytest.raises(NotUnderstood, match="H7 or s6 would do"):
        parse_zone(text)


@pytest.mark.parametrize("size", [0, -5, 501])
def test_a_size_beyond_the_tables_is_named(size):
    with pytest.raises(NotPossible, match="must be above 0 and at most 500"):
        limits_of(size, "H7")


@pytest.mark.parametrize(
    "text", ["50 H7", "H7/s6", "50 s6/H7", "fifty", "501 H7/s6", "0 H7/s6", "50 H7/z6", "50 A9/s6"]
)
def test_what_is_no_fit_is_named(text):
    with pytest.raises(NotUnderstood, match="would do"):
        parse_designation(text)


@pytest.mark.parametrize(
    "text", ["Ø50 H7/s6", "50 mm H7/s6", " 50H7/s6 ", "50 H7-s6", "5 cm H7/s6"]
)
def test_a_fit_is_read_however_it_is_written(text):
    read = parse_designation(text)
    assert (read.size, read.hole.name, read.shaft.name) == (50, "H7", "s6")


def test_an_inch_size_is_turned_into_mm_and_said():
    worked = iso_fit(designation=parse_designation("2 in H7/s6"))
    assert worked.working.shown()[0] == "2 in is 50.8 mm."
    assert answers(worked)["largest hole"] == pytest.approx(50.83)


grades = st.sampled_from(["H7", "H8", "G7", "K7", "N7", "P7", "JS8", "f7", "g6", "k6", "p6", "u6"])


@given(st.floats(0.5, 500), grades)
def test_every_zone_is_as_wide_as_its_grade(size, zone):
    got = limits_of(size, zone)
    assert got.value.high - got.value.low == pytest.approx(1000 * got.working.value("T") / 1000)
    assert got.working.disagreements() == []


@given(st.floats(0.5, 500), grades, grades)
def test_a_fit_is_as_wide_as_both_tolerances(size, one, other):
    worked = fit(hole=limits_of(size, one).value, shaft=limits_of(size, other).value)
    both = sum(limits_of(size, each).working.value("T") for each in (one, other))
    assert worked.value.most - worked.value.least == pytest.approx(both)
    assert worked.working.disagreements() == []


def test_a_fit_names_clearance_or_interference_and_never_both_ends_wrong():
    assert {"least clearance", "most clearance"} <= set(answers(made_of("25 H7/g6")))
    assert {"least interference", "most interference"} <= set(answers(made_of("25 H7/s6")))
    between = set(answers(made_of("25 H7/k6")))
    assert {"most clearance", "most interference"} <= between
    assert not {"least clearance", "least interference"} & between


def made_of(designation):
    return iso_fit(designation=parse_designation(designation))


def test_a_sliding_fit_that_may_just_touch_is_clearance():
    assert made("25 H7/h6").kind == "clearance"
    assert made("25 H7/k6").kind == "transition"
    assert made("25 H7/s6").kind == "interference"


def test_two_measured_parts_in_two_units():
    got = fit(hole=parse_limits("5.7592 in"), shaft=parse_limits("146.05 mm"))
    assert got.value.least == got.value.most == pytest.approx(0.0092)
    assert (got.value.unit, got.value.kind) == ("in", "clearance")
    assert "146.05 mm, is taken in in" in got.working.shown()[0]


def test_an_open_end_makes_no_fit():
    whole = parse_limits("1 .. 2 in")
    with pytest.raises(NotPossible, match="both ends"):
        fit(hole=Range(1, None, "in", "1 in .."), shaft=whole)
    with pytest.raises(NotPossible, match="both ends"):
        shaft_for_hole(hole=Range(None, 1, "in", ".. 1 in"), clearance=0.1)


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("37.50 .. 37.52 mm", 37.5, 37.52),
        ("30 +0.020/0 mm", 30, 30.02),
        ("30 −0.005/−0.018 mm", 29.982, 29.995),
        ("30 -0.018/-0.005 mm", 29.982, 29.995),
        ("25 ± 0.01 mm", 24.99, 25.01),
        ("25 +/- 0.01 mm", 24.99, 25.01),
        ("1.2495 in", 1.2495, 1.2495),
        ("1 1/4 in", 1.25, 1.25),
    ],
)
def test_limits_are_read_as_they_are_written(text, low, high):
    got = parse_limits(text)
    assert (got.low, got.high) == (low, high)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("37.5", "names no unit"),
        ("12 psi", "no length"),
        ("1 in ..", "both ends"),
        ("0 mm", "above 0"),
        ("2 .. 1 in", "swapped"),
        ("25 ± 0.01 furlong", "no unit known"),
    ],
)
def test_what_are_no_limits_is_named(text, said):
    with pytest.raises(NotUnderstood, match=said):
        parse_limits(text)


def test_the_rows_of_b4_1_follow_one_another_and_their_fits_are_as_wide_as_both_parts():
    for rows in _ansi_b4_1.ROWS.values():
        for row, after in itertools.pairwise(rows):
            assert row.to == after.over
        for row in rows:
            assert row.hole[1] == 0 < row.hole[0]
            assert row.shaft[0] > row.shaft[1]


@pytest.mark.parametrize(("size", "class_"), [(0.95, "FN 2"), (3.95, "FN 2"), (2, "RC 4")])
def test_a_size_that_b4_1_here_does_not_hold_is_refused_and_what_is_held_is_said(size, class_):
    with pytest.raises(NotPossible, match=r"not held here for .*, which runs over .* in"):
        ansi_fit(size=size, class_=class_)


def test_the_upper_end_of_a_b4_1_row_belongs_to_it():
    assert ansi_fit(size=1.19, class_="FN 2").value.most == pytest.approx(-0.0006)
    assert ansi_fit(size=1.1901, class_="FN 2").value.most == pytest.approx(-0.0008)


def test_the_shaft_for_a_hole_gives_the_fit_it_was_made_for():
    hole = parse_limits("40.00 .. 40.03 mm")
    moves = fit(hole=hole, shaft=shaft_for_hole(hole=hole, clearance=0.05, tolerance=0.02).value)
    assert moves.value.least == pytest.approx(0.05)
    assert moves.value.most == pytest.approx(0.05 + 0.03 + 0.02)
    holds = fit(hole=hole, shaft=shaft_for_hole(hole=hole, interference=0.05).value)
    assert holds.value.most == pytest.approx(-0.05)
    assert holds.value.kind == "interference"


def test_a_shaft_comes_out_in_the_unit_asked_for():
    hole = parse_limits("1.2500 .. 1.2510 in")
    inch = shaft_for_hole(hole=hole, clearance=0.002, unit="in").value
    metric = shaft_for_hole(hole=hole, clearance=0.0508).value
    assert (inch.low, inch.high, inch.unit) == (pytest.approx(1.247), pytest.approx(1.248), "in")
    assert metric.low == pytest.approx(25.4 * inch.low)
    turned = shaft_for_hole(hole=parse_limits("25.40 .. 25.41 mm"), clearance=0.002, unit="in")
    assert turned.value.high == pytest.approx(0.998)
    assert "is taken in in" in turned.working.shown()[0]


def test_the_last_binary_digits_make_no_interference():
    # 25.4 mm and 1 in, and 0.1 + 0.2 and 0.3, are one size.
    for hole, shaft in (("1 in", "25.4 mm"), ("25.4 mm", "1 in")):
        assert fit(hole=parse_limits(hole), shaft=parse_limits(shaft)).value.least == 0
    hole = Range(0.3, 0.3, "mm", "0.3 mm")
    got = fit(hole=hole, shaft=Range(0.1 + 0.2, 0.1 + 0.2, "mm", "0.1 + 0.2 mm"))
    assert (got.value.least, got.value.kind) == (0, "clearance")


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ({}, "one of clearance and interference"),
        ({"clearance": 0.1, "interference": 0.1}, "one of clearance and interference"),
        ({"clearance": 41}, "leaves no shaft"),
    ],
)
def test_a_shaft_that_cannot_be_is_refused(typed, said):
    with pytest.raises(NotPossible, match=said):
        shaft_for_hole(hole=parse_limits("40.00 .. 40.03 mm"), **typed)


@given(
    st.floats(-0.2, 0.2),
    st.floats(0.001, 0.3),
    st.floats(0.2, 5),
    st.sampled_from(["hole", "shaft"]),
)
def test_hole_and_shaft_keep_the_fit_asked_for(least, wide, share, basis):
    got = hole_and_shaft(size=50, least=least, most=least + wide, share=share, basis=basis)
    assert (got.value.least, got.value.most) == pytest.approx((least, least + wide), abs=1e-9)
    assert answers(got)["hole tolerance"] == pytest.approx(share * answers(got)["shaft tolerance"])
    assert answers(got)["smallest hole" if basis == "hole" else "largest shaft"] == 50
    assert got.working.disagreements() == []


@pytest.mark.parametrize(
    ("typed", "said"),
    [({"least": 0.02, "most": 0.01}, "swapped"), ({"least": 60, "most": 70}, "leaves nothing")],
)
def test_limits_that_cannot_be_are_refused(typed, said):
    with pytest.raises(NotPossible, match=said):
        hole_and_shaft(size=50, **typed)
