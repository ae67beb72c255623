"""Why a cause is as likely as it is, and what would change the order, in the book's words."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from shimstock.trade.faults.learned import Count, learned_prior
from shimstock.trade.numbers.percent import percent
from shimstock.workshop.fault_search.seen import OF_READING
from shimstock.workshop.fault_search.words import about_called
from shimstock.workshop.fault_search.worked_out import worked_out

if TYPE_CHECKING:
    from shimstock.trade.faults.why import Change, Speaks
    from shimstock.trade.machine.book import Book
    from shimstock.workshop.fault_search.view import SearchSeen


NEAREST = 0.001
"""No chance is told nearer to none or all than this."""


@dataclass(frozen=True)
class SpeaksSeen:
    """What one thing that is told does for a cause.

    about: sign:KEY or cause:KEY; called: its name and mark; short: its mark, or its name. says: as
    it is told. factor: on the odds of the cause, everything else as told; below 1 it speaks
    against. grade: that in words. explains: names of the signs that both bring on. excludes: the
    two cannot be there together. settles: it is the cause itself, called there or cleared.
    source: where it is told. short_line, line: the gist, and all of it, for a person.
    """

    about: str
    called: str
    short: str
    says: str
    factor: float
    grade: str
    explains: tuple[str, ...]
    excludes: bool
    settles: bool
    source: str
    short_line: str
    line: str

    @property
    def says_nothing(self) -> bool:
        """Whether it leaves the chance as it was."""
        return self.grade == "says nothing"

    @property
    def speaks_for(self) -> bool:
        """Whether it raises the chance."""
        return self.factor > 1


@dataclass(frozen=True)
class WhySeen:
    """What stands behind the chance of a cause.

    called: its name and mark. prior_says: its prior in words. prior_working: how counts changed it,
    a line each. speaks: what speaks for and against it, the strongest first. settled: where the
    cause itself is told, that it is there or not, and who says so; else "".
    """

    key: str
    called: str
    prior: float
    prior_says: str
    prior_working: tuple[str, ...]
    chance: float
    speaks: tuple[SpeaksSeen, ...]
    settled: str

    @property
    def line(self) -> str:
        """The strongest of what speaks, in a line."""
        strongest = [each for each in self.speaks if not each.says_nothing][:3]
        return "; ".join(each.short_line for each in strongest)

    @property
    def chance_says(self) -> str:
        """The chance to three digits; never as sure as none or all."""
        if self.chance < NEAREST:
            return f"under {NEAREST}"
        return f"over {1 - NEAREST}" if self.chance > 1 - NEAREST else f"{self.chance:.3f}"


@dataclass(frozen=True)
class ChangeSeen:
    """Something that would put another cause first.

    about: sign:KEY or cause:KEY, as it would have to be told: says. chance: of that. first: name of
    the cause that would then be first; "" for none.
    """

    about: str
    says: str
    chance: float
    first: str
    line: str


def why_seen(search: SearchSeen, cause: str) -> WhySeen:
    """What speaks for and against a cause, and how its prior came about."""
    from shimstock.trade.faults.why import why
    from shimstock.workshop.fault_search.raised import prior_says

    book = search.seen.book
    found = search.whys.get(cause) or why(search.network, search.given, cause)
    count = search.counted.get(cause, Count())
    return WhySeen(
        key=cause,
        called=about_called(book, f"cause:{cause}"),
        prior=found.prior,
        prior_says=prior_says(book, cause, count),
        prior_working=tuple(learned_prior(book.causes[cause].chance, count).working.shown()),
        chance=found.chance,
        speaks=tuple(_speaks(search, each) for each in found.speaks),
        settled=_settled(search, cause),
    )


def would_change(search: SearchSeen) -> tuple[ChangeSeen, ...]:
    """What would put another cause first, the likeliest first; of signs only what costs nothing."""
    from shimstock.trade.faults.of_book import free_signs
    from shimstock.trade.faults.why import what_would_change
    from shimstock.workshop.fault_search.checks import cannot_show

    book = search.seen.book
    every = free_signs(book, search.given)
    free = tuple(key for key in every if not cannot_show(search.seen, key, search.forbidden))
    changes = worked_out(what_would_change, search.network, search.given, free, search.about)
    return tuple(_change(book, each) for each in changes)


def _settled(search: SearchSeen, cause: str) -> str:
    about = f"cause:{cause}"
    told = next((each for each in search.told if each.about == about and each.counts), None)
    if told is None:
        return ""
    stands = "confirmed: it is there" if told.said else "cleared: it is not there"
    return f"{stands} ({'by a reading' if told.comes_from == OF_READING else told.source})"


def _speaks(search: SearchSeen, speaks: Speaks) -> SpeaksSeen:
    from shimstock.trade.faults.why import factor_in_words, in_words

    about = f"{'cause' if speaks.is_cause else 'sign'}:{speaks.told}"
    told = next(each for each in search.told if each.about == about and each.counts)
    book = search.seen.book
    factor, line = factor_in_words(speaks.factor), in_words(speaks, search.names)
    short = f"{told.mark or told.name} {told.says}"
    return SpeaksSeen(
        about=about,
        called=about_called(book, about),
        short=told.mark or told.name,
        says=told.says,
        factor=speaks.factor,
        grade=speaks.grade,
        explains=tuple(about_called(book, f"sign:{key}") for key in speaks.explains),
        excludes=speaks.excludes,
        settles=speaks.settles,
        source=told.source,
        short_line=short if speaks.settles else f"{short} {factor}",
        line=line if speaks.settles else f"{line} (odds {factor})",
    )


def _change(book: Book, change: Change) -> ChangeSeen:
    about = f"{'cause' if change.is_cause else 'sign'}:{change.asked}"
    says = "cleared" if change.is_cause else "seen" if change.seen else "not seen"
    first = about_called(book, f"cause:{change.first}") if change.first else ""
    then = f"{first} would be most likely" if first else "nothing would be left to go by"
    line = f"{about_called(book, about)} {says} ({percent(change.chance)}): {then}"
    return ChangeSeen(about, says, change.chance, first, line)
