"""Keys and bearings: edges of the tables, texts, and what is refused."""

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.sums.keys._b17_1 import KEYS, inches
from shimstock.trade.sums.keys._bearings import BEARINGS, parse_bearing
from shimstock.trade.sums.keys._bore_codes import parse_bore_code
from shimstock.trade.sums.keys.bearing_bore_code import bearing_bore_code
from shimstock.trade.sums.keys.bearing_size import bearing_size
from shimstock.trade.sums.keys.key_length import key_length
from shimstock.trade.sums.keys.key_seat_depth import key_seat_depth
from shimstock.trade.sums.keys.parallel_key import parallel_key
from shimstock.trade.sums.keys.which_bearing import which_bearing

WENTZELL = {"power": 5, "speed": 1750, "shaft": 0.5, "shear": 30500, "crushing": 51000}


def answers(worked):
    return {name: each.value for name, each in worked.working.answers.items()}


def test_a_row_begins_just_above_the_one_before():
    for row, after in itertools.pairwise(KEYS):
        assert parallel_key(shaft=row.to).value[0] == inches(row.width)
        assert parallel_key(shaft=row.to + 0.001).value[0] == inches(after.width)


def test_a_key_is_about_a_quarter_of_its_shaft():
    # Common practice, no source: the width of a key is about a quarter of the shaft.
    low = 5 / 16
    for row in KEYS:
        assert 0.18 < inches(row.width) / ((low + row.to) / 2) < 0.32
        assert not row.flat or inches(row.flat) < inches(row.width)
        low = row.to


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ({"shaft": 5 / 16}, "not held here"),
        ({"shaft": 4.6}, "not held here"),
        ({"shaft": 0.4, "form": "rectangular"}, "square key only"),
    ],
)
def test_a_shaft_without_a_key_is_refused(typed, said):
    with pytest.raises(NotPossible, match=said):
        parallel_key(**typed)


@given(st.floats(0.35, 4.5), st.sampled_from(["square", "rectangular"]))
def test_shaft_key_and_clearance_fill_the_bore(shaft, form):
    if form == "rectangular" and shaft <= KEYS[0].to:
        return
    got = key_seat_depth(shaft=shaft, form=form)
    left, over = got.value
    assert over - left == pytest.approx(parallel_key(shaft=shaft, form=form).value[1] + 0.005)
    assert 0 < answers(got)["cut"] < shaft / 2
    assert got.working.disagreements() == []


def test_half_of_the_key_is_in_the_shaft_at_its_edge():
    # At the side of the key the shaft's surface lies (D − √(D² − W²))/2 below its top.
    edge = (2 - (2**2 - 0.5**2) ** 0.5) / 2
    assert answers(key_seat_depth(shaft=2))["cut"] - edge == pytest.approx(0.25)


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ({"shaft": 1, "width": 1}, "must be smaller than the shaft"),
        ({"shaft": 1, "width": 0.25, "height": 2}, "must be smaller than the shaft"),
        ({"shaft": 1, "width": 0.9}, "to the middle of the shaft or beyond"),
        ({"shaft": 9}, "not held here"),
    ],
)
def test_a_key_seat_that_cannot_be_is_refused(typed, said):
    with pytest.raises(NotPossible, match=said):
        key_seat_depth(**typed)


def test_a_key_of_its_own_size_needs_no_table():
    assert (
        key_seat_depth(shaft=9, width=2).value == key_seat_depth(shaft=9, width=2, height=2).value
    )


@given(st.floats(1.01, 4))
def test_more_power_or_less_speed_wants_a_longer_key(more):
    usual = key_length(**WENTZELL).value
    harder = key_length(**WENTZELL | {"power": 5 * more}).value
    slower = key_length(**WENTZELL | {"speed": 1750 / more}).value
    assert harder == pytest.approx(more * usual)
    assert slower == pytest.approx(more * usual)


def test_what_governs_a_key_is_said():
    assert answers(key_length(**WENTZELL))["governs"] == "crushing"
    assert answers(key_length(**WENTZELL | {"crushing": 70000}))["governs"] == "shear"
    both = answers(key_length(**WENTZELL))
    assert both["length"] == max(both["by shear"], both["by crushing"])


def test_every_bearing_is_found_again_by_its_size_and_its_bore_by_its_code():
    for code, bearing in BEARINGS.items():
        by_size = which_bearing(bore=bearing.bore, outside=bearing.outside, width=bearing.width)
        assert by_size.value == (code,)
        assert bearing_bore_code(code=parse_bore_code(code)).value == bearing.bore


def test_a_heavier_series_is_larger_and_a_larger_bore_has_a_larger_ring():
    for code, bearing in BEARINGS.items():
        heavier = BEARINGS.get(f"6{ {'0': '2', '2': '3'}.get(code[1], '9') }{code[2:]}")
        larger = BEARINGS.get(f"{code[:2]}{int(code[2:]) + 1:02}")
        for other in (heavier, larger):
            assert other is None or other.outside > bearing.outside
            assert other is None or other.width >= bearing.width


@pytest.mark.parametrize(
    "text", ["6205", "6205-2RS", "6205 ZZ", "6205ZZC3", "6205 2rs c3", "6205/C3"]
)
def test_letters_behind_a_code_change_no_size(text):
    assert bearing_size(code=parse_bearing(text)).value.code == "6205"
    assert parse_bore_code(text).code == 5


@pytest.mark.parametrize("text", ["6299", "62055", "620", "NU 207", "", "bearing"])
def test_a_bearing_that_is_not_held_is_named(text):
    with pytest.raises(NotUnderstood, match="6000 to 6012, 6200 to 6212, 6300 to 6312"):
        parse_bearing(text)


def test_an_unknown_size_names_what_is_nearest():
    got = answers(which_bearing(bore=25.4, outside=57.15))
    assert got["bearing"] == "none of this table"
    assert "6305" in got["nearest"]
    assert answers(which_bearing(bore=25, outside=52))["bearing"] == "6205"
    worn = {"bore": 25.08, "outside": 51.92}
    assert which_bearing(**worn).value == ("6205",)
    assert which_bearing(**worn, error=0.05).value == ()
    with pytest.raises(NotPossible, match="swapped"):
        which_bearing(bore=52, outside=25)


@pytest.mark.parametrize(
    ("text", "bore"),
    [("6200", 10), ("NU 207", 35), ("NU207", 35), ("30206", 30), ("22212 E", 60), ("62/22", 22),
     ("6203-2Z", 17), ("1204", 20), ("7205 B", 25)],
)  # fmt: skip
def test_bores_by_code(text, bore):
    assert bearing_bore_code(code=parse_bore_code(text)).value == bore


@pytest.mark.parametrize("text", ["608", "6297", "", "62", "x", "62/"])
def test_what_names_no_bore_is_said(text):
    with pytest.raises(NotUnderstood, match="6205 or NU 207"):
        parse_bore_code(text)
