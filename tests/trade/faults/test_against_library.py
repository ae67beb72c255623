"""The exact ranking against an independent library of Bayesian networks, on random networks.

The library builds its own noisy-OR tables and carries out its own inference (lazy propagation);
that causes exclude each other is told it by a node that is seen to hold. Numbers are invented.
"""

import random
import warnings
from collections.abc import Iterator
from math import exp

import pytest

from shimstock.trade.faults import exact
from shimstock.trade.faults.network import Finding, Network, Spread, Told
from shimstock.trade.faults.plan import plan
from shimstock.trade.faults.posed import pose
from shimstock.trade.faults.ranking import EXACT, rank

with warnings.catch_warnings():  # it warns while it loads, and dies of it where that is an error
    warnings.simplefilter("ignore")
    import pyagrum

BELLS = Spread(1.0, 0.5), Spread(2.0, 0.7)


def a_case(seed: int) -> tuple[Network, Told]:
    """Four to nine causes, three to seven findings, every third case with groups."""
    pick = random.Random(seed)
    causes = [f"c{n}" for n in range(pick.randint(4, 9))]
    findings = {
        f"f{n}": Finding(
            pick.uniform(0.001, 0.2),
            {c: pick.uniform(0.05, 0.99) for c in pick.sample(causes, pick.randint(1, 4))},
            *BELLS,
        )
        for n in range(pick.randint(3, 7))
    }
    groups = tuple(
        tuple(pick.sample(causes, pick.randint(2, 3))) for _ in range(pick.randint(1, 2))
    )
    network = Network(
        {cause: pick.uniform(0.005, 0.3) for cause in causes},
        findings,
        groups if seed % 3 == 0 else (),
    )
    said = {key: pick.choice([True, True, True, False, False, "read", None]) for key in findings}
    told = {
        key: pick.uniform(0.5, 2.5) if each == "read" else each
        for key, each in said.items()
        if each is not None
    }
    settled = {causes[-1]: pick.random() < 0.5} if seed % 5 == 0 else {}
    return network, Told(told, settled)


def by_library(network: Network, told: Told) -> tuple[dict[str, float], float]:
    """The chance of every cause, and of all that was told where nothing was read."""
    net = pyagrum.BayesNet()
    for cause, prior in network.causes.items():
        net.add(pyagrum.LabelizedVariable(cause, cause, 2))
        net.cpt(cause).fillWith([1 - prior, prior])
    for key, finding in network.findings.items():
        net.addNoisyORNet(pyagrum.LabelizedVariable(key, key, 2), finding.leak)
        for cause, weight in finding.weights.items():
            net.addWeightedArc(cause, key, weight)
    holds = [_a_group(net, n, group) for n, group in enumerate(network.exclusive)]
    inference = pyagrum.LazyPropagation(net)
    inference.setEvidence(dict(_evidence(told)) | dict.fromkeys(holds, 1))
    inference.makeInference()
    chances = {cause: float(inference.posterior(cause)[1]) for cause in network.causes}
    return chances, float(inference.evidenceProbability())


def _a_group(net: "pyagrum.BayesNet", n: int, group: tuple[str, ...]) -> str:
    """A node that holds where at most one of a group is there."""
    name = net.variable(net.add(pyagrum.LabelizedVariable(f"group {n}", "", 2))).name()
    for cause in group:
        net.addArc(cause, name)
    table = net.cpt(name)
    for at in table.loopIn():
        most_one = sum(at.val(at.variable(k)) for k in range(1, at.nbrDim())) <= 1
        table[at] = float(bool(at.val(at.variable(0))) == most_one)
    return name


def _evidence(told: Told) -> Iterator[tuple[str, int | list[float]]]:
    for key, said in told.findings.items():
        yield key, int(said) if isinstance(said, bool) else [_bell(b, said) for b in BELLS]
    for cause, there in told.causes.items():
        yield cause, int(there)


def _bell(spread: Spread, x: float) -> float:
    return exp(-(((x - spread.mean) / spread.deviation) ** 2) / 2) / spread.deviation


@pytest.mark.parametrize("batch", range(10))
def test_two_hundred_random_networks_come_out_as_the_library_has_them(batch):
    for seed in range(20 * batch, 20 * batch + 20):
        network, told = a_case(seed)
        ranking = rank(network, told)
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            chances, _ = by_library(network, told)

        assert ranking.method == EXACT
        assert dict(ranking.chances) == pytest.approx(chances, abs=1e-9), f"seed {seed}"


def test_the_cases_hold_what_they_should():
    cases = [a_case(seed) for seed in range(200)]
    said = [tuple(told.findings.values()) for _, told in cases]

    assert sum(each.count(True) >= 3 for each in said) > 30
    assert sum(each.count(False) >= 2 for each in said) > 30
    assert sum(any(isinstance(x, float) for x in each) for each in said) > 50
    assert sum(bool(network.exclusive) for network, _ in cases) > 60
    assert sum(bool(told.causes) for _, told in cases) == 40


def test_how_likely_it_is_to_be_told_so():
    """Findings that were seen alone: what was not seen counts without its leak."""
    network, _ = a_case(1)
    told = Told(dict.fromkeys(network.findings, True))
    posed = pose(network, told)

    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        _, likely = by_library(network, told)

    assert exact.solve(posed, plan(posed)).evidence == pytest.approx(likely, rel=1e-9)
