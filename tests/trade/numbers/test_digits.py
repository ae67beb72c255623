import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.numbers.digits import half_last, read_back, written


@pytest.mark.parametrize(
    ("value", "shown"),
    [
        (10, "10"),
        (57.98889, "57.9889"),
        (8.5927, "8.5927"),
        (-0.002, "−0.002"),
        (0, "0"),
        (-0.0, "0"),
        (1.154e-5, "1.154e-5"),
        (0.00012, "0.00012"),
        (50_000_838.4, "50000838"),
        (999_999.96, "1000000"),
        (2.5e15, "2.5e15"),
        (float("inf"), "∞"),
        (float("-inf"), "−∞"),
    ],
)
def test_numbers_as_a_person_reads_them(value, shown):
    assert written(value) == shown


@given(st.floats(-1e300, 1e300), st.integers(3, 9))
def test_print_is_within_half_its_last_digit(value, significant):
    off = abs(read_back(written(value, significant)) - value)
    assert off <= half_last(value, significant) * (1 + 1e-6)
