"""The machines that looking ahead goes over weigh as the exact ranking says."""

import random

import pytest

from shimstock.trade.faults import exact, possible
from shimstock.trade.faults.field import brought_on, shows_in
from shimstock.trade.faults.network import Finding, Network, Told
from shimstock.trade.faults.posed import pose
from shimstock.trade.faults.ranking import rank
from trade.faults.small_fan import NETWORK, ROCKING


def a_network(causes, findings, seed=5):
    pick = random.Random(seed)
    names = [f"c{n}" for n in range(causes)]
    found = {
        f"f{n}": Finding(
            pick.uniform(0.005, 0.05), {c: pick.uniform(0.1, 0.9) for c in pick.sample(names, 6)}
        )
        for n in range(findings)
    }
    priors = {name: pick.uniform(0.02, 0.2) for name in names}
    return Network(priors, found, (("c0", "c1"), ("c1", "c2")))


def shares(machines):
    return dict(zip(machines.causes, machines.weight @ machines.there, strict=True)) | (
        machines.alone
    )


def test_written_down_they_weigh_what_the_ranking_says():
    told = Told({"rocks": True, "hunts": False, "tip": 0.22})
    machines = possible.possible(pose(NETWORK, told))

    assert machines.weight.sum() == pytest.approx(1)
    assert shares(machines) == pytest.approx(dict(rank(NETWORK, told).chances), abs=1e-9)
    assert set(machines.alone) == {"breather"}


@pytest.mark.parametrize("reach", [exact.REACH, 0], ids=["from tables", "from herds"])
def test_drawn_they_come_near_the_ranking(monkeypatch, reach):
    """3,000 draws: one share is within 0.04 in far more than 99 of 100 cases."""
    network = a_network(30, 8)
    told = Told({"f0": True, "f1": True, "f2": True, "f3": True, "f4": False})
    right = rank(network, told).chances
    monkeypatch.setattr(exact, "REACH", reach)

    machines = possible.possible(pose(network, told))

    assert len(machines.causes) > possible.ALL_OF_THEM
    assert shares(machines) == pytest.approx(dict(right), abs=0.04)
    columns = [machines.causes.index(cause) for cause in ("c0", "c1")]
    assert not machines.there[:, columns].all(axis=1).any()  # they exclude each other


def test_a_finding_of_causes_that_stand_alone_leaks_by_their_chance():
    machines = possible.possible(pose(NETWORK, ROCKING))

    quiet = machines.quiet(0.05, {"breather": 0.4})

    assert quiet == pytest.approx(0.95 * (1 - 0.1 * 0.4))


def test_a_cause_brought_on_what_was_seen_as_far_as_nothing_else_did():
    """With the bevel alone: 0.8 of 1 − 0.99·0.2; the rest of the time it was the leak."""
    machines = possible.possible(pose(NETWORK, ROCKING))
    bevel = machines.causes.index("bevel")
    alone = next(n for n, row in enumerate(machines.there) if row[bevel] and row.sum() == 1)

    brought = brought_on(NETWORK, ROCKING, machines)["bevel"]

    assert brought[alone] == pytest.approx(0.8 / (1 - 0.99 * 0.2))
    assert set(brought[~machines.there[:, bevel]]) == {0.0}


def test_a_number_tells_as_much_as_its_bells_stand_apart():
    """0.1 ± 0.05 against 0.3 ± 0.05: two deviations from either, 2.28 % wrong (normal table)."""
    machines = possible.possible(pose(NETWORK, ROCKING))
    bevel = machines.there[:, machines.causes.index("bevel")]

    shows = shows_in(machines, NETWORK.findings["tip"])

    assert shows[bevel] == pytest.approx(1 - 0.0228, abs=5e-5)
    assert shows[~bevel] == pytest.approx(0.0228, abs=5e-5)
