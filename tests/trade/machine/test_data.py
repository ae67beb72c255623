"""What a maker prints about the whole machine, and what a figure gives of it."""

import pytest

from shimstock.trade.machine.book import Datum
from shimstock.trade.machine.data import KNOWN
from shimstock.trade.machine.reading import read_book
from shimstock.trade.machine.sheet import BookErrors
from shimstock.trade.machine.starters import starter_text
from shimstock.trade.numbers.quantity import convert
from shimstock.trade.sums.engine.displacement import displacement

BOOK = """\
book: shed-engine
title: Shed engine (invented)
data:
  bore: {value: 4 1/4 in, page: 9}
  cylinders: {value: 2}
  compression-ratio: {value: "16:1", note: with the thick gasket}
  tyre: {value: 12.4-38}
  sprayer-tank: {value: 90 gal}
  gears: {value: "6 forward, 1 reverse"}
parts:
  case: {name: Main case}
figures:
  wall: {name: Bore, of: case, new: 4.25 .. 4.26 in, gives: bore}
settings:
  idle: {name: Idle, of: case, new: 580 .. 620 rpm, gives: low-idle}
"""
MACHINES = ("two-cylinder-diesel", "petrol-crawler")


def faults_of(text: str) -> list[str]:
    with pytest.raises(BookErrors) as caught:
        read_book(text, "shed.yaml")
    return [str(problem) for problem in caught.value.problems]


def test_data_are_read_with_their_page_and_note():
    data = read_book(BOOK).data

    assert (data["bore"].quantity.value, data["bore"].quantity.unit) == (4.25, "in")
    assert (data["bore"].page, data["bore"].stand_in) == (9, False)
    assert data["cylinders"].quantity.value == 2 and data["cylinders"].stand_in
    assert data["compression-ratio"].note == "with the thick gasket"
    assert data["tyre"].quantity is None and data["gears"].quantity is None
    assert data["sprayer-tank"].quantity.unit == "gal"


@pytest.mark.parametrize("written", ["16:1", "16 to 1", "16 : 1", "16", 16])
def test_a_ratio_to_one_is_a_plain_number_for_a_sum(written):
    datum = Datum(value=written)

    assert datum.text == "16"
    assert datum.quantity.value == 16


def test_every_known_key_takes_its_own_example():
    lines = "".join(f'  {key}: {{value: "{example}"}}\n' for key, (_, example) in KNOWN.items())

    assert set(read_book(f"book: a\ntitle: b\ndata:\n{lines}").data) == set(KNOWN)


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("4 1/4 in", "4.25", "has no unit, and is to measure length; 4 1/4 in would do"),
        ("4 1/4 in", "12 psi", "measures pressure, not length; 4 1/4 in would do"),
        ("4 1/4 in", "big", "is no measure of length"),
        ("4 1/4 in", "4 furlongs", "'furlongs', which is no unit known here"),
        ("90 gal", "90 firkins", "'firkins', which is no unit known here"),
        ("{value: 2}", "{value: 2 in}", "measures length, not a plain number; 2 would do"),
        ("{value: 2}", "{value: two}", "is no plain number"),
        ("{value: 2}", "2", "needs its fields; {value: 2, page: 12} would do"),
        ("{value: 2}", "{page: 4}", "is missing; a line 'value: ...' would do"),
        ("{value: 2}", "{valve: 2}", "did you mean 'value'?"),
        ("{value: 2}", "{value: ''}", "is empty"),
        ("{value: 2}", "{value: [1, 2]}", "is no plain text"),
        ("{value: 2}", "{value: true}", "is no plain text"),
        ("  cylinders:", "  cylinder:", "did you mean 'cylinders'?"),
        ("  sprayer-tank:", "  Sprayer Tank:", "cannot be typed easily"),
        ("gives: bore", "gives: bores", "did you mean 'bore'?"),
        ("gives: low-idle", "gives: stroke", "measures length, but the figure is measured in rpm"),
    ],
)
def test_each_fault_says_where_what_and_what_would_do(old, new, says):
    text = BOOK.replace(old, new, 1)

    faults = faults_of(text)

    line = next(n for n, row in enumerate(text.splitlines(), 1) if new in row)
    assert any(f"shed.yaml:{line}:" in fault and says in fault for fault in faults), faults


def test_a_book_changes_one_datum_of_its_starter_and_takes_one_away():
    over = "data:\n  stroke: {value: 7 in, page: 9}\n  tyre:\n"

    book = read_book(f"book: ours\ntitle: Ours\nextends: two-cylinder-diesel\n{over}")

    starter = read_book(starter_text("two-cylinder-diesel")).data
    assert (book.data["stroke"].value, book.data["stroke"].page) == ("7 in", 9)
    assert book.data["bore"] == starter["bore"]
    assert "tyre" in starter and "tyre" not in book.data


def test_a_page_alone_makes_a_starters_value_the_makers():
    over = "data:\n  stroke: {page: 9}\n"

    book = read_book(f"book: ours\ntitle: Ours\nextends: two-cylinder-diesel\n{over}")

    assert (book.data["stroke"].value, book.data["stroke"].stand_in) == ("6 3/4 in", False)


@pytest.mark.parametrize("name", MACHINES)
def test_starters_say_what_they_are_and_all_of_it_stand_in(name):
    book = read_book(starter_text(name))

    assert len(book.data) >= 12
    assert all(datum.stand_in for datum in book.data.values())


@pytest.mark.parametrize("name", MACHINES)
def test_the_data_of_a_starter_agree_with_each_other_and_with_its_figures(name):
    book = read_book(starter_text(name))
    data = {key: datum.quantity for key, datum in book.data.items()}

    bore, stroke = (convert(data[key].value, data[key].unit, "in") for key in ("bore", "stroke"))
    swept = displacement(bore=bore, stroke=stroke, cylinders=int(data["cylinders"].value),
                         unit="in").value  # fmt: skip
    assert data["displacement"].unit == "in3"
    assert data["displacement"].value == round(swept)
    given = {figure.gives: figure for figure in book.measures.values() if figure.gives}
    assert {"bore", "low-idle", "high-idle"} <= set(given)
    # A lining's thickness stands for itself: what a reading says, never what was once new.
    assert set(given) - set(data) <= {"lining-thickness"}
    for key, figure in given.items():
        if key == "lining-thickness":
            continue
        assert figure.as_new.holds(convert(data[key].value, data[key].unit, figure.measured_in)), (
            key
        )
    assert len(book.data["firing-order"].value.split("-")) == data["cylinders"].value
