"""The way in on a book of 2,000 joints: exact, and how long the solving takes.

Budget: 0.2 s at worst for books laid out as machines are, in assemblies. Books in which anything
may wait for anything are shown too, without a budget. Not counted: importing the solver. Before
that the answers on many small books are compared with trying every set of joints.

Run: python benchmarks/reach_2000.py
"""

import random
import time
from itertools import combinations

from ortools.sat.python import cp_model  # noqa: F401  # imported here so that it is not timed

from shimstock.trade.reach.cheapest import cheapest
from shimstock.trade.reach.ladder import Alternative, Ladder, Needs, opening_order

JOINTS, ASSEMBLY, TARGETS, BOOKS = 2_000, 60, 8, 20
WITH_CHOICE, BACKWARDS, ELSEWHERE = 0.4, 0.15, 0.1
SMALL, SMALL_BOOKS = 12, 200
BUDGET = 0.2


def a_book(seed: int, joints: int, assembly: int, targets: int) -> Ladder:
    """An invented book, outer joints first in each assembly; deep joints are wanted.

    Four in ten joints have a choice of ways. Some ways go through a joint further in, which makes
    rings; one need in ten is in another assembly. One joint in forty stands open.
    """
    pick = random.Random(seed)
    needs: dict[int, Needs] = {j: _needs(pick, j, joints, assembly) for j in range(joints)}
    ends = range(assembly - 1, joints, assembly)
    wanted = pick.sample(ends, min(targets, len(ends)))
    needs[joints] = tuple((frozenset({end - pick.randrange(3)}),) for end in wanted)
    cost = tuple(60 * 5 * pick.randint(2, 48) for _ in range(joints))
    return Ladder(cost, needs, frozenset(pick.sample(range(joints), joints // 40)))


def _needs(pick: random.Random, joint: int, joints: int, assembly: int) -> Needs:
    if joint % assembly == 0:
        return ()
    plain = [(frozenset({_before(pick, joint, assembly)}),) for _ in range(pick.randint(0, 2))]
    if pick.random() >= WITH_CHOICE:
        return tuple(plain)
    return (*plain, _choice(pick, joint, joints, assembly))


def _before(pick: random.Random, joint: int, assembly: int) -> int:
    """A joint further out in the same assembly, now and then in one that comes before."""
    start, place = joint - joint % assembly, joint % assembly
    if start and pick.random() < ELSEWHERE:
        start -= assembly * pick.randint(1, start // assembly)
    return start + max(0, place - 1 - int(pick.expovariate(4 / assembly)))


def _choice(pick: random.Random, joint: int, joints: int, assembly: int) -> tuple[Alternative, ...]:
    ways = [
        frozenset(_before(pick, joint, assembly) for _ in range(pick.randint(1, 2)))
        for _ in range(pick.randint(2, 3))
    ]
    if pick.random() < BACKWARDS and joint + 1 < joints:
        ways.append(frozenset({min(joints - 1, joint + pick.randint(1, 6))}))
    return tuple(ways)


def by_trying_everything(ladder: Ladder) -> int:
    """Cost of the best set of joints, by looking at all of them."""
    closed = [joint for joint in range(ladder.goal) if joint not in ladder.opened]
    best = sum(ladder.cost) + 1
    for number in range(len(closed) + 1):
        for chosen in combinations(closed, number):
            cost = sum(ladder.cost[joint] for joint in chosen)
            among = [*chosen, ladder.goal]
            if cost < best and len(opening_order(ladder.needs, ladder.opened, among)) == len(among):
                best = cost
    return best


def compare() -> None:
    """Stop with an error where trying everything finds a better way."""
    for seed in range(SMALL_BOOKS):
        ladder = a_book(seed, SMALL, SMALL // 2, 2)
        found = cheapest(ladder)
        assert found is not None
        cost = sum(ladder.cost[joint] for joint in found.joints)
        assert cost == by_trying_everything(ladder), f"book {seed}"
    print(f"{SMALL_BOOKS} books of {SMALL} joints: the same as trying every set of joints")


def timed(ladder: Ladder) -> tuple[float, str]:
    """Seconds to solve, and a line about it."""
    start = time.perf_counter()
    found = cheapest(ladder)
    solved = time.perf_counter()
    opening_order(ladder.needs, ladder.opened, ladder.needs)
    sweep = time.perf_counter() - solved
    assert found is not None
    seconds = solved - start
    return seconds, (
        f"{seconds:.3f} s, {seconds / sweep:4.1f} plain sweeps; "
        f"{len(found.joints)} joints to open, {found.weighed} alternatives weighed"
    )


def main() -> None:
    """Print the figures; stop with an error over budget."""
    compare()
    worst = 0.0
    for seed in range(BOOKS):
        seconds, line = timed(a_book(seed, JOINTS, ASSEMBLY, TARGETS))
        worst = max(worst, seconds)
        print(f"book {seed:2}: {line}")
    for assembly in (200, 400):
        print(f"assemblies of {assembly}: {timed(a_book(1, JOINTS, assembly, 4))[1]}")
    print(f"worst of {BOOKS} books of {JOINTS:,} joints: {worst:.3f} s (budget {BUDGET} s)")
    if worst > BUDGET:
        raise SystemExit("over budget")


if __name__ == "__main__":
    main()
