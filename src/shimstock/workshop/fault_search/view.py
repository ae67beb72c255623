"""A search for a fault as it stands now: one value from which page, command and paper show it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING, Any

from shimstock.workshop.fault_search.counts import counts, learned_priors
from shimstock.workshop.fault_search.given import given, told_of
from shimstock.workshop.fault_search.seen import OF_READING, HeldBack
from shimstock.workshop.fault_search.worked_out import worked_out

if TYPE_CHECKING:
    from shimstock.trade.faults.at_hand import AtHand
    from shimstock.trade.faults.forbidden import Forbidden
    from shimstock.trade.faults.interval import Interval
    from shimstock.trade.faults.learned import Count
    from shimstock.trade.faults.network import Network, Told
    from shimstock.trade.faults.ranking import Ranking
    from shimstock.trade.faults.search import Search
    from shimstock.trade.faults.why import Why
    from shimstock.trade.machine.book import Caution
    from shimstock.workshop.fault_search.checks import Checks
    from shimstock.workshop.fault_search.seen import (
        CauseSeen,
        NotOffered,
        OfferSeen,
        QuestionSeen,
        ToldSeen,
    )
    from shimstock.workshop.fault_search.why import ChangeSeen, WhySeen
    from shimstock.workshop.looking import Seen
    from shimstock.workshop.models import FaultSearch


EVEN = 0.5


@dataclass(frozen=True, eq=False)
class SearchSeen:
    """A search and what follows from it; each part is worked out once, when it is asked for.

    row: None where there is no search yet. told: everything told, that of readings included. given:
    the same for the trade. network: the book's with what was learned. counted: how often each cause
    was found, here and in imported counts. ranked: None where what was told cannot all be true;
    `cannot_be` then says so, and there is nothing to check. at_hand: who does the checks.
    """

    seen: Seen
    row: FaultSearch | None
    told: tuple[ToldSeen, ...]
    given: Told
    network: Network
    counted: Mapping[str, Count]
    ranked: Ranking | None
    cannot_be: str
    at_hand: AtHand

    @property
    def begun(self) -> bool:
        """Whether anything was seen or read from which causes could be ranked."""
        return self.ranked is not None and bool(self.ranked.raised)

    @cached_property
    def about(self) -> frozenset[str]:
        """The signs that this search is about: those told in it as seen or by a number.

        Where none was, it is about what readings in the book show.
        """
        counts = [each for each in self.told if each.counts and each.about.startswith("sign:")]
        shows = [each for each in counts if self.given.findings[each.key] is not False]
        told = [each for each in shows if each.comes_from != OF_READING]
        return frozenset(each.key for each in told or shows)

    @property
    def cautions(self) -> tuple[Caution, ...]:
        """What can hurt with what shows, before anything is checked: an engine that runs away.

        A sign that takes minutes has dangers of its own, which stand with its check.
        """
        book = self.seen.book
        shown = [book.signs[key] for key in self.about if not book.signs[key].minutes]
        dangers = {danger for sign in shown for danger in sign.dangers}
        return tuple(each for each in book.cautions.values() if dangers & set(each.dangers))

    @cached_property
    def forbidden(self) -> tuple[Forbidden, ...]:
        """What forbids the engine to run, or to turn, what other searches left included."""
        from shimstock.workshop.fault_search.must_not import must_not_run

        return must_not_run(self.seen.now, self.row.number if self.row else None, self.given)

    @property
    def must_not(self) -> tuple[str, ...]:
        """The same in words, a line each."""
        from shimstock.workshop.fault_search.checks import forbidden_told

        return tuple(forbidden_told(self.seen.book, each) for each in self.forbidden)

    @cached_property
    def explained(self) -> tuple[tuple[CauseSeen, str], ...]:
        """The causes known to be there that explain what was seen, and the names of those signs."""
        signs = self.seen.book.signs
        found = []
        for cause in self.ranking:
            brings = [
                signs[key].name for key in sorted(self.about) if cause.key in signs[key].causes
            ]
            if cause.said and brings:
                found.append((cause, "; ".join(brings)))
        return tuple(found)

    @cached_property
    def besides(self) -> tuple[str, ...]:
        """Names of causes that readings speak for and that this search is not about."""
        from shimstock.workshop.fault_search.raised import besides

        return tuple(self.seen.book.causes[key].name for key in besides(self))

    @cached_property
    def ranking(self) -> tuple[CauseSeen, ...]:
        """The causes that something speaks for, likeliest first."""
        from shimstock.workshop.fault_search.raised import causes_seen

        return causes_seen(self) if self.begun else ()

    @cached_property
    def spans(self) -> Mapping[str, Interval]:
        """The 90 % interval of each raised cause; empty where so much was seen that there is none.

        It comes from the book's figures being guesses, and is narrower where counts were learned.
        """
        from shimstock.trade.faults.interval import intervals

        if not self.begun:
            return {}
        looked = {cause: count.looked for cause, count in self.counted.items()}
        return worked_out(intervals, self.network, self.given, looked)

    @cached_property
    def offers(self) -> tuple[OfferSeen, ...]:
        """Checks worth doing next, the best first; opening up for a part is among them."""
        from shimstock.workshop.fault_search.offers import offer_seen

        can, _ = self._offered
        book, settled = self.seen.book, self.given.causes
        return tuple(
            offer_seen(book, each, can[each.check], self._checks, settled)
            for each in self._search.offers
        )

    @cached_property
    def questions(self) -> tuple[QuestionSeen, ...]:
        """Signs to look for before any check, the best first."""
        from shimstock.workshop.fault_search.offers import question_seen

        return tuple(question_seen(self.seen.book, each) for each in self._search.questions)

    @cached_property
    def not_offered(self) -> tuple[NotOffered, ...]:
        """Checks of raised causes that those who are there cannot do, and why."""
        from shimstock.workshop.fault_search.offers import not_offered

        _, cannot = self._offered
        return not_offered(self.seen.book, cannot | self._checks.blocked)

    @property
    def held_back(self) -> tuple[HeldBack, ...]:
        """The same by reason, as many checks often share one."""
        reasons = dict.fromkeys(each.reason for each in self.not_offered)
        return tuple(
            HeldBack(reason, tuple(each for each in self.not_offered if each.reason == reason))
            for reason in reasons
        )

    @property
    def unlisted(self) -> float:
        """Chance that what was seen has no cause that the checks offered can still find."""
        return self._search.unlisted

    @property
    def mostly_held_back(self) -> bool:
        """Whether the checks offered rather miss the cause than find it, and not the likeliest."""
        found = {cause for each in self.offers for cause in each.settles}
        open_ = [each.key for each in self.ranking if each.key not in self.given.causes]
        likeliest_missed = bool(open_) and open_[0] not in found
        return bool(self.not_offered) and likeliest_missed and self.unlisted > EVEN

    @cached_property
    def whys(self) -> Mapping[str, Why]:
        """What speaks for and against each of the ranking's causes, worked out at once."""
        from shimstock.trade.faults.why import whys

        causes = tuple(each.key for each in self.ranking)
        return worked_out(whys, self.network, self.given, causes)

    def why(self, cause: str) -> WhySeen:
        """What speaks for and against a cause of the book, and how its prior came about."""
        from shimstock.workshop.fault_search.why import why_seen

        if cause not in self._whys:
            self._whys[cause] = why_seen(self, cause)
        return self._whys[cause]

    @cached_property
    def would_change(self) -> tuple[ChangeSeen, ...]:
        """What would put another cause first, the likeliest first."""
        from shimstock.workshop.fault_search.why import would_change

        return would_change(self) if self.begun else ()

    @cached_property
    def names(self) -> Mapping[str, str]:
        """The names and marks of the book's signs and causes, by their keys."""
        from shimstock.workshop.fault_search.words import about_called

        book = self.seen.book
        signs = {key: about_called(book, f"sign:{key}") for key in book.signs}
        return signs | {key: about_called(book, f"cause:{key}") for key in book.causes}

    @cached_property
    def _whys(self) -> dict[str, WhySeen]:
        return {}

    @cached_property
    def _checks(self) -> Checks:
        from shimstock.workshop.fault_search.checks import Checks, checks_at
        from shimstock.workshop.fault_search.raised import raised

        if self.ranked is None:
            return Checks({}, {}, {})
        left = [cause for cause in raised(self) if cause not in self.given.causes]
        return checks_at(self.seen, left, self.forbidden)

    @cached_property
    def _offered(self) -> tuple[dict[str, Any], dict[str, str]]:
        """The checks that those who are there can do, and why not the others."""
        from shimstock.trade.faults.at_hand import offered

        return offered(self._checks.can, self.at_hand)

    @cached_property
    def _search(self) -> Search:
        from shimstock.trade.faults.of_book import free_signs
        from shimstock.trade.faults.search import Search, next_checks
        from shimstock.workshop.fault_search.checks import cannot_show

        can, _ = self._offered
        if not self.begun:
            return Search()
        joints = {joint for check in can.values() for joint in check.joints}
        minutes = {joint: self.seen.book.joints[joint].open for joint in sorted(joints)}
        signs = free_signs(self.seen.book, self.given)
        free = [key for key in signs if not cannot_show(self.seen, key, self.forbidden)]
        return worked_out(
            next_checks, self.network, self.given, can, minutes, free=free, about=self.about
        )


def see_search(
    seen: Seen,
    row: FaultSearch | None,
    more: Told | None = None,
    at_hand: AtHand | None = None,
) -> SearchSeen:
    """Look at a search of a machine.

    row: None for a search that is not written down. more: what was typed beside it, without being
    kept; it goes before what the search says. at_hand: instead of what the search says of it.
    """
    from shimstock.trade.faults.network import CannotBe
    from shimstock.trade.faults.of_book import network_of
    from shimstock.trade.faults.ranking import rank

    counted = counts()
    network = network_of(seen.book, learned_priors(seen.book, counted))
    told = given(seen, row, more)
    known = told_of(told)
    here = at_hand or at_hand_of(row)
    try:
        ranked = worked_out(rank, network, known)
    except CannotBe as error:
        return SearchSeen(seen, row, told, known, network, counted, None, str(error), here)
    return SearchSeen(seen, row, told, known, network, counted, ranked, "", here)


def at_hand_of(row: FaultSearch | None) -> AtHand:
    """Who does the checks of a search, and what is not there; one person with all for none."""
    from shimstock.trade.faults.at_hand import AtHand

    return AtHand(row.people, row.young, frozenset(row.missing)) if row else AtHand()
