"""Two injection pumps of different makes: not a pair, and what each way to a pair costs.

The numbers are an invented machine's; the rules are common practice, no source.
"""

import pytest

from published.as_printed import as_printed
from shimstock.trade.machine.state import PieceNow
from shimstock.trade.machine.words import PartWord, Stage, Verdict
from shimstock.trade.measure.mates import SetOption, landed_cost
from shimstock.trade.measure.pair import TOGETHER
from shimstock.trade.measure.remedies import remedies
from shimstock.trade.measure.remedy import What
from shimstock.trade.measure.verdicts import verdicts
from trade.measure.typed import diesel, disagreements, read

BOOK = diesel()
BENCH = {"pump-delivery": "24.2 21.6", "pump-delivery-idle": "4.1 5.0"}
FOUND = verdicts(BOOK, read(BOOK, **BENCH))
TWO_MAKES = {
    ("injection-pump-1", ""): PieceNow(PartWord.BAGGED, maker="ringed R"),
    ("injection-pump-2", ""): PieceNow(PartWord.BAGGED, maker="plain star"),
}


@pytest.mark.parametrize(
    ("figure", "per_cent"), [("pump-delivery", "10.7"), ("pump-delivery-idle", "18.0")]
)
def test_the_pumps_differ_by_far_more_than_three_per_cent(figure, per_cent):
    judged = FOUND.latest(figure, TOGETHER)

    assert judged.value == as_printed(per_cent)
    assert judged.unit == "%"
    assert judged.verdict is Verdict.WORN_OUT
    assert "not a pair" in judged.says


def test_every_line_shown_agrees():
    assert disagreements(FOUND) == []


def test_not_a_pair_blocks_both_and_offers_no_adjusting():
    remedy = remedies(BOOK, FOUND, TWO_MAKES)[0]

    assert remedy.what is What.NOT_A_PAIR
    assert remedy.blocks
    assert set(remedy.pieces) == set(TWO_MAKES)
    assert "adjust" not in " ".join((remedy.says, *remedy.because)).lower()
    assert "cores" in remedy.says


def test_two_makes_are_no_pair_before_anything_is_measured():
    remedy = remedies(BOOK, verdicts(BOOK, {}), TWO_MAKES)[0]

    assert remedy.what is What.NOT_A_PAIR
    assert "bench sheet" in remedy.says


def test_two_makes_proved_on_the_bench_are_a_pair():
    proved = {
        key: PieceNow(PartWord.PASSED, maker=now.maker, proved_pair=True)
        for key, now in TWO_MAKES.items()
    }
    alike = verdicts(BOOK, read(BOOK, **{"pump-delivery": "24.2 24.0"}))

    assert not any(each.what is What.NOT_A_PAIR for each in remedies(BOOK, alike, proved))


def test_pumps_alike_on_the_bench_are_near_enough():
    alike = verdicts(BOOK, read(BOOK, Stage.FINISHED, **{"pump-delivery": "24.2 24.1"}))

    assert alike.latest("pump-delivery", TOGETHER).verdict is Verdict.GOOD


@pytest.mark.parametrize(
    ("option", "cost"),
    [
        (SetOption("used mate", price=180, bench=60, weeks=4, chance=0.4), 240),
        (SetOption("new old stock pair", price=640, weeks=1), 640),
        (SetOption("exchange pair", price=420, deposit=150, cores=2, accepted=1, weeks=2), 570),
    ],
)
def test_landed_cost_of_each_way_to_a_pair(option, cost):
    worked = landed_cost(option)

    assert worked.value == cost
    assert worked.working.disagreements() == []
