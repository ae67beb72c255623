"""The causes that something speaks for, each with its chance and what that chance rests on."""

from __future__ import annotations

from typing import TYPE_CHECKING

from shimstock.trade.faults.learned import Count
from shimstock.workshop.fault_search.seen import CauseSeen
from shimstock.workshop.fault_search.words import THERE
from shimstock.workshop.wording import count_of

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book
    from shimstock.workshop.fault_search.view import SearchSeen


def causes_seen(search: SearchSeen) -> tuple[CauseSeen, ...]:
    """The causes that something speaks for, likeliest first."""
    return tuple(_cause_seen(search, key) for key in raised(search))


def raised(search: SearchSeen) -> tuple[str, ...]:
    """The raised causes of what the search is about, and those known to be there; likeliest first.

    A reading in the book may raise others, which belong to another search.
    """
    from shimstock.trade.faults.why import suspected

    if search.ranked is None:
        return ()
    looked_for = suspected(search.network, search.given, search.about)
    there = {cause for cause, said in search.given.causes.items() if said}
    return tuple(key for key in search.ranked.raised if key in looked_for | there)


def besides(search: SearchSeen) -> tuple[str, ...]:
    """The other raised causes: what readings speak for that this search is not about."""
    shown = set(raised(search))
    return tuple(key for key in search.ranked.raised if key not in shown) if search.ranked else ()


def _cause_seen(search: SearchSeen, key: str) -> CauseSeen:
    assert search.ranked is not None
    book = search.seen.book
    cause = book.causes[key]
    count = search.counted.get(key, Count())
    chance = search.ranked.chances[key]
    span = search.spans.get(key)
    return CauseSeen(
        key=key,
        name=cause.name,
        mark=cause.mark or "",
        part=cause.part or "",
        part_name=book.parts[cause.part].name if cause.part else "",
        chance=chance,
        low=span.low if span else None,
        high=span.high if span else None,
        prior=search.network.causes[key],
        stand_in=cause.stand_in,
        prior_says=prior_says(book, key, count),
        confirmed=count.confirmed,
        looked=count.looked,
        said=THERE if search.given.causes.get(key) else "",
    )


def prior_says(book: Book, cause: str, count: Count) -> str:
    """Where a prior is from, in words: the book's page or a stand-in, and what was counted."""
    entry = book.causes[cause]
    word = f"{entry.prior}, " if isinstance(entry.prior, str) else ""
    whence = "stand-in" if entry.stand_in else f"page {entry.page}"
    times = count_of(count.looked, "time")
    counted = f"; found {count.confirmed} of {times} looked for" if count.looked else ""
    return f"{word}{entry.chance:g} ({whence}){counted}"
