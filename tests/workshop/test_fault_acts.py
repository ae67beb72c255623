"""A search for a fault: begun, carried on, ended, taken up again; each act told and undone."""

from datetime import timedelta

import pytest

from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.workshop import acts
from shimstock.workshop.diary_told import place_in_short
from shimstock.workshop.fault_search.trail import trail
from shimstock.workshop.fault_search.words import find_search
from shimstock.workshop.looking import see
from shimstock.workshop.models import FaultFound, FaultSaid, FaultSearch
from shimstock.workshop.refused import NotFound, Refused
from workshop.fault_shed import FAN, add_diesel
from workshop.shed_book import MONDAY


@pytest.fixture
def diesel(db):
    return add_diesel()


@pytest.fixture
def search(diesel):
    acts.begin_search(machine=diesel, who="Ida", about="fan rocks", at=MONDAY)
    return FaultSearch.objects.get()


def say(said, **more):
    return acts.say_in_search(machine="diesel", said=said, who="Ida", **more)


def counting(search=1):
    rows = FaultSaid.objects.filter(search=search, withdrawn=False)
    return dict(rows.values_list("about", "said"))


def test_a_search_is_begun_with_what_it_is_about_and_who_is_there(diesel):
    entry = acts.begin_search(
        machine=diesel,
        who="Ida",
        about=" white smoke,  will not catch ",
        people=2,
        young=True,
        missing=["Dial gauge"],
    )

    row = FaultSearch.objects.get()
    assert (row.number, row.about, row.ended) == (1, "white smoke, will not catch", "")
    assert (row.people, row.young, row.missing) == (2, True, ["dial gauge"])
    assert entry.says == "Began search 1: white smoke, will not catch."
    assert entry.places == ["search:1"]


def test_several_things_are_said_at_once_in_one_entry(search):
    entry = say({"S14": "seen", "sign:hunts": "Not seen", "gear-loose": "cleared"})

    assert counting() == {
        "sign:fan-rocks": "seen", "sign:hunts": "not seen", "cause:gear-loose": "cleared",
    }  # fmt: skip
    assert entry.says == (
        "Search 1: Fan rocks too far, or a rattle at the governor (S14): seen; "
        "Engine hunts or surges (S08): not seen; "
        "Gear or fan hub loose on its shaft: key, rivets, splines (C33): cleared."
    )


def test_what_is_said_again_counts_instead_and_not_looked_takes_it_back(search):
    say({"S14": "seen"})
    say({"S14": "not seen"})
    assert counting() == {"sign:fan-rocks": "not seen"}

    say({"S14": "not looked"})
    assert counting() == {}
    assert FaultSaid.objects.count() == 2  # nothing is deleted


def test_a_number_is_kept_as_typed_where_a_figure_belongs_to_the_sign(search):
    say({"S14": "0.35 in"})
    assert counting() == {"sign:fan-rocks": "0.35 in"}

    with pytest.raises(NotUnderstood, match="12 psi is a pressure"):
        say({"S14": "12 psi"})
    with pytest.raises(Refused, match=r"'0\.35' cannot be said of Engine hunts or surges"):
        say({"S08": "0.35"})


@pytest.mark.parametrize(
    ("said", "message"),
    [
        ({"S14": "there"}, "seen, not seen or not looked or a number would do"),
        ({"C33": "seen"}, "there, cleared or not looked would do"),
        ({}, "nothing new"),
        ({"S14": "not looked"}, "nothing new"),
    ],
)
def test_what_cannot_be_said_is_refused(search, said, message):
    with pytest.raises(Refused, match=message):
        say(said)


def test_an_unknown_sign_names_near_ones_and_an_ambiguous_one_all(search):
    with pytest.raises(NotFound, match=r"Did you mean.*fan-rocks"):
        say({"fan-rok": "seen"})
    with pytest.raises(Refused, match=r"more than one sign; .*black-smoke"):
        say({"smoke": "seen"})


def test_a_sign_is_known_by_how_a_person_says_it(search):
    say({"wag the fan": "seen"})

    assert counting() == {"sign:fan-rocks": "seen"}


def test_undo_takes_back_what_was_said_and_puts_back_what_counted(search):
    say({"S14": "seen"})
    entry = say({"S14": "not seen", "S08": "seen"})

    acts.undo(entry_id=entry.pk, who="Ida")

    assert counting() == {"sign:fan-rocks": "seen"}


def test_a_search_in_which_something_was_said_is_not_undone_from_under_it(search):
    say({"S14": "seen"})
    begun = search.machine.diary.get(act="begin search")

    with pytest.raises(Refused, match="rests on it"):
        acts.undo(entry_id=begun.pk, who="Ida")


def test_an_undone_search_leaves_its_number_to_nobody(search):
    acts.undo(entry_id=search.machine.diary.latest("pk").pk, who="Ida")
    with pytest.raises(Refused, match="No search for a fault goes on"):
        say({"S14": "seen"})

    acts.begin_search(machine="diesel", who="Ida")
    assert find_search(search.machine).number == 2


@pytest.fixture
def two_searches(search):
    acts.begin_search(machine="diesel", about="brake pulls", who="Ida")


@pytest.mark.parametrize(
    "act",
    [
        lambda: say({"C06": "there"}),
        lambda: acts.set_at_hand(machine="diesel", who="Ida", people=2),
        lambda: acts.fault_found(machine="diesel", cause="C06", who="Ida"),
        lambda: acts.end_search(machine="diesel", who="Ida"),
    ],
)
def test_of_two_searches_that_go_on_one_must_be_named(two_searches, act):
    entries = see("diesel").row.diary.count()
    says = (
        r"2 searches go on with Diesel: 2 \(brake pulls\) and 1 \(fan rocks\); "
        r"say which, as in --search 2"
    )
    with pytest.raises(Refused, match=says):
        act()

    assert see("diesel").row.diary.count() == entries


def test_once_only_one_goes_on_it_need_not_be_named(two_searches):
    acts.end_search(machine="diesel", who="Ida", search=2, given_up=True)

    assert say({"C06": "there"}).says.startswith("Search 1: ")


def test_a_search_in_the_words_of_one_that_goes_on_says_so(search):
    entry = acts.begin_search(machine="diesel", about="Fan ROCKS", who="Bert")

    assert entry.says == "Began search 2: Fan ROCKS. One like it goes on: number 1."
    acts.end_search(machine="diesel", who="Ida", search=1, given_up=True)
    acts.end_search(machine="diesel", who="Ida", search=2, given_up=True)
    again = acts.begin_search(machine="diesel", about="fan rocks", who="Ida")
    assert again.says == "Began search 3: fan rocks."


def test_a_search_in_which_the_same_is_seen_as_in_another_says_so_once(two_searches):
    def said_in(number, said):
        return acts.say_in_search(machine="diesel", said=said, who="Ida", search=number).says

    assert "One like it" not in said_in(1, {"S14": "seen", "S06": "not seen"})
    assert "One like it" not in said_in(2, {"S09": "not seen"})
    assert said_in(2, {"S14": "seen"}).endswith(" One like it goes on: number 1.")
    assert "One like it" not in said_in(2, {"S06": "not seen"})
    assert "One like it" not in said_in(1, {"S09": "not seen"})  # it was there before


def test_what_was_seen_and_taken_back_makes_no_search_like_another(two_searches):
    def said_in(number, said):
        return acts.say_in_search(machine="diesel", said={"S14": said}, who="Ida", search=number)

    said_in(1, "seen")
    said_in(1, "not looked")

    assert "One like it" not in said_in(2, "seen").says


def test_who_and_what_is_at_hand_is_set_and_undone(search):
    entry = acts.set_at_hand(machine="diesel", who="Ida", people=2, missing=["dial gauge"])

    search.refresh_from_db()
    assert entry.says == "Search 1: 2 people at hand, without dial gauge."
    assert (search.people, search.young, search.missing) == (2, False, ["dial gauge"])
    acts.undo(entry_id=entry.pk, who="Ida")
    search.refresh_from_db()
    assert (search.people, search.missing) == (1, [])


def test_nobody_and_unknown_tools_are_refused(search):
    with pytest.raises(Refused, match="at least 1"):
        acts.set_at_hand(machine="diesel", who="Ida", people=0)
    with pytest.raises(NotFound, match=r"no tool 'dial gage'.*dial gauge"):
        acts.set_at_hand(machine="diesel", who="Ida", missing=["dial gage"])
    with pytest.raises(Refused, match="Nothing changes"):
        acts.set_at_hand(machine="diesel", who="Ida", people=1)


def test_a_search_is_given_up_and_taken_up_again_a_month_later(search):
    say(FAN, at=MONDAY)
    acts.end_search(machine="diesel", who="Ida", given_up=True, at=MONDAY)
    with pytest.raises(Refused, match=r"No search for a fault goes on.*take an earlier one up"):
        say({"S15": "seen"})
    with pytest.raises(Refused, match=r"is over \(given up\); take it up again first"):
        say({"S15": "seen"}, search=1)

    later = MONDAY + timedelta(days=31)
    entry = acts.take_up_search(machine="diesel", search=1, who="Ben", at=later)
    say({"S15": "not seen"})

    assert entry.says == "Took up search 1 again: fan rocks."
    assert len(counting()) == 5
    with pytest.raises(Refused, match="goes on still"):
        acts.take_up_search(machine="diesel", search=1, who="Ben")
    with pytest.raises(NotFound, match="no search '7'"):
        acts.take_up_search(machine="diesel", search=7, who="Ben")


def test_the_trail_of_a_search_reads_back_from_the_diary(search):
    acts.begin_search(machine="diesel", who="Ben", about="brakes")
    say({"S14": "seen"}, search=1)
    say({"S22": "seen"}, search=2)
    acts.end_search(machine="diesel", who="Ida", given_up=True, search=1)

    steps = trail(search.machine, 1, 10)[::-1]

    assert [each.entry.act for each in steps] == ["begin search", "say in search", "end search"]
    acts.undo(entry_id=steps[-1].entry.pk, who="Ida")
    steps = trail(search.machine, 1, 10)
    assert [each.undone for each in steps] == [False, True, False, False]
    acts.undo(entry_id=steps[0].entry.pk, who="Ida")  # so that it is over again
    steps = trail(search.machine, 1, 10)
    assert [each.undone for each in steps] == [False, True, False, False, False]


def test_what_was_found_and_put_right_ends_the_search_if_one_says_so(search):
    entry = acts.fault_found(
        machine="diesel", cause="C31", how="new pair of gears", who="Ida", ends=True
    )

    search.refresh_from_db()
    assert search.ended == "found"
    assert counting() == {"cause:governor-mesh-worn": "there"}
    assert entry.says == (
        "Found and put right: Governor gear and camshaft gear worn in mesh (C31), "
        "new pair of gears. Search 1 is over."
    )
    acts.undo(entry_id=entry.pk, who="Ida")
    search.refresh_from_db()
    assert (search.ended, counting()) == ("", {})
    assert not FaultFound.objects.filter(withdrawn=False).exists()


def test_what_was_put_right_is_cleared_where_the_search_goes_on(search):
    acts.fault_found(machine="diesel", cause="C31", who="Ida")
    assert counting() == {"cause:governor-mesh-worn": "cleared"}

    acts.fault_found(machine="diesel", cause="C33", who="Ida", ends=True)
    acts.take_up_search(machine="diesel", search=1, who="Ida")
    assert counting() == {
        "cause:governor-mesh-worn": "cleared", "cause:gear-loose": "cleared",
    }  # fmt: skip


def test_a_fault_may_be_found_without_a_search(diesel):
    acts.fault_found(machine="diesel", cause="thermostat stuck", who="Ida")
    assert FaultFound.objects.get().search is None

    with pytest.raises(Refused, match="No search goes on that could end"):
        acts.fault_found(machine="diesel", cause="C31", who="Ida", ends=True)


def test_places_of_a_search_are_called_by_marks(diesel):
    book = see("diesel").book

    assert place_in_short(book, "search:3") == "Search 3"
    assert place_in_short(book, "search:3:sign:fan-rocks") == "Search 3, S14"
    assert place_in_short(book, "found:gear-loose") == "C33"
