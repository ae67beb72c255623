"""What the record says, before it is typeset."""

import doctest
from datetime import timedelta

import pytest

from faces.paper.club_book import LINER_1, MONDAY, PRINTED
from shimstock.faces.paper import lettering, wording
from shimstock.faces.paper.gather import gather
from shimstock.workshop.models import PieceState

pytestmark = pytest.mark.django_db
TUESDAY, FRIDAY = MONDAY + timedelta(days=1), MONDAY + timedelta(days=4)


def told(machine):
    return gather(machine, PRINTED).record


def joint(machine, label: str):
    (row,) = [row for row in told(machine).joints.opened if row.label == label]
    return row


def test_the_sayings():
    assert doctest.testmod(wording).failed == 0


def test_a_joint_has_the_days_of_its_acts(untouched, do):
    do.open_joint(joint="J2", at=MONDAY)
    do.close_joint(joint="J2", faces_clean=True, at=TUESDAY)
    do.close_joint(joint="J2", torqued=True, at=FRIDAY)

    row = joint(untouched, "J2")
    assert (row.opened, row.sealed, row.torqued) == ("2 Mar 2026", "3 Mar 2026", "6 Mar 2026")
    assert row.leak_checked == ""


def test_what_was_undone_has_no_day(untouched, do):
    do.open_joint(joint="J2", at=MONDAY)
    do.close_joint(joint="J2", faces_clean=True, at=TUESDAY)
    entry = do.close_joint(joint="J2", torqued=True, at=FRIDAY)
    do.undo(entry_id=entry.pk, who="Ann")

    row = joint(untouched, "J2")
    assert (row.word, row.sealed, row.torqued) == ("sealed", "3 Mar 2026", "")


def test_undoing_a_close_leaves_the_day_of_the_opening(untouched, do):
    do.open_joint(joint="J2", at=MONDAY)
    entry = do.close_joint(joint="J2", faces_clean=True, at=TUESDAY)
    do.undo(entry_id=entry.pk, who="Ann")

    row = joint(untouched, "J2")
    assert (row.word, row.opened, row.sealed) == ("open", "2 Mar 2026", "")


def test_opening_again_ends_what_was_closed(untouched, do):
    do.open_joint(joint="J2", at=MONDAY)
    do.close_joint(joint="J2", faces_clean=True, torqued=True, at=TUESDAY)
    do.open_joint(joint="J2", at=FRIDAY)

    row = joint(untouched, "J2")
    assert (row.opened, row.sealed, row.torqued) == ("6 Mar 2026", "", "")


def test_a_chalked_joint_is_counted_apart(untouched, do):
    do.leak_check(joint="J2", result="dry", chalk=True)

    joints = told(untouched).joints
    assert (joints.on_paint, joints.on_paint_checked, joints.on_paint_chalked) == (3, 0, 1)
    assert joints.opened == ()


def test_every_joint_is_opened_or_undisturbed(worked_on):
    joints = told(worked_on).joints

    assert len(joints.opened) == 2
    assert joints.undisturbed_count == 3


def test_a_paragraph_in_plain_words(worked_on):
    assert "2 of its 5 joints were opened; 1 joint stands open today. " in told(worked_on).summary
    assert "1 of 3 paint joints leak-checked or chalk-dry." in told(worked_on).summary


def test_of_an_untouched_machine_it_says_so(untouched):
    record = told(untouched)

    assert "None of its 5 joints has been opened. Nothing has been measured yet." in record.summary
    assert record.against == ()
    assert (record.first_day, record.workers) == ("2 Mar 2026", ("Ann",))


def test_people_and_days_come_from_the_diary(untouched, do):
    do.open_joint(joint="J2", at=FRIDAY)

    record = told(untouched)
    assert record.workers == ("Ann", "Béla")
    assert (record.first_day, record.last_day) == ("2 Mar 2026", "6 Mar 2026")


def test_what_stands_against_it(worked_on):
    lists = {each.title: each.items for each in told(worked_on).against}

    assert lists["Joints open"] == ("head to case (J1)",)
    (borderline,) = lists["Borderline: to be measured again"]
    assert borderline.startswith("valve lift: 0.2901 in (at least 0.290 in)")


def test_a_verdict_that_was_accepted_says_by_whom(worked_on, do):
    do.accept_verdict(figure="lift", reason="show ring only", at=FRIDAY)

    (row,) = [row for group in told(worked_on).figures for row in group.rows if row.mark == "F4"]
    assert row.accepted == "Accepted by Béla, 6 Mar 2026: show ring only"


def test_figures_without_a_reading_are_listed(worked_on):
    left = told(worked_on).left

    assert left.not_measured_count == 3  # the bore of liner 2, its taper, and the idle speed
    assert left.not_measured[0].items == ("liner bore (2)", "liner taper (2)", "idle speed")


def test_a_bore_is_charted_with_the_size_that_cleans_it_up(untouched, do):
    do.take_reading(figure="bore", piece="1", typed=LINER_1)

    (bore,) = gather(untouched, PRINTED).bores
    assert [trace.label for trace in bore.traces] == ["as found, thrust", "as found, pin"]
    assert bore.traces[0].values == (5.7592, 5.7554, 5.7532)
    assert bore.next_size is not None
    assert bore.next_size.label == "next size +0.020 in: 5.7700 in"


@pytest.mark.parametrize(
    ("makers", "proved", "said"),
    [
        (("Norra", ""), False, "maker's mark not noted on every piece"),
        (("Norra", "Norra"), False, "of one make"),
        (("Norra", "Halden"), False, "not proved a pair: Halden and Norra"),
        (("Norra", "Halden"), True, "proved to belong together"),
    ],
)
def test_what_is_known_of_a_set(untouched, makers, proved, said):
    for piece, maker in zip(("left", "right"), makers, strict=True):
        state = {"part": "pump", "piece": piece, "word": "bagged", "maker": maker}
        PieceState(machine=untouched, proved_pair=proved, **state).save()

    (pumps,) = told(untouched).parts.sets
    assert said in pumps.word


def test_a_set_of_which_nothing_is_noted_is_named(untouched):
    parts = told(untouched).parts

    assert (parts.sets, parts.sets_unknown) == ((), ("Pumps as a pair",))


def test_a_rejected_piece_breaks_its_set(untouched):
    PieceState(machine=untouched, part="pump", piece="left", word="rejected").save()

    (pumps,) = told(untouched).parts.sets
    assert pumps.word == "Pump, left is rejected"


def test_a_line_is_broken_at_its_gaps_and_loses_nothing():
    pieces = [("one two three ", "name"), ("four five", "state")]
    lines = lettering.broken(pieces, 7, 40)

    assert len(lines) > 1
    assert [word for line in lines for text, _ in line for word in text.split()] == (
        ["one", "two", "three", "four", "five"]
    )
    assert all(sum(lettering.width_of(text, 7) for text, _ in line) <= 40 for line in lines)


def test_what_is_out_of_setting_is_counted_and_listed_apart(worked_on, do):
    do.take_reading(figure="idle", typed="705")

    record = told(worked_on)
    counted = {each.word: each.count for each in record.verdicts}
    lists = {each.title: each.items for each in record.against}
    assert counted["out of setting"] == len(lists["Out of setting"]) == 1
    assert counted["worn out"] == len(lists.get("Worn out", ()))
    assert "1 out of setting" in record.summary
