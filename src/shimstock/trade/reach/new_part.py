"""What stands against a new part, just come, before it is passed or built in."""

from __future__ import annotations

from collections.abc import Iterator

from shimstock.trade.machine.state import MachineNow
from shimstock.trade.machine.words import PartWord, Stage
from shimstock.trade.reach.pieces import figures_of
from shimstock.trade.reach.readings import figure_name
from shimstock.trade.reach.reason import Reason


def against_new_part(now: MachineNow, part: str, piece: str) -> Iterator[Reason]:
    """Figures that come in sizes, are judged, and were not read on a part that is in hand.

    What was read as found was read on the old one; the new one is read as finished. A reading that
    is there is held against the part by the rules for every part.
    """
    if now.piece(part, piece).word is not PartWord.IN_HAND:
        return
    for key in figures_of(now.book, part):
        figure = now.book.measures[key]
        unread = (key, piece, Stage.FINISHED) not in now.verdicts
        if unread and figure.sizes and figure.allowed is not None:
            would = "read it on the new one, as finished"
            yield Reason(figure_name(now, key, piece), "has no reading as finished", would)
