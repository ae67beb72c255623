"""Makes and sizes as they are written on pieces: which of them are the same in other words."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator

from shimstock.trade.machine.state import PieceNow
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.quantity import parse

FINE = 5
"""Decimals of an inch to which two sizes are held alike: 0.508 mm is 20 thou."""


def different(written: Iterable[str], *, sizes: bool = False) -> list[str]:
    """The texts that say different things, each as first written; empty ones say nothing.

    sizes: they are lengths, a bare number in inches, so that 20 thou and 0.508 mm are one.

    >>> different(["Mark K", "mark k ", "", "R"]), different(["20 thou", "+0.020"], sizes=True)
    (['Mark K', 'R'], ['20 thou'])
    """
    found: dict[str, str] = {}
    for text in written:
        if plain := " ".join(text.split()):
            found.setdefault(_size(plain) if sizes else plain.casefold(), plain)
    return list(found.values())


def unlike(pieces: Iterable[PieceNow], same: Collection[str]) -> Iterator[tuple[str, list[str]]]:
    """What of a set's pieces must be one and is not, with the several texts in order.

    pieces: their states. same: what must be one, maker or size. Nothing where all are proved a
    pair.

    >>> list(unlike([PieceNow(maker="R"), PieceNow(maker="Mark K")], ["maker"]))
    [('maker', ['Mark K', 'R'])]
    """
    states = list(pieces)
    if all(state.proved_pair for state in states):
        return
    for what in ("maker", "size"):
        said = different((getattr(state, what) for state in states), sizes=what == "size")
        if what in same and len(said) > 1:
            yield what, sorted(said, key=str.casefold)


def _size(plain: str) -> str:
    try:
        return f"{parse(plain, unit='in').value:.{FINE}f}"
    except NotUnderstood:
        return plain.casefold()
