import pytest

from shimstock.workshop.models import AnswerRow, GatePass
from shimstock.workshop.now import machine_now
from shimstock.workshop.refused import NotFound, Refused


def refused_by(do, gate: str) -> str:
    with pytest.raises(Refused) as refused:
        do.pass_gate(gate=gate)
    return " ".join(refused.value.reasons)


def test_an_answer_is_signed_and_a_newer_one_takes_its_place(machine, do):
    do.answer_point(point="stop", answer="no")
    entry = do.answer_point(point="stop", answer="yes", reason="tried twice")

    answer = machine_now(machine).answers["stop"]
    assert (answer.answer, answer.by, answer.reason) == ("yes", "Ann", "tried twice")
    assert AnswerRow.objects.count() == 2
    assert entry.says == "Does the stop work by hand? yes, because tried twice."
    do.undo(entry)
    assert machine_now(machine).answers["stop"].answer == "no"


def test_an_unknown_question_is_answered_with_the_nearest(do):
    with pytest.raises(NotFound, match="Did you mean degreased"):
        do.answer_point(point="degresed", answer="yes")


def test_an_empty_answer_is_none(do):
    with pytest.raises(Refused, match="empty answer"):
        do.answer_point(point="stop", answer="  ")


def test_a_question_is_set_aside_only_with_a_reason_and_never_a_hard_one(machine, do):
    with pytest.raises(Refused, match="say why it is not needed"):
        do.answer_point(point="degreased", answer="Not needed")
    with pytest.raises(Refused, match="cannot be set aside"):
        do.answer_point(point="stop", answer="not needed", reason="we are in a hurry")

    do.answer_point(point="degreased", answer="not needed", reason="bare metal")

    assert set(machine_now(machine).answers) == {"degreased"}


def test_any_open_point_that_is_not_hard_is_set_aside_with_a_reason(machine, do):
    do.open_joint(joint="J1")
    with pytest.raises(Refused, match="close it; or “not needed”, and why"):
        do.answer_point(point="joint:hood-joint", answer="yes")

    entry = do.answer_point(point="joint:hood-joint", answer="not needed", reason="it runs open")

    assert entry.says == "hood to case is open: not needed, because it runs open."
    assert "hood" not in refused_by(do, "first-start")


def test_a_gate_is_refused_with_every_open_point(machine, do):
    with pytest.raises(Refused) as refused:
        do.pass_gate(gate="paint")

    said = " ".join(refused.value.reasons)
    assert "side cover" in said
    assert "degreased" in said
    assert not GatePass.objects.exists()


def test_a_gate_is_passed_once_all_is_answered(machine, do):
    for joint in ("J2", "J3"):
        do.leak_check(joint=joint, result="dry", chalk=True)
    do.answer_point(point="degreased", answer="yes")

    entry = do.pass_gate(gate="Paint")

    assert machine_now(machine).passed == {"paint"}
    assert entry.says == "Passed: Paint."
    with pytest.raises(Refused, match="passed already"):
        do.pass_gate(gate="paint")
    undone = do.undo(entry)
    assert machine_now(machine).passed == frozenset()
    do.undo(undone)
    assert machine_now(machine).passed == {"paint"}


def test_a_hard_question_takes_no_reason_for_an_answer(do):
    do.take_reading(figure="end-float", typed="0.006", stage="as finished")
    do.answer_point(point="mask", answer="named")
    do.answer_point(point="stop", answer="no", reason="we are in a hurry")

    with pytest.raises(Refused, match="stop"):
        do.pass_gate(gate="first-start")


@pytest.mark.parametrize("typed", ["YES", "Yes.", " yes! "])
def test_an_answer_that_the_book_lists_is_kept_in_the_books_spelling(machine, do, typed):
    do.answer_point(point="stop", answer=typed)

    assert machine_now(machine).answers["stop"].answer == "yes"


def test_not_needed_may_be_typed_with_more_spaces(machine, do):
    with pytest.raises(Refused, match="cannot be set aside"):
        do.answer_point(point="stop", answer="not  needed", reason="we are in a hurry")
    do.answer_point(point="degreased", answer="Not  needed.", reason="it is new")
    assert machine_now(machine).answers["degreased"].answer == "not needed"
