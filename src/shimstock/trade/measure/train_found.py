"""What the rocking of a train says, as plain values."""

from __future__ import annotations

from dataclasses import dataclass

from shimstock.trade.machine.words import Verdict
from shimstock.trade.measure.chain.played import ChainPlay
from shimstock.trade.measure.gasket_share import DOUBTFUL, GasketShare
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

    total: never worn out by itself. plays: the likely play of every link, by all that was read.
    expected: the play at the end once every worn link is in the middle of its new
    range, in the unit of the train's figure; None where nothing is worn or a link is not known.
    """

    total: Judged | None
    links: tuple[LinkFound, ...]
    plays: ChainPlay
    expected: Worked[float] | None = None

    @property
    def next_hold(self) -> str:
        """What to hold or read next, and its minutes; empty where nothing more would settle."""
        return self.plays.next.says if self.plays.next else ""

    @property
    def doubtful(self) -> bool:
        """Whether it asks for a look: too much in all, or something was held apart."""
        too_much = self.total is not None and self.total.verdict in DOUBTFUL
        return too_much or any(link.judged for link in self.links)

    @property
    def worn(self) -> tuple[LinkFound, ...]:
        """The links that are proven to be beyond their limit."""
        return tuple(link for link in self.links if link.verdict is Verdict.WORN_OUT)
