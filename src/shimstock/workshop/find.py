"""From what a person types to what it names: by key, mark, full name or the book's other word."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING, Protocol

from shimstock.workshop.models import Machine
from shimstock.workshop.refused import NotFound, Refused
from shimstock.workshop.wording import listed

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book


class Named(Protocol):
    """A thing of a book that has a name, and perhaps a mark."""

    @property
    def name(self) -> str | None:
        """What it is called."""


def find_machine(typed: str | Machine, *, lock: bool = False) -> Machine:
    """Find a machine by its short name or its full name.

    lock: hold it until the act is over, so that two acts on one machine come one after the other.
    Raises NotFound; Refused where several machines bear the name.
    """
    rows = Machine.objects.select_for_update() if lock else Machine.objects.all()
    if isinstance(typed, Machine):
        found: Machine = rows.get(pk=typed.pk)
        return found
    rows = rows.filter(withdrawn=False)
    wanted = typed.strip()
    standing: list[Machine] = list(rows.filter(slug=wanted.lower())) or list(
        rows.filter(name__iexact=wanted)
    )
    if len(standing) == 1:
        return standing[0]
    if standing:
        raise Refused(
            [f"{typed!r} names several machines: {listed((m.slug for m in standing), 'or')}."]
        )
    slugs = Machine.objects.filter(withdrawn=False).values_list("slug", flat=True)
    raise NotFound("machine", typed, slugs)


def find_part(book: Book, typed: str) -> str:
    """Find a part's key. Raises NotFound; Refused where the text names several."""
    return _find("part", typed, book.parts)


def find_joint(book: Book, typed: str) -> str:
    """Find a joint's key. Raises NotFound; Refused where the text names several."""
    return _find("joint", typed, book.joints)


def find_figure(book: Book, typed: str) -> str:
    """Find the key of a figure or setting. Raises NotFound; Refused where it names several."""
    return _find("figure", typed, book.measures)


def find_gate(book: Book, typed: str) -> str:
    """Find a gate's key. Raises NotFound."""
    return _find("gate", typed, book.gates)


def find_point(book: Book, typed: str, open_points: Iterable[str] = ()) -> str:
    """Find the key of a gate's question, or of another point that is open.

    open_points: keys of the points that are open now. Raises NotFound.
    """
    questions = (key for gate in book.gates.values() for key in gate.points)
    return _find("point", typed, {key: _Plain(key) for key in (*questions, *open_points)})


def find_among(what: str, typed: str, things: Mapping[str, Named]) -> str:
    """Find the key of one of several kinds of thing at once.

    what: how they are called together. Raises NotFound; Refused where the text names several.
    """
    return _find(what, typed, things)


def find_piece(book: Book, part: str, typed: str) -> str:
    """Find which piece of a part is meant; "" where there is only one.

    Raises NotFound; Refused where there are several and none was named.
    """
    pieces = book.parts[part].instances
    wanted = typed.strip()
    for piece in pieces:
        if piece.lower() == wanted.lower():
            return piece
    if not wanted:
        name = book.parts[part].name
        raise Refused([f"There are {len(pieces)} of {name}: say which, {listed(pieces, 'or')}."])
    raise NotFound("piece", typed, pieces, where=f" of {book.parts[part].name}")


class _Plain:
    def __init__(self, name: str) -> None:
        self.name: str | None = name


def _find(what: str, typed: str, things: Mapping[str, Named]) -> str:
    wanted = typed.strip()
    if wanted in things:
        return wanted
    lower = _plain(wanted)
    for calls in (_keys, _marks, _names, _other_words):
        found = [key for key, thing in things.items() if lower in calls(key, thing)]
        if len(found) > 1:
            raise Refused([f"{typed!r} names more than one {what}: {listed(found, 'or')}."])
        if found:
            return found[0]
    within = [key for key, thing in things.items() if set(lower.split()) <= _words(thing)]
    if len(within) == 1:
        return within[0]
    raise NotFound(what, typed, _callable(things), where=" in this machine's book")


def _keys(key: str, thing: Named) -> set[str]:
    return {_plain(key)}


def _marks(key: str, thing: Named) -> set[str]:
    mark = getattr(thing, "mark", None)
    return {_plain(mark)} if mark else set()


def _names(key: str, thing: Named) -> set[str]:
    return {_plain(thing.name)} if thing.name else set()


def _other_words(key: str, thing: Named) -> set[str]:
    return {_plain(word) for word in getattr(thing, "words", ())}


def _words(thing: Named) -> set[str]:
    return set(re.findall(r"\w+", _plain(thing.name or "")))


def _plain(text: str) -> str:
    """A name without its capitals and hyphens, which nobody types the same way twice."""
    return " ".join(text.lower().replace("-", " ").split())


def _callable(things: Mapping[str, Named]) -> list[str]:
    marks = [getattr(thing, "mark", None) or "" for thing in things.values()]
    return [*things, *marks]
