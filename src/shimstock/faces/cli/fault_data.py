"""A search for a fault as plain values for --json."""

from __future__ import annotations

from dataclasses import asdict
from typing import TYPE_CHECKING, Any

from shimstock.faces.cli.looking import cautions_data

if TYPE_CHECKING:
    from shimstock.workshop.fault_search.seen import OfferSeen, QuestionSeen
    from shimstock.workshop.fault_search.view import SearchSeen
    from shimstock.workshop.fault_search.why import WhySeen
    from shimstock.workshop.models import FaultSearch


def search_data(found: SearchSeen, why: WhySeen | None) -> dict[str, Any]:
    """Everything that a search comes to.

    why: what stands behind one cause, if that was asked for.
    """
    return {
        "search": _row(found.row) if found.row else None,
        "told": [asdict(each) for each in found.told],
        "cannot_be": found.cannot_be,
        "method": found.ranked.method if found.ranked else "",
        "error": found.ranked.error if found.ranked else 0.0,
        "ranking": [
            _keyed("cause", asdict(each)) | {"why": found.why(each.key).line}
            for each in found.ranking
        ],
        "besides": list(found.besides),
        "must_not": list(found.must_not),
        "questions": [_question(each) for each in found.questions],
        "offers": [_offer(each) for each in found.offers],
        "not_offered": [asdict(each) for each in found.not_offered],
        "unlisted": found.unlisted,
        "would_change": [asdict(each) for each in found.would_change],
        "why": _why(why) if why else None,
    }


def _row(row: FaultSearch) -> dict[str, Any]:
    return {
        "number": row.number,
        "about": row.about,
        "ended": row.ended,
        "people": row.people,
        "young": row.young,
        "missing": row.missing,
    }


def _question(question: QuestionSeen) -> dict[str, Any]:
    cautions = cautions_data(question.cautions)
    return _keyed("sign", dict(vars(question))) | {"cautions": cautions}


def _offer(offer: OfferSeen) -> dict[str, Any]:
    return vars(offer) | {
        "joints": [asdict(joint) for joint in offer.joints],
        "cautions": cautions_data(offer.cautions),
    }


def _keyed(name: str, values: dict[str, Any]) -> dict[str, Any]:
    """The same with the key under the name of what it is a key of."""
    return {name: values.pop("key")} | values


def _why(why: WhySeen) -> dict[str, Any]:
    data = _keyed("cause", asdict(why))
    lines = [each.line for each in why.speaks]
    speaks = [each | {"line": line} for each, line in zip(data["speaks"], lines, strict=True)]
    return data | {"speaks": speaks}
