"""What comes next on a machine. The order is common practice, no source."""

from datetime import date

import pytest

from shimstock.trade.machine.reading import read_book
from shimstock.trade.machine.starters import starter_text
from shimstock.trade.machine.state import JointNow, MachineNow, PieceNow, VerdictNow
from shimstock.trade.machine.words import JointWord, PartWord, Stage, Verdict
from shimstock.trade.reach.next_things import NextThing, next_things, not_to_be_trusted

TODAY, MONDAY = date(2026, 3, 9), date(2026, 3, 2)


def machine(**state):
    return MachineNow(read_book(starter_text("two-cylinder-diesel")), TODAY, **state)


def opened(since=MONDAY, covered=False):
    return JointNow(JointWord.OPEN, since=since, covered=covered)


def test_what_spoils_comes_before_what_is_in_doubt_and_that_before_what_is_away():
    now = machine(
        joints={"timing-cover": opened()},
        verdicts={("liner-bore", "1", Stage.FOUND): VerdictNow(Verdict.BORDERLINE, "")},
        pieces={("thermostat", ""): PieceNow(PartWord.LENT)},
    )

    assert next_things(now) == (
        NextThing("cover", "timing-cover"),
        NextThing("settle", "liner-bore", "1"),
        NextThing("ask after", "thermostat"),
    )


def test_only_the_two_that_stood_open_longest_are_to_be_covered_next():
    days = {"timing-cover": 4, "rocker-cover": 2, "water-pump-flange": 3}
    now = machine(joints={key: opened(date(2026, 3, day)) for key, day in days.items()})

    covers = [thing.where for thing in next_things(now) if thing.kind == "cover"]
    assert covers == ["rocker-cover", "water-pump-flange"]


def test_a_doubt_that_somebody_accepted_is_settled():
    accepted = VerdictNow(Verdict.BORDERLINE, "", accepted=True)
    now = machine(verdicts={("liner-bore", "1", Stage.FOUND): accepted})

    assert next_things(now) == ()


@pytest.mark.parametrize(
    ("word", "wrong"),
    [
        (JointWord.SEALED, "nipped, not torqued"),
        (JointWord.DRY_FITTED, "only tried dry"),
        (JointWord.LEAKING, "leaks"),
        (JointWord.TORQUED, None),
        (JointWord.LEAK_CHECKED, None),
    ],
)
def test_a_joint_that_is_not_done_with_is_not_to_be_run_on(word, wrong):
    now = machine(joints={"timing-cover": JointNow(word)})

    assert not_to_be_trusted(now).get("timing-cover") == wrong


def test_a_doubt_as_found_that_was_put_right_is_no_doubt():
    bore = ("liner-bore", "1")
    now = machine(
        verdicts={
            (*bore, Stage.FOUND): VerdictNow(Verdict.BORDERLINE, ""),
            (*bore, Stage.FINISHED): VerdictNow(Verdict.GOOD, ""),
        }
    )

    assert next_things(now) == ()
