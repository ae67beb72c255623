"""What a page, a command or a paper shows of a search: plain values, each with its words."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Caution

WORTH_OPENING = 0.1
"""Stopping to open up is not worth a thought where it finds the cause more seldom than this."""
OF_SEARCH, OF_READING, NOW = "search", "reading", "now"
"""Where something that is told comes from: the search, a reading in the book, or typed now."""


@dataclass(frozen=True)
class ToldSeen:
    """One thing that is told of the machine, and where it comes from.

    about: sign:KEY or cause:KEY, of which `key` is the KEY. said: True for seen or there, False
    for not seen or cleared, a number where it was read. says: in a word, or as typed with its unit.
    comes_from: search, reading or now. source: in words, such as "Ida, 3 Nov 2026" or the verdict
    of the reading. figure: of a reading its key; else "". counts: False for what stands back,
    because something else is said of the same thing.
    """

    about: str
    key: str
    name: str
    mark: str
    said: bool | float
    says: str
    comes_from: str
    source: str
    figure: str = ""
    counts: bool = True


@dataclass(frozen=True)
class CauseSeen:
    """A cause that something speaks for.

    mark, part, part_name: "" for none. low, high: of the 90 % interval; None where so much was
    seen that there is none. prior: its chance before anything was told, what was learned included.
    stand_in: whether nobody said where the book's prior is from. prior_says: that prior in words,
    with where it is from. confirmed, looked: how often it was found here and in imported counts, of
    how many machines. said: there, or "" for what is not settled.
    """

    key: str
    name: str
    mark: str
    part: str
    part_name: str
    chance: float
    low: float | None
    high: float | None
    prior: float
    stand_in: bool
    prior_says: str
    confirmed: int
    looked: int
    said: str


@dataclass(frozen=True)
class JointSeen:
    """A joint that is still to be opened for a check, with its minutes."""

    key: str
    name: str
    mark: str
    minutes: float


@dataclass(frozen=True)
class OfferSeen:
    """A check that could be done next.

    check: its key, which begins with `kind`. kind: cause for the check of a cause, sign for looking
    at a sign, open for stopping here and opening up. key: of the cause, sign or part that it is
    about. settles: keys of causes still open. minutes: of the check itself; opening: to open
    `joints`, in order. cautions: whole, those of the joints included; they stand before the action.
    figure: key of the figure that its result is typed under; "" where it is said of the cause or
    sign. needs: tools. finds: chance that it finds the cause. expected: minutes until the cause is
    found, this check first.
    """

    check: str
    kind: Literal["cause", "sign", "open"]
    key: str
    name: str
    mark: str
    do: str
    points_to: str
    points_away: str
    settles: tuple[str, ...]
    minutes: float
    opening: float
    joints: tuple[JointSeen, ...]
    cautions: tuple[Caution, ...]
    needs: tuple[str, ...]
    hands: int
    figure: str
    finds: float
    expected: float

    @property
    def worth_showing(self) -> bool:
        """Whether it is worth a line: opening up is, where one time in ten it finds the cause."""
        return self.kind != "open" or self.finds >= WORTH_OPENING


@dataclass(frozen=True)
class QuestionSeen:
    """A sign that costs nothing to look for, and that nobody looked for.

    said: how a person says it. where: name of the part at which it shows; "" for none. cautions: of
    what can hurt where it shows. chance: that it is there. saves: minutes that knowing it saves.
    tells: bits of doubt that it takes away.
    """

    key: str
    name: str
    mark: str
    said: str
    where: str
    cautions: tuple[Caution, ...]
    chance: float
    saves: float
    tells: float


@dataclass(frozen=True)
class NotOffered:
    """A check that would be worth its minutes, and why it is not offered."""

    check: str
    name: str
    mark: str
    reason: str

    @property
    def called(self) -> str:
        """What it is about, by name and mark."""
        return f"{self.name} ({self.mark})" if self.mark else self.name


@dataclass(frozen=True)
class HeldBack:
    """Checks that are not offered for one and the same reason."""

    reason: str
    checks: tuple[NotOffered, ...]

    @property
    def line(self) -> str:
        """What is held back, and why."""
        return f"{'; '.join(each.called for each in self.checks)}: {self.reason}"
