from published.as_printed import as_printed
from shimstock.trade.machine.state import VerdictNow
from shimstock.trade.machine.words import Stage, Verdict
from shimstock.trade.measure.verdicts import verdicts
from trade.measure.typed import diesel, disagreements, read

BOOK = diesel()


def test_an_untouched_machine_has_everything_unmeasured():
    found = verdicts(BOOK, {})

    assert found.judged == {}
    assert ("liner-bore", "1") in found.not_measured
    assert ("liner-taper", "2") in found.not_measured


def test_what_was_read_or_follows_from_it_is_no_longer_unmeasured():
    six = "5.7592 5.7554 5.7532 5.7568 5.7546 5.7528"
    found = verdicts(BOOK, read(BOOK, **{"liner-bore 1": six}))

    left = set(found.not_measured)
    assert not left & {("liner-bore", "1"), ("liner-taper", "1"), ("liner-out-of-round", "1")}
    assert ("liner-bore", "2") in left


def test_the_worst_place_is_judged_and_named():
    found = verdicts(BOOK, read(BOOK, **{"pump-delivery": "24.2 21.6"}))

    assert "(pump 2)" in found.latest("pump-delivery").says
    assert found.latest("pump-delivery").verdict is Verdict.WORN_OUT


def test_as_finished_counts_before_as_found():
    readings = read(BOOK, **{"top-ring-gap 1": "0.070"})
    readings |= read(BOOK, Stage.FINISHED, **{"top-ring-gap 1": "0.027"})
    found = verdicts(BOOK, readings)

    (row,) = found.side_by_side
    assert (row.found.verdict, row.finished.verdict) == (Verdict.WORN_OUT, Verdict.GOOD)
    assert row.latest is row.finished is found.latest("top-ring-gap", "1")


def test_the_machines_state_gets_words_and_no_sizes_alone():
    found = verdicts(BOOK, read(BOOK, **{"piston-skirt 1": "5.7428", "top-ring-gap 1": "0.070"}))

    assert list(found.now) == [("top-ring-gap", "1", Stage.FOUND)]
    (now,) = found.now.values()
    assert now == VerdictNow(Verdict.WORN_OUT, found.latest("top-ring-gap", "1").says)


def test_a_bore_found_at_an_earlier_oversize_is_held_against_that():
    six = "5.7790 5.7754 5.7752 5.7768 5.7746 5.7740"
    found = verdicts(BOOK, read(BOOK, **{"liner-bore 1": six}))

    assert found.latest("liner-bore", "1").verdict is Verdict.SERVICEABLE  # limit 5.7800 at +0.020
    assert disagreements(found) == []


def test_a_standard_bore_worn_beyond_its_limit_is_not_taken_for_an_oversize():
    evenly = "5.7690 5.7684 5.7682 5.7678 5.7676 5.7670"
    one_place = "5.7710 5.7604 5.7602 5.7600 5.7596 5.7590"
    found = verdicts(BOOK, read(BOOK, **{"liner-bore 1": evenly, "liner-bore 2": one_place}))

    assert found.latest("liner-bore", "1").verdict is Verdict.WORN_OUT
    assert found.latest("liner-bore", "2").verdict is Verdict.WORN_OUT


def test_one_worn_throw_is_not_taken_for_an_undersize():
    throws = " ".join(["3.7480"] * 11 + ["3.7395"])

    assert (
        verdicts(BOOK, read(BOOK, **{"rod-journal": throws})).latest("rod-journal").verdict
        is Verdict.WORN_OUT
    )


def test_journals_ground_before_are_held_against_their_undersize():
    throws = " ".join(["3.7392"] * 12)

    assert (
        verdicts(BOOK, read(BOOK, **{"rod-journal": throws})).latest("rod-journal").verdict
        is Verdict.GOOD
    )


def test_a_taper_is_told_in_its_own_unit():
    # hand sum: 0.0060 in and 0.0024 in are 0.1524 mm and 0.06096 mm; ISO 1: 25.4 mm to the inch
    book = diesel(
        """
figures:
  liner-taper: {new: 0 .. 0.03 mm, limit: max 0.13 mm}
  liner-out-of-round: {new: 0 .. 0.02 mm, limit: max 0.08 mm}
"""
    )
    six = "5.7592 5.7554 5.7532 5.7568 5.7546 5.7528"
    found = verdicts(book, read(book, **{"liner-bore 1": six}))

    taper, round_ = (found.latest(key, "1") for key in ("liner-taper", "liner-out-of-round"))
    assert (taper.value, taper.unit, taper.verdict) == (as_printed("0.1524"), "mm", "worn out")
    assert (round_.value, round_.verdict) == (as_printed("0.06096"), "serviceable")
    assert disagreements(found) == []


def test_heights_of_two_are_compared_end_with_like_end():
    # hand sum: lowest places differ by 0.0004, highest by 0.0009; 0.0028 would be highest of one
    # against lowest of the other
    heights = {
        "liner-protrusion 1": "0.0021 0.0040 0.0030 0.0030",
        "liner-protrusion 2": "0.0025 0.0049 0.0032 0.0034",
    }
    found = verdicts(BOOK, read(BOOK, **heights))

    assert found.latest("liner-protrusion", "together").value == as_printed("0.0009")


def test_a_bore_read_at_its_worst_place_alone_is_not_taken_for_an_oversize():
    # 0.0112 over the limit if it is standard, good if it is at +0.020: one place cannot tell
    found = verdicts(BOOK, read(BOOK, **{"liner-bore 1": "5.7712 - - - - -"}))
    whole = verdicts(
        BOOK, read(BOOK, **{"liner-bore 1": "5.7712 5.7708 5.7704 5.7710 5.7707 5.7703"})
    )

    assert found.latest("liner-bore", "1").verdict is Verdict.WORN_OUT
    assert whole.latest("liner-bore", "1").verdict is Verdict.GOOD
