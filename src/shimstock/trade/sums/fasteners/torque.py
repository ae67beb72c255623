from typing import Annotated

from shimstock.trade.numbers.quantity import Quantity
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOLT, OLD_BOLT
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.fasteners._amounts import (
    Area,
    BookTorque,
    Force,
    Stress,
    above_nothing,
)
from shimstock.trade.sums.fasteners._areas import nut_factor_torque
from shimstock.trade.sums.fasteners._films import SCATTER, FilmName, bounds, nut_factor
from shimstock.trade.sums.fasteners._grades import GradeText
from shimstock.trade.sums.fasteners._lines import Pull, thread_lines
from shimstock.trade.sums.fasteners._threads import Thread, ThreadText


@a_sum(
    example="--thread 3/8-16 --grade 'SAE J429 5' --film anti-seize --share 0.75",
    cautions=(BOLT, SCATTER, OLD_BOLT),
)
def torque(
    *,
    thread: ThreadText,
    grade: GradeText | None = None,
    film: FilmName = "plain dry",
    share: Annotated[float, Of("", above=0, most=1, known=(0.3, 0.9))] = 0.75,
    factor: Annotated[float, Of("", above=0, most=1, known=(0.05, 0.4))] | None = None,
    area: Area | None = None,
    proof: Stress | None = None,
    preload: Force | None = None,
    book_torque: BookTorque | None = None,
) -> Worked[float]:
    """Torque that pulls a bolt to a share of its proof load, T = K·d·F, with K by the film.

    Inch threads come out in lbf.in, metric ones in N.mm. A value that is typed itself, as preload,
    K or proof stress, goes before what grade and film say.

    thread: the thread, such as 3/8-16 UNC or M10.
    grade: grade of SAE J429 or class of ISO 898-1.
    film: what lies on the thread and under the head.
    share: share of the proof load to pull to, 0.75 for what comes apart again, no unit.
    factor: nut factor K, where it is known better than by the film, no unit.
    area: stress area, where a table's own is to be used, with its unit.
    proof: proof stress, where no grade is known, with its unit.
    preload: pull that is wanted, with its unit.
    book_torque: the book's own torque for this joint, to be held beside it, with its unit.
    Raises NotPossible where neither grade, proof nor preload is given.
    Source: J. E. Shigley, Mechanical Engineering Design, 9th edition, section 8-8, T = K·d·F; K of
    its table 8-15, of R. L. Mott, Machine Elements in Mechanical Design, and of torque charts.

    >>> from shimstock.trade.sums.fasteners._grades import parse_grade
    >>> from shimstock.trade.sums.fasteners._threads import parse_thread
    >>> got = torque(thread=parse_thread("3/8-16"), grade=parse_grade("SAE J429 5"),
    ...     film="anti-seize")
    >>> round(got.value)
    222
    """
    w = Working()
    thread_lines(w, thread)
    pull = Pull(thread, grade, share, area, proof, preload).lines(w)
    k = nut_factor(w, film, factor)
    got = w.step("T", "K·d·F", nut_factor_torque(k, thread.d, pull), thread.units.torque,
                 meaning="torque", answer="torque")  # fmt: skip
    _bounds(w, thread, pull, bounds(film, factor))
    if book_torque is not None:
        _beside_the_book(w, book_torque, got, thread.units.torque)
    return Worked(got, w)


def _bounds(w: Working, thread: Thread, pull: float, ks: tuple[float, float] | None) -> None:
    """What the least and the most K in print would say."""
    if ks is None:
        return
    for which, k in zip(("least", "most"), ks, strict=True):
        w.given(f"K_{which}", k, "", meaning=f"{which} K in print for this film")
        w.step(f"T_{which}", f"K_{which}·d·F", nut_factor_torque(k, thread.d, pull),
               thread.units.torque, answer=f"by the {which} K in print")  # fmt: skip


def _beside_the_book(w: Working, book: Quantity, got: float, unit: str) -> None:
    """The book's torque, and what to make of a difference."""
    said = above_nothing("book torque", book, unit)
    w.given("T_b", said, unit, meaning=f"the book's torque, {book.typed.strip()}")
    w.step("x", "100·(T/T_b − 1)", 100 * (got / said - 1), "%", meaning="this sum above the book",
           answer="above the book")  # fmt: skip
    w.tell("the book says", f"{book.typed.strip()}: set that, in the state of thread it means")
