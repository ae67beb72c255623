import pytest

from published.as_printed import as_printed


@pytest.mark.parametrize(
    ("printed", "nearest", "too_far"),
    [
        ("58.0", 58.049, 58.051),
        ("58.0", 57.951, 57.949),
        ("245", 245.49, 245.51),
        ("1.73e-5", 1.7349e-5, 1.7351e-5),
        ("−0.0040", -0.004049, -0.004051),
        ("50 000 838", 50_000_838.4, 50_000_838.6),
    ],
)
def test_half_of_the_last_digit_is_the_tolerance(printed, nearest, too_far):
    assert nearest == as_printed(printed)
    assert as_printed(printed) == nearest
    assert too_far != as_printed(printed)


def test_a_wrong_value_is_red_and_says_what_was_printed():
    with pytest.raises(AssertionError, match=r"58\.0 as printed"):
        assert as_printed("58.0") == 58.0988


def test_only_numbers_can_be_equal():
    assert as_printed("58.0") != "58.0"


def test_a_word_is_no_printed_number():
    with pytest.raises(ArithmeticError):
        as_printed("about 58")
