"""The cheapest way in: what to open, in which order, what it costs and what to look out for."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from functools import cached_property

from shimstock.trade.machine.book import Book
from shimstock.trade.machine.state import MachineNow
from shimstock.trade.numbers.working import Working
from shimstock.trade.reach.blocked import no_way
from shimstock.trade.reach.cheapest import cheapest
from shimstock.trade.reach.due import (
    CautionDue,
    HeavyStep,
    MeasureFirst,
    cautions_due,
    heavy_steps,
    packs_to_measure,
)
from shimstock.trade.reach.goals import in_reach, ladder_to
from shimstock.trade.reach.ladder import Ladder
from shimstock.trade.reach.minutes import minutes_for
from shimstock.trade.reach.target import Target, find_target, joint_of, piece_of
from shimstock.trade.reach.used_up import UsedUp, used_up
from shimstock.trade.reach.while_open import WhileOpen, while_it_is_open


@dataclass(frozen=True)
class Way:
    """What to open for some targets, from the machine as it stands.

    opens: joints to open, in an order that works. open_already: open joints that serve this way.
    alternatives: how many stood against each other. proven: no other way costs fewer minutes.
    """

    now: MachineNow = field(repr=False, compare=False)
    targets: tuple[Target, ...]
    opens: tuple[str, ...]
    open_already: tuple[str, ...]
    minutes_open: float
    minutes_close: float
    alternatives: int
    working: Working = field(repr=False)
    proven: bool = True

    @property
    def minutes(self) -> float:
        """Minutes to open and to close again."""
        return self.minutes_open + self.minutes_close

    @property
    def closes(self) -> tuple[str, ...]:
        """The same joints in an order in which they can be closed."""
        return self.opens[::-1]

    @cached_property
    def uses(self) -> tuple[UsedUp, ...]:
        """Gaskets, seals, fluids and small things that it uses up."""
        return used_up(self.now.book, self.opens)

    @cached_property
    def heavy(self) -> tuple[HeavyStep, ...]:
        """Steps for two people or a hoist, in order."""
        return heavy_steps(self.now.book, self.opens)

    @cached_property
    def cautions(self) -> tuple[CautionDue, ...]:
        """Cautions that the joints call up, each once."""
        return cautions_due(self.now.book, self.opens)

    @property
    def cover_tonight(self) -> tuple[str, ...]:
        """Joints that are damaged when left open overnight uncovered."""
        joints = self.now.book.joints
        return tuple(key for key in self.opens if joints[key].cover_same_night)

    @property
    def seal_inside_first(self) -> tuple[str, ...]:
        """Joints behind which everything is sealed before they are closed again."""
        joints = self.now.book.joints
        return tuple(key for key in self.opens if joints[key].seal_inside_first)

    @property
    def measure_first(self) -> tuple[MeasureFirst, ...]:
        """Old packs to measure before they are lost, because they set a figure."""
        return packs_to_measure(self.now, self.opens)

    @cached_property
    def reaches(self) -> tuple[str, ...]:
        """Parts that come into reach beyond the targets, in the book's order."""
        book = self.now.book
        before = in_reach(book, self.now.open_joints)
        wanted = {target.key for target in self.targets if target.kind == "part"}
        new = in_reach(book, self.opens) - before - wanted
        return tuple(part for part in book.parts if part in new)

    @cached_property
    def while_open(self) -> tuple[WhileOpen, ...]:
        """What else is worth thinking of while it is open, the clearest case first."""
        return while_it_is_open(self.now, self.opens)


def way_in(now: MachineNow, targets: Sequence[Target | str], *, take_off: bool = False) -> Way:
    """The cheapest joints to open for one or several targets, proven.

    now: the machine as it stands; joints already open cost nothing. targets: joints to open and
    parts to reach, as keys, marks or names. take_off: parts are to come off with all that sits on
    them. Least minutes to open and close again; then fewest joints; then the book's order.
    Raises UnknownName for a name the book does not know, NoWay where joints block one another.
    """
    book = now.book
    wanted = tuple(_target(book, target) for target in targets)
    ladder = ladder_to(now, wanted, take_off=take_off)
    found = cheapest(ladder)
    if found is None:
        raise no_way(book, ladder, " and ".join(target.name(book) for target in wanted))
    keys = list(book.joints)
    opens = tuple(keys[number] for number in found.joints)
    serving = tuple(keys[number] for number in _serving(ladder, found.joints))
    times = minutes_for(book, opens)
    for due in cautions_due(book, opens):
        times.working.caution(str(due))
    return Way(now, wanted, opens, serving, *times.value, found.weighed, times.working)


def _target(book: Book, target: Target | str) -> Target:
    if isinstance(target, str):
        return find_target(book, target)
    if target.kind == "joint":
        joint_of(book, target.key)
    else:
        piece_of(book, target.key, target.piece)
    return target


def _serving(ladder: Ladder, joints: Iterable[int]) -> list[int]:
    """Joints that stand open already and without which these could not be opened."""
    done = set(ladder.opened)
    serving: set[int] = set()
    for joint in (*joints, ladder.goal):
        for entry in ladder.needs[joint]:
            way = next(alternative for alternative in entry if alternative <= done)
            serving |= way & ladder.opened
        done.add(joint)
    return sorted(serving)
