import pytest

from published.as_printed import as_printed
from shimstock.trade.machine.words import Stage, Verdict
from shimstock.trade.measure.verdicts import verdicts
from trade.measure.typed import diesel, disagreements, read

BOOK = diesel()
BORE = "5.7592 5.7554 5.7532 5.7568 5.7546 5.7528"


def test_clearance_is_the_largest_hole_less_the_smallest_shaft():
    found = verdicts(BOOK, read(BOOK, **{"liner-bore 1": BORE, "piston-skirt 1": "5.7428"}))

    judged = found.latest("piston-clearance", "1")
    assert judged.value == as_printed("0.0164")
    assert judged.verdict is Verdict.WORN_OUT
    assert disagreements(found) == []


def test_both_uncertainties_are_put_together():
    found = verdicts(BOOK, read(BOOK, **{"liner-bore 1": BORE, "piston-skirt 1": "5.7428"}))

    u_bore = found.measured["liner-bore", "1", Stage.FOUND].u
    u_skirt = found.measured["piston-skirt", "1", Stage.FOUND].u
    u = found.measured["piston-clearance", "1", Stage.FOUND].u
    assert u == pytest.approx((u_bore**2 + u_skirt**2) ** 0.5)  # JCGM 100:2008, 5.1.2


def test_a_clearance_read_directly_wins():
    typed = {"liner-bore 1": BORE, "piston-skirt 1": "5.7428", "piston-clearance 1": "0.0102"}

    assert verdicts(BOOK, read(BOOK, **typed)).latest("piston-clearance", "1").value == 0.0102


def test_a_hole_finished_and_a_shaft_as_found_are_not_mixed():
    readings = read(BOOK, Stage.FINISHED, **{"liner-bore 1": BORE})
    readings |= read(BOOK, **{"piston-skirt 1": "5.7428"})

    assert verdicts(BOOK, readings).latest("piston-clearance", "1") is None


def test_the_one_crankshaft_serves_every_shell():
    throws = " ".join(["3.7490"] * 11 + ["3.7480"])
    found = verdicts(BOOK, read(BOOK, **{"rod-journal": throws, "rod-bearing-bore 2": "3.7540"}))

    assert found.latest("rod-bearing-clearance", "2").value == as_printed("0.0060")
