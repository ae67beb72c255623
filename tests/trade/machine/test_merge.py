"""A book laid over a starter changes what it names and keeps the rest."""

import pytest

from shimstock.trade.machine.merge import difference, lay_over
from shimstock.trade.machine.sheet import Sheet, line_of, read_sheet
from shimstock.trade.machine.starters import starter_text

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


def test_a_line_is_told_from_the_newest_text_that_speaks_of_the_entry():
    laid = lay_over(read_sheet(BASE, "base"), read_sheet(OVER, "mine"))

    assert line_of(laid.layers, ("joints", "side", "after"), "?") == ("mine", 3)
    assert line_of(laid.layers, ("joints", "side", "open"), "?") == ("mine", 3)
    assert line_of(laid.layers, ("gates", "road", "points", "horn", "ask"), "?") == ("mine", 9)
    apart = lay_over(read_sheet(BASE, "base"), read_sheet("book: mine\njoints: {}\n", "mine"))
    assert line_of(apart.layers, ("joints", "side", "open"), "?") == ("base", 3)
    assert line_of(laid.layers, ("joints", "nothing"), "?") == ("mine", 2)


def test_a_section_with_nothing_in_it_yet_changes_nothing():
    laid = lay_over(read_sheet(BASE, "base"), read_sheet("book: mine\njoints:\n", "mine"))

    assert set(laid.data["joints"]) == {"side", "hood"}


def told(laid):
    return [str(problem) for problem in laid.problems]


def test_taking_away_what_the_starter_does_not_have_is_a_fault_with_its_line():
    laid = lay_over(read_sheet(BASE, "base"), read_sheet("book: mine\njoints:\n  hod:\n", "mine"))

    (fault,) = told(laid)
    assert fault.startswith("mine:3: joints > hod: ")
    assert "did you mean 'hood'?" in fault
    assert set(laid.data["joints"]) == {"side", "hood"}


def test_taking_away_what_is_there_is_no_fault():
    assert told(lay_over(read_sheet(BASE, "base"), read_sheet(OVER, "mine"))) == []


def test_a_point_taken_away_must_be_there_too():
    over = "book: mine\ngates:\n  road:\n    points:\n      hron:\n"

    (fault,) = told(lay_over(read_sheet(BASE, "base"), read_sheet(over, "mine")))
    assert fault.startswith("mine:5: ") and "did you mean 'horn'?" in fault


@pytest.mark.parametrize("name", ["two-cylinder-diesel", "petrol-crawler"])
def test_what_differs_laid_over_the_starter_gives_what_stands(name):
    base = read_sheet(starter_text(name), name)
    text = starter_text(name).replace("    mark: F001\n", "").replace("limit: max", "limit: max 1")
    now = read_sheet(text.replace("  bonnet:\n", "  hood:\n"), name)
    over = Sheet(difference(base.data, now.data), ({},))
    assert lay_over(base, over).data == now.data
