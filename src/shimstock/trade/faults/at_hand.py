"""Which checks can be done by those who are there, with what is there."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from shimstock.trade.faults.network import Check


@dataclass(frozen=True)
class AtHand:
    """Who does the checks, and with what.

    people: how many. young: whether a helper under age does them. missing: tools that are not
    there, as the book's checks name them.
    """

    people: int = 1
    young: bool = False
    missing: frozenset[str] = frozenset()


def offered(
    checks: Mapping[str, Check], at_hand: AtHand
) -> tuple[dict[str, Check], dict[str, str]]:
    """The checks that can be offered, and for each of the others why it is not.

    Dangers of a check include those of the joints to be opened for it.
    """
    can, cannot = {}, {}
    for key, check in checks.items():
        if reason := _not_now(check, at_hand):
            cannot[key] = reason
        else:
            can[key] = check
    return can, cannot


def _not_now(check: Check, at_hand: AtHand) -> str:
    if at_hand.young and check.dangers:
        return f"not for a helper under age: {', '.join(check.dangers)}"
    if check.hands > at_hand.people:
        return f"needs {check.hands} people"
    missing = [tool for tool in check.needs if tool in at_hand.missing]
    return f"needs what is not at hand: {', '.join(missing)}" if missing else ""
