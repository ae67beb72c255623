"""Chances in words and as bars."""

import pytest

from shimstock.faces.web.chances import bar, percent


@pytest.mark.parametrize(
    ("chance", "says"),
    [
        (0, "ruled out"),
        (0.004, "under 1 %"),
        (0.01, "1 %"),
        (0.347, "35 %"),
        (0.99, "99 %"),
        (0.997, "over 99 %"),
        (1, "certain"),
    ],
)
def test_a_chance_is_never_said_to_be_surer_than_it_is(chance, says):
    assert percent(chance) == says


def test_a_bar_is_in_hundredths_and_has_no_ends_where_no_interval_is_known():
    assert bar(chance=0.25, low=0.1, high=0.5, before=0.03).now == "25.0"
    assert bar(chance=0.25, low=0.1, high=0.5, before=0.03).high == "50.0"
    assert bar(chance=0.25, low=None, high=None, before=0.03).low == ""
