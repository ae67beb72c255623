from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOLT, OLD_BOLT
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.fasteners._amounts import Torque, above_nothing
from shimstock.trade.sums.fasteners._films import SCATTER, FilmName, bounds, nut_factor

NutFactor = Annotated[float, Of("", above=0, most=1, known=(0.05, 0.4))]


@a_sum(
    example="--torque '24 lbf.ft' --book 'plain dry' --now anti-seize",
    cautions=(BOLT, SCATTER, OLD_BOLT),
)
def torque_for_film(
    *,
    torque: Torque,
    now: FilmName,
    book: FilmName = "plain dry",
    book_factor: NutFactor | None = None,
    now_factor: NutFactor | None = None,
) -> Worked[float]:
    """Torque for an oiled, greased or plated thread where the book's is for another film.

    The pull stays the same: T_2 = T_1·K_2/K_1. The result has the unit of the torque as typed.

    torque: the book's torque, with its unit.
    now: what lies on the thread now.
    book: what the book's torque is for.
    book_factor: K of the book's state, where it is known, no unit.
    now_factor: K of what lies on the thread now, where it is known, no unit.
    Raises NotPossible where the torque is not above nothing.
    Source: J. E. Shigley, Mechanical Engineering Design, 9th edition, section 8-8, T = K·d·F at the
    same d and F.

    >>> from shimstock.trade.sums.fasteners._amounts import parse_torque
    >>> round(torque_for_film(torque=parse_torque("24 lbf.ft"), now="anti-seize").value, 1)
    14.4
    """
    w, unit = Working(), torque.unit
    t_1 = w.given("T_1", above_nothing("torque", torque, unit), unit, meaning="the book's torque")
    k_1 = nut_factor(w, book, book_factor, symbol="K_1", told="K of the book")
    k_2 = nut_factor(w, now, now_factor, symbol="K_2", told="K now")
    got = w.step("T_2", "T_1·K_2/K_1", t_1 * k_2 / k_1, unit, answer="torque")
    more = w.step("x", "(K_1/K_2 − 1)·100", (k_1 / k_2 - 1) * 100, "%",
                  meaning="more pull at the book's torque", answer="pull gained")  # fmt: skip
    ks = bounds(now, now_factor)
    if ks is not None:
        least = w.given("K_least", ks[0], "", meaning=f"least K in print for {now}")
        w.step("T_least", "T_1·K_least/K_1", t_1 * least / k_1, unit,
               answer="by the least K in print")  # fmt: skip
    if more > 0:
        w.caution("The book's own torque on this film pulls harder than the book means.")
    return Worked(got, w)
