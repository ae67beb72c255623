"""The cheapest way against trying every set of joints."""

from itertools import combinations

from hypothesis import given, settings
from hypothesis import strategies as st

from shimstock.trade.reach.cheapest import cheapest
from shimstock.trade.reach.ladder import Ladder, opening_order

MOST = 9


def by_trying_everything(ladder: Ladder) -> tuple[int, int, int] | None:
    """Cost, number and sum of places of the best set, found by looking at all of them."""
    closed = [joint for joint in range(ladder.goal) if joint not in ladder.opened]
    best = None
    for number in range(len(closed) + 1):
        for chosen in combinations(closed, number):
            key = (sum(ladder.cost[joint] for joint in chosen), number, sum(chosen))
            if best is not None and key >= best:
                continue
            among = [*chosen, ladder.goal]
            if len(opening_order(ladder.needs, ladder.opened, among)) == len(among):
                best = key
    return best


def works(ladder: Ladder, order: list[int]) -> bool:
    """Whether each joint's needs are open by the time its turn comes."""
    done = set(ladder.opened)
    for joint in order:
        if not all(any(way <= done for way in entry) for entry in ladder.needs[joint]):
            return False
        done.add(joint)
    return True


@st.composite
def ladders(draw):
    number = draw(st.integers(1, MOST))
    joint = st.integers(0, number - 1)
    alternative = st.frozensets(joint, min_size=1, max_size=3)
    entry = st.lists(alternative, min_size=1, max_size=3).map(tuple)
    needs = {j: tuple(draw(st.lists(entry, max_size=2))) for j in range(number)}
    needs[number] = tuple(draw(st.lists(entry, min_size=1, max_size=2)))
    cost = tuple(draw(st.lists(st.integers(0, 6), min_size=number, max_size=number)))
    return Ladder(cost, needs, draw(st.frozensets(joint, max_size=2)))


@settings(max_examples=300, deadline=None)
@given(ladders())
def test_no_set_of_joints_is_better(ladder):
    best = by_trying_everything(ladder)

    got = cheapest(ladder)

    if best is None:
        assert got is None
        return
    assert (sum(ladder.cost[j] for j in got.joints), len(got.joints), sum(got.joints)) == best
    assert works(ladder, [*got.joints, ladder.goal])


def test_a_ring_of_alternatives_is_not_taken_for_a_way():
    ring = ((frozenset({0}), frozenset({2})),)
    needs = {0: ((frozenset({1}), frozenset({3})),), 1: ring, 2: (), 3: (), 4: ((frozenset({0}),),)}

    got = cheapest(Ladder((1, 1, 50, 40), needs, frozenset()))

    assert got is not None and got.joints == (3, 0)


def test_a_ring_that_nothing_enters_gives_no_way():
    needs = {0: ((frozenset({1}),),), 1: ((frozenset({0}),),), 2: ((frozenset({0}),),)}

    assert cheapest(Ladder((1, 1), needs, frozenset())) is None


def test_of_two_ways_that_cost_the_same_the_shorter_is_taken():
    # 0 and 1 stand earlier and their places add up to less than that of 2
    either = ((frozenset({0, 1}), frozenset({2})),)
    needs = {0: (), 1: (), 2: (), 3: either}

    got = cheapest(Ladder((1, 1, 2), needs, frozenset()))

    assert got is not None and got.joints == (2,)


def test_two_rings_at_once_are_both_entered_from_outside():
    def either(*ways):
        return (tuple(frozenset({way}) for way in ways),)

    needs = {
        0: either(1, 4),
        1: either(0, 5),
        2: either(3, 6),
        3: either(2, 7),
        **{entrance: () for entrance in (4, 5, 6, 7)},
        8: ((frozenset({0}),), (frozenset({2}),)),
    }

    got = cheapest(Ladder((1, 1, 1, 1, 9, 7, 5, 9), needs, frozenset()))

    assert got is not None and got.joints == (5, 1, 0, 6, 2)
