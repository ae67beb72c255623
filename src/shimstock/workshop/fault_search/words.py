"""What may be said in a search, and which sign, cause, tool or search is meant by what is typed."""

from __future__ import annotations

from contextlib import suppress
from typing import TYPE_CHECKING

from shimstock.workshop.fault_search.pick import (
    found_by_word,
    has_all,
    nearest_by_word,
    plain,
    stems,
    wholly_said,
)
from shimstock.workshop.refused import NotFound, Refused
from shimstock.workshop.wording import NoSuchWord, listed

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from shimstock.trade.machine.book import Book
    from shimstock.workshop.models import FaultSearch, Machine

SEEN, NOT_SEEN, THERE, CLEARED = "seen", "not seen", "there", "cleared"
NOT_LOOKED = "not looked"
"""Takes back what was said of a sign or a cause."""

MOST_PEOPLE = 20
"""More do not find room around a machine; a larger number is a slip of the finger."""

NEAREST = 3
"""How many signs are asked for where none is called as was typed."""

SIGN, CAUSE = "sign:", "cause:"
"""Before the key of what something is said about; as before the key of a check."""


class NoSuchSign(NotFound):
    """No sign is called so; the message asks for the nearest by what it means."""

    def __init__(self, typed: str, nearest: Sequence[str]) -> None:
        self._nearest = nearest
        super().__init__("sign", typed, (), where=" in this machine's book")
        self.near = tuple(nearest)

    def _next_move(self) -> str:
        return f"Did you mean: {'; '.join(self._nearest)}?"


def find_sign(book: Book, typed: str) -> str:
    """Find a sign's key by key, mark, name, or words of its name or of how people say it.

    Raises NotFound, with the nearest signs by those words; Refused where the text names several.
    """
    from shimstock.workshop.find import find_among

    try:
        return find_among("sign", typed, book.signs)
    except NotFound as no_name:
        if found := [each.key for each in found_by_word(book, typed)]:
            return _only_one("sign", typed, found)
        if len(whole := wholly_said(book, typed)) == 1:
            return whole[0]
        near = [about_called(book, SIGN + each.key) for each in nearest_by_word(book, typed)]
        slip = no_name.near and not typed.strip().count(" ")  # of the finger, in a key or a mark
        if slip or not near:
            raise
        raise NoSuchSign(typed, near[:NEAREST]) from None


def find_cause(book: Book, typed: str) -> str:
    """Find a cause's key by key, mark, name, or words of its name.

    Raises NotFound; Refused where the text names several.
    """
    from shimstock.workshop.find import find_among

    try:
        return find_among("cause", typed, book.causes)
    except NotFound:
        words = stems(typed)
        within = [key for key, cause in book.causes.items() if has_all(cause.name, words)]
        if not words or not within:
            raise
        return _only_one("cause", typed, within)


def find_about(book: Book, typed: str) -> str:
    """Find what is talked about: sign:KEY or cause:KEY, from that or from what it is called.

    Raises NotFound; Refused where the text names several.
    """
    from shimstock.workshop.find import find_among

    if typed.startswith(SIGN):
        return SIGN + find_sign(book, typed.removeprefix(SIGN))
    if typed.startswith(CAUSE):
        return CAUSE + find_cause(book, typed.removeprefix(CAUSE))
    for prefix, what, things in ((SIGN, "sign", book.signs), (CAUSE, "cause", book.causes)):
        with suppress(NotFound):
            return prefix + find_among(what, typed, things)
    try:
        return SIGN + find_sign(book, typed)
    except NotFound as no_sign:
        try:
            return CAUSE + find_cause(book, typed)
        except NotFound:
            raise no_sign from None


def about_called(book: Book, about: str) -> str:
    """A sign or cause by its name and mark; the text itself where the book does not know it."""
    from shimstock.workshop.looking import called

    kind, _, key = about.partition(":")
    things = book.signs if kind == "sign" else book.causes
    return called(things, key) if key in things else about


def tools_of(book: Book) -> tuple[str, ...]:
    """Every tool that a check of the book needs, each once."""
    needs = [cause.check.needs for cause in book.causes.values()]
    needs += [sign.needs for sign in book.signs.values()]
    return tuple(sorted({tool for each in needs for tool in each}))


def check_people(people: int) -> None:
    """Raise Refused for fewer people than one, or more than there is room for at a tractor."""
    if people < 1:
        raise Refused([f"{people} people can check nothing; say how many are there, at least 1"])
    if people > MOST_PEOPLE:
        raise Refused(
            [f"{people} people have no room at one tractor; say how many do the checks, "
             f"1 to {MOST_PEOPLE}"]
        )  # fmt: skip


def find_tools(book: Book, typed: Iterable[str]) -> list[str]:
    """The tools that are meant, as the book's checks name them.

    Raises NotFound, which lists them all; Refused where the checks need none.
    """
    return sorted({_find_tool(book, each) for each in typed})


def find_search(machine: Machine, number: int | None = None) -> FaultSearch:
    """Find a search of a machine by its number; without one that which goes on, begun last.

    Raises NotFound for an unknown number, Refused where none goes on.
    """
    rows = searches_of(machine)
    if number is not None:
        for row in rows:
            if row.number == number:
                return row
        raise NotFound("search", str(number), [str(row.number) for row in rows])
    for row in rows:
        if not row.ended:
            return row
    would = "begin one, or take an earlier one up again" if rows else "begin one"
    raise Refused([f"No search for a fault goes on with {machine.name}; {would}"])


def open_search(machine: Machine) -> FaultSearch | None:
    """The search that goes on, begun last; None where none does."""
    rows = machine.searches.filter(withdrawn=False, ended="").order_by("-number")
    found: FaultSearch | None = rows.first()
    return found


def searches_of(machine: Machine) -> list[FaultSearch]:
    """Every search on a machine, the latest first."""
    return list(machine.searches.filter(withdrawn=False).order_by("-number"))


def _find_tool(book: Book, typed: str) -> str:
    tools = tools_of(book)
    for within in (
        [tool for tool in tools if plain(tool) == plain(typed)],
        [tool for tool in tools if set(plain(typed).split()) <= set(plain(tool).split())],
    ):
        if len(within) == 1 and typed.strip():
            return within[0]
    if not tools:
        raise Refused([f"No check of this machine's book needs a tool; leave {typed!r} away"])
    raise NoSuchWord("tool", typed, tools, where=" that a check of this machine's book needs")


def _only_one(what: str, typed: str, keys: Sequence[str]) -> str:
    if len(keys) > 1:
        raise Refused([f"{typed!r} names more than one {what}; {listed(keys, 'or')}?"])
    return keys[0]
