"""From a place that an act is about to the page that shows it."""

from __future__ import annotations

from django.urls import reverse
from django.utils.http import urlencode


def address_of(place: str, slug: str) -> str:
    """The address of the page that shows a place; "" for a place without a page of its own.

    place: as the diary names it, such as "joint:timing-cover" or "reading:bore:left:as found".
    slug: the machine's short name.
    """
    kind, _, which = place.partition(":")
    match kind:
        case "joint":
            return reverse("joint", args=[slug, which])
        case "piece":
            part, _, piece = which.partition(":")
            return _asking(reverse("part", args=[slug, part]), piece=piece)
        case "reading" | "verdict":
            figure, _, rest = which.partition(":")
            piece, _, stage = rest.rpartition(":")
            return _asking(reverse("reading", args=[slug, figure]), piece=piece, stage=stage)
        case "chain":
            return reverse("chain", args=[slug, which])
        case "gate":
            return reverse("gate", args=[slug, which])
        case "bag":
            return reverse("bags", args=[slug])
        case "photo":
            return _asking(reverse("photos", args=[slug]), about=which.rpartition(":")[0])
        case "answer":
            return reverse("gates", args=[slug])
        case "note":
            whole = which == "machine"
            return reverse("machine", args=[slug]) if whole else address_of(which, slug)
        case "machine":
            return reverse("book", args=[slug])
        case "search":
            return reverse("fault", args=[slug, int(which.partition(":")[0])])
        case "found":
            return reverse("faults", args=[slug])
    return ""


def _asking(address: str, **asked: str) -> str:
    said = {name: value for name, value in asked.items() if value}
    return f"{address}?{urlencode(said)}" if said else address
