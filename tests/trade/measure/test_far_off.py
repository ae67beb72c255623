"""A figure or torque far from what it is typed over is asked about, with what was likely meant."""

import pytest

from shimstock.trade.machine.reading import read_book
from shimstock.trade.measure.far_off import check_figure, check_torque, far_from_starter
from shimstock.trade.numbers.not_understood import HardlyMeant
from shimstock.trade.numbers.quantity import parse

STARTER = read_book("""\
book: engine
title: Engine
parts: {liner: {name: Liner}}
joints: {}
figures:
  bore:
    name: Liner bore
    of: liner
    new: 5.7500 .. 5.7512 in
    limit: max 5.7600 in
    sizes: [+0.045 in]
    nominal: 5.7500 in
  float: {name: End float, of: liner, new: 0.004 .. 0.008 in, limit: max 0.012 in}
  stem: {name: Stem, of: liner, unit: in}
settings:
  idle: {name: Idle speed, of: liner, new: 580 .. 620 rpm}
""")
BORE = STARTER.figures["bore"]


@pytest.mark.parametrize(
    ("fields", "meant"),
    [
        ({"new": "57.500 .. 57.512 in"}, "5.7500 .. 5.7512 in"),
        ({"new": "57.500 .. 57.512", "limit": "max 57.600"}, "5.7500 .. 5.7512 in, max 5.7600 in"),
        ({"limit": ["max 57.600 in", "min 5.7500 in"]}, "max 5.7600 in"),
        ({"new": "146.05 .. 146.08 in"}, "5.7500 .. 5.7512 in"),  # typed in mm: 146.05 / 25.4
    ],
)
def test_a_slipped_decade_or_unit_is_asked_about(fields, meant):
    with pytest.raises(HardlyMeant, match=r"outside 5\.695. in to 5\.805. in") as asked:
        check_figure(BORE, fields)

    assert asked.value.would_do[0] == meant


@pytest.mark.parametrize(
    "fields",
    [{"new": "5.7490 .. 5.7505 in"}, {"new": "146.05 .. 146.08 mm"}, {"limit": "max 5.765 in"},
     {"page": 41}, {"new": None, "limit": None}],
)  # fmt: skip
def test_what_a_maker_may_print_is_not(fields):
    check_figure(BORE, fields)


def test_a_setting_is_held_to_its_own_range_and_what_has_none_to_nothing():
    with pytest.raises(HardlyMeant, match="an idle speed can hardly leave"):
        check_figure(STARTER.settings["idle"], {"new": "5800 .. 6200 rpm"})
    with pytest.raises(HardlyMeant, match=r"8 times or more from what the book has, 580 \.\. 620"):
        check_figure(STARTER.settings["idle"], {"new": "58 .. 62 rpm"})
    check_figure(STARTER.figures["stem"], {"new": "40 .. 41 in"})


@pytest.mark.parametrize(("limit", "asked"), [("max 0.12 in", 1), ("max 0.018 in", 0)])
def test_a_decade_is_asked_about_where_the_range_is_wide(limit, asked):
    """A clearance may be read at ten times its limit; as a limit that is a slip."""
    float_ = STARTER.figures["float"]
    try:
        check_figure(float_, {"limit": limit})
        was_asked = 0
    except HardlyMeant as slip:
        was_asked, said = 1, str(slip)
        assert "8 times or more from what the book has, max 0.012 in" in said
        assert slip.would_do[0] == "max 0.0120 in"
    assert was_asked == asked


@pytest.mark.parametrize(("typed", "asked"), [("240 lbf.ft", 1), ("2.4", 1), ("30 N.m", 0)])
def test_a_torque_four_times_the_books_or_a_quarter_is_asked_about(typed, asked):
    now = parse("24 lbf.ft", unit="lbf.ft")
    try:
        check_torque(now, typed, parse(typed, unit="lbf.ft"))
        was_asked = 0
    except HardlyMeant as slip:
        was_asked = 1
        assert "24 lbf.ft" in slip.would_do
    assert was_asked == asked


def test_a_book_laid_over_a_starter_is_told_at_its_line():
    text = """\
book: mine
title: Mine
extends: engine
figures:
  bore:
    new: 57.500 .. 57.512 in
    limit: max 5.7600 in
settings:
  idle: {new: 560 .. 620 rpm}
"""
    [doubt] = far_from_starter(text, "mine.yaml", STARTER)

    assert str(doubt).startswith("mine.yaml:6: figures > bore > new ('57.500 .. 57.512 in'): lies")
    assert "5.7500 .. 5.7512 in would do" in doubt.would_do
    meant = text.replace("    limit", "    plausible:\n    limit")
    assert far_from_starter(meant, "mine.yaml", STARTER) == []
