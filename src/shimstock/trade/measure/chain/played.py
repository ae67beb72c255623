"""The likely play of a train's links and what to read next, as plain values."""

from __future__ import annotations

from dataclasses import dataclass

from shimstock.trade.measure.chain.link_play import LinkPlay
from shimstock.trade.measure.chain.ways import WayTo
from shimstock.trade.measure.words import decimals_worth
from shimstock.trade.numbers.percent import percent
from shimstock.trade.numbers.quantity import decimals_for, show
from shimstock.trade.numbers.working import Working

CHANCES = (
    (0.03, "within its {}"),
    (0.25, "probably within its {}"),
    (0.75, "may be over its {}"),
    (0.97, "probably over its {}"),
    (1.01, "over its {}"),
)
"""Up to which chance to be over which words are said; {} is its limit or its even share."""

FINER = 8.0
"""An interval is told in steps of no more than about this share of its width."""


@dataclass(frozen=True)
class Played:
    """The likely play of one link of a train, in the unit of its figure.

    stands: as it is now; right: with the right gasket, the same where the gasket is right.
    limit, least: the most and the least allowed. shared: the book gives this link no limit, so that
    it is an even share of what the whole may have. parted: readings tell it from its neighbours;
    else what is said of it rests on what such links usually have.
    """

    name: str
    figure: str
    unit: str
    stands: LinkPlay
    right: LinkPlay
    limit: float
    least: float
    shared: bool
    parted: bool
    working: Working

    @property
    def ends(self) -> tuple[str, str, str]:
        """The likely play and the ends of its interval, with the digits that they are worth."""
        return self._shown(self.stands)

    def _shown(self, play: LinkPlay) -> tuple[str, str, str]:
        decimals = decimals_worth((play.high - play.low) / FINER, self.unit)
        low, likely, high = (
            show(each, self.unit, decimals) for each in (play.low, play.likely, play.high)
        )
        return low, likely, high

    @property
    def says(self) -> str:
        """The play and its interval in words."""
        low, likely, high = self.ends
        return f"likely {likely}; in 9 of 10 cases {low} to {high}"

    @property
    def most(self) -> str:
        """The limit with its unit."""
        usual = decimals_for(self.unit)
        worth = decimals_worth(self.limit / 100, self.unit) if self.shared else usual
        return show(self.limit, self.unit, min(usual, worth))

    @property
    def chance(self) -> str:
        """How likely it is over its limit, in words that a total alone never makes certain."""
        words = next(said for end, said in CHANCES if self.stands.over < end)
        if not self.parted and self.stands.over >= CHANCES[1][0]:
            words = CHANCES[2][1]
        if self.tight:
            words = "may be tighter than it should be, not over its {}"
        said = words.format("even share" if self.shared else "limit")
        chances = f"chance to be over: {percent(self.stands.over)}"
        if self.tight:
            least = show(self.least, self.unit)
            chances = f"{chances}, to be under {least}: {percent(self.stands.under)}"
        told = "" if self.parted else "; not parted from the others yet"
        return f"{said} of {self.most}; {chances}{told}"

    @property
    def tight(self) -> bool:
        """Whether it may well be under the least that is allowed."""
        return self.stands.under >= CHANCES[1][0]

    @property
    def gasket(self) -> str:
        """What it would be with the right gasket; "" where the gasket is right."""
        if self.right == self.stands:
            return ""
        low, likely, high = self._shown(self.right)
        return (
            f"with the right gasket likely {likely}; in 9 of 10 cases {low} to {high}; "
            f"chance to be over: {percent(self.right.over)}"
        )

    @property
    def state(self) -> str:
        """In a word, for its shape and colour: within, over or unsure."""
        if self.stands.over < CHANCES[0][0] and not self.tight:
            return "within"
        return "over" if self.parted and self.stands.over >= CHANCES[3][0] else "unsure"


@dataclass(frozen=True)
class Next:
    """The reading that settles most for its minutes.

    link: which link of the train. at_end: it is read at the end with that link's shaft held; else
    on the link itself. says: in words. place: the joint to open or part to reach for it; None for
    none. way: what is opened for it and closed again. minutes: all of it with the reading.
    """

    link: int
    at_end: bool
    says: str
    place: str | None
    way: WayTo
    minutes: float


@dataclass(frozen=True)
class ChainPlay:
    """What everything that was read says of a train's links.

    links: empty where it cannot be said, and `trouble` says why. next: what to read next; None
    where each link is settled or nothing is left to read.
    """

    links: tuple[Played, ...] = ()
    next: Next | None = None
    trouble: str = ""

    @property
    def over(self) -> tuple[Played, ...]:
        """The links that readings tell from the others and that are over with hardly a doubt."""
        return tuple(each for each in self.links if each.state == "over")
