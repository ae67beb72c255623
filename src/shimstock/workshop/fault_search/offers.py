"""Checks, questions and what is not offered, each with the book's words for it."""

from __future__ import annotations

from collections.abc import Container, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from shimstock.workshop.fault_search.checks import cautions_by, cautions_of
from shimstock.workshop.fault_search.seen import JointSeen, NotOffered, OfferSeen, QuestionSeen
from shimstock.workshop.looking import called

if TYPE_CHECKING:
    from shimstock.trade.faults.network import Check
    from shimstock.trade.faults.search import Offer, Question
    from shimstock.trade.machine.book import Book
    from shimstock.workshop.fault_search.checks import Checks


def offer_seen(
    book: Book, offer: Offer, check: Check, at: Checks, settled: Container[str]
) -> OfferSeen:
    """A check that could be done next.

    at: the checks that it is one of, with the way to each. settled: causes that are, and need no
    check any more.
    """
    about = _about(book, offer.check, offer.check in at.standing)
    return OfferSeen(
        check=offer.check,
        kind=about.kind,
        key=about.key,
        name=about.name,
        mark=about.mark,
        do=about.do,
        points_to=about.points_to,
        points_away=about.points_away,
        settles=tuple(cause for cause in check.confirms if cause not in settled),
        minutes=offer.minutes,
        opening=offer.opening,
        joints=tuple(_joint(book, key) for key in at.way[offer.check]),
        cautions=cautions_of(book, check),
        needs=check.needs,
        hands=check.hands,
        figure=about.figure,
        finds=offer.finds,
        expected=offer.expected,
    )


def question_seen(book: Book, question: Question) -> QuestionSeen:
    """A sign to look for, as it is asked."""
    sign = book.signs[question.finding]
    return QuestionSeen(
        key=question.finding,
        name=sign.name,
        mark=sign.mark or "",
        said=sign.said or "",
        where=book.parts[sign.where].name if sign.where else "",
        cautions=cautions_by(book, sign.dangers),
        chance=question.seen,
        saves=question.saves,
        tells=question.tells,
    )


def not_offered(book: Book, reasons: Mapping[str, str]) -> tuple[NotOffered, ...]:
    """Checks that cannot be done, and why, in the order of the book."""
    found = []
    for check, reason in reasons.items():
        about = _about(book, check)
        found.append(NotOffered(check, about.name, about.mark, _by_name(book, reason)))
    return tuple(found)


def _by_name(book: Book, reason: str) -> str:
    """A reason with the names of the cautions instead of the danger words that call them up."""
    said, colon, words = reason.partition(": ")
    dangers = set(words.split(", "))
    names = [each.name for each in book.cautions.values() if dangers & set(each.dangers)]
    return f"{said}: {'; '.join(names)}" if colon and names else reason


@dataclass(frozen=True)
class _About:
    """What a check is about, in the book's words."""

    kind: Literal["cause", "sign", "open"]
    key: str
    name: str
    mark: str
    do: str
    points_to: str = ""
    points_away: str = ""
    figure: str = ""


def _about(book: Book, check: str, standing: bool = False) -> _About:
    kind, _, key = check.partition(":")
    match kind:
        case "cause":
            return _of_cause(book, key, standing)
        case "sign":
            return _of_sign(book, key)
    part = book.parts[key]
    do = f"stop here, open up and look at {called(book.parts, key)}"
    return _About("open", key, part.name, part.mark or "", do)


def _of_cause(book: Book, key: str, standing: bool) -> _About:
    cause = book.causes[key]
    instead = cause.check.standing if standing else None
    points = instead or cause
    return _About(
        "cause",
        key,
        cause.name,
        cause.mark or "",
        instead.do if instead else cause.check.do,
        points.points_to or "",
        points.points_away or "",
        "" if instead else next(iter((*cause.figures, *cause.shown_by)), ""),
    )


def _of_sign(book: Book, key: str) -> _About:
    sign = book.signs[key]
    read = f"read {called(book.measures, sign.figure)}" if sign.figure else "look for it"
    return _About("sign", key, sign.name, sign.mark or "", read, figure=sign.figure or "")


def _joint(book: Book, key: str) -> JointSeen:
    joint = book.joints[key]
    return JointSeen(key, joint.name, joint.mark or "", joint.open)
