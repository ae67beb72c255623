"""Minutes to open and close a row of joints, with the sum shown."""

from __future__ import annotations

from collections.abc import Sequence

from shimstock.trade.machine.book import Book
from shimstock.trade.numbers.working import Worked, Working


def minutes_for(book: Book, joints: Sequence[str]) -> Worked[tuple[float, float]]:
    """Minutes to open all the joints, and to close them again.

    book: gives each joint's times. joints: their keys, in the order of opening.
    """
    w = Working(source=f"times of the joints in the book {book.book}")
    if not joints:
        w.note("nothing to open: it is in reach already")
    for number, key in enumerate(joints, start=1):
        joint = book.joints[key]
        w.given(f"o_{number}", joint.open, "min", meaning=f"open {joint.name}")
        w.given(f"c_{number}", joint.close, "min", meaning=f"close {joint.name}")
    to_open = sum(book.joints[key].open for key in joints)
    to_close = sum(book.joints[key].close for key in joints)
    w.step("T_o", _sum_of("o", joints), to_open, "min", meaning="to open")
    w.step("T_c", _sum_of("c", joints), to_close, "min", meaning="to close")
    w.step("T", "T_o + T_c", to_open + to_close, "min", meaning="there and back")
    return Worked((to_open, to_close), w)


def _sum_of(letter: str, joints: Sequence[str]) -> str:
    return " + ".join(f"{letter}_{number}" for number, _ in enumerate(joints, start=1)) or "0"
