from math import inf, pi

import pytest
from hypothesis import given
from hypothesis import strategies as st
from uncertainties import ufloat

from published.as_printed import as_printed
from shimstock.trade.numbers.formula import evaluate
from shimstock.trade.numbers.uncertainty import (
    Combined,
    Component,
    combine,
    coverage_factor,
    rectangular,
    resolution,
    rss,
    worst_case,
)

# JCGM 100:2008, H.1: calibration of a 50 mm end gauge, lengths in nm, temperatures in K.
L_S, D, THETA = 50_000_623, 215, -0.1
ALPHA_S = 11.5e-6


def gauge_difference() -> Combined:
    """H.1.3.2: repeated readings, random and systematic error of the comparator."""
    return combine(
        [
            Component("repeated readings", 1, 5.8, 24),
            Component("comparator, random", 1, 3.9, 5),
            Component("comparator, systematic", 1, 6.7, 8),
        ]
    )


def end_gauge() -> Combined:
    difference = gauge_difference()
    return combine(
        [
            Component("standard", 1, 25, 18),
            Component("difference", 1, difference.u, difference.dof),
            Component("δα", L_S * THETA, rectangular(1e-6), 50),
            Component("δθ", L_S * ALPHA_S, rectangular(0.05), 2),
        ]
    )


def test_gum_h1_difference_of_the_two_gauges():
    assert gauge_difference().u == as_printed("9.7")
    # H.1.6 prints 25.6 from u(d) rounded to 9.7; unrounded it is 25.45.
    assert gauge_difference().dof == pytest.approx(25.6, abs=0.2)


def test_gum_h1_length_of_the_gauge():
    # H.1.6: δα and δθ are 0 in the mean, so that only l_s and d are left.
    given = {"l_s": L_S, "d": D, "δα": 0.0, "θ": THETA, "α_s": ALPHA_S, "δθ": 0.0}
    assert evaluate("l_s + d − l_s·(δα·θ + α_s·δθ)", given) == as_printed("50 000 838")


def test_gum_h1_combined_uncertainty():
    assert end_gauge().u == as_printed("32")
    # H.1.6 prints 16.7 (16 after cutting); rounded inputs would give 17.47.
    assert end_gauge().dof == pytest.approx(16.75, abs=0.05)


def test_gum_h1_expanded_uncertainty_at_99_per_cent():
    assert coverage_factor(0.99, 16) == as_printed("2.92")
    # Printed 93 = 2.92·32 with u_c rounded first; unrounded 92.5.
    assert end_gauge().expanded(0.99) == pytest.approx(93, abs=1)


@pytest.mark.parametrize(
    ("label", "printed"), [("standard", "25"), ("δα", "2.9"), ("δθ", "16.6"), ("difference", "9.7")]
)
def test_gum_h1_contributions(label, printed):
    assert dict(end_gauge().parts)[label] == as_printed(printed)


@pytest.mark.parametrize("printed", ["5.8", "3.9", "6.7"])
def test_gum_h1_contributions_to_the_difference(printed):
    assert any(share == as_printed(printed) for _, share in gauge_difference().parts)


def test_gum_h1_second_order_terms():
    # H.1.7: l_s·u(δα)·u(θ) with u(θ) = 0.41 K, and l_s·u(α_s)·u(δθ).
    alpha_theta = Component("δα·θ", L_S * rectangular(1e-6), 0.41)
    alpha_dtheta = Component("α_s·δθ", L_S * rectangular(2e-6), rectangular(0.05))
    assert alpha_theta.share == pytest.approx(11.7, abs=0.2)  # printed from rounded factors
    assert alpha_dtheta.share == as_printed("1.7")
    whole = combine([Component("first order", 1, end_gauge().u), alpha_theta, alpha_dtheta])
    assert whole.u == as_printed("34")


def test_gum_4_3_7_example_2_rectangular():
    # JCGM 100:2008, 4.3.7 example 2 (from memory): copper within ±0.40e-6 per K.
    u = rectangular(0.40e-6)
    assert u == as_printed("0.23e-6")
    assert u**2 == as_printed("53.3e-15")


def test_gum_f_2_2_1_resolution_of_a_digital_reading():
    # JCGM 100:2008, F.2.2.1 (from memory).
    assert resolution(1) == as_printed("0.29")
    assert resolution(0.5) == rectangular(0.25)


def test_micrometer_budget():
    # A worked micrometer budget on a metrology page: u_c 0.00051, U (k = 2) 0.0010.
    budget = combine(Component(str(u), 1, u) for u in (0.00033, 0.00029, 0.00025))
    assert budget.u == pytest.approx(0.00051, abs=1e-5)
    assert 2 * budget.u == as_printed("0.0010")


@pytest.mark.parametrize(
    ("r", "f", "length", "t", "worst", "root"),
    [
        # Doebelin and Manik, Measurement Systems, examples 3.2 and 3.3: shaft power 2πRFL/t.
        (1202, 45, 0.397, 60, "36.7987", "22.0753"),
        (1305, 85, 0.467, 10, "1809.788", "1631.460"),
    ],
)
def test_doebelin_3_2_and_3_3_shaft_power(r, f, length, t, worst, root):
    power = 2 * pi * r * f * length / t
    parts = [
        Component("R", power / r, 1),
        Component("F", power / f, 0.18),
        Component("L", power / length, 0.00127),
        Component("t", power / t, 0.5),
    ]
    assert worst_case(parts) == as_printed(worst)
    assert rss(parts) == as_printed(root)


def test_nist_tn_1900_e13_expansion_coefficient():
    # NIST TN 1900, example E13.
    l0, l1, t0, t1 = 1.4999, 1.5021, 288.15, 373.10
    given = {"L_0": l0, "L_1": l1, "T_0": t0, "T_1": t1}
    alpha = evaluate("(L_1 − L_0)/(L_0·(T_1 − T_0))", given)
    parts = [
        Component("L0", -l1 / (l0**2 * (t1 - t0)), 0.0001),
        Component("L1", 1 / (l0 * (t1 - t0)), 0.0002),
        Component("T0", alpha / (t1 - t0), 0.02),
        Component("T1", -alpha / (t1 - t0), 0.05),
    ]
    assert alpha == as_printed("1.73e-5")
    assert combine(parts).u == as_printed("1.8e-6")


@given(st.lists(st.tuples(st.floats(-5, 5), st.floats(0.001, 10)), min_size=1, max_size=5))
def test_combined_uncertainty_agrees_with_the_referee(parts):
    total = sum(c * ufloat(1.0, u) for c, u in parts)
    ours = combine(Component(str(i), c, u) for i, (c, u) in enumerate(parts))
    assert ours.u == pytest.approx(total.std_dev, rel=1e-9)


def test_coverage_factors_of_gum_table_g_2():
    # JCGM 100:2008, table G.2 (from memory).
    for dof, printed in ((1, "12.71"), (5, "2.57"), (10, "2.23"), (50, "2.01"), (inf, "1.960")):
        assert coverage_factor(0.95, dof) == as_printed(printed)


def test_what_cannot_be_is_refused():
    with pytest.raises(ValueError, match=r"0\.95 is 95 %"):
        coverage_factor(95)
    with pytest.raises(ValueError, match="must be above 0"):
        coverage_factor(0.95, 0)


def test_nothing_uncertain_is_certain():
    assert combine([]).u == 0
    assert combine([]).dof == inf
