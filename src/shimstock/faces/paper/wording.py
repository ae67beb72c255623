"""Small sayings of the record: days, counts, lists and ranges in plain words."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from shimstock.trade.measure.words import between
from shimstock.trade.numbers.limits import Range

NONE = "–"
"""What stands in a cell of a table that has nothing to say."""


@dataclass(frozen=True)
class Under:
    """A heading and what stands under it."""

    title: str
    items: tuple[str, ...]


def under(pairs: Iterable[tuple[str, str]]) -> tuple[Under, ...]:
    """Things under their headings, both in the order in which they first come.

    >>> under([("off", "fan"), ("lent", "pump"), ("off", "belt")])[0]
    Under(title='off', items=('fan', 'belt'))
    """
    found: dict[str, list[str]] = {}
    for title, item in pairs:
        found.setdefault(title, []).append(item)
    return tuple(Under(title, tuple(items)) for title, items in found.items())


def capital(text: str) -> str:
    """A text with a capital at its start."""
    return f"{text[:1].upper()}{text[1:]}"


def day(on: date | None) -> str:
    """A day as it is written on paper; nothing where there is none.

    >>> day(date(2026, 5, 3))
    '3 May 2026'
    """
    return "" if on is None else f"{on.day} {on:%b %Y}"


def some(count: int, one: str, several: str | None = None) -> str:
    """How many of something.

    >>> some(1, "joint"), some(0, "joint"), some(2, "loss", "losses")
    ('1 joint', 'no joints', '2 losses')
    """
    name = one if count == 1 else several or f"{one}s"
    return f"{count or 'no'} {name}"


def sentence(text: str) -> str:
    """A text with a capital at its start and a stop at its end."""
    text = text.strip()
    stop = "" if text.endswith((".", "!", "?", ":")) else "."
    return f"{capital(text)}{stop}" if text else ""


def from_to(wanted: Range | None) -> str:
    """A range of a book as a table shows it.

    >>> from_to(Range(None, 5.76, "in", "max 5.76 in")), from_to(None)
    ('at most 5.76 in', '–')
    """
    if wanted is None or (wanted.low is None and wanted.high is None):
        return NONE
    return between(wanted)


def joined(texts: Iterable[str], between: str = "; ") -> str:
    """The texts that say something, in a row."""
    return between.join(text for text in texts if text)
