"""How a joint is fastened, in a line: how many of what, and how tight."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from shimstock.trade.machine.joints import Fasteners, Joint


def fastened_by(joint: Joint) -> str:
    """All fastenings of a joint: 5 bolts 7/16-14 UNC, 38 lbf.ft (stand-in).

    A torque without a page of the maker's book counts as a stand-in.
    """
    return "; ".join(_fastening(each) for each in joint.fasteners)


def tightened(joint: Joint) -> list[str]:
    """What to tighten a joint by, as a line; nothing where the book gives no torque."""
    if not joint.has_torque:
        return []
    return [f"Fastened by {fastened_by(joint)}; the maker's figure goes before it."]


def _fastening(each: Fasteners) -> str:
    several = f"{each.count} {each.what}s" if each.count > 1 else f"1 {each.what}"
    sized = f"{several} {each.thread}" if each.thread else several
    whose = "stand-in" if each.page is None else f"page {each.page}"
    return f"{sized}, {each.torque.typed} ({whose})" if each.torque else sized
