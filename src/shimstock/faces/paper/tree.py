"""Who sits on whom: a book's parts and joints as rows of a tree, a panel a group, without sizes."""

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from shimstock.trade.machine.book import Book


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


@dataclass(frozen=True)
class Panel:
    """One group of the book."""

    title: str
    rows: tuple[Row, ...]


@dataclass(frozen=True)
class _Hung:
    """Which joint hangs each part on the one it sits on, and which joints stand by themselves."""

    on_line: dict[str, str]
    by_itself: dict[str, list[str]]


def panels(book: Book) -> tuple[Panel, ...]:
    """Each group with its tree; every part and every joint of the book stands in exactly one row.

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


def _title(group: str) -> str:
    return group[:1].upper() + group[1:]


def _hung(book: Book) -> _Hung:
    hung = _Hung({}, defaultdict(list))
    for key, joint in book.joints.items():
        moved = _moved(book, joint.between)
        if moved is not None and moved not in hung.on_line:
            hung.on_line[moved] = key
        else:
            hung.by_itself[moved or joint.between[0]].append(key)
    return hung


def _moved(book: Book, between: tuple[str, ...]) -> str | None:
    """The part of a joint that sits on another part of it; None where none does."""
    for part in between:
        if book.parts[part].sits_on in between:
            return part
    return None


def _rows(book: Book, group: list[str], hung: _Hung) -> Iterator[Row]:
    """The rows of one group, each part before what sits on it."""
    inside = set(group)
    sitting: dict[str | None, list[str]] = defaultdict(list)
    for key in group:
        below = book.parts[key].sits_on
        sitting[below if below in inside else None].append(key)

    def grow(parts: Iterable[str], joints: Iterable[str], rails: tuple[bool, ...]) -> Iterator[Row]:
        twigs = [("joint", key) for key in joints] + [("part", key) for key in parts]
        for place, (kind, key) in enumerate(twigs, start=1):
            last = place == len(twigs)
            if kind == "joint":
                yield Row(None, key, rails, last)
                continue
            below = book.parts[key].sits_on
            elsewhere = below if below not in inside else None
            yield Row(key, hung.on_line.get(key), rails, last, elsewhere)
            yield from grow(sitting[key], hung.by_itself.get(key, ()), (*rails, not last))

    return grow(sitting[None], (), ())
