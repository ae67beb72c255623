"""What the rocking of a train says, as plain values."""

from __future__ import annotations

from dataclasses import dataclass

from shimstock.trade.machine.words import Verdict
from shimstock.trade.measure.gasket_share import GasketShare
from shimstock.trade.measure.judge import Judged
from shimstock.trade.numbers.working import Worked


@dataclass(frozen=True)
class LinkFound:
    """What the rocking says of one mesh or clearance of the train.

    verdict: `not measured` where the readings do not part it from its neighbours.
    judged: by its own figure, where it stands alone. most: the play it would have if all that was
    read with its neighbours were here. gasket: what is left after a wrong gasket is allowed for.
    """

    name: str
    figure: str
    verdict: Verdict
    says: str
    judged: Judged | None = None
    most: float | None = None
    gasket: tuple[GasketShare, ...] = ()
    look_first: tuple[str, ...] = ()


@dataclass(frozen=True)
class TrainFound:
    """What the rocking of a train says.

    total: never worn out by itself. next_hold: what to hold next, and why; empty when every link
    stands alone. expected: the play at the end once every worn link is in the middle of its new
    range, in the unit of the train's figure; None where nothing is worn or a link is not known.
    """

    total: Judged | None
    links: tuple[LinkFound, ...]
    next_hold: str
    expected: Worked[float] | None = None

    @property
    def worn(self) -> tuple[LinkFound, ...]:
        """The links that are proven to be beyond their limit."""
        return tuple(link for link in self.links if link.verdict is Verdict.WORN_OUT)
