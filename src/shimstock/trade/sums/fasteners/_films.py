"""The K of T = K·d·F for what lies on a thread, each with the book that prints it."""

from dataclasses import dataclass
from typing import Literal

from shimstock.trade.numbers.working import Working

SHIGLEY = "J. E. Shigley, Mechanical Engineering Design, 9th edition, table 8-15"
MOTT = "R. L. Mott, Machine Elements in Mechanical Design, chapter 19"
CHARTS = "published torque charts"

SCATTER = (
    "Torque tells the pull badly: ten like bolts at one 90 N·m wrench setting pulled 30.3 to "
    "40.5 kN (J. E. Shigley, table 8-14), and handbooks' K for one film differ by up to a factor "
    "of two. Where the pull matters, measure stretch or turn, and ask the maker's book."
)

FilmName = Literal[
    "plain dry", "black", "zinc", "lubricated", "cadmium", "anti-seize", "grip nuts"
]  # fmt: skip


@dataclass(frozen=True)
class Film:
    """What a book prints for a film, and what others print for it."""

    k: float
    source: str
    others: tuple[tuple[float, str], ...] = ()

    @property
    def disagreement(self) -> str:
        """What the other books print, in words; "" where none is known."""
        return ", ".join(f"{k:g} ({source})" for k, source in self.others)


FILMS: dict[str, Film] = {
    "plain dry": Film(0.20, MOTT, ((0.20, CHARTS),)),
    "black": Film(0.30, f"{SHIGLEY} (not plated, black)"),
    "zinc": Film(0.20, SHIGLEY, ((0.17, f"dry, {CHARTS}"),)),
    "lubricated": Film(0.18, SHIGLEY, ((0.15, MOTT), (0.15, CHARTS))),
    "cadmium": Film(0.16, SHIGLEY),
    "anti-seize": Film(0.12, SHIGLEY),
    "grip nuts": Film(0.09, SHIGLEY),
}


def nut_factor(
    w: Working, film: str, factor: float | None, *, symbol: str = "K", told: str = "K source"
) -> float:
    """K as typed or of the film's table row, with its source among the lines and the results."""
    if factor is not None:
        w.note(f"{symbol} is typed and goes before that of any film.")
        w.tell(told, f"{symbol} = {factor:g}, typed")
        return w.given(symbol, factor, "", meaning="nut factor, as typed")
    row = FILMS[film]
    if row.disagreement:
        w.note(f"Other books have {row.disagreement} for {film}.")
    w.tell(told, f"{symbol} = {row.k:g} for {film}, {row.source}")
    return w.given(symbol, row.k, "", meaning=f"nut factor for {film}, {row.source}")


def bounds(film: str, factor: float | None) -> tuple[float, float] | None:
    """Least and most K in print for a film; None where there is one only, or K is typed."""
    printed = [FILMS[film].k, *(k for k, _ in FILMS[film].others)]
    if factor is not None or len(set(printed)) == 1:
        return None
    return min(printed), max(printed)
