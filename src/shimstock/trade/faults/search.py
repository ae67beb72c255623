"""The next check: by the minutes still to go, looked ahead over what each result would leave."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from shimstock.trade.faults.field import AT_LEAST
from shimstock.trade.faults.network import Check, Network, Told
from shimstock.trade.faults.posed import pose
from shimstock.trade.faults.ranking import Ranking

if TYPE_CHECKING:
    from shimstock.trade.faults.ahead import Point
    from shimstock.trade.faults.possible import Possible

DEEPER = 4
"""How many of the best offers are looked at one check further ahead."""
WORTH_ASKING = 0.02
"""Bits that a question must tell to be asked at all."""
WIDTH = 24
"""How many checks are weighed as the next one, beside those that only tell something."""


@dataclass(frozen=True)
class Offer:
    """A check that could be done next.

    minutes: of the check itself. opening: minutes to open `joints`, which are still closed.
    finds: chance that it finds the cause. expected: minutes until the cause is found, this check
    first and the best after it.
    """

    check: str
    minutes: float
    opening: float
    joints: tuple[str, ...]
    finds: float
    expected: float


@dataclass(frozen=True)
class Question:
    """A sign that nobody has looked for, and that costs nothing.

    seen: chance that it is there. saves: minutes by which knowing it shortens the search. tells:
    bits by which it lessens the doubt about the cause.
    """

    finding: str
    seen: float
    saves: float
    tells: float


@dataclass(frozen=True)
class Search:
    """How to go on.

    offers: the best first. questions: what to ask before any check, by what it saves. unlisted:
    chance that what was seen has no cause that these checks can still find.
    """

    offers: tuple[Offer, ...] = ()
    questions: tuple[Question, ...] = ()
    unlisted: float = 1.0


def next_checks(
    network: Network,
    told: Told,
    checks: Mapping[str, Check],
    joints: Mapping[str, float],
    open_now: frozenset[str] = frozenset(),
    free: Iterable[str] = (),
    about: Collection[str] | None = None,
    found: Collection[str] = (),
) -> Search:
    """Say which check comes next, by expected minutes until a cause of what was seen is found.

    joints: minutes to open each. open_now: joints that stand open and cost nothing. free: signs
    that cost nothing to look for. about: the findings whose causes are looked for, where others
    were seen too that belong to another search; without it, all that were seen. found: causes
    that a check showed and that are not told as confirmed.
    Raises CannotBe as `rank` does.
    Source: expected value of one or two checks over the order by chance per minute, which is best
    where checks are independent: Heckerman, Breese and Rommelse 1995.
    """
    from shimstock.trade.faults.field import start, still_open
    from shimstock.trade.faults.possible import possible

    left = still_open(told, checks)
    if not left or not any(said is not False for said in told.findings.values()):
        return Search()
    machines = possible(pose(network, told))
    point = start(network, told, machines, left, joints, open_now, about, found)
    if point.chance <= 0:
        return Search()
    offers = _offers(point, list(left), list(joints))
    asked = [key for key in free if key not in told.findings]
    questions = _questions(network, point, asked, machines)
    return Search(offers, questions, max(1 - point.chance, 0.0))


def by_chance_a_minute(
    ranking: Ranking,
    checks: Mapping[str, Check],
    joints: Mapping[str, float],
    open_now: frozenset[str] = frozenset(),
    causes: Collection[str] | None = None,
) -> list[tuple[str, float]]:
    """The checks of some causes by chance per minute, opening included, as each stands alone.

    causes: without them, those that something raised. Gives each check with its minutes. It is the
    order to go on by where nothing looks ahead.
    """
    looked_for = ranking.raised if causes is None else causes
    found = []
    for key, check in checks.items():
        settles = [cause for cause in check.confirms if cause in looked_for]
        chance = max((ranking.chances[cause] for cause in settles), default=0)
        if chance > 0:
            closed = check.joints - open_now
            minutes = max(check.minutes, AT_LEAST) + sum(joints[joint] for joint in closed)
            found.append((-chance / minutes, key, minutes))
    return [(key, minutes) for _, key, minutes in sorted(found)]


def best_first(point: Point) -> list[tuple[int, float]]:
    """Checks worth doing next, best first, with minutes still to go times the chance to be here."""
    from shimstock.trade.faults.ahead import minutes_with, worth_trying

    tried = worth_trying(point, WIDTH)
    least = {check: minutes_with(point, check) for check in tried}
    for check in sorted(tried, key=lambda n: least[n])[:DEEPER]:
        least[check] = minutes_with(point, check, depth=1)
    return sorted(least.items(), key=lambda each: (each[1], each[0]))


def _offers(point: Point, names: Sequence[str], joints: Sequence[str]) -> tuple[Offer, ...]:
    return tuple(_offer(point, check, least, names, joints) for check, least in best_first(point))


def _offer(
    point: Point, check: int, least: float, names: Sequence[str], joints: Sequence[str]
) -> Offer:
    field = point.field
    to_open = [n for n in range(len(joints)) if field.needs[check, n] and not point.open_now[n]]
    return Offer(
        check=names[check],
        minutes=float(field.minutes[check]),
        opening=float(sum(field.opening[n] for n in to_open)),
        joints=tuple(joints[n] for n in to_open),
        finds=float(point.gains[check]),
        expected=least / point.chance,
    )


def _questions(
    network: Network, point: Point, asked: Iterable[str], machines: Possible
) -> tuple[Question, ...]:
    """The free signs that tell something: first those that save most, then those that tell most."""
    from dataclasses import replace

    from shimstock.trade.faults.ahead import doubt, minutes_in_order
    from shimstock.trade.faults.field import shows_in

    minutes, doubtful = minutes_in_order(point), doubt(point)
    found = []
    for key in asked:
        shows = shows_in(machines, network.findings[key])
        then = [replace(point, weight=point.weight * chance) for chance in (shows, 1 - shows)]
        saves = max(minutes - sum(minutes_in_order(each) for each in then), 0.0) / point.chance
        tells = (doubtful - sum(doubt(each) for each in then)) / point.chance
        if tells >= WORTH_ASKING:
            found.append(Question(key, float(point.weight @ shows), saves, tells))
    return tuple(sorted(found, key=lambda e: (-round(e.saves, 1), -e.tells, e.finding)))
