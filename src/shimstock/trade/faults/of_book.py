"""A book's causes and signs as a network, and its checks."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from shimstock.trade.faults.network import Check, Finding, Network, Spread, Told
from shimstock.trade.machine.book import Book, Cause, Figure, Sign

CAUSE, SIGN, OPEN = "cause:", "sign:", "open:"
"""Before the key of a check: the check of a cause, looking at a sign, opening up for a part."""
TURNING = frozenset({"running", "driving"})
"""Dangers of an engine that turns."""
OTHERWISE = {"cranking": "running", "running": "cranking"}
LOOKING = 5.0
"""Minutes to look at a part once it is in reach. Common practice, no source."""


def network_of(book: Book, priors: Mapping[str, float] | None = None) -> Network:
    """Make a network of a book's causes and signs.

    priors: chances that go before the book's, by cause.
    """
    chances = {key: cause.chance for key, cause in book.causes.items()} | dict(priors or {})
    findings = {key: _finding(book, sign) for key, sign in book.signs.items()}
    pairs = {
        tuple(sorted((key, other)))
        for key, cause in book.causes.items()
        for other in cause.never_with
    }
    return Network(chances, findings, tuple(sorted(pairs)))


def checks_of(book: Book) -> dict[str, Check]:
    """The checks that a book has: of each cause, and of each sign that takes work to look at."""
    found = {CAUSE + key: _check_of_cause(key, cause) for key, cause in book.causes.items()}
    for key, sign in book.signs.items():
        if sign.minutes or sign.open:
            found[SIGN + key] = Check(
                minutes=sign.minutes,
                gives=(key,),
                joints=frozenset(sign.open),
                needs=sign.needs,
                dangers=sign.dangers,
                engine=_turns(sign.when, sign.dangers),
            )
    return found


def standing_of(book: Book, key: str, check: Check) -> Check | None:
    """The check of a cause as it is done with the engine standing; None where that shows nothing.

    key: of the check, as `checks_of` has it.
    """
    cause = book.causes.get(key.removeprefix(CAUSE))
    if cause is None or cause.check.standing is None:
        return None
    standing = cause.check.standing
    return replace(check, needs=standing.needs, dangers=standing.dangers, engine=False)


def openings_of(book: Book) -> dict[str, Check]:
    """Opening up for the part of a cause and looking at it: settles every cause of that part.

    It takes as long as the longest of their own checks, for what is found is to be proved too. The
    joints are left empty: what must come off follows from how the machine stands.
    """
    parts: dict[str, list[str]] = {}
    for key, cause in book.causes.items():
        if cause.part is not None:
            parts.setdefault(cause.part, []).append(key)
    return {
        OPEN + part: Check(
            max(LOOKING, *(book.causes[key].check.minutes for key in keys)), confirms=tuple(keys)
        )
        for part, keys in parts.items()
    }


def spreads_of(figure: Figure) -> tuple[Spread, Spread] | None:
    """How a reading falls where all is well, and where it is not, by a figure's limits.

    The bell of a sound machine stands in the middle of the new range; that of a faulty one as far
    beyond the limit of use as the limit is from that middle. Both reach the limit at two standard
    deviations, so that a reading at the limit speaks for neither. None where the book gives no new
    range, or no limit on the side to which the figure wears. An assumption of ours, no source.
    """
    new, allowed = figure.as_new, figure.allowed
    if new is None or new.low is None or new.high is None or allowed is None:
        return None
    edge = allowed.high if figure.wears_up else allowed.low
    middle = (new.low + new.high) / 2
    if edge is None or edge == middle:
        return None
    deviation = abs(edge - middle) / 2
    return Spread(middle, deviation), Spread(2 * edge - middle, deviation)


def _finding(book: Book, sign: Sign) -> Finding:
    figure = book.measures.get(sign.figure or "")
    spreads = spreads_of(figure) if figure else None
    absent, present = spreads or (None, None)
    return Finding(sign.leak, sign.weights, absent, present)


def _check_of_cause(key: str, cause: Cause) -> Check:
    check = cause.check
    return Check(
        minutes=check.minutes,
        confirms=(key,),
        joints=frozenset(check.open),
        hands=check.hands,
        needs=check.needs,
        dangers=check.dangers,
        engine=_turns(check.when, check.dangers),
    )


def _turns(when: str | None, dangers: Iterable[str]) -> bool:
    """Whether the engine must turn: as the book says, or as the dangers do in a book of before."""
    return when is not None or not TURNING.isdisjoint(dangers)


def free_signs(
    book: Book,
    told: Told = Told(),  # noqa: B008  # frozen
) -> Iterator[str]:
    """The signs that cost nothing to look for and that nobody has looked for yet.

    An engine that runs is not asked what it does when it will not fire, nor the other way round.
    """
    seen = {book.signs[key].when for key, said in told.findings.items() if said is True}
    for key, sign in book.signs.items():
        cannot = OTHERWISE.get(sign.when or "", "")
        free = not sign.minutes and not sign.open
        if free and key not in told.findings and cannot not in seen:
            yield key
