"""A train that was rocked, hold by hold, and which of its links is worn."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from shimstock.faces.cli.shown import Heading, Shown, listed_under
from shimstock.workshop.trains import rocked as rocked

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book
    from shimstock.trade.measure.train import TrainFound


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
