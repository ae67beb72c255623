import pytest
from hypothesis import given
from hypothesis import strategies as st

from published.as_printed import as_printed
from shimstock.trade.numbers.limits import Range
from shimstock.trade.numbers.units import Mm
from shimstock.trade.sums.fits.fit import fit
from shimstock.trade.sums.fits.iso286 import iso_fit, iso_limits
from shimstock.trade.sums.fits.iso286_tables import FINE, GRADES, LOWER, MAIN, UPPER

BH = "Bhandari, Design of Machine Elements"
JI = "Jindal, Machine Design"
SH9 = "Shigley, Mechanical Engineering Design, 9th ed."

# Source, fit, printed limits of hole and shaft, printed least and most clearance (mm).
PUBLISHED = [
    (f"{BH}, example 3.1", "20 H6/e7", "20.000 20.013", "19.939 19.960", "0.040 0.074"),
    (f"{BH}, example 3.2", "20 H7/s6", "20.000 20.021", "20.035 20.048", "−0.048 −0.014"),
    (f"{BH}, example 3.3", "50 H7/s6", "50.000 50.025", "50.043 50.059", "−0.059 −0.018"),
    (f"{BH}, example 3.4", "12 H11/d11", "12.000 12.110", "11.840 11.950", "0.050 0.270"),
    (f"{JI}, example 4-2", "25 H7/r6", "25.000 25.021", "25.028 25.041", "−0.041 −0.007"),
    (f"{JI}, example 4-3", "50 H8/g7", "50.000 50.039", "49.966 49.991", "0.009 0.073"),
    (f"{SH9}, example 7-7", "34 H11/c11", "34.000 34.160", "33.720 33.880", "0.120 0.440"),
    ("derived from the tables", "25 H7/p6", "25.000 25.021", "25.022 25.035", "−0.035 −0.001"),
    ("derived from the tables", "80 H7/p6", "80.000 80.030", "80.032 80.051", "−0.051 −0.002"),
    ("derived from the tables", "50 H8/f7", "50.000 50.039", "49.950 49.975", "0.025 0.089"),
    # Two printed examples that are wrong in print, corrected by the formulas they use.
    ("Sharma, Production Engineering, 9.4", "60 H8/f7", "60.000 60.046", "59.940 59.970",
     "0.030 0.106"),
    ("Sharma, Production Engineering, 9.7", "100 G7/e8", "100.012 100.047", "99.874 99.928",
     "0.084 0.173"),
]  # fmt: skip


@pytest.mark.parametrize(("source", "designation", "hole", "shaft", "clearance"), PUBLISHED)
def test_iso_286_published_fits(source, designation, hole, shaft, clearance):
    size, zones = designation.split()
    for zone, limits in zip(zones.split("/"), (hole, shaft), strict=True):
        got = iso_limits(size=Mm(float(size)), zone=zone)
        assert [got.value.low, got.value.high] == [as_printed(end) for end in limits.split()]
        assert got.working.disagreements() == []
    made = iso_fit(designation=designation)
    assert [made.value.least, made.value.most] == [as_printed(end) for end in clearance.split()]
    assert made.working.disagreements() == []


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
    got = iso_limits(size=Mm(size), zone=zone)
    assert got.value.low == as_printed(low)
    assert got.value.high == as_printed(high)
    assert got.working.disagreements() == []


def test_the_upper_end_belongs_to_its_range():
    # ISO 286-1: over … up to and including; Ø30 belongs to 18 to 30.
    assert iso_limits(size=Mm(30), zone="H7").value.high == as_printed("30.021")
    assert iso_limits(size=Mm(30.001), zone="H7").working.value("IT") == 25


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


@pytest.mark.parametrize(
    ("size", "zone"), [(50, "z6"), (50, "H4"), (50, "H12"), (50, "7H"), (50, ""), (50, "hs6")]
)
def test_a_zone_that_is_not_held_is_named(size, zone):
    with pytest.raises(ValueError, match="as H7 or s6"):
        iso_limits(size=Mm(size), zone=zone)


@pytest.mark.parametrize("size", [0, -5, 501])
def test_a_size_beyond_the_tables_is_named(size):
    with pytest.raises(ValueError, match="up to 500 mm"):
        iso_limits(size=Mm(size), zone="H7")


@pytest.mark.parametrize("text", ["50 H7", "H7/s6", "50 s6/H7", "fifty"])
def test_what_is_no_fit_is_named(text):
    with pytest.raises(ValueError, match="as 50 H7/s6"):
        iso_fit(designation=text)


grades = st.sampled_from(["H7", "H8", "G7", "K7", "N7", "P7", "JS8", "f7", "g6", "k6", "p6", "u6"])


@given(st.floats(0.5, 500), grades)
def test_every_zone_is_as_wide_as_its_grade(size, zone):
    got = iso_limits(size=Mm(size), zone=zone)
    assert got.value.high - got.value.low == pytest.approx(got.working.value("IT") / 1000)
    assert got.working.disagreements() == []


def limits(text: str, unit: str = "mm") -> Range:
    low, high = text.split()
    return Range(float(low), float(high), unit, text)


# Plain limit arithmetic. Sharma, Production Engineering, ch. 9, unless named.
@pytest.mark.parametrize(
    ("source", "hole", "shaft", "least", "most"),
    [
        ("9.1: allowance 0.03", "37.50 37.52", "37.45 37.47", "0.03", "0.07"),
        ("9.2: allowance 0.10", "75.000 75.075", "74.825 74.900", "0.100", "0.250"),
        ("9.3: interference 0.0375", "75.000 75.225", "75.2625 75.4875", "−0.4875", "−0.0375"),
        ("9.5", "30.000 30.020", "29.982 29.995", "0.005", "0.038"),
        ("9.6", "25.000 25.006", "24.986 24.990", "0.010", "0.020"),
        ("9.9", "100.000 100.035", "100.085 100.120", "−0.120", "−0.050"),
    ],
)
def test_sharma_9_plain_limit_arithmetic(source, hole, shaft, least, most):
    got = fit(hole=limits(hole), shaft=limits(shaft))
    assert got.value.least == as_printed(least)
    assert got.value.most == as_printed(most)
    assert got.working.disagreements() == []


def test_shigley_7_8_inch_fit():
    # Shigley, 9th ed., example 7-8: 2 in H7/s6 from the book's own inch tables.
    got = fit(hole=limits("2.0000 2.0010", "in"), shaft=limits("2.0017 2.0023", "in"))
    assert got.value.least == as_printed("−0.0023")
    assert got.value.most == as_printed("−0.0007")
    assert got.value.kind == "interference"


def test_two_measured_parts_in_two_units():
    got = fit(hole=limits("5.7592 5.7592", "in"), shaft=limits("146.05 146.05"))
    assert got.value.least == got.value.most == pytest.approx(0.0092)
    assert (got.value.unit, got.value.kind) == ("in", "clearance")


def test_a_fit_that_may_do_either_is_a_transition():
    assert iso_fit(designation="25 H7/k6").value.kind == "transition"


def test_an_open_end_makes_no_fit():
    with pytest.raises(ValueError, match="both ends"):
        fit(hole=Range(1, None, "in", "1 in .."), shaft=limits("1 2", "in"))
