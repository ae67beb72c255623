"""Whether nine in ten intervals of a link's play hold the true play, on made chains.

Each chain has two to five links with their own new range, limit and gain. The whole is always
felt; each other hold is rocked, and each link is read itself, now and then, with instruments from
a dial to a rule. "as expected": the true play is drawn as the product expects it. The others are
mildly wrong: a quarter more wear or a fifth less, none of the product's rare great wear, some links
as new, or instruments now and then worse than they say.

Budget: 88 to 92 % of the true plays lie in their intervals in every kind; drawn as expected, also
of those links that were not parted from their neighbours. Beside it, what normal distributions that
know of no play below none would hold ("plain"), the milliseconds of a chain, and the chains whose
readings were refused because they cannot all be true.

Run: python benchmarks/chain_intervals.py [chains]
"""

import math
import random
import sys
import time
from dataclasses import dataclass

import numpy as np

from shimstock.trade.measure.chain.expected import OVER, SHAPE, TIGHT, Chain, Expected
from shimstock.trade.measure.chain.link_play import LinkPlay, plays
from shimstock.trade.measure.chain.posterior import Contradiction
from shimstock.trade.measure.chain.told import Felt, Read, Told

CHAINS = 2000
KINDS = (
    *("as expected", "more wear", "less wear", "no great wear", "one in eight as new"),
    "one reading in eight half as bad again",
)
LEAST, MOST = 0.88, 0.92
PLAIN = 1.6449  # standard deviations either side that hold nine in ten, normal distribution


@dataclass(frozen=True)
class Made:
    """A made chain: its true plays and what was read of it."""

    chain: Chain
    true: tuple[float, ...]
    told: tuple[Told, ...]


def made(pick: random.Random, otherwise: str) -> Made:
    """One chain of an invented machine."""
    links = tuple(_link(pick) for _ in range(pick.randint(2, 5)))
    gains = tuple(pick.choice((1.0, 4.0, 6.667, 8.889)) for _ in links)
    true = tuple(_true(pick, each, otherwise) for each in links)
    moved = [gain * play for gain, play in zip(gains, true, strict=True)]
    told: list[Told] = []
    for at in range(len(links)):
        u = pick.choice((0.002, 0.005, 0.01))
        if at == 0 or pick.random() < 0.4:
            told.append(Felt(at, sum(moved[at:]) + _error(pick, u, otherwise), u))
        if pick.random() < 0.15:
            u = pick.choice((0.0003, 0.001))
            told.append(Read(at, true[at] + _error(pick, u, otherwise), u))
    return Made(Chain(links, gains), true, tuple(told))


def _link(pick: random.Random) -> Expected:
    low = pick.choice((0.0, 0.002, 0.003, 0.004))
    high = low + pick.uniform(0.001, 0.006)
    return Expected(low, high, high + pick.uniform(0.003, 0.012))


def _error(pick: random.Random, u: float, otherwise: str) -> float:
    slip = otherwise == "one reading in eight half as bad again" and pick.random() < 0.125
    return pick.gauss(0, 1.5 * u if slip else u)


def _true(pick: random.Random, link: Expected, otherwise: str) -> float:
    low = 0.0 if pick.random() < TIGHT else link.low
    return pick.uniform(low, link.high) + _wear(pick, link, otherwise)


def _wear(pick: random.Random, link: Expected, otherwise: str) -> float:
    wear = link.rate * (pick.random() ** (-1 / SHAPE) - 1)
    if otherwise == "more wear":
        return 1.25 * wear
    if otherwise == "less wear":
        return wear / 1.25
    if otherwise == "one in eight as new" and pick.random() < 0.125:
        return 0.0
    if otherwise == "no great wear":
        mean = (link.limit - (link.low + link.high) / 2) / math.log(1 / OVER)
        return pick.expovariate(1 / mean)
    return wear


def plain(each: Made) -> list[tuple[float, float]]:
    """Intervals where every play is taken as normal, so that it may be less than none."""
    links, gains, told = each.chain.links, np.array(each.chain.gains), each.told
    mean = np.array([(one.low + one.high + one.rate) / 2 for one in links])
    spread = np.diag([1 / one.rate**2 for one in links])
    pull = spread @ mean
    for one in told:
        acts = np.zeros(len(links))
        if isinstance(one, Felt):
            acts[one.link :] = gains[one.link :]
        else:
            acts[one.link] = 1
        spread += np.outer(acts, acts) / one.u**2
        pull += acts * one.value / one.u**2
    share = np.linalg.inv(spread)
    middle, u = share @ pull, np.sqrt(np.diag(share))
    return [(m - PLAIN * s, m + PLAIN * s) for m, s in zip(middle, u, strict=True)]


def parted(each: Made, at: int) -> bool:
    """Whether a link was read itself, or held before and behind."""
    felt = {one.link for one in each.told if isinstance(one, Felt)} | {len(each.true)}
    return Read in {type(one) for one in each.told if one.link == at} or {at, at + 1} <= felt


def held(chains: int, otherwise: str) -> dict[str, float]:
    """Shares of true plays in their intervals, and milliseconds for a chain."""
    pick = random.Random(20)
    hit: dict[str, list[bool]] = {"all links": [], "not parted": [], "plain": []}
    seconds, refused = 0.0, 0
    for _ in range(chains):
        each = made(pick, otherwise)
        began = time.perf_counter()
        try:
            found = plays(each.chain, each.told)
        except Contradiction:
            refused += 1
            continue
        seconds += time.perf_counter() - began
        for at, (true, one) in enumerate(zip(each.true, found, strict=True)):
            hit["all links"].append(_holds(one.stands, true))
            if not parted(each, at):
                hit["not parted"].append(_holds(one.stands, true))
        hit["plain"] += [
            low <= true <= high for true, (low, high) in zip(each.true, plain(each), strict=True)
        ]
    shares = {name: sum(hits) / len(hits) for name, hits in hit.items()}
    return {**shares, "ms": 1000 * seconds / chains, "refused": refused}


def _holds(play: LinkPlay, true: float) -> bool:
    return play.low <= true <= play.high


def main() -> int:
    """Print how many intervals hold; 1 where a budget is not kept."""
    chains = int(sys.argv[1]) if len(sys.argv) > 1 else CHAINS
    kept = True
    print(f"true plays within their 90 % intervals, {chains:,} chains of each kind:")
    print(f"{'':38}{'all links':>11}{'not parted':>12}{'plain':>8}{'ms':>7}{'refused':>9}")
    for name in KINDS:
        got = held(chains, name)
        print(
            f"{name:38}{got['all links']:11.1%}{got['not parted']:12.1%}{got['plain']:8.1%}"
            f"{got['ms']:7.2f}{got['refused']:9.0f}"
        )
        held_to = ("all links", "not parted") if name == KINDS[0] else ("all links",)
        kept &= all(LEAST <= got[each] <= MOST for each in held_to)
    print("budget kept" if kept else "BUDGET NOT KEPT")
    return 0 if kept else 1


if __name__ == "__main__":
    sys.exit(main())
