"""A reading as it is typed: box by box what was understood, with what it was read."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from shimstock.trade.measure.take import GAPS, SlippedDigit
from shimstock.trade.measure.words import decimals_worth
from shimstock.trade.numbers import instruments
from shimstock.trade.numbers.conversion import convert, kind
from shimstock.trade.numbers.instruments import Instrument
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.quantity import SIMPLE, parse, show
from shimstock.trade.numbers.slips import Slip
from shimstock.trade.numbers.unit_names import OTHER_SYSTEM
from shimstock.workshop.judging import understood

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book, Figure
    from shimstock.workshop.models import ReadingRow

NOT_READ = "not read"


@dataclass(frozen=True)
class Typed:
    """What was typed at one place, and what was understood by it.

    says: the value in words, with its other unit; "" where nothing was understood.
    wrong: what is wrong. would_do: what would be understood.
    likely: values that may have been meant, where it looks like a slip of the finger.
    """

    text: str
    says: str = ""
    wrong: str = ""
    would_do: tuple[str, ...] = ()
    likely: tuple[Slip, ...] = ()


def instrument_typed(book: Book, figure: str, with_: str, good_to: str) -> Instrument | str:
    """What a figure was read with: the instrument's name, or one that is as true as was typed.

    with_: its name; "" for the book's. good_to: how true it is, a ± figure with its unit.
    Raises NotUnderstood.
    """
    if not good_to.strip():
        return with_
    unit = book.measures[figure].measured_in
    true_to = parse(good_to.lstrip("± "), unit=unit, what="how true the instrument is")
    return instruments.good_to(true_to.value, unit, name=with_)


def instruments_for(figure: Figure) -> tuple[str, ...]:
    """Names of the instruments that can read a figure."""
    wanted = kind(figure.measured_in)
    known = (each for _, versions in instruments.KNOWN for each in versions)
    return tuple(dict.fromkeys(each.name for each in known if kind(each.unit) == wanted))


def value_read(value: float | None, row: ReadingRow) -> str:
    """A value that was read, with no more decimals than the gauge tells."""
    if value is None:
        return NOT_READ
    step = row.instrument["resolution"] if row.instrument else 0
    return show(value, row.unit, decimals_worth(step, row.unit))


def typed_understood(
    book: Book,
    figure: str,
    texts: Sequence[str],
    others: Iterable[ReadingRow],
    *,
    meant: bool = False,
) -> tuple[Typed, ...]:
    """What is understood of each text, one for each place; nothing is stored.

    others: readings of the same figure, which say what to expect.
    meant: numbers that look like a slip are meant.
    """
    entry = book.measures[figure]
    found = [_one(entry, text) for text in texts]
    for at, slip in _slips(book, figure, found, others, meant):
        found[at] = Typed(texts[at], wrong=slip.wrong, would_do=slip.would_do, likely=slip.likely)
    return tuple(found)


def _one(figure: Figure, text: str) -> Typed:
    if not text.strip():
        return Typed(text)
    if text.strip() in GAPS:
        return Typed(text, says=NOT_READ)
    try:
        read = parse(text, unit=figure.measured_in, what=figure.name)
    except NotUnderstood as error:
        return Typed(text, wrong=error.wrong, would_do=error.would_do)
    return Typed(text, says=_in_words(text, read.value, read.unit))


def _in_words(text: str, value: float, unit: str) -> str:
    """The value, and what it is in the other unit where it was not typed as a plain number."""
    here = f"{value:.6g} {unit}".replace("-", "−") if unit != "count" else f"{value:.6g}"
    other = OTHER_SYSTEM.get(unit, "")
    if not other or SIMPLE.fullmatch(text.strip()):
        return here
    return f"{here} = {convert(value, unit, other):.5g} {other}".replace("-", "−")


def _slips(
    book: Book, figure: str, found: Sequence[Typed], others: Iterable[ReadingRow], meant: bool
) -> list[tuple[int, SlippedDigit]]:
    """Places whose number looks like a slip; each is asked for with the others beside it."""
    texts = [each.text if each.says else "-" for each in found]
    near, slipped = list(others), []
    while any(text.strip() not in GAPS for text in texts):
        try:
            understood(book, figure, texts, instrument="", meant=meant, each=1, others=near)
        except SlippedDigit as slip:
            at = texts.index(slip.typed)
            slipped.append((at, slip))
            texts[at] = "-"
            continue
        except NotUnderstood:
            break
        break
    return slipped
