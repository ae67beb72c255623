"""Shims that lie between the faces of a joint: a thicker pack there gives a shaft more play."""

from __future__ import annotations

from collections.abc import Sequence

from shimstock.trade.machine.book import Book
from shimstock.trade.measure.shims import Pack, choose_pack
from shimstock.trade.numbers.limits import Range
from shimstock.trade.numbers.quantity import show
from shimstock.trade.numbers.working import Worked, Working

PLAYS = ("end play", "end float")
"""What moves by as much as the pack changes; a lash or a timing moves by another measure."""


def shimmed_joints(book: Book, figure: str, piece: str = "") -> tuple[str, ...]:
    """Keys of the joints whose shims settle a figure of one piece, in the book's order.

    figure: its key. piece: which of several; "" where there is one.
    """
    return tuple(
        key
        for key, joint in book.joints.items()
        for settled in joint.settles
        if settled.figure == figure and settled.by == "shims" and settled.piece in (None, piece)
    )


def moves_with_pack(name: str) -> bool:
    """True where a figure of this name moves by as much as its pack.

    >>> moves_with_pack("Crankshaft end float"), moves_with_pack("Bevel lash")
    (True, False)
    """
    return any(play in name.lower() for play in PLAYS)


def pack_between_faces(
    offered: Sequence[float], *, fitted: float, end_play: float, wanted: Range
) -> Worked[Pack | None]:
    """The pack under a housing, retainer or cap that brings the end play into the wanted range.

    offered, fitted, end_play: in the unit of `wanted`; fitted is the pack in place when the play
    was read. None where no pack of these shims does. Raises ValueError where the range is open at
    an end, or where even without shims too much play would be left.
    Source: common workshop practice: a pack between the faces holds them apart, so the play
    changes by as much as the pack.
    """
    if wanted.low is None or wanted.high is None:
        raise ValueError(f"{wanted.typed}: a lowest and a highest play are needed")
    thin, thick = (fitted - end_play + end for end in (wanted.low, wanted.high))
    if thick < 0:
        left = show(end_play - fitted, wanted.unit)
        raise ValueError(f"even without shims {left} of play is left; look at the parts")
    pack = choose_pack(offered, low=max(0.0, thin), high=thick, unit=wanted.unit)
    w = Working()
    w.extend(pack.working)
    w.note("The pack lies between the faces: a thicker one gives more play.")
    if pack.value is not None:
        w.given("t_0", fitted, wanted.unit, meaning="pack fitted when the play was read")
        w.given("e", end_play, wanted.unit, meaning="end play found")
        left_over = end_play + pack.value.thickness - fitted
        symbol = "t" if pack.value.shims else "0"
        w.step("e_new", f"e + {symbol} − t_0", left_over, wanted.unit, meaning="play to expect")
    return Worked(pack.value, w)
