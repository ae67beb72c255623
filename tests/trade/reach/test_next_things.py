"""What comes next on a machine. The order is common practice, no source."""

from datetime import date

import pytest

from shimstock.trade.machine.reading import read_book
from shimstock.trade.machine.starters import starter_text
from shimstock.trade.machine.state import JointNow, MachineNow, PieceNow, SearchNow, VerdictNow
from shimstock.trade.machine.words import (
    TOLD_APART,
    TOO_MUCH,
    JointWord,
    PartWord,
    Stage,
    Verdict,
)
from shimstock.trade.reach.next_things import NextThing, next_things, not_to_be_trusted
from shimstock.trade.reach.readable import WaitsFor

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


def test_a_closed_joint_for_which_the_book_has_no_torque_may_be_run_on():
    book = machine().book
    key = next(key for key, joint in book.joints.items() if not joint.has_torque)

    assert not_to_be_trusted(machine(joints={key: JointNow(JointWord.SEALED)})) == {}


def test_a_doubt_as_found_that_was_put_right_is_no_doubt():
    bore = ("liner-bore", "1")
    now = machine(
        verdicts={
            (*bore, Stage.FOUND): VerdictNow(Verdict.BORDERLINE, ""),
            (*bore, Stage.FINISHED): VerdictNow(Verdict.GOOD, ""),
        }
    )

    assert next_things(now) == ()


BORDERLINE = VerdictNow(Verdict.BORDERLINE, "")
COMPRESSION = {("compression", "2", Stage.FOUND): BORDERLINE}
OUT = {("cylinder-head", ""): PieceNow(PartWord.AT_MACHINIST)}


def test_compression_is_not_to_be_settled_while_the_head_is_away():
    """It is read in the cylinder, under the head, with the engine cranked."""
    now = machine(joints={"head": opened(covered=True)}, pieces=OUT, verdicts=COMPRESSION)

    assert next_things(now) == (
        NextThing("ask after", "cylinder-head", waiting=(("compression", "2"),)),
    )


def test_what_can_be_settled_as_the_machine_stands_is_named_instead():
    verdicts = COMPRESSION | {("liner-bore", "1", Stage.FOUND): BORDERLINE}
    now = machine(joints={"head": opened(covered=True)}, pieces=OUT, verdicts=verdicts)

    assert next_things(now)[0] == NextThing("settle", "liner-bore", "1")
    assert [thing.kind for thing in next_things(now)] == ["settle", "ask after"]


def test_what_a_doubt_waits_for_is_asked_after_first():
    away = {("thermostat", ""): PieceNow(PartWord.LENT)} | OUT
    now = machine(joints={"head": opened(covered=True)}, pieces=away, verdicts=COMPRESSION)

    assert [thing.where for thing in next_things(now)] == ["cylinder-head", "thermostat"]


@pytest.mark.parametrize("word", [PartWord.IN_THE_POST, PartWord.ON_ORDER, PartWord.REJECTED])
def test_what_is_not_there_is_not_read_again(word):
    """On the bench or on the machine."""
    pieces = {("liner", "1"): PieceNow(word)}
    now = machine(pieces=pieces, verdicts={("liner-bore", "1", Stage.FOUND): BORDERLINE})

    assert "settle" not in [thing.kind for thing in next_things(now)]


def test_the_other_piece_can_be_read_all_the_same():
    pieces = {("liner", "1"): PieceNow(PartWord.IN_THE_POST)}
    now = machine(pieces=pieces, verdicts={("liner-bore", "2", Stage.FOUND): BORDERLINE})

    assert next_things(now)[0] == NextThing("settle", "liner-bore", "2")


def test_what_lies_on_the_bench_is_read_there_and_not_what_the_engine_must_run_for():
    off = {("liner", "1"): PieceNow(PartWord.OFF), ("piston-rings", "2"): PieceNow(PartWord.OFF)}
    verdicts = COMPRESSION | {("liner-bore", "1", Stage.FOUND): BORDERLINE}

    assert next_things(machine(pieces=off, verdicts=verdicts)) == (
        NextThing("settle", "liner-bore", "1"),
    )


def test_a_clearance_waits_for_both_that_it_lies_between():
    """It is the piston's, by the book; the liner is away."""
    pieces = {("liner", "1"): PieceNow(PartWord.ON_ORDER)}
    now = machine(pieces=pieces, verdicts={("piston-clearance", "1", Stage.FOUND): BORDERLINE})

    assert next_things(now) == (
        NextThing("ask after", "liner", "1", waiting=(("piston-clearance", "1"),)),
    )


@pytest.mark.parametrize("figure", ["fan-rock", "fan-rock-camshaft-held"])
def test_play_at_the_end_of_a_chain_waits_for_every_gear_in_it(figure):
    pieces = {("governor-gear", ""): PieceNow(PartWord.IN_THE_POST)}
    now = machine(pieces=pieces, verdicts={(figure, "", Stage.FOUND): BORDERLINE})

    assert next_things(now) == (NextThing("ask after", "governor-gear", waiting=((figure, ""),)),)


def test_where_nothing_else_is_to_be_done_it_says_what_is_waited_for():
    stands = {"head": opened(covered=True)}
    waits = NextThing("wait", "compression", "2", until=WaitsFor("joint", "head"))
    assert next_things(machine(joints=stands, verdicts=COMPRESSION)) == (waits,)

    off = {("piston-rings", "2"): PieceNow(PartWord.BAGGED)}
    waits = NextThing("wait", "compression", "2", until=WaitsFor("piece", "piston-rings", "2"))
    assert next_things(machine(pieces=off, verdicts=COMPRESSION)) == (waits,)


def test_a_closed_machine_has_its_compression_settled():
    assert next_things(machine(verdicts=COMPRESSION)) == (NextThing("settle", "compression", "2"),)


@pytest.mark.parametrize(
    ("says", "accepted", "following"),
    [
        (f"0.35 in: {TOO_MUCH}; hold", "", (NextThing("settle", "fan-rock"),)),
        (f"0.35 in: {TOO_MUCH}; {TOLD_APART}", "", (NextThing("chain", "fan-drive"),)),
        (f"0.35 in: {TOO_MUCH}; {TOLD_APART}", "it stays", ()),
    ],
)
def test_a_chain_that_was_told_apart_is_not_held_again(says, accepted, following):
    whole = VerdictNow(Verdict.BORDERLINE, says, accepted)

    assert next_things(machine(verdicts={("fan-rock", "", Stage.FOUND): whole})) == following


@pytest.mark.parametrize("figure", ["compression", "cranking-volts"])
@pytest.mark.parametrize("left", [{"found": ("rack-stuck",)}, {"seen": ("will-not-stop",)}])
def test_a_doubt_for_which_the_engine_turns_waits_for_the_fault_that_stands(figure, left):
    piece = next(iter(machine().pieces_of(machine().book.measures[figure].of)))
    doubt = {(figure, piece, Stage.FOUND): VerdictNow(Verdict.BORDERLINE, "")}
    assert next_things(machine(verdicts=doubt)) == (NextThing("settle", figure, piece),)

    now = machine(verdicts=doubt, searches=(SearchNow(3, "", MONDAY, **left),))
    wait = NextThing("wait", figure, piece, until=WaitsFor("search", "3"))
    assert next_things(now) == (wait,)


def test_a_doubt_on_the_bench_waits_for_no_search_nor_any_for_a_sign_that_lets_it_run():
    bench = {("liner-bore", "1", Stage.FOUND): VerdictNow(Verdict.BORDERLINE, "")}
    stuck = (SearchNow(3, "", MONDAY, found=("rack-stuck",)),)
    assert [each.kind for each in next_things(machine(verdicts=bench, searches=stuck))] == [
        "settle"
    ]

    idle = {("fast-idle", "", Stage.FOUND): VerdictNow(Verdict.BORDERLINE, "")}
    fast = (SearchNow(3, "", MONDAY, seen=("overspeeds",)),)
    assert [each.kind for each in next_things(machine(verdicts=idle, searches=fast))] == ["settle"]
