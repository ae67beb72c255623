"""Readings along a chain that are still worth taking, and what they may show."""

from statistics import NormalDist

import pytest

from shimstock.trade.measure.chain.next_reading import ANSWERS, _may_show
from shimstock.trade.measure.chain.offers import offers
from shimstock.trade.measure.chain.posterior import passed
from shimstock.trade.measure.chain.told import Felt, Read
from shimstock.trade.numbers.instruments import named
from trade.measure.chain.chains import FAN
from trade.measure.typed import diesel

BOOK = diesel()
FAN_DRIVE = BOOK.trains["fan-drive"]
GAUGE = named("dial gauge", "in")


def test_what_a_reading_on_a_link_may_show_spreads_by_both_uncertainties():
    """Of two independent errors, JCGM 100:2008, 5.1.2; quantiles of the normal distribution."""
    known, gauge = 0.0005, 0.002
    shows = _may_show(FAN, passed(FAN, [Read(1, 0.030, known)]), Read(1, 0.0, gauge))

    far = NormalDist(0, (known**2 + gauge**2) ** 0.5).inv_cdf(1 - 0.5 / ANSWERS)
    assert shows[-1] - shows[0] == pytest.approx(2 * far, rel=0.1)


def test_a_link_that_was_read_is_not_offered_again():
    told = [Felt(0, 0.35, 0.01), Read(1, 0.030, 0.0005)]
    still = [each.told for each in offers(BOOK, FAN_DRIVE, told, GAUGE, {})]

    assert Read in {type(each) for each in still}
    assert 1 not in [each.link for each in still if isinstance(each, Read)]
    assert 0 not in [each.link for each in still if isinstance(each, Felt)]


def test_a_link_whose_figure_is_read_with_a_hold_is_not_offered_on_the_link():
    book = diesel(
        """
trains:
  held:
    name: Held
    figure: fan-rock
    links:
      - {name: Mesh, figure: governor-mesh-lash, ratio: 6.667, hold: {what: camshaft}}
      - name: Bevels
        figure: fan-bevel-lash
        ratio: 8.889
        hold: {what: bevel, figure: fan-bevel-lash}
"""
    )
    still = offers(book, book.trains["held"], [Felt(0, 0.35, 0.01)], GAUGE, {})

    on_links = [each.told.link for each in still if isinstance(each.told, Read)]
    assert on_links == [0]
