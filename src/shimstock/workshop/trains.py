"""A train that was rocked, hold by hold: its readings brought together, and which link is worn."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book, Link, Train
    from shimstock.trade.measure.reading import Reading
    from shimstock.trade.measure.train import TrainFound
    from shimstock.workshop.looking import Seen


def rocked(seen: Seen, typed: str, finished: bool) -> tuple[str, TrainFound]:
    """Part the play of a train by the readings that were taken of it.

    typed: its key or name; "" for the only one. finished: by the readings after the work.
    Raises NotFound for an unknown train.
    """
    key = find_train(seen.book, typed)
    return key, parted(seen, key, tips_of(seen, key, finished))


def tips_of(seen: Seen, key: str, finished: bool) -> list[Reading | None]:
    """What was read at the end of a train with each link's shaft held, the first with none held."""
    from shimstock.trade.machine.words import Stage
    from shimstock.trade.measure.tip import tip_readings
    from shimstock.workshop.judging import readings_of, trade_reading

    readings = {
        (row.figure, row.piece, Stage(row.stage)): trade_reading(seen.book, row)
        for row in readings_of(seen.row)
    }
    return tip_readings(seen.book, key, readings, Stage.FINISHED if finished else Stage.FOUND)


def parted(seen: Seen, key: str, tips: Sequence[Reading | None]) -> TrainFound:
    """The play of a train parted among its links, by what was read at its end."""
    from shimstock.trade.measure.train import rock

    return rock(seen.book, key, tips, gasket_found=_gasket_found(seen, key))


def held_next(train: Train, found: TrainFound) -> Link | None:
    """The link whose shaft is to be held next; None where every link stands alone."""
    said = (link for link in train.links if f"hold the {link.hold.what}," in found.next_hold)
    return next(said, None)


def find_train(book: Book, typed: str) -> str:
    """Find a train's key; the only one where nothing is typed. Raises NotFound."""
    from shimstock.workshop.refused import NotFound

    if not typed and len(book.trains) == 1:
        return next(iter(book.trains))
    for key, train in book.trains.items():
        if typed.strip().lower() in (key, train.name.lower()):
            return key
    raise NotFound("train", typed, book.trains, where=" in this machine's book")


def _gasket_found(seen: Seen, key: str) -> str | None:
    joints = [link.spread_by for link in seen.book.trains[key].links if link.spread_by]
    return next((found for j in joints if (found := seen.now.joint(j).thickness_found)), None)
