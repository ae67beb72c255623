import pytest

from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.sums.find import find_sum


@pytest.mark.parametrize(
    ("typed", "offered"),
    [
        ("tyre", "tyre-diameter"),
        ("ringgap", "ring-gap"),
        ("backlash", "exact-backlash"),
        ("bolts", "preload-from-torque"),
        ("", "shimstock sum lists them all: one"),
        ("zzz", "shimstock sum lists them all, one of which"),
    ],
)
def test_a_name_that_is_none_offers_what_is_near_in_spelling_or_meaning(typed, offered):
    with pytest.raises(NotUnderstood) as error:
        find_sum(typed)
    assert offered in error.value.would_do


def test_a_word_in_a_name_goes_before_one_in_a_sentence():
    with pytest.raises(NotUnderstood) as error:
        find_sum("cable")
    assert error.value.would_do == ("starter-cable",)
