"""Which reading comes next: what it settles, and its minutes."""

import pytest
from hypothesis import given, settings

from shimstock.trade.measure.chain.next_reading import ANSWERS, Offer, _may_show, best_next
from shimstock.trade.measure.chain.posterior import passed
from shimstock.trade.measure.chain.told import Felt, Read
from trade.measure.chain.chains import FAN, THREE, rocked

WHOLE = THREE[:1]
BEVEL, CAMSHAFT, TOOTH = Felt(2, 0.0, 0.01), Felt(1, 0.0, 0.01), Read(1, 0.0, 0.0005)


def best(told, *offers):
    found = best_next(FAN, told, [Offer(each, minutes) for each, minutes in offers])
    return found and found.offer.told


def test_of_two_that_settle_alike_the_quicker_one_comes_first():
    assert best(WHOLE, (BEVEL, 30.0), (CAMSHAFT, 60.0)) == BEVEL
    assert best(WHOLE, (BEVEL, 60.0), (CAMSHAFT, 20.0)) == CAMSHAFT


def test_a_surer_reading_is_worth_more_minutes():
    rough = Read(1, 0.0, 0.02)

    assert best(WHOLE, (rough, 20.0), (TOOTH, 25.0)) == TOOTH


def test_nothing_more_is_asked_where_each_link_is_settled():
    told = (Felt(0, 0.320, 0.01), Read(0, 0.005, 0.0005), Read(1, 0.03, 0.0005))

    assert best(told, (BEVEL, 5.0)) is None


def test_where_nothing_is_left_to_read_nothing_is_offered():
    assert best(WHOLE) is None


@given(rocked())
@settings(max_examples=15, deadline=None)
def test_a_reading_is_expected_to_leave_no_more_doubt_than_there_was(made):
    chain, told = made
    found = best_next(chain, told, [Offer(Read(0, 0.0, 0.0005), 1.0)])

    assert found is None or found.settles > 0


def test_what_a_reading_may_show_lies_about_what_is_known():
    shows = _may_show(FAN, passed(FAN, THREE), TOOTH)

    assert len(shows) == ANSWERS
    assert shows == sorted(shows)
    assert sum(shows) / ANSWERS == pytest.approx(0.030, abs=0.001)
