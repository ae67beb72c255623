"""Finding a viscosity in a table of grades, and showing the limits that it lies between."""

from collections.abc import Sequence
from math import inf
from typing import Protocol

from shimstock.trade.numbers.working import Working


class Graded(Protocol):
    """A grade with the viscosities it runs from and up to."""

    @property
    def name(self) -> str: ...
    @property
    def least(self) -> float: ...
    @property
    def below(self) -> float: ...


def grade_of(w: Working, viscosity: float, table: Sequence[Graded], edition: str) -> str:
    """The grade or grades that a viscosity at 100 °C falls into; "none" outside the table."""
    fits = [each for each in table if each.least <= viscosity < each.below]
    w.note(f"{edition}: a grade runs from its least viscosity up to, not with, its upper limit.")
    if not fits:
        lowest, highest = table[0], table[-1]
        over = viscosity >= highest.below
        end = f"above grade {highest.name}" if over else f"below grade {lowest.name}"
        w.tell("grade", f"none: {end}")
        return "none"
    for each in fits:
        mark = "" if len(fits) == 1 else f"_{each.name}"
        of = "" if len(fits) == 1 else f" of {each.name}"
        w.step(f"ν_l{mark}", f"{each.least:g}", each.least, "mm2/s", answer=f"least{of}")
        if each.below < inf:
            w.step(f"ν_u{mark}", f"{each.below:g}", each.below, "mm2/s", answer=f"below{of}")
    name = " or ".join(each.name for each in fits)
    w.tell("grade", name)
    return name
