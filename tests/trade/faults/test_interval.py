"""Intervals of chances, from the book being a guess."""

from dataclasses import replace
from time import process_time

import numpy as np
import pytest

from shimstock.trade.faults import interval
from shimstock.trade.faults.exact import carried
from shimstock.trade.faults.interval import BOOKS, GOOD_TO, intervals
from shimstock.trade.faults.network import CannotBe, Finding, Network, Spread, Told
from shimstock.trade.faults.of_book import network_of
from shimstock.trade.faults.plan import plan
from shimstock.trade.faults.ranking import rank
from trade.faults.small_fan import NETWORK, ROCKING
from trade.scenes.diesel import starter

TOLD = Told({"rocks": True, "hunts": True, "oil": False, "tip": 0.22}, {"hub": False})


def width(each):
    return each.high - each.low


def test_a_chance_lies_within_its_interval_and_only_raised_causes_have_one():
    found = intervals(NETWORK, TOLD)
    ranking = rank(NETWORK, TOLD)

    assert tuple(found) == ranking.raised
    for cause, each in found.items():
        assert 0 < each.low < ranking.chances[cause] < each.high < 1


def test_the_books_word_alone_is_good_to_its_factor():
    """One cause, one sign that shows always with it and never without: the prior is all there is.

    A reading at a hundred to one then multiplies the odds, which stay good to a factor of two.
    """
    spread = Spread(0.0, 1.0), Spread(3.035, 1.0)  # at 3.035: e^(3.035²/2) = 100 to one
    network = Network({"gear": 0.03}, {"play": Finding(0.0, {"gear": 1.0}, *spread)})
    told = Told({"play": 3.035})
    odds = 0.03 / 0.97 * 100

    found = intervals(network, told)["gear"]

    assert found.low / (1 - found.low) == pytest.approx(odds / GOOD_TO, rel=0.1)
    assert found.high / (1 - found.high) == pytest.approx(odds * GOOD_TO, rel=0.1)


def test_ranked_together_the_books_come_out_as_each_ranked_alone():
    groups = (("hub", "bevel"), ("bevel", "mesh"))
    network = replace(NETWORK, exclusive=groups)
    told = replace(TOLD, causes={})
    books = interval._drawn(network, {}, BOOKS, network.causes, network.findings)
    posed = interval.pose(
        interval._drawn(network, {}, BOOKS, network.causes, network.findings), told
    )
    together, _, _ = carried(posed, plan(posed), np.ones(BOOKS))

    for n in (0, 7, BOOKS - 1):
        one = Network(
            {cause: float(row[n]) for cause, row in books.causes.items()},
            {
                key: Finding(
                    float(each.leak[n]),
                    {cause: float(row[n]) for cause, row in each.weights.items()},
                    each.absent,
                    each.present,
                )
                for key, each in books.findings.items()
            },
            groups,
        )
        alone = rank(one, told).chances
        for cause, chance in alone.items():
            assert together[cause][n] == pytest.approx(chance, abs=1e-12)


def test_half_of_the_books_lie_on_either_side_of_this_one():
    books = interval._drawn(NETWORK, {}, BOOKS, NETWORK.causes, NETWORK.findings)

    assert np.median(books.causes["bevel"]) == pytest.approx(0.03, rel=0.1)
    assert np.median(books.findings["rocks"].weights["bevel"]) == pytest.approx(0.8, rel=0.05)


def test_a_prior_with_counts_behind_it_is_tighter_the_more_there_are():
    widths = [width(intervals(NETWORK, ROCKING, {"bevel": n})["bevel"]) for n in (0, 100, 10_000)]

    assert widths[0] > widths[1] > widths[2]
    books = interval._drawn(NETWORK, {"bevel": 10_000}, BOOKS, NETWORK.causes, NETWORK.findings)
    assert np.std(books.causes["bevel"]) == pytest.approx((0.03 * 0.97 / 10_000) ** 0.5, rel=0.1)


def test_a_few_counts_are_never_wider_than_the_word():
    word, few = (
        interval._drawn(NETWORK, {"bevel": n}, BOOKS, NETWORK.causes, NETWORK.findings).causes[
            "bevel"
        ]
        for n in (0, 1)
    )

    assert np.std(np.log(few / (1 - few))) == pytest.approx(
        np.std(np.log(word / (1 - word))), rel=0.15
    )


def test_the_same_question_gets_the_same_answer_and_another_cause_no_other_one():
    assert intervals(NETWORK, TOLD) == intervals(NETWORK, TOLD)
    one, other = (intervals(NETWORK, TOLD, each) for each in ({}, {"breather": 50}))
    assert one["bevel"] == other["bevel"]


def test_what_is_certain_stays_so():
    network = Network({"gear": 0.5}, {"play": Finding(0.0, {"gear": 1.0})})

    found = intervals(network, Told({"play": True}))["gear"]

    assert (found.low, found.high) == (1, 1)
    assert intervals(network, Told({}, {"gear": True}))["gear"].low == 1
    never = replace(network, causes={"gear": 0.5, "key": 0.0})
    assert tuple(intervals(never, Told({"play": True}), {"key": 5})) == ("gear",)


def test_where_there_is_no_room_there_are_fewer_books_and_then_none(monkeypatch):
    whole = intervals(NETWORK, TOLD)["bevel"]
    cells = interval.plan(interval.pose(NETWORK, TOLD)).cells

    monkeypatch.setattr(interval, "ROOM", 100 * cells)
    fewer = intervals(NETWORK, TOLD)["bevel"]
    assert fewer != whole and width(fewer) == pytest.approx(width(whole), rel=0.3)
    monkeypatch.setattr(interval, "ROOM", 50 * cells)
    assert intervals(NETWORK, TOLD) == {}


def test_nothing_told_has_no_intervals():
    assert intervals(NETWORK, Told()) == {}


def test_what_cannot_be():
    with pytest.raises(CannotBe):
        intervals(Network({}, {"rocks": Finding(0.0, {})}), ROCKING)


def test_it_is_quick_on_a_whole_book():
    network = network_of(starter("two-cylinder-diesel"))
    told = Told(dict.fromkeys(list(network.findings)[:4], True))

    begun = process_time()
    assert intervals(network, told)

    assert process_time() - begun < 0.5
