"""Where a reason against is settled: the joint, piece, figure or gate that it speaks of."""

from __future__ import annotations

from typing import TYPE_CHECKING

from shimstock.workshop.places import gate_place, joint_place, piece_place, verdict_place

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book
    from shimstock.trade.machine.state import MachineNow
    from shimstock.trade.reach.reason import Reason


def settled_at(now: MachineNow, reason: Reason) -> str:
    """The place to go to, as the diary names it; "" for a reason that names none.

    What opens or closes first comes before what a reason is about: it is the next move.
    """
    book = now.book
    return (
        _question(book, reason.why)
        or _named(_joints(book), f" {reason.would_do} ")
        or _figures(now).get(reason.what.partition(", set by the ")[0], "")
        or _pieces(book).get(reason.what, "")
        or _named(_pieces(book), f" {reason.why} ")
        or _joints(book).get(reason.what, "")
    )


def _question(book: Book, why: str) -> str:
    asked = {point.ask: gate_place(key) for key, gate in book.gates.items()
             for point in gate.points.values()}  # fmt: skip
    return _named(asked, why)


def _named(places: dict[str, str], text: str) -> str:
    """The place whose name a text holds; of several, that with the longest name."""
    found = [name for name in places if name and name in text]
    return places[max(found, key=len)] if found else ""


def _joints(book: Book) -> dict[str, str]:
    return {joint.name: joint_place(key) for key, joint in book.joints.items()}


def _pieces(book: Book) -> dict[str, str]:
    from shimstock.trade.reach.pieces import piece_name

    return {
        piece_name(book, part, piece): piece_place(part, piece)
        for part, entry in book.parts.items()
        for piece in entry.instances
    }


def _figures(now: MachineNow) -> dict[str, str]:
    from shimstock.trade.machine.words import Stage
    from shimstock.trade.reach.readings import figure_name

    return {
        figure_name(now, key, piece): verdict_place(key, piece, Stage.FINISHED)
        for key, figure in now.book.measures.items()
        for piece in now.book.parts[figure.of].instances
    }
