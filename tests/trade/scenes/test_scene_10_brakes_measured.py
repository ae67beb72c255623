"""A brake that pulls to one side: what the readings say and what is put right together.

The numbers are an invented machine's; the rules are common practice, no source.
"""

import pytest

from published.as_printed import as_printed
from shimstock.trade.machine.words import Verdict
from shimstock.trade.measure.pair import TOGETHER
from shimstock.trade.measure.remedies import remedies
from shimstock.trade.measure.remedy import What
from shimstock.trade.measure.verdicts import verdicts
from trade.measure.typed import diesel, disagreements, read

BOOK = diesel()
TRAVEL = next(key for key, each in BOOK.measures.items() if each.mark == "F070")
TYPED = {
    f"{TRAVEL} left": "1.6",
    f"{TRAVEL} right": "2.9",
    "lining-thickness right": "0.18 0.17 0.18 0.16",
    "rivet-depth right": "0.022",
    "drum-diameter right": "10.022 10.014 10.013",
    "drum-diameter left": "10.018 10.015 10.014",
    "drum-out-of-round right": "0.0095",
    "drum-out-of-round left": "0.004",
}
FOUND = verdicts(BOOK, read(BOOK, **TYPED))
REMEDIES = remedies(BOOK, FOUND, {})


@pytest.mark.parametrize(
    ("figure", "piece", "verdict"),
    [
        (TRAVEL, "left", Verdict.GOOD),
        (TRAVEL, "right", Verdict.WORN_OUT),
        (TRAVEL, TOGETHER, Verdict.WORN_OUT),
        ("lining-thickness", "right", Verdict.SERVICEABLE),
        ("rivet-depth", "right", Verdict.WORN_OUT),
        ("drum-diameter", "right", Verdict.SERVICEABLE),
        ("drum-out-of-round", "right", Verdict.WORN_OUT),
        ("drum-out-of-round", "left", Verdict.SERVICEABLE),
    ],
)
def test_the_right_side_is_the_weak_one(figure, piece, verdict):
    assert FOUND.latest(figure, piece).verdict is verdict


def test_free_travel_differs_by_more_than_a_quarter_inch():
    judged = FOUND.latest(TRAVEL, TOGETHER)

    assert judged.value == as_printed("1.3")
    assert "too far apart" in judged.says


def test_every_line_shown_agrees():
    assert disagreements(FOUND) == []


def test_both_drums_are_turned_to_one_size_under_the_limit():
    remedy = next(each for each in REMEDIES if each.what is What.MACHINE)

    assert remedy.says == "turn both to +0.040 in, 10.0400 in finished"
    assert remedy.finished == as_printed("10.040")
    assert remedy.finished < 10.060
    assert remedy.pieces == (("brake-drum", "left"), ("brake-drum", "right"))
    assert remedy.held == ()
    assert remedy.workings[0].disagreements() == []


def test_linings_are_put_right_as_an_axle_set():
    remedy = next(each for each in REMEDIES if each.figures == ("rivet-depth",))

    assert remedy.pieces == (("brake-shoes", "left"), ("brake-shoes", "right"))
    assert "both together, as a set" in remedy.says


def test_a_turned_drum_keeps_its_limit():
    turned = verdicts(BOOK, read(BOOK, **{"drum-diameter left": "10.0604 10.0605 10.0604"}))

    assert turned.latest("drum-diameter", "left").verdict is Verdict.BORDERLINE


def test_a_drum_too_large_to_be_turned_is_renewed():
    big = {"drum-diameter right": "10.055 10.040 10.041", "drum-diameter left": "10.02 10.02 10.02"}
    found = verdicts(BOOK, read(BOOK, **big, **{"drum-out-of-round right": "0.0150"}))

    assert any(each.what is What.RENEW for each in remedies(BOOK, found, {}))
