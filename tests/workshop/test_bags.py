"""Bags: what came off is found again, on its shelf, under the number that stands on the bag."""

import pytest

from shimstock.workshop.labels import BAG, JOINT, PART, SHELF, Labelled, code_of, labelled_of
from shimstock.workshop.refused import NotFound, Refused
from shimstock.workshop.told import bags_of, shelves_of

COVER = "joint:cover-joint"


@pytest.fixture
def bagged(do):
    return do.put_in_bag(number="12", about="J2", holds="12 bolts", shelf="B2")


def the_bag(machine):
    (bag,) = bags_of(machine, COVER)
    return bag


def test_what_came_off_lies_in_a_bag_on_a_shelf(machine, bagged):
    bag = the_bag(machine)

    assert (bag.number, bag.holds, bag.shelf, bag.by) == ("12", "12 bolts", "B2", "Ann")
    assert bagged.says == "Bag 12 of side cover to case (J2): 12 bolts, on shelf B2."
    assert bagged.places == ["bag:12"]


def test_a_bag_is_moved_by_its_number_alone(machine, do, bagged):
    entry = do.put_in_bag(number="12", shelf="C1")

    assert (the_bag(machine).shelf, the_bag(machine).holds) == ("C1", "12 bolts")
    assert "on shelf C1 (was on B2)" in entry.says


def test_a_bag_of_one_joint_does_not_take_what_came_off_another(machine, do, bagged):
    with pytest.raises(Refused, match="Bag 12 is of side cover to case"):
        do.put_in_bag(number="12", about="J1", holds="4 bolts")
    assert the_bag(machine).holds == "12 bolts"


@pytest.mark.parametrize(
    ("given", "why"),
    [
        ({"number": " "}, "no number"),
        ({"number": "13"}, "not in use: say which"),
        ({"number": "1" * 41, "about": "J2"}, "too long"),
        ({"number": "13", "about": "J2", "shelf": "B" * 101}, "too long"),
    ],
)
def test_a_bag_that_nobody_would_find_is_refused(do, given, why):
    with pytest.raises(Refused, match=why):
        do.put_in_bag(**given)


def test_the_number_of_an_emptied_bag_is_free(machine, do, bagged):
    entry = do.empty_bag(number="12")
    assert bags_of(machine, COVER) == []
    assert entry.says == "Emptied bag 12 of side cover to case (J2). It held: 12 bolts"

    do.put_in_bag(number="12", about="J1")
    with pytest.raises(Refused, match="A later act"):
        do.undo(entry)  # else there were two bags 12


def test_an_emptying_can_be_undone(machine, do, bagged):
    do.undo(do.empty_bag(number="12"))

    assert the_bag(machine).holds == "12 bolts"


def test_a_bag_that_is_not_there_cannot_be_emptied(do, bagged):
    with pytest.raises(NotFound, match="Did you mean 12"):
        do.empty_bag(number="13")


def test_bags_stand_by_their_shelves_in_the_order_of_their_numbers(machine, do):
    for number, shelf in [("10", "b"), ("2", "b"), ("7", ""), ("2 a", "b"), ("1", "A")]:
        do.put_in_bag(number=number, about="J1", shelf=shelf)

    shelves = shelves_of(machine)

    assert [(s.name, [b.number for b in s.bags]) for s in shelves] == [
        ("A", ["1"]),
        ("b", ["2", "2 a", "10"]),
        ("", ["7"]),
    ]


@pytest.mark.parametrize(
    "labelled",
    [
        Labelled("grey", JOINT, "cover-joint"),
        Labelled("grey", PART, "pump"),
        Labelled("grey-2", BAG, "12.a/b c"),
        Labelled("grey", SHELF, "B.2"),
    ],
)
def test_a_label_leads_back_to_what_it_is_stuck_to(labelled):
    assert labelled_of(code_of(labelled)) == labelled


@pytest.mark.parametrize("code", ["", "grey", "grey.x.12", "grey.b.", ".b.12"])
def test_no_label_of_ours(code):
    assert labelled_of(code) is None
