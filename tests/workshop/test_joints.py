from datetime import timedelta

import pytest

from shimstock.trade.machine.words import JointWord
from shimstock.trade.numbers.not_understood import HardlyMeant, NotUnderstood
from shimstock.workshop.models import DiaryEntry, JointState
from shimstock.workshop.now import machine_now
from shimstock.workshop.refused import NotFound, Refused
from workshop.shed_book import MONDAY


def close_sump(do, *, opened: bool = False) -> DiaryEntry:
    if not opened:
        do.open_joint(joint="J3")
    return do.close_joint(joint="J3", faces_clean=True, gaskets=["sump gasket"], bolts=20)


def word(machine, joint) -> JointWord:
    return machine_now(machine).joint(joint).word


def test_opening_counts_the_bolts_and_dates_it(machine, do):
    entry = do.open_joint(joint="J3", at=MONDAY)

    now = machine_now(machine).joint("sump-joint")
    assert (now.word, now.bolts_out, now.since) == (JointWord.OPEN, 20, MONDAY.date())
    assert entry.says == "Opened sump to case (J3)."
    row = JointState.objects.get()
    assert entry.before[f"jointstate:{row.pk}"]["word"] == "undisturbed"
    assert entry.after[f"jointstate:{row.pk}"]["word"] == "open"


def test_bolts_that_were_missing_and_the_gasket_found_are_written_down(machine, do):
    do.open_joint(joint="J3", bolts_out=19, thickness_found="0.030 in")

    now = machine_now(machine).joint("sump-joint")
    assert (now.bolts_out, now.thickness_found) == (19, "0.030 in")


def test_more_bolts_or_another_gasket_than_the_books_are_asked_about_and_kept_if_meant(machine, do):
    odd = {"joint": "J2", "bolts_out": 13, "thickness_found": "3 mm"}
    do.open_joint(joint="J1")

    with pytest.raises(HardlyMeant, match="13 came off where the book has 12, and 3 mm"):
        do.open_joint(**odd)
    assert word(machine, "cover-joint") == JointWord.UNDISTURBED

    do.open_joint(**odd, meant=True)
    now = machine_now(machine).joint("cover-joint")
    assert (now.bolts_out, now.thickness_found) == (13, "3 mm")


def test_the_books_of_the_joint_itself_count_and_not_those_on_the_way(machine, do):
    do.open_joint(joint="J2", path=True, bolts_out=11)  # fewer are a finding

    assert machine_now(machine).joint("cover-joint").bolts_out == 11


def test_a_count_that_does_not_agree_says_which_opening_to_undo(machine, do):
    first = do.open_joint(joint="J3", bolts_out=18)
    do.undo(first)
    opened = do.open_joint(joint="J3", bolts_out=19)
    back = f"or, where the count that came off is wrong, undo entry {opened.pk}, the opening"

    with pytest.raises(Refused) as refused:
        do.close_joint(joint="J3", faces_clean=True, gaskets=["sump gasket"], bolts=20)
    assert [each.endswith(back) for each in refused.value.reasons] == [True, True]
    with pytest.raises(Refused) as refused:
        do.close_joint(joint="J3", bolts=19)
    assert [back in each for each in refused.value.reasons] == [False, False, True]

    do.undo(opened)
    do.open_joint(joint="J3")
    do.close_joint(joint="J3", faces_clean=True, gaskets=["sump gasket"], bolts=20)


def test_the_opening_to_undo_is_one_that_still_stands(do):
    opened = do.open_joint(joint="J3", bolts_out=19)
    close = {"faces_clean": True, "gaskets": ["sump gasket"]}
    closed = do.close_joint(joint="J3", bolts=19, reason="one is missing", **close)
    do.undo(do.open_joint(joint="J3"))
    do.undo(closed)

    with pytest.raises(Refused, match=f"undo entry {opened.pk}, the opening"):
        do.close_joint(joint="J3", bolts=20, **close)


def test_a_joint_behind_another_is_refused_and_opens_with_the_path(machine, do):
    with pytest.raises(Refused, match="hood"):
        do.open_joint(joint="cover-joint")
    assert not JointState.objects.exists()
    assert DiaryEntry.objects.count() == 1  # only the booking in

    entry = do.open_joint(joint="cover-joint", path=True)

    assert entry.says == "Opened hood to case (J1) and side cover to case (J2)."
    assert word(machine, "hood-joint") == word(machine, "cover-joint") == JointWord.OPEN
    do.undo(entry)
    assert word(machine, "hood-joint") == word(machine, "cover-joint") == JointWord.UNDISTURBED


def test_an_open_joint_is_not_opened_again(do):
    do.open_joint(joint="J1")

    with pytest.raises(Refused, match="open"):
        do.open_joint(joint="J1")


def test_covering_parks_an_open_joint(machine, do):
    do.open_joint(joint="J3")
    entry = do.cover_joint(joint="J3")

    now = machine_now(machine).joint("sump-joint")
    assert (now.word, now.covered) == (JointWord.PARKED_OPEN, True)
    do.undo(entry)
    assert not machine_now(machine).joint("sump-joint").covered


def test_a_closed_joint_needs_no_cover(do):
    with pytest.raises(Refused, match="undisturbed, not open: open it first"):
        do.cover_joint(joint="J3")


def test_what_is_ready_adds_up(machine, do):
    do.open_joint(joint="J3")
    do.ready_joint(joint="J3", faces_clean=True)
    assert word(machine, "sump-joint") == JointWord.FACES_CLEAN

    entry = do.ready_joint(joint="J3", gaskets=["sump-gasket"], bolts=19)

    now = machine_now(machine).joint("sump-joint")
    assert now.word == JointWord.GASKET_READY
    assert (now.faces_clean, now.gaskets_ready, now.bolts_ready) == (True, ("sump gasket",), 19)
    assert entry.says == (
        "Made ready sump to case (J3): faces clean, sump gasket and 19 bolts counted where 20 "
        "came off."
    )


def test_a_gasket_that_the_joint_does_not_use_is_not_known(do):
    do.open_joint(joint="J3")

    with pytest.raises(NotFound, match="Did you mean sump gasket"):
        do.ready_joint(joint="J3", gaskets=["sump gaskit"])


def test_closing_is_refused_with_every_reason_and_changes_nothing(machine, do):
    do.open_joint(joint="J3")

    with pytest.raises(Refused) as refused:
        do.close_joint(joint="J3", bolts=19)

    said = " ".join(refused.value.reasons)
    assert len(refused.value.reasons) >= 3
    assert all(each in said for each in ("faces", "sump gasket", "19"))
    now = machine_now(machine).joint("sump-joint")
    assert (now.word, now.bolts_ready) == (JointWord.OPEN, None)


def test_closing_seals_and_dates_it(machine, do):
    do.open_joint(joint="J3")
    do.cover_joint(joint="J3")
    entry = do.close_joint(
        joint="J3", faces_clean=True, gaskets=["sump gasket"], bolts=20, at=MONDAY
    )

    now = machine_now(machine).joint("sump-joint")
    assert (now.word, now.sealed_on, now.covered) == (JointWord.SEALED, MONDAY.date(), False)
    assert entry.says == "sump to case (J3): sealed."
    do.undo(entry)
    assert word(machine, "sump-joint") == JointWord.PARKED_OPEN


def test_a_sealed_joint_is_torqued_at_once_or_later(machine, do):
    for joint in ("J1", "J3"):
        do.open_joint(joint=joint)
    do.close_joint(joint="J1", faces_clean=True, torqued=True)
    do.close_joint(joint="J3", faces_clean=True, gaskets=["sump gasket"], bolts=20)
    do.close_joint(joint="J3", torqued=True)

    assert word(machine, "hood-joint") == word(machine, "sump-joint") == JointWord.TORQUED


def test_a_weep_may_be_torqued_again(machine, do):
    close_sump(do)
    do.leak_check(joint="J3", result="weeping")

    do.close_joint(joint="J3", torqued=True)

    assert word(machine, "sump-joint") == JointWord.TORQUED


def test_a_reason_replaces_what_is_not_hard_and_the_diary_tells_it(machine, do):
    do.open_joint(joint="J3")
    entry = do.close_joint(
        joint="J3", gaskets=["sump gasket"], bolts=20, reason="it comes off again next week"
    )

    assert word(machine, "sump-joint") == JointWord.SEALED
    assert entry.says == (
        "sump to case (J3): sealed, although sump to case faces are not clean, "
        "because it comes off again next week."
    )


def test_no_reason_replaces_what_is_hard(machine, do):
    do.open_joint(joint="J3")

    with pytest.raises(Refused, match="sump gasket"):
        do.close_joint(joint="J3", faces_clean=True, bolts=20, reason="none in the shed")

    assert word(machine, "sump-joint") == JointWord.OPEN


def test_what_a_closed_joint_rests_on_cannot_be_undone_from_under_it(do):
    do.open_joint(joint="J3")
    do.move_piece(part="liner", piece="1", to="off")
    passed = do.move_piece(part="liner", piece="1", to="passed")
    closed = close_sump(do, opened=True)

    with pytest.raises(Refused, match=f"undo {closed.pk}"):
        do.undo(passed)

    opened_again = do.undo(closed)
    rejected = do.move_piece(part="liner", piece="1", to="rejected")
    with pytest.raises(Refused, match=f"undo {rejected.pk}"):
        do.undo(opened_again)  # would seal it over a piece that is rejected since


def test_an_answer_given_before_closing_stands_under_it(do):
    do.open_joint(joint="J3")
    answered = do.answer_point(point="stop", answer="yes")
    closed = close_sump(do, opened=True)

    with pytest.raises(Refused, match=f"undo {closed.pk}"):
        do.undo(answered)


def test_a_joint_closed_inside_stands_under_the_one_closed_over_it(do):
    do.open_joint(joint="J2", path=True)
    inside = do.close_joint(joint="J2", faces_clean=True, gaskets=["side gasket"], bolts=12)
    over = do.close_joint(joint="J1", faces_clean=True)

    with pytest.raises(Refused, match=f"undo {over.pk}"):
        do.undo(inside)


def test_a_dry_fit_needs_nothing_and_stays_open(machine, do):
    do.open_joint(joint="J3")
    do.close_joint(joint="J3", dry=True)

    now = machine_now(machine).joint("sump-joint")
    assert now.word == JointWord.DRY_FITTED
    assert now.is_open
    assert now.sealed_on is None


@pytest.mark.parametrize(
    ("result", "expected"),
    [
        ("dry", JointWord.LEAK_CHECKED),
        ("Weeping", JointWord.WEEPING),
        ("leaking", JointWord.LEAKING),
    ],
)
def test_a_leak_check_says_what_was_found(machine, do, result, expected):
    do.open_joint(joint="J3")
    do.close_joint(joint="J3", faces_clean=True, gaskets=["sump gasket"], bolts=20, torqued=True)
    do.leak_check(joint="J3", result=result, at=MONDAY)

    now = machine_now(machine).joint("sump-joint")
    assert now.word == expected
    assert now.leak_checked_on == (MONDAY.date() if result == "dry" else None)


@pytest.mark.parametrize("way", [{}, {"chalk": True}, {"standing": True}])
def test_what_was_found_wet_is_dealt_with_before_it_is_dry(machine, do, way):
    close_sump(do)
    do.leak_check(joint="J3", result="leaking")

    with pytest.raises(Refused, match=r"is leaking, .* since; tighten it again .* or open it"):
        do.leak_check(joint="J3", result="dry", **way)
    assert word(machine, "sump-joint") is JointWord.LEAKING


@pytest.mark.parametrize("result", ["dry", "weeping", "leaking"])
def test_a_joint_with_a_torque_is_checked_for_leaks_after_it_is_torqued(machine, do, result):
    do.open_joint(joint="J2", path=True)
    do.close_joint(joint="J2", faces_clean=True, gaskets=["side gasket"], bolts=12)

    with pytest.raises(Refused, match=r"not torqued yet.*write down the torque first"):
        do.leak_check(joint="J2", result=result)
    assert word(machine, "cover-joint") == JointWord.SEALED

    do.close_joint(joint="J2", torqued=True)
    do.leak_check(joint="J2", result=result)
    assert word(machine, "cover-joint") != JointWord.TORQUED


def test_a_joint_without_a_torque_in_the_book_may_be_checked_when_sealed(machine, do):
    close_sump(do)
    do.leak_check(joint="J3", result="dry")

    assert word(machine, "sump-joint") == JointWord.LEAK_CHECKED


def test_chalk_proves_an_undisturbed_joint_and_no_other(machine, do):
    do.leak_check(joint="J2", result="dry", chalk=True, at=MONDAY)

    now = machine_now(machine).joint("cover-joint")
    assert (now.word, now.dry_chalked_on) == (JointWord.UNDISTURBED, MONDAY.date())
    do.open_joint(joint="J3")
    with pytest.raises(Refused, match="chalk proves only a joint that is undisturbed"):
        do.leak_check(joint="J3", result="dry", chalk=True)


def test_a_joint_closed_here_that_stands_full_and_dry_is_chalk_dry_and_stays_as_it_is(machine, do):
    close_sump(do)
    entry = do.leak_check(joint="J3", result="dry", standing=True, at=MONDAY)

    now = machine_now(machine).joint("sump-joint")
    assert (now.word, now.dry_chalked_on) == (JointWord.SEALED, MONDAY.date())
    assert entry.says.endswith("standing, engine not run, found dry.")
    do.leak_check(joint="J3", result="weeping")
    assert machine_now(machine).joint("sump-joint").dry_chalked_on is None
    with pytest.raises(Refused, match="is weeping"):
        do.leak_check(joint="J3", result="dry", standing=True)


def test_a_joint_with_a_torque_is_not_seen_standing_before_it_is_torqued(do):
    do.open_joint(joint="J2", path=True)
    do.close_joint(joint="J2", faces_clean=True, gaskets=["side gasket"], bolts=12)

    with pytest.raises(Refused, match="write down the torque first"):
        do.leak_check(joint="J2", result="dry", standing=True)


def test_an_open_joint_cannot_be_checked_for_leaks(do):
    do.open_joint(joint="J3")

    with pytest.raises(Refused):
        do.leak_check(joint="J3", result="dry")
    with pytest.raises(Refused, match="standing full proves nothing; close it first"):
        do.leak_check(joint="J3", result="dry", standing=True)


def test_opening_again_forgets_the_seal_and_the_check(machine, do):
    do.leak_check(joint="J3", result="dry", chalk=True)
    entry = do.open_joint(joint="J3")

    assert machine_now(machine).joint("sump-joint").dry_chalked_on is None
    do.undo(entry)
    assert machine_now(machine).joint("sump-joint").dry_chalked_on is not None


def test_opening_again_asks_for_everything_anew(machine, do):
    close_sump(do)
    do.open_joint(joint="J3")

    now = machine_now(machine).joint("sump-joint")
    assert (now.faces_clean, now.gaskets_ready, now.bolts_ready) == (False, (), None)
    with pytest.raises(Refused) as refused:
        do.close_joint(joint="J3")
    assert len(refused.value.reasons) == 3


def test_the_days_stood_open_count_from_the_opening(machine, do):
    do.open_joint(joint="J3", at=MONDAY)
    do.ready_joint(joint="J3", faces_clean=True, at=MONDAY + timedelta(days=6))
    do.close_joint(joint="J3", dry=True, at=MONDAY + timedelta(days=7))

    now = machine_now(machine).joint("sump-joint")
    assert (now.word, now.since) == (JointWord.DRY_FITTED, MONDAY.date())
    close_sump(do, opened=True)
    assert machine_now(machine).joint("sump-joint").since > MONDAY.date()


@pytest.mark.parametrize("act", ["open_joint", "ready_joint", "close_joint"])
def test_no_fewer_bolts_than_none(machine, do, act):
    if act != "open_joint":
        do.open_joint(joint="J3")
    counted = {"bolts_out" if act == "open_joint" else "bolts": -3}

    with pytest.raises(Refused, match="-3 fastenings cannot be"):
        getattr(do, act)(joint="J3", **counted)


@pytest.mark.parametrize("typed", ["banana", "0.030 psi", ""])
def test_a_thickness_that_cannot_be_read_is_refused_at_once(machine, do, typed):
    with pytest.raises(NotUnderstood):
        do.open_joint(joint="J3", thickness_found=typed)
    assert word(machine, "sump-joint") == JointWord.UNDISTURBED
