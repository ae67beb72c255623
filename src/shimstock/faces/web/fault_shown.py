"""A search for a fault as its page shows it: chances in words, one check whole, others named."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from shimstock.faces.web.chances import Bar, bar
from shimstock.trade.faults.learned import Count, learned_prior
from shimstock.trade.faults.ranking import SAMPLED
from shimstock.trade.machine.book import Book
from shimstock.trade.machine.faults import Cause
from shimstock.trade.numbers.percent import percent, percent_between, percent_or_settled
from shimstock.workshop.fault_search.alike import like_it
from shimstock.workshop.fault_search.counts import counts
from shimstock.workshop.fault_search.pick import (
    SignToPick,
    brought_on_by_word,
    found_by_word,
    nearest_by_word,
    picking,
)
from shimstock.workshop.fault_search.seen import (
    OF_READING,
    OF_SEARCH,
    CauseSeen,
    OfferSeen,
    ToldSeen,
)
from shimstock.workshop.fault_search.view import SearchSeen
from shimstock.workshop.fault_search.why import WhySeen
from shimstock.workshop.fault_search.words import CAUSE, NOT_LOOKED, NOT_SEEN, SEEN, SIGN, tools_of
from shimstock.workshop.looking import Seen, minutes
from shimstock.workshop.models import FaultSearch

WORDS = ((SEEN, "▲", "seen"), (NOT_SEEN, "▽", "not"), (NOT_LOOKED, "–", "none"))
"""What can be said of a sign: the word, its shape, and how it is drawn."""

ONE = Count(confirmed=1, looked=1)
"""What one fault that was found adds to the counts."""

WORTH_SAYING = 0.05
"""A smaller chance that no check finds the cause is not worth a line."""

LIKELY = 6
"""How many causes are shown with all that speaks for and against them; the others are folded."""

OPENING = "open"
"""Kind of an offer that is no check of the book: stop here and open it."""


@dataclass(frozen=True)
class Choice:
    """A sign with what is said of it.

    holds: what is chosen in the form. was: what the search says. read: in the book's readings.
    """

    sign: SignToPick
    holds: str
    was: str
    read: str

    words = WORDS

    @property
    def number(self) -> bool:
        """Whether a number is said of it."""
        return self.was not in (SEEN, NOT_SEEN, NOT_LOOKED)


@dataclass(frozen=True)
class Group:
    """Signs that show in one place."""

    name: str
    choices: tuple[Choice, ...]

    @property
    def told(self) -> int:
        """How many of them are told."""
        return sum(each.was != NOT_LOOKED for each in self.choices)

    @property
    def unfolded(self) -> bool:
        """Whether something in it was chosen and not taken."""
        return any(each.holds != each.was for each in self.choices)


@dataclass(frozen=True)
class Named:
    """A cause by its key, name and mark."""

    key: str
    name: str
    mark: str


def _named(causes: Mapping[str, Cause], key: str) -> Named:
    return Named(key, causes[key].name, causes[key].mark or "")


@dataclass(frozen=True)
class Offered:
    """A check with its minutes and its chance in words, and the causes that it settles."""

    seen: OfferSeen
    settles: tuple[Named, ...]

    @property
    def takes(self) -> str:
        """Minutes of the check and its opening."""
        return minutes(self.seen.minutes + self.seen.opening)

    @property
    def expected(self) -> str:
        """Minutes until the cause is found, this check first."""
        return minutes(self.seen.expected)

    @property
    def finds(self) -> str:
        """The chance that it finds the cause."""
        return percent(self.seen.finds)


@dataclass(frozen=True)
class Raised:
    """A cause with its chance in words and as a bar, and what speaks for and against it."""

    seen: CauseSeen
    why: WhySeen | None = None

    @property
    def chance(self) -> str:
        """The chance."""
        return percent_or_settled(self.seen.chance)

    @property
    def prior(self) -> str:
        """What it was before anything was told."""
        return percent_or_settled(self.seen.prior)

    @property
    def between(self) -> str:
        """The interval."""
        if self.seen.low is None or self.seen.high is None:
            return "no interval"
        return percent_between(self.seen.low, self.seen.high)

    @property
    def bar(self) -> Bar:
        """The chance with its interval as it is drawn."""
        each = self.seen
        return bar(chance=each.chance, low=each.low, high=each.high, before=each.prior)


@dataclass(frozen=True)
class Found:
    """A cause as what may have been found; before, after: how common it is held to be, in words."""

    key: str
    name: str
    before: str
    after: str


@dataclass(frozen=True)
class Counted:
    """How often a cause was found. priors: of each book that knows it, before and now, in words."""

    name: str
    count: Count
    priors: tuple[tuple[str, str, str], ...]


def counts_shown(machines: Sequence[Seen]) -> list[Counted]:
    """Every cause that was found or looked at, the most found first; by the books of the shed."""
    found = sorted(
        counts().items(), key=lambda each: (-each[1].confirmed, -each[1].looked, each[0])
    )
    return [_counted(key, count, machines) for key, count in found]


def _counted(key: str, count: Count, machines: Sequence[Seen]) -> Counted:
    """A cause with its counts; machines whose books say the same of it share a line."""
    names: dict[float, list[str]] = {}
    called = key
    for seen in machines:
        if cause := seen.book.causes.get(key):
            called = cause.name
            names.setdefault(cause.chance, []).append(seen.row.name)
    priors = tuple(
        (", ".join(own), percent(chance), percent(learned_prior(chance, count).value))
        for chance, own in names.items()
    )
    return Counted(called, count, priors)


@dataclass(frozen=True)
class Shown:
    """A search as its page shows it.

    asked: words to find signs by as q, and the check to show whole as check. typed: a form that was
    not taken, to be shown as it was filled in; else empty. searches: all those of the machine.
    """

    search: SearchSeen
    asked: Mapping[str, str]
    typed: Mapping[str, str]
    searches: Sequence[FaultSearch] = ()

    @property
    def book(self) -> Book:
        """The machine's book."""
        return self.search.seen.book

    @property
    def words(self) -> str:
        """The words that signs are looked for by."""
        return self.asked.get("q", "").strip()

    @cached_property
    def like_it(self) -> FaultSearch | None:
        """An earlier search like this one that goes on, while this one does."""
        row = self.search.row
        return like_it(row, self.searches) if row and not row.ended else None

    @cached_property
    def told(self) -> tuple[ToldSeen, ...]:
        """What was said in the search."""
        return tuple(each for each in self.search.told if each.comes_from == OF_SEARCH)

    @cached_property
    def read(self) -> tuple[ToldSeen, ...]:
        """What follows from readings in the book."""
        return tuple(each for each in self.search.told if each.comes_from == OF_READING)

    @cached_property
    def anything(self) -> bool:
        """Whether anything is told that is to be explained."""
        return any(each.said is not False and each.counts for each in self.search.told)

    @cached_property
    def groups(self) -> tuple[Group, ...]:
        """Every sign by where it shows."""
        return tuple(
            Group(each.group, tuple(map(self._choice, each.signs))) for each in picking(self.book)
        )

    @cached_property
    def by_word(self) -> tuple[Choice, ...]:
        """The signs that have the words, or whose causes have them, or that have most of them."""
        return tuple(map(self._choice, self._have_words or self._by_cause or self._nearest))

    @property
    def by_cause(self) -> bool:
        """Whether the words are in no sign, yet in causes of the signs shown."""
        return not self._have_words and bool(self._by_cause)

    @property
    def nearest(self) -> bool:
        """Whether only some of the words are in the signs shown."""
        return not self._have_words and not self._by_cause and bool(self._nearest)

    @cached_property
    def _have_words(self) -> tuple[SignToPick, ...]:
        return found_by_word(self.book, self.words)

    @cached_property
    def _by_cause(self) -> tuple[SignToPick, ...]:
        return brought_on_by_word(self.book, self.words)

    @cached_property
    def _nearest(self) -> tuple[SignToPick, ...]:
        return nearest_by_word(self.book, self.words)

    @cached_property
    def known(self) -> tuple[ToldSeen, ...]:
        """The causes that are told to be there."""
        there = (each for each in self.search.told if each.about.startswith(CAUSE) and each.said)
        return tuple(each for each in there if each.counts)

    @cached_property
    def _open(self) -> tuple[CauseSeen, ...]:
        return tuple(each for each in self.search.ranking if not each.said)

    @cached_property
    def likely(self) -> tuple[Raised, ...]:
        """The likeliest causes, each with what speaks for and against it."""
        return tuple(Raised(each, self.search.why(each.key)) for each in self._open[:LIKELY])

    @cached_property
    def less_likely(self) -> tuple[Raised, ...]:
        """The other causes that something speaks for."""
        return tuple(map(Raised, self._open[LIKELY:]))

    @property
    def sampled(self) -> str:
        """How far the chances may be off where they were drawn; "" for exact ones."""
        ranked = self.search.ranked
        return percent(ranked.error) if ranked and ranked.method == SAMPLED else ""

    @cached_property
    def check(self) -> Offered | None:
        """The check that is shown whole: that which is asked for, else the best."""
        wanted = self.asked.get("check", "")
        found = [each for each in self.offers if each.seen.check == wanted]
        return next(iter(found or self.offers), None)

    @cached_property
    def others(self) -> tuple[Offered, ...]:
        """The other checks, the best first."""
        return tuple(
            each for each in self.offers if each is not self.check and each is not self.stop
        )

    @cached_property
    def stop(self) -> Offered | None:
        """The best offer to stop here and open it, where it is not the one that is shown whole."""
        opening = (each for each in self.offers if each.seen.kind == OPENING)
        return next((each for each in opening if each is not self.check), None)

    @cached_property
    def offers(self) -> tuple[Offered, ...]:
        """Every check that can be done, the best first; opening up where it is worth a thought."""
        causes = self.book.causes
        return tuple(
            Offered(each, tuple(_named(causes, key) for key in each.settles))
            for n, each in enumerate(self.search.offers)
            if n == 0 or each.worth_showing
        )

    @property
    def unfindable(self) -> str:
        """The chance that none of the checks finds the cause; "" where it is small."""
        missed = self.search.unlisted
        return percent(missed) if missed >= WORTH_SAYING else ""

    @property
    def is_best(self) -> bool:
        """Whether the check shown whole is the best."""
        return bool(self.offers) and self.check is self.offers[0]

    @property
    def people(self) -> str:
        """How many people are there."""
        return self.typed.get("people", str(self.search.row.people if self.search.row else 1))

    @cached_property
    def was_it(self) -> str:
        """The cause offered as what was found: typed, led to by a link, or confirmed here."""
        here = [
            each.key for each in self.told if each.about.startswith(CAUSE) and each.said is True
        ]
        named = [self.typed.get("cause", ""), self.asked.get("found", "")]
        return next(iter([key for key in (*named, *here) if key]), "")

    @cached_property
    def likely_found(self) -> tuple[Found, ...]:
        """The causes that something speaks for, as what may have been found."""
        return tuple(self._found(each.key) for each in self.search.ranking)

    @cached_property
    def other_found(self) -> tuple[Found, ...]:
        """The other causes of the book, by name."""
        raised = {each.key for each in self.search.ranking}
        left = [self._found(key) for key in self.book.causes if key not in raised]
        return tuple(sorted(left, key=lambda each: each.name))

    def _found(self, key: str) -> Found:
        cause, count = self.book.causes[key], self.search.counted.get(key, Count())
        before, after = (learned_prior(cause.chance, each).value for each in (count, count + ONE))
        return Found(key, cause.name, percent(before), percent(after))

    @cached_property
    def tools(self) -> tuple[tuple[str, bool], ...]:
        """Every tool that a check of the book needs, and whether it is not there."""
        row = self.search.row
        missing = row.missing if row else []
        return tuple((tool, tool in missing) for tool in tools_of(self.book))

    @cached_property
    def _holds(self) -> dict[str, str]:
        return {each.about: each.says for each in self.told}

    @cached_property
    def _read(self) -> dict[str, str]:
        return {each.about: each.source for each in self.read}

    def _choice(self, sign: SignToPick) -> Choice:
        about = f"{SIGN}{sign.key}"
        was = self._holds.get(about, NOT_LOOKED)
        return Choice(sign, self.typed.get(about, was), was, self._read.get(about, ""))
