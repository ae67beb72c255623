"""Whether to do a thing now because it is open, or to leave it until it has to be done."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace

from shimstock.trade.machine.book import Book, Joint
from shimstock.trade.machine.state import MachineNow
from shimstock.trade.machine.words import Seals
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.reach.chance import in_words
from shimstock.trade.reach.cheapest import cheapest
from shimstock.trade.reach.goals import ladder_to
from shimstock.trade.reach.ladder import Ladder, Needs

TOUCH_UP = 60.0
"""Minutes to touch up the paint round a joint that runs onto paint; a stand-in figure."""
RATE = 10.0
"""Worth of an hour in the shed, in money; a stand-in figure."""
SOURCE = "cost now over cost later, times its chance; common practice"


@dataclass(frozen=True)
class WhileOpen:
    """A joint that can be done for little now, and how likely a later failure makes it pay."""

    joint: str
    minutes_now: float
    minutes_later: float
    chance: float
    says: str
    working: Working = field(repr=False)


def break_even(
    *,
    minutes_now: float,
    minutes_later: float,
    paint_minutes: float,
    money_now: float,
    money_later: float,
    rate: float,
) -> Worked[float]:
    """The chance of needing it later above which doing it now costs less.

    minutes_now: extra work while it is open. minutes_later: the whole way there and back again.
    paint_minutes: paint to put right later. money_now, money_later: what is bought. rate: money for
    an hour. Above 1 it never pays. Source: expected cost, common practice.
    Raises ValueError where a cost is below zero or doing it later would cost nothing.

    >>> round(break_even(minutes_now=80, minutes_later=215, paint_minutes=60,
    ...                  money_now=16, money_later=16, rate=10).value, 2)
    0.47
    """
    costs = (minutes_now, minutes_later, paint_minutes, money_now, money_later, rate)
    if min(costs) < 0:
        raise ValueError(f"{min(costs):g} is below zero; minutes, money and rate are 0 or more")
    w = Working(source=SOURCE)
    w.given("r", rate, "an hour", meaning="worth of an hour")
    w.given("t_n", minutes_now, "min", meaning="extra work now")
    w.given("m_n", money_now, "", meaning="bought now")
    w.given("t_l", minutes_later, "min", meaning="the whole way later")
    w.given("t_p", paint_minutes, "min", meaning="paint to put right later")
    w.given("m_l", money_later, "", meaning="bought later")
    now = w.step("C_n", "t_n/60·r + m_n", minutes_now / 60 * rate + money_now, "", meaning="now")
    later = (minutes_later + paint_minutes) / 60 * rate + money_later
    w.step("C_l", "(t_l + t_p)/60·r + m_l", later, "", meaning="later")
    if later == 0:
        raise ValueError("doing it later costs nothing, so there is nothing to weigh")
    chance = w.step("p", "C_n/C_l", now / later, "", meaning="break-even chance")
    w.note(advice(chance))
    return Worked(chance, w)


def advice(chance: float) -> str:
    """What a break-even chance means for somebody with a spanner in the hand.

    >>> advice(0.474)
    'do it if you think it more likely than about one in two'
    """
    if chance >= 1:
        return "leave it: later costs no more than now, even if it were certain to fail"
    return f"do it if you think it more likely than {in_words(chance)}"


def while_it_is_open(
    now: MachineNow,
    opens: Iterable[str],
    *,
    seal_price: Mapping[str, float] | None = None,
    touch_up: float = TOUCH_UP,
    rate: float = RATE,
) -> tuple[WhileOpen, ...]:
    """Joints that come within reach once some are open, the lowest break-even chance first.

    now: the machine as it stands. opens: joints about to be opened. seal_price: money by joint,
    nothing where not named. touch_up: minutes of paint work round a joint on paint. rate: money for
    an hour. Later means from the closed machine. Left out: joints that gain nothing by it.
    """
    prices = seal_price or {}
    closed = ladder_to(MachineNow(now.book, now.today), (), take_off=False)
    found = []
    for key in _within_reach(now, frozenset(opens)):
        joint = now.book.joints[key]
        extra, later = joint.open + joint.close, _whole_path(now.book, closed, key)
        if later <= extra:
            continue
        chance = break_even(
            minutes_now=extra,
            minutes_later=later,
            paint_minutes=touch_up if joint.on_paint else 0.0,
            money_now=prices.get(key, 0.0),
            money_later=prices.get(key, 0.0),
            rate=rate,
        )
        says = advice(chance.value)
        found.append(WhileOpen(key, extra, later, chance.value, says, chance.working))
    return tuple(sorted(found, key=lambda each: each.chance))


def _within_reach(now: MachineNow, opens: frozenset[str]) -> list[str]:
    """Closed joints worth a thought, all of whose needs are met once the others are open."""
    opened = now.open_joints | opens
    return [
        key
        for key, joint in now.book.joints.items()
        if key not in opened and _worth_it(now.book, joint) and _helped(joint, opened, opens)
    ]


def _helped(joint: Joint, opened: frozenset[str], opens: frozenset[str]) -> bool:
    """True where all needs are met and at least one of the newly opened joints serves."""
    met = [
        [alternative for alternative in entry if opened.issuperset(alternative)]
        for entry in joint.needs
    ]
    serving = {other for entry in met for alternative in entry for other in alternative}
    return all(met) and bool(serving & opens)


def _worth_it(book: Book, joint: Joint) -> bool:
    wears = any(book.parts[part].wear for part in (joint.between[0], *joint.reaches))
    return wears or any(kind is not Seals.NOTHING for kind in joint.seals)


def _whole_path(book: Book, closed: Ladder, key: str) -> float:
    """Minutes to open a joint and everything before it on the closed machine, and to close all."""
    joints = list(book.joints.values())
    wanted: Needs = ((frozenset({list(book.joints).index(key)}),),)
    found = cheapest(replace(closed, needs={**closed.needs, closed.goal: wanted}))
    if found is None:  # the book knows no way to it, yet here it lies open
        return book.joints[key].open + book.joints[key].close
    return sum(joints[number].open + joints[number].close for number in found.joints)
