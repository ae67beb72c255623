"""A bore worn tapered: verdicts, one oversize for both, and nothing machined before its pistons.

The numbers are an invented machine's; the rules are common practice, no source.
"""

import pytest

from published.as_printed import as_printed
from shimstock.trade.machine.state import PieceNow
from shimstock.trade.machine.words import PartWord, Stage, Verdict
from shimstock.trade.measure.remedies import remedies
from shimstock.trade.measure.remedy import What
from shimstock.trade.measure.take import SlippedDigit, understand
from shimstock.trade.measure.verdicts import verdicts
from shimstock.trade.numbers.instruments import good_to
from shimstock.trade.numbers.not_understood import NotUnderstood
from trade.measure.typed import diesel, disagreements, read

BOOK = diesel()
BORE = BOOK.figures["liner-bore"]
LINER_1 = "5.7592 5.7554 5.7532 5.7568 5.7546 5.7528"
LINER_2 = "5.7560 5.7542 5.7524 5.7550 5.7538 5.7522"
READINGS = read(BOOK, **{"liner-bore 1": LINER_1, "liner-bore 2": LINER_2})
FOUND = verdicts(BOOK, READINGS)
NEW_PISTONS = {
    ("piston", "1"): PieceNow(PartWord.IN_HAND, size="+0.020 in"),
    ("piston", "2"): PieceNow(PartWord.IN_HAND, size="+0.020"),
}
SKIRTS = read(BOOK, Stage.FINISHED, **{"piston-skirt 1": "5.7628", "piston-skirt 2": "5.7628"})


def machined(pieces, readings=READINGS, **options):
    found = remedies(BOOK, verdicts(BOOK, readings), pieces, **options)
    return next(each for each in found if each.what is What.MACHINE)


@pytest.mark.parametrize(
    ("figure", "piece", "printed", "verdict"),
    [
        ("liner-bore", "1", "5.7592", Verdict.SERVICEABLE),
        ("liner-taper", "1", "0.0060", Verdict.WORN_OUT),
        ("liner-out-of-round", "1", "0.0024", Verdict.SERVICEABLE),
        ("liner-bore", "2", "5.7560", Verdict.SERVICEABLE),
        ("liner-taper", "2", "0.0036", Verdict.SERVICEABLE),
        ("liner-out-of-round", "2", "0.0010", Verdict.SERVICEABLE),
    ],
)
def test_liner_1_fails_on_taper_alone_and_liner_2_passes(figure, piece, printed, verdict):
    judged = FOUND.latest(figure, piece)

    assert judged.value == as_printed(printed)
    assert judged.verdict is verdict


def test_every_line_shown_agrees():
    assert disagreements(FOUND) == []


def test_both_are_bored_to_the_smallest_size_that_cleans_up_the_worst():
    remedy = machined({})

    assert remedy.says == "bore both to +0.020 in, 5.7700 in finished"
    assert remedy.size == "+0.020 in"
    assert remedy.finished == as_printed("5.7700")
    assert remedy.pieces == (("liner", "1"), ("liner", "2"))
    assert remedy.workings[0].value("C_1") == as_printed("0.0108")
    assert any("cylinder liner 2 is within its limits" in reason for reason in remedy.because)


def test_the_machinists_sheet_is_held_until_the_pistons_are_in_hand():
    assert any("piston 1 in +0.020 in is not in hand: fitted" in why for why in machined({}).held)

    ordered = {key: PieceNow(PartWord.ON_ORDER, size="+0.020 in") for key in NEW_PISTONS}
    assert any("not in hand: on order" in why for why in machined(ordered).held)


def test_pistons_in_hand_must_be_of_the_size_and_measured():
    wrong = {**NEW_PISTONS, ("piston", "2"): PieceNow(PartWord.IN_HAND, size="+0.040 in")}

    assert any("piston 2" in why and "+0.040" in why for why in machined(wrong).held)
    assert machined(NEW_PISTONS).held == (
        "the new piston 1 is not measured: finish to the part in hand",
        "the new piston 2 is not measured: finish to the part in hand",
    )


def test_with_measured_pistons_in_hand_the_sheet_may_go_with_the_finished_bore():
    remedy = machined(NEW_PISTONS, {**READINGS, **SKIRTS}, chosen={"piston-clearance": 0.0072})

    assert remedy.held == ()
    assert remedy.bores["1"] == as_printed("5.7700")
    assert remedy.workings[-1].value("g_min") == as_printed("0.0202")  # ring gap by rule
    assert [text for w in remedy.workings for text in w.disagreements()] == []


def test_a_liner_not_measured_holds_the_order():
    only_one = read(BOOK, **{"liner-bore 1": LINER_1})

    assert any("liner 2 is not measured" in why for why in machined({}, only_one).held)


def test_nothing_sized_is_ordered_before_measuring():
    found = remedies(BOOK, verdicts(BOOK, {}), {})

    bores = next(each for each in found if "liner-bore" in each.figures)
    assert bores.what is What.MEASURE
    assert "do not order sized parts yet" in bores.says


def test_millimetres_are_taken_where_they_are_said():
    typed = ["146.284 mm", *LINER_1.split()[1:]]

    assert understand("liner-bore", BORE, typed).values[0] == as_printed("5.7592")


@pytest.mark.parametrize(("typed", "meant"), [("5.9752", "5.7592"), ("146.284", "5.7592")])
def test_a_slipped_digit_is_refused_with_what_was_likely_meant(typed, meant):
    with pytest.raises(SlippedDigit) as refused:
        understand("liner-bore", BORE, [typed, *LINER_1.split()[1:]])

    assert any(slip.value == as_printed(meant) for slip in refused.value.likely)
    assert typed in str(refused.value)
    assert "thrust top" in str(refused.value)


def test_bare_millimetres_are_told_to_be_millimetres():
    with pytest.raises(SlippedDigit) as refused:
        understand("liner-bore", BORE, ["146.284", *LINER_1.split()[1:]])

    assert "millimetres" in refused.value.likely[0].how


def test_a_slip_is_kept_when_it_is_meant():
    reading = understand("liner-bore", BORE, ["5.9752", *LINER_1.split()[1:]], meant=True)

    assert reading.values[0] == 5.9752


def test_a_wrong_number_of_readings_names_the_places_in_order():
    with pytest.raises(NotUnderstood, match="wants 6: thrust top, thrust middle, thrust bottom"):
        understand("liner-bore", BORE, ["5.7592", "5.7554"])


def test_taper_inside_its_own_uncertainty_of_the_limit_is_borderline():
    gauge = good_to(0.0003, "in")
    typed = ["5.7584", "5.7554", "5.7532", "5.7560", "5.7546", "5.7532"]
    reading = understand("liner-bore", BORE, typed, instrument=gauge)

    judged = verdicts(BOOK, {("liner-bore", "1", Stage.FOUND): reading}).latest("liner-taper", "1")

    assert judged.value == as_printed("0.0052")
    assert judged.expanded == as_printed("0.0004")  # ±0.0003 twice makes about ±0.0004
    assert judged.verdict is Verdict.BORDERLINE
    assert "Measure again with a gauge good to ±0.0001 in" in judged.settles
    assert judged.p_within < 0.5


def test_as_found_stays_beside_as_finished():
    bored = "5.7701 5.7700 5.7700 5.7700 5.7700 5.7699"
    finished = read(BOOK, Stage.FINISHED, **{"liner-bore 1": bored, "piston-skirt 1": "5.7628"})

    row = next(
        each
        for each in verdicts(BOOK, {**READINGS, **finished}).side_by_side
        if (each.figure, each.piece) == ("liner-taper", "1")
    )

    assert (row.found.verdict, row.finished.verdict) == (Verdict.WORN_OUT, Verdict.GOOD)


def test_a_finished_bore_is_held_against_its_new_size():
    bored = "5.7701 5.7700 5.7700 5.7700 5.7700 5.7699"
    finished = read(BOOK, Stage.FINISHED, **{"liner-bore 1": bored, "piston-skirt 1": "5.7628"})

    now = verdicts(BOOK, finished)

    assert now.latest("liner-bore", "1").verdict is Verdict.GOOD
    assert now.latest("piston-clearance", "1").value == as_printed("0.0073")
    assert disagreements(now) == []


def test_pistons_of_the_wrong_size_in_the_right_box_hold_the_sheet():
    small = read(BOOK, Stage.FINISHED, **{"piston-skirt 1": "5.7528", "piston-skirt 2": "5.7628"})

    held = machined(NEW_PISTONS, {**READINGS, **small}, chosen={"piston-clearance": 0.0072}).held

    assert len(held) == 1
    assert "liner 1 would be finished at 5.7600 in" in held[0]
    assert "is it the right size?" in held[0]


def test_without_a_chosen_clearance_the_middle_of_new_is_taken():
    remedy = machined(NEW_PISTONS, {**READINGS, **SKIRTS})

    assert remedy.bores["2"] == pytest.approx(5.7628 + (0.0060 + 0.0085) / 2)
