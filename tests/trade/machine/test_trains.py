"""Chains of play in a book: what can be wrong with them, told with what would do."""

import pytest

from shimstock.trade.machine.reading import read_book

BOOK = """
book: chains
title: Chains
prints: inch
parts:
  case: {name: Case}
  pedal: {name: Pedal, sits-on: case, each: [left, right]}
figures:
  travel: {name: Travel, of: pedal, new: 1 .. 2 in, limit: max 3 in}
  pin: {name: Pin, of: pedal, unit: in}
trains:
  linkage:
    name: Linkage
    figure: travel
"""


def told(lines: str) -> str:
    with pytest.raises(Exception) as wrong:
        read_book(BOOK + lines, "chains.yaml")
    return str(wrong.value)


def test_a_link_that_nothing_can_be_held_before_is_understood():
    book = read_book(
        f"""{BOOK}    piece: right
    adjusted: true
    links:
      - {{name: Pin, figure: pin, ratio: 6, hold: {{what: rod}}, only-by-holding: true}}
      - {{name: Pivot, figure: pin, ratio: 1}}
""",
        "chains.yaml",
    )
    train = book.trains["linkage"]

    assert (train.piece, train.adjusted) == ("right", True)
    assert train.links[0].only_by_holding
    assert train.links[1].hold is None


def test_without_a_hold_at_its_first_link_the_whole_cannot_be_felt():
    assert "held at the first link" in told("    links: [{name: Pin, figure: pin, ratio: 6}]\n")


def test_a_piece_that_is_none_is_told_with_those_there_are():
    lines = """    piece: middle
    links: [{name: Pin, figure: pin, ratio: 6, hold: {what: rod}}]
"""

    assert "middle" in told(lines)
    assert "left or right" in told(lines)
