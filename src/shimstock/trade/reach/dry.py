"""Whether a joint is seen dry: by a run, or by chalk on it while it stands full."""

from __future__ import annotations

from collections.abc import Iterator

from shimstock.trade.machine.state import JointNow, MachineNow
from shimstock.trade.machine.words import JointWord
from shimstock.trade.numbers.not_understood import HardlyMeant
from shimstock.trade.reach.whereabouts import engine_apart

WET = frozenset({JointWord.WEEPING, JointWord.LEAKING})
CLOSED_HERE = frozenset({JointWord.SEALED, JointWord.TORQUED})
"""Closed by somebody here, and not yet seen with the engine warm."""
NAMED = 2
"""How many open joints a question names."""


def is_dry(now: MachineNow, joint: str) -> bool:
    """True where a joint is leak-checked or chalk-dry."""
    state = now.joint(joint)
    return state.word is JointWord.LEAK_CHECKED or chalk_dry(state)


def chalk_dry(joint: JointNow) -> bool:
    """True where a joint stayed dry under chalk and was neither opened nor seen wet since.

    One that was closed here counts where it was seen since it was closed.
    """
    if joint.dry_chalked_on is None:
        return False
    if joint.word in CLOSED_HERE:
        return joint.sealed_on is not None and joint.dry_chalked_on >= joint.sealed_on
    return joint.word is JointWord.UNDISTURBED


def refuse_not_run(now: MachineNow, joint: str) -> None:
    """Ask about a joint found dry by a run where the engine cannot have run since it was closed.

    Raises HardlyMeant, which names what keeps the engine from running.
    """
    apart = list(_apart_since(now, joint))
    if not apart:
        return
    names = [f"{now.book.joints[key].name}{_since(now, key)}" for key in apart[:NAMED]]
    more = f" and {len(apart) - NAMED} more" if len(apart) > NAMED else ""
    wrong = f"cannot be told by a run: the engine stands open at {', '.join(names)}{more}"
    would = "look while it stands full or under pressure, and say that it was standing"
    raise HardlyMeant("dry", wrong, (would,))


def _apart_since(now: MachineNow, joint: str) -> Iterator[str]:
    """Open joints that have kept the engine from running since a joint was closed."""
    closed = now.joint(joint).sealed_on
    for key in engine_apart(now):
        since = now.joint(key).since
        if closed is None or since is None or since <= closed:
            yield key


def _since(now: MachineNow, joint: str) -> str:
    since = now.joint(joint).since
    return f" since {since.day} {since:%b}" if since else ""
