"""What must not be run holds in every search on a machine.

Source: common practice, no source: an engine that ran away is not started again for another
complaint.
"""

import pytest

from shimstock.workshop import acts
from shimstock.workshop.looking import see
from workshop.fault_shed import add_diesel, begun, look

STUCK, RUNAWAY = "rack-stuck", "will-not-stop"
MISSES = {"miss-when-warm": "seen"}


@pytest.fixture(autouse=True)
def diesel(db):
    return add_diesel()


def held(search):
    return [(each.about, each.search) for each in search.forbidden]


def say(number, **said):
    acts.say_in_search(machine="diesel", search=number, said=said, who="Ida")


def test_what_was_seen_and_found_in_one_search_holds_in_another_and_says_which():
    before = begun(MISSES)
    assert held(before) == [] and any(each.cautions for each in before.offers)
    begun({RUNAWAY: "seen", f"cause:{STUCK}": "there"})

    search = look(number=1)

    assert set(held(search)) == {(f"sign:{RUNAWAY}", 2), (f"cause:{STUCK}", 2)}
    assert all(" (search 2); " in line for line in search.must_not)
    assert all("Running engine" not in c.name for each in search.offers for c in each.cautions)
    assert {search.seen.book.signs[each.key].when for each in search.questions} <= {None}
    assert [(e.key, e.chance) for e in search.ranking] == [
        (e.key, e.chance) for e in before.ranking
    ]


def test_its_own_search_says_it_without_a_number():
    assert held(begun({RUNAWAY: "seen"})) == [(f"sign:{RUNAWAY}", None)]
    assert "(search" not in look().must_not[0]


def test_not_seen_in_one_search_takes_nothing_back_that_another_saw():
    begun({RUNAWAY: "seen"})
    begun({RUNAWAY: "not seen"} | MISSES)
    assert held(look(number=2)) == [(f"sign:{RUNAWAY}", 1)]

    say(1, **{RUNAWAY: "not seen"})
    assert held(look(number=2)) == []


def test_a_cause_that_was_cleared_later_in_another_search_is_not_there_any_more():
    begun({f"cause:{STUCK}": "cleared"} | MISSES)
    begun({f"cause:{STUCK}": "there"})
    assert held(look(number=1)) == [(f"cause:{STUCK}", 2)]

    say(1, **{f"cause:{STUCK}": "not looked"})
    say(1, **{f"cause:{STUCK}": "cleared"})
    assert held(look(number=1)) == []


def test_what_lifts_it_must_be_said_in_the_search_that_saw_it():
    begun({"knock": "seen"})
    begun({"oil-wrong": "cleared"} | MISSES)
    assert held(look(number=2)) == [("sign:knock", 1)]

    say(1, **{"oil-wrong": "cleared"})
    assert held(look(number=2)) == []


def test_a_search_that_was_given_up_holds_until_its_cause_is_put_right():
    begun({RUNAWAY: "seen"})
    acts.end_search(machine="diesel", given_up=True, who="Ida")
    begun(MISSES)
    assert held(look(number=2)) == [(f"sign:{RUNAWAY}", 1)]

    acts.fault_found(machine="diesel", cause=STUCK, ends=True, who="Ida")
    assert held(begun(MISSES)) == []


def test_a_number_that_can_be_read_no_more_holds_in_its_own_search_too():
    begun({"low-oil-pressure": "45 psi"})
    assert held(look()) == []
    see("diesel").row.said_in_searches.update(said="45 ells")

    assert held(look()) == [("sign:low-oil-pressure", None)]
