"""What was read along a chain, as plain values."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Felt:
    """Movement at the end with everything before a link held still.

    link: the first link that still moves; 0 for the whole. value and u, its standard uncertainty,
    in the unit of the end.
    """

    link: int
    value: float
    u: float


@dataclass(frozen=True)
class Read:
    """The play of one link, read on the link itself; value and u in the chain's unit."""

    link: int
    value: float
    u: float


Told = Felt | Read
"""One reading along a chain."""
