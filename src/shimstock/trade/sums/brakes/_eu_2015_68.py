"""Commission Delegated Regulation (EU) 2015/68, Annex II: what a tractor's service brake must do.

The distance is in m for a speed in km/h: 0.15·v + v²/divisor.
"""

from dataclasses import dataclass


@dataclass(frozen=True)
class Rule:
    """One class of tractors: the divisor of v², the mean deceleration in m/s², and its words."""

    divisor: int
    deceleration: float
    words: str


SLOW_LIMIT = 30  # km/h
SLOW = Rule(92, 3.55, "A tractor built for 30 km/h or less.")
FAST = Rule(130, 5, "A tractor built for more than 30 km/h.")
PEDAL_LIMIT = 600  # N
HAND_LIMIT = 400  # N
