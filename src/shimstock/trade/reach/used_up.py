"""What opening joints uses up, added together."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from shimstock.trade.machine.book import Book, Use


@dataclass(frozen=True)
class UsedUp:
    """So many of one gasket, seal, washer, shim pack, fluid or small thing."""

    kind: str
    name: str
    thickness: str
    count: int
    amounts: tuple[str, ...]
    one_use: bool
    joints: tuple[str, ...]

    def __str__(self) -> str:
        size = f", {self.thickness}" if self.thickness else ""
        amount = f": {' + '.join(self.amounts)}" if self.amounts else ""
        return f"{self.count} × {self.name}{size}{amount}"


def used_up(book: Book, joints: Iterable[str]) -> tuple[UsedUp, ...]:
    """Everything that opening these joints uses up, the same things counted together."""
    found: dict[tuple[str, str, str, bool], list[tuple[str, Use]]] = {}
    for key in joints:
        for use in book.joints[key].uses:
            thickness = use.thickness.typed if use.thickness else ""
            found.setdefault((use.kind, use.name, thickness, use.one_use), []).append((key, use))
    return tuple(_together(*same, lines) for same, lines in found.items())


def _together(
    kind: str, name: str, thickness: str, one_use: bool, lines: list[tuple[str, Use]]
) -> UsedUp:
    amounts = tuple(use.amount for _, use in lines if use.amount)
    joints = tuple(dict.fromkeys(key for key, _ in lines))
    count = sum(use.count for _, use in lines)
    return UsedUp(kind, name, thickness, count, amounts, one_use, joints)
