"""A corrected figure changes its own lines of a book's file, and no other letter of it."""

from difflib import ndiff

import pytest

from shimstock.trade.machine.corrected import corrected
from shimstock.trade.machine.reading import read_book
from shimstock.trade.machine.starters import starter_text
from shimstock.trade.numbers.not_possible import NotPossible

OWN = """\
# Typed on a wet Sunday.
book: my-tractor
title: "My tractor"   # as on the cover
extends: two-cylinder-diesel

joints:
  timing-cover:
    fasteners: {count: 12,   torque: 24 lbf.ft}

figures:
  # from the second printing
  liner-bore:
    new: '5.7500 .. 5.7512 in'   # table 3
    limit: max 5.7600 in

  # the pin is worn
  rod-journal: {new: 3.7488 .. 3.7498 in, limit: min 3.7460 in}

# the end of it
"""


def changed_lines(old: str, new: str) -> list[str]:
    return [line for line in ndiff(old.splitlines(), new.splitlines()) if line[0] in "+-"]


def test_a_field_is_added_to_an_entry_and_nothing_else_moves():
    new = corrected(OWN, "figures", "liner-bore", {"page": 41})

    assert changed_lines(OWN, new) == ["+     page: 41"]


def test_a_changed_value_leaves_its_quotes_its_comment_and_its_neighbours():
    new = corrected(OWN, "figures", "liner-bore", {"new": "5.7500 .. 5.7510 in"})

    assert changed_lines(OWN, new) == [
        "-     new: '5.7500 .. 5.7512 in'   # table 3",
        "+     new: '5.7500 .. 5.7510 in'   # table 3",
    ]


def test_an_entry_within_braces_stays_within_them():
    new = corrected(OWN, "figures", "rod-journal", {"page": "46-47"})

    assert changed_lines(OWN, new) == [
        "-   rod-journal: {new: 3.7488 .. 3.7498 in, limit: min 3.7460 in}",
        "+   rod-journal: {new: 3.7488 .. 3.7498 in, limit: min 3.7460 in, page: 46-47}",
    ]


def test_an_entry_of_the_starter_is_laid_over_with_only_what_changed():
    new = corrected(OWN, "figures", "fan-rock", {"limit": "max 0.2900 in", "page": 88})

    assert changed_lines(OWN, new) == [
        "+   fan-rock:",
        "+     limit: max 0.2900 in",
        "+     page: 88",
        "+ ",
    ]
    figure = read_book(new).figures["fan-rock"]
    assert (figure.limit[0].value, figure.page) == (0.29, 88)
    assert figure.new == read_book(OWN).figures["fan-rock"].new


def test_a_section_that_is_not_there_is_begun_at_the_end():
    new = corrected(
        "book: a\ntitle: A\nextends: two-cylinder-diesel\n", "settings", "x", {"page": 1}
    )

    assert new.endswith("extends: two-cylinder-diesel\n\nsettings:\n  x:\n    page: 1\n")


@pytest.mark.parametrize("section", ["figures:", "figures: # none yet", "figures: {}"])
def test_a_section_with_nothing_in_it_yet_is_filled(section):
    head = "book: a\ntitle: A\nextends: two-cylinder-diesel\n"
    text = f"{head}{section}\ndata:\n  stroke: {{value: 2 in}}\n"

    book = read_book(corrected(text, "figures", "liner-bore", {"page": 9}))

    assert book.figures["liner-bore"].page == 9
    assert book.data["stroke"].value == "2 in"


def test_a_whole_section_within_braces_is_kept_so():
    text = "book: a\ntitle: A\nextends: two-cylinder-diesel\nfigures: {liner-bore: {page: 9}}\n"

    new = corrected(text, "figures", "fan-rock", {"page": 10})

    assert "figures: {liner-bore: {page: 9}, fan-rock: {page: 10}}" in new


def test_a_field_without_anything_takes_the_starters_away():
    new = corrected(OWN, "figures", "fan-rock", {"limit": None, "page": 88})

    assert read_book(OWN).figures["fan-rock"].limit
    assert read_book(new).figures["fan-rock"].limit == ()


def test_two_limits_stand_as_a_list():
    new = corrected(OWN, "figures", "liner-bore", {"limit": ["max 5.76 in", "min 5.74 in"]})

    assert [each.sense for each in read_book(new).figures["liner-bore"].limit] == ["max", "min"]


def test_every_figure_of_a_starter_can_be_given_a_page_in_its_own_text():
    text = starter_text("petrol-crawler")
    for section in ("figures", "settings"):
        entries = getattr(read_book(text), section)
        for key in list(entries)[::9]:
            changed = changed_lines(text, corrected(text, section, key, {"page": 7}))
            assert changed == ["+     page: 7"], key


def test_what_is_written_with_a_shorthand_is_left_to_a_persons_hand():
    text = OWN.replace("limit: max 5.7600 in\n", "limit: &most max 5.7600 in\n").replace(
        "limit: min 3.7460 in}", "limit: *most}"
    )

    with pytest.raises(NotPossible, match="rod-journal"):
        corrected(text, "figures", "rod-journal", {"page": 7})
