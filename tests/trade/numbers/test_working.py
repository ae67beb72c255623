import json
from math import acos, cos, degrees, erf, exp, log, pi, radians, sqrt, tan
from time import perf_counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.numbers import formula
from shimstock.trade.numbers.working import Worked, Working


def stress_area() -> Working:
    w = Working(source="ISO 898-1, nominal stress area")
    d = w.given("d", 10, "mm", typed="10.0")
    p = w.given("P", 1.5, "mm", meaning="pitch")
    d_s = w.step("d_s", "d − 0.9382·P", d - 0.9382 * p, "mm")
    w.step("A_s", "π/4·d_s²", pi / 4 * d_s**2, "mm²")
    return w


def test_lines_read_symbol_formula_numbers_result_unit():
    assert stress_area().shown() == [
        'd = 10 mm (as typed "10.0")',
        "P = 1.5 mm; pitch",
        "d_s = d − 0.9382·P = 10 − 0.9382·1.5 = 8.5927 mm",
        "A_s = π/4·d_s² = π/4·8.5927² = 57.9895 mm²",
    ]
    assert stress_area().disagreements() == []


def with_signs() -> Working:
    """One working that uses every sign and every kind of symbol."""
    w = Working()
    phi = w.given("φ", 20, "deg")
    c = w.given("C", 118.534, "mm")
    c_run = w.given("C'", 120.9, "mm")
    p_run = w.step(
        "φ'", "arccos(C·cos(φ)/C')·180/π", degrees(acos(c * cos(radians(phi)) / c_run)), "deg"
    )
    inv_run = tan(radians(p_run)) - radians(p_run)
    inv = tan(radians(phi)) - radians(phi)
    j = w.step("Δj", "2·C'·(inv(φ') − inv(φ))", 2 * c_run * (inv_run - inv), "mm")
    x = w.given("j_1", -0.0021, "in")
    w.step("α_h", "|j_1| + j_1² − √(j_1² + Δj²)", abs(x) + x**2 - sqrt(x**2 + j**2), "mm")
    w.step("θ", "max(j_1, Δj, 1) ÷ min(j_1, Δj)", max(x, j, 1) / min(x, j), "")
    w.step("η", "e^(j_1·2) − e^−j_1", exp(2 * x) - exp(-x), "")
    w.step("p_c", "Φ((Δj − j_1)/C)", 0.5 * (1 + erf((j - x) / c / sqrt(2))), "")
    w.step("V", "π·C²/4·Δj³", pi * c**2 / 4 * j**3, "mm⁵")
    w.step("z_0", "||j_1| − |Δj||", abs(abs(x) - abs(j)), "mm")
    w.step("k", "ln(C)^2·C'^0.41·C⁻¹", log(c) ** 2 * c_run**0.41 / c, "")
    return w


def test_every_sign_is_worked_out_again():
    assert with_signs().disagreements() == []


def test_no_symbol_stays_without_its_number():
    w = with_signs()
    symbols = {line["symbol"] for line in w.as_data()["lines"]}
    steps = [line for line in w.shown() if line.count(" = ") == 3]
    assert len(steps) == 9
    for line in steps:
        numbers = line.split(" = ")[2]
        assert formula.symbols(numbers) == [], line
        assert not symbols & {text for _, text in formula.tokens(numbers)}, line


def test_degrees_are_shown_inside_angles_only():
    w = Working()
    a, b = w.given("φ_1", 30, "deg"), w.given("φ_2", 28.5, "deg")
    w.step("Δφ", "|φ_1 − φ_2|", abs(a - b), "deg")
    w.step("t", "tan(φ_1/2)", tan(radians(a) / 2), "")
    assert w.shown()[2:] == [
        "Δφ = |φ_1 − φ_2| = |30 − 28.5| = 1.5 deg",
        "t = tan(φ_1/2) = tan(30°/2) = 0.267949",
    ]
    assert w.disagreements() == []


def test_a_wrong_digit_in_the_shown_formula_is_named():
    w = Working()
    d, p = w.given("d", 10, "mm"), w.given("P", 1.5, "mm")
    w.step("d_s", "d − 0.9328·P", d - 0.9382 * p, "mm")
    (complaint,) = w.disagreements()
    assert complaint == "d_s: shown d − 0.9328·P gives 8.6008, code gave 8.5927"


@pytest.mark.parametrize(
    ("shown", "says"),
    [
        ("d − q", "q is not given above"),
        ("d −", "cannot be read"),
        ("d d", "cannot be read"),
        ("√(−d)", "has no result"),
        ("1/(d − d)", "has no result"),
        ("open(d)", "open is not given above"),
        ("d.real", "real is not given above"),
        ("max(d)(d)", "cannot be read"),
    ],
)
def test_a_formula_that_cannot_be_worked_out_is_named(shown, says):
    w = Working()
    w.given("d", 10, "mm")
    w.step("x", shown, 10, "mm")
    (complaint,) = w.disagreements()
    assert complaint.startswith("x: ")
    assert says in complaint


def test_a_symbol_that_no_formula_can_hold_is_named():
    w = Working()
    w.given("mean bore", 5.75, "in")
    assert w.disagreements() == ["mean bore: cannot be written as a symbol"]


def test_printed_numbers_that_do_not_reach_the_result_are_named(monkeypatch):
    w = stress_area()
    shown = formula.with_numbers
    monkeypatch.setattr(formula, "with_numbers", lambda *a: shown(*a).replace("8.5927", "8.5972"))
    (complaint,) = w.disagreements()
    assert complaint.startswith("A_s: the printed numbers π/4·8.5972² give 58.05023, not 57.9895")


def test_printed_digits_get_the_leeway_they_leave_open():
    w = Working()
    a, b = w.given("a", 57.123456789, "mm"), w.given("b", 57.123412345, "mm")
    w.step("c", "(a − b)·1000", (a - b) * 1000, "um")
    assert w.disagreements() == []


def test_a_symbol_stands_for_one_thing():
    w = stress_area()
    with pytest.raises(ValueError, match="d already stands"):
        w.given("d", 12, "mm")
    other = Working()
    other.given("P", 2.0, "mm")
    with pytest.raises(ValueError, match="P already stands"):
        w.extend(other)


def test_extend_takes_lines_sources_and_cautions_once():
    w = stress_area()
    w.caution("Wear glasses.")
    other = Working(source="JCGM 100", cautions=["Wear glasses.", "Chock the wheels."])
    d = other.given("d", 10, "mm", typed="10.0")
    other.note("Read twice.")
    other.step("r", "d/2", d / 2, "mm")
    w.extend(other)
    assert w.shown()[-2:] == ["Read twice.", "r = d/2 = 10/2 = 5 mm"]
    assert w.source == "ISO 898-1, nominal stress area; JCGM 100"
    assert w.cautions == ["Wear glasses.", "Chock the wheels."]
    assert w.disagreements() == []


text = st.text(max_size=12)
value = st.floats(allow_nan=False)
line = st.tuples(st.sampled_from("gsn"), value, text, st.none() | text, st.none() | text)


@given(text, st.lists(text, unique=True), st.lists(line, max_size=6))
def test_a_working_survives_json(source, cautions, lines):
    w = Working(source, cautions)
    for i, (kind, number, unit, words, meaning) in enumerate(lines):
        if kind == "g":
            w.given(f"x_{i}", number, unit, typed=words, meaning=meaning)
        elif kind == "s":
            w.step(f"x_{i}", words or "", number, unit, meaning=meaning)
        else:
            w.note(words or "")
    assert Working.from_data(json.loads(json.dumps(w.as_data(), allow_nan=False))) == w


@given(st.floats(1e-6, 1e9), st.floats(1e-6, 1e9), st.floats(-1e3, 1e3))
def test_printed_lines_agree_for_any_size_of_number(a, b, c):
    w = Working()
    w.given("a", a, "in")
    w.given("b", b, "in")
    w.given("c", c, "in")
    q = w.step("q", "a/b", a / b, "")
    r = w.step("r", "√(a² + b²) − c", sqrt(a**2 + b**2) - c, "in")
    w.step("s", "q·r + c²", q * r + c**2, "in")
    assert w.disagreements() == []
    for shown in w.shown()[3:]:
        assert formula.symbols(shown.split(" = ")[2]) == []


def test_worked_carries_both():
    worked = Worked(57.99, stress_area())
    assert worked.value == 57.99
    assert worked.working.value("P") == 1.5


def test_a_hundred_thousand_verdicts_carry_their_working_in_time():
    start = perf_counter()
    for i in range(100_000):
        w = Working("ISO 14253-1")
        w.given("x", 5.75 + i * 1e-7, "in", typed="5.75")
        w.given("L", 5.76, "in")
        w.given("u", 0.0002, "in")
        w.step("p_c", "Φ((L − x)/u)", 1.0, "")
    assert perf_counter() - start < 1.5


def test_what_rounding_leaves_of_nothing_is_no_disagreement():
    w = Working()
    w.given("φ", 180.0, "deg")
    w.step("s", "sin(φ)", 0.0, "")
    assert w.disagreements() == []
    w.step("t", "sin(φ)", 1e-9, "")
    assert len(w.disagreements()) == 1
