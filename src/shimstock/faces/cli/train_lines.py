"""A train that was rocked, hold by hold, and which of its links is worn."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from shimstock.faces.cli.shown import Heading, Shown, listed_under

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book
    from shimstock.trade.measure.train import TrainFound
    from shimstock.workshop.looking import Seen


def rocked(seen: Seen, typed: str, finished: bool) -> tuple[str, TrainFound]:
    """Part the play of a train by the readings that were taken of it.

    Raises NotFound for an unknown train.
    """
    from shimstock.trade.machine.words import Stage
    from shimstock.trade.measure.tip import tip_readings
    from shimstock.trade.measure.train import rock
    from shimstock.workshop.judging import readings_of, trade_reading

    key = _train(seen.book, typed)
    stage = Stage.FINISHED if finished else Stage.FOUND
    readings = {
        (row.figure, row.piece, Stage(row.stage)): trade_reading(seen.book, row)
        for row in readings_of(seen.row)
    }
    tips = tip_readings(seen.book, key, readings, stage)
    return key, rock(seen.book, key, tips, gasket_found=_gasket_found(seen, key))


def train_data(key: str, found: TrainFound) -> dict[str, Any]:
    """What was found as plain values."""
    return {
        "train": key,
        "total": found.total and {"verdict": found.total.verdict, "says": found.total.says},
        "links": [
            {"name": link.name, "figure": link.figure, "verdict": str(link.verdict),
             "says": link.says, "most": link.most, "look_first": list(link.look_first)}
            for link in found.links
        ],
        "next_hold": found.next_hold,
    }  # fmt: skip


def train_shown(book: Book, key: str, found: TrainFound) -> list[Shown]:
    """What was found, link by link, and what to look at before a gear is blamed."""
    lines: list[Shown] = [Heading(book.trains[key].name)]
    lines += [f"All together: {found.total.says}"] if found.total else ["Not rocked yet."]
    for link in found.links:
        lines += [f"- {str(link.verdict).upper()}: {link.says}"]
    looks = dict.fromkeys(look for link in found.links for look in link.look_first)
    lines += listed_under("Look at first", list(looks))
    return [
        *lines,
        *listed_under("To part them further", [found.next_hold] if found.next_hold else []),
    ]


def _train(book: Book, typed: str) -> str:
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
