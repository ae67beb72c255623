"""Who sits on whom: a book's parts and joints as rows of a tree, a panel a group, without sizes."""

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from shimstock.trade.machine.book import Book
from shimstock.trade.machine.sides import on_their_sides, sits_on
from shimstock.trade.machine.state import MachineNow, PieceNow

Twig = tuple[str, str]
"""A part, and the one of its pieces that sits on a part of its own; "" for all of it."""


@dataclass(frozen=True)
class Row:
    """One line of a panel: a part with the joint it hangs on, or a further joint by itself."""

    part: str | None
    joint: str | None
    rails: tuple[bool, ...]
    """For each level further out, whether its line runs on below this row."""
    last: bool
    """Whether nothing follows on this row's own level."""
    on: str | None = None
    """The part it sits on, where that stands in another panel."""
    piece: str = ""
    """Which piece of the part, where each sits on its own side of the machine."""


@dataclass(frozen=True)
class Panel:
    """One group of the book."""

    title: str
    rows: tuple[Row, ...]


@dataclass(frozen=True)
class _Hung:
    """Which joint hangs each part on the one it sits on, and which joints stand by themselves."""

    on_line: dict[Twig, str]
    by_itself: dict[Twig, list[str]]


def panels(book: Book) -> tuple[Panel, ...]:
    """Each group with its tree; every part and every joint of the book stands in exactly one row.

    Pieces that sit on parts of their own, as axle shafts on the left and the right housing, have a
    row each.
    A joint is drawn on the line between a part and what it sits on. Where it joins other parts, or
    where that line has a joint already, it gets a row below the part that it moves.
    """
    groups: dict[str, list[str]] = defaultdict(list)
    for key, part in book.parts.items():
        groups[part.group].append(key)
    hung = _hung(book)
    return tuple(
        Panel(_title(name), tuple(_rows(book, keys, hung))) for name, keys in groups.items()
    )


def joint_label(book: Book, key: str) -> str:
    """What a joint is called where there is no room for its name: its mark, or its number."""
    return book.joints[key].mark or f"J{list(book.joints).index(key) + 1}"


def row_pieces(now: MachineNow, row: Row) -> dict[str, PieceNow]:
    """The pieces that a row stands for, each as it stands; none where it has a joint only."""
    pieces = now.pieces_of(row.part) if row.part else {}
    return {name: each for name, each in pieces.items() if row.piece in ("", name)}


def _title(group: str) -> str:
    return group[:1].upper() + group[1:]


def _hung(book: Book) -> _Hung:
    hung = _Hung({}, defaultdict(list))
    for key, joint in book.joints.items():
        moved = _moved(book, joint.between)
        twig = _on_its_side(book, key, moved or joint.between[0])
        if moved is not None and twig not in hung.on_line:
            hung.on_line[twig] = key
        else:
            hung.by_itself[twig].append(key)
    return hung


def _moved(book: Book, between: tuple[str, ...]) -> str | None:
    """The part of a joint that sits on another part of it; None where none does."""
    for part in between:
        if any(sits_on(book, part, piece) in between for piece in book.parts[part].instances):
            return part
    return None


def _on_its_side(book: Book, joint: str, part: str) -> Twig:
    """Which piece of a part a joint is about: that of what it meets, or that it is named for."""
    pieces, between = on_their_sides(book, part), book.joints[joint].between
    meeting = [piece for piece in pieces if sits_on(book, part, piece) in between]
    if len(meeting) == 1:
        return (part, meeting[0])
    return (part, _named_for(joint, pieces))


def _named_for(key: str, pieces: tuple[str, ...]) -> str:
    return next((piece for piece in pieces if piece in key.split("-")), pieces[0])


def _below(book: Book, twig: Twig) -> Twig | None:
    """What a part, or its piece, sits on."""
    key, piece = twig
    below = sits_on(book, key, piece)
    if below is None:
        return None
    pieces = on_their_sides(book, below)
    return (below, piece if piece in pieces else _named_for(key, pieces))


def _rows(book: Book, group: list[str], hung: _Hung) -> Iterator[Row]:
    """The rows of one group, each part before what sits on it."""
    inside = {(key, piece) for key in group for piece in on_their_sides(book, key)}
    sitting: dict[Twig | None, list[Twig]] = defaultdict(list)
    for key in group:
        for piece in on_their_sides(book, key):
            below = _below(book, (key, piece))
            sitting[below if below in inside else None].append((key, piece))

    def grow(
        parts: Iterable[Twig], joints: Iterable[str], rails: tuple[bool, ...]
    ) -> Iterator[Row]:
        joints, parts = list(joints), list(parts)
        for place, joint in enumerate(joints, start=1):
            yield Row(None, joint, rails, place == len(joints) and not parts)
        for place, twig in enumerate(parts, start=1):
            key, piece = twig
            last = place == len(parts)
            below = _below(book, twig)
            elsewhere = below[0] if below and below not in inside else None
            yield Row(key, hung.on_line.get(twig), rails, last, elsewhere, piece)
            yield from grow(sitting[twig], hung.by_itself.get(twig, ()), (*rails, not last))

    return grow(sitting[None], (), ())
