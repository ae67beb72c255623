"""The causes in their order, and which of them are raised."""

import random

import pytest

from shimstock.trade.faults import exact, ranking
from shimstock.trade.faults.network import Finding, Network, Told
from shimstock.trade.faults.ranking import EXACT, SAMPLED, Ranking, rank
from trade.faults.small_fan import NETWORK, PRIORS, ROCKING


def test_the_likeliest_comes_first():
    chances = list(rank(NETWORK, Told({"rocks": True, "oil": False})).chances.items())

    assert chances[0][0] == "bevel" and chances[-1][0] == "breather"
    falling = [round(chance, 12) for _, chance in chances]
    assert falling == sorted(falling, reverse=True)


def test_a_cause_at_its_prior_is_not_raised():
    ranking = rank(NETWORK, ROCKING)

    assert ranking.priors == PRIORS
    assert set(ranking.raised) == {"bevel", "hub", "mesh"}
    assert ranking.raised == tuple(ranking.chances)[:3]
    assert ranking.chances["breather"] == pytest.approx(0.10, abs=1e-12)
    assert rank(NETWORK, Told()).raised == ()


@pytest.mark.parametrize(
    ("now", "raised"), [(0.1, False), (0.1017, False), (0.102, True), (1.0, True), (0.05, False)]
)
def test_raised_by_more_than_a_fiftieth_of_the_odds(now, raised):
    """Odds of 1 to 9 times 1.02 are a chance of 0.1018."""
    assert Ranking({"gear": now}, {"gear": 0.1}).is_raised("gear") is raised


def test_a_cause_that_is_never_there_is_never_raised():
    network = Network({"gear": 0.0, "key": 0.5}, {"rocks": Finding(0.0, {"gear": 1, "key": 1})})

    assert rank(network, ROCKING).raised == ("key",)


def test_past_its_reach_it_draws_and_says_so(monkeypatch):
    right = rank(NETWORK, ROCKING)
    monkeypatch.setattr(exact, "REACH", 0)
    monkeypatch.setattr(ranking, "WRITTEN_OUT", 0)
    drawn = rank(NETWORK, ROCKING)

    assert (right.method, right.error) == (EXACT, 0)
    assert drawn.method == SAMPLED
    assert 0 < drawn.error < 0.05
    assert drawn.chances == pytest.approx(dict(right.chances), abs=3 * drawn.error)


def test_so_many_seen_that_the_tables_would_not_fit():
    """Forty signs of eight causes each, of eighty: sampled; each sign is seen and has a leak."""
    pick = random.Random(2)
    causes = [f"c{n}" for n in range(80)]
    findings = {
        f"f{n}": Finding(0.02, {c: pick.uniform(0.1, 0.9) for c in pick.sample(causes, 8)})
        for n in range(40)
    }
    network = Network({c: pick.uniform(0.02, 0.2) for c in causes}, findings)

    ranking = rank(network, Told(dict.fromkeys(findings, True)))

    assert ranking.method == SAMPLED
    assert 0 < ranking.error < 0.1
    assert all(0 <= chance <= 1 for chance in ranking.chances.values())


def test_a_finding_may_be_called_like_a_group():
    network = Network(
        {"a": 0.1, "b": 0.2}, {"group 0": Finding(0.01, {"a": 0.5})}, exclusive=(("a", "b"),)
    )

    assert rank(network, Told({"group 0": True})).chances["a"] > 0.5
