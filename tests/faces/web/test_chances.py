"""Chances as bars."""

from shimstock.faces.web.chances import bar


def test_a_bar_is_in_hundredths_and_has_no_ends_where_no_interval_is_known():
    assert bar(chance=0.25, low=0.1, high=0.5, before=0.03).now == "25.0"
    assert bar(chance=0.25, low=0.1, high=0.5, before=0.03).high == "50.0"
    assert bar(chance=0.25, low=None, high=None, before=0.03).low == ""
