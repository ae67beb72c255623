"""What is wrong in a book is said in plain words, on the line of whoever can mend it."""

import pytest

from shimstock.trade.machine.reading import read_book
from shimstock.trade.machine.sheet import BookErrors

HEAD = "book: shed-engine\ntitle: Shed engine (invented)\n"
OVER = HEAD + "extends: two-cylinder-diesel\n"
ALONE = (
    HEAD + "parts:\n  case: {name: Main case}\nfigures:\n  bore:\n    name: Bore\n    of: case\n"
)


def faults_of(text: str) -> list[str]:
    with pytest.raises(BookErrors) as caught:
        read_book(text, "shed.yaml")
    return [str(problem) for problem in caught.value.problems]


def test_an_entry_taken_away_that_is_not_there_is_told():
    (fault,) = faults_of(OVER + "joints:\n  tachometer-unoin:\n")

    assert fault.startswith("shed.yaml:5: ")
    assert "did you mean 'tachometer-union'?" in fault


def test_a_misspelt_entry_with_some_fields_is_asked_after_first():
    (fault,) = faults_of(OVER + "figures:\n  liner-tapper: {limit: max 0.006 in}\n")

    assert fault.startswith("shed.yaml:5: figures > liner-tapper: ")
    assert "did you mean 'liner-taper'?" in fault
    assert "name and of" in fault


def test_a_field_that_stands_too_far_out_is_told_its_place():
    (fault,) = faults_of(OVER + "joints:\n  bonnet:\n    torque: 24 lbf.ft\n")

    assert fault.endswith(
        "no such field here; it stands below 'fasteners', as fasteners: {torque: ...}"
    )


def test_a_misspelt_field_with_nothing_after_it_is_told():
    (fault,) = faults_of(OVER + "joints:\n  bonnet:\n    on-pain:\n")

    assert "did you mean 'on-paint'?" in fault


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("new: 5.7500 - 5.7515 in", "5.7500 .. 5.7515 in would do"),
        ("new: 5.7500 to 5.7515 in", "5.7500 .. 5.7515 in would do"),
        ("new: 5.7515 .. 5.7500 in", "the ends are swapped; 5.7500 .. 5.7515 in would do"),
        ("new: 5.75 .. 5.751 furlong", "5.75 .. 5.751 in or 5.75 .. 5.751 mm would do"),
        ("limit: max 5.76 furlong", "max 5.76 in or max 5.76 mm would do"),
        ("limit: 5.76 in", "max 5.76 in or min 5.76 in would do"),
        ("limit: 5.76", "max 5.76 in or min 5.76 in would do"),
        ("limit: max 14 thou, min 6 thou", "[max 14 thou, min 6 thou] would do"),
    ],
)
def test_what_would_do_is_made_of_what_was_typed(line, says):
    (fault,) = faults_of(f"{ALONE}    {line}\n")

    assert fault.startswith("shed.yaml:9: ")
    assert fault.endswith(says)


@pytest.mark.parametrize("value", ["5.76 in", "[5.76 in]", ""])
def test_a_value_where_fields_are_needed_is_told_in_plain_words(value):
    (fault,) = faults_of(f"{HEAD}parts:\n  case: {value}\n")

    assert fault.startswith("shed.yaml:4: parts > case")
    assert "fields below it" in fault
    assert "dictionary" not in fault and "instance" not in fault


def test_a_tab_is_called_a_tab():
    (fault,) = faults_of(f"{HEAD}parts:\n\tcase: {{name: Main case}}\n")

    assert fault.startswith("shed.yaml:4: ")
    assert "a tab" in fault and "spaces" in fault


def test_a_colon_in_a_value_wants_quotes():
    (fault,) = faults_of("book: shed\ntitle: Tractor: the red one\n")

    assert fault.startswith("shed.yaml:2: ")
    assert fault.endswith("""put it in quotes: title: "Tractor: the red one\"""")


def test_a_key_that_stands_twice_hides_no_other_fault():
    twice, other = faults_of(f"{ALONE}    of: case\n    limit: 5.76 in\n")

    assert twice.startswith("shed.yaml:9: ") and "stands twice" in twice
    assert other.startswith("shed.yaml:10: ") and "max 5.76 in" in other


def test_a_part_taken_away_that_is_still_needed_is_told_where_it_was_taken_away():
    faults = faults_of(OVER + "parts:\n  cylinder-head:\n")

    assert faults
    assert all(fault.startswith("shed.yaml:5: parts > cylinder-head: ") for fault in faults)
    assert any("joints > " in fault for fault in faults)


def test_a_new_range_beyond_the_starters_limit_is_told_in_the_file_that_gave_it():
    (fault,) = faults_of(OVER + "figures:\n  liner-bore: {new: 5.7500 .. 5.7800 in}\n")

    assert fault.startswith("shed.yaml:5: ")
    assert "inside the new range" in fault


def test_a_ring_that_a_books_own_line_closes_is_told_on_its_lines():
    faults = faults_of(
        OVER
        + "joints:\n  bonnet: {after: [crankcase-cover]}\n  crankcase-cover: {after: [bonnet]}\n"
    )

    assert all(fault.startswith("shed.yaml:") for fault in faults)


def test_a_grid_taken_from_a_figure_that_others_rest_on_is_told_there():
    faults = faults_of(OVER + "figures:\n  liner-bore:\n    at: [top, bottom]\n")

    assert all(fault.startswith("shed.yaml:5: figures > liner-bore") for fault in faults), faults


def test_a_section_that_holds_no_entries_is_one_fault():
    (fault,) = faults_of(OVER + "figures: 3\n")

    assert fault.startswith("shed.yaml:4: figures ")
