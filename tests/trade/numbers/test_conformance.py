from math import exp, gamma
from time import perf_counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from published.as_printed import as_printed
from shimstock.trade.numbers.conformance import (
    global_risks,
    guard_band,
    iso14253,
    risks_of,
    within,
)


def test_jcgm_106_section_7_one_upper_limit():
    # JCGM 106:2012, clause 7, breakdown voltage of a diode (from memory).
    assert within(-5.47, 0.05, high=-5.40) == as_printed("0.92")


def test_jcgm_106_section_7_one_lower_limit():
    # JCGM 106:2012, clause 7, burst pressure of a vessel (from memory).
    assert within(509.7, 8.6, low=490) == as_printed("0.99")


def test_jcgm_106_section_7_two_limits():
    # JCGM 106:2012, clause 7, two limits (from memory).
    assert within(13.6, 1.8, low=12.5, high=16.3) == as_printed("0.66")


def test_jcgm_106_section_8_guard_band_that_grows_with_the_reading():
    # JCGM 106:2012, clause 8, speed limit 100 km/h, u = 2 % of the reading, 99.9 %.
    decision = 100 / (1 - guard_band(0.02, 0.999))
    assert decision == as_printed("107")
    assert within(decision, 0.02 * decision, low=100) == as_printed("0.999")


@pytest.mark.parametrize(
    ("z", "printed"),
    [(0, "0.5"), (0.5, "0.69146"), (1, "0.84134"), (1.5, "0.93319"), (2, "0.97725"),
     (3, "0.99865")],
)  # fmt: skip
def test_standard_normal_table(z, printed):
    assert within(0, 1, high=z) == as_printed(printed)
    assert within(0, 1, low=-z) == as_printed(printed)


def test_jcgm_106_9_5_3_global_risks():
    # JCGM 106:2012, 9.5.3: resistors of 1500 Ω (results from memory).
    risks = global_risks(
        middle=1500, spread=0.12, u=0.04, low=1499.8, high=1500.2,
        accept_low=1499.82, accept_high=1500.18,
    )  # fmt: skip
    assert within(1500, 0.12, low=1499.8, high=1500.2) == as_printed("0.90")
    assert risks.consumer == as_printed("0.01")
    assert risks.producer == as_printed("0.07")
    # Recomputed twice by independent scripts.
    assert risks.consumer == pytest.approx(0.009878, abs=1e-6)
    assert risks.producer == pytest.approx(0.069027, abs=1e-6)


def test_jcgm_106_9_5_4_run_out_with_a_gamma_prior():
    # JCGM 106:2012, 9.5.4: run-out with a gamma density, limit 2, u 0.25.
    def made(x: float) -> float:
        return x**3 * exp(-x / 0.25) / (gamma(4) * 0.25**4)

    far = 20.0
    assert risks_of(made, (0, far), 1e-9, (0, 2), (0, far)).consumer == as_printed("0.04")
    at_limit = risks_of(made, (0, far), 0.25, (0, 2), (-far, 2))
    assert at_limit.consumer == pytest.approx(0.008019, abs=1e-6)
    guarded = risks_of(made, (0, far), 0.25, (0, 2), (-far, 1.67183))
    assert guarded.consumer == as_printed("0.001")


@pytest.mark.parametrize(
    ("y", "decision"),
    [
        (10.00, "conforming"),
        (9.99, "conforming"),
        (10.01, "conforming"),
        (10.03, "neither"),
        (9.92, "neither"),
        (10.09, "neither"),
        (10.0901, "not conforming"),
        (9.9099, "not conforming"),
    ],
)
def test_iso_14253_1_decision_rules(y, decision):
    # ISO 14253-1 (rule from memory): limits 9.95 and 10.05, U = 0.04; numbers derived.
    assert iso14253(y, 0.04, 9.95, 10.05) == decision


def test_iso_14253_1_reading_in_the_grey_zone_still_has_a_probability():
    assert within(10.03, 0.02, low=9.95, high=10.05) == as_printed("0.8413")


def test_iso_14253_1_default_guard_band():
    # ISO 14253-1:2017 (from memory): 1.65 u for 95 %; 2 u gives 97.7 %.
    assert guard_band(1, 0.95) == pytest.approx(1.65, abs=0.006)
    assert within(-2, 1, high=0) == as_printed("0.977")


def test_open_limits_and_perfect_instruments():
    assert within(1, 0.1) == 1
    assert within(5.76, 0, high=5.76) == 1
    assert within(5.77, 0, high=5.76) == 0
    assert iso14253(5.75, 0.001, None, 5.76) == "conforming"
    with pytest.raises(ValueError, match=r"0\.95 is 95 %"):
        guard_band(1, 95)
    with pytest.raises(ValueError, match="above 0"):
        global_risks(middle=0, spread=0, u=1, low=0, high=1, accept_low=0, accept_high=1)


@given(st.floats(-5, 5), st.floats(0.01, 2), st.floats(0.01, 3))
def test_wider_limits_hold_more(y, u, more):
    assert within(y, u, low=-1, high=1) <= within(y, u, low=-1, high=1 + more) + 1e-12


def test_a_hundred_thousand_probabilities_in_a_moment():
    start = perf_counter()
    for i in range(100_000):
        within(5.75 + i * 1e-7, 0.0002, high=5.76)
    assert perf_counter() - start < 0.5
