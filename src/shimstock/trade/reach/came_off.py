"""What came off a joint and what goes back, held against what there can have been."""

from __future__ import annotations

from shimstock.trade.machine.joints import Joint
from shimstock.trade.numbers.not_understood import HardlyMeant
from shimstock.trade.numbers.quantity import Quantity, convert

TIMES_OFF = 4
"""An old gasket so many times as thick as any in the book, or as thin, is asked about.

Source: common practice, no source; the next sheets that are sold are two times off or less.
"""


def refuse_unlikely(
    joint: Joint, *, bolts: int | None = None, thickness: Quantity | None = None
) -> None:
    """Ask about what a joint can hardly have had; fewer bolts than the book's are a finding.

    bolts: fastenings that came off. thickness: of the old gasket; of what the book gives no count
    or thickness for, nothing is asked.
    Raises HardlyMeant, which names all that is asked about.
    """
    asked = [*_too_many(joint, bolts), *_too_thick(joint, thickness)]
    if not asked:
        return
    typed, wrong, would_do = (list(each) for each in zip(*asked, strict=True))
    more = "".join(f", and {what} {why}" for what, why in zip(typed[1:], wrong[1:], strict=True))
    ask = "another joint's, or a slip of the finger? If it is meant, say so"
    raise HardlyMeant(typed[0], f"{wrong[0]}{more}: {ask}", (" and ".join(would_do),))


def refuse_more_than_came_off(came_off: int | None, counted: int | None) -> None:
    """Ask about more fastenings counted than came off; fewer are a finding.

    came_off, counted: how many; nothing is asked where one is not known, or nothing came off.
    Raises HardlyMeant.
    """
    if not came_off or counted is None or counted <= came_off:
        return
    ask = "another joint's among them, or a slip of the finger? If it is meant, say so"
    wrong = f"counted where {came_off} came off: {ask}"
    raise HardlyMeant(str(counted), wrong, (str(came_off),))


def _too_many(joint: Joint, bolts: int | None) -> list[tuple[str, str, str]]:
    """What was typed, what is wrong, and what would do; nothing where the count may be."""
    if bolts is None or not joint.bolts or bolts <= joint.bolts:
        return []
    return [(str(bolts), f"came off where the book has {joint.bolts}", str(joint.bolts))]


def _too_thick(joint: Joint, thickness: Quantity | None) -> list[tuple[str, str, str]]:
    """The same for the old gasket, too thick or too thin for any that the book has there."""
    has = [use.thickness for use in joint.uses if use.thickness]
    if thickness is None or not has:
        return []
    sizes = [convert(each.value, each.unit, thickness.unit) for each in has]
    if min(sizes) / TIMES_OFF <= thickness.value <= max(sizes) * TIMES_OFF:
        return []
    book = " or ".join(dict.fromkeys(each.typed for each in has))
    return [(thickness.typed.strip(), f"of old gasket where the book has {book}", book)]
