"""What searches for a fault leave standing on a machine."""

import pytest

from shimstock.trade.reach.faults_standing import causes_standing, signs_standing
from shimstock.workshop import acts
from shimstock.workshop.fault_search.view import see_search
from shimstock.workshop.looking import see
from shimstock.workshop.models import FaultSearch, Machine
from shimstock.workshop.now import machine_now, machines_now
from shimstock.workshop.refused import Refused
from workshop.fault_shed import add_diesel

STUCK, RUNAWAY = "rack-stuck", "will-not-stop"


@pytest.fixture
def told(db):
    """A machine on which somebody looks for why it will not stop, and finds the rack stuck."""
    slug = add_diesel().slug
    acts.begin_search(machine=slug, about="ran away", who="Ann")
    acts.say_in_search(machine=slug, said={RUNAWAY: "seen", f"cause:{STUCK}": "there"}, who="Ann")
    return slug


def searches(slug):
    return machine_now(Machine.objects.get(slug=slug)).searches


def first_start(slug):
    points = see(slug).gates["first-start"].open_points
    return [point.key for point in points if point.kind == "fault"]


def test_what_was_found_and_not_put_right_stands_and_is_unsafe(told):
    (search,) = searches(told)

    assert (search.goes_on, search.found, search.seen) == (True, (STUCK,), (RUNAWAY,))
    assert first_start(told) == [f"fault:cause:{STUCK}"]
    unsafe = [each for each in see(told).unsafe if "not put right" in each.says]
    assert [each.place for each in unsafe] == ["search:1"]
    assert [each["says"] for each in see(told).standing["searches"]] == [
        f"Search 1 goes on since {search.on.day} {search.on:%b}: ran away"
    ]


def test_no_reason_sets_it_aside(told):
    with pytest.raises(Refused, match="cannot be set aside"):
        acts.answer_point(
            machine=told, point=f"fault:cause:{STUCK}", answer="not needed", reason="so", who="Ann"
        )


def test_a_cause_put_right_stands_no_more_and_the_sign_until_the_search_is_over(told):
    acts.fault_found(machine=told, cause=STUCK, how="freed", who="Ann")
    assert first_start(told) == [f"fault:sign:{RUNAWAY}"]

    acts.end_search(machine=told, who="Ann")
    assert (first_start(told), searches(told)) == ([], ())


def test_a_search_that_is_ended_with_its_cause_put_right_leaves_nothing(told):
    acts.fault_found(machine=told, cause=STUCK, how="freed", ends=True, who="Ann")

    assert searches(told) == ()


def test_giving_up_a_search_puts_nothing_right(told):
    acts.end_search(machine=told, given_up=True, who="Ann")

    assert len(first_start(told)) == 1
    acts.take_up_search(machine=told, search=1, who="Ann")
    acts.say_in_search(machine=told, said={f"cause:{STUCK}": "not looked"}, who="Ann")
    acts.end_search(machine=told, given_up=True, who="Ann")
    assert first_start(told) == [f"fault:sign:{RUNAWAY}"]
    assert see(told).standing["searches"] == []


def test_a_search_in_which_nothing_was_put_right_does_not_end_as_found(told):
    """Each of the ways out that are told is accepted."""
    with pytest.raises(Refused, match="Nothing was put right in search 1") as refused:
        acts.end_search(machine=told, who="Ann")
    assert f"shimstock found {told} CAUSE --ends --search 1" in str(refused.value)
    assert f"shimstock searches {told} 1 --give-up" in str(refused.value)

    assert len(first_start(told)) == 1
    acts.end_search(machine=told, search=1, given_up=True, who="Ann")
    acts.take_up_search(machine=told, search=1, who="Ann")
    acts.fault_found(machine=told, cause=STUCK, ends=True, search=1, who="Ann")
    assert first_start(told) == []


def test_what_was_said_last_counts_in_whichever_search(told):
    acts.say_in_search(machine=told, said={RUNAWAY: "not seen"}, who="Ann")
    acts.end_search(machine=told, given_up=True, who="Ann")
    acts.begin_search(machine=told, who="Ben")
    acts.say_in_search(machine=told, said={f"cause:{STUCK}": "cleared"}, who="Ben")
    assert first_start(told) == []

    acts.say_in_search(machine=told, said={f"cause:{STUCK}": "there"}, who="Ben")
    assert [(each.number, each.found) for each in searches(told)] == [(2, (STUCK,))]


def test_a_gate_that_was_passed_rests_on_what_was_put_right(told, monkeypatch):
    right = acts.fault_found(machine=told, cause=STUCK, how="freed", ends=True, who="Ann")
    monkeypatch.setattr("shimstock.workshop.rules.why_not_pass", lambda *_: ())
    passed = acts.pass_gate(machine=told, gate="first-start", who="Ann")

    with pytest.raises(Refused, match=f"undo {passed.pk}"):
        acts.undo(entry_id=right.pk, who="Ann")


@pytest.fixture
def given_up(told):
    """The same, and the search was given up before anything was found."""
    acts.say_in_search(machine=told, said={f"cause:{STUCK}": "not looked"}, who="Ann")
    acts.end_search(machine=told, given_up=True, who="Ann")
    return told


def test_a_sign_is_explained_by_its_cause_put_right_in_another_search(given_up):
    assert first_start(given_up) == [f"fault:sign:{RUNAWAY}"]
    acts.begin_search(machine=given_up, who="Ben")
    acts.fault_found(machine=given_up, cause=STUCK, who="Ben")
    assert first_start(given_up) == [f"fault:sign:{RUNAWAY}"]  # that search is not over yet

    acts.end_search(machine=given_up, who="Ben")

    assert first_start(given_up) == []


def test_a_sign_is_explained_by_its_cause_put_right_outside_of_any_search(given_up):
    right = acts.fault_found(machine=given_up, cause=STUCK, who="Ben")
    assert first_start(given_up) == []

    acts.undo(entry_id=right.pk, who="Ben")
    assert first_start(given_up) == [f"fault:sign:{RUNAWAY}"]


def test_a_sign_is_not_explained_by_something_else_nor_by_what_was_put_right_before(given_up):
    acts.fault_found(machine=given_up, cause="fan-bearings-worn", who="Ben")
    assert first_start(given_up) == [f"fault:sign:{RUNAWAY}"]

    acts.fault_found(machine=given_up, cause=STUCK, who="Ben")
    acts.begin_search(machine=given_up, who="Ben")
    acts.say_in_search(machine=given_up, said={RUNAWAY: "seen"}, who="Ben")
    assert [each.number for each in searches(given_up)] == [2]
    assert first_start(given_up) == [f"fault:sign:{RUNAWAY}"]


def test_a_sign_stands_where_what_was_put_right_is_none_of_its_causes(told):
    """It may have a reason that the book does not list: then somebody says it is seen no more."""
    acts.say_in_search(machine=told, said={f"cause:{STUCK}": "cleared"}, who="Ann")
    acts.fault_found(machine=told, cause="fan-bearings-worn", ends=True, who="Ann")
    assert first_start(told) == [f"fault:sign:{RUNAWAY}"]

    acts.take_up_search(machine=told, search=1, who="Ann")
    acts.say_in_search(machine=told, said={f"sign:{RUNAWAY}": "not seen"}, who="Ann")

    assert first_start(told) == []


def test_a_sign_of_a_search_that_was_given_up_is_not_explained_by_what_did_not_help(told):
    acts.fault_found(machine=told, cause=STUCK, who="Ann")
    acts.end_search(machine=told, given_up=True, who="Ann")

    assert first_start(told) == [f"fault:sign:{RUNAWAY}"]


def test_a_search_that_ended_as_found_before_its_repair_was_taken_back_explains_nothing(told):
    """As in a shed of before, in which nothing stood against ending so."""
    FaultSearch.objects.update(ended=FaultSearch.FOUND)
    acts.begin_search(machine=told, who="Ben")
    acts.say_in_search(machine=told, said={f"cause:{STUCK}": "cleared"}, who="Ben")

    assert first_start(told) == [f"fault:sign:{RUNAWAY}"]


@pytest.mark.parametrize("over", [False, True])
def test_what_would_do_is_accepted_for_a_cause(told, over):
    if over:
        acts.end_search(machine=told, given_up=True, who="Ann")
    (cause,) = causes_standing(see(told).now)
    again = "take search 1 up again, and there: " if over else "in search 1: "
    assert cause.would_do == again + "put it right, and write that down"

    if over:
        acts.take_up_search(machine=told, search=1, who="Ann")
    acts.fault_found(machine=told, cause=STUCK, search=1, who="Ann")
    assert list(causes_standing(see(told).now)) == []


@pytest.mark.parametrize("over", [False, True])
@pytest.mark.parametrize("way", ["put right", "not seen"])
def test_what_would_do_is_accepted_for_a_sign(given_up, over, way):
    if not over:
        acts.take_up_search(machine=given_up, search=1, who="Ann")
    (sign,) = signs_standing(see(given_up).now)
    again = "take search 1 up again, and there: " if over else "in search 1: "
    assert sign.would_do == again + "find why, put it right and end the search; or say not seen"

    if over:
        acts.take_up_search(machine=given_up, search=1, who="Ann")
    if way == "not seen":
        acts.say_in_search(machine=given_up, search=1, said={RUNAWAY: "not seen"}, who="Ann")
    else:
        acts.fault_found(machine=given_up, search=1, cause=STUCK, who="Ann")
        acts.end_search(machine=given_up, search=1, who="Ann")
    assert list(signs_standing(see(given_up).now)) == []


def test_a_cause_that_is_there_again_after_it_was_put_right_stands(told):
    acts.fault_found(machine=told, cause=STUCK, who="Ann")
    acts.say_in_search(machine=told, said={f"cause:{STUCK}": "there"}, who="Ann")

    assert first_start(told) == [f"fault:cause:{STUCK}"]


def test_what_is_put_right_on_another_machine_or_taken_back_puts_nothing_right(told):
    other = add_diesel("other").slug
    acts.fault_found(machine=other, cause=STUCK, who="Ann")
    assert first_start(told) == [f"fault:cause:{STUCK}"]

    right = acts.fault_found(machine=told, cause=STUCK, ends=True, who="Ann")
    assert first_start(told) == []
    acts.undo(entry_id=right.pk, who="Ann")
    assert first_start(told) == [f"fault:cause:{STUCK}"]


def test_of_two_machines_that_are_looked_at_at_once_each_has_its_own(told):
    other = add_diesel("other")
    acts.fault_found(machine="other", cause=STUCK, who="Ann")

    here = Machine.objects.get(slug=told)
    found = machines_now([here, other])
    assert [each.found for each in found[here.pk].searches] == [(STUCK,)]
    assert found[other.pk].searches == ()


def test_what_the_book_does_not_know_any_more_is_left_out(told):
    rows = Machine.objects.get(slug=told).said_in_searches
    rows.filter(about=f"cause:{STUCK}").update(about="cause:gone")
    rows.filter(about=f"sign:{RUNAWAY}").update(about="sign:gone")

    (search,) = searches(told)
    assert (search.found, search.seen) == ((), ())


def test_a_cause_that_was_cleared_lets_checks_run_and_opens_no_gate(db):
    slug = add_diesel().slug
    acts.begin_search(machine=slug, who="Ann")
    acts.say_in_search(machine=slug, said={"knock": "seen"}, who="Ann")
    assert first_start(slug) == ["fault:sign:knock"]

    acts.say_in_search(machine=slug, said={"oil-wrong": "cleared"}, who="Ann")
    assert [each.cleared for each in searches(slug)] == [("oil-wrong",)]
    assert see_search(see(slug), FaultSearch.objects.get()).forbidden == ()
    assert first_start(slug) == ["fault:sign:knock"]


@pytest.mark.parametrize(("said", "stands"), [("5 psi", True), ("45 psi", False), ("5 ells", True)])
def test_a_number_counts_as_seen_where_it_is_low_or_cannot_be_read_any_more(db, said, stands):
    """The starter's limit of use lies between the two; what nobody can read is no all-clear."""
    slug = add_diesel().slug
    acts.begin_search(machine=slug, who="Ann")
    acts.say_in_search(machine=slug, said={"low-oil-pressure": "5 psi"}, who="Ann")
    Machine.objects.get(slug=slug).said_in_searches.update(said=said)

    assert first_start(slug) == (["fault:sign:low-oil-pressure"] if stands else [])
