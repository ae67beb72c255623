"""A train that was rocked, hold by hold, and which of its links is worn."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from shimstock.faces.cli.shown import Heading, Shown, listed_under
from shimstock.workshop.trains import rocked as rocked

WIDE, ROOM = 48, 1.15
"""Signs in a bar, and how much further than what it shows it reaches."""

if TYPE_CHECKING:
    from collections.abc import Sequence

    from shimstock.trade.machine.book import Book
    from shimstock.trade.measure.chain.played import Played
    from shimstock.trade.measure.train import TrainFound


def train_data(key: str, found: TrainFound) -> dict[str, Any]:
    """What was found as plain values."""
    return {
        "train": key,
        "total": found.total and {"verdict": found.total.verdict, "says": found.total.says},
        "links": [
            {"name": link.name, "figure": link.figure, "verdict": str(link.verdict),
             "says": link.says, "most": link.most, "look_first": list(link.look_first),
             "play": play_data(play) if play else None}
            for link, play in zip(found.links, _plays(found), strict=True)
        ],
        "next_hold": found.next_hold,
        "next": next_data(found),
        "trouble": found.plays.trouble,
    }  # fmt: skip


def play_data(play: Played) -> dict[str, Any]:
    """The likely play of a link as plain values."""
    stands, right = (
        {
            "low": each.low,
            "likely": each.likely,
            "high": each.high,
            "over": each.over,
            "under": each.under,
        }
        for each in (play.stands, play.right)
    )
    return {
        **stands, "unit": play.unit, "limit": play.limit, "shared": play.shared,
        "parted": play.parted, "right_gasket": right, "says": play.says, "chance": play.chance,
        "working": play.working.shown(),
    }  # fmt: skip


def next_data(found: TrainFound) -> dict[str, Any] | None:
    """The next reading as plain values."""
    following = found.plays.next
    if following is None:
        return None
    return {
        "link": found.links[following.link].name,
        "figure": found.links[following.link].figure,
        "at_end": following.at_end,
        "minutes": following.minutes,
        "opening": following.way.opening,
        "closing": following.way.closing,
    }


def _plays(found: TrainFound) -> Sequence[Played | None]:
    return found.plays.links or (None,) * len(found.links)


def train_shown(book: Book, key: str, found: TrainFound) -> list[Shown]:
    """What was found, link by link, and what to look at before a gear is blamed."""
    lines: list[Shown] = [Heading(book.trains[key].name)]
    lines += [f"All together: {found.total.says}"] if found.total else ["Not rocked yet."]
    for link, play in zip(found.links, _plays(found), strict=True):
        lines += [f"- {str(link.verdict).upper()}: {link.says}"]
        if play:
            lines += [f"  {drawn(play)}", f"  {play.says}", f"  {play.chance}"]
            lines += [f"  {play.gasket}"] if play.gasket else []
    lines += [f"{found.plays.trouble}."] if found.plays.trouble else []
    looks = dict.fromkeys(look for link in found.links for look in link.look_first)
    lines += listed_under("Look at first", list(looks))
    return [
        *lines,
        *listed_under("To part them further", [found.next_hold] if found.next_hold else []),
    ]


def drawn(play: Played) -> str:
    """A link's likely play as a bar of signs: = the interval, the likely play, | the limit.

    The sign of the likely play says how it stands: o within its limit, ? unsure, X over.
    """
    most = max(play.limit, play.stands.high) * ROOM
    row = ["."] * WIDE

    def at(size: float) -> int:
        return min(WIDE - 1, int(WIDE * size / most))

    for n in range(at(play.stands.low), at(play.stands.high) + 1):
        row[n] = "="
    row[at(play.limit)] = "|"
    row[at(play.stands.likely)] = {"within": "o", "over": "X"}.get(play.state, "?")
    return f"0 {''.join(row)}"
