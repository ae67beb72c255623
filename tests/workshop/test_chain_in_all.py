"""A fan that rocks too far, told as a whole and then place by place; scene 1 of an invented shed.

That a whole calls no gear worn is common practice, no source.
"""

import pytest

from shimstock.trade.machine.words import Stage
from shimstock.workshop import acts
from shimstock.workshop.looking import see
from shimstock.workshop.models import VerdictRow
from workshop.fault_shed import add_diesel

pytestmark = pytest.mark.django_db
ROCK = ["0.36", "0.34", "0.36", "0.34"]
CHAIN = "Put right what is worn in Fan drive, crankshaft to fan"


@pytest.fixture
def machine():
    return add_diesel()


def read(figure, *typed):
    return acts.take_reading(machine="diesel", figure=figure, typed=list(typed), who="Ida")


def rocked_and_held():
    read("fan-rock", *ROCK)
    read("fan-rock-camshaft-held", "0.290")
    read("fan-rock-bevel-held", "0.090")


def whole():
    return VerdictRow.objects.get(figure="fan-rock", current=True)


def next_said():
    return [each.says for each in see("diesel").to_do]


def test_the_diary_calls_it_too_much_in_all(machine):
    assert read("fan-rock", *ROCK).entry.says.endswith(": too much in all.")


def test_a_held_reading_changes_what_is_said_of_the_whole(machine):
    rocked_and_held()

    assert "each of its places is told from the others" in whole().says
    assert whole().data["settles"] == ""


def test_undoing_a_held_reading_asks_for_it_again(machine):
    rocked_and_held()
    acts.undo(entry_id=see("diesel").latest, who="Ida")

    assert whole().data["settles"].startswith("Hold one shaft after another")


def test_the_next_thing_is_to_hold_and_then_what_the_chain_shows(machine):
    read("fan-rock", *ROCK)
    assert any("fan rock" in each.lower() for each in next_said())
    assert CHAIN not in next_said()

    rocked_and_held()
    assert CHAIN in next_said()
    assert not any("fan rock" in each.lower() for each in next_said())


def test_no_part_is_called_doubtful_for_it(machine):
    rocked_and_held()

    verdict = see("diesel").now.verdicts["fan-rock", "", Stage.FOUND]
    assert (verdict.too_much_in_all, verdict.told_apart) == (True, True)
    assert verdict.word == "too much in all"
