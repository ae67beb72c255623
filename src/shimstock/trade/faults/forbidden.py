"""What must not be run or turned any more, by what was seen and what was found."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from shimstock.trade.faults.of_book import CAUSE, SIGN, TURNING, spreads_of

if TYPE_CHECKING:
    from shimstock.trade.faults.network import Told
    from shimstock.trade.machine.book import Book
    from shimstock.trade.machine.faults import Forbids


@dataclass(frozen=True)
class Forbidden:
    """That the engine must not run, or not turn, and what says so.

    about: sign:KEY that is seen, or cause:KEY that is there. says: what the book says of it.
    search: number of the search that left it standing, where it is another than the one told of.
    """

    about: str
    says: Forbids
    search: int | None = None


def forbidden(book: Book, told: Told) -> tuple[Forbidden, ...]:
    """What forbids running or turning, as things were told; what forbids turning comes first.

    A sign that was read counts as seen where its number lies nearer to a faulty machine's than to a
    sound one's. What holds until a cause is cleared is over once all its causes are.
    """
    found = [each for each in _says(book, told) if not _over(each.says, told)]
    return tuple(sorted(found, key=lambda each: each.says.engine != "turning"))


def shows(book: Book, sign: str, said: bool | float) -> bool:
    """Whether a sign counts as seen: it was, or its number is nearer to a faulty machine's.

    sign: its key. said: seen or not, or a number in the unit of the sign's figure.
    """
    figure = book.measures.get(book.signs[sign].figure or "")
    if isinstance(said, bool) or figure is None or (spreads := spreads_of(figure)) is None:
        return said is True
    sound, faulty = spreads
    return abs(said - faulty.mean) < abs(said - sound.mean)


def held_by(book: Book, check: str, by: Iterable[Forbidden]) -> Forbidden | None:
    """The first of them that forbids a check, by its key; None where it may be done."""
    how = _how(book, check)
    for each in by:
        if how == "running" or (how is not None and each.says.engine == "turning"):
            return each
    return None


def _says(book: Book, told: Told) -> Iterator[Forbidden]:
    for key, cause in book.causes.items():
        if cause.forbids and told.causes.get(key):
            yield Forbidden(CAUSE + key, cause.forbids)
    for key, sign in book.signs.items():
        if sign.forbids and shows(book, key, told.findings.get(key, False)):
            yield Forbidden(SIGN + key, sign.forbids)


def _over(says: Forbids, told: Told) -> bool:
    return bool(says.until) and all(told.causes.get(cause) is False for cause in says.until)


def _how(book: Book, check: str) -> str | None:
    """Whether the engine runs, cranks or turns for a check; None where it stands."""
    kind, _, key = check.partition(":")
    looked = book.causes[key].check if kind == "cause" else book.signs.get(key)
    if looked is None:
        return None
    ran = not TURNING.isdisjoint(looked.dangers)  # a book of before did not say when
    if looked.when == "turning":  # seen while it is being started: it may catch, and run
        return "running"
    return looked.when or ("running" if ran else None)
