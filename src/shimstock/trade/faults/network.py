"""What can be wrong, how it shows and how it is checked, as plain values without a machine."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

NOT_ALL_TRUE = "what was told cannot all be true: nothing in the book explains it"


@dataclass(frozen=True)
class Spread:
    """How a reading falls when its sign is there, or is not: mean and standard deviation."""

    mean: float
    deviation: float


@dataclass(frozen=True)
class Finding:
    """Something that can show: a sign, the result of a test, what an inspection brings to light.

    leak: chance that it shows for a reason that is not listed. weights: for each cause, the
    chance that this cause alone makes it show. absent, present: how a reading of it falls, where
    it is read as a number.
    """

    leak: float
    weights: Mapping[str, float]
    absent: Spread | None = None
    present: Spread | None = None


@dataclass(frozen=True)
class Check:
    """Something that can be done to find out more.

    gives: findings whose result it tells. confirms: causes that it settles. joints: all that must
    be open for it, whatever is open already. dangers, needs, hands, as the book has them. engine:
    whether the engine must turn or run for it.
    """

    minutes: float
    gives: tuple[str, ...] = ()
    confirms: tuple[str, ...] = ()
    joints: frozenset[str] = frozenset()
    hands: int = 1
    needs: tuple[str, ...] = ()
    dangers: tuple[str, ...] = ()
    engine: bool = False


@dataclass(frozen=True)
class Network:
    """Causes by their prior chance, findings, and groups of which at most one cause is there.

    The priors hold before it is known that causes of one group exclude each other.
    """

    causes: Mapping[str, float]
    findings: Mapping[str, Finding]
    exclusive: tuple[tuple[str, ...], ...] = ()


@dataclass(frozen=True)
class Told:
    """What is known of one machine.

    findings: True seen, False not seen, a number where it was read; what nobody looked at is left
    out. causes: True where one is confirmed, False where it is cleared.
    """

    findings: Mapping[str, bool | float] = field(default_factory=dict)
    causes: Mapping[str, bool] = field(default_factory=dict)


class CannotBe(ValueError):
    """What was told cannot all be true, or names what the network does not know."""
