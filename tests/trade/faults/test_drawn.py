"""Drawn machines come near the exact ranking, as near as they say."""

import random

import pytest

from shimstock.trade.faults.drawn import HEADS, HERDS, STUDENT_95, draw
from shimstock.trade.faults.network import CannotBe, Finding, Network, Spread, Told
from shimstock.trade.faults.posed import pose
from shimstock.trade.faults.ranking import EXACT, rank
from trade.faults.small_fan import NETWORK, ROCKING

BELLS = Spread(1.0, 0.5), Spread(2.0, 0.7)


def a_case(seed: int, causes: int = 20, findings: int = 12) -> tuple[Network, Told]:
    """Signs of three to five causes each; most are seen, some not, some read. Invented."""
    pick = random.Random(seed)
    names = [f"c{n}" for n in range(causes)]
    found = {
        f"f{n}": Finding(
            pick.uniform(0.005, 0.05),
            {c: pick.uniform(0.1, 0.9) for c in pick.sample(names, pick.randint(3, 5))},
            *BELLS,
        )
        for n in range(findings)
    }
    groups = (("c0", "c1"), ("c1", "c2", "c3")) if seed % 2 else ()
    network = Network({c: pick.choice([0.1, 0.03, 0.01]) for c in names}, found, groups)
    said = {key: pick.choice([True, True, True, False, pick.uniform(0.5, 2.5)]) for key in found}
    return network, Told(said, {"c5": True, "c6": False} if seed % 3 == 0 else {})


@pytest.mark.parametrize("seed", range(12))
def test_drawn_is_within_three_of_its_stated_errors(seed):
    network, told = a_case(seed)
    right = rank(network, told)
    assert right.method == EXACT

    drawn = draw(pose(network, told))

    assert drawn.chances == pytest.approx(dict(right.chances), abs=3 * drawn.error)
    assert 0 < drawn.error < 0.06


def test_the_stated_error_holds_in_nineteen_of_twenty():
    """The largest error of eight causes against the largest stated: 40 draws of one case."""
    network, told = a_case(1, causes=8, findings=4)
    right = rank(network, told).chances
    off = [
        max(abs(right[c] - chance) for c, chance in each.chances.items()) / each.error
        for each in (draw(pose(network, told), seed) for seed in range(40))
    ]

    assert sum(each <= 1.0 for each in off) >= 34  # 38 wanted; 34 or more in 97 of 100 cases


def test_a_student_factor_for_sixteen_herds():
    """JCGM 100:2008, table G.2: 15 degrees of freedom, 95 %: 2.13."""
    assert HERDS == 16
    assert pytest.approx(2.13, abs=0.005) == STUDENT_95


def test_the_same_question_gets_the_same_answer():
    posed = pose(NETWORK, ROCKING)

    assert draw(posed).chances == draw(posed).chances
    assert draw(posed, seed=2).chances != draw(posed).chances


def test_no_machine_drawn_has_what_cannot_be_together():
    network, told = a_case(3)
    drawn = draw(pose(network, told))
    column = {cause: n for n, cause in enumerate(network.causes)}

    assert drawn.there.shape == (HERDS * HEADS, 20)
    for group in network.exclusive:
        assert drawn.there[:, [column[cause] for cause in group]].sum(axis=1).max() == 1
    assert drawn.there[:, column["c5"]].all()
    assert not drawn.there[:, column["c6"]].any()


def test_what_cannot_be_is_said_in_words():
    network = Network({"gear": 0.1}, {"rocks": Finding(0.0, {"gear": 0.5})})

    with pytest.raises(CannotBe, match="nothing in the book explains it"):
        draw(pose(network, Told({"rocks": True}, {"gear": False})))


@pytest.mark.parametrize("weight, leak", [(1.0, 0.02), (0.6, 0.0), (1.0, 0.0)])
def test_sure_signs_and_signs_without_another_reason_are_drawn_rightly(weight, leak):
    """A weight of 1 and a leak of 0 are the edges: two such signs that share their causes."""
    weights = {"a": weight, "b": weight, "c": 0.3}
    network = Network(
        {"a": 0.05, "b": 0.1, "c": 0.2},
        {"one": Finding(leak, weights), "two": Finding(leak, {"b": 0.5, "c": weight})},
    )
    told = Told({"one": True, "two": True})

    found = draw(pose(network, told))

    right = rank(network, told).chances
    assert found.chances == pytest.approx(dict(right), abs=max(3 * found.error, 0.01))
