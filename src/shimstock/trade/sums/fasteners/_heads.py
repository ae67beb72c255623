"""Faces of hexagon heads and the holes under them, for the friction under the head."""

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.quantity import Quantity
from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.fasteners._amounts import above_nothing
from shimstock.trade.sums.fasteners._threads import Thread

# ISO 4014 washer face and ISO 273 medium hole, in mm, by nominal diameter.
HEXAGON = {
    8: (11.63, 9), 10: (14.63, 11), 12: (16.63, 13.5), 14: (19.64, 15.5), 16: (22.49, 17.5),
    20: (28.19, 22), 24: (33.61, 26),
}  # fmt: skip


def head_lines(w: Working, thread: Thread, face: Quantity | None, hole: Quantity | None) -> float:
    """Mean diameter of the face under the head, by the table or as typed.

    Raises NotPossible where the table leaves the size out, or hole and face are swapped.
    """
    d_w, d_h = _sizes(thread, face, hole)
    if not d_h < d_w:
        rule = f"must be smaller than the face, {d_w:g} {thread.unit}"
        raise NotPossible(f"hole {d_h:g} {thread.unit}", rule, "look whether they are swapped")
    w.given("d_W", d_w, thread.unit, meaning="outside of the face under the head")
    w.given("d_h", d_h, thread.unit, meaning="hole under the head")
    return w.step("D_Km", "(d_W + d_h)/2", (d_w + d_h) / 2, thread.unit,
                  meaning="mean diameter of the face")  # fmt: skip


def _sizes(thread: Thread, face: Quantity | None, hole: Quantity | None) -> tuple[float, float]:
    table = HEXAGON.get(int(thread.d)) if thread.unit == "mm" and thread.d % 1 == 0 else None
    if table is None and (face is None or hole is None):
        would = "type face and hole, both measured under the head"
        raise NotPossible(f"the head of {thread.name}", "stands in no table here", would)
    d_w, d_h = table or (0, 0)
    return (
        d_w if face is None else above_nothing("face", face, thread.unit),
        d_h if hole is None else above_nothing("hole", hole, thread.unit),
    )
