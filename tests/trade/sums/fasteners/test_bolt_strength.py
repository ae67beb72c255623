import numpy as np
import pytest

from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.sums.fasteners._amounts import parse_force
from shimstock.trade.sums.fasteners._areas import (
    iso_stress_area,
    nut_factor_torque,
    un_stress_area,
)
from shimstock.trade.sums.fasteners._grades import parse_grade
from shimstock.trade.sums.fasteners._series import rows
from shimstock.trade.sums.fasteners._threads import parse_thread
from shimstock.trade.sums.fasteners.bolt_for_load import bolt_for_load
from shimstock.trade.sums.fasteners.bolt_strength import bolt_strength
from shimstock.trade.sums.fasteners.stress_area import stress_area


def strength(thread, grade):
    return bolt_strength(thread=parse_thread(thread), grade=parse_grade(grade))


def test_grade_2_steps_down_above_three_quarters_of_an_inch():
    """SAE J429: 55 ksi to 3/4 in, 33 ksi above, so that the thicker bolt bears less."""
    at, above = strength("3/4-10", "grade 2").value, strength("7/8-9", "grade 2").value

    assert above.proof_load < at.proof_load
    assert above.tensile_load > at.tensile_load  # 60 ksi on so much more area


@pytest.mark.parametrize(
    ("grade", "at", "above"),
    [("grade 5", "1-8", "1 1/8-7"), ("8.8", "M18", "M16")],  # 8.8 is better above M16
)
def test_the_step_of_a_grade_lies_where_the_standard_puts_it(grade, at, above):
    def proof(thread):
        got = strength(thread, grade)
        return got.working.value("S_p")

    assert proof(at) > proof(above)


def test_a_size_that_the_standard_leaves_out_is_named():
    assert any("extrapolates" in each for each in strength("1 3/4-5", "grade 8").working.cautions)
    assert not any("extrapolates" in each for each in strength("1-8", "grade 8").working.cautions)


def test_a_metric_bolt_may_have_an_inch_grade_and_an_inch_bolt_a_class():
    """85 ksi is 586.054 MPa."""
    assert strength("M10", "grade 5").working.value("S_p") == pytest.approx(586.054, abs=1e-3)
    assert strength("3/8-16", "8.8").working.value("S_p") == pytest.approx(
        580 / 0.00689476, rel=1e-6
    )


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("SAE J429 5", "SAE J429 grade 5"),
        ("SAE J429 grade 5", "SAE J429 grade 5"),
        ("grade 5", "SAE J429 grade 5"),
        ("Gr. 8.2", "SAE J429 grade 8.2"),
        ("ISO 898-1 8.8", "ISO 898-1 8.8"),
        ("8.8", "ISO 898-1 8.8"),
        ("class 12.9", "ISO 898-1 12.9"),
    ],
)
def test_a_grade_is_read_as_it_is_written(text, name):
    assert parse_grade(text).name == name


@pytest.mark.parametrize("text", ["SAE J429 8.8", "ISO 898-1 5", "grade 7", "", "8.8.8", "J429"])
def test_what_is_no_grade_is_refused(text):
    with pytest.raises(NotUnderstood, match="no grade"):
        parse_grade(text)


def test_a_stress_area_lies_between_core_and_outside():
    for row in rows():
        thread = parse_thread(row.name)
        area = stress_area(thread=thread).value
        core = thread.d - thread.form.core * thread.pitch
        assert np.pi / 4 * core**2 < area < np.pi / 4 * thread.d**2


def test_the_bare_arithmetic_is_that_of_the_sums_and_takes_arrays():
    inch = [row for row in rows() if row.series == "UNC" and row.n]
    d, n = np.array([r.d for r in inch]), np.array([r.n for r in inch])
    sums = [stress_area(thread=parse_thread(row.name)).value for row in inch]

    assert un_stress_area(d, n) == pytest.approx(np.array(sums))
    assert iso_stress_area(np.array([10.0, 12.0]), np.array([1.5, 1.75])) == pytest.approx(
        [stress_area(thread=parse_thread(each)).value for each in ("M10", "M12")]
    )
    assert nut_factor_torque(0.2, d, 1000.0) == pytest.approx(200 * d)


def test_the_bolt_for_a_load_is_the_smallest_that_bears_it():
    for load in (500, 4000, 20_000, 60_000):
        got = bolt_for_load(load=parse_force(f"{load} lbf"), grade=parse_grade("grade 5"))
        sizes = [row for row in rows() if row.series == "UNC" and row.d >= 0.25]
        names = [row.name for row in sizes]
        chosen = names.index(got.working.answers["thread"].value)

        assert got.working.answers["bears"].value >= load
        if chosen:
            before = strength(names[chosen - 1], "grade 5").value.proof_load
            assert 0.75 * before < load
