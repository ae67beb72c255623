"""Small networks of every kind, and their chances with every machine tried. Invented numbers."""

from itertools import product
from math import exp, prod

from hypothesis import settings
from hypothesis import strategies as st

from shimstock.trade.faults.network import Finding, Network, Spread, Told

BUSY = settings(max_examples=60, deadline=None)
"""The computer may have other things to do."""
CHANCES = st.one_of(st.sampled_from([0.0, 1.0]), st.floats(0.001, 0.999))
PRIORS = st.one_of(st.sampled_from([0.0, 1.0]), st.floats(0.001, 0.9))
LEAKS = st.one_of(st.just(0.0), st.floats(0.001, 0.9))
SOUND, FAULTY = Spread(1.0, 0.6), Spread(2.0, 0.8)
READINGS = st.floats(0.0, 3.0)
"""So near to both bells that the cap on what one reading says is not reached."""


@st.composite
def networks(draw: st.DrawFn, groups: bool = True) -> Network:
    """Up to five causes and four findings; groups may overlap."""
    causes = [f"c{n}" for n in range(draw(st.integers(1, 5)))]
    findings = {
        f"f{n}": Finding(
            draw(LEAKS),
            draw(st.dictionaries(st.sampled_from(causes), CHANCES, max_size=4)),
            SOUND,
            FAULTY,
        )
        for n in range(draw(st.integers(1, 4)))
    }
    apart = st.lists(st.sampled_from(causes), min_size=2, max_size=3, unique=True).map(tuple)
    exclusive = draw(st.lists(apart, max_size=2)) if groups and len(causes) > 1 else []
    return Network({c: draw(PRIORS) for c in causes}, findings, tuple(exclusive))


def tellings(network: Network, settled: bool = True) -> st.SearchStrategy[Told]:
    """What may be told of a network."""
    said = st.one_of(st.booleans(), READINGS)
    causes = st.dictionaries(st.sampled_from(list(network.causes)), st.booleans(), max_size=2)
    return st.builds(
        Told,
        st.dictionaries(st.sampled_from(list(network.findings)), said),
        causes if settled else st.just({}),
    )


@st.composite
def cases(draw: st.DrawFn, groups: bool = True, settled: bool = True) -> tuple[Network, Told]:
    """A network and what was told of it."""
    network = draw(networks(groups))
    return network, draw(tellings(network, settled))


def every_machine(network: Network, told: Told) -> dict[str, float] | None:
    """The chance of each cause with every machine tried; None where none fits what was told."""
    total = 0.0
    shares = dict.fromkeys(network.causes, 0.0)
    for there in product((False, True), repeat=len(network.causes)):
        machine = dict(zip(network.causes, there, strict=True))
        weight = _weight(network, told, machine)
        total += weight
        for cause in network.causes:
            shares[cause] += weight * machine[cause]
    return {cause: share / total for cause, share in shares.items()} if total else None


def shows(finding: Finding, machine: dict[str, bool]) -> float:
    """The chance that a finding shows in a machine."""
    quiet = prod(1 - weight for cause, weight in finding.weights.items() if machine[cause])
    return 1 - (1 - finding.leak) * quiet


def _weight(network: Network, told: Told, machine: dict[str, bool]) -> float:
    if any(sum(machine[cause] for cause in group) > 1 for group in network.exclusive):
        return 0.0
    if any(machine[cause] != there for cause, there in told.causes.items()):
        return 0.0
    weight = prod(
        prior if machine[cause] else 1 - prior
        for cause, prior in network.causes.items()
        if cause not in told.causes
    )
    for key, said in told.findings.items():
        finding = network.findings[key]
        chance = shows(finding, machine)
        if isinstance(said, bool):
            weight *= chance if said else 1 - chance
        else:
            weight *= chance * _bell(FAULTY, said) + (1 - chance) * _bell(SOUND, said)
    return weight


def _bell(spread: Spread, x: float) -> float:
    return exp(-(((x - spread.mean) / spread.deviation) ** 2) / 2) / spread.deviation
