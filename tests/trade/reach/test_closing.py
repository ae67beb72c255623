from datetime import date

import pytest

from shimstock.trade.machine.state import JointNow, VerdictNow
from shimstock.trade.machine.words import JointWord, PartWord, Stage, Verdict
from shimstock.trade.reach.closing import why_not_close, why_not_open
from shimstock.trade.reach.target import UnknownName
from trade.reach.small import JOINTS, TODAY, book, machine, piece, whats

READY = JointNow(
    JointWord.GASKET_READY,
    since=TODAY,
    bolts_out=12,
    bolts_ready=12,
    faces_clean=True,
    gaskets_ready=("cover gasket",),
)
FINISHED = {("mesh", "", Stage.FINISHED): VerdictNow(Verdict.GOOD)}


def cover(now_joint=READY, **more):
    return machine("hood-bolts", joints={"cover-face": now_joint}, **{"verdicts": FINISHED, **more})


def why(now, joint="cover-face", **more):
    return whats(why_not_close(now, joint, **more))


def test_a_joint_with_everything_ready_may_be_closed():
    assert why(cover()) == []


def test_a_closed_joint_cannot_be_closed():
    assert "is not open" in why(machine())[0][1]


def test_a_missing_part_is_named():
    now = cover(pieces={("governor", ""): piece(PartWord.ON_ORDER)})

    assert why(now) == [("Governor", "is on order")]
    assert all(reason.hard for reason in why_not_close(now, "cover-face"))


def test_a_rejected_part_is_not_closed_over():
    assert why(cover(pieces={("cover", ""): piece(PartWord.REJECTED)})) == [
        ("Governor cover", "is rejected")
    ]


def test_eleven_bolts_where_twelve_came_off():
    assert why(cover(), bolts=11) == [("Governor cover to case", "11 where 12 came off")]
    assert why(cover(), bolts=13) == [("Governor cover to case", "13 where 12 came off")]


def test_fewer_bolts_than_the_book_need_a_reason():
    (reason,) = why_not_close(
        cover(JointNow(**{**vars(READY), "bolts_out": 10})), "cover-face", bolts=10
    )

    assert reason.why == "10 came off where the book has 12" and not reason.hard


def test_no_bolts_at_all_does_not_switch_counting_off():
    (reason,) = why_not_close(cover(JointNow(**{**vars(READY), "bolts_out": 0})), "cover-face")

    assert reason.why == "0 came off where the book has 12"


@pytest.mark.parametrize("word", [PartWord.IN_HAND, PartWord.BACK_AND_CHECKED, PartWord.DRY_FITTED])
def test_only_what_is_passed_or_built_in_is_closed_over(word):
    assert why(cover(pieces={("governor", ""): piece(word)})) == [("Governor", f"is {word}")]


def test_bolts_must_be_counted():
    uncounted = JointNow(**{**vars(READY), "bolts_ready": None})

    assert why(cover(uncounted)) == [("Governor cover to case", "fastenings are not counted")]
    assert why(cover(uncounted), bolts=12) == []


def test_the_gasket_must_be_ready_or_in_the_hand():
    without = JointNow(**{**vars(READY), "gaskets_ready": ()})

    assert why(cover(without)) == [("cover gasket, 0.015 in", "is not ready")]
    assert why(cover(without), gaskets=["cover gasket"]) == []


def test_faces_must_be_clean_where_something_is_sealed():
    dirty = JointNow(**{**vars(READY), "word": JointWord.OPEN, "faces_clean": False})

    assert why(cover(dirty)) == [("Governor cover to case", "faces are not clean")]
    assert why(cover(dirty), faces_clean=True) == []
    assert why(machine("hood-bolts"), "hood-bolts") == []


def test_what_the_joint_sets_must_be_read_again():
    assert why(cover(verdicts={})) == [
        ("Mesh, Governor, set by the gasket", "has no reading as finished")
    ]


@pytest.mark.parametrize(
    ("verdict", "says"), [(Verdict.WORN_OUT, "worn out"), (Verdict.BORDERLINE, "borderline")]
)
def test_a_reading_beyond_its_limit_must_be_decided(verdict, says):
    found = {("delivery", "left", Stage.FOUND): VerdictNow(verdict)}
    open_pump = {"left-pump-seat": READY}
    linings = {"linings": ("new", "")}

    def closing(verdicts):
        now = machine(joints=open_pump, verdicts=verdicts, answers=linings)
        return why(now, "left-pump-seat", gaskets=["O-ring"], bolts=12)

    assert closing(found) == [("Delivery, Pump, left", says)]
    accepted = {("delivery", "left", Stage.FOUND): VerdictNow(verdict, accepted="Ann: for show")}
    assert closing(accepted) == []
    # the right pump is not behind this joint, which is called the left one
    assert closing({("delivery", "right", Stage.FOUND): VerdictNow(verdict)}) == []


def test_a_joint_left_open_behind_is_closed_first():
    now = machine("hood-bolts", "tank-straps")

    assert why(now, "hood-bolts") == [("Tank to case", "is still open behind it")]


def test_a_joint_behind_with_another_way_in_does_not_hold_it():
    both = machine("tank-straps", "rod-pin", "governor-base", joints={"cover-face": READY})

    assert ("Governor to case", "is still open behind it") not in why(both)


def pumps(*makers, **more):
    pieces = {
        ("pump", side): piece(PartWord.PASSED, maker=maker, **more)
        for side, maker in zip(("left", "right"), makers, strict=True)
    }
    now = machine(joints={"left-pump-seat": READY}, pieces=pieces, answers={"linings": ("new", "")})
    return why_not_close(now, "left-pump-seat", gaskets=["O-ring"])


def test_a_pair_of_two_makes_is_not_closed_in():
    (reason,) = pumps("Ash", "Birch")

    assert reason.hard and "of two makes, not proved a pair: Ash and Birch" in reason.why
    assert "pump bench's sheet" in reason.would_do
    assert pumps("Ash", "Ash") == pumps("Ash", "") == ()


def test_a_pair_of_two_makes_proved_by_the_bench_is():
    assert pumps("Ash", "Birch", proved_pair=True) == ()


def test_a_mate_that_is_gone_holds_the_other():
    now = machine(
        joints={"left-pump-seat": READY},
        pieces={("pump", "right"): piece(PartWord.WANTED)},
        answers={"linings": ("new", "")},
    )

    reasons = why_not_close(now, "left-pump-seat", gaskets=["O-ring"])

    assert whats(reasons) == [("Pumps", "Pump, right is wanted")]


def test_the_asbestos_question_is_answered_before_its_joint_is_closed():
    now = machine(joints={"left-pump-seat": READY})

    (reason,) = why_not_close(now, "left-pump-seat", gaskets=["O-ring"])

    assert reason.hard and "asbestos" in reason.why
    assert "new / tested / treated as asbestos" in reason.would_do


def test_opening_names_what_must_come_first():
    (reason,) = why_not_open(machine("hood-bolts"), "governor-base")

    assert reason.would_do == (
        "open Governor cover to case or Tank to case and Throttle rod to governor first"
    )
    assert why_not_open(machine("cover-face"), "governor-base") == ()
    assert whats(why_not_open(machine("hood-bolts"), "hood-bolts"))[0][1] == "is open already"


def test_an_unknown_joint_is_said_so():
    with pytest.raises(UnknownName):
        why_not_close(machine(), "cover")
    with pytest.raises(UnknownName):
        why_not_open(machine(), "cover")


def test_dates_do_not_matter_for_closing():
    old = JointNow(**{**vars(READY), "since": date(2020, 1, 1)})

    assert why(cover(old)) == []


def test_a_joint_elsewhere_that_was_cut_off_before_does_not_hold_this_one():
    now = machine("hood-bolts", "governor-base", joints={"rod-pin": READY})

    assert why(now, "rod-pin", bolts=12) == []


def test_fluids_are_filled_later_and_what_is_used_again_is_not_asked_for():
    head = machine("hood-bolts", "tank-straps", joints={"head-face": READY})
    assert [what for what, _ in why(head, "head-face", bolts=12)] == ["head gasket"]

    again = {"rod-pin": {**JOINTS["rod-pin"], "uses": [{"seal": "felt", "one-use": False}]}}
    assert why(machine("rod-pin", of=book(again)), "rod-pin") == []


def test_a_size_that_need_not_be_the_same_may_differ():
    pieces = {
        ("pump", "left"): piece(PartWord.PASSED, maker="Ash", size="+0.010 in"),
        ("pump", "right"): piece(PartWord.PASSED, maker="Ash", size="standard"),
    }
    now = machine(joints={"left-pump-seat": READY}, pieces=pieces, answers={"linings": ("new", "")})

    assert why(now, "left-pump-seat", gaskets=["O-ring"]) == []


def pump_seat_with(word):
    seat = JointNow(JointWord.GASKET_READY, faces_clean=True, gaskets_ready=("O-ring",))
    answers = {"linings": ("new", "")}
    mate = {("pump", "right"): piece(word)}
    return machine(joints={"left-pump-seat": seat}, pieces=mate, answers=answers)


@pytest.mark.parametrize(
    "word",
    ["rejected", "to be made", "wanted", "quoted", "on order", "in the post", "lent", "scrapped"],
)
def test_a_joint_is_not_closed_while_a_mate_is_gone(word):
    (reason,) = why_not_close(pump_seat_with(PartWord(word)), "left-pump-seat")

    assert (reason.what, reason.why, reason.hard) == ("Pumps", f"Pump, right is {word}", True)


@pytest.mark.parametrize("word", ["fitted", "washed", "passed", "out at the bench", "built in"])
def test_a_mate_that_is_only_elsewhere_is_not_gone(word):
    assert why(pump_seat_with(PartWord(word)), "left-pump-seat") == []


@pytest.mark.parametrize(
    "word",
    ["fitted", "passed", "passed with a note", "built in", "painted"],
)
def test_parts_over_which_a_joint_may_be_closed(word):
    assert why(cover(pieces={("governor", ""): piece(PartWord(word))})) == []


def test_a_reading_as_finished_counts_before_the_one_as_found():
    found = {("mesh", "", Stage.FOUND): VerdictNow(Verdict.WORN_OUT, "0.014 in")}
    worn = {**FINISHED, ("mesh", "", Stage.FINISHED): VerdictNow(Verdict.WORN_OUT, "0.013 in")}

    assert why(cover(verdicts={**FINISHED, **found})) == []
    assert "0.013 in" in str(why(cover(verdicts={**found, **worn})))


def test_the_same_make_in_other_letters_is_one_make():
    assert pumps("Mark K", "mark k ") == ()
