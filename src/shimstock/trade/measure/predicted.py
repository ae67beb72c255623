"""The play to expect at the end of a train once its worn links are put right."""

from __future__ import annotations

from collections.abc import Mapping

from shimstock.trade.machine.book import Book
from shimstock.trade.measure.plausible import middle_of_new
from shimstock.trade.measure.play import keep_gain
from shimstock.trade.measure.train_found import TrainFound
from shimstock.trade.numbers.quantity import convert
from shimstock.trade.numbers.working import Worked, Working


def after_repair(
    book: Book, train_key: str, found: TrainFound, repaired: Mapping[str, float]
) -> Worked[float]:
    """The play to expect at the end once some links are put right.

    repaired: by the link's figure and in its unit, the lash after the work; the other links keep
    what was found. Raises ValueError where a link is neither put right nor found by itself.
    Source: geometry; the play of every link carried to the end and added.
    """
    train = book.trains[train_key]
    unit = book.measures[train.figure].measured_in
    w = Working(source="geometry: the play of every link carried to the end and added")
    terms, total = [], 0.0
    for at, (link, each) in enumerate(zip(train.links, found.links, strict=True)):
        lash, state = repaired.get(link.figure), "after the work"
        if lash is None:
            if each.judged is None:
                raise ValueError(
                    f"{link.name} is neither put right nor known by itself: rock it first"
                )
            lash, state = each.judged.value, "as found"
        lash = convert(lash, book.measures[link.figure].measured_in, unit)
        w.given(f"j_{at + 1}", lash, unit, meaning=f"{link.name}, {state}")
        total += keep_gain(w, train, at, unit) * lash
        terms.append(f"k_{at + 1}·j_{at + 1}")
    return Worked(w.step("S", " + ".join(terms), total, unit, meaning="play at the end"), w)


def when_put_right(book: Book, train_key: str, found: TrainFound) -> Worked[float] | None:
    """The play to expect at the end with every worn link in the middle of its new range.

    None where no link is worn, where the book gives a worn one no new range, or where another link
    is not known by itself.
    """
    repaired = {link.figure: middle_of_new(book.measures[link.figure]) for link in found.worn}
    known = {figure: lash for figure, lash in repaired.items() if lash is not None}
    others = (link for link in found.links if link.figure not in repaired)
    if not known or len(known) < len(repaired) or any(link.judged is None for link in others):
        return None
    return after_repair(book, train_key, found, known)
