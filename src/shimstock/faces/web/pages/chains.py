"""Trains of play, and shim packs."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from django.http import HttpResponse
from django.urls import path, reverse
from django.utils.http import urlencode

from shimstock.faces.web.act import page
from shimstock.faces.web.asked import Asked
from shimstock.faces.web.places import address_of
from shimstock.faces.web.play_bar import Bar, bar
from shimstock.faces.web.wrong import NOT_DONE, Wrong, explained
from shimstock.trade.machine.words import Stage, Verdict
from shimstock.trade.measure.chain.offers import can_be_read
from shimstock.trade.measure.tip import hold_figures, piece_of
from shimstock.trade.measure.words import between
from shimstock.trade.numbers.quantity import show
from shimstock.workshop.find import find_figure, find_piece
from shimstock.workshop.looking import DEFERS, Seen, see
from shimstock.workshop.places import reading_place
from shimstock.workshop.shims import Laid, lay_together, set_by_shims, shimmed, typed_pack
from shimstock.workshop.trains import cautions_next, find_train, parted, read_along
from shimstock.workshop.wording import figure_named

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book
    from shimstock.trade.machine.trains import Link, Train
    from shimstock.trade.measure.chain.played import Next, Played
    from shimstock.trade.measure.reading import Reading
    from shimstock.trade.measure.train_found import LinkFound, TrainFound

FIELDS = {"--offered with": "type in “Shims to be had”", "type it as --play SIZE": "type it here"}
"""What the form says in place of the terminal's options."""


@dataclass(frozen=True)
class Linked:
    """A link of a train as the page draws it: what the book says, what was read and found.

    play: what is likely, with its bar; None where nothing can be said. read: what was read at the
    end with its shaft held; "" for nothing. reading, measure: addresses of the pages for that
    reading, and for its play on the link itself; "" where it cannot be read so.
    """

    link: Link
    found: LinkFound
    play: Played | None
    read: str
    reading: str
    measure: str

    @property
    def bar(self) -> Bar | None:
        """The likely play drawn."""
        return bar(self.play) if self.play else None

    @property
    def says(self) -> str:
        """What was found, without its name."""
        return self.found.says.removeprefix(f"{self.found.name}: ")

    @property
    def judged(self) -> bool:
        """Whether it has a verdict of its own; a play without a limit in the book has none."""
        alone = self.found.judged
        return alone is None or alone.verdict is not None

    @property
    def drawn(self) -> str:
        """How its frame is drawn: worn, unknown or known."""
        if not self.judged:
            return "known"
        words = {Verdict.WORN_OUT: "worn", Verdict.NOT_MEASURED: "unknown"}
        return words.get(self.found.verdict, "known")


@dataclass(frozen=True)
class Way:
    """A chain or a shim pack by its name and the address of its page."""

    name: str
    address: str


@dataclass(frozen=True)
class Ways:
    """The chains of play of a machine, and the figures that a shim pack sets."""

    chains: tuple[Way, ...]
    shims: tuple[Way, ...]


def chains_of(seen: Seen) -> Ways:
    """What `web/chains_of.html` lists for a machine."""
    slug, book = seen.row.slug, seen.book
    chains = (
        Way(train.name, reverse("chain", args=[slug, key])) for key, train in book.trains.items()
    )
    shims = (
        Way(figure_named(book, figure, piece), _shims_address(slug, figure, piece))
        for figure, piece in shimmed(book)
    )
    return Ways(tuple(chains), tuple(shims))


def chain(asked: Asked, slug: str, train: str) -> HttpResponse:
    """A train link by link, as found or as finished."""
    seen = see(slug)
    key = find_train(seen.book, train)
    stage = Stage.FINISHED if asked.GET.get("stage") == Stage.FINISHED else Stage.FOUND
    tips, own = read_along(seen, key, stage is Stage.FINISHED)
    found, entry = parted(seen, key, tips, own), seen.book.trains[key]
    links = _links(seen, key, stage, tips, found)
    expected, following = found.expected, found.plays.next
    unit = seen.book.measures[entry.figure].measured_in
    return page(
        asked,
        "chain.html",
        seen=seen,
        here="readings",
        train=entry,
        found=found,
        finished=stage is Stage.FINISHED,
        links=links,
        looks=dict.fromkeys(look for each in found.links for look in each.look_first),
        following=following,
        cautions=cautions_next(seen, found),
        read_next=_read_next(links, following),
        unknown=any(each.drawn == "unknown" for each in links),
        expected=show(expected.value, unit) if expected else "",
        defers=DEFERS,
    )


def _read_next(links: Sequence[Linked], following: Next | None) -> str:
    """The page where the next reading is typed; "" for none."""
    if following is None:
        return ""
    link = links[following.link]
    return link.reading if following.at_end else link.measure


def _links(
    seen: Seen, key: str, stage: Stage, tips: Sequence[Reading | None], found: TrainFound
) -> list[Linked]:
    """Each link of a train beside what was read and found of it."""
    train, slug = seen.book.trains[key], seen.row.slug
    plays = found.plays.links or (None,) * len(train.links)
    every = zip(train.links, found.links, plays, tips, hold_figures(train), strict=True)
    return [
        Linked(
            *(link, one, play, _read(tip)),
            reading=_reading(seen.book, slug, train, figure, stage),
            measure=_reading(seen.book, slug, train, link.figure, stage)
            if can_be_read(train, link)
            else "",
        )
        for link, one, play, tip, figure in every
    ]


def _read(tip: Reading | None) -> str:
    return ", ".join(tip.typed) if tip else ""


def _reading(book: Book, slug: str, train: Train, figure: str | None, stage: Stage) -> str:
    """The page where a figure of a train is read; "" where the book names none."""
    if figure is None:
        return ""
    return address_of(reading_place(figure, piece_of(book, train, figure), stage), slug)


def shims(asked: Asked, slug: str, figure: str) -> HttpResponse:
    """Which of the shims to be had to lay together, with its working."""
    seen = see(slug)
    key = find_figure(seen.book, figure)
    piece = _piece(seen.book, key, asked.GET.get("piece", ""))
    joint, wanted = set_by_shims(seen.book, key, piece)
    laid, wrong = _laid(seen, key, piece, asked)
    return page(
        asked,
        "shims.html",
        seen=seen,
        here="readings",
        status=NOT_DONE if wrong else 200,
        wrong=wrong,
        key=key,
        figure=seen.book.measures[key],
        piece=piece,
        pieces=[each for figure, each in shimmed(seen.book) if figure == key and each],
        fitted=asked.GET.get("fitted", seen.now.joint(joint).thickness_found or ""),
        typed=asked.GET,
        wanted=between(wanted),
        laid=laid,
        sizes=_sizes(laid) if laid else {},
        defers=DEFERS,
    )


def _piece(book: Book, figure: str, typed: str) -> str:
    """Which piece is meant; where nothing is typed, the first that shims set."""
    own = [piece for each, piece in shimmed(book) if each == figure]
    first = own or list(book.parts[book.measures[figure].of].instances)
    return find_piece(book, book.measures[figure].of, typed or first[0])


def _sizes(laid: Laid) -> dict[str, str]:
    """The sizes of a pack with their unit."""
    sizes = {
        "thickness": laid.pack.thickness,
        "fitted": laid.asking.fitted,
        "expect": laid.expect,
        "play": laid.asking.play,
    }
    return {name: show(size, laid.pack.unit) for name, size in sizes.items()}


def _laid(seen: Seen, figure: str, piece: str, asked: Asked) -> tuple[Laid | None, Wrong | None]:
    """The pack, or why there is none; neither while nothing was typed."""
    typed = {name: asked.GET.get(name, "") for name in ("fitted", "offered", "play")}
    if not (typed["fitted"] or typed["offered"]):
        return None, None
    try:
        wanted = typed_pack(seen, figure, piece, **typed)
        return lay_together(wanted, behind="behind" in asked.GET), None
    except Exception as error:
        wrong = explained(error)
        if wrong is None:
            raise
        return None, replace(wrong, reasons=tuple(map(_in_the_forms_words, wrong.reasons)))


def _in_the_forms_words(reason: str) -> str:
    for option, words in FIELDS.items():
        reason = reason.replace(option, words)
    return reason


def _shims_address(slug: str, figure: str, piece: str) -> str:
    address = reverse("shims", args=[slug, figure])
    return f"{address}?{urlencode({'piece': piece})}" if piece else address


URLS = [
    path("m/<slug:slug>/chain/<str:train>/", chain, name="chain"),
    path("m/<slug:slug>/shims/<str:figure>/", shims, name="shims"),
]
