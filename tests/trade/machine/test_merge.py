"""A book laid over a starter changes what it names and keeps the rest."""

from shimstock.trade.machine.merge import lay_over
from shimstock.trade.machine.sheet import line_of, read_sheet

BASE = """\
book: base
joints:
  side: {open: 10, after: [hood, panel]}
  hood: {open: 5}
gates:
  road:
    points:
      brake: {ask: proved?, hard: true}
      horn: {ask: sounds?}
"""
OVER = """\
book: mine
joints:
  side: {after: [hood]}
  hood:
gates:
  road:
    points:
      brake: {ask: proved on gravel?}
      horn:
"""


def test_fields_are_laid_over_one_by_one_and_lists_replaced_whole():
    laid = lay_over(read_sheet(BASE, "base"), read_sheet(OVER, "mine"))

    assert laid.data["book"] == "mine"
    assert laid.data["joints"] == {"side": {"open": 10, "after": ["hood"]}}


def test_points_of_a_gate_are_gone_into_and_an_empty_one_is_taken_away():
    laid = lay_over(read_sheet(BASE, "base"), read_sheet(OVER, "mine"))

    points = laid.data["gates"]["road"]["points"]
    assert points == {"brake": {"ask": "proved on gravel?", "hard": True}}


def test_a_line_is_told_from_the_text_it_stands_in():
    laid = lay_over(read_sheet(BASE, "base"), read_sheet(OVER, "mine"))

    assert line_of(laid.layers, ("joints", "side", "after"), "?") == ("mine", 3)
    assert line_of(laid.layers, ("joints", "side", "open"), "?") == ("base", 3)
    assert line_of(laid.layers, ("joints", "nothing"), "?") == ("mine", 2)


def test_a_section_with_nothing_in_it_yet_changes_nothing():
    laid = lay_over(read_sheet(BASE, "base"), read_sheet("book: mine\njoints:\n", "mine"))

    assert set(laid.data["joints"]) == {"side", "hood"}
