"""Play along a train of gears: which mesh it is in, found by holding one shaft after another."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace

from shimstock.trade.machine.book import Book, Link, Train
from shimstock.trade.machine.words import Verdict
from shimstock.trade.measure.bore import mean
from shimstock.trade.measure.chain.of_book import chain_play
from shimstock.trade.measure.chain.ways import Ways
from shimstock.trade.measure.gasket_share import DOUBTFUL, GasketShare, explained, gasket_shares
from shimstock.trade.measure.in_all import as_a_sum
from shimstock.trade.measure.judge import Judged, judge
from shimstock.trade.measure.measured import Measured
from shimstock.trade.measure.play import play
from shimstock.trade.measure.predicted import when_put_right
from shimstock.trade.measure.reading import Reading
from shimstock.trade.measure.tip import Tip, gauge_of, holds
from shimstock.trade.measure.train_found import LinkFound, TrainFound
from shimstock.trade.numbers.quantity import convert, parse, show

__all__ = ["LinkFound", "TrainFound", "rock"]


def rock(
    book: Book,
    train_key: str,
    tips: Sequence[Tip],
    *,
    within: float | None = None,
    gasket_found: str | float | None = None,
    gasket_book: str | float | None = None,
    own: Mapping[str, Measured] | None = None,
    ways: Ways | None = None,
) -> TrainFound:
    """Part the play at the end of a train among its links.

    tips: for each link in the book's order, what was read at the end with that link's
    shaft held, as typed; None where it was not held. The first alone is the whole play.
    within: the ± of one reading at the end, k = 2, in the unit of the train's figure; without it,
    the instrument that the book names. gasket_found, gasket_book: thickness of the gasket that
    sets a mesh, in the same unit; without the second, the book's.
    Source: trade practice; geometry of gears; JCGM 100:2008, 5.1.2 for the uncertainties.
    """
    train = book.trains[train_key]
    readings = list(holds(book, train, tips, within))
    held = [at for at, reading in enumerate(readings) if reading is not None]
    extra = _extra_gasket(book, train, gasket_found, gasket_book)
    links = tuple(_link(book, train, at, readings, held, extra) for at in range(len(train.links)))
    plays = chain_play(
        *(book, train, readings),
        own=own or {},
        extra=extra,
        gauge=gauge_of(book, train, within),
        ways=ways or {},
    )
    known = {
        *(link.name for link in links if link.judged),
        *(link.name for link, play in zip(train.links, plays.links, strict=False) if play.parted),
    }
    found = TrainFound(_total(book, train, readings, known), links, plays)
    return replace(found, expected=when_put_right(book, train_key, found))


def _extra_gasket(
    book: Book, train: Train, found: str | float | None, book_says: str | float | None
) -> float:
    """How much thicker the gasket found is than the book's, in the unit of the train's figure."""
    if found is None:
        return 0.0
    unit = book.measures[train.figure].measured_in
    right = book_says if book_says is not None else _gasket_in_book(book, train, unit)
    if right is None:
        raise ValueError("the book gives no thickness for this gasket; type the right one too")
    return _thickness(found, unit) - _thickness(right, unit)


def _thickness(said: str | float, unit: str) -> float:
    return parse(str(said), unit=unit, what="gasket thickness").value


def _gasket_in_book(book: Book, train: Train, unit: str) -> float | None:
    for link in train.links:
        for use in book.joints[link.spread_by].uses if link.spread_by else ():
            if use.gasket and use.thickness:
                return convert(use.thickness.value, use.thickness.unit, unit)
    return None


def _total(
    book: Book, train: Train, readings: Sequence[Reading | None], parted: Collection[str]
) -> Judged | None:
    """The verdict on the whole; parted: names of links told apart by holding or reading them."""
    whole = readings[0]
    if whole is None:
        return None
    figure = book.measures[train.figure]
    got = mean(figure, whole)
    judged = judge(
        *(train.figure, figure, got.value, got.u),
        working=got.working,
        symbol=got.symbol,
        gauge=got.gauge,
    )
    return as_a_sum(train, judged, parted) if judged.verdict in DOUBTFUL else judged


def _link(
    book: Book,
    train: Train,
    at: int,
    readings: Sequence[Reading | None],
    held: Sequence[int],
    extra: float,
) -> LinkFound:
    link = train.links[at]
    before = [n for n in held if n <= at]
    after = [n for n in held if n > at]
    whole = readings[before[-1]] if before else None
    if whole is None:
        says = f"{link.name}: not rocked{f'; hold the {link.hold.what}' if link.hold else ''}"
        return LinkFound(link.name, link.figure, Verdict.NOT_MEASURED, says)
    first, last = before[-1], (after[0] if after else len(train.links))
    got = play(train, at, whole, readings[last] if after else None)
    if last - first > 1:
        return _among(book, train, at, got, range(first, last))
    return _alone(book, link, got, extra)


def _alone(book: Book, link: Link, got: Measured, extra: float) -> LinkFound:
    figure = book.measures[link.figure]
    extra = convert(extra, got.unit, figure.measured_in)
    got = got.told_in(figure.measured_in)
    judged = judge(
        *(link.figure, figure, got.value, got.u),
        working=got.working,
        symbol=got.symbol,
        gauge=got.gauge,
    )
    if got.value < -2 * got.u or (got.value < 0 and judged.beyond):
        says = f"{link.name}: less than no play, which cannot be; rock both holds again"
        return LinkFound(link.name, link.figure, Verdict.NOT_MEASURED, says)
    verdict = judged.verdict or Verdict.NOT_MEASURED
    says = f"{link.name}: {judged.says}"
    shares: tuple[GasketShare, ...] = ()
    if link.spread_by and extra:
        shares = gasket_shares(link, figure, got, extra)
        verdict, more = explained(verdict, shares)
        says = f"{says}; {more}"
    if judged.verdict is Verdict.BORDERLINE:
        says = f"{says}. Measure on the tooth"
    look = link.look_first if verdict in DOUBTFUL else ()
    return LinkFound(link.name, link.figure, verdict, says, judged, got.value, shares, look)


def _among(book: Book, train: Train, at: int, got: Measured, group: range) -> LinkFound:
    """A link that the readings do not part from its neighbours: it may have none or all of it."""
    link = train.links[at]
    limit = book.measures[link.figure].allowed
    got = got.told_in(book.measures[link.figure].measured_in)
    others = ", ".join(train.links[n].name for n in group if n != at)
    most = show(got.value, got.unit)
    if limit is not None and limit.high is not None and got.value + 2 * got.u < limit.high:
        says = f"{link.name}: at most {most}, even if {others} had none: within the limit"
        return LinkFound(link.name, link.figure, Verdict.SERVICEABLE, says, most=got.value)
    says = f"{link.name}: from nothing to {most}, shared with {others} in a way not known yet"
    look = link.look_first
    return LinkFound(
        link.name, link.figure, Verdict.NOT_MEASURED, says, most=got.value, look_first=look
    )
