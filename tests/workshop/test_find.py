import pytest

from shimstock.workshop.books import book_from
from shimstock.workshop.find import find_figure, find_joint, find_machine, find_part, find_piece
from shimstock.workshop.refused import NotFound, Refused
from workshop.shed_book import TEXT

BOOK = book_from(TEXT, "book")


@pytest.mark.parametrize(
    "typed", ["cover-joint", " Cover-Joint", "cover joint", "j2", "Side cover to case"]
)
def test_a_joint_is_found_by_key_mark_or_name(typed):
    assert find_joint(BOOK, typed) == "cover-joint"


def test_a_name_that_two_joints_bear_is_not_guessed_at():
    alike = book_from(TEXT.replace("name: sump to case", "name: side cover to case"), "book")

    with pytest.raises(Refused, match="more than one joint: cover-joint or sump-joint"):
        find_joint(alike, "side cover to case")


def test_figures_and_settings_are_found_alike():
    assert (find_figure(BOOK, "F1"), find_figure(BOOK, "s1")) == ("bore", "idle")


@pytest.mark.parametrize("typed", ["J22", "cover-jont", "hod joint"])
def test_a_near_miss_is_answered_with_what_was_likely_meant(typed):
    with pytest.raises(NotFound, match="Did you mean") as missed:
        find_joint(BOOK, typed)
    assert typed in str(missed.value)


@pytest.mark.parametrize(
    ("typed", "near"),
    [
        ("S999", ()),
        ("S199", ("S19",)),
        ("S1", ("S19", "S01")),
        ("T09", ("S09",)),
        ("F2", ("F002",)),
        ("fan-rock", ("fan-rocks",)),
    ],
)
def test_of_marks_only_those_one_slip_away_are_suggested(typed, near):
    missed = NotFound("sign", typed, ["fan-rocks", "hunts", "S01", "S19", "S09", "F002", "F021"])

    assert sorted(missed.near) == sorted(near)


def test_a_name_like_nothing_here_is_answered_plainly():
    with pytest.raises(NotFound, match="There is no part 'qqqq' in this machine's book"):
        find_part(BOOK, "qqqq")


def test_a_single_piece_needs_no_name_and_one_of_several_does():
    assert find_piece(BOOK, "hood", "") == ""
    assert find_piece(BOOK, "pump", "LEFT") == "left"
    with pytest.raises(Refused, match="say which"):
        find_piece(BOOK, "pump", "")


def test_a_machine_is_found_by_its_short_or_full_name(machine):
    assert find_machine("GREY") == find_machine("the grey one") == machine


def test_an_unknown_machine_is_answered_with_the_nearest(machine):
    with pytest.raises(NotFound, match=r"There is no machine 'gray'\. Did you mean grey"):
        find_machine("gray")
