"""A shim pack: what was typed of it, which shims to lay together, and the play to expect."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass
from typing import TYPE_CHECKING

from shimstock.workshop.looking import called, measured

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book, Figure
    from shimstock.trade.measure.shims import Pack
    from shimstock.trade.numbers.limits import Range
    from shimstock.trade.numbers.working import Worked
    from shimstock.workshop.looking import Seen


@dataclass(frozen=True)
class Asking:
    """What is wanted of a pack; sizes in the figure's unit, `offered` by what was typed."""

    book: Book
    key: str
    piece: str
    joint: str
    fitted: float
    play: float
    offered: dict[float, str]
    wanted: Range

    @property
    def figure(self) -> Figure:
        """The figure that the pack sets."""
        return self.book.measures[self.key]

    @property
    def named(self) -> str:
        """The figure in words, with the piece."""
        from shimstock.workshop.wording import figure_named

        return figure_named(self.book, self.key, self.piece)


def typed_pack(
    seen: Seen, figure: str, piece: str, *, fitted: str, offered: str, play: str
) -> Asking:
    """Understand what was typed.

    Raises NotFound, NotUnderstood; Refused where a pack cannot set the figure, or nobody read it.
    """
    from shimstock.workshop.find import find_figure, find_piece

    book = seen.book
    key = find_figure(book, figure)
    which = find_piece(book, book.measures[key].of, piece)
    joint, wanted = set_by_shims(book, key, which)
    return Asking(
        book=book,
        key=key,
        piece=which,
        joint=joint,
        fitted=_size(fitted, wanted.unit, "the pack fitted"),
        play=_size(play, wanted.unit, "the play") if play else _latest(seen, key, which),
        offered={_size(each, wanted.unit, "a shim"): each for each in _each(offered)},
        wanted=wanted,
    )


@dataclass(frozen=True)
class Laid:
    """Shims laid together: what they come to, the play to expect, and how it was reached.

    expect: in the figure's unit. behind: the pack lies behind a bearing.
    """

    asking: Asking
    pack: Pack
    expect: float
    behind: bool
    working: tuple[str, ...]

    @property
    def counted(self) -> str:
        """How many of each, as they are marked: 2 × 0.010 in, 1 × 0.003 in."""
        counts = Counter(_typed(self.asking, size) for size in self.pack.shims)
        return (
            ", ".join(f"{count} × {typed}" for typed, count in counts.items()) or "no shim at all"
        )

    @property
    def lies(self) -> str:
        """Where the pack lies, and what a thicker one does."""
        if self.behind:
            return "Behind the bearing: a thicker pack takes up play."
        joint = called(self.asking.book.joints, self.asking.joint)
        return f"Between the faces of {joint}: a thicker pack gives more play."

    @property
    def then(self) -> str:
        """What to do with it."""
        return "Measure the pack whole before it goes in, tighten, and read the play again."


def lay_together(asking: Asking, *, behind: bool) -> Laid:
    """Choose the shims. Raises Refused where none of those to be had do."""
    from shimstock.trade.measure.words import between
    from shimstock.workshop.refused import Refused

    worked = _worked(asking, behind)
    pack = worked.value
    if pack is None:
        said = f"no pack of up to twelve of these shims gives {between(asking.wanted)}"
        raise Refused([f"{asking.named}: {said}; --offered with thinner shims beside them"])
    expect = worked.working.value("e_new")
    return Laid(asking, pack, expect, behind, tuple(worked.working.shown()))


def _worked(asking: Asking, behind: bool) -> Worked[Pack | None]:
    from shimstock.trade.measure.shim_joint import pack_between_faces
    from shimstock.trade.measure.shims import pack_for_end_play
    from shimstock.workshop.refused import Refused

    choose = pack_for_end_play if behind else pack_between_faces
    try:
        return choose(
            list(asking.offered), fitted=asking.fitted, end_play=asking.play, wanted=asking.wanted
        )
    except ValueError as error:
        raise Refused([f"{asking.named}: {error}"]) from None


def shimmed(book: Book) -> list[tuple[str, str]]:
    """Every figure and piece of a book that a shim pack sets, in the order of the joints."""
    from shimstock.workshop.refused import Refused

    found: dict[tuple[str, str], None] = {}
    for joint in book.joints.values():
        for settled in joint.settles:
            pieces = book.parts[book.measures[settled.figure].of].instances
            for piece in pieces if settled.piece is None else (settled.piece,):
                try:
                    set_by_shims(book, settled.figure, piece)
                except Refused:
                    continue
                found[settled.figure, piece] = None
    return list(found)


def set_by_shims(book: Book, key: str, piece: str) -> tuple[str, Range]:
    """The joint where the pack lies, and the new range that it is to bring the figure to.

    Raises Refused where no pack can set it.
    """
    from shimstock.trade.measure.shim_joint import moves_with_pack, shimmed_joints
    from shimstock.workshop.refused import Refused

    figure, name = book.measures[key], called(book.measures, key)
    joints = shimmed_joints(book, key, piece)
    if not joints:
        raise Refused([f"{name} is not set by shims in this machine's book."])
    if not moves_with_pack(figure.name):
        why = "does not change by as much as the pack; change the pack a little, and read again"
        raise Refused([f"{name} {why}"])
    new = figure.as_new
    if new is None or new.low is None or new.high is None:
        raise Refused([f"{name} has no new range; type one in the machine's book, from its page"])
    return joints[0], new


def _latest(seen: Seen, key: str, piece: str) -> float:
    from shimstock.workshop.refused import Refused
    from shimstock.workshop.wording import figure_named

    found = measured(seen)[0].latest_measured(key, piece)
    if found is None:
        name = figure_named(seen.book, key, piece)
        raise Refused([f"{name} has not been read; read it, or type it as --play SIZE"])
    return found.told_in(seen.book.measures[key].measured_in).value


def _each(typed: str) -> list[str]:
    """Sizes with commas between; a unit said after the last belongs to all of them."""
    parts = [part.strip() for part in typed.split(";" if ";" in typed else ",")]
    sizes = [part for part in parts if part]
    unit = re.search(r"[^\d.,/\s].*$", sizes[-1]) if sizes else None
    bare = [re.fullmatch(r"[\d.,/\s]+", size) for size in sizes[:-1]]
    if unit and all(bare):
        sizes[:-1] = [f"{size} {unit[0]}" for size in sizes[:-1]]
    return sizes


def _size(typed: str, unit: str, what: str) -> float:
    from shimstock.trade.numbers.quantity import parse

    return parse(typed, unit=unit, what=what).value


def _typed(asking: Asking, size: float) -> str:
    """A shim as its maker marks it, the way it was typed."""
    near = min(asking.offered, key=lambda each: abs(each - size))
    typed = re.sub(r"(\d)([^\d.,/\s])", r"\1 \2", asking.offered[near])
    return typed if re.search(r"[^\d.,/\s]", typed) else f"{typed} {asking.wanted.unit}"
