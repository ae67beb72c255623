"""What searches for a fault leave standing on a machine."""

import pytest

from shimstock.workshop import acts
from shimstock.workshop.looking import see
from shimstock.workshop.models import Machine
from shimstock.workshop.now import machine_now
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


def test_ending_a_search_as_found_puts_nothing_right(told):
    acts.end_search(machine=told, who="Ann")

    assert first_start(told) == [f"fault:cause:{STUCK}"]


def test_what_was_said_last_counts_in_whichever_search(told):
    acts.end_search(machine=told, who="Ann")
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
