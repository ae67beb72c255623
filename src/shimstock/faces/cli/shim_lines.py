"""A shim pack as lines: what was typed of it, what to lay together, and the play to expect."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from shimstock.faces.cli.shown import Heading, Shown
from shimstock.faces.cli.verdict_lines import STAND_IN
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
    joint, wanted = _set_by_shims(book, key, which)
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


def chosen(asking: Asking, *, behind: bool, working: bool) -> tuple[dict[str, Any], list[Shown]]:
    """The pack as plain values, and as it is shown. Raises Refused where there is none."""
    from shimstock.workshop.refused import Refused

    worked = _worked(asking, behind)
    pack = worked.value
    if pack is None:
        said = f"no pack of up to twelve of these shims gives {_between(asking.wanted)}"
        raise Refused([f"{_named(asking)}: {said}; --offered with thinner shims beside them"])
    expect = worked.working.value("e_new")
    lines = list(worked.working.shown()) if working else []
    data = {
        "figure": asking.key, "piece": asking.piece, "joint": asking.joint,
        "fitted": asking.fitted, "play": asking.play, "shims": list(pack.shims),
        "thickness": pack.thickness, "expect": expect, "wanted": asking.wanted.typed,
        "stand_in": asking.figure.stand_in, "unit": pack.unit, "working": lines,
    }  # fmt: skip
    shown: list[Shown] = [Heading(_named(asking)), *_said(asking, pack, expect, behind)]
    return data, [*shown, *(f"    {line}" for line in lines)]


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
        raise Refused([f"{_named(asking)}: {error}"]) from None


def _said(asking: Asking, pack: Pack, expect: float, behind: bool) -> list[Shown]:
    from shimstock.trade.numbers.quantity import show

    unit = pack.unit
    counts = Counter(_typed(asking, size) for size in pack.shims)
    laid = ", ".join(f"{count} × {typed}" for typed, count in counts.items()) or "no shim at all"
    mark = f" [{STAND_IN}]" if asking.figure.stand_in else ""
    joint = called(asking.book.joints, asking.joint)
    lies = (
        "Behind the bearing: a thicker pack takes up play."
        if behind
        else f"Between the faces of {joint}: a thicker pack gives more play."
    )
    return [
        f"Lay together {laid}: {show(pack.thickness, unit)}, in place of "
        f"{show(asking.fitted, unit)}.",
        f"Play to expect {show(expect, unit)}, after {show(asking.play, unit)}; the book says "
        f"{_between(asking.wanted)}{mark}.",
        lies,
        "Measure the pack whole before it goes in, tighten, and read the play again.",
    ]


def _set_by_shims(book: Book, key: str, piece: str) -> tuple[str, Range]:
    """The joint where the pack lies, and the new range that it is to bring the figure to."""
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


def _named(asking: Asking) -> str:
    from shimstock.workshop.wording import figure_named

    return figure_named(asking.book, asking.key, asking.piece)


def _between(wanted: Range) -> str:
    from shimstock.trade.measure.words import between

    return between(wanted)
