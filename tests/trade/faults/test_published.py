"""The ranking and the next check against values in print.

Networks that are no noisy-OR are told state by state: the joint states of their other nodes are
causes of which exactly one is there, its odds those of the state, and what shows in each state is
the weight of a finding.
"""

import random
from collections.abc import Iterable, Mapping
from dataclasses import replace
from functools import cache
from itertools import permutations, product

import pytest

from published.as_printed import as_printed
from shimstock.trade.faults import exact
from shimstock.trade.faults.network import Check, Finding, Network, Told
from shimstock.trade.faults.plan import plan
from shimstock.trade.faults.posed import pose
from shimstock.trade.faults.ranking import rank
from shimstock.trade.faults.search import next_checks

ONE = "one state"


def state_by_state(
    states: Mapping[str, float], shows: Mapping[str, Mapping[str, float]]
) -> Network:
    """A network of states with their chances, and for each finding how often it shows in each."""
    findings = {key: Finding(0.0, dict(weights)) for key, weights in shows.items()}
    findings[ONE] = Finding(0.0, dict.fromkeys(states, 1.0))
    priors = {state: chance / (1 + chance) for state, chance in states.items()}
    return Network(priors, findings, (tuple(states),))


def chance(network: Network, told: Mapping[str, bool], states: Iterable[str]) -> float:
    """The chance that the machine is in one of some states."""
    chances = rank(network, Told({ONE: True, **told})).chances
    assert sum(chances.values()) == pytest.approx(1)
    return sum(chances[state] for state in states)


def evidence(network: Network, told: Mapping[str, bool]) -> float:
    """How likely it is to see what was seen."""

    def weight(findings: Mapping[str, bool]) -> float:
        posed = pose(network, Told(findings))
        return exact.solve(posed, plan(posed)).evidence

    return weight({ONE: True, **told}) / weight({ONE: True})


def _of(state: Mapping[str, bool]) -> str:
    return " ".join(name for name, there in state.items() if there) or "nothing"


CHEST = ("asia", "smoker", "tuberculosis", "cancer", "bronchitis")


def chest_clinic() -> Network:
    """The tables of Lauritzen and Spiegelhalter 1988, table 1; from memory."""
    states, shows = {}, {}
    for there in product((False, True), repeat=5):
        at = dict(zip(CHEST, there, strict=True))
        chances = {
            "asia": 0.01,
            "smoker": 0.5,
            "tuberculosis": 0.05 if at["asia"] else 0.01,
            "cancer": 0.1 if at["smoker"] else 0.01,
            "bronchitis": 0.6 if at["smoker"] else 0.3,
        }
        states[_of(at)] = 1.0
        for name, p in chances.items():
            states[_of(at)] *= p if at[name] else 1 - p
        either = at["tuberculosis"] or at["cancer"]
        breathless = {(1, 1): 0.9, (1, 0): 0.7, (0, 1): 0.8, (0, 0): 0.1}
        shows[_of(at)] = breathless[int(either), int(at["bronchitis"])]
    seen = {name: {state: float(name in state.split()) for state in states} for name in CHEST}
    return state_by_state(states, {"dyspnoea": shows, **seen})


@pytest.mark.parametrize(
    ("told", "cancer", "bronchitis"),
    [
        ({"asia": True, "dyspnoea": True}, "0.09952515", "0.8114021"),
        ({"asia": True, "dyspnoea": True, "smoker": True}, "0.1455191", "0.8672582"),
    ],
    ids=["asia and dyspnoea", "and smoking"],
)
def test_chest_clinic_lauritzen_and_spiegelhalter_1988(told, cancer, bronchitis):
    """Local computations with probabilities on graphical structures, JRSS B 50, 1988."""
    network = chest_clinic()
    ill = {name: [s for s in network.causes if name in s.split()] for name in CHEST}

    assert chance(network, told, ill["cancer"]) == as_printed(cancer)
    assert chance(network, told, ill["bronchitis"]) == as_printed(bronchitis)


def test_chest_clinic_how_likely_the_visit_and_the_dyspnoea_are():
    """The same source: P(evidence)."""
    told = {"asia": True, "dyspnoea": True}

    assert evidence(chest_clinic(), told) == as_printed("0.004501375")


@pytest.mark.parametrize(
    ("told", "no_fuel", "dirty"),
    [
        ({"starts": False}, "0.29", "0.58"),
        ({"starts": False, "meter at half": True}, "0.001", "0.804"),
    ],
    ids=["no start", "meter at half"],
)
def test_car_start_jensen_and_nielsen_2007(told, no_fuel, dirty):
    """Bayesian Networks and Decision Graphs, 2nd edition, p. 35; the tables from memory."""
    states = {
        "fuel, clean": 0.98 * 0.96,
        "fuel, dirty": 0.98 * 0.04,
        "none, clean": 0.02 * 0.96,
        "none, dirty": 0.02 * 0.04,
    }
    shows = {
        "starts": {"fuel, clean": 0.99, "fuel, dirty": 0.01},
        "meter at half": {state: 0.60 if "fuel" in state else 0.001 for state in states},
    }
    network = state_by_state(states, shows)

    assert chance(network, told, ["none, clean", "none, dirty"]) == as_printed(no_fuel)
    assert chance(network, told, ["fuel, dirty", "none, dirty"]) == as_printed(dirty)


SIX = "abcdef"


def minutes(order: Iterable[str], chances: Mapping[str, float], each: Mapping[str, float]) -> float:
    """Expected minutes until the one fault is found."""
    left, total = 1.0, 0.0
    for name in order:
        total += left * each[name]
        left -= chances[name]
    return total


@pytest.mark.parametrize("batch", range(10))
def test_chance_per_minute_heckerman_breese_and_rommelse_1995(batch):
    """Decision-theoretic troubleshooting, CACM 38: the best order of independent checks.

    Two hundred random cases of a single fault: the checks offered, one after another to the end,
    come to the best of all 720 orders.
    """
    for seed in range(20 * batch, 20 * batch + 20):
        pick = random.Random(seed)
        parts = {name: pick.uniform(0.05, 1.0) for name in SIX}
        chances = {name: part / sum(parts.values()) for name, part in parts.items()}
        each = {name: pick.uniform(2, 60) for name in SIX}
        network = state_by_state(chances, {})
        checks = {name: Check(each[name], confirms=(name,)) for name in SIX}
        told, order, said = Told({ONE: True}), [], []
        for _ in SIX:
            offer = next_checks(network, told, checks, {}).offers[0]
            order.append(offer.check)
            said.append(offer.expected)
            told = replace(told, causes={**told.causes, offer.check: False})

        best = min(minutes(other, chances, each) for other in permutations(SIX))
        assert minutes(order, chances, each) == pytest.approx(best, rel=1e-9), f"seed {seed}"
        assert said[0] == pytest.approx(best, rel=1e-4), f"seed {seed}"


STATES = {"s0": 0.70, "s1": 0.01, "s2": 0.02, "s3": 0.10, "s4": 0.05, "s5": 0.12}
TESTS = {
    "t1": ("s3", "s4", "s5"),
    "t2": ("s1", "s4", "s5"),
    "t3": ("s2", "s5"),
    "t4": ("s2", "s3", "s5"),
    "t5": ("s1", "s3"),
}


def test_six_states_and_five_tests_pattipati_and_alexandridis_1990():
    """IEEE Transactions on Systems, Man, and Cybernetics 20, the first example: optimum 2.18.

    Priors and matrix from memory; with every tree of tests tried they give the printed optimum.
    Opening up for a state takes so long that it is known by its tests before.
    """
    shows = {test: dict.fromkeys(states, 1.0) for test, states in TESTS.items()}
    network = state_by_state(STATES, shows)
    checks = {test: Check(1, gives=(test,)) for test in TESTS}
    checks |= {f"open {state}": Check(100, confirms=(state,)) for state in STATES}

    def followed(told: dict[str, bool], left: tuple[str, ...]) -> float:
        """Tests still to come times the chance to be here, by the offers that come first."""
        if len(left) == 1:
            return 0.0
        test = next_checks(network, Told(told), checks, {}).offers[0].check
        after = [
            followed({**told, test: shown}, tuple(s for s in left if (s in TESTS[test]) == shown))
            for shown in (True, False)
        ]
        return sum(STATES[state] for state in left) + sum(after)

    assert best_tree(tuple(STATES)) == as_printed("2.18")
    assert followed({ONE: True}, tuple(STATES)) == as_printed("2.18")


@cache
def best_tree(left: tuple[str, ...]) -> float:
    """The fewest tests to tell some states apart, times their chance, every tree tried."""
    if len(left) == 1:
        return 0.0
    parted = [
        [tuple(s for s in left if (s in states) == shown) for shown in (True, False)]
        for states in TESTS.values()
    ]
    fewest = min(sum(map(best_tree, both)) for both in parted if all(both))
    return sum(STATES[state] for state in left) + fewest
