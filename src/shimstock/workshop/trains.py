"""A train that was rocked, hold by hold: its readings brought together, and what they say."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book
    from shimstock.trade.machine.words import Stage
    from shimstock.trade.measure.chain.ways import WayTo
    from shimstock.trade.measure.measured import Measured
    from shimstock.trade.measure.reading import Reading
    from shimstock.trade.measure.train import LinkFound, TrainFound
    from shimstock.trade.reach.due import CautionDue
    from shimstock.workshop.looking import Seen


def rocked(seen: Seen, typed: str, finished: bool) -> tuple[str, TrainFound]:
    """Part the play of a train by the readings that were taken of it.

    typed: its key or name; "" for the only one. finished: by the readings after the work.
    Raises NotFound for an unknown train, Refused where nothing is typed and there are several.
    """
    key = find_train(seen.book, typed)
    return key, parted(seen, key, *read_along(seen, key, finished))


def read_along(
    seen: Seen, key: str, finished: bool
) -> tuple[list[Reading | None], dict[str, Measured]]:
    """What was read at the end of a train with each link's shaft held, and on links themselves.

    The first of the former is with none held but the first shaft; the latter are by their figure.
    """
    from shimstock.trade.machine.words import Stage
    from shimstock.trade.measure.tip import own_readings, tip_readings

    stage = Stage.FINISHED if finished else Stage.FOUND
    tips = tip_readings(seen.book, key, seen.readings, stage)
    return tips, own_readings(seen.book, key, seen.readings, stage)


def links_parted(seen: Seen) -> Iterator[tuple[Stage, LinkFound]]:
    """Each link of each chain of which more than one hold was read, as found and after the work."""
    from shimstock.trade.machine.words import Stage
    from shimstock.trade.measure.train import rock

    for key in seen.book.trains:
        for stage in Stage:
            tips, own = read_along(seen, key, stage is Stage.FINISHED)
            if sum(tip is not None for tip in tips) > 1:
                found = rock(seen.book, key, tips, gasket_found=_gasket_found(seen, key), own=own)
                yield from ((stage, link) for link in found.links)


def parted(
    seen: Seen, key: str, tips: Sequence[Reading | None], own: Mapping[str, Measured]
) -> TrainFound:
    """The play of a train parted among its links, by what was read of it."""
    from shimstock.trade.measure.train import rock

    gasket = _gasket_found(seen, key)
    return rock(seen.book, key, tips, gasket_found=gasket, own=own, ways=_ways(seen, key))


def cautions_next(seen: Seen, found: TrainFound) -> tuple[CautionDue, ...]:
    """What can hurt on the way to the next reading of a train."""
    from shimstock.trade.reach.blocked import NoWay
    from shimstock.trade.reach.way import way_in

    following = found.plays.next
    if following is None or following.place is None:
        return ()
    try:
        return way_in(seen.now, [following.place]).cautions
    except NoWay:
        return ()


def find_train(book: Book, typed: str) -> str:
    """Find a train's key; the only one where nothing is typed. Raises NotFound, Refused."""
    from shimstock.workshop.refused import NotFound, Refused

    if not typed and len(book.trains) == 1:
        return next(iter(book.trains))
    if not typed and book.trains:
        raise Refused([f"several chains stand in this book; type one of {', '.join(book.trains)}"])
    for key, train in book.trains.items():
        if typed.strip().lower() in (key, train.name.lower()):
            return key
    raise NotFound("train", typed, book.trains, where=" in this machine's book")


def _ways(seen: Seen, key: str) -> dict[str, WayTo]:
    """What it costs, as the machine stands, to get at what is held or read along a train."""
    from shimstock.trade.measure.chain.ways import WayTo
    from shimstock.trade.reach.blocked import NoWay
    from shimstock.trade.reach.way import way_in

    ways = {}
    for place in _places(seen.book, key):
        try:
            way = way_in(seen.now, [place])
        except NoWay:  # only the maker's book knows one
            continue
        ways[place] = WayTo(way.minutes_open, way.minutes_close)
    return ways


def _places(book: Book, key: str) -> list[str]:
    """The joints and parts that are opened or reached to hold or read the links of a train."""
    links = book.trains[key].links
    held = [link.hold.open for link in links if link.hold and link.hold.open]
    return list(dict.fromkeys([*held, *(book.measures[link.figure].of for link in links)]))


def _gasket_found(seen: Seen, key: str) -> str | None:
    """The thickness found of the gasket that sets a link, where the book says the right one."""
    for joint in (link.spread_by for link in seen.book.trains[key].links if link.spread_by):
        booked = any(use.gasket and use.thickness for use in seen.book.joints[joint].uses)
        if booked and (found := seen.now.joint(joint).thickness_found):
            return found
    return None
