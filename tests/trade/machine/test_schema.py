"""The published format takes every book that the reader takes, and refuses what it can tell."""

import pytest
from jsonschema import Draft202012Validator

from shimstock.trade.machine.reading import read_book
from shimstock.trade.machine.schema import schema
from shimstock.trade.machine.sheet import BookErrors, read_sheet
from shimstock.trade.machine.starters import starter_names, starter_text
from trade.machine.test_reading import SMALL

SCHEMA = schema()
OVER = "book: ours\ntitle: Ours\nextends: two-cylinder-diesel\n"


def refused(text: str) -> list[str]:
    """What an editor would underline."""
    data = read_sheet(text, "ours").data
    return [error.json_path for error in Draft202012Validator(SCHEMA).iter_errors(data)]


def test_it_is_json_schema():
    Draft202012Validator.check_schema(SCHEMA)


@pytest.mark.parametrize("name", starter_names())
def test_it_takes_the_starters(name):
    assert refused(starter_text(name)) == []


def test_it_takes_a_whole_book_that_extends_nothing():
    assert refused(SMALL) == []


@pytest.mark.parametrize(
    "said",
    [
        "",
        "figures:",
        "figures:\n  rod-journal:\n    limit: [max 3.7520 in, min 3.7460 in]\n    page: 41",
        "figures:\n  fan-rock: {at: 4, page: 12a}",
        "figures:\n  fan-rock: {at: [a, b, c, d]}",
        "figures:\n  fan-rock:\n    limit:",
        "joints:\n  hydraulic-pump-flange:",
        "joints:\n  timing-cover: {seals: oil, on-paint: yes, after: flywheel-clamp, open: 25}",
        "joints:\n  timing-cover: {fasteners: {count: 8, torque: 24 lbf.ft}}",
        "gates:\n  paint:\n    points:\n      iron-dry: {answers: dry}\n      breather-free:",
        "parts:\n  hood: {name: 42}",
        "data:",
        "data:\n  tyre:\n  stroke: {page: 9}\n  cylinders: {value: 3, note: odd}",
        "figures:\n  rod-journal: {gives: crankpin-diameter}",
    ],
)
def test_it_takes_a_few_lines_over_a_starter_as_the_reader_does(said):
    text = f"{OVER}{said}\n"

    read_book(text, "ours")
    assert refused(text) == []


@pytest.mark.parametrize(
    "said",
    [
        "prints: cubits",
        "figures:\n  rod-journal: {nw: 1 .. 2 in}",
        "figures:\n  rod-journal: {new: 3.74 .. 3.75}",
        "figures:\n  rod-journal: {limit: 3.7460 in}",
        "figures:\n  rod-journal: {limit: [max 3.7 in, max 3.8 in, min 3.6 in]}",
        "figures:\n  rod-journal: {nominal: 3.75}",
        "joints:\n  timing-cover: {seals: custard}",
        "joints:\n  timing-cover: {on-paint: perhaps}",
        "joints:\n  timing-cover: {open: soon}",
        "joints:\n  timing-cover: {fasteners: {count: 0}}",
        "gates:\n  paint: {joints: all dry}",
        "data:\n  stroke: 7 in",
        "data:\n  stroke: {vlaue: 7 in}",
        "data:\n  stroke: {value: [7, in]}",
    ],
)
def test_it_refuses_what_the_reader_refuses(said):
    text = f"{OVER}{said}\n"

    with pytest.raises(BookErrors):
        read_book(text, "ours")
    assert refused(text) != []


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("title: Shed engine (invented)\n", ""),
        ("name: idle speed, of: pump", "name: idle speed"),
        ("  panel: {name: panel, between", "  panel: {between"),
        ("  case: {name: Main case}", "  case:"),
    ],
)
def test_a_book_that_extends_nothing_must_be_whole(old, new):
    text = SMALL.replace(old, new, 1)

    with pytest.raises(BookErrors):
        read_book(text, "ours")
    assert refused(text) != []
