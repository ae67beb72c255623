"""What a book says to expect of the links of a train."""

from __future__ import annotations

from shimstock.trade.machine.book import Book, Figure, Train
from shimstock.trade.measure.chain.expected import Expected
from shimstock.trade.measure.gasket_share import lash_added
from shimstock.trade.measure.play import gain_of
from shimstock.trade.numbers.quantity import convert

HARDLY_WORN = 3.0
"""Where the book gives a limit and no new range, new is up to a third of it; no source."""


def expected_of(book: Book, train: Train, extra: float) -> tuple[Expected, ...] | None:
    """What is expected of each link, in the unit of the train's figure.

    extra: how much too thick the gasket is, in that unit. None where the book has nothing to go by.
    """
    unit = book.measures[train.figure].measured_in
    every = []
    for at, link in enumerate(train.links):
        figure = book.measures[link.figure]
        own = ends(figure)
        limits = _in_unit(own, figure.measured_in, unit) if own else _even_share(book, train, at)
        if limits is None:
            return None
        adds = link.spread_by is not None and extra != 0
        added = tuple(each.value for _, each in lash_added(link, extra, unit)) if adds else (0.0,)
        least = convert(_least(figure), figure.measured_in, unit) if own else 0.0
        every.append(Expected(*limits, added, least))
    return tuple(every)


Limits = tuple[float, float, float]
"""Both ends of the new range, and the most that is allowed."""


def _in_unit(limits: Limits, own: str, unit: str) -> Limits:
    low, high, most = (convert(end, own, unit) for end in limits)
    return low, high, most


def ends(figure: Figure) -> Limits | None:
    """Both ends of the new range and the limit, in the figure's unit; None without a limit."""
    limit = figure.allowed.high if figure.allowed else None
    if limit is None or limit <= 0:
        return None
    new = figure.as_new
    high = new.high if new and new.high is not None else limit / HARDLY_WORN
    low = new.low if new and new.low is not None else 0.0
    high = min(max(high, 0.0), limit)
    return min(max(low, 0.0), high), high, limit


def _least(figure: Figure) -> float:
    """The least play that the book allows, in the figure's unit."""
    return max(0.0, (figure.allowed.low if figure.allowed else None) or 0.0)


def _even_share(book: Book, train: Train, at: int) -> Limits | None:
    """What a link without a limit may have if all links share what the whole may have."""
    figure = book.measures[train.figure]
    limits = ends(figure)
    if limits is None:
        return None
    share = len(train.links) * gain_of(train, at, figure.measured_in)
    return 0.0, limits[1] / share, limits[2] / share
