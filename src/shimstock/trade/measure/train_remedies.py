"""What to do about a train whose meshes were parted by holding one shaft after another."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from shimstock.trade.machine.book import Book, Link
from shimstock.trade.machine.state import PieceKey
from shimstock.trade.machine.words import Verdict
from shimstock.trade.measure.named import in_sentence
from shimstock.trade.measure.remedy import Remedy, What
from shimstock.trade.measure.train_found import LinkFound, TrainFound


def train_remedies(book: Book, trains: Mapping[str, TrainFound]) -> Iterator[Remedy]:
    """For each link that is worn or doubtful: put the pair right, or read again.

    trains: what the rocking of each train says, by its name in the book.
    """
    for key, found in trains.items():
        for link, each in zip(book.trains[key].links, found.links, strict=True):
            if each.verdict is Verdict.WORN_OUT:
                yield _put_right(book, link, each)
            elif each.verdict is Verdict.BORDERLINE:
                yield _read_again(book, link, each)


def _put_right(book: Book, link: Link, found: LinkFound) -> Remedy:
    figure = book.measures[link.figure]
    do = figure.if_outside or "renew"
    gears = [in_sentence(book.parts[part].name) for part in _parts(book, link)]
    pair = f"; replace and set together, as a pair: {'; '.join(gears)}"
    return Remedy(
        what=What.PUT_RIGHT,
        part=figure.of,
        pieces=_pieces(book, link),
        figures=(link.figure,),
        says=f"{figure.name}: {do}{pair if len(gears) > 1 else ''}",
        because=(found.says,),
        blocks=True,
        workings=(found.judged.working,) if found.judged else (),
    )


def _read_again(book: Book, link: Link, found: LinkFound) -> Remedy:
    return Remedy(
        what=What.MEASURE_AGAIN,
        part=book.measures[link.figure].of,
        pieces=_pieces(book, link),
        figures=(link.figure,),
        says=found.says,
        workings=(found.judged.working,) if found.judged else (),
    )


def _parts(book: Book, link: Link) -> tuple[str, ...]:
    """The two that meet in a link, or the part that its figure is read on."""
    both = tuple(part for part in (link.driver, link.driven) if part)
    return both or (book.measures[link.figure].of,)


def _pieces(book: Book, link: Link) -> tuple[PieceKey, ...]:
    return tuple(
        (part, piece) for part in _parts(book, link) for piece in book.parts[part].instances
    )
