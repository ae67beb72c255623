"""All figures of a machine: verdicts worn first, what to do about them, what was not measured."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from django.core.paginator import Paginator
from django.http import HttpResponse
from django.urls import path

from shimstock.faces.web.act import page
from shimstock.faces.web.asked import Asked
from shimstock.trade.machine.words import Verdict
from shimstock.workshop import verdicts_told as told
from shimstock.workshop.looking import DEFERS, see
from shimstock.workshop.to_do import TO_DO, USE_AGAIN, by_kind, remedies_now
from shimstock.workshop.wording import figure_named

if TYPE_CHECKING:
    from shimstock.workshop.looking import Seen

MOST = 100
"""Figures on one page."""


@dataclass(frozen=True)
class Shown:
    """One figure of one piece, as the list shows it."""

    line: told.Line
    name: str
    word: str
    found: str
    finished: str
    limit: str
    stand_in: bool


@dataclass(frozen=True)
class NotMeasured:
    """A figure with the pieces on which nobody has read it."""

    key: str
    name: str
    pieces: tuple[str, ...]


def readings(asked: Asked, slug: str) -> HttpResponse:
    """Every figure, worn first; only those with a word or a text in them where one is given."""
    seen = see(slug)
    word, text = asked.GET.get("word", ""), asked.GET.get("q", "").strip()
    lines = told.lines_that_count(seen)
    missing = _missing(seen, lines, text)
    found = [] if word == Verdict.NOT_MEASURED else _found(seen, lines, word, text)
    to_do = by_kind(remedies_now(seen))
    use_again = to_do.pop(TO_DO[USE_AGAIN], [])
    part = Paginator(found, MOST).get_page(asked.GET.get("page"))
    narrowed = bool(word or text or part.number > 1)
    return page(
        asked,
        "readings.html",
        seen=seen,
        here="readings",
        shown=[_shown(seen, line) for line in part],
        part=part,
        to_do={} if narrowed else to_do,
        use_again=[] if narrowed else use_again,
        missing=missing if word in ("", Verdict.NOT_MEASURED) and part.number == 1 else {},
        words=_words(seen, lines),
        not_measured=sum(len(each) for each in missing.values()),
        word=word,
        text=text,
        defers=DEFERS,
    )


def _found(seen: Seen, lines: Sequence[told.Line], word: str, text: str) -> list[told.Line]:
    wanted = text.casefold()
    return [
        line
        for line in lines
        if (not word or told.word_told(seen.book, line.counts) == word)
        and wanted in _called(seen, line.figure, line.piece)
    ]


def _called(seen: Seen, figure: str, piece: str) -> str:
    """All that one may look for a figure by: its name, mark, piece and part."""
    part = seen.book.parts[seen.book.measures[figure].of].name
    return f"{figure_named(seen.book, figure, piece)} {part}".casefold()


def _shown(seen: Seen, line: told.Line) -> Shown:
    entry = seen.book.measures[line.figure]
    return Shown(
        line,
        f"{entry.name}, {line.piece}" if line.piece else entry.name,
        told.word_told(seen.book, line.counts),
        told.short(line.found) if line.found else "",
        told.short(line.finished) if line.finished else "",
        told.limit_told(seen.book, line.figure, line.piece),
        entry.stand_in,
    )


def _words(seen: Seen, lines: Sequence[told.Line]) -> dict[str, int]:
    """How many figures have each word, worn first."""
    return dict(Counter(told.word_told(seen.book, line.counts) for line in lines))


def _missing(seen: Seen, lines: Sequence[told.Line], text: str) -> dict[str, list[NotMeasured]]:
    """By part, the figures that were not read on every piece."""
    read = {(line.figure, line.piece) for line in lines}
    found: dict[str, list[NotMeasured]] = {}
    for key, entry in seen.book.measures.items():
        pieces = seen.book.parts[entry.of].instances
        left = tuple(piece for piece in pieces if (key, piece) not in read)
        if left and text.casefold() in _called(seen, key, " ".join(left)):
            name = seen.book.parts[entry.of].name
            found.setdefault(name, []).append(
                NotMeasured(key, figure_named(seen.book, key, ""), left)
            )
    return found


URLS = [
    path("m/<slug:slug>/readings/", readings, name="readings"),
]
